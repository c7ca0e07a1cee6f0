"""Bore and bar: clearance, fits of two tolerance classes, and the bore that suits the bar as it measures."""

from math import ceil, floor
from typing import Literal, NamedTuple

from tailtrue.calc.validity import OutOfRange, at_least, finite, positive

_ROUNDING_SLACK = 1e-6  # of a step: a size that is a whole step is not pushed to the next by its binary form
_MM_DECIMALS = 9  # takes the binary dust off a sum of sizes, so that a clearance of 0 is 0

FitKind = Literal["clearance", "transition", "interference"]


class Zone(NamedTuple):
    """Limits of size of a hole or a shaft: nominal size and its two deviations, on diameter."""

    nominal_mm: float
    lower_um: float
    upper_um: float

    @property
    def least_mm(self) -> float:
        """Least size that the class allows.

        least = nominal + lower / 1000

        Returns
        -------
        Least size. [mm]

        Valid for
        ---------
        Deviations in micrometres from this nominal size.

        Source
        ------
        Definition (ISO 286-1).

        >>> Zone(25, -20, -7).least_mm
        24.98
        """
        return round(self.nominal_mm + self.lower_um / 1000, _MM_DECIMALS)

    @property
    def largest_mm(self) -> float:
        """Largest size that the class allows.

        largest = nominal + upper / 1000

        Returns
        -------
        Largest size. [mm]

        Valid for
        ---------
        Deviations in micrometres from this nominal size.

        Source
        ------
        Definition (ISO 286-1).

        >>> Zone(25, -20, -7).largest_mm
        24.993
        """
        return round(self.nominal_mm + self.upper_um / 1000, _MM_DECIMALS)


class Fit(NamedTuple):
    """Diametral clearance of a hole and a shaft at its two limits; less than 0 is interference."""

    least_clearance_mm: float
    largest_clearance_mm: float

    @property
    def kind(self) -> FitKind:
        """What kind of fit the two clearances make.

        clearance: least >= 0; interference: largest <= 0; else transition

        Returns
        -------
        One of clearance, transition, interference. [1]

        Valid for
        ---------
        Least clearance not above the largest.

        Source
        ------
        Definition (ISO 286-1).

        >>> Fit(-0.01, 0.02).kind
        'transition'
        """
        if self.least_clearance_mm >= 0:
            return "clearance"
        return "interference" if self.largest_clearance_mm <= 0 else "transition"


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


def bore_target(low_mm: float, high_mm: float, step_mm: float) -> float:
    """Bore to aim at: the step nearest to the middle of what is accepted.

    B = whole step nearest to (low + high) / 2, the smaller of two that are as near

    Parameters
    ----------
    low_mm : Smallest bore to accept, as of `bore_window`. [mm]
    high_mm : Largest bore to accept. [mm]
    step_mm : Step to which the user can set the cut, on diameter. [mm]

    Returns
    -------
    Bore B to aim at. [mm]

    Valid for
    ---------
    Sizes and step more than 0, low not above high; a whole step must lie between the two. A bore can be
    opened further but never closed, so the smaller of two steps is taken.

    Source
    ------
    Derived; common practice.

    >>> round(bore_target(24.999, 25.041, 0.01), 6)
    25.02
    """
    positive(low_mm, "smallest bore", "mm")
    at_least(high_mm, low_mm, "largest bore", "mm")
    positive(step_mm, "step", "mm")
    target = ceil((low_mm + high_mm) / 2 / step_mm - 0.5 - _ROUNDING_SLACK) * step_mm
    slack = _ROUNDING_SLACK * step_mm
    if not low_mm - slack <= target <= high_mm + slack:
        raise OutOfRange(
            f"no whole step of {step_mm:g} mm lies from {low_mm:.7g} mm to {high_mm:.7g} mm; "
            "set the cut in finer steps, or widen the clearance"
        )
    return target


def class_fit(hole_lower_um: float, hole_upper_um: float, shaft_lower_um: float, shaft_upper_um: float) -> Fit:
    """Least and largest clearance of two tolerance classes on the same nominal size.

    c_least = EI - es, c_largest = ES - ei

    Parameters
    ----------
    hole_lower_um : Lower deviation EI of the hole. [um]
    hole_upper_um : Upper deviation ES of the hole. [um]
    shaft_lower_um : Lower deviation ei of the shaft. [um]
    shaft_upper_um : Upper deviation es of the shaft. [um]

    Returns
    -------
    Least and largest diametral clearance; the result knows its kind. [mm, mm]

    Valid for
    ---------
    Deviations from one nominal size, both parts at the same temperature, no lower limit above its upper one.

    Source
    ------
    Definitions of ISO 286-1.

    >>> class_fit(0, 21, -20, -7), class_fit(0, 21, -20, -7).kind
    (Fit(least_clearance_mm=0.007, largest_clearance_mm=0.041), 'clearance')
    """
    finite(hole_lower_um, "lower deviation of the hole", "um")
    at_least(hole_upper_um, hole_lower_um, "upper deviation of the hole", "um")
    finite(shaft_lower_um, "lower deviation of the shaft", "um")
    at_least(shaft_upper_um, shaft_lower_um, "upper deviation of the shaft", "um")
    return _fit((hole_lower_um - shaft_upper_um) / 1000, (hole_upper_um - shaft_lower_um) / 1000)


def measured_fit(
    bore_least_mm: float,
    bore_largest_mm: float,
    shaft_least_mm: float,
    shaft_largest_mm: float,
    uncertainty_mm: float,
) -> Fit:
    """Least and largest clearance that a shaft as measured may have in a bore between two limits.

    c_least = B_least - d_largest - U, c_largest = B_largest - d_least + U

    Parameters
    ----------
    bore_least_mm : Least size B_least that the bore may have, of its class or as measured. [mm]
    bore_largest_mm : Largest size B_largest that the bore may have. [mm]
    shaft_least_mm : Smallest reading d_least of the shaft. [mm]
    shaft_largest_mm : Largest reading d_largest of the shaft. [mm]
    uncertainty_mm : Expanded uncertainty U of the shaft, or of the clearance where the bore is measured too. [mm]

    Returns
    -------
    Least and largest diametral clearance; its kind is transition when neither of the others is sure. [mm, mm]

    Valid for
    ---------
    Sizes more than 0 and at the same temperature, smallest first, uncertainty 0 or more.

    Source
    ------
    Derived; guard bands in the spirit of ISO 14253-1.

    >>> measured_fit(25.0, 25.021, 24.966, 24.974, 0.005)
    Fit(least_clearance_mm=0.021, largest_clearance_mm=0.06)
    """
    positive(bore_least_mm, "least bore", "mm")
    at_least(bore_largest_mm, bore_least_mm, "largest bore", "mm")
    positive(shaft_least_mm, "smallest reading of the shaft", "mm")
    at_least(shaft_largest_mm, shaft_least_mm, "largest reading of the shaft", "mm")
    at_least(uncertainty_mm, 0, "uncertainty", "mm")
    return _fit(bore_least_mm - shaft_largest_mm - uncertainty_mm, bore_largest_mm - shaft_least_mm + uncertainty_mm)


def _fit(least_mm: float, largest_mm: float) -> Fit:
    return Fit(round(least_mm, _MM_DECIMALS), round(largest_mm, _MM_DECIMALS))
