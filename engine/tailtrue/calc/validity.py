"""The range in which a formula holds, and what happens outside it."""

from math import isfinite


class OutOfRange(ValueError):
    """An input for which a formula does not hold; the text is a sentence for people."""


def positive(value: float, name: str, unit: str = "") -> None:
    """Refuse anything but a finite number above zero."""
    if not (isfinite(value) and value > 0):
        raise OutOfRange(f"{name} is {_amount(value, unit)}; it must be more than {_amount(0, unit)}")


def at_least(value: float, least: float, name: str, unit: str = "") -> None:
    """Refuse anything but a finite number from `least` upward."""
    if not (isfinite(value) and value >= least):
        raise OutOfRange(f"{name} is {_amount(value, unit)}; the formula holds from {_amount(least, unit)} upward")


def between(value: float, low: float, high: float, name: str, unit: str = "") -> None:
    """Refuse anything but a number from `low` to `high`, both included."""
    if not low <= value <= high:
        raise OutOfRange(
            f"{name} is {_amount(value, unit)}; the formula holds from {_amount(low, unit)} to {_amount(high, unit)}"
        )


def finite(value: float, name: str, unit: str = "") -> None:
    """Refuse what is not a number."""
    if not isfinite(value):
        raise OutOfRange(f"{name} is {_amount(value, unit)}; it must be a finite number")


def _amount(value: float, unit: str) -> str:
    return f"{value:g} {unit}".rstrip()
