"""Sizes of the catalogue said in the units that the user writes in: plausible ends, typical values."""

import math
from collections.abc import Iterator
from fractions import Fraction
from typing import Literal

from tailtrue.given.entries import GivenFact
from tailtrue.quantities import FAST, IN_INCHES, System, read_quantity, system_of

Toward = Literal["up", "down", "nearest"]

# A size is said with the fewest digits that change it by no more than this share; a typical one need not be as near.
_NEAR_ENOUGH = 0.03
_TYPICAL_ENOUGH = 0.06
_MOST_DIGITS = 12
_FREEZING_F = Fraction(32)
_METRIC = {"N mm": "N m"}


def system_in(*texts: object) -> System:
    """The system that most of these values are written in; empty where none leads."""
    found = [system_of(text) for text in texts if isinstance(text, str)]
    inch, metric = found.count("inch"), found.count("metric")
    return "" if inch == metric else "inch" if inch > metric else "metric"


def unit_in(unit: str, system: System) -> str:
    """The unit of a kind of quantity in a system."""
    return IN_INCHES.get(unit, unit) if system == "inch" else _METRIC.get(unit, unit)


def size_said(size: float, unit: str, spelling: str, toward: Toward, near: float = _NEAR_ENOUGH) -> str:
    """A size in another unit with few digits, never on the wrong side of itself.

    >>> size_said(150, "mm", "in", "up"), size_said(460, "mm", "in", "down")
    ('6 in', '18 in')
    """
    number = Fraction(str(size)) / FAST[unit][1][spelling]
    if spelling == "degF":
        number += _FREEZING_F
    return f"{_short(number, toward, near)} {spelling}".strip()


def _short(number: Fraction, toward: Toward, near: float) -> str:
    if number == 0:
        return "0"
    place = math.floor(math.log10(abs(number)))
    for digits in range(1, _MOST_DIGITS):
        step = Fraction(10) ** (place + 1 - digits)
        steps = number / step
        whole = math.ceil(steps) if toward == "up" else math.floor(steps) if toward == "down" else round(steps)
        found = whole * step
        if abs(found - number) <= Fraction(str(near)) * abs(number):
            said = f"{float(found):.{max(0, digits - 1 - place)}f}"
            return said.rstrip("0").rstrip(".") if "." in said else said
    return f"{float(number):g}"


def typical_said(fact: GivenFact, unit: str, system: System) -> str:
    """The typical value in the user's own system; as it stands where it is in that system, or in none."""
    written = system_of(fact.typical)
    if not system or not written or written == system:
        return fact.typical
    if system == "inch" and fact.typical_inch:
        return fact.typical_inch
    size = read_quantity(fact.typical, unit)
    for near in (_TYPICAL_ENOUGH, _NEAR_ENOUGH / 10, 0.0):
        said = size_said(size, unit, unit_in(unit, system), "nearest", near)
        if within(fact, read_quantity(said, unit)):
            return said
    return fact.typical


def within(fact: GivenFact, size: float) -> bool:
    """Whether a size is plausible for a fact."""
    least, most = fact.spec.least, fact.spec.most
    return (least is None or size >= least) and (most is None or size <= most)


def band_said(fact: GivenFact, unit: str, system: System) -> str:
    """What is plausible, in the user's own system: `6 in to 18 in`, `at least 2 mm`; empty without ends."""
    least, most = _ends(fact, unit, system)
    if least and most:
        return f"{least} to {most}"
    return f"at least {least}" if least else f"at most {most}" if most else ""


def _ends(fact: GivenFact, unit: str, system: System) -> Iterator[str]:
    for said, size, toward in (
        (fact.least_said, fact.spec.least, "up"),
        (fact.most_said, fact.spec.most, "down"),
    ):
        written = system_of(said) if said else ""
        if size is None or not system or not written or written == system:
            yield said
        else:
            yield size_said(size, unit, unit_in(unit, system), "up" if toward == "up" else "down")
