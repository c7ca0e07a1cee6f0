"""How a bore is judged: errors of the hand, uncertainty of a reading, plugs, and reamers for a hole."""

from math import ceil, cos, radians, sqrt
from typing import NamedTuple

from tailtrue.calc.validity import at_least, between, positive

_MOST_TILT_DEG = 5.0  # beyond this a gauge is plainly askew
_MOST_OFFSET_SHARE = 0.1  # of the diameter, likewise
_MOST_GAUGE_SHARE = 0.5  # beyond this the plugs leave too little of the tolerance to the work
_REAMER_BELOW_SHARE = 0.15  # of the hole's tolerance, left above the largest reamer
_REAMER_TOLERANCE_SHARE = 0.35  # of the hole's tolerance, given to the maker of the reamer


class GaugeShares(NamedTuple):
    """Two ways to compare a tolerance with an uncertainty; they differ by the factor of two."""

    ratio_to_double_uncertainty: float
    uncertainty_share: float


class PlugLimits(NamedTuple):
    """Limits of size of the two ends of a plug gauge, on diameter."""

    go_least_mm: float
    go_largest_mm: float
    no_go_least_mm: float
    no_go_largest_mm: float


def tilt_error(diameter_mm: float, tilt_deg: float) -> float:
    """Error of a two-point bore gauge that leans over along the bore: it reads too large.

    e = d / cos(t) - d

    Parameters
    ----------
    diameter_mm : Diameter d of the bore. [mm]
    tilt_deg : Angle t between the gauge and the plane across the bore. [deg]

    Returns
    -------
    Error e of the reading, on diameter, never less than 0. [mm]

    Valid for
    ---------
    Diameter more than 0, tilt at most 5 degrees either way.

    Source
    ------
    Geometry, derived.

    >>> round(tilt_error(25, 2), 4)
    0.0152
    """
    positive(diameter_mm, "diameter of the bore", "mm")
    between(tilt_deg, -_MOST_TILT_DEG, _MOST_TILT_DEG, "tilt of the gauge", "degrees")
    return diameter_mm / cos(radians(tilt_deg)) - diameter_mm


def chord_error(diameter_mm: float, offset_mm: float) -> float:
    """Error of a two-point bore gauge that does not lie on the diameter: it reads too small.

    e = (d^2 - 4 x^2)^0.5 - d

    Parameters
    ----------
    diameter_mm : Diameter d of the bore. [mm]
    offset_mm : Distance x of the measured chord from the axis. [mm]

    Returns
    -------
    Error e of the reading, on diameter, never more than 0. [mm]

    Valid for
    ---------
    Diameter more than 0, offset at most a tenth of it either way.

    Source
    ------
    Geometry, derived.

    >>> round(chord_error(25, 0.25), 4)
    -0.005
    """
    positive(diameter_mm, "diameter of the bore", "mm")
    between(abs(offset_mm) / diameter_mm, 0, _MOST_OFFSET_SHARE, "offset of the gauge as a share of the diameter")
    return sqrt(diameter_mm**2 - 4 * offset_mm**2) - diameter_mm


def bore_reading_uncertainty(
    instrument_mm: float, reading_mm: float, feel_mm: float, readings: int, temperature_mm: float, form_mm: float
) -> float:
    """Standard uncertainty of a bore that is taken off with a telescoping gauge and a micrometer.

    u^2 = (i^2 + r^2 + t^2 + f^2) / 3 + s^2 / n

    Parameters
    ----------
    instrument_mm : Largest error i of the micrometer. [mm]
    reading_mm : Half width r of reading it. [mm]
    feel_mm : Standard deviation s of one setting of the gauge by feel. [mm]
    readings : Settings n of which the mean is taken, the gauge set anew for each. [1]
    temperature_mm : Half width t from the parts not being equally warm, on diameter. [mm]
    form_mm : Half width f from the bore not being round and straight. [mm]

    Returns
    -------
    Standard uncertainty u of the diameter of the bore. [mm]

    Valid for
    ---------
    All 0 or more, at least one setting. Feel outweighs the rest: measure your own on a bore of known size.

    Source
    ------
    Budget after JCGM 100 (the GUM); the choice of its parts is common practice.

    >>> round(bore_reading_uncertainty(0.004, 0.002, 0.008, 3, 0.00177, 0.003), 5)
    0.00566
    """
    at_least(readings, 1, "number of settings")
    at_least(feel_mm, 0, "scatter of feel", "mm")
    at_least(instrument_mm, 0, "error of the micrometer", "mm")
    at_least(reading_mm, 0, "half width of reading", "mm")
    at_least(temperature_mm, 0, "half width of temperature", "mm")
    at_least(form_mm, 0, "half width of form", "mm")
    rectangular = instrument_mm**2 + reading_mm**2 + temperature_mm**2 + form_mm**2
    return sqrt(rectangular / 3 + feel_mm**2 / readings)


def gauge_shares(tolerance_mm: float, uncertainty_mm: float) -> GaugeShares:
    """Whether a gauge is good enough for a tolerance, in the two ways in use.

    ratio = T / (2 U), share = U / T

    Parameters
    ----------
    tolerance_mm : Width T of the tolerance, on diameter. [mm]
    uncertainty_mm : Expanded uncertainty U of the gauge. [mm]

    Returns
    -------
    Ratio of the tolerance to twice the uncertainty (4 is asked for where ratios are meant), and uncertainty
    as a share of the tolerance (a tenth is asked for, a fifth often reached). [1, 1]

    Valid for
    ---------
    Both more than 0.

    Source
    ------
    Definition of ANSI/NCSL Z540.3-2006 as a public column gives it; ten per cent rule of a national
    laboratory's question page.

    >>> [round(value, 2) for value in gauge_shares(0.021, 0.0113)]
    [0.93, 0.54]
    """
    positive(tolerance_mm, "tolerance", "mm")
    positive(uncertainty_mm, "expanded uncertainty", "mm")
    return GaugeShares(tolerance_mm / (2 * uncertainty_mm), uncertainty_mm / tolerance_mm)


def plug_limits(bore_least_mm: float, bore_largest_mm: float, share: float) -> PlugLimits:
    """Sizes of a GO and a NO-GO plug for a bore, a share of its tolerance given to the two plugs.

    GO = B_least to B_least + q T / 2, NO-GO = B_largest - q T / 2 to B_largest, T = B_largest - B_least

    Parameters
    ----------
    bore_least_mm : Least bore B_least that is accepted. [mm]
    bore_largest_mm : Largest bore B_largest that is accepted. [mm]
    share : Share q of the tolerance that both plugs together may take; a tenth is usual. [1]

    Returns
    -------
    Least and largest GO, least and largest NO-GO. [mm, mm, mm, mm]

    Valid for
    ---------
    Bores more than 0, the largest more than the least, share from 0 to 0.5. Plugs inside these limits refuse
    some good bores and accept no bad one.

    Source
    ------
    Gauge makers' guidance that cites ASME B89.1.5.

    >>> [round(size, 4) for size in plug_limits(24.999, 25.041, share=0.1)]
    [24.999, 25.0011, 25.0389, 25.041]
    """
    positive(bore_least_mm, "least bore", "mm")
    positive(bore_largest_mm - bore_least_mm, "tolerance of the bore", "mm")
    between(share, 0, _MOST_GAUGE_SHARE, "share of the tolerance for the plugs")
    each = (bore_largest_mm - bore_least_mm) * share / 2
    return PlugLimits(bore_least_mm, bore_least_mm + each, bore_largest_mm - each, bore_largest_mm)


def reamer_limits(nominal_mm: float, hole_lower_um: float, hole_upper_um: float) -> tuple[float, float]:
    """Limits of size of a new reamer for a hole of a tolerance class.

    largest = hole_largest - 0.15 T, least = largest - 0.35 T, each share rounded up to a whole micrometre

    Parameters
    ----------
    nominal_mm : Nominal size of the hole. [mm]
    hole_lower_um : Lower deviation of the hole. [um]
    hole_upper_um : Upper deviation of the hole; T is what lies between. [um]

    Returns
    -------
    Least and largest size of the reamer; the hole comes out larger than the reamer. [mm]

    Valid for
    ---------
    Nominal size more than 0, upper deviation above the lower. A reamer held in a tailstock out of line cuts
    large and bell-mouthed: never ream the collars of the test bar from the tailstock it is to true.

    Source
    ------
    Reamer maker's technical page on DIN 1420, with 10 D8 as its example.

    >>> [round(size, 3) for size in reamer_limits(10, 40, 62)]
    [10.05, 10.058]
    """
    positive(nominal_mm, "nominal size", "mm")
    positive(hole_upper_um - hole_lower_um, "tolerance of the hole", "um")
    tolerance = hole_upper_um - hole_lower_um
    largest = hole_upper_um - ceil(_REAMER_BELOW_SHARE * tolerance)
    least = largest - ceil(_REAMER_TOLERANCE_SHARE * tolerance)
    return nominal_mm + least / 1000, nominal_mm + largest / 1000
