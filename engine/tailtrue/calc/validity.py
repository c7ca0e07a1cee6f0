"""The range in which a formula holds, and what happens outside it."""

from collections.abc import Iterable
from math import isfinite

# What the way from inches and back leaves of a number: 1 1/2 in over 1 in is a hair more than 1.5.
_HAIR = 1e-12


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
    """Refuse anything but a number from `low` to `high`, both included, and the hair that a change of units leaves."""
    if not low - _HAIR * abs(low) <= value <= high + _HAIR * abs(high):
        raise OutOfRange(
            f"{name} is {_amount(value, unit)}; the formula holds from {_amount(low, unit)} to {_amount(high, unit)}"
        )


def up_to(value: float, most: float, name: str, unit: str = "") -> None:
    """Refuse anything but a number above zero and no more than `most`."""
    positive(value, name, unit)
    between(value, 0, most, name, unit)


def finite(value: float, name: str, unit: str = "") -> None:
    """Refuse what is not a number."""
    if not isfinite(value):
        raise OutOfRange(f"{name} is {_amount(value, unit)}; it must be a finite number")


def each_finite(values: Iterable[float], name: str, unit: str = "") -> None:
    """Refuse a row with what is not a number; {} in the name stands for its place, counted from 1."""
    for place, value in enumerate(values, 1):
        finite(value, name.format(place), unit)


def on_span(station_mm: float, span_mm: float, name: str = "station") -> None:
    """Refuse a place that does not lie between the two centres."""
    positive(span_mm, "span", "mm")
    between(station_mm, 0, span_mm, name, "mm")


def collars_on_span(span_mm: float, first_station_mm: float, second_station_mm: float) -> None:
    """Refuse stations of two collars that do not lie between the centres, the headstock collar first."""
    on_span(first_station_mm, span_mm, "station of the headstock collar")
    on_span(second_station_mm, span_mm, "station of the tailstock collar")
    in_order(first_station_mm, second_station_mm)


def in_order(first_mm: float, second_mm: float, step: str = "distance from headstock collar to tailstock collar") -> None:
    """Refuse a second place that is not farther along than the first."""
    positive(second_mm - first_mm, step, "mm")


def _amount(value: float, unit: str) -> str:
    return f"{value:g} {unit}".rstrip()
