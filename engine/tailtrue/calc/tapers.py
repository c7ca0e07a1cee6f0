"""Figures of a taper that is turned with the tailstock set over: its ratio, what to read on it, how sure a correction is."""

from math import hypot

from tailtrue.calc.validity import at_least, positive


def length_in_one(taper_mm_per_mm: float) -> float:
    """Length in which the diameter loses one, from the taper.

    l = 1 / t

    Parameters
    ----------
    taper_mm_per_mm : Taper t on the diameter. [mm/mm]

    Returns
    -------
    Length l in which the diameter loses one; a taper of 1:20 loses one in 20. [1]

    Valid for
    ---------
    More than 0.

    Source
    ------
    Definition.

    >>> length_in_one(0.05)
    20.0
    """
    positive(taper_mm_per_mm, "taper", "mm/mm")
    return 1 / taper_mm_per_mm


def taper_of_ratio(length_in_one: float) -> float:
    """Taper from the length in which the diameter loses one.

    t = 1 / l

    Parameters
    ----------
    length_in_one : Length l in which the diameter loses one. [1]

    Returns
    -------
    Taper t on the diameter. [mm/mm]

    Valid for
    ---------
    More than 0.

    Source
    ------
    Definition.

    >>> taper_of_ratio(20)
    0.05
    """
    positive(length_in_one, "length in which the diameter loses one")
    return 1 / length_in_one


def difference_over(taper_mm_per_mm: float, length_mm: float) -> float:
    """Difference of diameters over a length of a taper.

    D - d = t l

    Parameters
    ----------
    taper_mm_per_mm : Taper t on the diameter. [mm/mm]
    length_mm : Length l along the axis. [mm]

    Returns
    -------
    Difference of diameters. [mm]

    Valid for
    ---------
    Taper 0 or more, length more than 0.

    Source
    ------
    `taper_from_diameters` turned round.

    >>> difference_over(0.05, 120)
    6.0
    """
    at_least(taper_mm_per_mm, 0, "taper", "mm/mm")
    positive(length_mm, "length", "mm")
    return taper_mm_per_mm * length_mm


def correction_doubt(
    large_unsure_mm: float,
    small_unsure_mm: float,
    apart_mm: float,
    span_mm: float,
    setting_unsure_mm: float,
) -> float:
    """Doubt of the correction of a set-over from two diameters read on the taper.

    u^2 = (u_D^2 + u_d^2) (L / (2 l))^2 + u_s^2

    Parameters
    ----------
    large_unsure_mm : Doubt u_D of the larger diameter. [mm]
    small_unsure_mm : Doubt u_d of the smaller one. [mm]
    apart_mm : Distance l between the places where they are read. [mm]
    span_mm : Length L of the work between the points of the centres. [mm]
    setting_unsure_mm : Doubt u_s of the setting itself. [mm]

    Returns
    -------
    Doubt u. [mm]

    Valid for
    ---------
    Doubts 0 or more, distance more than 0 and not more than the length; no error common to the two readings.

    Source
    ------
    JCGM 100 (the GUM), equation 11 on the rule of the set-over (derived).

    >>> round(correction_doubt(0.003, 0.004, 100, 300, 0), 6)
    0.0075
    """
    at_least(large_unsure_mm, 0, "doubt of the larger diameter", "mm")
    at_least(small_unsure_mm, 0, "doubt of the smaller diameter", "mm")
    positive(apart_mm, "distance of the readings", "mm")
    at_least(span_mm, apart_mm, "length of the work", "mm")
    at_least(setting_unsure_mm, 0, "doubt of the setting", "mm")
    return hypot(hypot(large_unsure_mm, small_unsure_mm) * span_mm / (2 * apart_mm), setting_unsure_mm)
