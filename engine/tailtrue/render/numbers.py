"""How a figure is printed: the unit of the dials first, the digits of its kind, limits rounded inward.

Each system is rounded from the canonical value by itself, never from the other one's print, in decimals.
Tolerance: a value within a millionth of its last printed digit counts as lying on that digit, so that the
noise of binary floats (25.400000000000002) moves neither a limit nor a half. That close to zero is zero.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_EVEN, Context, Decimal
from functools import lru_cache
from math import isfinite

from tailtrue.parts import Bound, Dials, Figure, Limits, Rounding

NBSP = "\u00a0"
BY_HAND = "\u2020"  # stands behind a number that was set by hand
MINUS = "\u2212"
_ON_A_DIGIT = Decimal("0.000001")
_MOST_EXTRA_PLACES = 6  # a value that is not zero by the rule above shows its first digit within these
Finer = tuple[int, int]  # digits more than those of the kind, metric and inch
NOT_FINER: Finer = (0, 0)
_ROUNDING_OF: Mapping[Bound, str] = {"nearest": ROUND_HALF_EVEN, "most": ROUND_FLOOR, "least": ROUND_CEILING}
_EXACT = Context(prec=400)

_INCH = Decimal("25.4")
_FOOT = Decimal("0.3048")
_POUND = Decimal("0.45359237")
_POUND_FORCE = _POUND * Decimal("9.80665")
_HORSEPOWER = Decimal(550) * _FOOT * _POUND_FORCE
_ONE = Decimal(1)


@dataclass(frozen=True)
class Shown:
    """A figure in one system: its digits and its unit, apart, for columns. The unit may be empty."""

    number: str
    unit: str

    @property
    def whole(self) -> str:
        """Digits and unit, held together on one line."""
        return f"{self.number}{NBSP}{self.unit}" if self.unit else self.number


@dataclass(frozen=True)
class Column:
    """Figures of one column of a table: the unit for its heading, the digits for its cells."""

    unit: str
    numbers: tuple[str | None, ...]


@dataclass(frozen=True)
class _Scale:
    """One unit: how much of the canonical unit it is, and its digits on the page."""

    unit: str
    size: Decimal = _ONE
    places: int = 0
    step: int = 1
    zero_at: Decimal = Decimal(0)
    spare: int = 0
    whole_from: int | None = None


@dataclass(frozen=True)
class _Style:
    """A rounding kind: the canonical unit it is made for, and its scale in each system."""

    canonical: str
    metric: _Scale
    inch: _Scale
    both: bool = False

    def scale(self, dials: Dials) -> _Scale:
        return self.metric if dials == "metric" else self.inch


def _length(places: int, inch_places: int, spare: int = 0) -> _Style:
    metric, inch = _Scale("mm", _ONE, places, spare=spare), _Scale("in", _INCH, inch_places, spare=spare)
    return _Style("mm", metric, inch, both=True)


_PRESSURE = _Scale("MPa", places=1, whole_from=100)
_PSI = _Scale("psi", _POUND_FORCE / (_INCH * _INCH), step=5)
_SPEED = _Scale("rev/min")
_STYLES: Mapping[Rounding, _Style] = {
    "fit": _length(3, 4),
    "difference": _length(3, 4),
    # Half of a difference of an odd number of steps: one place more, so that no two rows of a table read alike.
    "half": _length(3, 4, spare=1),
    # A division of a dial may be a hundredth and a half: one place more, printed where it is not nought.
    "depth": _length(2, 3, spare=1),
    "size": _length(2, 3),
    "tool": _length(2, 3),
    "length": _length(1, 2),
    "feed": _Style("mm/rev", _Scale("mm/rev", _ONE, 3), _Scale("in/rev", _INCH, 4), both=True),
    "speed": _Style("1/min", _SPEED, _SPEED),
    "surface-speed": _Style("m/min", _Scale("m/min"), _Scale("ft/min", _FOOT, step=5), both=True),
    "force": _Style("N", _Scale("N"), _Scale("lbf", _POUND_FORCE)),
    "torque": _Style("N mm", _Scale(f"N{NBSP}m", Decimal(1000), 1), _Scale(f"lbf{NBSP}in", _POUND_FORCE * _INCH)),
    "pressure": _Style("MPa", _PRESSURE, _PSI),
    "power": _Style("W", _Scale("W"), _Scale("hp", _HORSEPOWER, 2)),
    "mass": _Style("kg", _Scale("kg", _ONE, 2), _Scale("lb", _POUND, 1)),
    # What is lifted, from a table of usual masses: no scale ever read it.
    "load": _Style("kg", _Scale("kg"), _Scale("lb", _POUND)),
    "temperature": _Style(
        "degC", _Scale("°C"), _Scale("°F", Decimal(5) / Decimal(9), step=5, zero_at=Decimal(32)), both=True
    ),
}
# Units without a rounding of their own, in inches.
_PLAIN_IN_INCHES = {"mm2": ("in²", _INCH**2), "mm3": ("in³", _INCH**3), "kg/m3": ("lb/in³", _POUND / (_INCH / 1000) ** 3)}
_PRETTY = {"1": "", "1/min": "rev/min", "degC": "°C", "degF": "°F", "mm2": "mm²", "mm3": "mm³", "kg/m3": "kg/m³"}
_SIGNIFICANT = 3  # digits of a bare ratio


def show(figure: Figure, dials: Dials, finer: Finer = NOT_FINER) -> str:
    """The figure in the system of the dials, the other system in parentheses where that helps.

    >>> show(Figure(fact="bar.diameter", value=25.4, unit="mm", rounding="fit"), "inch").replace(NBSP, " ")
    '1.0000 in (25.400 mm)'
    """
    first = read(figure, dials, finer[dials == "inch"])
    second = other(figure, dials, finer)
    return f"{first.whole} ({second.whole})" if second else first.whole


def show_one(figure: Figure, dials: Dials) -> str:
    """The figure in the system of the dials alone, for the cell of a table.

    >>> show_one(Figure(fact="skim.speed", value=310.0, unit="1/min", rounding="speed"), "inch")
    '310\\xa0rev/min'
    """
    return read(figure, dials).whole


def show_limits(limits: Limits, dials: Dials) -> str:
    """A band in words and figures, rounded inward in each system, a unit on both ends.

    >>> top = Figure(fact="bore.most", value=25.397, unit="mm", rounding="fit", bound="most")
    >>> show_limits(Limits(low=None, high=top), "metric").replace(NBSP, " ")
    'at most 25.397 mm (0.9998 in)'
    """
    first, second = limits_apart(limits, dials)
    return f"{first} ({second})" if second else first


def limits_apart(limits: Limits, dials: Dials) -> tuple[str, str]:
    """A band in the system of the dials, and in the other one if that is worth printing.

    >>> limits_apart(Limits(high=Figure(fact="runout", value=0.02, unit="mm", rounding="fit")), "metric")[1]
    '0.0007\\xa0in'
    """
    low = None if limits.low is None else _bounded(limits.low, "least")
    high = None if limits.high is None else _bounded(limits.high, "most")
    ends = [end for end in (low, high) if end is not None]
    both = bool(ends) and all(map(_has_second, ends))
    second = _band(low, high, _other_system(dials)) if both else ""
    first = _band(low, high, dials)
    if low is None or high is None:
        return (f"at {'most' if low is None else 'least'} {first}" if ends else ""), second
    return first, second


def limits_ends(limits: Limits, dials: Dials) -> tuple[Shown | None, Shown | None]:
    """The two ends of a band as they are printed, for comparing with a reading; None for a side that is open.

    >>> limits_ends(Limits(high=Figure(fact="runout", value=0.02, unit="mm", rounding="fit")), "metric")
    (None, Shown(number='0.020', unit='mm'))
    """
    low = None if limits.low is None else _bounded(limits.low, "least")
    high = None if limits.high is None else _bounded(limits.high, "most")
    return _ends(low, high, dials)


def columns(figures: Iterable[Figure | None], dials: Dials) -> Column:
    """The figures of one column, digits apart from the unit they share; an empty cell stays None.

    >>> columns([Figure(fact="align.table", value=0.02, unit="mm", rounding="difference"), None], "metric")
    Column(unit='mm', numbers=('0.020', None))
    """
    cells = [None if figure is None else read(figure, dials) for figure in figures]
    units = {cell.unit for cell in cells if cell is not None}
    if len(units) > 1:
        return Column("", tuple(None if cell is None else cell.whole for cell in cells))
    return Column(units.pop() if units else "", tuple(None if cell is None else cell.number for cell in cells))


def read(figure: Figure, dials: Dials, extra_places: int = 0) -> Shown:
    """The figure in one system, digits and unit apart.

    >>> read(Figure(fact="bond.cure", value=86400.0, unit="s", rounding="time", bound="least"), "metric")
    Shown(number='24', unit='h')
    """
    shown = _read(figure, dials, extra_places)
    if figure.set_by is None:
        return shown
    return Shown(shown.number, f"{shown.unit}{NBSP}{BY_HAND}" if shown.unit else BY_HAND)


def _read(figure: Figure, dials: Dials, extra_places: int) -> Shown:
    if not isfinite(figure.value):
        raise ValueError(f"{figure.fact} is {figure.value}, which is no number to print")
    if figure.rounding == "tool" and figure.marked is not None:
        return Shown(figure.marked, "")
    return _set(figure.value, figure.unit, figure.rounding, figure.bound, dials, extra_places)


@lru_cache(maxsize=4096)  # one figure stands on many papers, in several formats
def _set(number: float, unit: str, rounding: Rounding, bound: Bound, dials: Dials, extra_places: int) -> Shown:
    value = Decimal(repr(number))
    style = _STYLES.get(rounding)
    if style is not None and unit == style.canonical:
        return _scaled(value, style.scale(dials), bound, extra_places)
    if rounding == "time" and unit == "s":
        return _time(value, bound)
    if rounding == "angle" and unit == "deg":
        return Shown(_stripped(_digits(value, 2, bound)) + "°", "")
    if dials == "inch" and unit in _PLAIN_IN_INCHES:
        name, size = _PLAIN_IN_INCHES[unit]
        return Shown(_significant(_EXACT.divide(value, size), bound), name)
    if rounding == "count":
        return Shown(_digits(value, 0, bound), unit_name(unit))
    return Shown(_significant(value, bound), unit_name(unit))


def other(figure: Figure, dials: Dials, finer: Finer = NOT_FINER) -> Shown | None:
    """The figure in the system that is not on the dials, if it is worth printing.

    >>> other(Figure(fact="chuck.force", value=310.0, unit="N", rounding="force"), "inch") is None
    True
    """
    return _read(figure, _other_system(dials), finer[dials == "metric"]) if _has_second(figure) else None


def unit_name(unit: str) -> str:
    """A canonical unit as it is written on the page.

    >>> unit_name("degC"), unit_name("1/min"), unit_name("in")
    ('°C', 'rev/min', 'in')
    """
    return _PRETTY.get(unit, unit)


def _other_system(dials: Dials) -> Dials:
    return "inch" if dials == "metric" else "metric"


def _has_second(figure: Figure) -> bool:
    style = _STYLES.get(figure.rounding)
    if style is None or not style.both or figure.unit != style.canonical:
        return False
    return not (figure.rounding == "tool" and figure.marked is not None)


def _bounded(figure: Figure, bound: Bound) -> Figure:
    return figure if figure.bound == bound else figure.model_copy(update={"bound": bound})


def _band(low: Figure | None, high: Figure | None, dials: Dials) -> str:
    """The ends of a band in words, from the lower to the upper one."""
    return " to ".join(end.whole for end in _ends(low, high, dials) if end is not None)


def _ends(low: Figure | None, high: Figure | None, dials: Dials) -> tuple[Shown | None, Shown | None]:
    """Both ends inward; a band thinner than a digit gets more digits rather than ends that cross."""
    if low is None or high is None:
        return (None if low is None else read(low, dials)), (None if high is None else read(high, dials))
    extra = crossing_places(low, high, dials)
    return read(low, dials, extra), read(high, dials, extra)


def crossing_places(low: Figure, high: Figure, dials: Dials) -> int:
    """How many digits more two ends need so that inward rounding does not cross them on paper."""
    for extra in range(_MOST_EXTRA_PLACES):
        if not _crossed(read(low, dials, extra).number, read(high, dials, extra).number):
            break
    return extra


def _crossed(low: str, high: str) -> bool:
    try:
        return Decimal(low.replace(MINUS, "-")) > Decimal(high.replace(MINUS, "-"))
    except ArithmeticError:
        return False  # a time or a tool's marking: not a plain number, nothing to compare


def _scaled(value: Decimal, scale: _Scale, bound: Bound, extra_places: int) -> Shown:
    amount = _EXACT.divide(value, scale.size) + scale.zero_at
    places = scale.places
    if scale.whole_from is not None and abs(amount) >= scale.whole_from:
        places = 0
    step = scale.step if extra_places == 0 else 1
    digits = _digits(amount, places + extra_places + scale.spare, bound, step)
    return Shown(digits.removesuffix("0" * scale.spare) if scale.spare else digits, scale.unit)


def _round(amount: Decimal, places: int, bound: Bound, step: int = 1) -> tuple[Decimal, bool]:
    """The rounded amount, and whether it was something and became nothing."""
    counted = _EXACT.divide(amount.scaleb(places, _EXACT), Decimal(step))
    counted = counted.quantize(_ON_A_DIGIT, ROUND_HALF_EVEN, _EXACT)
    rounded = counted.to_integral_value(_ROUNDING_OF[bound])
    return _EXACT.multiply(rounded, Decimal(step)).scaleb(-places, _EXACT), bool(counted) and not rounded


def _digits(amount: Decimal, places: int, bound: Bound, step: int = 1) -> str:
    rounded, vanished = _round(amount, places, bound, step)
    if vanished and bound == "nearest":
        smallest = _text(Decimal(step).scaleb(-places), places)
        return f"<{NBSP}{smallest}" if amount > 0 else f">{NBSP}{MINUS}{smallest}"
    # A limit must not be loosened by "< 0.001": it gets the digits that it needs instead.
    while vanished:
        places += 1
        rounded, vanished = _round(amount, places, bound)
    return _text(rounded, places)


def _text(rounded: Decimal, places: int) -> str:
    digits = f"{abs(rounded):.{places}f}"
    return f"{MINUS}{digits}" if rounded < 0 else digits


def _stripped(digits: str) -> str:
    return digits.rstrip("0").rstrip(".") if "." in digits else digits


def _significant(value: Decimal, bound: Bound) -> str:
    if not value:
        return "0"
    places = max(0, _SIGNIFICANT - 1 - value.adjusted())
    stripped = _stripped(_digits(value, places, bound))
    # One digit alone says that there is nothing behind it: 1.004 is 1.0, and only 1 is 1.
    rounded_off = len(stripped) == 1 and abs(value - Decimal(stripped)) > _ON_A_DIGIT
    return f"{stripped}.0" if rounded_off else stripped


def _time(seconds: Decimal, bound: Bound) -> Shown:
    """Seconds to two minutes, minutes to one hour, then hours and minutes: as a clock on the wall is read."""
    whole, vanished = _round(seconds, 0, bound)
    if vanished or abs(whole) < 120:
        return Shown(_digits(seconds, 0, bound), "s")
    minutes, _ = _round(_EXACT.divide(seconds, Decimal(60)), 0, bound)
    if abs(minutes) < 60:
        return Shown(_text(minutes, 0), "min")
    hours, rest = divmod(int(minutes), 60)
    return Shown(f"{hours}{NBSP}h{NBSP}{rest}", "min") if rest else Shown(str(hours), "h")
