"""Bore and bar: clearance, and the bore that suits the bar as it measures."""

from math import ceil, floor

from tailtrue.calc.validity import OutOfRange, at_least, finite, positive

_ROUNDING_SLACK = 1e-6  # of a step: a size that is a whole step is not pushed to the next by its binary form


def diametral_clearance(bore_mm: float, shaft_mm: float) -> float:
    """Clearance between a bore and a shaft, on diameter.

    c = B - d

    Parameters
    ----------
    bore_mm : Diameter B of the bore. [mm]
    shaft_mm : Diameter d of the shaft. [mm]

    Returns
    -------
    Diametral clearance c; less than 0 is interference; the gap all round is half of it. [mm]

    Valid for
    ---------
    Both more than 0 and at the same temperature.

    Source
    ------
    Definition (ISO 286-1).

    >>> round(diametral_clearance(25.02, 24.97), 6)
    0.05
    """
    positive(bore_mm, "bore", "mm")
    positive(shaft_mm, "shaft", "mm")
    return bore_mm - shaft_mm


def bore_window(
    measured_least_mm: float,
    measured_largest_mm: float,
    least_gap_mm: float,
    largest_gap_mm: float,
    gauge_uncertainty_mm: float,
    step_mm: float,
) -> tuple[float, float]:
    """Bore readings that surely leave the wanted clearance on a bar as it measures.

    low = d_largest + c_least + U, high = d_least + c_largest - U, both rounded inward to a whole step

    Parameters
    ----------
    measured_least_mm : Smallest reading of the bar, 0 to get what is to be added to the reading. [mm]
    measured_largest_mm : Largest reading of the bar, 0 likewise. [mm]
    least_gap_mm : Least diametral clearance wanted. [mm]
    largest_gap_mm : Largest diametral clearance wanted. [mm]
    gauge_uncertainty_mm : Expanded uncertainty U of the clearance as it is measured. [mm]
    step_mm : Step of the sizes that are written on the sheet. [mm]

    Returns
    -------
    Smallest and largest reading of the bore to accept. [mm]

    Valid for
    ---------
    Readings and uncertainty 0 or more, step more than 0; something must be left between low and high.

    Source
    ------
    Derived; guard bands in the spirit of ISO 14253-1.

    >>> low, high = bore_window(24.966, 24.974, 0.025, 0.075, 0.0158, 0.001)
    >>> round(low, 3), round(high, 3)
    (25.015, 25.025)
    """
    at_least(measured_least_mm, 0, "smallest reading of the bar", "mm")
    at_least(measured_largest_mm, measured_least_mm, "largest reading of the bar", "mm")
    finite(least_gap_mm, "least clearance", "mm")
    finite(largest_gap_mm, "largest clearance", "mm")
    at_least(gauge_uncertainty_mm, 0, "uncertainty of the gauge", "mm")
    positive(step_mm, "step", "mm")
    low = measured_largest_mm + least_gap_mm + gauge_uncertainty_mm
    high = measured_least_mm + largest_gap_mm - gauge_uncertainty_mm
    low_on_step = ceil(low / step_mm - _ROUNDING_SLACK) * step_mm
    high_on_step = floor(high / step_mm + _ROUNDING_SLACK) * step_mm
    if not low_on_step < high_on_step:
        raise OutOfRange(
            f"no bore is surely right: it would have to read at least {low:g} mm and at most {high:g} mm "
            f"in steps of {step_mm:g} mm; a finer gauge, a more even bar or a wider clearance helps"
        )
    return low_on_step, high_on_step
