"""Sizes and clearances at another temperature than 20 degC, to which every drawn size refers."""

from tailtrue.calc.shrink import interference_change
from tailtrue.calc.validity import between, finite, positive

_REFERENCE_DEGC = 20.0  # ISO 1
_MOST_AWAY_K = 50.0  # the coefficient of expansion itself drifts further away


def size_at_20(reading_mm: float, work_per_k: float, work_degc: float, gauge_per_k: float, gauge_degc: float) -> float:
    """Size that a warm part will have at 20 degC, from a reading taken with a gauge that may be warm too.

    d20 = d (1 + alpha_g (T_g - 20) - alpha_w (T_w - 20))

    Parameters
    ----------
    reading_mm : Reading d of the gauge. [mm]
    work_per_k : Coefficient of expansion alpha_w of the part. [1/K]
    work_degc : Temperature T_w of the part. [degC]
    gauge_per_k : Coefficient of expansion alpha_g of the gauge. [1/K]
    gauge_degc : Temperature T_g of the gauge. [degC]

    Returns
    -------
    Size d20 at 20 degC. [mm]

    Valid for
    ---------
    Reading and coefficients more than 0, -30 to 70 degC, each part evenly warm, gauge set or marked at
    20 degC; first order.

    Source
    ------
    Derived from the definition of the coefficient; reference temperature of ISO 1:2016.

    >>> round(size_at_20(25.030, 23.6e-6, 45, 11.5e-6, 20), 4)
    25.0152
    """
    positive(reading_mm, "reading", "mm")
    return reading_mm * _share_at_20(work_per_k, work_degc, gauge_per_k, gauge_degc)


def reading_when_warm(
    size_at_20_mm: float, work_per_k: float, work_degc: float, gauge_per_k: float, gauge_degc: float
) -> float:
    """Reading that the gauge must show on a warm part that is to have a certain size at 20 degC.

    d = d20 / (1 + alpha_g (T_g - 20) - alpha_w (T_w - 20))

    Parameters
    ----------
    size_at_20_mm : Size d20 wanted at 20 degC. [mm]
    work_per_k : Coefficient of expansion alpha_w of the part. [1/K]
    work_degc : Temperature T_w of the part. [degC]
    gauge_per_k : Coefficient of expansion alpha_g of the gauge. [1/K]
    gauge_degc : Temperature T_g of the gauge. [degC]

    Returns
    -------
    Reading d of the gauge. [mm]

    Valid for
    ---------
    As `size_at_20`. A part that has just been cut is seldom evenly warm: to let it cool is surer.

    Source
    ------
    `size_at_20` turned round.

    >>> round(reading_when_warm(25.0152, 23.6e-6, 45, 11.5e-6, 20), 3)
    25.03
    """
    positive(size_at_20_mm, "size at 20 degC", "mm")
    return size_at_20_mm / _share_at_20(work_per_k, work_degc, gauge_per_k, gauge_degc)


def clearance_at(
    clearance_at_20_mm: float,
    diameter_mm: float,
    bore_per_k: float,
    bore_degc: float,
    shaft_per_k: float,
    shaft_degc: float,
) -> float:
    """Diametral clearance of a bore and a shaft at the temperatures that they have.

    c = c20 + d (alpha_b (T_b - 20) - alpha_s (T_s - 20))

    Parameters
    ----------
    clearance_at_20_mm : Diametral clearance c20 with both at 20 degC, less than 0 for interference. [mm]
    diameter_mm : Diameter d of the joint. [mm]
    bore_per_k : Coefficient of expansion alpha_b of the part with the bore. [1/K]
    bore_degc : Temperature T_b of the part with the bore. [degC]
    shaft_per_k : Coefficient of expansion alpha_s of the shaft. [1/K]
    shaft_degc : Temperature T_s of the shaft. [degC]

    Returns
    -------
    Diametral clearance c. [mm]

    Valid for
    ---------
    As `interference_change`, -30 to 70 degC, each part evenly warm and free; first order.

    Source
    ------
    Derived from the definition of the coefficient; reference temperature of ISO 1:2016.

    >>> round(clearance_at(0, 25, 23.6e-6, 35, 11.7e-6, 35), 5)
    0.00446
    """
    finite(clearance_at_20_mm, "clearance at 20 degC", "mm")
    bore = _warmer_than_20(bore_degc, "the part with the bore")
    shaft = _warmer_than_20(shaft_degc, "the shaft")
    return clearance_at_20_mm - interference_change(diameter_mm, shaft_per_k, shaft, bore_per_k, bore)


def _share_at_20(work_per_k: float, work_degc: float, gauge_per_k: float, gauge_degc: float) -> float:
    return 1 + _relative_growth(gauge_per_k, gauge_degc, "the gauge") - _relative_growth(work_per_k, work_degc, "the part")


def _relative_growth(per_k: float, temperature_degc: float, what: str) -> float:
    positive(per_k, f"coefficient of expansion of {what}", "1/K")
    return per_k * _warmer_than_20(temperature_degc, what)


def _warmer_than_20(temperature_degc: float, what: str) -> float:
    low, high = _REFERENCE_DEGC - _MOST_AWAY_K, _REFERENCE_DEGC + _MOST_AWAY_K
    between(temperature_degc, low, high, f"temperature of {what}", "degC")
    return temperature_degc - _REFERENCE_DEGC
