"""What drawings of a blank to be faced share: the blank cut along the axis, and the facing tool before it."""

from tailtrue.render.figures.plate import Plate

_TOOL_WIDE = 3.4


def blank(plate: Plate, back: float, front: float, middle: float, half: float) -> None:
    """The blank, cut through; where it came with a hole, the wall on both sides of it."""
    share = plate.size("hole") / plate.size("diameter") if plate.has("hole") else 0.0
    wall = half * (1 - share)
    plate.hatch(back, middle - half, front - back, wall if share else 2 * half)
    if share:
        plate.hatch(back, middle + half - wall, front - back, wall)
        for x in (back, front):
            plate.ink.line(x, middle - half + wall, x, middle + half - wall, "hole")


def facing_tool(plate: Plate, front: float, middle: float, half: float, foot: float) -> None:
    """The facing tool at the front of the work; its shank ends so far below the axis."""
    tip, end = middle + half - 4, middle + foot
    left, right = front + 0.8, front + 0.8 + _TOOL_WIDE
    plate.ink.outline(((left, tip), (right, tip + 3), (right, end), (left + 1, end), (left + 1, tip + 3)), "edge")
    plate.ink.words(right + 1.5, end - 0.5, (plate.label("tool"),))
