"""Wear of the edge: estimates of its life and of what it loses along a cut."""

from math import pi

from tailtrue.calc.validity import OutOfRange, at_least, between, positive

_LONGEST_LIFE_MIN = 10_000.0  # far beyond any test of tool life
_SHORTEST_LIFE_MIN = 1.0


def cutting_path(diameter_mm: float, length_mm: float, feed_mm: float) -> float:
    """Way that the edge runs through the metal in one pass.

    s = pi D L / f

    Parameters
    ----------
    diameter_mm : Diameter D that is cut. [mm]
    length_mm : Length L of the cut along the axis. [mm]
    feed_mm : Feed f per turn. [mm/rev]

    Returns
    -------
    Way s. [km]

    Valid for
    ---------
    All more than 0; feed small against the diameter, as in all turning.

    Source
    ------
    Geometry.

    >>> round(cutting_path(70, 15, 0.1), 3)
    0.033
    """
    positive(diameter_mm, "diameter", "mm")
    positive(length_mm, "length of the cut", "mm")
    positive(feed_mm, "feed", "mm/rev")
    return pi * diameter_mm * length_mm / feed_mm / 1e6


def edge_wear(path_km: float, wear_um_per_km: float) -> float:
    """Estimate of how far the tip of a tool draws back over a way through the metal.

    w = s u

    Parameters
    ----------
    path_km : Way s of the edge through the metal. [km]
    wear_um_per_km : Wear u of tool and metal, square to the surface cut. [um/km]

    Returns
    -------
    Wear w of the tip, a radius: the diameter grows by twice this; an estimate. [mm]

    Valid for
    ---------
    Way 0 or more, wear 0 to 500 um per km; the steady stage of wear: a new edge loses its first micrometres faster.

    Source
    ------
    Definition; the rates (5 for carbide in soft metal, 50 for high speed steel) are orders of magnitude from memory.

    >>> round(edge_wear(0.033, 50), 5)
    0.00165
    """
    at_least(path_km, 0, "way of the edge", "km")
    between(wear_um_per_km, 0, 500, "wear of the edge", "um/km")
    return path_km * wear_um_per_km / 1000


def taper_from_wear(diameter_mm: float, length_mm: float, feed_mm: float, wear_um_per_km: float) -> float:
    """Estimate of the taper that the wear of the edge leaves over one pass.

    D2 - D1 = 2 u pi D L / f

    Parameters
    ----------
    diameter_mm : Diameter D that is cut. [mm]
    length_mm : Length L of the cut along the axis. [mm]
    feed_mm : Feed f per turn. [mm/rev]
    wear_um_per_km : Wear u of tool and metal, square to the surface cut. [um/km]

    Returns
    -------
    Difference of diameters between where the cut ends and where it begins; a shaft ends larger, a bore ends smaller
    by this; an estimate. [mm]

    Valid for
    ---------
    As `cutting_path` and `edge_wear`.

    Source
    ------
    As `edge_wear`.

    >>> round(taper_from_wear(70, 15, 0.1, 50), 4)
    0.0033
    """
    return 2 * edge_wear(cutting_path(diameter_mm, length_mm, feed_mm), wear_um_per_km)


def tool_life(surface_speed_m_min: float, constant_m_min: float, exponent: float) -> float:
    """Estimate of the life of an edge at a surface speed (Taylor).

    T = (C / V)^(1 / n)

    Parameters
    ----------
    surface_speed_m_min : Surface speed V. [m/min]
    constant_m_min : Speed C at which the edge lasts one minute. [m/min]
    exponent : Exponent n of the tool: high speed steel 0.08 to 0.2, carbide 0.2 to 0.3. [1]

    Returns
    -------
    Life T of the edge in the cut; an estimate. [min]

    Valid for
    ---------
    One tool, metal, feed and depth; exponent 0.05 to 0.6; life 1 to 10 000 min.

    Source
    ------
    Taylor's law of tool life, in any text on metal cutting; exponents from a question bank on it.

    >>> tool_life(150, 300, 0.5)
    4.0
    """
    positive(surface_speed_m_min, "surface speed", "m/min")
    positive(constant_m_min, "speed of one minute's life", "m/min")
    between(exponent, 0.05, 0.6, "exponent of tool life")
    ratio = constant_m_min / surface_speed_m_min
    # Compared as speeds: at a small exponent the life itself overflows.
    if not _SHORTEST_LIFE_MIN**exponent <= ratio <= _LONGEST_LIFE_MIN**exponent:
        raise OutOfRange(
            f"at {surface_speed_m_min:g} m/min the law of tool life leaves its range of 1 to {_LONGEST_LIFE_MIN:g} min"
        )
    return float(ratio ** (1 / exponent))


def speed_for_life(life_min: float, constant_m_min: float, exponent: float) -> float:
    """Surface speed at which an edge is expected to last for a time (Taylor); an estimate.

    V = C / T^n

    Parameters
    ----------
    life_min : Life T in the cut. [min]
    constant_m_min : Speed C at which the edge lasts one minute. [m/min]
    exponent : Exponent n of the tool. [1]

    Returns
    -------
    Surface speed V; an estimate. [m/min]

    Valid for
    ---------
    As `tool_life`.

    Source
    ------
    `tool_life` turned round.

    >>> speed_for_life(4, 300, 0.5)
    150.0
    """
    between(life_min, _SHORTEST_LIFE_MIN, _LONGEST_LIFE_MIN, "life of the edge", "min")
    positive(constant_m_min, "speed of one minute's life", "m/min")
    between(exponent, 0.05, 0.6, "exponent of tool life")
    return float(constant_m_min / life_min**exponent)


def life_ratio(speed_ratio: float, exponent: float) -> float:
    """How many times as long an edge lasts when the speed changes (Taylor); an estimate.

    T2 / T1 = (V1 / V2)^(1 / n)

    Parameters
    ----------
    speed_ratio : New surface speed as a share of the old, V2 / V1. [1]
    exponent : Exponent n of the tool. [1]

    Returns
    -------
    New life as a multiple of the old. [1]

    Valid for
    ---------
    Speeds 0.2 to 2 times the old, exponent 0.05 to 0.6; one tool, metal, feed and depth.

    Source
    ------
    As `tool_life`.

    >>> life_ratio(0.5, 0.5)
    4.0
    """
    between(speed_ratio, 0.2, 2, "new speed as a share of the old")
    between(exponent, 0.05, 0.6, "exponent of tool life")
    return float(speed_ratio ** (-1 / exponent))
