"""Sizes a person can set: whole steps of a rule, a dial or a micrometer."""

from math import ceil, floor

# Float noise must not cost a whole step: 25.4 / 0.05 is 507.99999999999994.
_NOISE = 1e-9


def step_down(value: float, step: float) -> float:
    """The largest whole number of steps at or below a value.

    >>> step_down(25.4, 0.05)
    25.400000000000002
    """
    return floor(value / step + _NOISE) * step


def step_up(value: float, step: float) -> float:
    """The least whole number of steps at or above a value."""
    return ceil(value / step - _NOISE) * step


def surely_less(whole: float, doubt: float, step: float) -> float:
    """What is left of a whole as it is written, rounded down, less a doubt as it is written, rounded up.

    Where steps so coarse leave nothing, the difference as it is.

    >>> round(surely_less(0.0184, 0.0043, 0.001), 6)
    0.013
    """
    left = step_down(whole, step) - step_up(doubt, step)
    return left if left > step / 2 else whole - doubt


def steps_in(value: float, step: float) -> int:
    """How many whole steps a value holds."""
    return floor(value / step + _NOISE)


def least_of(*candidates: tuple[float, str]) -> tuple[float, str]:
    """The smallest candidate and its name: what limits.

    >>> least_of((300.0, "stock"), (280.0, "the lathe"))
    (280.0, 'the lathe')
    """
    return min(candidates, key=lambda candidate: candidate[0])
