"""Turning, facing and boring: speed, force, power, time and finish of a cut."""

from math import ceil, pi

from tailtrue.calc.validity import between, positive

_MOST_PASSES = 1000
_SLACK = 1e-9  # a stock of exactly so many passes must not ask for one more


def spindle_speed(surface_speed_m_min: float, diameter_mm: float) -> float:
    """Spindle speed that gives a surface speed at a diameter.

    n = 1000 v / (pi d)

    Parameters
    ----------
    surface_speed_m_min : Surface speed v at the cutting point. [m/min]
    diameter_mm : Diameter d where the tool cuts, before the cut. [mm]

    Returns
    -------
    Spindle speed n, a count of turns per minute, not an angle. [1/min]

    Valid for
    ---------
    Both more than 0; the caller caps the result at the limits of lathe, chuck and work.

    Source
    ------
    War Department TM 1-420, Changes no. 1 (1942), par. 8, gives the same rule in inches.

    >>> round(spindle_speed(25, 12), 2)
    663.15
    """
    positive(surface_speed_m_min, "surface speed", "m/min")
    positive(diameter_mm, "diameter", "mm")
    return 1000 * surface_speed_m_min / (pi * diameter_mm)


def surface_speed(spindle_speed_per_min: float, diameter_mm: float) -> float:
    """Surface speed at a diameter when the spindle turns at a given speed.

    v = pi d n / 1000

    Parameters
    ----------
    spindle_speed_per_min : Spindle speed n, turns per minute. [1/min]
    diameter_mm : Diameter d where the tool cuts, before the cut. [mm]

    Returns
    -------
    Surface speed v. [m/min]

    Valid for
    ---------
    Both more than 0.

    Source
    ------
    The rule of `spindle_speed` turned round.

    >>> round(surface_speed(300, 25), 2)
    23.56
    """
    positive(spindle_speed_per_min, "spindle speed", "1/min")
    positive(diameter_mm, "diameter", "mm")
    return pi * diameter_mm * spindle_speed_per_min / 1000


def specific_force(kc11_mpa: float, mc: float, chip_thickness_mm: float) -> float:
    """Specific cutting force of a metal at a chip thickness (Kienzle).

    kc = kc1.1 h^-mc, h in mm

    Parameters
    ----------
    kc11_mpa : Specific force kc1.1 of a chip 1 mm thick and 1 mm wide. [MPa]
    mc : Exponent mc of the metal. [1]
    chip_thickness_mm : Undeformed chip thickness h; at an approach of 90 degrees the feed. [mm]

    Returns
    -------
    Specific cutting force kc. [MPa]

    Valid for
    ---------
    h 0.02 to 2.5 mm, mc 0 to 1. Below 0.05 mm the edge also ploughs, which the law does not know (20 to
    50 % more): such a result is an estimate.

    Source
    ------
    Metal groups of VDI 3323 as reprinted in a tool maker's catalogue; the ploughing share is from memory.

    >>> round(specific_force(1350, 0.21, 0.15), 1)
    2010.7
    """
    positive(kc11_mpa, "specific force kc1.1", "MPa")
    between(mc, 0, 1, "exponent mc")
    between(chip_thickness_mm, 0.02, 2.5, "chip thickness", "mm")
    return float(kc11_mpa * chip_thickness_mm**-mc)


def cutting_force(kc11_mpa: float, mc: float, depth_mm: float, feed_mm: float) -> float:
    """Main cutting force of a turning cut with an approach of 90 degrees.

    Fc = kc1.1 f^-mc ap f

    Parameters
    ----------
    kc11_mpa : Specific force kc1.1 of the metal. [MPa]
    mc : Exponent mc of the metal. [1]
    depth_mm : Depth of cut ap per side, not on diameter. [mm]
    feed_mm : Feed f per turn, here equal to the chip thickness. [mm/rev]

    Returns
    -------
    Main (tangential) cutting force Fc of a sharp tool. [N]

    Valid for
    ---------
    Depth more than 0, feed as the chip thickness of `specific_force`. A worn edge, the low speed of high
    speed steel and boring raise the force: the caller multiplies.

    Source
    ------
    As `specific_force`.

    >>> round(cutting_force(1350, 0.21, depth_mm=1, feed_mm=0.15), 1)
    301.6
    """
    positive(depth_mm, "depth of cut", "mm")
    return specific_force(kc11_mpa, mc, feed_mm) * depth_mm * feed_mm


def cutting_power(force_n: float, surface_speed_m_min: float) -> float:
    """Power that a cutting force takes at a surface speed, at the tool.

    P = Fc v / 60

    Parameters
    ----------
    force_n : Main cutting force Fc. [N]
    surface_speed_m_min : Surface speed v. [m/min]

    Returns
    -------
    Power P at the tool; the motor gives this divided by the efficiency of the drive. [W]

    Valid for
    ---------
    Both more than 0.

    Source
    ------
    Definition of power.

    >>> round(cutting_power(301.6, 30), 1)
    150.8
    """
    positive(force_n, "cutting force", "N")
    positive(surface_speed_m_min, "surface speed", "m/min")
    return force_n * surface_speed_m_min / 60


def cut_time(length_mm: float, feed_mm: float, spindle_speed_per_min: float) -> float:
    """Time of one pass along a length at a steady feed.

    t = 60 L / (f n)

    Parameters
    ----------
    length_mm : Length L the tool travels: cut, approach, run-out, and the point of a drill. [mm]
    feed_mm : Feed f per turn. [mm/rev]
    spindle_speed_per_min : Spindle speed n. [1/min]

    Returns
    -------
    Time t of the pass. [s]

    Valid for
    ---------
    All more than 0; power feed, or a hand feed as steady as that.

    Source
    ------
    Definition of feed; worked textbook problems agree.

    >>> cut_time(100, 0.02, 1000)
    300.0
    """
    positive(length_mm, "length", "mm")
    positive(feed_mm, "feed", "mm/rev")
    positive(spindle_speed_per_min, "spindle speed", "1/min")
    return 60 * length_mm / (feed_mm * spindle_speed_per_min)


def passes_for_stock(stock_on_diameter_mm: float, depth_mm: float) -> int:
    """Number of equal passes that take off what stands on a diameter, outside or in a bore.

    k = s / (2 ap), up to a whole number, 1 at least

    Parameters
    ----------
    stock_on_diameter_mm : Stock s on diameter. [mm]
    depth_mm : Deepest cut ap per side, not on diameter. [mm]

    Returns
    -------
    Number k of passes. [1]

    Valid for
    ---------
    Stock 0 or more, depth more than 0; at most 1000 passes.

    Source
    ------
    Geometry.

    >>> passes_for_stock(3, 0.4)
    4
    """
    positive(depth_mm, "depth of a pass", "mm")
    passes = stock_on_diameter_mm / (2 * depth_mm)
    between(passes, 0, _MOST_PASSES, "number of passes")
    return max(1, ceil(passes - _SLACK))


def theoretical_peak_height(feed_mm: float, nose_radius_mm: float) -> float:
    """Height of the ridges a round tool nose leaves between two turns.

    Rt = f^2 / (8 r)

    Parameters
    ----------
    feed_mm : Feed f per turn. [mm/rev]
    nose_radius_mm : Radius r of the tool nose. [mm]

    Returns
    -------
    Height Rt from valley to peak; a real surface is rougher. [mm]

    Valid for
    ---------
    Feed more than 0 and at most half the nose radius.

    Source
    ------
    Geometry (the arc taken as a parabola).

    >>> round(theoretical_peak_height(0.2, 0.4), 6)
    0.0125
    """
    positive(feed_mm, "feed", "mm/rev")
    positive(nose_radius_mm, "nose radius", "mm")
    between(feed_mm / nose_radius_mm, 0, 0.5, "feed as a share of the nose radius")
    return feed_mm**2 / (8 * nose_radius_mm)


def removal_rate(surface_speed_m_min: float, depth_mm: float, feed_mm: float) -> float:
    """Volume of metal that a turning cut takes off per minute.

    Q = v ap f

    Parameters
    ----------
    surface_speed_m_min : Surface speed v. [m/min]
    depth_mm : Depth of cut ap per side. [mm]
    feed_mm : Feed f per turn. [mm/rev]

    Returns
    -------
    Volume per minute Q. [cm3/min]

    Valid for
    ---------
    All more than 0; depth small against the diameter.

    Source
    ------
    Geometry.

    >>> round(removal_rate(30, depth_mm=1, feed_mm=0.15), 6)
    4.5
    """
    positive(surface_speed_m_min, "surface speed", "m/min")
    positive(depth_mm, "depth of cut", "mm")
    positive(feed_mm, "feed", "mm/rev")
    return surface_speed_m_min * depth_mm * feed_mm
