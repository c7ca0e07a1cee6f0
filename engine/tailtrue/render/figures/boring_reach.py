"""The boring bar through the blank with its tip at the far face: how far it stands out, and the room it has."""

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.plate import FIRST_ROW, LEVEL, WIDTH, Plate
from tailtrue.render.ink import LINE_HEIGHT, TEXT_HEIGHT
from tailtrue.render.words import TO_SCALE

_FACE = 13.0  # of the chuck
_LENGTH, _THICK = 54.0, 22.0
_WALL = 6.0  # of the blank above and below the hole, as far as it is drawn
_HOLDER = 12.0


def boring_reach(drawing: Drawing, dials: Dials) -> str:
    """Chuck at the left, holder at the right, the blank between them."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    behind = plate.size("behind") if plate.has("behind") else 0.0
    hole, shank, width, overhang = (plate.size(name) for name in ("hole", "shank", "width", "overhang"))
    scale = min(_LENGTH / (behind + overhang), _THICK / hole)
    back = _FACE + behind * scale
    front, holder = back + width * scale, back + overhang * scale
    half_hole, half_shank = hole / 2 * scale, shank / 2 * scale
    middle = FIRST_ROW + 2 * LINE_HEIGHT + 3 + _WALL + half_hole
    top, bottom = middle - half_hole - _WALL, middle + half_hole + _WALL
    ink.box(1, top, _FACE - 1, bottom - top, "edge steel")
    ink.words((1 + _FACE) / 2, middle - 2, (plate.label("chuck"),), "middle")
    for upper in (top, middle + half_hole):
        plate.hatch(back, upper, front - back, _WALL)
    for x in (back, front):
        ink.line(x, middle - half_hole, x, middle + half_hole, "hole")
    reach = min(2.5, (holder - back) / 3)
    ink.outline(
        (
            (back + reach, middle - half_shank),
            (holder, middle - half_shank),
            (holder, middle + half_shank),
            (back + reach, middle + half_shank),
            (back, middle + half_hole),
        ),
        "edge steel",
    )
    ink.box(holder, middle - half_hole - 2, _HOLDER, 2 * half_hole + 4, "edge")
    ink.words(holder + _HOLDER / 2, bottom + TEXT_HEIGHT + 0.5, (plate.label("holder"),), "middle")
    ink.line(_FACE, middle, holder + _HOLDER + 2, middle, "chain")
    _diameters(plate, (back + front) / 2, (front + holder) / 2, middle - half_hole, middle - half_shank)
    first = bottom + LEVEL + 1
    if behind:
        plate.across(_FACE, back, first, "behind", bottom)
    plate.across(front, holder, first, "room", bottom)
    plate.across(back, front, first + LEVEL, "width", bottom)
    plate.across(back, holder, first + 2 * LEVEL, "overhang", bottom)
    return plate.finish(first + 2 * LEVEL, TO_SCALE)


def _diameters(plate: Plate, hole_x: float, shank_x: float, hole_top: float, shank_top: float) -> None:
    """The hole is named at the left in the lower row, the bar at the right in the upper one."""
    ink = plate.ink
    lower = FIRST_ROW + LINE_HEIGHT
    ink.words(WIDTH, FIRST_ROW, (f"{plate.label('shank')} Ø{plate.number('shank')}",), "end", "size")
    plate.leader(shank_x, FIRST_ROW + 1.2, shank_x, shank_top + 0.6)
    ink.words(0, lower, (f"{plate.label('hole')} Ø{plate.number('hole')}",), "start", "size")
    plate.leader(hole_x, lower + 1.2, hole_x, hole_top)
