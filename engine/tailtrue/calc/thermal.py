"""What warmth does to a length or a diameter, and to a bar that has no room to grow."""

from math import pi
from typing import NamedTuple

from tailtrue.calc.validity import between, positive

_MOST_CHANGE_K = 50.0


class GrowthThrust(NamedTuple):
    """Thrust of a bar that warms between two centres: held dead fast, and held by a lathe that gives."""

    rigid_n: float
    yielding_n: float


def growth(length_mm: float, expansion_per_k: float, temperature_change_k: float) -> float:
    """Growth of a length, or of a diameter, with a change of temperature.

    dL = L alpha dT

    Parameters
    ----------
    length_mm : Length or diameter L. [mm]
    expansion_per_k : Coefficient of linear expansion alpha. [1/K]
    temperature_change_k : Change of temperature dT, less than 0 when cooling. [K]

    Returns
    -------
    Change of the length, with the sign of dT. [mm]

    Valid for
    ---------
    Length and coefficient more than 0, change of at most 50 K either way (the coefficient itself drifts).

    Source
    ------
    Definition of the coefficient.

    >>> round(growth(70, 23.6e-6, 1), 6)
    0.001652
    """
    positive(length_mm, "length", "mm")
    positive(expansion_per_k, "coefficient of expansion", "1/K")
    between(temperature_change_k, -_MOST_CHANGE_K, _MOST_CHANGE_K, "change of temperature", "K")
    return length_mm * expansion_per_k * temperature_change_k


def growth_thrust(
    *,
    span_mm: float,
    diameter_mm: float,
    modulus_mpa: float,
    expansion_per_k: float,
    temperature_change_k: float,
    machine_n_per_mm: float,
) -> GrowthThrust:
    """Thrust on the centres of a bar that warms between them with the quill locked.

    F = alpha dT L / (L / (E A) + 1 / k), A = pi d^2 / 4; held dead fast, 1 / k = 0

    Parameters
    ----------
    span_mm : Length L of the bar between the centres. [mm]
    diameter_mm : Diameter d of the bar. [mm]
    modulus_mpa : Modulus of elasticity E of the bar. [MPa]
    expansion_per_k : Coefficient of linear expansion alpha of the bar. [1/K]
    temperature_change_k : Rise dT of the bar over the lathe. [K]
    machine_n_per_mm : Stiffness k of headstock, bed and tailstock along the bar, together. [N/mm]

    Returns
    -------
    Thrust F if nothing gave, and thrust with the lathe giving. [N]

    Valid for
    ---------
    Rise 0 to 50 K, the rest more than 0; centres set without play and without thrust when cold.

    Source
    ------
    Definition of the coefficient and Hooke's law, derived.

    >>> [round(force) for force in growth_thrust(span_mm=500, diameter_mm=25, modulus_mpa=207e3,
    ...     expansion_per_k=11.7e-6, temperature_change_k=10, machine_n_per_mm=20e3)]
    [11888, 1065]
    """
    positive(diameter_mm, "diameter of the bar", "mm")
    positive(modulus_mpa, "modulus of elasticity", "MPa")
    positive(machine_n_per_mm, "stiffness of the lathe", "N/mm")
    between(temperature_change_k, 0, _MOST_CHANGE_K, "rise of temperature of the bar", "K")
    grown = growth(span_mm, expansion_per_k, temperature_change_k)
    bar_stiffness = modulus_mpa * pi * diameter_mm**2 / 4 / span_mm
    return GrowthThrust(grown * bar_stiffness, grown / (1 / bar_stiffness + 1 / machine_n_per_mm))
