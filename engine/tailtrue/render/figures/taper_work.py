"""The work between centres from above, aslant by the set-over: where the taper lies, its two ends, the tool beside it."""

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.plan import nib, side_sign
from tailtrue.render.figures.plate import FIRST_ROW, LEVEL, WIDTH, Plate
from tailtrue.render.figures.stack import Span, stack
from tailtrue.render.ink import LINE_HEIGHT, TEXT_HEIGHT, text_width
from tailtrue.render.move import side_of
from tailtrue.render.words import NOT_TO_SCALE

_HEAD, _TAIL = 12.0, 64.0  # the faces of the work
_HALF = 7.0  # of the work, thick as the large end
_OVER = 4.0  # the set-over, drawn far larger than it is
_LEAST, _MOST = 0.35, 0.65  # the share of the work that is drawn as taper
_DRIVER, _POINT = 11.0, 69.5
_NIB = 7.0
_ENDS = ("headstock", "tailstock")


def taper_work(drawing: Drawing, dials: Dials) -> str:
    """Headstock at the left, the operator below. The side at the tool lies along the bed: that is what makes the taper."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    sign = side_sign(drawing)
    side, small_end = side_of(plate.label("way")), drawing.said.get("small_end")
    if side is None or small_end not in _ENDS:
        raise ValueError(f"the drawing {drawing.id} does not say where the small end is and which way it is set over")
    over = _OVER if side == "toward you" else -_OVER
    slope = over / (_TAIL - _HEAD)
    share = min(max(plate.size("length") / plate.size("work_length"), _LEAST), _MOST)
    mark = _TAIL - share * (_TAIL - _HEAD)
    top = FIRST_ROW + LINE_HEIGHT * 2
    line = top + 3 + max(_DRIVER, _HALF + _OVER + 2)
    thin = _HALF - share * _OVER
    at_mark, at_tail = (thin, _HALF) if small_end == "headstock" else (_HALF, thin)

    def axis(x: float) -> float:
        return line + slope * (x - _HEAD)

    ink.box(1.5, line - _DRIVER, 4, 2 * _DRIVER)
    ink.outline(((5.5, line - 3), (_HEAD + 1, line), (5.5, line + 3)))
    upper = ((_HEAD, -_HALF), (mark, -_HALF), (mark, -at_mark), (_TAIL, -at_tail))
    edge = [(x, axis(x) + half) for x, half in upper] + [(x, axis(x) - half) for x, half in reversed(upper)]
    ink.outline(edge, "edge steel")
    ink.box(_HEAD + 1.5, line - _HALF - 2.5, 4, 2 * _HALF + 5)
    ink.line(mark, axis(mark) - _HALF, mark, axis(mark) + _HALF)
    ink.outline(((_POINT, axis(_TAIL) - 3), (_TAIL - 1, axis(_TAIL)), (_POINT, axis(_TAIL) + 3)))
    ink.box(_POINT, axis(_TAIL) - 8, WIDTH - _POINT - 1, 16)
    ink.line(0, line, WIDTH, line, "chain")
    ink.line(_HEAD, line, _TAIL + 3, axis(_TAIL + 3), "chain")
    _set_over(plate, line, axis(_TAIL))
    for name, x, half, anchor in (("at_mark", mark, at_mark, "end"), ("at_tail", _TAIL, at_tail, "start")):
        end = "small" if (name == "at_mark") == (small_end == "headstock") else "large"
        words = (plate.label(end), f"Ø{plate.number(end)}")
        wide = max(map(text_width, words))
        left = max(0.0, mark + 6 - wide) if anchor == "end" else min(_TAIL - 10, WIDTH - wide)
        ink.words(left, FIRST_ROW, words[:1])
        ink.words(left, FIRST_ROW + LINE_HEIGHT, words[1:], "start", "size")
        inside = x + (1 if name == "at_mark" else -1)
        plate.leader(inside, FIRST_ROW + LINE_HEIGHT + 1.2, inside, axis(inside) - half + 0.6)
    tip = axis((mark + _TAIL) / 2) + sign * (at_mark + at_tail) / 2
    nib(ink, (mark + _TAIL) / 2, tip, sign, _NIB)
    ink.words((mark + _TAIL) / 2 + 3, tip + sign * _NIB * 0.75 + TEXT_HEIGHT / 3, (plate.label("tool"),))
    foot = line + max(_DRIVER, _HALF + _OVER + _NIB - 2)
    level = stack(plate, foot + LEVEL, foot, Span("length", mark, _TAIL), Span("work_length", _HEAD, _TAIL))
    return plate.finish(level, NOT_TO_SCALE, (plate.label("stand"),))


def _set_over(plate: Plate, line: float, centre: float) -> None:
    """How far the point of the tailstock stands off the line of the headstock, and the way it went."""
    ink = plate.ink
    x = _POINT + 3
    ink.arrow(x, centre, "down" if centre > line else "up")
    ink.line(x, line, x, centre)
    ink.line(_TAIL, centre, WIDTH - 1, centre)
    words = (plate.label("over"), plate.number("amount"))
    down = centre > line
    y = centre + 8 + TEXT_HEIGHT + 0.8 if down else centre - 8 - LINE_HEIGHT - 1
    ink.words(WIDTH, y, words[:1], "end")
    ink.words(WIDTH, y + LINE_HEIGHT, words[1:], "end", "size")
