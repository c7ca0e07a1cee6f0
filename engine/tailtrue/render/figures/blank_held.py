"""The blank in the chuck, cut along the axis: lengths to scale, thickness not."""

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.faced_blank import blank, facing_tool
from tailtrue.render.figures.plate import FIRST_ROW, LEVEL, WIDTH, Plate
from tailtrue.render.figures.stack import Span, stack
from tailtrue.render.ink import LINE_HEIGHT, TEXT_HEIGHT, wrap
from tailtrue.render.words import LENGTH_TO_SCALE

_FACE = 16.0  # of the chuck, from the left
_LENGTH = 44.0  # from the chuck face to the face of the blank
_HALF_BLANK, _JAW, _HALF_BODY = 11.0, 6.0, 19.0
_SIZE_AT = 67.5


def blank_held(drawing: Drawing, dials: Dials) -> str:
    """Chuck, jaws, blank, and the spacer that comes out again."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    spacer = plate.size("spacer") if plate.has("spacer") else 0.0
    jaws = plate.size("jaw_depth")
    scale = _LENGTH / max(spacer + plate.size("sawn_width"), jaws)
    back = _FACE + spacer * scale
    front = back + plate.size("sawn_width") * scale
    jaw_end = back + plate.size("grip") * scale
    said = wrap(plate.label("spacer"), WIDTH) if spacer else ()
    middle = FIRST_ROW + len(said) * LINE_HEIGHT + _HALF_BODY
    ink.box(3, middle - _HALF_BODY, _FACE - 3, 2 * _HALF_BODY, "edge steel")
    ink.words((3 + _FACE) / 2, middle - 5, (plate.label("chuck"),), "middle")
    for top in (middle - _HALF_BLANK - _JAW, middle + _HALF_BLANK):
        ink.box(_FACE, top, jaws * scale, _JAW, "edge steel")
        ink.words(_FACE + jaws * scale / 2, top + _JAW / 2 + TEXT_HEIGHT / 3, (plate.label("jaw"),), "middle")
    blank(plate, back, front, middle, _HALF_BLANK)
    if spacer:
        _spacer(plate, middle, back, said)
    ink.line(0, middle, front + 4, middle, "chain")
    facing_tool(plate, front, middle, _HALF_BLANK, _HALF_BODY)
    top, bottom = middle - _HALF_BLANK, middle + _HALF_BLANK
    plate.upright(_SIZE_AT, top, bottom, f"Ø{plate.number('diameter')}", front)
    spans = [
        Span("standing_out", jaw_end, front),
        Span("grip", back, jaw_end),
        Span("sawn_width", back, front, spare=True),
        *([Span("spacer", _FACE, back)] if spacer else []),
    ]
    foot = stack(plate, middle + _HALF_BODY + LEVEL, bottom + _JAW, *spans)
    return plate.finish(foot, LENGTH_TO_SCALE)


def _spacer(plate: Plate, middle: float, back: float, said: tuple[str, ...]) -> None:
    """The spacer, crossed out: it is not there when the spindle turns."""
    ink = plate.ink
    top, bottom = middle - _HALF_BLANK + 1, middle + _HALF_BLANK - 1
    ink.box(_FACE, top, back - _FACE, bottom - top, "edge")
    ink.line(_FACE, top, back, bottom, "outline")
    ink.line(_FACE, bottom, back, top, "outline")
    ink.words(0, FIRST_ROW, said, "start", "strong")
    foot = FIRST_ROW + (len(said) - 1) * LINE_HEIGHT + 1.2
    plate.leader((_FACE + back) / 2, foot, (_FACE + back) / 2, top + 2)
