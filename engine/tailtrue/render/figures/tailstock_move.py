"""The tailstock from above with both ways it can go: when, and by which screw as this lathe's owner calls it."""

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.plan import nib, side_sign
from tailtrue.render.figures.plate import FIRST_ROW, WIDTH, Plate
from tailtrue.render.ink import LINE_HEIGHT, TEXT_HEIGHT, wrap
from tailtrue.render.move import draw_way, side_of
from tailtrue.render.words import LARGER_SHORT, NOT_TO_SCALE, SMALLER_SHORT

WORDS_AT = 40.0
ARROW_AT = 35.0
_BODY, _BASE, REACH = 7.0, 9.0, 12.5  # half of what body and base take across, and as far out as the screws come
_SCREW = 16.5  # left edge of a screw
PEN = 9.0  # what writing by hand takes


def tailstock_move(drawing: Drawing, dials: Dials) -> str:
    """Two arrows, the words of each beside it. Which screw moves which way is said beside them."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    sign = side_sign(drawing)
    cases = _cases(plate, drawing)
    away, toward = (
        (f"{cases[side]}:", side, *screw_words(plate, drawing, name))
        for side, name in (("away from you", "screw_away"), ("toward you", "screw_toward"))
    )
    rows = max(len(away), len(toward))
    half = max(REACH + LINE_HEIGHT + 3, rows * LINE_HEIGHT + 1 + (0 if _named(drawing) else PEN))
    middle = half
    tailstock(plate, middle)
    named_tool(plate, middle, sign)
    for way, block, top, name in (
        ("up", away, FIRST_ROW, "screw_away"),
        ("down", toward, middle + 2 + TEXT_HEIGHT, "screw_toward"),
    ):
        draw_way(ink, ARROW_AT, middle, "up" if way == "up" else "down", 2.0, 13.0)
        ink.words(WORDS_AT, top, block[:2], "start", "strong")
        ink.words(WORDS_AT, top + 2 * LINE_HEIGHT, block[2:])
        if name not in drawing.said:
            pen = top + (len(block) - 1) * LINE_HEIGHT + PEN - 1
            ink.line(WORDS_AT, pen, WIDTH, pen)
    ink.words(0, FIRST_ROW, (plate.label("far"),))
    foot = 2 * half + 2
    ink.words(0, foot, (plate.label("stand"),), "start", "strong")
    return plate.finish(foot - 1, NOT_TO_SCALE)


def _cases(plate: Plate, drawing: Drawing) -> dict[str, str]:
    """The case that sends the tailstock each way. ValueError where the two ways are not one each."""
    asked = (("larger", LARGER_SHORT), ("smaller", SMALLER_SHORT))
    cases: dict[str, str] = {side: case for name, case in asked if (side := side_of(plate.label(name))) is not None}
    if len(cases) < len(asked):
        raise ValueError(f"the drawing {drawing.id} does not say which way the tailstock goes in each case")
    return cases


def _named(drawing: Drawing) -> bool:
    return {"screw_away", "screw_toward"} <= set(drawing.said)


def screw_words(plate: Plate, drawing: Drawing, name: str) -> tuple[str, ...]:
    """What moves the tailstock that way, as its owner calls it, or the words that ask for it."""
    said = drawing.said.get(name)
    return wrap(f"{plate.label('screw')}: {said}" if said else plate.label("unnamed"), WIDTH - WORDS_AT)


def named_tool(plate: Plate, middle: float, sign: int) -> None:
    """The tool on its side of the quill, its name clear of the dashes of the base."""
    nib(plate.ink, 3, middle + sign * 6, sign, 6)
    base = middle + sign * _BASE
    plate.ink.words(6, base + TEXT_HEIGHT if sign > 0 else base - 1, (plate.label("tool"),))


def tailstock(plate: Plate, middle: float) -> None:
    """Quill, body, base in dashes, and a screw on either side, or the one that goes through."""
    ink = plate.ink
    ink.box(11, middle - _BASE, 20, 2 * _BASE, "hidden")
    ink.outline(((5, middle - 2.5), (0.5, middle), (5, middle + 2.5)))
    ink.box(5, middle - 3, 8, 6, "edge steel")
    ink.box(13, middle - _BODY, 16, 2 * _BODY)
    one = plate.label("one_screw")
    # Which side the one screw is worked from nobody said: it is drawn near, and the caption says so.
    for top, foot in (
        ((middle + _BASE, middle + REACH),)
        if one
        else ((middle - REACH, middle - _BASE - 0.6), (middle + _BASE, middle + REACH))
    ):
        ink.box(_SCREW, top, 3, REACH - _BASE, "edge steel")
        ink.words(_SCREW + 4, foot, (one or plate.label("each_screw"),))
    if one:
        ink.line(_SCREW + 1.5, middle - _BASE, _SCREW + 1.5, middle + _BASE, "hidden")
    ink.line(0, middle, 33, middle, "chain")
