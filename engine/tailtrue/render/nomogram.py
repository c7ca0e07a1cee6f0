"""The scales of one bar: difference, factor and move, read with a straight edge. A drawing to be printed at its width.

Three upright scales, each logarithmic. The difference grows downward and the move upward, so that the point of the
middle scale that a straight edge passes depends on their quotient alone.
"""

from collections.abc import Iterator
from math import ceil, floor, log10

from tailtrue.parts import Dials
from tailtrue.record_sheet import Scales
from tailtrue.render.ink import Ink
from tailtrue.render.numbers import show_one

WIDTH, HEIGHT = 170.0, 186.0
_TOP, _BOTTOM = 14.0, 184.0
_LEFT, _MIDDLE, _RIGHT = 42.0, 88.0, 134.0
_INCH = 25.4
_FACTORS = (0.5, 0.55, 0.6, 0.65, 0.7, 0.8, 0.9, 1.0)
_LEAST_GAP = 5.2  # between two numbers of a scale, so that they stay apart
_TICK, _LONG_TICK = 2.0, 3.6


def height_of_difference(value_mm: float, scales: Scales) -> float:
    """Where a difference stands on the left scale. [mm from the top]"""
    return _TOP + _decade(scales) * log10(value_mm / scales.least.value)


def height_of_move(value_mm: float, scales: Scales) -> float:
    """Where a move stands on the right scale. [mm from the top]"""
    return _BOTTOM - _decade(scales) * log10(value_mm / (scales.least.value * scales.factor.value))


def height_of_factor(value: float, scales: Scales) -> float:
    """Where a factor stands on the middle scale. [mm from the top]"""
    return (_TOP + _BOTTOM) / 2 - _decade(scales) / 2 * log10(value / scales.factor.value)


def nomogram(scales: Scales, dials: Dials, title: str, can_move: bool) -> str:
    """The drawing as SVG; the right scale is a move, or how far the centre stands off where nothing can be moved."""
    ink = Ink()
    unit = "mm" if dials == "metric" else "in"
    size = 1.0 if dials == "metric" else _INCH
    most = scales.most.value
    heads = (
        (_LEFT, ("collars differ by,", f"{unit}, on diameter")),
        (_MIDDLE, ("factor", "of the bar")),
        (
            _RIGHT,
            (
                "move the tailstock" if can_move else "tailstock centre",
                f"{'centre by' if can_move else 'off the line by'}, {unit}",
            ),
        ),
    )
    for x, lines in heads:
        ink.words(x, 4, lines, "middle", "strong")
        ink.line(x, _TOP, x, _BOTTOM, "thin" if x == _MIDDLE else "edge")
    _scale(
        ink, [(v, height_of_difference(v * size, scales)) for v in _ticks(scales.least.value / size, most / size)], _LEFT, -1
    )
    ends = (scales.least.value * scales.factor.value / size, most * scales.factor.value / size)
    _scale(ink, [(v, height_of_move(v * size, scales)) for v in _ticks(*ends)], _RIGHT, 1)
    _example(ink, scales, size)
    _middle(ink, scales)
    _zones(ink, scales)
    return ink.svg("nomogram", WIDTH, HEIGHT, title, _told(scales, dials, can_move))


def _told(scales: Scales, dials: Dials, can_move: bool) -> str:
    right, short = ("move of the tailstock", "move") if can_move else ("how far the centre stands off", "offset")
    moved = scales.most.model_copy(update={"value": scales.most.value * scales.factor.value})
    return (
        f"Three upright scales. Left: difference of the collars, {show_one(scales.least, dials)} at the top to "
        f"{show_one(scales.most, dials)} at the foot. Middle: factor, this bar marked at {show_one(scales.factor, dials)}. "
        f"Right: {right}, up to {show_one(moved, dials)} at the top. A straight edge from the difference "
        f"through the mark meets the {short}, which is the difference times the factor. Up to "
        f"{show_one(scales.leave, dials)} the tailstock is left alone."
    )


def _decade(scales: Scales) -> float:
    return (_BOTTOM - _TOP) / log10(scales.most.value / scales.least.value)


def _ticks(least: float, most: float) -> Iterator[float]:
    """Every step of a tenth of a decade's number from the one end to the other: 1.0, 1.1 ... 2.0, 2.2 ... 5.0, 5.5 ..."""
    for power in range(floor(log10(least)), ceil(log10(most)) + 1):
        for tenths in (*range(10, 20), *range(20, 50, 2), *range(50, 100, 5)):
            value = tenths * 10.0 ** (power - 1)
            if least * (1 - 1e-9) <= value <= most * (1 + 1e-9):
                yield value


def _scale(ink: Ink, ticks: list[tuple[float, float]], x: float, side: int) -> None:
    """Ticks of a scale with as many numbers as there is room for, the roundest first."""
    numbered: list[float] = []
    for value, y in sorted(ticks, key=lambda tick: (_roundness(tick[0]), tick[1])):
        has_number = _roundness(value) < 3 and all(abs(y - other) >= _LEAST_GAP for other in numbered)
        ink.line(x, y, x + side * (_LONG_TICK if has_number else _TICK), y, "scale")
        if has_number:
            numbered.append(y)
            ink.words(x + side * 4.6, y + 1.2, (_shown(value),), "start" if side > 0 else "end", "size")


def _roundness(value: float) -> int:
    """0 for 1, 2 and 5 of a decade, 1 for other whole numbers, 2 for 1.5, 3 for the rest."""
    digit = round(value / 10.0 ** floor(log10(value) + 1e-9), 6)
    if digit in (1, 2, 5):
        return 0
    return 1 if digit == int(digit) else 2 if digit == 1.5 else 3


def _shown(value: float) -> str:
    return f"{value:.6f}".rstrip("0")


def _middle(ink: Ink, scales: Scales) -> None:
    mine = height_of_factor(scales.factor.value, scales)
    for value in _FACTORS:
        y = height_of_factor(value, scales)
        if not _TOP <= y <= _BOTTOM:
            continue
        ink.line(_MIDDLE - _TICK, y, _MIDDLE + _TICK, y, "scale")
        if abs(y - mine) >= _LEAST_GAP and value in (0.5, 0.6, 0.7, 0.8, 1.0):
            ink.words(_MIDDLE + 3.2, y + 1.2, (f"{value:g}",), "start")
    ink.outline(((_MIDDLE - 3, mine), (_MIDDLE, mine - 3), (_MIDDLE + 3, mine), (_MIDDLE, mine + 3)), "edge")
    ink.line(_MIDDLE - 3, mine, _MIDDLE + 3, mine, "scale")
    ink.line(_MIDDLE, mine - 3, _MIDDLE, mine + 3, "scale")
    mark = ("THIS BAR", show_one(scales.factor, "metric"))
    ink.words_over(_MIDDLE - 4.4, mine - 0.8, mark, "end", "strong")


def _example(ink: Ink, scales: Scales, size: float) -> None:
    """A straight edge as it lies: from the last number of the scale that begins with a five."""
    fives = [
        v for v in _ticks(scales.least.value / size, scales.most.value / size) if round(v * 10.0 ** -floor(log10(v))) == 5
    ]
    shown = [v for v in fives if abs(v * 10.0 ** -floor(log10(v)) - 5) < 1e-6]
    difference = (max(shown) if shown else scales.most.value / size) * size
    start, end = height_of_difference(difference, scales), height_of_move(difference * scales.factor.value, scales)
    ink.line(_LEFT, start, _RIGHT, end, "path")
    middle = (_LEFT + 2 * _MIDDLE) / 3
    foot = start + (end - start) * (middle - _LEFT) / (_RIGHT - _LEFT) + 6
    ink.words_over(middle, foot, ("example",), "start")


def _zones(ink: Ink, scales: Scales) -> None:
    """Brackets beside the left scale: where the tailstock is left alone, and where it is read again."""
    edges = [(scales.least.value, scales.leave.value, "leave it")]
    if scales.again is not None:
        edges.append((scales.leave.value, scales.again.value, "read again"))
    begins = _TOP
    for _, upper, words in edges:
        foot = min(height_of_difference(upper, scales), _BOTTOM) if upper > scales.least.value else _TOP
        if foot - begins < 3:
            continue
        x = _LEFT - 20
        ink.outline(((x + 2, begins + 0.6), (x, begins + 0.6), (x, foot - 0.6), (x + 2, foot - 0.6)), "thin", closed=False)
        middle = (begins + foot) / 2
        ink.words(x - 1.5, middle + 1.2, (words,), "end", "strong")
        begins = foot
