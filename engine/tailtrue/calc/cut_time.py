"""Time of passes and holes with all the tool travels: approach, run-out, drill point, way back."""

from math import pi

from tailtrue.calc.cutting import cut_time
from tailtrue.calc.drilling import point_length
from tailtrue.calc.validity import OutOfRange, at_least, positive


def pass_time(
    length_mm: float, approach_mm: float, overrun_mm: float, feed_mm: float, spindle_speed_per_min: float
) -> float:
    """Time of one cut along a length, from where the feed goes in to where it goes out.

    t = 60 (L + la + lo) / (f n)

    Parameters
    ----------
    length_mm : Length L of the work that is cut. [mm]
    approach_mm : Travel la before the tool meets the work. [mm]
    overrun_mm : Travel lo past the end of the work, 0 up to a shoulder. [mm]
    feed_mm : Feed f per turn. [mm/rev]
    spindle_speed_per_min : Spindle speed n. [1/min]

    Returns
    -------
    Time t of the cut, without the way back. [s]

    Valid for
    ---------
    Length, feed and speed more than 0, approach and run-out 0 or more; a steady feed.

    Source
    ------
    Definition of feed; worked textbook problems agree.

    >>> pass_time(100, 3, 2, 0.1, 300)
    210.0
    """
    positive(length_mm, "length", "mm")
    at_least(approach_mm, 0, "approach", "mm")
    at_least(overrun_mm, 0, "run-out", "mm")
    return cut_time(length_mm + approach_mm + overrun_mm, feed_mm, spindle_speed_per_min)


def passes_time(pass_s: float, travel_mm: float, return_mm_s: float, passes: int, reset_s: float = 0.0) -> float:
    """Time of several equal passes, each with its way back.

    T = k (t + s / w + r)

    Parameters
    ----------
    pass_s : Time t of one cut. [s]
    travel_mm : Way s back to the start. [mm]
    return_mm_s : Speed w of the carriage on the way back. [mm/s]
    passes : Number k of passes. [1]
    reset_s : Time r to set the dial and stop or start for one pass. [s]

    Returns
    -------
    Time T of all passes. [s]

    Valid for
    ---------
    Time, way and speed more than 0, at least one pass, setting time 0 or more; measuring is not counted.

    Source
    ------
    Sum of times.

    >>> passes_time(210, 105, 10.5, 3)
    660.0
    """
    positive(pass_s, "time of a cut", "s")
    positive(travel_mm, "way back", "mm")
    positive(return_mm_s, "speed on the way back", "mm/s")
    at_least(passes, 1, "number of passes")
    at_least(reset_s, 0, "time to set the dial", "s")
    return passes * (pass_s + travel_mm / return_mm_s + reset_s)


def facing_pass_time(
    outer_mm: float, inner_mm: float, approach_mm: float, overrun_mm: float, feed_mm: float, spindle_speed_per_min: float
) -> float:
    """Time to face a solid end or a ring at a constant spindle speed.

    t = 60 ((D - d) / 2 + la + lo) / (f n)

    Parameters
    ----------
    outer_mm : Outside diameter D of the face. [mm]
    inner_mm : Diameter d of the hole in it, 0 for a solid end. [mm]
    approach_mm : Travel la before the tool meets the work. [mm]
    overrun_mm : Travel lo past the middle or into the hole. [mm]
    feed_mm : Feed f per turn. [mm/rev]
    spindle_speed_per_min : Spindle speed n. [1/min]

    Returns
    -------
    Time t of one pass over the face. [s]

    Valid for
    ---------
    Outside diameter, feed and speed more than 0, the others 0 or more, the hole smaller than the face.

    Source
    ------
    Geometry, with `pass_time`.

    >>> facing_pass_time(50, 0, 0, 0, 0.1, 300)
    50.0
    """
    at_least(inner_mm, 0, "hole in the face", "mm")
    positive(outer_mm, "diameter of the face", "mm")
    if inner_mm >= outer_mm:
        raise OutOfRange(f"the hole is {inner_mm:g} mm and the face {outer_mm:g} mm; the hole must be smaller")
    return pass_time((outer_mm - inner_mm) / 2, approach_mm, overrun_mm, feed_mm, spindle_speed_per_min)


def drill_travel(depth_mm: float, diameter_mm: float, overrun_mm: float, point_angle_deg: float) -> float:
    """Travel of a drill from where its tip meets the work until the full hole is deep enough.

    s = L + (D / 2) / tan(sigma / 2) + lo

    Parameters
    ----------
    depth_mm : Depth L of the full diameter: the width of the work for a through hole. [mm]
    diameter_mm : Diameter D of the drill. [mm]
    overrun_mm : Travel lo past the far side, 0 in a blind hole. [mm]
    point_angle_deg : Full angle sigma of the point. [deg]

    Returns
    -------
    Travel s, also the quill travel that the hole needs. [mm]

    Valid for
    ---------
    Depth more than 0, run-out 0 or more, the point as in `point_length`.

    Source
    ------
    Geometry.

    >>> round(drill_travel(25, 20, 0, point_angle_deg=118), 3)
    31.009
    """
    positive(depth_mm, "depth of the hole", "mm")
    at_least(overrun_mm, 0, "run-out", "mm")
    return depth_mm + point_length(diameter_mm, point_angle_deg) + overrun_mm


def drilling_time(
    depth_mm: float,
    diameter_mm: float,
    feed_mm: float,
    spindle_speed_per_min: float,
    overrun_mm: float,
    point_angle_deg: float,
) -> float:
    """Time to drill a hole without a pause, the point of the drill counted in.

    t = 60 (L + A + lo) / (f n)

    Parameters
    ----------
    depth_mm : Depth L of the full diameter. [mm]
    diameter_mm : Diameter D of the drill, whose point is A long. [mm]
    feed_mm : Feed f per turn. [mm/rev]
    spindle_speed_per_min : Spindle speed n. [1/min]
    overrun_mm : Travel lo past the far side. [mm]
    point_angle_deg : Full angle of the point. [deg]

    Returns
    -------
    Time t of cutting; every peck adds its way out and in. [s]

    Valid for
    ---------
    As `drill_travel` and `cut_time`; a hand feed as steady as a power feed.

    Source
    ------
    Geometry with `cut_time`; textbook drilling problems, some of which leave out the point.

    >>> round(drilling_time(60, 12.7, 0.3, 626.6, overrun_mm=0, point_angle_deg=118), 2)
    20.37
    """
    return cut_time(drill_travel(depth_mm, diameter_mm, overrun_mm, point_angle_deg), feed_mm, spindle_speed_per_min)


def feed_for_time(length_mm: float, time_s: float, spindle_speed_per_min: float) -> float:
    """Feed per turn that a hand keeps when it covers a length in a time.

    f = 60 L / (t n)

    Parameters
    ----------
    length_mm : Length L that the tool travels. [mm]
    time_s : Time t it takes. [s]
    spindle_speed_per_min : Spindle speed n. [1/min]

    Returns
    -------
    Feed f per turn. [mm/rev]

    Valid for
    ---------
    All more than 0.

    Source
    ------
    `cut_time` turned round.

    >>> feed_for_time(100, 60, 1000)
    0.1
    """
    positive(length_mm, "length", "mm")
    positive(time_s, "time", "s")
    positive(spindle_speed_per_min, "spindle speed", "1/min")
    return 60 * length_mm / (time_s * spindle_speed_per_min)


def drill_removal_rate(
    diameter_mm: float, feed_mm: float, spindle_speed_per_min: float, pilot_diameter_mm: float = 0.0
) -> float:
    """Volume of metal that a drill takes out per minute, from solid or opening a hole.

    Q = pi (D^2 - d^2) f n / 4000

    Parameters
    ----------
    diameter_mm : Diameter D of the drill. [mm]
    feed_mm : Feed f per turn. [mm/rev]
    spindle_speed_per_min : Spindle speed n. [1/min]
    pilot_diameter_mm : Diameter d of the hole it opens, 0 for none. [mm]

    Returns
    -------
    Volume per minute Q. [cm3/min]

    Valid for
    ---------
    Diameter, feed and speed more than 0; the pilot from 0 to below the diameter.

    Source
    ------
    Geometry.

    >>> round(drill_removal_rate(10, 0.25, 954.93), 2)
    18.75
    """
    positive(diameter_mm, "diameter of the drill", "mm")
    positive(feed_mm, "feed", "mm/rev")
    positive(spindle_speed_per_min, "spindle speed", "1/min")
    at_least(pilot_diameter_mm, 0, "pilot", "mm")
    if pilot_diameter_mm >= diameter_mm:
        raise OutOfRange(f"the pilot is {pilot_diameter_mm:g} mm; it must be smaller than the drill of {diameter_mm:g} mm")
    return pi * (diameter_mm**2 - pilot_diameter_mm**2) * feed_mm * spindle_speed_per_min / 4000
