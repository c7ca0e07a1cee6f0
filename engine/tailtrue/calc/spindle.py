"""The speed to set, out of those that the lathe has."""

from collections.abc import Sequence
from math import floor

from tailtrue.calc.validity import OutOfRange, at_least, positive

_ROUNDING_SLACK = 1e-9  # of a step, so that a wanted speed that is a whole step stays one


def choose_speed(available: Sequence[float], wanted_per_min: float, cap_per_min: float) -> float:
    """Speed to set on a lathe with fixed speeds.

    n = largest step <= min(wanted, cap); else the slowest step, when it is <= cap

    Parameters
    ----------
    available : The speeds of the lathe, in any order. [1/min]
    wanted_per_min : Speed that the cut asks for. [1/min]
    cap_per_min : Speed that must not be passed. [1/min]

    Returns
    -------
    A speed of the lathe, never above the cap; above the wanted one only when it is the slowest. [1/min]

    Valid for
    ---------
    All more than 0, at least one speed of the lathe at or below the cap.

    Source
    ------
    Common practice: of two steps take the lower.

    >>> choose_speed([70, 115, 190, 300, 460, 755, 1255, 2000], 362.9, 1800)
    300
    """
    if not available:
        raise OutOfRange("the lathe has no speeds to choose from")
    for speed in available:
        positive(speed, "speed of the lathe", "1/min")
    positive(wanted_per_min, "wanted speed", "1/min")
    positive(cap_per_min, "speed limit", "1/min")
    slowest = min(available)
    _allowed(slowest, cap_per_min)
    return max((speed for speed in available if speed <= min(wanted_per_min, cap_per_min)), default=slowest)


def choose_from_range(
    low_per_min: float, high_per_min: float, step_per_min: float, wanted_per_min: float, cap_per_min: float
) -> float:
    """Speed to set on a lathe with a variable drive.

    n = min(wanted, cap, high) down to a whole step; the slowest speed, when that is faster and <= cap

    Parameters
    ----------
    low_per_min : Slowest speed of the range. [1/min]
    high_per_min : Fastest speed of the range. [1/min]
    step_per_min : Step to which a speed is worth setting. [1/min]
    wanted_per_min : Speed that the cut asks for. [1/min]
    cap_per_min : Speed that must not be passed. [1/min]

    Returns
    -------
    A speed within the range, never above the cap; above what is wanted only when it is the slowest. [1/min]

    Valid for
    ---------
    All more than 0, the fastest at least the slowest, the slowest at or below the cap.

    Source
    ------
    Common practice: of two steps take the lower.

    >>> choose_from_range(50, 2500, 10, 362.9, 1800)
    360
    """
    positive(low_per_min, "slowest speed of the lathe", "1/min")
    at_least(high_per_min, low_per_min, "fastest speed of the lathe", "1/min")
    positive(step_per_min, "step of speed", "1/min")
    positive(wanted_per_min, "wanted speed", "1/min")
    positive(cap_per_min, "speed limit", "1/min")
    _allowed(low_per_min, cap_per_min)
    most = min(wanted_per_min, cap_per_min, high_per_min)
    return max(low_per_min, min(most, floor(most / step_per_min + _ROUNDING_SLACK) * step_per_min))


def _allowed(slowest: float, cap: float) -> None:
    if slowest > cap:
        raise OutOfRange(
            f"the slowest speed of the lathe is {slowest:g} 1/min, and the limit is {cap:g} 1/min; "
            "another way of holding or another machine is needed"
        )
