"""The centre hole in the end of the bar, cut along the axis and drawn large: cone, pilot, angle, depth."""

from math import radians, tan

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.plate import LEVEL, Plate
from tailtrue.render.figures.stack import Span, stack
from tailtrue.render.ink import TEXT_HEIGHT
from tailtrue.render.words import TO_SCALE

_FACE = 20.0  # the end of the bar, from the left
_DEEP, _HIGH = 34.0, 16.0
_WALL, _BEYOND = 4.0, 5.0  # of the bar around and behind the hole, as far as it is drawn
_SIZE_AT = 14.0
_DRILL_POINT = 31  # degrees between the point of a drill and its end face


def centre_hole(drawing: Drawing, dials: Dials) -> str:
    """The hole opens to the left. What a centre touches is the cone alone."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    cone, pilot, cone_depth, depth = (plate.size(name) for name in ("cone", "pilot", "cone_depth", "depth"))
    scale = min(_DEEP / depth, _HIGH / cone)
    large, small = cone / 2 * scale, pilot / 2 * scale
    seat, foot = _FACE + cone_depth * scale, _FACE + depth * scale
    point = foot - small * tan(radians(_DRILL_POINT))  # the pilot ends in the point of a drill
    middle = 2 + _WALL + large
    end = foot + _BEYOND
    top, bottom = middle - large - _WALL, middle + large + _WALL
    plate.hatch(_FACE, top, end - _FACE, bottom - top)
    corners = [(_FACE, large), (seat, small), (point, small), (foot, 0.0), (point, -small), (seat, -small), (_FACE, -large)]
    ink.outline(tuple((x, middle + y) for x, y in corners), "edge hole")
    ink.line(seat, middle - small, seat, middle + small, "outline")
    apex = _FACE + large / tan(radians(plate.size("angle") / 2))
    for way in (-1, 1):
        ink.line(_FACE, middle + way * large, apex, middle, "hidden")
    ink.line(_FACE - 4, middle, end + 3, middle, "chain")
    plate.upright(_SIZE_AT, middle - large, middle + large, f"Ø{plate.number('cone')}", _FACE, left=True)
    ink.words(end + 4, middle - TEXT_HEIGHT, (f"{plate.label('angle')} {plate.number('angle')}",), "start", "size")
    ink.words(end + 4, middle + 2 * TEXT_HEIGHT, (f"{plate.label('pilot')} Ø{plate.number('pilot')}",), "start", "size")
    spans = (Span("cone_depth", _FACE, seat), Span("depth", _FACE, foot))
    return plate.finish(stack(plate, bottom + LEVEL, bottom, *spans), TO_SCALE)
