"""What warmth does to a length or a diameter."""

from tailtrue.calc.validity import between, positive


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
    between(temperature_change_k, -50, 50, "change of temperature", "K")
    return length_mm * expansion_per_k * temperature_change_k
