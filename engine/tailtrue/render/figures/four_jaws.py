"""The raw blank in four jaws, from the side: first by its skin, then by the band turned on it. Lengths to scale."""

from dataclasses import dataclass

from tailtrue.parts import Dials
from tailtrue.procedure import Drawing
from tailtrue.render.figures.faced_blank import facing_tool
from tailtrue.render.figures.plan import nib
from tailtrue.render.figures.plate import FIRST_ROW, LEVEL, Plate
from tailtrue.render.figures.stack import Span, stack
from tailtrue.render.ink import LINE_HEIGHT, TEXT_HEIGHT
from tailtrue.render.words import LENGTH_TO_SCALE, NOT_TO_SCALE

_FACE = 16.0  # of the chuck, from the left
_LENGTH = 34.0  # from the chuck face to the face of the blank
_HALF_BLANK, _JAW, _HALF_BODY = 11.0, 6.0, 19.0
_SKIN, _DRAFT, _STRIP = 2.2, 1.6, 1.2  # what the band loses, what a casting loses, what packing takes: for the eye
_UNMEASURED = 4.0  # behind the blank, where the jaws were not measured
_SIZE_AT = 67.5
_PAD, _CENTRE, _QUILL = 2.0, 4.0, 5.0


@dataclass(frozen=True)
class _Along:
    """Where the parts are along the axis, on paper."""

    back: float
    jaw_end: float
    front: float
    jaws: float
    scale: float
    measured: bool


def _along(plate: Plate) -> _Along:
    room = plate.size("room") if plate.has("room") else None
    width, grip = plate.size("sawn_width"), plate.size("grip")
    if room is None:
        scale = (_LENGTH - _UNMEASURED) / width
        back = _FACE + _UNMEASURED
    else:
        scale = _LENGTH / (room + width)
        back = _FACE + room * scale
    jaw_end = back + grip * scale
    return _Along(back, jaw_end, back + width * scale, jaw_end, scale, room is not None)


def blank_in_four_jaws(drawing: Drawing, dials: Dials) -> str:
    """The blank as it came, and in dashes the band that is turned on the half that stands out."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    at = _along(plate)
    strip = _STRIP if plate.label("packing") else 0.0
    middle = FIRST_ROW + LINE_HEIGHT + _HALF_BODY
    fall = _DRAFT if plate.has("large") else 0.0
    _chuck(plate, at, middle, _HALF_BLANK + strip)
    if strip:
        for way in (-1, 1):
            top = middle + way * (_HALF_BLANK + strip / 2) - strip / 2
            ink.box(at.back, top, at.jaw_end - at.back, strip, "edge steel")
    small = _HALF_BLANK - fall
    corners = ((at.back, _HALF_BLANK), (at.front, small), (at.front, -small), (at.back, -_HALF_BLANK))
    ink.outline(tuple((x, middle + y) for x, y in corners), "edge")
    start, half = at.front - plate.size("band") * at.scale, small - _SKIN
    for way in (-1, 1):
        ink.line(start, middle + way * half, at.front, middle + way * half, "hidden")
        ink.line(start, middle + way * half, start, middle + way * (half + _SKIN), "hidden")
    plate.pointed(0, f"{plate.label('band')} Ø{plate.number('band_diameter')}", (start + at.front) / 2, middle - half)
    ink.line(0, middle, at.front + 2, middle, "chain")
    if plate.label("pad"):
        _pad(plate, at.front, middle)
    nib(ink, at.front - 3, middle + small, 1, 6)
    ink.words(at.front, middle + small + 6, (plate.label("tool"),))
    round_sign = "" if plate.has("corners") else "Ø"
    plate.upright(_SIZE_AT, middle - small, middle + small, f"{round_sign}{plate.number('diameter')}", at.front)
    spans = [Span("band", start, at.front), *_spans(at)]
    rows = [f"{plate.label(name)} Ø{plate.number(name)}" for name in ("large", "corners") if plate.has(name)]
    rows += [plate.label("packing")] if strip else []
    return _finish(plate, at, middle, spans, rows)


def blank_on_band(drawing: Drawing, dials: Dials) -> str:
    """The blank turned round, all of the grip on the band."""
    plate = Plate(drawing, dials)
    ink = plate.ink
    at = _along(plate)
    middle = FIRST_ROW + LINE_HEIGHT + _HALF_BODY
    half = _HALF_BLANK - _SKIN
    _chuck(plate, at, middle, half)
    end = at.back + plate.size("band") * at.scale
    ink.box(at.back, middle - half, end - at.back, 2 * half, "edge")
    ink.box(end, middle - _HALF_BLANK, at.front - end, 2 * _HALF_BLANK, "edge")
    plate.pointed(0, f"{plate.label('band')} Ø{plate.number('band_diameter')}", (at.jaw_end + end) / 2, middle - half + 1)
    ink.line(0, middle, at.front + 4, middle, "chain")
    facing_tool(plate, at.front, middle, _HALF_BLANK, _HALF_BODY)
    return _finish(plate, at, middle, [Span("band", at.back, end), *_spans(at)], [])


def _spans(at: _Along) -> list[Span]:
    room = [Span("room", _FACE, at.back)] if at.measured else []
    return [
        Span("standing_out", at.jaw_end, at.front),
        Span("grip", at.back, at.jaw_end),
        Span("sawn_width", at.back, at.front, spare=True),
        *room,
    ]


def _chuck(plate: Plate, at: _Along, middle: float, inside: float) -> None:
    """The body of the chuck, and two of its jaws, as far as they reach over the blank."""
    ink = plate.ink
    ink.box(3, middle - _HALF_BODY, _FACE - 3, 2 * _HALF_BODY, "edge steel")
    ink.words((3 + _FACE) / 2, middle - 5, (plate.label("chuck"),), "middle")
    for top in (middle - inside - _JAW, middle + inside):
        ink.box(_FACE, top, at.jaws - _FACE, _JAW, "edge steel")
        ink.words((_FACE + at.jaws) / 2, top + _JAW / 2 + TEXT_HEIGHT / 3, (plate.label("jaw"),), "middle")


def _pad(plate: Plate, front: float, middle: float) -> None:
    """The pad on the free face, and the centre that presses it."""
    ink = plate.ink
    ink.box(front, middle - 4, _PAD, 8, "edge steel")
    tip, shoulder = front + _PAD, front + _PAD + _CENTRE
    end, half = shoulder + _QUILL, 2.5
    ink.outline(
        ((tip, middle), (shoulder, middle - half), (end, middle - half), (end, middle + half), (shoulder, middle + half))
    )
    ink.words(front + 1, middle - 6, (plate.label("pad"),))


def _finish(plate: Plate, at: _Along, middle: float, spans: list[Span], rows: list[str]) -> str:
    foot = stack(plate, middle + _HALF_BODY + LEVEL, middle + _HALF_BLANK + _JAW, *spans)
    return plate.finish(foot, LENGTH_TO_SCALE if at.measured else NOT_TO_SCALE, rows)
