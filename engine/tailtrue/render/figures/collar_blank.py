"""The blank as sawn and the collar that is made from it, cut through along the axis."""

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.plate import LEVEL, Plate
from tailtrue.render.figures.stack import Span, stack
from tailtrue.render.words import ALLOWANCE_NOT_TO_SCALE, TO_SCALE

_LEFT = 23.0
_MOST_WIDE, _MOST_HIGH = 30.0, 26.0
_LEAST_GAP = 0.9  # between the outlines, so that the eye parts them
_CHAMFER = 0.8


def collar_blank(drawing: Drawing, dials: Dials) -> str:
    """Outline of the blank in long dashes with two dots, the collar in wide lines."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    sawn_width, sawn_diameter = plate.size("sawn_width"), plate.size("sawn_diameter")
    scale = min(_MOST_WIDE / sawn_width, _MOST_HIGH / sawn_diameter)
    true_gaps = (plate.size("each_face") * scale, (sawn_diameter - plate.size("diameter")) / 2 * scale)
    side, rim = (max(gap, _LEAST_GAP) for gap in true_gaps)
    wide, high, bore = (size * scale for size in (plate.size("width"), plate.size("diameter"), plate.size("bar")))
    top, left = 2 + rim, _LEFT + side
    middle, bottom, right = top + high / 2, top + high, left + wide
    ink.box(left - side, top - rim, wide + 2 * side, high + 2 * rim, "before")
    for edge in (-1, 1) if plate.has("hole") else ():  # of the hole that the blank came with
        y = middle + edge * plate.size("hole") * scale / 2
        ink.line(left - side, y, right + side, y, "before")
    for upper, outer in ((top, top), (middle + bore / 2, bottom)):
        plate.hatch(left, upper, wide, (high - bore) / 2)
        inward = _CHAMFER if outer == top else -_CHAMFER
        for corner, along in ((left, _CHAMFER), (right, -_CHAMFER)):
            ink.line(corner, outer + inward, corner + along, outer)
    for x in (left, right):
        ink.line(x, middle - bore / 2, x, middle + bore / 2, "hole")
    ink.line(left - side - 3, middle, right + side + 3, middle, "chain")
    plate.upright(left - side - 5, top, bottom, f"Ø{plate.number('diameter')}", left, left=True)
    plate.upright(right + side + 5, top - rim, bottom + rim, f"Ø{plate.number('sawn_diameter')}", right + side)
    spans = (Span("width", left, right), Span("sawn_width", left - side, right + side))
    foot = stack(plate, bottom + rim + LEVEL, bottom + rim, *spans)
    rows = (
        f"{plate.label('each_face')} {plate.number('each_face')}",
        *([f"{plate.label('hole')} Ø{plate.number('hole')}"] if plate.has("hole") else []),
        f"{plate.label('bar')} Ø{plate.number('bar')}",
    )
    samples = (("before", plate.label("sawn")), ("outline", plate.label("finished")))
    scale_words = TO_SCALE if (side, rim) == true_gaps else ALLOWANCE_NOT_TO_SCALE
    return plate.finish(foot, scale_words, rows, samples)
