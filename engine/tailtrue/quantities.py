"""Reading a quantity such as ``1 1/2 in`` into a float in the one unit used inside.

The door is guarded: a decimal comma, grouped digits, a missing unit, a thread or the word ``mil`` is refused with what
to write instead, never guessed. Common units are converted here with exact fractions. Rarer ones go through the units
library, which is loaded only then. A spindle speed is a count per minute, not an angle per time.
"""

import re
from collections.abc import Mapping
from fractions import Fraction
from functools import cache
from typing import Any, NoReturn

from tailtrue.errors import FactsWrong, Problem

_INCH = Fraction("25.4")
_FOOT = 12 * _INCH
_POUND = Fraction("0.45359237")
_POUND_FORCE = _POUND * Fraction("9.80665")
_HORSEPOWER = 550 * _POUND_FORCE * _FOOT / 1000

# Canonical unit -> what it is, and the exact size in it of each unit that people write.
FAST: Mapping[str, tuple[str, Mapping[str, Fraction]]] = {
    "mm": (
        "length",
        {
            "mm": Fraction(1), "cm": Fraction(10), "m": Fraction(1000), "µm": Fraction(1, 1000), "um": Fraction(1, 1000),
            "micron": Fraction(1, 1000), "in": _INCH, '"': _INCH, "inch": _INCH, "inches": _INCH,
            "thou": _INCH / 1000, "ft": _FOOT,
        },
    ),
    "1/min": (
        "count per minute",
        {"1/min": Fraction(1), "rpm": Fraction(1), "rev/min": Fraction(1), "r/min": Fraction(1), "min-1": Fraction(1)},
    ),
    "mm/rev": ("feed per turn", {"mm/rev": Fraction(1), "in/rev": _INCH, "thou/rev": _INCH / 1000}),
    "N": ("force", {"N": Fraction(1), "kN": Fraction(1000), "lbf": _POUND_FORCE}),
    "N mm": (
        "torque",
        {
            "N mm": Fraction(1), "N m": Fraction(1000), "Nm": Fraction(1000), "lbf in": _POUND_FORCE * _INCH,
            "lbf ft": _POUND_FORCE * _FOOT,
        },
    ),
    "MPa": (
        "pressure",
        {"MPa": Fraction(1), "N/mm2": Fraction(1), "psi": _POUND_FORCE / _INCH**2},
    ),
    "W": ("power", {"W": Fraction(1), "kW": Fraction(1000), "hp": _HORSEPOWER}),
    "m/min": ("surface speed", {"m/min": Fraction(1), "ft/min": _FOOT / 1000}),
    "s": (
        "time",
        {
            "s": Fraction(1), "min": Fraction(60), "minutes": Fraction(60), "h": Fraction(3600), "hour": Fraction(3600),
            "hours": Fraction(3600), "day": Fraction(86400), "days": Fraction(86400),
        },
    ),
    "kg": ("mass", {"kg": Fraction(1), "g": Fraction(1, 1000), "lb": _POUND}),
    "degC": (
        "temperature",
        {"degC": Fraction(1), "°C": Fraction(1), "degF": Fraction(5, 9), "°F": Fraction(5, 9)},
    ),
    "1": ("ratio", {"": Fraction(1), "%": Fraction(1, 100)}),
}  # fmt: skip

# What to offer when a unit is missing or does not fit: the units of the trade, not every spelling.
OFFERED: Mapping[str, tuple[str, ...]] = {
    "mm": ("mm", "in", "thou"),
    "1/min": ("1/min", "rpm"),
    "mm/rev": ("mm/rev", "in/rev"),
    "N": ("N", "lbf"),
    "N mm": ("N m", "lbf in"),
    "MPa": ("MPa", "psi"),
    "W": ("W", "kW", "hp"),
    "m/min": ("m/min", "ft/min"),
    "s": ("s", "min", "h", "day"),
    "kg": ("kg", "lb"),
    "degC": ("degC", "degF"),
    "1": ("%",),
}

_FREEZING_F = Fraction(32)
_MOST_CHARACTERS = 60

_DECIMAL = r"(?:[0-9]+\.[0-9]+|\.[0-9]+|[0-9]+)"
NUMBER = rf"[-+]? ?(?:(?:[0-9]+[ -])?[0-9]+/[0-9]+|{_DECIMAL})"
_QUANTITY = re.compile(
    rf"(?P<sign>[-+]?) ?(?:(?:(?P<whole>[0-9]+)[ -])?(?P<over>[0-9]+)/(?P<under>[0-9]+)|(?P<plain>{_DECIMAL}))"
    r"(?P<unit> ?[^0-9,.;:+ ].*| 1/min|)"
)
_THREAD = re.compile(r"[0-9]+/[0-9]+ ?- ?[0-9]+(?!/)(?!.*/[0-9])|M ?[0-9.]+ ?[x×]", re.IGNORECASE)
_NUMBERED = re.compile(r"(?:no|nr|number|letter)\b|#", re.IGNORECASE)
_COMMA = re.compile(r"([0-9.]*[0-9]),([0-9]+)(.*)")
_SPACED = re.compile(r"[0-9]+(?: [0-9]{3})+(?![0-9/])")
_LIBRARY_UNIT = re.compile(r"[A-Za-z_µ]+[23]?(?:[ */][A-Za-z_µ]+[23]?)*")


def read_quantity(text: str, unit: str) -> float:
    """A quantity as a person writes it, in the canonical unit.

    Raises FactsWrong, with what to write instead, when the text is not plainly one quantity of this kind.

    >>> read_quantity("1 1/2 in", "mm")
    38.1
    >>> read_quantity("500 rpm", "1/min")
    500.0
    """
    tidy = _tidy(text)
    _refuse_traps(text, tidy, unit)
    match = _QUANTITY.fullmatch(tidy)
    if match is None:
        _refuse(text, "is not a number with a unit", f"write for example {_example(unit)}")
    number = _number(text, match)
    written = match["unit"].strip()
    if not written and unit != "1":
        _refuse(text, "has no unit", f"write {_with_units(tidy, unit)}")
    if written in ("mil", "mils"):
        digits = tidy[: match.start("unit")].strip()
        _refuse(text, "mil is said for a thousandth of an inch and for a millimetre", f"write {digits} thou or {digits} mm")
    return float(_converted(text, number, written, unit))


def units_of(unit: str) -> tuple[str, ...]:
    """The usual spellings of units that convert to a canonical unit."""
    return tuple(FAST[unit][1])


def kind_of(unit: str) -> str:
    """What a canonical unit measures, in a word.

    >>> kind_of("mm")
    'length'
    """
    return FAST[unit][0]


def _tidy(text: str) -> str:
    plain = text.replace("\u2212", "-").replace("\u2044", "/").replace("\u03bc", "µ")
    for mark in "\u2033\u201d\u201c":
        plain = plain.replace(mark, '"')
    plain = (
        plain.replace("''", '"').replace("²", "2").replace("⁻¹", "-1").replace("^", "").replace("·", " ").replace("⋅", " ")
    )
    return re.sub(r"\s+", " ", plain).strip()


def _refuse(text: str, wrong: str, do: str) -> NoReturn:
    raise FactsWrong((Problem("", text, wrong, do),))


def _refuse_traps(text: str, tidy: str, unit: str) -> None:
    if not tidy:
        _refuse(text, "is empty", f"write for example {_example(unit)}")
    if len(tidy) > _MOST_CHARACTERS:
        _refuse(text, "is too long for a quantity", f"write for example {_example(unit)}")
    if comma := _COMMA.search(tidy):
        whole, rest, after = comma.groups()
        _refuse(text, "the decimal mark must be a point", f"write {_without_comma(whole, rest, after)}")
    if _THREAD.match(tidy):
        _refuse(text, f"is a thread, not a {kind_of(unit)}", f"write the size in {_joined(unit)}")
    if _NUMBERED.match(tidy):
        _refuse(text, f"is a drill by number or letter, not a {kind_of(unit)}", f"write the size in {_joined(unit)}")
    if spaced := _SPACED.match(tidy):
        joined = spaced[0].replace(" ", "") + tidy[spaced.end() :]
        _refuse(text, "digits must not be grouped", f"write {joined}")


def _without_comma(whole: str, rest: str, after: str) -> str:
    """What the comma may have meant; both readings when it could be a decimal mark or a group of digits."""
    decimal = f"{whole.replace('.', '')}.{rest}{after}"
    if len(rest) == 3 and "." not in whole and whole.strip("0"):
        return f"{whole}{rest}{after} or {decimal}, whichever is meant"
    return decimal


def _number(text: str, match: re.Match[str]) -> Fraction:
    if match["plain"] is not None:
        size = Fraction(match["plain"])
    else:
        over, under = int(match["over"]), int(match["under"])
        if under == 0:
            _refuse(text, "has a fraction over nought", "write the fraction out, such as 1/2")
        if match["whole"] is not None and over >= under:
            _refuse(text, "has a fraction of one or more behind a whole number", "write it as 1 1/2")
        size = int(match["whole"] or 0) + Fraction(over, under)
    return -size if match["sign"] == "-" else size


def _converted(text: str, number: Fraction, written: str, unit: str) -> Fraction:
    fast = FAST[unit][1]
    if written in fast:
        if unit == "degC" and written in ("degF", "°F"):
            number -= _FREEZING_F
        return number * fast[written]
    for other, (kind, spellings) in FAST.items():
        if written in spellings and other != unit:
            _refuse(text, f"{written} is a {kind}, and a {kind_of(unit)} is needed", f"use {_joined(unit)}")
    # A slip of capitals comes first: to the library Mm is a thousand kilometres, and mPa next to nothing.
    near = _spelling_near(written, unit)
    found = None if near else _by_library(number, written, unit)
    if found is None:
        hint = f"write {near}" if near else f"use {_joined(unit)}"
        _refuse(text, f"'{written}' is no unit of {kind_of(unit)} that is known here", hint)
    return found


def _spelling_near(written: str, unit: str) -> str | None:
    folded = written.casefold().rstrip(".")
    return next((spelling for spelling in FAST[unit][1] if spelling and spelling.casefold() == folded), None)


def _by_library(number: Fraction, written: str, unit: str) -> Fraction | None:
    """A rarer unit through the units library; None when it has another dimension or does not exist.

    Root units must agree, not only dimensions: turns per second and hertz have the same dimension and differ by 2 pi.
    """
    if unit in ("mm/rev", "1/min", "1") or not _LIBRARY_UNIT.fullmatch(written):
        return None
    registry, failures = _library()
    spelt = re.sub(r"([23])(?= |\*|/|$)", r"**\1", written.replace(" ", "*"))
    canonical = unit.replace(" ", "*")
    try:
        given = registry.Quantity(number, registry.parse_units(spelt))
        wanted = registry.parse_units(canonical)
        if registry.get_root_units(given.units)[1] != registry.get_root_units(wanted)[1]:
            return None
        return Fraction(given.to(wanted).magnitude)
    except failures:
        return None


@cache
def _library() -> tuple[Any, tuple[type[Exception], ...]]:
    # Slow to load, so only a unit that is not in the table pays for it.
    import pint

    failures = (pint.PintError, AttributeError, TypeError, ValueError, ArithmeticError, KeyError, RecursionError)
    return pint.UnitRegistry(non_int_type=Fraction), failures


def _joined(unit: str) -> str:
    offered = OFFERED[unit]
    return offered[0] if len(offered) == 1 else f"{', '.join(offered[:-1])} or {offered[-1]}"


def _with_units(number: str, unit: str) -> str:
    return " or ".join(f"{number} {one}" for one in OFFERED[unit][:2])


def _example(unit: str) -> str:
    return "50 %" if unit == "1" else f"12.5 {OFFERED[unit][0]}"
