"""An indicator on the saddle, on collars that the tool of the same saddle has just skimmed at one setting."""

from math import hypot, sqrt
from typing import Literal

from tailtrue.calc.difference_budget import DifferenceParts
from tailtrue.calc.validity import OutOfRange, at_least, finite, positive

Side = Literal["tool", "away"]

_MOST_OFF = 0.6  # of the radius: farther off, a plunger slides down the flank


def reading_difference(difference_mm: float, side: Side) -> float:
    """What an indicator on the saddle shows from collar to collar, for collars that differ by an amount.

    i_t - i_h = 0 on the tool side, D on the side away from the tool

    Parameters
    ----------
    difference_mm : Difference D of the diameters, tailstock collar less headstock collar. [mm]
    side : Side of the bar that the plunger touches: tool, away. [1]

    Returns
    -------
    Reading at the tailstock collar less reading at the headstock collar, more than 0 where the plunger is pushed
    in more at the tailstock collar; the same whether the tool stands in front or behind. [mm]

    Valid for
    ---------
    Both collars cut at one setting of the cross slide and not touched since; plunger level, at centre height. The
    tool side was cut along the path that the saddle repeats, so it lies at one distance from the plunger.

    Source
    ------
    Geometry, derived.

    >>> reading_difference(0.0667, "tool"), reading_difference(0.0667, "away")
    (0.0, 0.0667)
    """
    finite(difference_mm, "difference of the collars", "mm")
    if side not in ("tool", "away"):
        raise OutOfRange(f"side of the indicator is {side!r}; it must be tool or away")
    return difference_mm if side == "away" else 0.0


def difference_from_readings(headstock_mm: float, tailstock_mm: float, side: Side) -> float:
    """Difference of the diameters of two fresh skims, from an indicator on the saddle.

    D = i_t - i_h, plunger on the side away from the tool

    Parameters
    ----------
    headstock_mm : Reading i_h at the headstock collar, more where the plunger is pushed in. [mm]
    tailstock_mm : Reading i_t at the tailstock collar. [mm]
    side : Side of the bar that the plunger touches: tool, away. [1]

    Returns
    -------
    Difference D of the diameters, tailstock collar less headstock collar. [mm]

    Valid for
    ---------
    The side away from the tool; on the tool side the readings say nothing of the tailstock. Both collars cut at one
    setting and not touched since, the indicator not touched between the readings.

    Source
    ------
    Geometry, derived.

    >>> round(difference_from_readings(0.010, 0.052, "away"), 6)
    0.042
    """
    finite(headstock_mm, "reading at the headstock collar", "mm")
    finite(tailstock_mm, "reading at the tailstock collar", "mm")
    if side != "away":
        raise OutOfRange("on the tool side an indicator reads alike on fresh skims; put it on the side away from the tool")
    return tailstock_mm - headstock_mm


def height_effect(off_centre_mm: float, height_difference_mm: float, diameter_mm: float) -> float:
    """What a plunger off the height of the centres adds to the difference, when one collar lies higher.

    x = sqrt(R^2 - (d - h/2)^2) - sqrt(R^2 - (d + h/2)^2), near d h / R

    Parameters
    ----------
    off_centre_mm : Height d of the plunger over the mean height of the two axes. [mm]
    height_difference_mm : How much higher h one collar lies than the other. [mm]
    diameter_mm : Diameter 2 R of the collars. [mm]

    Returns
    -------
    Error x of the difference of the readings, as an amount. [mm]

    Valid for
    ---------
    Heights 0 or more, diameter more than 0, the plunger well on both collars (d + h/2 <= 0.6 R).

    Source
    ------
    Geometry of a circle, derived.

    >>> round(height_effect(1, 0.05, 70), 6)
    0.001429
    """
    at_least(off_centre_mm, 0, "height of the plunger off the centres", "mm")
    at_least(height_difference_mm, 0, "difference of height of the collars", "mm")
    positive(diameter_mm, "diameter of the collars", "mm")
    radius, half = diameter_mm / 2, height_difference_mm / 2
    if off_centre_mm + half > _MOST_OFF * radius:
        raise OutOfRange(
            f"the plunger touches {off_centre_mm + half:g} mm off the middle of a collar of radius {radius:g} mm; "
            "at most 0.6 of the radius"
        )
    return sqrt(radius**2 - (off_centre_mm - half) ** 2) - sqrt(radius**2 - (off_centre_mm + half) ** 2)


def skims_uncertainty(parts_mm: DifferenceParts, guidance_mm: float, height_mm: float) -> float:
    """Standard uncertainty of the difference of two fresh skims read with an indicator on the saddle.

    u^2 = sum parts^2 + (g^2 + x^2) / 3

    Parameters
    ----------
    parts_mm : Parts that an indicator has in common with two diameters read with one instrument. [mm]
    guidance_mm : Half width g of the path of the saddle by hand against its path under the cut, collar against collar. [mm]
    height_mm : Half width x from the height of the plunger. [mm]

    Returns
    -------
    Standard uncertainty u of the difference of the diameters. [mm]

    Valid for
    ---------
    Half widths 0 or more. Form, wear and bending count whole here; the plunger sees half of wear and bending.

    Source
    ------
    JCGM 100 (the GUM), clauses 4.3.7 and 5.1.2 (numbers from memory).

    >>> from tailtrue.calc.difference_budget import difference_parts
    >>> parts = difference_parts(0.0015, 2, 0.002, 0.002, 0.001, 0.000826, 0.001, 0.001)
    >>> round(skims_uncertainty(parts, 0.002, 0.001429), 6)
    0.002797
    """
    return hypot(*parts_mm, *guidance_parts(guidance_mm, height_mm))


def guidance_parts(guidance_mm: float, height_mm: float) -> tuple[float, float]:
    """Standard uncertainties that a reading along the bed has and a micrometer has not.

    parts = g / sqrt(3), x / sqrt(3)

    Parameters
    ----------
    guidance_mm : Half width g of the path of the saddle by hand against its path under the cut. [mm]
    height_mm : Half width x from the height of the plunger. [mm]

    Returns
    -------
    Standard uncertainties on the difference from guidance and from height. [mm]

    Valid for
    ---------
    Half widths 0 or more.

    Source
    ------
    JCGM 100 (the GUM), clause 4.3.7 (number from memory).

    >>> [round(part, 6) for part in guidance_parts(0.002, 0.001429)]
    [0.001155, 0.000825]
    """
    at_least(guidance_mm, 0, "half width of the path of the saddle", "mm")
    at_least(height_mm, 0, "half width from the height of the plunger", "mm")
    return guidance_mm / sqrt(3), height_mm / sqrt(3)
