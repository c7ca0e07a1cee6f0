"""Dimensions below a part, shortest at the top, on as few levels as keep every number clear of the others' lines."""

from collections.abc import Sequence
from dataclasses import dataclass

from tailtrue.render.chain import reference
from tailtrue.render.figures.plate import LEVEL, WIDTH, Plate
from tailtrue.render.ink import TEXT_HEIGHT, text_width

_ARROWS = 5.0  # what the arrows take on either side of a span too short for them
_GAP = 1.0
_LEAST_INSIDE = 7.5


@dataclass(frozen=True)
class Span:
    """A dimension along the part: its name and its two ends, in mm on paper; one that the others may give says so."""

    name: str
    left: float
    right: float
    spare: bool = False


@dataclass(frozen=True)
class _Way:
    """One way to set a dimension: all the room it takes, and the room of its number."""

    left: float
    right: float
    number_left: float
    number_right: float
    beside: bool

    def crossed_by(self, others: list[Span]) -> bool:
        """Whether a line that leads further down passes through the number."""
        return any(self.number_left < x < self.number_right for one in others for x in (one.left, one.right))


def stack(plate: Plate, first: float, edge: float, *spans: Span) -> float:
    """Draw the dimensions below each other from the level `first` on, led from `edge`; the last level."""
    written = {span: number for span in spans if (number := _number(plate, span, spans))}
    waiting = sorted(written, key=lambda span: span.right - span.left)
    levels: list[list[_Way]] = []
    put_off = 0
    while waiting:
        span = waiting.pop(0)
        ways = _ways(span, text_width(written[span]))
        clear = [way for way in ways if not way.crossed_by(waiting)]
        if not clear and put_off < len(waiting):
            waiting.append(span)
            put_off += 1
            continue
        put_off = 0
        way = (clear or ways)[0]
        row = next((row for row, taken in enumerate(levels) if _free(way, taken)), len(levels))
        if row == len(levels):
            levels.append([])
        levels[row].append(way)
        _draw(plate, span, way, first + row * LEVEL, edge, written[span])
    return first + (len(levels) - 1) * LEVEL


def _number(plate: Plate, span: Span, spans: Sequence[Span]) -> str:
    """The number of a dimension as it is written; empty where it would not agree with the others."""
    if not span.spare:
        return plate.number(span.name)
    others = [(one.left, one.right, plate.number(one.name)) for one in spans if not one.spare]
    return reference(span.left, span.right, plate.number(span.name), others)


def _ways(span: Span, wide: float) -> list[_Way]:
    """Number inside where it fits; else beside, at the right before the left."""
    room = span.right - span.left
    if room >= max(wide + _GAP, _LEAST_INSIDE):
        middle = (span.left + span.right) / 2
        return [_Way(span.left, span.right, middle - wide / 2, middle + wide / 2, beside=False)]
    low, high = span.left - _ARROWS, span.right + _ARROWS
    at_right = _Way(low, high + _GAP + wide, high + _GAP, high + _GAP + wide, beside=True)
    at_left = _Way(low - _GAP - wide, high, low - _GAP - wide, low - _GAP, beside=True)
    return [way for way in (at_right, at_left) if way.left >= 0 and way.right <= WIDTH] or [at_right]


def _free(way: _Way, taken: list[_Way]) -> bool:
    return all(way.right + _GAP <= one.left or one.right + _GAP <= way.left or _end_to_end(way, one) for one in taken)


def _end_to_end(one: _Way, two: _Way) -> bool:
    """Dimensions in a chain share an arrow line."""
    return not one.beside and not two.beside and (one.right <= two.left or two.right <= one.left)


def _draw(plate: Plate, span: Span, way: _Way, level: float, edge: float, number: str) -> None:
    for x in (span.left, span.right):
        plate.ink.line(x, edge + 1, x, level + 1)
    plate.ink.between(span.left, span.right, level)
    foot = level + TEXT_HEIGHT / 3 if way.beside else level - 1
    plate.ink.words((way.number_left + way.number_right) / 2, foot, (number,), "middle", "size")
