"""Which further test would tell most of causes that the readings so far leave unsure."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from tailtrue.calc.estimation import Fit, Reading, Row


class NextTest(NamedTuple):
    """What one further test would leave."""

    name: str
    not_told_apart: int
    standard_uncertainty: float | None

    @classmethod
    def ranked(
        cls, fit: Fit, candidates: Mapping[str, Sequence[Reading]], wanted: Row
    ) -> tuple["NextTest", ...]:  # fmt: skip
        """What each further test would do for a wanted combination of the unknowns.

        `Fit` of all readings and of those planned; the smallest u first, u = uncertainty of the combination

        Parameters
        ----------
        fit : What the readings so far tell. [1]
        candidates : Readings that each further test would give; their values do not count. [1]
        wanted : Combination that is wanted, as in `Fit.estimate`. [1]

        Returns
        -------
        The best first: tests that settle it, the surest foremost; then those that leave least untold. [1]

        Valid for
        ---------
        As `Fit.of`.

        Source
        ------
        The covariance of least squares asks for no values (any text on the design of experiments; memory).

        >>> fit = Fit.of([Reading({"yaw": 1, "lean": -1}, 0.03, 0.01), Reading({"lean": 1}, 0.02, 0.01)])
        >>> NextTest.ranked(fit, {"level": [Reading({"lean": 1}, 0, 0.001)]}, {"lean": 1})[0].name
        'level'
        """
        found = []
        for name, planned in candidates.items():
            after = Fit.of([*fit.readings, *planned])
            sure = after.estimate(wanted).standard_uncertainty if after.sees(wanted) else None
            found.append(cls(name, after.not_told_apart, sure))
        return tuple(sorted(found, key=_merit))


def _merit(test: NextTest) -> tuple[bool, float, int]:
    if test.standard_uncertainty is None:
        return (True, float(test.not_told_apart), 0)
    return (False, test.standard_uncertainty, test.not_told_apart)
