"""The drawing of this very bar: to scale along its length, thin parts thickened as far as the eye needs."""

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import pairwise
from math import radians, tan

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.chain import reference
from tailtrue.render.ink import LINE_HEIGHT, TEXT_HEIGHT, Ink, text_width, wrap
from tailtrue.render.numbers import read, show
from tailtrue.render.words import BORES, END_VIEWS, LENGTH_TO_SCALE, PROJECTIONS, RIMS, TO_SCALE, dimension, unit_words

WIDTH = 175.0  # mm on paper
_BAR_LEFT, _BAR_RIGHT = 22.0, 116.0
_END_VIEW = 157.5  # middle of the view along the axis
_TOP = 4.0
_LEAST_BAR, _MOST_BAR = 5.0, 20.0
_LEAST_STEP = 3.0  # a collar stands out from the bar by at least this much on each side
_MOST_COLLAR = 30.0
_LEAST_COLLAR_WIDTH = 4.0
_LEAST_CONE = 2.4
_CONE_SHARE = 0.7  # of the bar, at most
_CENTRE_ANGLE = 60  # degrees, as every centre of the trade
_HOLE_ROOM, _COLLAR_ROOM = 44.0, 44.0
_NEEDED = (
    "bar.length",
    "bar.diameter",
    "collar.diameter",
    "collar.width",
    "collar.station",
    "collar.spacing",
)
_CONE, _ANGLE = "centre_hole.cone_diameter", "centre_hole.angle"
_LIMITS = ("bar.least", "bar.largest")
_RIMS = "rims.alike"
_THIRD = "third.station"  # the middle collar, where there is one


def _middles(sizes: Mapping[str, float], scale: float) -> tuple[float, ...]:
    """The middles of the collars along the drawing, those at the ends first and last."""
    first = _BAR_LEFT + sizes["collar.station"] * scale
    last = first + sizes["collar.spacing"] * scale
    return (first, _BAR_LEFT + sizes[_THIRD] * scale, last) if _THIRD in sizes else (first, last)


@dataclass(frozen=True)
class _Shape:
    """The bar in millimetres on paper, x from the left of the drawing."""

    bar_thickness: float
    collar_thickness: float
    collar_width: float
    middles: tuple[float, ...]
    cone: float
    to_scale: bool


def bar_drawing(drawing: Drawing, dials: Dials) -> str:
    """The drawing as SVG, with its dimensions once more in words as the alternative text."""
    missing = [key for key in _NEEDED if key not in drawing.dimensions]
    if missing:
        raise ValueError(f"the drawing of the bar lacks its dimension {', '.join(missing)}")
    shape = _shape(drawing)
    sizes = {key: read(figure, dials).number for key, figure in drawing.dimensions.items()}
    notes = _Notes(drawing, shape, sizes)
    ink = Ink()
    ink.words(0, _TOP, (drawing.labels.get("headstock_end", ""),), "start", "strong")
    ink.words(_BAR_RIGHT + 9, _TOP, (drawing.labels.get("tailstock_end", ""),), "end", "strong")
    middle = notes.foot + LINE_HEIGHT + 4.2 + shape.collar_thickness / 2
    _draw_bar(ink, shape, middle)
    notes.draw(ink, middle)
    _draw_sizes(ink, shape, middle, sizes)
    _draw_end_view(ink, shape, middle, dials)
    height = middle + shape.collar_thickness / 2 + 23
    scale = TO_SCALE if shape.to_scale else LENGTH_TO_SCALE
    _draw_projection(ink, height - 1, dials)
    ink.words(WIDTH, height - 1, (f"{unit_words(dials)}, {scale}",), "end")
    return ink.svg("bar-drawing", WIDTH, height, drawing.title, described(drawing, dials))


def described(drawing: Drawing, dials: Dials) -> str:
    """The drawing in words: every dimension by name."""
    sizes = "; ".join(f"{dimension(key)} {show(figure, dials)}" for key, figure in drawing.dimensions.items())
    said = "; ".join(f"{dimension(key)}: {word}" for key, word in drawing.said.items())
    labels = "; ".join(label for label in drawing.labels.values() if label)
    return " ".join(f"{told}." for told in (sizes, said, labels) if told)


def _shape(drawing: Drawing) -> _Shape:
    sizes = {key: figure.value for key, figure in drawing.dimensions.items()}
    scale = (_BAR_RIGHT - _BAR_LEFT) / sizes["bar.length"]
    bar = min(max(sizes["bar.diameter"] * scale, _LEAST_BAR), _MOST_BAR)
    collar = min(max(sizes["collar.diameter"] * scale, bar + 2 * _LEAST_STEP), _MOST_COLLAR)
    width = max(sizes["collar.width"] * scale, _LEAST_COLLAR_WIDTH)
    cone = sizes.get("centre_hole.cone_diameter", 0.0) * scale
    honest = (sizes["bar.diameter"] * scale, sizes["collar.diameter"] * scale, sizes["collar.width"] * scale)
    return _Shape(
        bar_thickness=bar,
        collar_thickness=collar,
        collar_width=width,
        middles=_middles(sizes, scale),
        cone=min(max(cone, _LEAST_CONE), bar * _CONE_SHARE),
        to_scale=(bar, collar, width) == honest,
    )


class _Notes:
    """What is written above the bar, with a leader to the part it speaks of."""

    def __init__(self, drawing: Drawing, shape: _Shape, sizes: dict[str, str]) -> None:
        left, *_, right = shape.middles
        # Three columns: centre hole over the left end, bar in the middle, collar over the right one.
        self._hole = wrap(drawing.labels.get("centre_hole", ""), _HOLE_ROOM)
        cone = [sizes[name] for name in (_CONE, _ANGLE) if name in sizes]
        if self._hole and len(cone) == 2:
            self._hole = (*self._hole, f"Ø{cone[0]} × {cone[1]}")
        bores = [
            f"{words} {sizes[f'{name}.least']}–{sizes[f'{name}.largest']}"
            for name, words in BORES.items()
            if f"{name}.least" in sizes and f"{name}.largest" in sizes
        ]
        note = drawing.labels.get("collar_note", "")
        self._collar = tuple(line for words in (note, *bores) for line in wrap(words, _COLLAR_ROOM))
        self._rims = (*RIMS, sizes[_RIMS]) if _RIMS in sizes else ()
        self._collar_x = right
        # Where a collar sits in the middle the note points beside it, at the bar.
        self._bar_x = (left + right) / 2 + (shape.collar_width / 2 + 3 if len(shape.middles) > 2 else 0)
        bar_room = 2 * min(self._bar_x - _HOLE_ROOM - 4, WIDTH - _COLLAR_ROOM - 4 - self._bar_x)
        limits = [sizes[name] for name in _LIMITS if name in sizes]
        self._bar = (
            f"Ø{sizes['bar.diameter']}",
            *(["–".join(limits)] if limits else []),
            *wrap(drawing.labels.get("bar_note", ""), max(bar_room, 40)),
        )
        self._shape = shape
        rows = max(len(self._hole), len(self._bar), len(self._collar), len(self._rims))
        self.first = _TOP + LINE_HEIGHT + 2
        self.foot = self.first + (rows - 1) * LINE_HEIGHT

    def draw(self, ink: Ink, middle: float) -> None:
        shape = self._shape
        ink.words(_END_VIEW, self.first, self._rims[:-1], "middle")
        ink.words(_END_VIEW, self.first + len(RIMS) * LINE_HEIGHT, self._rims[-1:], "middle", "size")
        bar_top, collar_top = middle - shape.bar_thickness / 2, middle - shape.collar_thickness / 2
        if self._hole:
            ink.words(0, self.first, self._hole)
            below = self.first + (len(self._hole) - 1) * LINE_HEIGHT + 1.2
            ink.line(6, below, 12, middle)
            ink.line(12, middle, _BAR_LEFT + shape.cone / 4, middle)
            ink.arrow(_BAR_LEFT + shape.cone / 4, middle, "right")
        below = self.first + (len(self._bar) - 1) * LINE_HEIGHT + 1.2
        ink.words(self._bar_x, self.first, self._bar[:1], "middle", "size")
        ink.words(self._bar_x, self.first + LINE_HEIGHT, self._bar[1:], "middle")
        ink.line(self._bar_x, below, self._bar_x, bar_top)
        ink.arrow(self._bar_x, bar_top, "down")
        if self._collar:
            below = self.first + (len(self._collar) - 1) * LINE_HEIGHT + 1.2
            half = max(map(text_width, self._collar)) / 2
            beside_the_bar_note = self._bar_x + max(map(text_width, self._bar)) / 2 + 2 + half
            right = _END_VIEW - max(map(text_width, self._rims)) / 2 - 2 if self._rims else WIDTH
            x = min(max(self._collar_x, beside_the_bar_note), right - half)
            foot = min(max(self._collar_x, x - half + 3), x + half - 3)
            ink.words(x, self.first, self._collar, "middle")
            ink.line(foot, below, self._collar_x, collar_top - 4)
            ink.line(self._collar_x, collar_top - 4, self._collar_x, collar_top)
            ink.arrow(self._collar_x, collar_top, "down")


def _draw_bar(ink: Ink, shape: _Shape, middle: float) -> None:
    top, bottom = middle - shape.bar_thickness / 2, middle + shape.bar_thickness / 2
    ink.box(_BAR_LEFT, top, _BAR_RIGHT - _BAR_LEFT, shape.bar_thickness, "edge steel")
    for x in shape.middles:
        left = x - shape.collar_width / 2
        ink.box(left, middle - shape.collar_thickness / 2, shape.collar_width, shape.collar_thickness, "edge")
        for y in (top, bottom):
            ink.line(left, y, left + shape.collar_width, y, "hidden")
    depth = shape.cone / 2 / tan(radians(_CENTRE_ANGLE / 2))
    for end, inward in ((_BAR_LEFT, 1), (_BAR_RIGHT, -1)):
        ink.outline(
            ((end, middle - shape.cone / 2), (end + inward * depth, middle), (end, middle + shape.cone / 2)),
            "edge hole",
        )
    ink.line(_BAR_LEFT - 6, middle, _BAR_RIGHT + 6, middle, "chain")


def _draw_end_view(ink: Ink, shape: _Shape, middle: float, dials: Dials) -> None:
    """The bar along its axis: collar, end of the bar, large end of its centre hole."""
    for size, kind in ((shape.collar_thickness, "edge"), (shape.bar_thickness, "edge steel"), (shape.cone, "hole")):
        ink.circle(_END_VIEW, middle, size / 2, kind)
    reach = shape.collar_thickness / 2 + 2
    ink.line(_END_VIEW - reach, middle, _END_VIEW + reach, middle, "chain")
    ink.line(_END_VIEW, middle - reach, _END_VIEW, middle + reach, "chain")
    ink.words(_END_VIEW, middle + reach + TEXT_HEIGHT + 1, (END_VIEWS[dials],), "middle")


def _draw_projection(ink: Ink, foot: float, dials: Dials) -> None:
    """The symbol of the projection: a blunt cone from the side and along its axis, and its name."""
    middle, large, small, length = foot - TEXT_HEIGHT / 3, 1.8, 0.9, 4.0
    cone, rings = (0.5, 7.5) if dials == "metric" else (6.5, 2.5)
    # The view along the axis shows the small end in front: it stands beyond the large end in the first angle, and
    # before the small end in the third.
    ends = ((cone, small), (cone + length, large))
    ink.outline([(x, middle + way * half) for way in (-1, 1) for x, half in ends[::-way]], "hole")
    for radius in (large, small):
        ink.circle(rings, middle, radius, "hole")
    ink.words(12.5, foot, (PROJECTIONS[dials],))


def _draw_sizes(ink: Ink, shape: _Shape, middle: float, sizes: dict[str, str]) -> None:
    left, *between, right = shape.middles
    half_width, half_thickness = shape.collar_width / 2, shape.collar_thickness / 2
    top, bottom = middle - half_thickness, middle + half_thickness
    bar_bottom = middle + shape.bar_thickness / 2
    near, far = bottom + 7.5, bottom + 15.5
    for x in (left - half_width, left + half_width):
        ink.line(x, top - 1, x, top - 4.6)
    ink.across(left - half_width, left + half_width, top - 3.6, sizes["collar.width"])
    for x in shape.middles:
        ink.line(x, bottom + 1, x, near + 1)
    marks = (left, *between, right)
    step = "third.apart" if between else "collar.spacing"
    for x in (_BAR_LEFT, _BAR_RIGHT):
        ink.line(x, bar_bottom + 1, x, far + 1)
    row = ((_BAR_LEFT, left, sizes["collar.station"]), *((start, end, sizes[step]) for start, end in pairwise(marks)))
    whole = (_BAR_LEFT, _BAR_RIGHT, sizes["bar.length"])
    for start, end, number in row:
        ink.across(start, end, near, number)
    # The far end follows from the others.
    if number := reference(right, _BAR_RIGHT, sizes["collar.station"], (*row, whole)):
        ink.across(right, _BAR_RIGHT, near, number)
    start, end, number = whole
    ink.across(start, end, far, number)
    for y in (top, bottom):
        ink.line(right + half_width + 1, y, _BAR_RIGHT + 9, y)
    ink.upright(_BAR_RIGHT + 8, top, bottom, f"Ø{sizes['collar.diameter']}")
