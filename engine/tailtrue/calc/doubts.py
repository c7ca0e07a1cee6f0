"""Doubts put together and taken apart: of two values, of one collar out of two, of readings out of a budget."""

from collections.abc import Sequence
from math import hypot, sqrt

from tailtrue.calc.validity import at_least


def both_together(first_mm: float, second_mm: float) -> float:
    """Doubt of a sum or a difference of two values, a clearance say, that are unsure by themselves.

    U^2 = U_1^2 + U_2^2

    Parameters
    ----------
    first_mm : Doubt U_1 of the one. [mm]
    second_mm : Doubt U_2 of the other. [mm]

    Returns
    -------
    Doubt U. [mm]

    Valid for
    ---------
    Both 0 or more, with the same coverage factor; no error common to the two.

    Source
    ------
    JCGM 100 (the GUM), equation 10 (from memory).

    >>> both_together(0.003, 0.004)
    0.005
    """
    at_least(first_mm, 0, "first doubt", "mm")
    at_least(second_mm, 0, "second doubt", "mm")
    return hypot(first_mm, second_mm)


def all_together(parts_mm: Sequence[float]) -> float:
    """Uncertainty of a result from all the parts of its budget.

    u^2 = u_1^2 + u_2^2 + ...

    Parameters
    ----------
    parts_mm : Standard uncertainties u_i, each as it bears on the result. [mm]

    Returns
    -------
    Standard uncertainty u. [mm]

    Valid for
    ---------
    At least one part, each 0 or more; no error common to two of them.

    Source
    ------
    JCGM 100 (the GUM), equation 10 (from memory).

    >>> round(all_together([0.002, 0.003, 0.006]), 6)
    0.007
    """
    at_least(len(parts_mm), 1, "number of parts")
    for part in parts_mm:
        at_least(part, 0, "part of the uncertainty", "mm")
    return hypot(*parts_mm)


def of_one_collar(difference_unsure_mm: float) -> float:
    """Doubt of one collar from that of the difference of two alike.

    u_1 = u / sqrt(2)

    Parameters
    ----------
    difference_unsure_mm : Doubt u of the difference. [mm]

    Returns
    -------
    Doubt u_1 of one. [mm]

    Valid for
    ---------
    Doubt 0 or more; both collars read alike, no error common to them.

    Source
    ------
    JCGM 100 (the GUM), equation 10 turned round (from memory).

    >>> round(of_one_collar(0.002), 6)
    0.001414
    """
    at_least(difference_unsure_mm, 0, "doubt of the difference", "mm")
    return difference_unsure_mm / sqrt(2)


def as_read_once(deviation_mm: float, first_readings: int, second_readings: int) -> float:
    """Scatter of a reading that, read once on each collar, would leave the difference as unsure as the means do.

    s_1 = s sqrt((1 / n + 1 / m) / 2)

    Parameters
    ----------
    deviation_mm : Standard deviation s of one reading. [mm]
    first_readings : Readings n on the one collar. [1]
    second_readings : Readings m on the other. [1]

    Returns
    -------
    Scatter s_1. [mm]

    Valid for
    ---------
    Deviation 0 or more, at least one reading on each.

    Source
    ------
    JCGM 100 (the GUM), clause 4.2.3 (memory).

    >>> round(as_read_once(0.0015, 3, 3), 6)
    0.000866
    """
    at_least(deviation_mm, 0, "standard deviation", "mm")
    at_least(first_readings, 1, "number of readings")
    at_least(second_readings, 1, "number of readings")
    return deviation_mm * sqrt((1 / first_readings + 1 / second_readings) / 2)


def without_scatter(standard_mm: float, deviation_mm: float, first_readings: int, second_readings: int) -> float:
    """What further readings would not lessen in the uncertainty of a difference.

    v^2 = u^2 - s^2 (1 / n + 1 / m), never less than 0

    Parameters
    ----------
    standard_mm : Standard uncertainty u of the difference. [mm]
    deviation_mm : Standard deviation s of one reading. [mm]
    first_readings : Readings n on the one collar. [1]
    second_readings : Readings m on the other. [1]

    Returns
    -------
    Rest v. [mm]

    Valid for
    ---------
    Uncertainties 0 or more, at least one reading on each.

    Source
    ------
    JCGM 100 (the GUM), clause 5.1.2 turned round (from memory).

    >>> round(without_scatter(0.002, 0.0015, 3, 3), 6)
    0.001581
    """
    at_least(standard_mm, 0, "standard uncertainty", "mm")
    of_means = as_read_once(deviation_mm, first_readings, second_readings)
    return sqrt(max(0.0, standard_mm**2 - 2 * of_means**2))
