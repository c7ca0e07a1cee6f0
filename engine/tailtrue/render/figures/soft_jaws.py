"""Soft jaws, cut along the axis: closed on their plug to be bored, then with the blank on the shoulder of the step.

Lengths are to scale, thickness is not.
"""

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.faced_blank import blank, facing_tool
from tailtrue.render.figures.plate import LEVEL, Plate
from tailtrue.render.figures.stack import Span, stack
from tailtrue.render.ink import TEXT_HEIGHT
from tailtrue.render.words import LENGTH_TO_SCALE

_FACE = 16.0  # of the chuck, from the left
_LENGTH = 42.0  # from the chuck face to the front of what stands furthest out
_HALF_PLUG, _HALF_BLANK, _HALF_JAWS, _HALF_BODY = 7.0, 11.0, 17.0, 19.0
_FIRST, _BELOW_WORDS = 2.0, 8.0  # above the body, and below a row of words
_NAME_AT = 42.0  # of the step
_SIZE_AT = 67.5


def jaws_on_plug(drawing: Drawing, dials: Dials) -> str:
    """The jaws gripping the plug at the back, the step in front of it."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    jaws, step = plate.size("jaw_depth"), plate.size("step")
    scale = _LENGTH / jaws
    front, shoulder = _FACE + _LENGTH, _FACE + (jaws - step) * scale
    middle = _BELOW_WORDS + _HALF_BODY
    _chuck(plate, middle)
    _jaws(plate, shoulder, front, middle)
    plug_end = _FACE + plate.size("plug_width") * scale
    plate.hatch(_FACE, middle - _HALF_PLUG, plug_end - _FACE, 2 * _HALF_PLUG)
    ink.line(0, middle, front + 4, middle, "chain")
    plate.upright(_SIZE_AT, middle - _HALF_BLANK, middle + _HALF_BLANK, f"Ø{plate.number('diameter')}", front)
    spans = (Span("plug_width", _FACE, plug_end), Span("step", shoulder, front), Span("jaw_depth", _FACE, front))
    foot = stack(plate, middle + _HALF_BODY + LEVEL, middle + _HALF_JAWS, *spans)
    plate.pointed(_FACE - 4, f"{plate.label('plug')} Ø{plate.number('plug')}", (_FACE + plug_end) / 2, middle - _HALF_PLUG)
    plate.pointed(_NAME_AT, plate.label("bored"), (shoulder + front) / 2 + 4, middle - _HALF_BLANK)
    return plate.finish(foot, LENGTH_TO_SCALE)


def blank_in_soft_jaws(drawing: Drawing, dials: Dials) -> str:
    """The blank on the shoulder of the step; behind it nothing."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    room, width, grip = plate.size("room"), plate.size("sawn_width"), plate.size("grip")
    scale = _LENGTH / (room + width)
    back = _FACE + room * scale
    front, jaw_end = back + width * scale, back + grip * scale
    middle = _FIRST + _HALF_BODY
    _chuck(plate, middle)
    _jaws(plate, back, jaw_end, middle)
    blank(plate, back, front, middle, _HALF_BLANK)
    ink.line(0, middle, front + 4, middle, "chain")
    facing_tool(plate, front, middle, _HALF_BLANK, _HALF_BODY)
    plate.upright(_SIZE_AT, middle - _HALF_BLANK, middle + _HALF_BLANK, f"Ø{plate.number('diameter')}", front)
    spans = (
        Span("standing_out", jaw_end, front),
        Span("grip", back, jaw_end),
        Span("sawn_width", back, front, spare=True),
        Span("room", _FACE, back),
    )
    foot = stack(plate, middle + _HALF_BODY + LEVEL, middle + _HALF_JAWS, *spans)
    return plate.finish(foot, LENGTH_TO_SCALE)


def _chuck(plate: Plate, middle: float) -> None:
    plate.ink.box(3, middle - _HALF_BODY, _FACE - 3, 2 * _HALF_BODY, "edge steel")
    plate.ink.words((3 + _FACE) / 2, middle - 5, (plate.label("chuck"),), "middle")


def _jaws(plate: Plate, shoulder: float, front: float, middle: float) -> None:
    """Both jaws, thick behind the step and thin in front of its shoulder."""
    for way in (-1, 1):
        outer, inner, bored = (middle + way * half for half in (_HALF_JAWS, _HALF_PLUG, _HALF_BLANK))
        corners = ((_FACE, outer), (front, outer), (front, bored), (shoulder, bored), (shoulder, inner), (_FACE, inner))
        plate.ink.outline(corners, "edge steel")
        foot = (outer + bored) / 2 + TEXT_HEIGHT / 3
        plate.ink.words((_FACE + front) / 2, foot, (plate.label("jaw"),), "middle")
