"""A square with its corners sawn off to a regular octagon: what comes off, what it swings then, how long the saw takes."""

from math import hypot, sqrt

from tailtrue.calc.validity import at_least, between, positive


def corner_leg(flats_mm: float) -> float:
    """How far from each corner of a square, along its edges, the cut begins that leaves a regular octagon.

    a = s (1 - 1 / sqrt(2))

    Parameters
    ----------
    flats_mm : Square, flat to flat, s. [mm]

    Returns
    -------
    Length a along each edge. [mm]

    Valid for
    ---------
    Square more than 0.

    Source
    ------
    Geometry of the regular octagon.

    >>> round(corner_leg(80), 3)
    23.431
    """
    positive(flats_mm, "square, flat to flat", "mm")
    return flats_mm * (1 - 1 / sqrt(2))


def octagon_circle(flats_mm: float, outside_mm: float = 0.0) -> float:
    """Circle through the corners that are left when the four of a square were sawn off to an octagon.

    D = 2 sqrt((s / 2)^2 + ((s / 2 + o) sqrt(2) - s / 2)^2); without o it is s / cos(22.5 deg)

    Parameters
    ----------
    flats_mm : Square, flat to flat, s. [mm]
    outside_mm : How far outside the line of a regular octagon each cut runs, o. [mm]

    Returns
    -------
    Diameter D of the circle. [mm]

    Valid for
    ---------
    Square more than 0, outside 0 or more; no further out than the corner itself, (sqrt(2) - 1) s / 2.

    Source
    ------
    Geometry of the octagon.

    >>> round(octagon_circle(80), 3)
    86.591
    >>> round(octagon_circle(80, 1), 2)
    87.71
    """
    positive(flats_mm, "square, flat to flat", "mm")
    half = flats_mm / 2
    between(outside_mm, 0, half * (sqrt(2) - 1), "how far outside its line a corner is sawn off", "mm")
    return 2 * hypot(half, (half + outside_mm) * sqrt(2) - half)


def corners_area(flats_mm: float, thickness_mm: float, pieces: float) -> float:
    """What the saw cuts through to make octagons of square slugs: four corners of each.

    A = 4 k s (sqrt(2) - 1) b

    Parameters
    ----------
    flats_mm : Square, flat to flat, s. [mm]
    thickness_mm : Thickness b of a slug. [mm]
    pieces : Number k of slugs. [1]

    Returns
    -------
    Area A of all cuts. [mm2]

    Valid for
    ---------
    Square and thickness more than 0, at least one piece.

    Source
    ------
    Geometry of the regular octagon: its side is (sqrt(2) - 1) s.

    >>> round(corners_area(80, 40, 2))
    10604
    """
    positive(flats_mm, "square, flat to flat", "mm")
    positive(thickness_mm, "thickness", "mm")
    at_least(pieces, 1, "number of slugs")
    return 4 * pieces * flats_mm * (sqrt(2) - 1) * thickness_mm


def sawing_time(area_mm2: float, rate_mm2_min: float, cuts: float, clamp_s: float) -> float:
    """Time to saw through an area in several cuts, each marked and clamped before.

    t = 60 A / q + k c

    Parameters
    ----------
    area_mm2 : Area A of all cuts. [mm2]
    rate_mm2_min : What the saw gets through in a minute, q. [mm2/min]
    cuts : Number k of cuts. [1]
    clamp_s : Time c to turn the piece and clamp it for one cut. [s]

    Returns
    -------
    Time t. [s]

    Valid for
    ---------
    Area and rate more than 0, cuts and time 0 or more.

    Source
    ------
    Definition of the cutting rate of a saw.

    >>> sawing_time(10000, 250, 8, 90)
    3120.0
    """
    positive(area_mm2, "area", "mm2")
    positive(rate_mm2_min, "cutting rate", "mm2/min")
    at_least(cuts, 0, "number of cuts")
    at_least(clamp_s, 0, "time to clamp", "s")
    return 60 * area_mm2 / rate_mm2_min + cuts * clamp_s
