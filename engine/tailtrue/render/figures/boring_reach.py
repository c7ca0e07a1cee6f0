"""The boring bar through the blank with its tip at the far face: how far it stands out, and the room it has."""

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.plate import FIRST_ROW, LEVEL, WIDTH, Plate
from tailtrue.render.figures.stack import Span, stack
from tailtrue.render.ink import LINE_HEIGHT, text_width
from tailtrue.render.words import TO_SCALE

_FACE = 13.0  # of the chuck
_LENGTH, _THICK = 54.0, 22.0
_WALL = 6.0  # of the blank above and below the hole, as far as it is drawn
_HOLDER = 14.0
_LEAST_HALF_HOLDER = 6.0
_GAP = 3.0  # between two notes


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
    said = _Said(plate, (back + front) / 2, (front + holder) / 2)
    middle = said.foot + 3 + _WALL + half_hole
    top, bottom = middle - half_hole - _WALL, middle + half_hole + _WALL
    if plate.label("chuck"):
        _chuck(plate, top, bottom, plate.size("chuck_hole") * scale if plate.has("chuck_hole") else 0.0)
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
    half_holder = max(half_hole + 2, _LEAST_HALF_HOLDER)
    ink.box(holder, middle - half_holder, _HOLDER, 2 * half_holder, "edge")
    ink.words(holder + _HOLDER / 2, middle - 2, (plate.label("holder"),), "middle")
    ink.line(_FACE, middle, holder + _HOLDER + 2, middle, "chain")
    said.draw(middle - half_hole, middle - half_shank)
    spans = [
        Span("room", front, holder),
        Span("width", back, front, spare=True),
        Span("overhang", back, holder),
        *([Span("behind", _FACE, back)] if behind else []),
    ]
    return plate.finish(stack(plate, bottom + LEVEL + 1, bottom, *spans), TO_SCALE)


def _chuck(plate: Plate, top: float, bottom: float, hole: float) -> None:
    """The chuck as far as the drawing goes, with the hole through it where that was measured."""
    ink = plate.ink
    wall = max(0.0, (bottom - top - hole) / 2)
    if hole:
        for upper in (top, bottom - wall) if wall else ():
            ink.box(1, upper, _FACE - 1, wall, "edge steel")
    else:
        ink.box(1, top, _FACE - 1, bottom - top, "edge steel")
    ink.words((1 + _FACE) / 2, (top + bottom) / 2 - 2, (plate.label("chuck"),), "middle")


class _Said:
    """The words on the hole at the left and on the bar at the right; one under the other where a row is too short."""

    def __init__(self, plate: Plate, hole_x: float, shank_x: float) -> None:
        self._ink = plate.ink
        self._plate = plate
        self._hole_x, self._shank_x = hole_x, shank_x
        self._hole = f"{plate.label('hole')} Ø{plate.number('hole')}"
        self._shank = f"{plate.label('shank')} Ø{plate.number('shank')}"
        one_row = text_width(self._hole) + text_width(self._shank) + _GAP <= WIDTH
        self.foot = FIRST_ROW if one_row else FIRST_ROW + LINE_HEIGHT

    def draw(self, hole_top: float, shank_top: float) -> None:
        """Each over the part it speaks of, as far as the other lets it."""
        hole_wide, shank_wide = text_width(self._hole), text_width(self._shank)
        shank_left = min(max(self._shank_x - _GAP, hole_wide + _GAP), WIDTH - shank_wide)
        self._ink.words(shank_left, FIRST_ROW, (self._shank,), "start", "size")
        self._plate.leader(shank_left + _GAP, FIRST_ROW + 1.2, self._shank_x, shank_top + 0.6)
        hole_left = max(0.0, min(self._hole_x - hole_wide / 2, shank_left - _GAP - hole_wide))
        self._ink.words(hole_left, self.foot, (self._hole,), "start", "size")
        self._plate.leader(min(self._hole_x, hole_left + hole_wide - 1), self.foot + 1.2, self._hole_x, hole_top)
