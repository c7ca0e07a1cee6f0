"""Where an indicator stands and what it reads there: carried along the skimmed collars, and at the quill for the move."""

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.plan import indicator, side_sign
from tailtrue.render.figures.plate import FIRST_ROW, LEVEL, WIDTH, Plate
from tailtrue.render.figures.stack import Span, stack
from tailtrue.render.ink import LINE_HEIGHT, TEXT_HEIGHT, wrap
from tailtrue.render.words import NOT_TO_SCALE

_BAR, _COLLAR = 2.5, 6.0  # half
_LEFT, _RIGHT, _WIDE = 10.0, 74.0, 7.0
_COLLARS = (22.0, 55.0)
_REACH = 9.5  # of an indicator, from the collar outward
_QUILL, _BODY = 5.0, 9.0  # half
_NOSE, _FACE = 26.0, 50.0
_TOUCH = 31.0


def indicator_on_collars(drawing: Drawing, dials: Dials) -> str:
    """One indicator on each side, at the first collar and, dashed, at the second."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    sides = ("across", "tool") if side_sign(drawing) > 0 else ("tool", "across")
    above, below = (wrap(plate.label(name), WIDTH) for name in sides)
    ink.words(0, FIRST_ROW, above)
    middle = FIRST_ROW + (len(above) - 1) * LINE_HEIGHT + 2 + _REACH + _COLLAR
    ink.box(_LEFT, middle - _BAR, _RIGHT - _LEFT, 2 * _BAR, "edge steel")
    for end, way in ((_LEFT, -1), (_RIGHT, 1)):
        ink.outline(((end + 4 * way, middle - _BAR), (end - way, middle), (end + 4 * way, middle + _BAR)))
    for left in _COLLARS:
        ink.box(left, middle - _COLLAR, _WIDE, 2 * _COLLAR)
    ink.line(0, middle, WIDTH, middle, "chain")
    first, second = (left + _WIDE / 2 for left in _COLLARS)
    for sign in (-1, 1):
        edge = middle + sign * _COLLAR
        indicator(ink, first, edge, sign)
        indicator(ink, second, edge, sign, "hidden")
        along = edge + sign * 6.5
        ink.line(first + 5, along, second - 5, along)
        ink.arrow(second - 5, along, "right")
    foot = middle + _COLLAR + _REACH + 1.2 + TEXT_HEIGHT
    ink.words(0, foot, below)
    last = foot + (len(below) - 1) * LINE_HEIGHT
    return plate.finish(last, NOT_TO_SCALE, (plate.label("stand"),))


def indicator_on_quill(drawing: Drawing, dials: Dials) -> str:
    """The quill near its nose, touched from the side of the operator, whichever side the tool is on."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    said = wrap(plate.label("plunger"), WIDTH)
    ink.words(0, FIRST_ROW, said)
    last = FIRST_ROW + (len(said) - 1) * LINE_HEIGHT
    middle = last + 3 + _BODY
    ink.outline(((_NOSE, middle - 3), (_NOSE - 7, middle), (_NOSE, middle + 3)))
    ink.box(_NOSE, middle - _QUILL, _FACE - _NOSE, 2 * _QUILL, "edge steel")
    ink.box(_FACE, middle - _BODY, WIDTH - _FACE - 6, 2 * _BODY)
    ink.words((_FACE + WIDTH - 6) / 2, middle - 2, (plate.label("tailstock"),), "middle")
    ink.line(_NOSE - 12, middle, WIDTH, middle, "chain")
    far = indicator(ink, _TOUCH, middle + _QUILL, 1)
    ink.box(_TOUCH - 4, far, 8, 4, "edge steel")
    ink.line(4, last + 1.2, 4, middle + _QUILL)
    ink.line(4, middle + _QUILL, _TOUCH - 1, middle + _QUILL)
    ink.arrow(_TOUCH, middle + _QUILL, "right")
    level = stack(plate, far + 4 + LEVEL, middle + _BODY, Span("quill", _NOSE, _FACE))
    return plate.finish(level, NOT_TO_SCALE, (plate.label("stand"),))
