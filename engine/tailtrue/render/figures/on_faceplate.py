"""A blank clamped to the faceplate, cut along the axis: lengths to scale, thickness not."""

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.plate import LEVEL, Plate
from tailtrue.render.figures.stack import Span, stack
from tailtrue.render.words import LENGTH_TO_SCALE

_FACE = 14.0  # of the plate, from the left
_LENGTH = 34.0  # from the plate to the ends of the screws
_HALF_PLATE, _HALF_HEEL, _HALF_SCREW, _HALF_BLANK, _HALF_NOSE, _HALF_BORE = 22.0, 20.0, 15.5, 12.0, 9.0, 4.0
_HEEL, _STRAP, _SCREW = 3.0, 2.5, 2.0  # how thick each is drawn
_BELOW_WORDS = 8.0
_CIRCLE_AT, _SIZE_AT = 67.0, 52.0
_STRAP_AT = 31.0  # words


def blank_on_faceplate(drawing: Drawing, dials: Dials) -> str:
    """Plate, packing, blank, and two of the straps with screw and heel block."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    packing, width, straps = (plate.size(name) for name in ("packing", "sawn_width", "straps"))
    scale = _LENGTH / (packing + width + straps)
    back, front = _FACE + packing * scale, _FACE + (packing + width) * scale
    end = front + straps * scale
    thick = min(_STRAP, straps * scale / 2)
    middle = _BELOW_WORDS + _HALF_PLATE
    ink.box(4, middle - _HALF_PLATE, _FACE - 4, 2 * _HALF_PLATE, "edge steel")
    for way in (-1, 1):
        _box(plate, _FACE, back, middle + way * _HALF_NOSE, middle + way * _HALF_BLANK)
        _box(plate, _FACE, front, middle + way * (_HALF_HEEL - _HEEL), middle + way * _HALF_HEEL)
        _box(plate, front, front + thick, middle + way * _HALF_NOSE, middle + way * _HALF_HEEL)
        _box(plate, _FACE, end, middle + way * _HALF_SCREW, middle + way * (_HALF_SCREW - _SCREW))
    for top in (middle - _HALF_BLANK, middle + _HALF_BORE):
        plate.hatch(back, top, front - back, _HALF_BLANK - _HALF_BORE)
    for y in (middle - _HALF_BORE, middle + _HALF_BORE):
        ink.line(back, y, front, y, "hole")
    ink.line(0, middle, end + 2, middle, "chain")
    plate.upright(_SIZE_AT, middle - _HALF_BLANK, middle + _HALF_BLANK, plate.number("diameter"), front)
    plate.upright(_CIRCLE_AT, middle - _HALF_HEEL, middle + _HALF_HEEL, f"Ø{plate.number('circle')}", front + thick)
    spans = (Span("packing", _FACE, back), Span("sawn_width", back, front), Span("straps", front, end))
    foot = stack(plate, middle + _HALF_PLATE + LEVEL, middle + _HALF_PLATE, *spans)
    plate.pointed(0, f"{plate.label('plate')} Ø{plate.number('plate')}", (4 + _FACE) / 2, middle - _HALF_PLATE + 2)
    plate.pointed(_STRAP_AT, plate.label("strap"), front + thick / 2, middle - _HALF_HEEL + 1)
    rows = (plate.label("block"),)
    return plate.finish(foot, LENGTH_TO_SCALE, rows)


def _box(plate: Plate, left: float, right: float, one: float, other: float) -> None:
    plate.ink.box(left, min(one, other), right - left, abs(other - one), "edge steel")
