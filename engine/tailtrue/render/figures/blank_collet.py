"""The blank in a collet, cut along the axis. Lengths are to scale, thickness is not."""

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.faced_blank import blank, facing_tool
from tailtrue.render.figures.plate import LEVEL, Plate
from tailtrue.render.figures.stack import Span, stack
from tailtrue.render.words import LENGTH_TO_SCALE

_BACK = 12.0  # where the collet begins, from the left
_LENGTH = 46.0  # from there to the front of the blank
_HALF_BLANK, _NARROW, _WIDE, _HALF_BODY = 11.0, 12.5, 15.0, 19.0
_FIRST = 8.0
_SIZE_AT = 67.5


def blank_in_collet(drawing: Drawing, dials: Dials) -> str:
    """Chuck, collet as two wedges along the blank, and how deep the blank sits in it."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    collet, width, grip = plate.size("collet_length"), plate.size("sawn_width"), plate.size("grip")
    scale = _LENGTH / (collet - grip + width)
    mouth, back = _BACK + collet * scale, _BACK + (collet - grip) * scale
    front = back + width * scale
    middle = _FIRST + _HALF_BODY
    for way in (-1, 1):
        outside, near, narrow, wide = (middle + way * half for half in (_HALF_BODY, _HALF_BLANK, _NARROW, _WIDE))
        ink.outline(((3, outside), (mouth - 1, outside), (mouth - 1, wide), (_BACK, narrow), (3, narrow)), "edge")
        ink.outline(((_BACK, near), (_BACK, narrow), (mouth, wide), (mouth, near)), "edge steel")
    ink.words(0, _FIRST - 1.5, (plate.label("chuck"),))
    blank(plate, back, front, middle, _HALF_BLANK)
    ink.line(0, middle, front + 4, middle, "chain")
    facing_tool(plate, front, middle, _HALF_BLANK, _HALF_BODY)
    plate.upright(_SIZE_AT, middle - _HALF_BLANK, middle + _HALF_BLANK, f"Ø{plate.number('diameter')}", front)
    spans = (
        Span("standing_out", mouth, front),
        Span("grip", back, mouth),
        Span("sawn_width", back, front, spare=True),
        Span("collet_length", _BACK, mouth),
    )
    foot = stack(plate, middle + _HALF_BODY + LEVEL, middle + _HALF_BODY, *spans)
    return plate.finish(foot, LENGTH_TO_SCALE)
