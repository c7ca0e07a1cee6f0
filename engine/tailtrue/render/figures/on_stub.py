"""The collar on the stub mandrel, cut along the axis: lengths to scale, thickness not."""

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.faced_blank import facing_tool
from tailtrue.render.figures.plate import LEVEL, Plate
from tailtrue.render.figures.stack import Span, stack
from tailtrue.render.words import LENGTH_TO_SCALE

_FACE = 22.0  # front of the jaws, from the left
_LENGTH = 38.0  # from the jaws to the cut face of the collar
_HALF_BORE, _HALF_STUB, _HALF_COLLAR, _HALF_BODY = 5.0, 9.0, 16.0, 19.0
_FIRST = 8.0  # above the body: a row of words
_STUB_AT, _BORE_AT, _FROM_FACE = 8.0, 46.0, 8.0  # words, and how far inside the face the bore is pointed at
_JAWS, _JAW = 8.0, 5.0
_SIZE_AT = 67.5
_SLIT = 0.6


def collar_on_stub(drawing: Drawing, dials: Dials) -> str:
    """Chuck, stub with its shoulder and spigot, the collar against the shoulder, the tool at its face."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    width, spigot, out = plate.size("width"), plate.size("spigot"), plate.size("stub_out")
    shoulder_long = out - spigot
    scale = _LENGTH / (shoulder_long + width)
    shoulder = _FACE + shoulder_long * scale
    front, stub_end = shoulder + width * scale, shoulder + spigot * scale
    middle = _FIRST + _HALF_BODY
    ink.box(3, middle - _HALF_BODY, _FACE - _JAWS - 3, 2 * _HALF_BODY, "edge steel")
    ink.words((3 + _FACE - _JAWS) / 2, middle - 5, (plate.label("chuck"),), "middle")
    for top in (middle - _HALF_STUB - _JAW, middle + _HALF_STUB):
        ink.box(_FACE - _JAWS, top, _JAWS, _JAW, "edge steel")
    above = ((_FACE - _JAWS, _HALF_STUB), (shoulder, _HALF_STUB), (shoulder, _HALF_BORE), (stub_end, _HALF_BORE))
    below = tuple((x, middle + half) for x, half in reversed(above))
    ink.outline((*((x, middle - half) for x, half in above), *below), "edge")
    for y in (middle - _SLIT, middle + _SLIT):
        ink.line(shoulder, y, stub_end, y)
    for top in (middle - _HALF_COLLAR, middle + _HALF_BORE):
        plate.hatch(shoulder, top, front - shoulder, _HALF_COLLAR - _HALF_BORE)
    ink.line(0, middle, front + 4, middle, "chain")
    facing_tool(plate, front, middle, _HALF_COLLAR, _HALF_BODY)
    plate.upright(_SIZE_AT, middle - _HALF_COLLAR, middle + _HALF_COLLAR, f"Ø{plate.number('diameter')}", front)
    spans = (
        Span("inside", stub_end, front),
        Span("spigot", shoulder, stub_end),
        Span("width", shoulder, front, spare=True),
        Span("stub_out", _FACE, stub_end),
    )
    foot = stack(plate, middle + _HALF_BODY + LEVEL, middle + _HALF_COLLAR, *spans)
    plate.pointed(_STUB_AT, f"{plate.label('stub')} Ø{plate.number('stub')}", (_FACE + shoulder) / 2, middle - _HALF_STUB)
    plate.pointed(_BORE_AT, f"{plate.label('bore')} Ø{plate.number('bore')}", front - _FROM_FACE, middle - _HALF_BORE)
    return plate.finish(foot, LENGTH_TO_SCALE)
