"""The speeds of the lathe, one a row: where the lever or belt goes, and which work of this job runs at it."""

from collections.abc import Iterable, Mapping

from tailtrue.parts import Dials, Figure, Text
from tailtrue.procedure import Drawing
from tailtrue.render.drawing import described
from tailtrue.render.ink import LINE_HEIGHT, TEXT_HEIGHT, Ink, text_width, wrap
from tailtrue.render.numbers import BY_HAND, NBSP, read

_WIDTH = 84.0
_ROW = 4.5
_MARK = 4.0
_GAP = 4.0
_MOST_SETTING = 30.0
_LIST = "speed."
Setting = tuple[str, float]


def speed_plate(drawing: Drawing, dials: Dials) -> str:
    """A table as a drawing: a speed that is used is marked and bold, one that is not is plain."""
    ink = Ink()
    speeds = {name: figure for name, figure in drawing.dimensions.items() if name.startswith(_LIST)}
    if not speeds:
        raise ValueError(f"the drawing {drawing.id} lacks its dimension speed.1")
    numbers = {name: read(figure, dials) for name, figure in speeds.items()}
    settings = {name: wrap(drawing.said.get(f"setting.{name.removeprefix(_LIST)}", ""), _MOST_SETTING) for name in speeds}
    right = _MARK + max(text_width(one.number) for one in numbers.values()) + 1
    beside = right + _GAP
    widest = max((text_width(line) for lines in settings.values() for line in lines), default=0.0)
    uses_at = beside + (widest + _GAP if widest else 0.0)
    unit = next(iter(numbers.values())).unit
    y = TEXT_HEIGHT + 0.6
    ink.words(_WIDTH, y, (unit,), "end")
    # Only the first row gives room to the unit, or stands below it where a word of it is too long for that.
    room = _WIDTH - uses_at - _GAP - text_width(unit)
    first = "; ".join(_uses(drawing, next(iter(speeds.values())).value))
    if any(text_width(word) > room for word in first.split()):
        y, room = y + LINE_HEIGHT, _WIDTH - uses_at
    for name, figure in speeds.items():
        uses = wrap("; ".join(_uses(drawing, figure.value)), room)
        room = _WIDTH - uses_at
        if uses:
            ink.arrow(_MARK - 1, y - TEXT_HEIGHT / 3, "right", 1.2)
        ink.words(right, y, (numbers[name].number,), "end", "size" if uses else "")
        ink.words(beside, y, settings[name], "start", "size" if uses else "")
        ink.words(uses_at, y, uses)
        y += max(len(uses), len(settings[name]), 1) * LINE_HEIGHT + _ROW - LINE_HEIGHT
        ink.line(0, y - TEXT_HEIGHT - 0.1, _WIDTH, y - TEXT_HEIGHT - 0.1)
    height = y - TEXT_HEIGHT + 0.6
    return ink.svg(f"drawing-{drawing.id}", _WIDTH, height, drawing.title, described(drawing, dials), "ink wide")


def settings_of(drawings: Iterable[Drawing]) -> dict[Setting, str]:
    """How lever or belt stands for each work of the plate, by the fact of its speed and the speed, as far as that is said.

    A speed that is no more than a limit has none.
    """
    found: dict[Setting, str] = {}
    for one in drawings:
        said = {
            figure.value: one.said[setting]
            for name, figure in one.dimensions.items()
            if name.startswith(_LIST) and (setting := f"setting.{name.removeprefix(_LIST)}") in one.said
        }
        for name, figure in one.dimensions.items():
            if not name.startswith(_LIST) and figure.value in said:
                found[figure.fact, figure.value] = said[figure.value]
    return found


def lever_of(value: Text, settings: Mapping[Setting, str]) -> str:
    """How lever or belt stands for a value that is one speed; nothing for any other, or where it is not known."""
    (figure,) = value if len(value) == 1 else ("",)
    return "" if isinstance(figure, str) else settings.get((figure.fact, figure.value), "")


def plate_rows(drawing: Drawing) -> tuple[tuple[Figure, str, str], ...]:
    """The plate told line by line: a speed, how lever or belt stands for it, what runs at it in this job."""
    return tuple(
        (figure, drawing.said.get(f"setting.{name.removeprefix(_LIST)}", ""), "; ".join(_uses(drawing, figure.value)))
        for name, figure in drawing.dimensions.items()
        if name.startswith(_LIST)
    )


def _uses(drawing: Drawing, speed: float) -> list[str]:
    """What runs at a speed, each work once, with a mark where a person set the speed."""
    works: dict[str, str] = {}
    for name, figure in drawing.dimensions.items():
        if not name.startswith(_LIST) and figure.value == speed:
            work = drawing.labels.get(name.partition(".")[0], "")
            works.setdefault(work, f"{work}{NBSP}{BY_HAND}" if figure.set_by else work)
    return list(works.values())
