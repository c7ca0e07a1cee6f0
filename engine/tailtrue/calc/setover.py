"""Setting the tailstock over on purpose, to turn a taper between centres, and what taper a set-over gives.

A taper here is the loss of diameter for each millimetre along the axis, so it is twice the slope of the side.
"""

from math import atan, degrees, hypot, radians, sqrt, tan

from tailtrue.calc.validity import OutOfRange, at_least, between, positive

_INCHES_PER_FOOT = 12
_MOST_HALF_ANGLE_RULE_DEG = 4.0  # the first-order rule is then right within 0.25 %
_MOST_HALF_ANGLE_EXACT_DEG = 15.0  # far beyond what centre holes bear
_SIGN_OF_SMALL_END = {"tailstock": 1, "headstock": -1}


def taper_per_foot(inches_per_foot: float) -> float:
    """Taper for each unit of length, from inches on the diameter for each foot.

    t = TPF / 12

    Parameters
    ----------
    inches_per_foot : Taper TPF, inches on the diameter for each foot of length. [1]

    Returns
    -------
    Taper t on the diameter. [mm/mm]

    Valid for
    ---------
    More than 0.

    Source
    ------
    Definition: a foot has 12 inches.

    >>> round(taper_per_foot(0.6), 9)
    0.05
    """
    positive(inches_per_foot, "taper per foot", "in")
    return inches_per_foot / _INCHES_PER_FOOT


def taper_from_diameters(large_diameter_mm: float, small_diameter_mm: float, length_mm: float) -> float:
    """Taper for each unit of length, from the diameters of its two ends.

    t = (D - d) / l

    Parameters
    ----------
    large_diameter_mm : Diameter D at the large end. [mm]
    small_diameter_mm : Diameter d at the small end. [mm]
    length_mm : Length l of the tapered part along the axis. [mm]

    Returns
    -------
    Taper t on the diameter. [mm/mm]

    Valid for
    ---------
    0 <= d <= D, length more than 0.

    Source
    ------
    Definition.

    >>> round(taper_from_diameters(63.5, 50.8, 152.4), 9)
    0.083333333
    """
    positive(large_diameter_mm, "large diameter", "mm")
    between(small_diameter_mm, 0, large_diameter_mm, "small diameter", "mm")
    positive(length_mm, "length of the taper", "mm")
    return (large_diameter_mm - small_diameter_mm) / length_mm


def taper_from_half_angle(half_angle_deg: float) -> float:
    """Taper for each unit of length, from the angle between side and axis.

    t = 2 tan(alpha)

    Parameters
    ----------
    half_angle_deg : Angle alpha between the side and the axis, half of the included angle. [deg]

    Returns
    -------
    Taper t on the diameter. [mm/mm]

    Valid for
    ---------
    Half angle from 0 to 15 degrees.

    Source
    ------
    Geometry.

    >>> round(taper_from_half_angle(1.5), 6)
    0.052372
    """
    between(half_angle_deg, 0, _MOST_HALF_ANGLE_EXACT_DEG, "half angle of the taper", "degrees")
    return 2 * tan(radians(half_angle_deg))


def half_angle_of_taper(taper_mm_per_mm: float) -> float:
    """Angle between side and axis of a taper.

    alpha = atan(t / 2)

    Parameters
    ----------
    taper_mm_per_mm : Taper t on the diameter. [mm/mm]

    Returns
    -------
    Half angle alpha. [deg]

    Valid for
    ---------
    Half angle from 0 to 15 degrees.

    Source
    ------
    Geometry.

    >>> round(half_angle_of_taper(1 / 12), 4)
    2.3859
    """
    at_least(taper_mm_per_mm, 0, "taper", "mm/mm")
    angle = degrees(atan(taper_mm_per_mm / 2))
    between(angle, 0, _MOST_HALF_ANGLE_EXACT_DEG, "half angle of the taper", "degrees")
    return angle


def setover_by_rule(taper_mm_per_mm: float, span_mm: float) -> float:
    """Set-over of the tailstock for a taper, by the rule of the trade.

    s = t L / 2

    Parameters
    ----------
    taper_mm_per_mm : Taper t on the diameter. [mm/mm]
    span_mm : Distance L between the centres, the whole bar and not the tapered part. [mm]

    Returns
    -------
    Set-over s of the centre from the line. [mm]

    Valid for
    ---------
    Half angle from 0 to 4 degrees (the rule then gives at most 0.25 % too much), span more than 0.

    Source
    ------
    Turning and Boring (1914), taper chapter; the same rule in a US Navy manual and in Modern Machine-Shop Practice.

    >>> round(setover_by_rule(1 / 12, 228.6), 6)
    9.525
    """
    between(half_angle_of_taper(taper_mm_per_mm), 0, _MOST_HALF_ANGLE_RULE_DEG, "half angle of the taper", "degrees")
    positive(span_mm, "span", "mm")
    return taper_mm_per_mm * span_mm / 2


def setover_exact(taper_mm_per_mm: float, bar_span_mm: float) -> float:
    """Set-over of the tailstock for a taper, the bar standing aslant between the centres.

    s = l sin(atan(t / 2))

    Parameters
    ----------
    taper_mm_per_mm : Taper t on the diameter. [mm/mm]
    bar_span_mm : Distance l between the places where the centres bear, along the bar. [mm]

    Returns
    -------
    Set-over s of the centre from the line. [mm]

    Valid for
    ---------
    Half angle from 0 to 15 degrees, span more than 0; the point of the tool at centre height.

    Source
    ------
    Geometry, derived.

    >>> round(setover_exact(1 / 12, 914.4) / 25.4, 4)
    1.4987
    """
    half_angle_of_taper(taper_mm_per_mm)
    positive(bar_span_mm, "span", "mm")
    slope = taper_mm_per_mm / 2
    return bar_span_mm * slope / hypot(1, slope)


def taper_from_setover(setover_mm: float, bar_span_mm: float) -> float:
    """Taper that a set-over of the tailstock turns.

    t = 2 s / sqrt(l^2 - s^2)

    Parameters
    ----------
    setover_mm : Set-over s of the centre from the line. [mm]
    bar_span_mm : Distance l between the places where the centres bear, along the bar. [mm]

    Returns
    -------
    Taper t on the diameter; the same set-over on half the length turns twice the taper. [mm/mm]

    Valid for
    ---------
    Set-over 0 or more, half angle at most 15 degrees; the point of the tool at centre height.

    Source
    ------
    `setover_exact` turned round.

    >>> round(taper_from_setover(9.525, 228.6), 5)
    0.08341
    """
    positive(bar_span_mm, "span", "mm")
    between(setover_mm, 0, bar_span_mm / 2, "set-over", "mm")
    taper = 2 * setover_mm / sqrt(bar_span_mm**2 - setover_mm**2)
    half_angle_of_taper(taper)
    return taper


def working_span(overall_length_mm: float, headstock_depth_mm: float, tailstock_depth_mm: float) -> float:
    """Length of a bar that counts for a set-over: between the places where the centres bear.

    L = l - c_h - c_t

    Parameters
    ----------
    overall_length_mm : Length l of the bar over both faces. [mm]
    headstock_depth_mm : Depth c_h to which the headstock centre enters. [mm]
    tailstock_depth_mm : Depth c_t to which the tailstock centre enters. [mm]

    Returns
    -------
    Length L between the points of the centres. [mm]

    Valid for
    ---------
    Depths 0 or more and together less than the length.

    Source
    ------
    Turning and Boring Tapers (1902): centre holes shorten the bar.

    >>> round(working_span(609.6, 3.175, 3.175) / 25.4, 6)
    23.75
    """
    positive(overall_length_mm, "length of the bar", "mm")
    at_least(headstock_depth_mm, 0, "depth of the headstock centre hole", "mm")
    at_least(tailstock_depth_mm, 0, "depth of the tailstock centre hole", "mm")
    span = overall_length_mm - headstock_depth_mm - tailstock_depth_mm
    positive(span, "length between the centres", "mm")
    return span


def steepest_taper(span_mm: float, travel_mm: float, greatest_share: float) -> float:
    """Steepest taper that can be turned by set-over: the tailstock or the centre holes set the limit.

    t = 2 min(travel, share L) / L

    Parameters
    ----------
    span_mm : Distance L between the centres. [mm]
    travel_mm : Farthest that the tailstock goes over to that side. [mm]
    greatest_share : Largest set-over that the centre holes bear, as a share of L. [1]

    Returns
    -------
    Steepest taper t on the diameter. [mm/mm]

    Valid for
    ---------
    Span more than 0, travel 0 or more, share from 0 to 0.07 (the rule of the set-over then holds).

    Source
    ------
    Geometry, derived; the share is a figure of the trade and is handed in.

    >>> round(steepest_taper(300, 12, 0.02), 6)
    0.04
    """
    positive(span_mm, "span", "mm")
    at_least(travel_mm, 0, "travel of the tailstock across", "mm")
    between(greatest_share, 0, 0.07, "largest set-over as a share of the span")
    return 2 * min(travel_mm / span_mm, greatest_share)


def setover_toward_tool(setover_mm: float, small_end: str) -> float:
    """Set-over with its direction, from the end of the taper that is to be small.

    m = s with the small end at the tailstock, m = -s with the small end at the headstock

    Parameters
    ----------
    setover_mm : Set-over s, as an amount. [mm]
    small_end : End of the bar at which the taper is small, tailstock or headstock. [1]

    Returns
    -------
    Move m of the tailstock centre from the line, more than 0 toward the tool. [mm]

    Valid for
    ---------
    Set-over 0 or more; no direction is given when the small end is not known.

    Source
    ------
    Geometry, derived: the tool cuts deeper where the axis comes nearer to it.

    >>> setover_toward_tool(9.525, "headstock")
    -9.525
    """
    at_least(setover_mm, 0, "set-over", "mm")
    if small_end not in _SIGN_OF_SMALL_END:
        raise OutOfRange(f"small end is {small_end!r}; it must be tailstock or headstock, or no direction can be given")
    return _SIGN_OF_SMALL_END[small_end] * setover_mm
