"""The bar between centres from above: driver and dog under their guard, the tool, what it must clear, the quill."""

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.plan import nib, side_sign
from tailtrue.render.figures.plate import FIRST_ROW, LEVEL, WIDTH, Plate
from tailtrue.render.figures.stack import Span, stack
from tailtrue.render.ink import LINE_HEIGHT, TEXT_HEIGHT, wrap
from tailtrue.render.words import NOT_TO_SCALE

_BAR, _COLLAR, _PLATE, _GUARD = 3.0, 11.0, 11.0, 13.5  # half of what each takes across
_END_A, _DOG, _EDGE, _END_B = 9.0, 16.0, 20.5, 60.0
_WIDE = 5.0  # a collar
_POINT, _BODY = 63.5, 73.0  # of the tailstock centre, and where the quill leaves the body
_CLEAR_AT = 30.0
_NIB = 7.0


def between_centres(drawing: Drawing, dials: Dials) -> str:
    """Headstock at the left, the operator below."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    sign = side_sign(drawing)
    guard = wrap(plate.label("guard"), WIDTH / 2)
    above = FIRST_ROW + (len(guard) - 1) * LINE_HEIGHT
    middle = above + 3 + _GUARD
    ink.words(0, FIRST_ROW, guard)
    ink.words(WIDTH, FIRST_ROW, (plate.label("tailstock"),), "end")
    plate.leader(4, above + 1.2, 4, middle - _GUARD)
    _headstock(plate, middle)
    ink.box(_END_A, middle - _BAR, _END_B - _END_A, 2 * _BAR, "edge steel")
    ink.box(_END_A + 1.5, middle - _BAR - 3, _DOG - _END_A - 1.5, 2 * _BAR + 6)
    half_way = (_END_A + _END_B) / 2
    third = "to_middle" in drawing.dimensions
    for left in (_EDGE, *((half_way - _WIDE / 2,) if third else ()), _END_A + _END_B - _EDGE - _WIDE):
        ink.box(left, middle - _COLLAR, _WIDE, 2 * _COLLAR)
    ink.outline(((_POINT, middle - _BAR), (_END_B - 1, middle), (_POINT, middle + _BAR)))
    ink.box(_POINT, middle - 4, _BODY - _POINT, 8)
    ink.box(_BODY, middle - 9, WIDTH - _BODY - 1, 18)
    ink.line(0, middle, WIDTH, middle, "chain")
    tip = middle + sign * _COLLAR
    nib(ink, _EDGE + _WIDE / 2, tip, sign, _NIB)
    ink.words(_EDGE + _WIDE + 2, tip + sign * _NIB / 2 + TEXT_HEIGHT / 2, (plate.label("tool"),))
    _clear(plate, middle, -sign, third)
    below = _COLLAR + (_NIB if sign > 0 else TEXT_HEIGHT + 2 if third else 0)
    foot = middle + max(_GUARD, below)
    spans = (
        Span("dog", _END_A, _DOG),
        Span("gap", _DOG, _EDGE),
        Span("to_collar", _END_A, _EDGE, spare=True),
        *((Span("to_middle", _END_A, half_way),) if third else ()),
        Span("length", _END_A, _END_B),
        Span("quill", _POINT, _BODY),
    )
    level = stack(plate, foot + LEVEL, foot, *spans)
    return plate.finish(level, NOT_TO_SCALE, (plate.label("stand"),))


def _headstock(plate: Plate, middle: float) -> None:
    """Driver, its centre, and the dashed outline of the guard over driver and dog."""
    ink = plate.ink
    ink.box(0.5, middle - _GUARD, _DOG + 0.8, 2 * _GUARD, "hidden")
    ink.box(1.5, middle - _PLATE, 4, 2 * _PLATE)
    ink.outline(((5.5, middle - _BAR), (_END_A + 1, middle), (5.5, middle + _BAR)))
    ink.box(5.5, middle + _BAR + 0.8, 5, 1.6)


def _clear(plate: Plate, middle: float, side: int, third: bool) -> None:
    """What the tool has over the bar between the collars, drawn on the side without the tool.

    Where a third collar leaves no room beside the arrow, the number stands beyond the rims.
    """
    inner, outer = sorted((middle + side * _BAR, middle + side * _COLLAR))
    ink = plate.ink
    ink.line(_EDGE + _WIDE + 0.5, middle + side * _COLLAR, _CLEAR_AT + 1, middle + side * _COLLAR)
    ink.line(_CLEAR_AT, inner, _CLEAR_AT, outer)
    ink.arrow(_CLEAR_AT, inner, "up")
    ink.arrow(_CLEAR_AT, outer, "down")
    number = (plate.number("tool_clear"),)
    if third:
        beyond = middle - _COLLAR - 1 if side < 0 else middle + _COLLAR + 1 + TEXT_HEIGHT
        ink.words(_CLEAR_AT, beyond, number, "middle", "size")
    else:
        ink.words(_CLEAR_AT + 1.5, (inner + outer) / 2 + TEXT_HEIGHT / 3, number, "start", "size")
