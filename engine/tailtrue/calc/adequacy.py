"""Is the instrument good enough for the limit, and how many readings does it take."""

from math import ceil

from tailtrue.calc.uncertainty import verdict
from tailtrue.calc.validity import OutOfRange, at_least, between, positive, up_to

_ROUNDING_SLACK = 1e-9


def adequate(expanded_mm: float, limit_mm: float, share: float) -> bool:
    """Whether an uncertainty is small enough to judge by a limit.

    good enough: U <= share * T

    Parameters
    ----------
    expanded_mm : Expanded uncertainty U of what is measured. [mm]
    limit_mm : Limit T that it is held against. [mm]
    share : Largest share of the limit that the uncertainty may take, such as a third. [1]

    Returns
    -------
    Yes when it is good enough. [1]

    Valid for
    ---------
    Uncertainty 0 or more, limit more than 0, share more than 0 and at most 1.

    Source
    ------
    Common practice (a third of the limit).

    >>> adequate(0.0036, 0.016, 1 / 3), adequate(0.0036, 0.008, 1 / 3)
    (True, False)
    """
    at_least(expanded_mm, 0, "expanded uncertainty", "mm")
    positive(limit_mm, "limit", "mm")
    up_to(share, 1, "share of the limit")
    return expanded_mm <= share * limit_mm * (1 + _ROUNDING_SLACK)


def resolution_adequate(resolution_mm: float, limit_mm: float, share: float) -> bool:
    """Whether the steps of an instrument are fine enough for a limit.

    fine enough: r <= share * T

    Parameters
    ----------
    resolution_mm : Smallest step r that is read. [mm]
    limit_mm : Limit T that the reading is held against. [mm]
    share : Largest share of the limit that one step may take, such as a tenth. [1]

    Returns
    -------
    Yes when it is fine enough. [1]

    Valid for
    ---------
    Step and limit more than 0, share more than 0 and at most 1.

    Source
    ------
    Common practice (a tenth of the limit).

    >>> resolution_adequate(0.001, 0.016, 0.1), resolution_adequate(0.01, 0.016, 0.1)
    (True, False)
    """
    positive(resolution_mm, "smallest step", "mm")
    return adequate(resolution_mm, limit_mm, share)


def readings_for_target(target_mm: float, repeatability_mm: float, other_mm: float, most_readings: int) -> int:
    """Readings on each collar that bring the uncertainty of their difference down to a target.

    n = 2 s^2 / (u^2 - v^2), rounded up

    Parameters
    ----------
    target_mm : Standard uncertainty u of the difference that is wanted. [mm]
    repeatability_mm : Standard deviation s of one reading. [mm]
    other_mm : Standard uncertainty v of the difference from all that readings do not lessen. [mm]
    most_readings : Most readings that anybody would take. [1]

    Returns
    -------
    Least number n of readings on each collar. [1]

    Valid for
    ---------
    Target more than what readings do not lessen, and reached with so many readings at most; else it is
    refused: another instrument or a better cut is needed.

    Source
    ------
    Derived from `difference_uncertainty`.

    >>> readings_for_target(0.00182, 0.0015, 0.001345, 20)
    3
    """
    positive(target_mm, "uncertainty wanted", "mm")
    at_least(repeatability_mm, 0, "repeatability", "mm")
    at_least(other_mm, 0, "uncertainty that readings do not lessen", "mm")
    at_least(most_readings, 1, "most readings")
    room = target_mm**2 - other_mm**2
    if room <= 0:
        raise OutOfRange(
            f"the standard uncertainty wanted is {target_mm:g} mm, and {other_mm:g} mm of it is none that readings lessen; "
            "no number of readings reaches it: take a better instrument or a better cut, or a wider limit"
        )
    needed = 2 * repeatability_mm**2 / room
    if needed > most_readings + _ROUNDING_SLACK:
        raise OutOfRange(
            f"a standard uncertainty of {target_mm:g} mm takes more than {most_readings} readings on each collar; "
            "take a better instrument or a better cut, or a wider limit"
        )
    return max(1, ceil(needed - _ROUNDING_SLACK))


def readings_to_settle(
    difference_mm: float,
    limit_mm: float,
    repeatability_mm: float,
    other_mm: float,
    most_readings: int,
    coverage: float,
) -> int:
    """Readings on each collar after which a verdict would stand, should the mean stay where it is.

    least n with |D| + k u_n <= T or |D| - k u_n > T, u_n^2 = 2 s^2 / n + v^2

    Parameters
    ----------
    difference_mm : Measured difference D, of either sign. [mm]
    limit_mm : Limit T on its size. [mm]
    repeatability_mm : Standard deviation s of one reading. [mm]
    other_mm : Standard uncertainty v of the difference from all that readings do not lessen. [mm]
    most_readings : Most readings that anybody would take. [1]
    coverage : Coverage factor k. [1]

    Returns
    -------
    Least number n of readings on each collar, those already taken included; 0 when so many at most do not
    settle it: then skim again or take a better instrument. [1]

    Valid for
    ---------
    As `verdict`; from 1 to 1000 readings.

    Source
    ------
    Derived from `difference_uncertainty` and `verdict`.

    >>> [readings_to_settle(size, 0.010, 0.0015, 0.001345, 20, coverage=2) for size in (0.0066, 0.009)]
    [5, 0]
    """
    at_least(repeatability_mm, 0, "repeatability", "mm")
    at_least(other_mm, 0, "uncertainty that readings do not lessen", "mm")
    between(most_readings, 1, 1000, "most readings")
    positive(coverage, "coverage factor")
    for readings in range(1, most_readings + 1):
        unsure = (2 * repeatability_mm**2 / readings + other_mm**2) ** 0.5
        if verdict(difference_mm, coverage * unsure, limit_mm) != "too close to say":
            return readings
    return 0
