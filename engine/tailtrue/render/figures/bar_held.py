"""The bar held for facing and centring an end: through the spindle, in a collet, in the chuck alone, or with the steady."""

from collections.abc import Callable

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.plan import indicator
from tailtrue.render.figures.plate import FIRST_ROW, LEVEL, WIDTH, Plate
from tailtrue.render.figures.stack import Span, stack
from tailtrue.render.ink import LINE_HEIGHT, TEXT_HEIGHT, wrap
from tailtrue.render.words import NOT_TO_SCALE

_BAR = 3.5  # half its thickness
_JAW, _BODY = 5.0, 14.0
_CHUCK, _JAWS = 11.5, 12.0  # along the bar
_END = 62.0
_SIZE_AT = 67.5
_SPINDLE_LEFT, _REAR, _SPINDLE_BORE = 4.0, 9.0, 5.0
_STEADY, _STEADY_HALF = 5.0, 12.0
_BESIDE = 3.0  # from jaw or end to the plunger of an indicator
_COLLET_NARROW, _COLLET_WIDE, _COLLET_BODY = 1.5, 4.0, 11.0


def bar_in_spindle(drawing: Drawing, dials: Dials) -> str:
    """The rest of the bar lies inside the spindle, and nothing stands out behind."""
    return _through_the_spindle(drawing, dials, _open_chuck)


def bar_in_collet(drawing: Drawing, dials: Dials) -> str:
    """The same in a collet, which closes round the bar."""
    return _through_the_spindle(drawing, dials, _collet)


def bar_in_four_jaws(drawing: Drawing, dials: Dials) -> str:
    """The same in four jaws: the indicator that it is set true with beside them, and in dashes at the free end."""
    return _through_the_spindle(drawing, dials, _set_true)


def _through_the_spindle(drawing: Drawing, dials: Dials, grip: Callable[[Plate, float, float], None]) -> str:
    plate = Plate(drawing, dials)
    ink = plate.ink
    said = wrap(plate.label("rear"), WIDTH)
    middle = _middle(said)
    face = 36.0
    ink.words(0, FIRST_ROW, said, "start", "strong")
    plate.leader(_SPINDLE_LEFT, FIRST_ROW + (len(said) - 1) * LINE_HEIGHT + 1.2, _SPINDLE_LEFT, middle - _SPINDLE_BORE)
    for top in (middle - 9, middle + _SPINDLE_BORE):
        plate.hatch(_SPINDLE_LEFT, top, face - _CHUCK - _SPINDLE_LEFT, 4)
    _bar(plate, _REAR, middle)
    grip(plate, face, middle)
    ink.words((_SPINDLE_LEFT + face - _CHUCK) / 2, middle + 9 + TEXT_HEIGHT + 0.6, (plate.label("spindle"),), "middle")
    foot = _sizes(plate, _REAR, face + _JAWS, middle)
    rows = [f"{plate.label('spindle_bore')} Ø{plate.number('spindle_bore')}"]
    rows += [f"{plate.label('run_out')} {plate.number('run_out')}"] if plate.has("run_out") else []
    return plate.finish(foot, NOT_TO_SCALE, rows)


def bar_in_steady(drawing: Drawing, dials: Dials) -> str:
    """One end in the chuck, the other in the steady close to its free end."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    middle = _middle(())
    face, steady = 16.0, 42.0
    _bar(plate, face, middle)
    _chuck(plate, face, middle)
    for top, height in ((middle - _STEADY_HALF, _STEADY_HALF - _BAR), (middle + _BAR, _STEADY_HALF - _BAR)):
        ink.box(steady, top, _STEADY, height, "edge steel")
    ink.words(steady + _STEADY / 2, middle - _STEADY_HALF - 0.8, (plate.label("steady"),), "middle")
    foot = _sizes(plate, face, steady + _STEADY, middle)
    return plate.finish(foot, NOT_TO_SCALE)


def _middle(said: tuple[str, ...]) -> float:
    return 2 + (len(said) * LINE_HEIGHT + 2 if said else 0) + _BODY


def _bar(plate: Plate, left: float, middle: float) -> None:
    plate.ink.box(left, middle - _BAR, _END - left, 2 * _BAR, "edge steel")


def _chuck(plate: Plate, face: float, middle: float, through: bool = False) -> None:
    """Body and jaws over the bar; the body is open where the bar passes through it."""
    ink = plate.ink
    halves = ((-_BODY, _BODY - _BAR), (_BAR, _BODY - _BAR)) if through else ((-_BODY, 2 * _BODY),)
    for top, high in halves:
        ink.box(face - _CHUCK, middle + top, _CHUCK, high, "edge")
    for top in (middle - _BAR - _JAW, middle + _BAR):
        ink.box(face, top, _JAWS, _JAW, "edge")
    ink.words(face - _CHUCK / 2, middle - _BAR - 3, (plate.label("chuck"),), "middle")
    ink.line(0, middle, _END + 4, middle, "chain")


def _open_chuck(plate: Plate, face: float, middle: float) -> None:
    _chuck(plate, face, middle, through=True)


def _set_true(plate: Plate, face: float, middle: float) -> None:
    _open_chuck(plate, face, middle)
    indicator(plate.ink, face + _JAWS + _BESIDE, middle - _BAR, -1)
    indicator(plate.ink, _END - _BESIDE, middle - _BAR, -1, "hidden")


def _collet(plate: Plate, face: float, middle: float) -> None:
    """The nose of the collet chuck, and the collet as two wedges along the bar, as long as jaws would be."""
    ink = plate.ink
    end = face + _JAWS
    for way in (-1, 1):
        near, wide, narrow = (middle + way * half for half in (_BAR, _BAR + _COLLET_WIDE, _BAR + _COLLET_NARROW))
        outside = middle + way * _COLLET_BODY
        body = ((face - _CHUCK, near), (face - _CHUCK, outside), (end, outside), (end, wide), (face - _CHUCK, narrow))
        ink.outline(body, "edge")
        ink.outline(((face - _CHUCK, near), (face - _CHUCK, narrow), (end, wide), (end, near)), "edge steel")
    ink.words(face - _CHUCK / 2, middle - _BAR - _COLLET_BODY + 3, (plate.label("chuck"),), "middle")
    ink.line(0, middle, _END + 4, middle, "chain")


def _sizes(plate: Plate, start: float, support: float, middle: float) -> float:
    """How long and thick the bar is, and how far its end stands out beyond its last support; the foot of it."""
    plate.upright(_SIZE_AT, middle - _BAR, middle + _BAR, f"Ø{plate.number('diameter')}", _END)
    spans = (Span("standing_out", support, _END), Span("length", start, _END))
    return stack(plate, middle + _BODY + LEVEL, middle + _BODY, *spans)
