"""A cut finer than the dial of the cross slide: the top slide set over at a small angle feeds a part of what it moves."""

from math import asin, degrees

from tailtrue.calc.validity import at_least, positive


def slide_angle(ratio: float) -> float:
    """Angle of the top slide from the line of the bed at which it feeds one part in so many across.

    alpha = asin(1 / r)

    Parameters
    ----------
    ratio : Ratio r of what the slide moves along itself to what it moves across. [1]

    Returns
    -------
    Angle alpha. [deg]

    Valid for
    ---------
    Ratio 1 or more; 1 is the slide square to the bed.

    Source
    ------
    Definition of the sine.

    >>> round(slide_angle(10), 2)
    5.74
    """
    at_least(ratio, 1, "ratio of the slide")
    return degrees(asin(1 / ratio))


def slide_step(division_mm: float, ratio: float) -> float:
    """Change of diameter for one division of the dial of a top slide that is set over.

    s = 2 d / r

    Parameters
    ----------
    division_mm : Division d of its dial, as it moves along itself. [mm]
    ratio : Ratio r of what it moves along itself to what it moves across. [1]

    Returns
    -------
    Change s of the diameter. [mm]

    Valid for
    ---------
    Division more than 0, ratio 1 or more.

    Source
    ------
    Definition of the sine; a cut comes off both sides.

    >>> round(slide_step(0.05, 10), 6)
    0.01
    """
    positive(division_mm, "division of the dial", "mm")
    at_least(ratio, 1, "ratio of the slide")
    return 2 * division_mm / ratio
