"""The finish that feed and nose radius leave, and the feed for a finish."""

from math import sqrt
from typing import NamedTuple

from tailtrue.calc.cutting import theoretical_peak_height
from tailtrue.calc.validity import at_least, between, positive


class Roughness(NamedTuple):
    """Between what a real surface is expected to lie."""

    low_mm: float
    high_mm: float


def roughness_average(feed_mm: float, nose_radius_mm: float) -> float:
    """Mean roughness that a round tool nose leaves on paper.

    Ra = f^2 / (32 r)

    Parameters
    ----------
    feed_mm : Feed f per turn. [mm/rev]
    nose_radius_mm : Radius r of the tool nose. [mm]

    Returns
    -------
    Mean roughness Ra, a quarter of the height of the ridges; a real surface is rougher. [mm]

    Valid for
    ---------
    As `theoretical_peak_height`.

    Source
    ------
    Textbook geometry; the rule is 3 % below the exact mean of a parabola.

    >>> round(roughness_average(0.2, 0.4), 6)
    0.003125
    """
    return theoretical_peak_height(feed_mm, nose_radius_mm) / 4


def expected_roughness(feed_mm: float, nose_radius_mm: float, low_factor: float, high_factor: float) -> Roughness:
    """Band in which the mean roughness of a real turned surface lies; an estimate.

    Ra = k f^2 / (32 r), k from the low to the high factor

    Parameters
    ----------
    feed_mm : Feed f per turn. [mm/rev]
    nose_radius_mm : Radius r of the tool nose. [mm]
    low_factor : Factor k of a good cut, 1.5 for high speed steel on mild steel. [1]
    high_factor : Factor k of a poor one, 3 for the same. [1]

    Returns
    -------
    Lower and upper mean roughness. [mm, mm]

    Valid for
    ---------
    As `roughness_average`, factors 1 or more and in order; a built-up edge leaves worse.

    Source
    ------
    Factors are common practice.

    >>> low, high = expected_roughness(0.2, 0.4, 1.5, 3)
    >>> round(low, 5), round(high, 5)
    (0.00469, 0.00938)
    """
    at_least(low_factor, 1, "factor of a good cut")
    at_least(high_factor, low_factor, "factor of a poor cut")
    smooth = roughness_average(feed_mm, nose_radius_mm)
    return Roughness(low_factor * smooth, high_factor * smooth)


def feed_for_peak_height(peak_height_mm: float, nose_radius_mm: float) -> float:
    """Largest feed that keeps the ridges of a round tool nose below a height.

    f = sqrt(8 r Rt)

    Parameters
    ----------
    peak_height_mm : Height Rt from valley to peak. [mm]
    nose_radius_mm : Radius r of the tool nose. [mm]

    Returns
    -------
    Feed f per turn. [mm/rev]

    Valid for
    ---------
    Both more than 0, the feed at most half the nose radius.

    Source
    ------
    `theoretical_peak_height` turned round.

    >>> round(feed_for_peak_height(0.0125, 0.4), 6)
    0.2
    """
    positive(peak_height_mm, "height of the ridges", "mm")
    positive(nose_radius_mm, "nose radius", "mm")
    feed = sqrt(8 * nose_radius_mm * peak_height_mm)
    between(feed / nose_radius_mm, 0, 0.5, "feed as a share of the nose radius")
    return feed
