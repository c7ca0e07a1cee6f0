"""The same quantities by other programs: integrals, equations, eigenvalues, propagation, exact decimals.

An oracle is given what the formula is given, makes nothing of the formula's own way, and must come to the same answer.
"""

from oracles import bars, bodies, decimals, errors_of_a_lathe, joints, readings_and_freedom, scatter, solved, space
from oracles.registry import ORACLES, Oracle

__all__ = [
    "ORACLES",
    "Oracle",
    "bars",
    "bodies",
    "decimals",
    "errors_of_a_lathe",
    "joints",
    "readings_and_freedom",
    "scatter",
    "solved",
    "space",
]
