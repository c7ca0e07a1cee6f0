"""What of a step stands beside its drawing, and what over the whole width: as is shortest, reckoned by letters.

A drawing leaves half the width. What stands beside it is taller there, which costs nothing up to the foot of the drawing.
"""

import re
from collections.abc import Iterable, Sequence
from itertools import product
from math import ceil
from typing import NamedTuple

from tailtrue.parts import Check, Dials, Setting
from tailtrue.procedure import Drawing, Step
from tailtrue.render.values import value_line
from tailtrue.render.words import say

# More settings than these are a table, which keeps its columns.
_MOST_BESIDE = 3
# Letters in a line over the whole width and beside a drawing: what is done, a check, the small print.
_DONE, _DONE_BESIDE = 95, 50
_SMALL, _SMALL_BESIDE = 118, 62
# Letters of the name, the value in words and the reason of a setting.
_NAME, _WORDS, _REASON = 27, 25, 50
_NAME_BESIDE, _WORDS_BESIDE, _REASON_BESIDE = 25, 22, 68
_CAPTION = 48
# Heights in mm of a line: of what is done, of the small print, of a setting, of its reason, of a caption.
_DONE_LINE, _SMALL_LINE, _SETTING_LINE, _REASON_LINE, _CAPTION_LINE = 4.15, 3.3, 4.35, 3.3, 3.6
# The frame of a check; a line of it with words, and one with a place to write.
_FRAME, _CHECK_LINE, _PLACE_LINE = 1.8, 4.3, 8.4
# Widths in mm: the frame of a check, a place to write with its unit, a letter of the check and of the name of a place.
_CHECK, _CHECK_BESIDE, _PLACE, _LETTER, _LABEL = 178.0, 95.0, 41.0, 1.85, 1.7
# Letters of what is accepted, and of what it is measured with.
_ACCEPT, _WITH = 24, 40
_DRAWING = 79.0
_MARGIN = 2.0
# What is gained below this is not worth another order.
_GAIN = 1.5
_BOX = re.compile(r'viewBox="0 0 ([\d.]+) ([\d.]+)"')


class ByDrawing(NamedTuple):
    """What stands beside the drawing of a step; the rest has the whole width."""

    settings: bool
    checks: bool
    reasons: bool


def by_drawing(
    step: Step, drawings: Iterable[tuple[Drawing, str]], small: str, dials: Dials, *, in_a_row: bool
) -> ByDrawing:  # fmt: skip
    """What stands beside the drawings of a step, each given with its ink; `small` is its small print.

    A row of places to write, `in_a_row`, needs the whole width whatever it costs.
    """
    seen = sum(_seen(ink, drawing.caption) for drawing, ink in drawings)
    few = 0 < len(step.settings) <= _MOST_BESIDE
    ways = [ByDrawing(*way) for way in product((True, False), repeat=3) if (few or not way[0]) and not (in_a_row and way[1])]
    done = _DONE_LINE * sum(ceil(len(say(line, dials)) / _DONE_BESIDE) for line in step.text)
    # Each part over the whole width, and beside the drawing.
    parts = [
        _sum(_setting(one, dials) for one in step.settings),
        _sum(_check(one, dials) for one in step.checks),
        (_SMALL_LINE * ceil(len(small) / _SMALL), _SMALL_LINE * ceil(len(small) / _SMALL_BESIDE)),
    ]
    heights = {
        way: _height(done, seen, [(part[beside], beside) for part, beside in zip(parts, way, strict=True)]) for way in ways
    }
    best = min(ways, key=heights.__getitem__)
    return best if heights[best] + _GAIN < heights[ways[0]] else ways[0]


def _seen(ink: str, caption: str) -> float:
    box = _BOX.search(ink)
    if box is None:
        raise ValueError("a drawing without its size")
    return _MARGIN + _DRAWING * float(box[2]) / float(box[1]) + _CAPTION_LINE * ceil(len(caption) / _CAPTION)


def _height(done: float, seen: float, parts: Iterable[tuple[float, bool]]) -> float:
    """Of a step: what is done and what stands beside the drawing, the drawing, and what has the whole width over them."""
    said, over = done, 0.0
    for height, beside in parts:
        said, over = (said + height, over) if beside else (said, over + height)
    return over + max(said, seen)


def _sum(heights: Iterable[tuple[float, float]]) -> tuple[float, float]:
    over, beside = 0.0, 0.0
    for wide, narrow in heights:
        over, beside = over + wide, beside + narrow
    return over, beside


def _setting(setting: Setting, dials: Dials) -> tuple[float, float]:
    """Over the whole width its reason stands beside its value, beside a drawing under it."""
    line = value_line(setting.value, dials)
    name, reason = len(say(setting.label, dials)), len(say(setting.reason, dials)) + len(line.other if line else "")
    value = 0 if line else len(say(setting.value, dials))

    def row(of_name: int, of_words: int) -> float:
        return _SETTING_LINE * max(1, ceil(value / of_words), ceil(name / of_name))

    over = max(row(_NAME, _WORDS), _REASON_LINE * ceil(reason / _REASON))
    return over, row(_NAME_BESIDE, _WORDS_BESIDE) + _REASON_LINE * ceil(reason / _REASON_BESIDE)


def _check(check: Check, dials: Dials) -> tuple[float, float]:
    """The words run on, and the places to write after them."""
    words = _LETTER * (len(say(check.text, dials)) + _ACCEPT * bool(check.limits) + _WITH * bool(check.instrument))
    places = [_PLACE + (_LABEL * len(blank.label) if not at else 0) for blank in check.blanks for at in range(blank.places)]
    return _check_lines(words, places, _CHECK), _check_lines(words, places, _CHECK_BESIDE)


def _check_lines(words: float, places: Sequence[float], width: float) -> float:
    lines, filled = max(1, ceil(words / width)), words % width
    with_place = 0
    for at, place in enumerate(places):
        if filled + place > width:
            with_place, filled = with_place + 1, 0.0
        elif not at:
            lines, with_place = lines - 1, 1
        filled += place
    return _FRAME + _CHECK_LINE * lines + _PLACE_LINE * with_place
