"""The tailstock from above with the one way it goes for a taper, or comes back: how far, and by which screw."""

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.plan import side_sign
from tailtrue.render.figures.plate import FIRST_ROW, WIDTH, Plate
from tailtrue.render.figures.tailstock_move import ARROW_AT, PEN, REACH, WORDS_AT, named_tool, screw_words, tailstock
from tailtrue.render.ink import LINE_HEIGHT, TEXT_HEIGHT, wrap
from tailtrue.render.move import draw_way, side_of
from tailtrue.render.words import NOT_TO_SCALE

_SCREWS = {"toward you": "screw_toward", "away from you": "screw_away"}


def tailstock_set_over(drawing: Drawing, dials: Dials) -> str:
    """One arrow with its words; the side it does not go to stays empty."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    sign = side_sign(drawing)
    side = side_of(plate.label("way"))
    if side is None:
        raise ValueError(f"the drawing {drawing.id} does not say which way the tailstock goes")
    away = side == "away from you"
    strong = (plate.label("heading"), side, plate.number("amount"))
    screw = screw_words(plate, drawing, _SCREWS[side])
    plain = (*wrap(plate.label("more"), WIDTH - WORDS_AT), *screw) if plate.label("more") else screw
    pen = 0 if _SCREWS[side] in drawing.said else PEN
    rows = len(strong) + len(plain)
    middle = max(REACH + LINE_HEIGHT + 3, rows * LINE_HEIGHT + 1 + pen) if away else REACH + LINE_HEIGHT + 3
    tailstock(plate, middle)
    named_tool(plate, middle, sign)
    draw_way(ink, ARROW_AT, middle, "up" if away else "down", 2.0, 13.0)
    top = FIRST_ROW if away else middle + 2 + TEXT_HEIGHT
    ink.words(WORDS_AT, top, strong, "start", "strong")
    ink.words(WORDS_AT, top + len(strong) * LINE_HEIGHT, plain)
    if pen:
        line = top + (rows - 1) * LINE_HEIGHT + PEN - 1
        ink.line(WORDS_AT, line, WIDTH, line)
    ink.words(0, FIRST_ROW, (plate.label("far"),))
    below = REACH + LINE_HEIGHT + 3 if away else max(REACH + LINE_HEIGHT + 3, 2 + rows * LINE_HEIGHT + pen)
    foot = middle + below + 2
    ink.words(0, foot, (plate.label("stand"),), "start", "strong")
    return plate.finish(foot - 1, NOT_TO_SCALE)
