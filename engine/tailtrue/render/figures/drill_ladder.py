"""The holes of a blank seen along the axis: one circle for each drill, one for the bore, to scale."""

from math import cos, radians, sin

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.plate import Plate
from tailtrue.render.ink import TEXT_HEIGHT
from tailtrue.render.words import TO_SCALE

_RADIUS = 18.0
_MIDDLE_X = 21.0
_WORDS_X = 46.0
_ROW = 5.0
_OUTWARD = radians(60)  # where a leader meets its circle
_CROSS = 2.0


def drill_ladder(drawing: Drawing, dials: Dials) -> str:
    """The largest hole at the top of the list, the first drill at its foot."""
    plate = Plate(drawing, dials)
    drills = plate.names("drill.")
    if not drills:
        raise ValueError(f"the drawing {drawing.id} lacks its drills")
    words = [f"Ø{plate.number('rough_bore')} {plate.label('rough_bore')}"]
    words += [f"Ø{plate.number(name)}" for name in reversed(drills)]
    words[1] += f" {plate.label('last')}"
    if len(drills) > 1:
        words[-1] += f" {plate.label('first')}"
    scale = _RADIUS * 2 / plate.size("rough_bore")
    first_row = 2 + TEXT_HEIGHT
    middle = max(2 + _RADIUS, first_row + len(words) * _ROW - TEXT_HEIGHT)
    ink = plate.ink
    for name in ("rough_bore", *reversed(drills)):
        ink.circle(_MIDDLE_X, middle, plate.size(name) * scale / 2, "edge" if name == "rough_bore" else "hole")
    reach = _RADIUS + _CROSS
    ink.line(_MIDDLE_X - reach, middle, _MIDDLE_X + reach, middle, "chain")
    ink.line(_MIDDLE_X, middle - reach + _CROSS / 2, _MIDDLE_X, middle + reach, "chain")
    for row, (name, said) in enumerate(zip(("rough_bore", *reversed(drills)), words, strict=True)):
        y = first_row + row * _ROW
        radius = plate.size(name) * scale / 2
        x_on, y_on = _MIDDLE_X + radius * cos(_OUTWARD), middle - radius * sin(_OUTWARD)
        plate.leader(_WORDS_X - 1, y - TEXT_HEIGHT / 3, x_on, y_on)
        ink.words(_WORDS_X, y, (said.strip(),), "start", "size")
    return plate.finish(middle + reach, TO_SCALE)
