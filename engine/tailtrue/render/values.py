"""The value of a setting, taken apart for a column: digits, unit, and the other system."""

from dataclasses import dataclass

from tailtrue.parts import Dials, Figure, Text
from tailtrue.render.numbers import Shown, other, read
from tailtrue.render.pairs import pieces


@dataclass(frozen=True)
class ValueLine:
    """A value in columns: digits, unit, and the same in the other system."""

    number: str
    unit: str
    other: str


def value_line(text: Text, dials: Dials) -> ValueLine | None:
    """The columns of a value that begins and ends with a figure of one unit; None for a value in words.

    >>> low = Figure(fact="bore.least", value=22.0, unit="mm", rounding="size", bound="least")
    >>> value_line((low, " to ", low.model_copy(update={"value": 22.04})), "metric")
    ValueLine(number='22.00 to 22.04', unit='mm', other='0.867 to 0.868\\xa0in')
    """
    if not text or isinstance(text[0], str) or isinstance(text[-1], str):
        return None
    figures = [(piece, finer) for piece, finer in pieces(text) if isinstance(piece, Figure)]
    first = _joined(text, [read(piece, dials, finer[dials == "inch"]) for piece, finer in figures])
    if first is None:
        return None
    seconds = [other(piece, dials, finer) for piece, finer in figures]
    known = [second for second in seconds if second is not None]
    second = _joined(text, known) if len(known) == len(seconds) else None
    return ValueLine(first.number, first.unit, second.whole if second else "")


def _joined(text: Text, shown: list[Shown]) -> Shown | None:
    if len({one.unit for one in shown}) != 1:
        return None
    left = iter(shown)
    number = "".join(piece if isinstance(piece, str) else next(left).number for piece in text)
    return Shown(number, shown[0].unit)
