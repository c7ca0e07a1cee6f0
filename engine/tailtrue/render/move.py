"""The lathe from above: which way the tailstock goes, drawn and in the words of the look-up table."""

from collections.abc import Sequence
from typing import Literal

from tailtrue.render.ink import LINE_HEIGHT, Ink, Way
from tailtrue.render.words import LARGER_SHORT, SMALLER_SHORT, Ways, directions, sentence

_WIDTH, _HEIGHT = 104.0, 78.0
_MIDDLE = 38.0
_TOOL_X = 46.0
_TAILSTOCK_X = 80.0

Side = Literal["toward you", "away from you"]


def side_of(words: str) -> Side | None:
    """The side that a direction in words points to; None when the words name no side or both.

    >>> side_of("Move it toward you, the tool side"), side_of("away from you"), side_of("to the left")
    ('toward you', 'away from you', None)
    """
    folded = words.lower().replace("towards", "toward")
    found: list[Side] = [side for side in ("toward you", "away from you") if side in folded]
    return found[0] if len(found) == 1 else None


def move_drawing(look_up: Ways) -> str:
    """A plan view as SVG. The tool stands on the side that a larger collar sends the tailstock to."""
    ink = Ink()
    larger, smaller = side_of(look_up.larger_at_tailstock), side_of(look_up.smaller_at_tailstock)
    ink.words(_WIDTH / 2 - 14, 4, ("far side",), "middle")
    _draw_lathe(ink)
    if larger is not None:
        _draw_tool(ink, "up" if larger == "toward you" else "down")
    for side, case in ((larger, LARGER_SHORT), (smaller, SMALLER_SHORT)):
        if side is not None:
            _draw_way(ink, "down" if side == "toward you" else "up", (f"{case}:", side))
    ink.words(_WIDTH / 2 - 14, _HEIGHT - 2, ("YOU STAND HERE",), "middle", "strong")
    return ink.svg("move-drawing", _WIDTH, _HEIGHT, "Which way the tailstock goes, seen from above", _told(look_up))


def _told(look_up: Ways) -> str:
    cases = " ".join(f"{case}: {sentence(way)}" for case, way in directions(look_up))
    return f"The lathe from above, headstock at the left, tailstock at the right, you below. {cases}"


def _draw_lathe(ink: Ink) -> None:
    ink.box(0, _MIDDLE - 13, 16, 26)
    ink.words(0, _MIDDLE + 18, ("headstock",))
    ink.outline(((16, _MIDDLE - 2), (19.5, _MIDDLE), (16, _MIDDLE + 2)))
    ink.box(19, _MIDDLE - 2, 51, 4, "edge steel")
    for x in (23, 60):
        ink.box(x, _MIDDLE - 6, 6, 12)
    ink.outline(((74, _MIDDLE - 2), (69.5, _MIDDLE), (74, _MIDDLE + 2)))
    ink.box(74, _MIDDLE - 8, 14, 16)
    ink.words(90, _MIDDLE - 1, ("tail-", "stock"))
    ink.line(12, _MIDDLE, 92 - 3, _MIDDLE, "chain")


def _draw_tool(ink: Ink, cuts: Way) -> None:
    away = 1 if cuts == "up" else -1
    tip = _MIDDLE + away * 7
    ink.outline(
        ((_TOOL_X, tip), (_TOOL_X + 2, tip + away * 3), (_TOOL_X + 2, tip + away * 13),
         (_TOOL_X - 2, tip + away * 13), (_TOOL_X - 2, tip + away * 3))
    )  # fmt: skip
    ink.words(_TOOL_X - 4, tip + away * 9 + 1, ("tool",), "end")


def draw_way(ink: Ink, x: float, middle: float, way: Way, start: float, end: float) -> None:
    """The broad arrow of a move, from `start` to `end` away from the axis at `middle`."""
    sign = 1 if way == "down" else -1
    ink.line(x, middle + sign * start, x, middle + sign * (end - 4), "way")
    ink.arrow(x, middle + sign * end, way, size=2.4)


def _draw_way(ink: Ink, way: Way, lines: Sequence[str]) -> None:
    end = _MIDDLE + (21 if way == "down" else -21)
    draw_way(ink, _TAILSTOCK_X, _MIDDLE, way, 9, 21)
    foot = end + LINE_HEIGHT if way == "down" else end - 1.4 - LINE_HEIGHT * (len(lines) - 1)
    ink.words(_TAILSTOCK_X, foot, lines, "middle", "strong")
