"""The holes of a blank in half section: a step for each drill, one for the rough bore, diameters to scale."""

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.plate import Plate
from tailtrue.render.ink import TEXT_HEIGHT
from tailtrue.render.words import DIAMETERS_TO_SCALE

_RADIUS = 20.0
_WALL = 5.0  # of the blank above the bore, as far as it is drawn
_LEFT, _LONG = 3.0, 37.0
_WORDS_X = 46.0
_ROW = 5.0
_HATCH = 2.0
_CROSS = 2.0


def drill_ladder(drawing: Drawing, dials: Dials) -> str:
    """The upper half alone. The first drill is at the left; the drills come in from the right, where the bore is."""
    plate = Plate(drawing, dials)
    drills = plate.names("drill.")
    if not drills:
        raise ValueError(f"the drawing {drawing.id} lacks its drills")
    names = ("rough_bore", *reversed(drills))
    words = [f"Ø{plate.number(name)}" for name in names]
    words[0] += f" {plate.label('rough_bore')}"
    words[1] += f" {plate.label('last')}"
    if len(drills) > 1:
        words[-1] += f" {plate.label('first')}"
    scale = _RADIUS * 2 / plate.size("rough_bore")
    first_row = 2 + TEXT_HEIGHT
    axis = max(2 + _WALL + _RADIUS, first_row + len(words) * _ROW - TEXT_HEIGHT)
    top, right = axis - _RADIUS - _WALL, _LEFT + _LONG
    wide = _LONG / len(names)
    steps = [(right - place * wide, axis - plate.size(name) * scale / 2) for place, name in enumerate(names)]
    ink = plate.ink
    under = [point for x, y in steps for point in ((x, y), (x - wide, y))]
    ink.outline(((_LEFT, top), (right, top), *under), "edge")
    for x, y in steps:
        _cut(plate, x - wide, top, x, y)
    for x, y in (steps[0], (_LEFT, steps[-1][1])):
        ink.line(x, y, x, axis, "hole")
    ink.line(_LEFT - _CROSS, axis, right + _CROSS, axis, "chain")
    for row, ((x, y), said) in enumerate(zip(steps, words, strict=True)):
        foot = first_row + row * _ROW
        plate.leader(_WORDS_X - 1, foot - TEXT_HEIGHT / 3, x - wide / 2, y)
        ink.words(_WORDS_X, foot, (said.strip(),), "start", "size")
    return plate.finish(axis, DIAMETERS_TO_SCALE)


def _cut(plate: Plate, left: float, top: float, right: float, bottom: float) -> None:
    """Hatching at 45 degrees that runs on from one step to the next."""
    total = _HATCH * ((left + top) // _HATCH + 1)
    while total < right + bottom:
        start, end = max(left, total - bottom), min(right, total - top)
        if start < end:
            plate.ink.line(start, total - start, end, total - end, "cut")
        total += _HATCH
