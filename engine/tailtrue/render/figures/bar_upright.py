"""The bar upright in the vee of an angle plate, the centre drill above it."""

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.plate import WIDTH, Plate
from tailtrue.render.ink import TEXT_HEIGHT
from tailtrue.render.words import NOT_TO_SCALE

_LEFT, _BAR = 26.0, 7.0  # of the bar, and how thick it is drawn
_TOP, _FOOT = 15.0, 52.0
_PLATE, _BASE = 5.0, 3.0  # how thick the upright of the plate is, and its foot
_CLAMPS = (22.0, 42.0)
_LENGTH_AT, _SIZE_AT = 56.0, 34.0  # where the length stands, and how far down the diameter


def bar_upright(drawing: Drawing, dials: Dials) -> str:
    """From the side: plate, bar and clamps on the table, the drill above; how long the bar is."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    middle, back = _LEFT + _BAR / 2, _LEFT - _PLATE
    ink.box(4, _FOOT, WIDTH - 18, 2.5, "edge steel")
    plate.hatch(back, _TOP + 3, _PLATE, _FOOT - _TOP - 3 - _BASE)
    ink.box(back - 12, _FOOT - _BASE, 12 + _PLATE, _BASE, "edge")
    ink.line(back - 7, _FOOT - _BASE - 3, back - 7, _FOOT + 5, "outline")
    ink.box(_LEFT, _TOP, _BAR, _FOOT - _TOP, "edge")
    for top in _CLAMPS:
        ink.box(back - 2, top, _PLATE + _BAR + 5, 2.5, "edge steel")
    ink.words(_LEFT + _BAR + 4, _CLAMPS[0] + TEXT_HEIGHT, (plate.label("clamp"),))
    ink.outline(((middle - 2, 2), (middle - 2, 8), (middle, 12), (middle + 2, 8), (middle + 2, 2)), "edge steel")
    ink.words(middle + 4, 6, (plate.label("drill"),))
    ink.line(middle, 0, middle, _FOOT + 4, "chain")
    plate.upright(_LENGTH_AT, _TOP, _FOOT, plate.number("length"), _LEFT + _BAR)
    ink.words(_LEFT + _BAR + 4, _SIZE_AT + TEXT_HEIGHT / 3, (f"Ø{plate.number('diameter')}",), "start", "size")
    plate.leader(_LEFT + _BAR + 3.4, _SIZE_AT, _LEFT + _BAR - 1.5, _SIZE_AT)
    rows = (plate.label("plate"), f"{plate.label('height')} {plate.number('height')}")
    return plate.finish(_FOOT + 6, NOT_TO_SCALE, rows)
