"""Reading a quantity such as ``1 1/2 in`` into a float in the one unit used inside.

The door is guarded: a decimal comma, grouped digits, a missing unit, a thread or the word ``mil`` is refused with what
to write instead, never guessed. Common units are converted here with exact fractions. Rarer ones go through the units
library, which is loaded only then. A spindle speed is a count per minute, not an angle per time.
"""

import re
from collections.abc import Iterable, Mapping
from decimal import Decimal
from fractions import Fraction
from functools import cache
from typing import Any, Literal, NoReturn

from tailtrue.errors import FactsWrong, Problem

System = Literal["metric", "inch", ""]

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

# The system that a spelling belongs to; what is in neither column is written alike in both.
IN_INCHES: Mapping[str, str] = {
    "mm": "in", "mm/rev": "in/rev", "N": "lbf", "N mm": "lbf in", "MPa": "psi", "W": "hp", "m/min": "ft/min", "kg": "lb",
    "degC": "degF",
}  # fmt: skip
_OF_INCHES = frozenset(
    ("in", '"', "inch", "inches", "thou", "ft", "in/rev", "thou/rev", "lbf", "lbf in", "lbf ft", "psi", "hp", "ft/min", "lb",
     "degF", "°F")
)  # fmt: skip
_OF_BOTH = frozenset(("1/min", "s", "1"))
# The unit at the end of a text, whatever the number before it looks like.
_SPELT = "|".join(re.escape(one) for _, units in FAST.values() for one in sorted(units, key=len, reverse=True) if one)
_ENDS_IN = re.compile(rf"[0-9]\s*({_SPELT})$")

# Temperatures as they are said.
_SAID_FOR = {"c": "degC", "f": "degF", "deg c": "degC", "deg f": "degF"}

_FREEZING_F = Fraction(32)
_MOST_CHARACTERS = 60
_POWER = re.compile(r"[+-]?[0-9]+(?:\.[0-9]+)?[eE]([+-]?[0-9]+)")
_FARTHEST_POWER = 9
_MOST_OFFERED = 2

_DECIMAL = r"(?:[0-9]+\.[0-9]+|\.[0-9]+|[0-9]+)"
NUMBER = rf"[-+]? ?(?:(?:[0-9]+[ -])?[0-9]+/[0-9]+|{_DECIMAL})"
_QUANTITY = re.compile(
    rf"(?P<sign>[-+]?) ?(?:(?:(?P<whole>[0-9]+)[ -])?(?P<over>[0-9]+)/(?P<under>[0-9]+)|(?P<plain>{_DECIMAL}))"
    r"(?P<unit> ?[^0-9,.;:+/ ].*| 1/min|)"
)
_THREAD = re.compile(r"[0-9]+/[0-9]+ ?- ?[0-9]+(?!/)(?!.*/[0-9])|M ?[0-9.]+ ?[x×]", re.IGNORECASE)
_NUMBERED = re.compile(r"(?:no|nr|number|letter)\b|#", re.IGNORECASE)
_COMMA = re.compile(r"([0-9.]*[0-9]),([0-9]+)(.*)")
_NUMBER_AGAIN = re.compile(r"(?:^[-–]|[ (x×*])[ (]*[0-9.]*[0-9]")
_SPACED = re.compile(r"[0-9]+(?: [0-9]{3})+(?![0-9/])")
_LIBRARY_UNIT = re.compile(r"[A-Za-z_µ]+[23]?(?:[ */][A-Za-z_µ]+[23]?)*")


class QuantityWrong(FactsWrong):
    """A text that is not plainly one quantity.

    `offers` are whole quantities to write instead, each of which is accepted as it stands, and `lead` what is said
    before them; `whichever` says that only the user can know which of them was meant, `example` that none of them was.
    """

    def __init__(
        self, text: str, wrong: str, do: str = "", offers: tuple[str, ...] = (), lead: str = "write",
        whichever: bool = False, example: bool = False,
    ) -> None:  # fmt: skip
        self.offers, self.lead, self.whichever, self.example = offers, lead, whichever, example
        super().__init__((Problem("", text, wrong, do or self.offering(offers[:_MOST_OFFERED])),))

    def do_in(self, system: System) -> str:
        """What to do, offered in this system alone where that can be."""
        fits = tuple(one for one in self.offers if system_of(one) in (system, "")) if system else ()
        return self.offering(fits[:_MOST_OFFERED]) if fits else self.problems[0].do

    def offering(self, some: tuple[str, ...]) -> str:
        """What to do, where only some of the offers are left."""
        meant = ", whichever is meant" if self.whichever and len(some) > 1 else ""
        return f"{self.lead} {' or '.join(some)}{meant}"


def read_quantity(text: str, unit: str) -> float:
    """A quantity as a person writes it, in the canonical unit.

    Raises QuantityWrong, with what to write instead, when the text is not plainly one quantity of this kind.

    >>> read_quantity("1 1/2 in", "mm")
    38.1
    >>> read_quantity("500 rpm", "1/min")
    500.0
    """
    tidy = _tidy(text)
    _refuse_traps(text, tidy, unit)
    match = _QUANTITY.fullmatch(tidy)
    if match is None:
        _show(text, "is not a number with a unit", unit)
    number = _number(text, match, unit)
    written = match["unit"].strip()
    digits = tidy[: match.start("unit")].strip()
    if not written and unit != "1":
        _offer(text, "has no unit", _with_units(digits, unit), unit)
    if written in ("mil", "mils"):
        wrong = "mil is said for a thousandth of an inch and for a millimetre"
        _offer(text, wrong, (f"{digits} thou", f"{digits} mm"), unit)
    return float(_converted(text, number, digits, written, unit))


def units_of(unit: str) -> tuple[str, ...]:
    """The usual spellings of units that convert to a canonical unit."""
    return tuple(FAST[unit][1])


def system_of(text: str) -> System:
    """The system that a quantity is written in; empty when it has no unit or one of both systems.

    >>> system_of("1 1/2 in"), system_of("24 h"), system_of("20 degC")
    ('inch', '', 'metric')
    """
    match = _ENDS_IN.search(_tidy(text))
    written = match[1] if match else ""
    if written in _OF_INCHES:
        return "inch"
    return "metric" if any(written in FAST[unit][1] for unit in FAST if unit not in _OF_BOTH) else ""


def is_quantity(text: str) -> bool:
    """Whether a text is a number with a unit and nothing else.

    >>> is_quantity("3/8 in"), is_quantity("3/8 in bar"), is_quantity("12")
    (True, False, False)
    """
    match = _QUANTITY.fullmatch(_tidy(text))
    return match is not None and any(match["unit"].strip() in units for _, units in FAST.values() if match["unit"])


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
    raise QuantityWrong(text, wrong, do)


def _offer(
    text: str, wrong: str, instead: Iterable[str], unit: str, whichever: bool = False, otherwise: str = ""
) -> NoReturn:  # fmt: skip
    """Refuse with what to write; nothing is offered that would be refused in its turn, a bare number gets its units."""
    meant = tuple(dict.fromkeys(instead))
    with_units = tuple(whole for one in meant for whole in _with_units(one, unit))
    offers = tuple(filter(lambda one: _accepted(one, unit), meant)) or tuple(
        filter(lambda one: _accepted(one, unit), with_units)
    )
    if offers:
        raise QuantityWrong(text, wrong, offers=offers, whichever=whichever)
    if otherwise:
        _refuse(text, wrong, otherwise)
    _show(text, wrong, unit)


def _show(text: str, wrong: str, unit: str) -> NoReturn:
    """Refuse with an example, where nobody can guess what was meant."""
    example = "50 %" if unit == "1" else f"12.5 {OFFERED[unit][0]}"
    raise QuantityWrong(text, wrong, offers=(example,), lead="write for example", example=True)


def _accepted(text: str, unit: str) -> bool:
    try:
        read_quantity(text, unit)
    except FactsWrong:
        return False
    return True


def _refuse_traps(text: str, tidy: str, unit: str) -> None:
    if not tidy:
        _show(text, "is empty", unit)
    if len(tidy) > _MOST_CHARACTERS:
        _show(text, "is too long for a quantity", unit)
    if comma := _COMMA.search(tidy):
        before, meant = tidy[: comma.start()], _without_comma(*comma.groups())
        numbers = [f"{before}{one}" for one in meant]
        _offer(text, "the decimal mark must be a point", numbers, unit, whichever=len(meant) > 1)
    if power := _POWER.match(tidy):
        # Far powers are slips: nothing plausible can be offered for them.
        plain = f"{Decimal(power[0]):f}{tidy[power.end() :]}" if abs(int(power[1])) <= _FARTHEST_POWER else ""
        _offer(text, "is written with a power of ten", (plain,) if plain else (), unit)
    if _THREAD.match(tidy):
        _refuse(text, f"is a thread, not a {kind_of(unit)}", f"write the size in {_joined(unit)}")
    if _NUMBERED.match(tidy):
        _refuse(text, f"is a drill by number or letter, not a {kind_of(unit)}", f"write the size in {_joined(unit)}")
    if spaced := _SPACED.match(tidy):
        joined = spaced[0].replace(" ", "") + tidy[spaced.end() :]
        _offer(text, "digits must not be grouped", (joined,), unit)


def _without_comma(whole: str, rest: str, after: str) -> tuple[str, ...]:
    """What the comma may have meant; both readings when it could be a decimal mark or a group of digits."""
    decimal = f"{whole.replace('.', '')}.{rest}{after}"
    if len(rest) == 3 and "." not in whole and whole.strip("0"):
        return f"{whole}{rest}{after}", decimal
    return (decimal,)


def _number(text: str, match: re.Match[str], unit: str) -> Fraction:
    if match["plain"] is not None:
        size = Fraction(match["plain"])
    else:
        over, under = int(match["over"]), int(match["under"])
        if under == 0:
            _show(text, "has a fraction over nought", unit)
        if match["whole"] is not None and over >= under:
            more, over = divmod(over, under)
            whole = int(match["whole"]) + more
            mended = f"{match['sign']}{whole}" + (f" {over}/{under}" if over else "")
            wrong = "has a fraction of one or more behind a whole number"
            _offer(text, wrong, (f"{mended}{match['unit']}",), unit)
        size = int(match["whole"] or 0) + Fraction(over, under)
    return -size if match["sign"] == "-" else size


def _converted(text: str, number: Fraction, digits: str, written: str, unit: str) -> Fraction:
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
    if found is None and _NUMBER_AGAIN.search(written):
        _show(text, "holds more than one number", unit)
    if found is None:
        wrong = f"'{written}' is no unit of {kind_of(unit)} that is known here"
        _offer(text, wrong, (f"{digits} {near}",) if near else (), unit, otherwise=f"use {_joined(unit)}")
    return found


def _spelling_near(written: str, unit: str) -> str | None:
    folded = written.casefold().rstrip(".")
    if unit == "degC" and folded in _SAID_FOR:
        return _SAID_FOR[folded]
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


def _with_units(number: str, unit: str) -> tuple[str, ...]:
    return tuple(f"{number} {one}" for one in OFFERED[unit])
