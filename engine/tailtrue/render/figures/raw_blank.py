"""A slug or a casting and the collar that is made from it, cut along the axis; a casting has its large end left."""

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.plate import LEVEL, Plate
from tailtrue.render.figures.stack import Span, stack
from tailtrue.render.words import ALLOWANCE_NOT_TO_SCALE, TO_SCALE

_LEFT = 23.0
_MOST_WIDE, _MOST_HIGH = 30.0, 26.0
_LEAST_GAP = 0.9  # between the outlines, so that the eye parts them


def raw_blank(drawing: Drawing, dials: Dials) -> str:
    """Outline of the blank in long dashes with two dots, the collar in wide lines."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    small, diameter = plate.size("sawn_diameter"), plate.size("diameter")
    large = plate.size("large") if plate.has("large") else small
    scale = min(_MOST_WIDE / plate.size("sawn_width"), _MOST_HIGH / large)
    true_gaps = tuple(size * scale for size in (plate.size("first_face"), plate.size("second_face"), (small - diameter) / 2))
    first, second, rim = (max(gap, _LEAST_GAP) for gap in true_gaps)
    wide, high, bore = (size * scale for size in (plate.size("width"), diameter, plate.size("bar")))
    rise = (large - small) / 2 * scale
    top, left = 2 + rim + rise, _LEFT + first
    middle, bottom, right = top + high / 2, top + high, left + wide
    start, end = left - first, right + second
    half_small, half_large = high / 2 + rim, high / 2 + rim + rise
    corners = ((start, -half_large), (end, -half_small), (end, half_small), (start, half_large))
    ink.outline(tuple((x, middle + y) for x, y in corners), "before")
    for edge in (-1, 1) if plate.has("hole") else ():  # of the hole that the blank came with
        y = middle + edge * plate.size("hole") * scale / 2
        ink.line(start, y, end, y, "before")
    for upper in (top, middle + bore / 2):
        plate.hatch(left, upper, wide, (high - bore) / 2)
    for x in (left, right):
        ink.line(x, middle - bore / 2, x, middle + bore / 2, "hole")
    ink.line(start - 3, middle, end + 3, middle, "chain")
    plate.upright(start - 5, top, bottom, f"Ø{plate.number('diameter')}", left, left=True)
    round_sign = "" if plate.has("corners") else "Ø"
    plate.upright(end + 5, middle - half_small, middle + half_small, f"{round_sign}{plate.number('sawn_diameter')}", end)
    spans = (Span("width", left, right), Span("sawn_width", start, end))
    foot = stack(plate, middle + half_large + LEVEL, middle + half_large, *spans)
    said = (("first_face", ""), ("second_face", ""), ("large", "Ø"), ("corners", "Ø"), ("hole", "Ø"), ("bar", "Ø"))
    rows = tuple(f"{plate.label(name)} {sign}{plate.number(name)}" for name, sign in said if plate.has(name))
    samples = (("before", plate.label("sawn")), ("outline", plate.label("finished")))
    scale_words = TO_SCALE if (first, second, rim) == true_gaps else ALLOWANCE_NOT_TO_SCALE
    return plate.finish(foot, scale_words, rows, samples)
