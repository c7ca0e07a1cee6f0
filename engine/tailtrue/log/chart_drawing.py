"""A series as a drawing to print: single checks above, steps from check to check below. Shapes tell, not colours."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from html import escape
from math import ceil, floor, log10
from string import ascii_uppercase

from tailtrue.log.chart_text import doubt_line
from tailtrue.log.recheck import Recheck, drift_or_noise, when_again
from tailtrue.log.rules import LogRules
from tailtrue.log.series import Check, Series, Stretch
from tailtrue.log.wording import AWAY, TOWARD, offset, size, unit_mm
from tailtrue.parts import Dials
from tailtrue.render.ink import LINE_HEIGHT, Ink, number, text_width, wrap

WIDTH = 170.0
_LEFT, _RIGHT = 17.0, 168.0
_TOP, _BOTTOM = 19.0, 86.0
_STEPS_TOP, _STEPS_BOTTOM = 98.0, 124.0
_FOOT = 134.0
_MOST_SHOWN = 40
_DATE_ROOM = 24.0
_PART_ROOM = 6.5  # of height between two lines of the grid, at least
_SHAPES = ((False, False, "check"), (False, True, "outside its limit"), (True, False, "more than scatter"))
_LINES = (("limit", "limit"), ("scatter", "limits of scatter"), ("mean", "mean"), ("doubt", "give or take"))
_STYLE = (
    "text{font:3.4px Arial,Helvetica,sans-serif;fill:#000}.strong{font-weight:700}"
    "path,rect{fill:none;stroke:#000;stroke-width:.25px}"
    ".edge{stroke-width:.35px}.grid{stroke:#bbb;stroke-width:.18px}.run{stroke-width:.4px}.mean{stroke-width:.3px}"
    ".scatter{stroke-width:.45px;stroke-dasharray:4 1.2 .8 1.2}.limit{stroke-width:.5px;stroke-dasharray:.5 1.1}"
    ".cut{stroke-width:.35px;stroke-dasharray:2.5 1.2}.dot{fill:#000;stroke:none}.open{fill:#fff;stroke-width:.55px}"
    ".cross{stroke-width:.75px}"
)


@dataclass(frozen=True)
class _Shown:
    """A stretch, or as much of it as is drawn: its checks with their places on the paper."""

    stretch: Stretch
    first: int
    x: tuple[float, ...]

    @property
    def checks(self) -> tuple[Check, ...]:
        return self.stretch.checks[self.first :]


@dataclass(frozen=True)
class _Scale:
    """From mm to a height on the paper."""

    low_mm: float
    high_mm: float
    top: float
    bottom: float

    def y(self, value_mm: float) -> float:
        return self.bottom - (value_mm - self.low_mm) / (self.high_mm - self.low_mm) * (self.bottom - self.top)


def chart_svg(series: Series, dials: Dials, rules: LogRules, again: Recheck | None) -> str:
    """The chart as an SVG document 170 mm wide, with its content in words for those who cannot see it."""
    ink = Ink()
    shown = _shown(series)
    told = [*drift_or_noise(series, rules.chart)]
    if again is not None:
        told.append(when_again(again))
    title = f"{series.lathe}, bar {series.bar}: tailstock centre as found"
    ink.words(0, 4, wrap(title, WIDTH)[:2], kind="strong")
    foot = 12.0
    if shown:
        hidden = len(series.checks) - sum(len(one.checks) for one in shown)
        if hidden:
            told.insert(0, f"The last {_MOST_SHOWN} checks are drawn; {hidden} earlier ones are in the log.")
        _singles(ink, shown, dials)
        _steps(ink, shown, dials)
        foot = _key(ink, shown, dials)
    lines = [line for sentence in told for line in wrap(sentence, WIDTH)]
    ink.words(0, foot, lines)
    height = foot + LINE_HEIGHT * len(lines)
    return _document(ink, height, title, " ".join([*_in_words(shown, dials), *told]))


def _shown(series: Series) -> list[_Shown]:
    """The latest checks, placed at even steps: their order counts, not how long the lathe stood still."""
    count = min(len(series.checks), _MOST_SHOWN)
    step = (_RIGHT - _LEFT) / (count + 1) if count else 0.0
    skip = len(series.checks) - count
    shown: list[_Shown] = []
    place = 0
    for stretch in series.stretches:
        first = min(skip, len(stretch.checks))
        skip -= first
        many = len(stretch.checks) - first
        if many:
            shown.append(_Shown(stretch, first, tuple(_LEFT + step * (place + n + 1) for n in range(many))))
        place += many
    return shown


def _singles(ink: Ink, shown: Sequence[_Shown], dials: Dials) -> None:
    values = [0.0]
    for one in shown:
        values += [value for check in one.checks for value in (check.limit_mm, -check.limit_mm, *_doubt(check))]
        values += [one.stretch.chart.lower, one.stretch.chart.upper] if one.stretch.chart else []
    scale = _panel(ink, values, _TOP, _BOTTOM, dials, 0.08)
    unit, _ = unit_mm(dials)
    ink.words(0, _TOP - 6.5, (f"{unit}; up: {TOWARD}, down: {AWAY}",))
    ink.line(_LEFT, scale.y(0), _RIGHT, scale.y(0), "edge")
    for letter, one in zip(_letters(), shown, strict=False):
        left, right = _ends(one, shown)
        if one is not shown[0]:
            ink.line(left, _TOP - 4.2, left, _STEPS_BOTTOM, "cut")
        ink.words(left + 1, _TOP - 1.2, (letter,), kind="strong")
        _lines_of(ink, one, left, right, scale.y)
        if one.stretch.chart:
            chart = one.stretch.chart
            ink.line(left, scale.y(chart.mean), right, scale.y(chart.mean), "mean")
            for end in (chart.lower, chart.upper):
                ink.line(left, scale.y(end), right, scale.y(end), "scatter")
        points = [(x, scale.y(check.offset_mm)) for x, check in zip(one.x, one.checks, strict=True)]
        if len(points) > 1:
            ink.outline(points, "run", closed=False)
        for place, ((x, y), check) in enumerate(zip(points, one.checks, strict=True), start=one.first):
            # Each check has the doubt of what read it; a micrometer and an indicator are told apart by it.
            _whisker(ink, x, *map(scale.y, _doubt(check)))
            _mark(ink, x, y, place in one.stretch.signals, check.outside)


def _whisker(ink: Ink, x: float, low: float, high: float) -> None:
    ink.line(x, low, x, high, "doubt")
    for end in (low, high):
        ink.line(x - 0.8, end, x + 0.8, end, "doubt end")


def _doubt(check: Check) -> tuple[float, float]:
    return check.offset_mm - check.uncertainty_mm, check.offset_mm + check.uncertainty_mm


def _lines_of(ink: Ink, one: _Shown, left: float, right: float, y: Callable[[float], float]) -> None:
    """The limit of each check; it may be another one from check to check."""
    for sign in (1, -1):
        run = [(left, y(sign * one.checks[0].limit_mm))]
        for (x, check), after in zip(zip(one.x, one.checks, strict=True), [*one.x[1:], None], strict=True):
            end = right if after is None else (x + after) / 2
            here = y(sign * check.limit_mm)
            run += [(run[-1][0], here), (end, here)]
        ink.outline(run, "limit", closed=False)


def _steps(ink: Ink, shown: Sequence[_Shown], dials: Dials) -> None:
    values = [0.0]
    for one in shown:
        values += one.stretch.moving_ranges_mm[one.first :]
        values += [one.stretch.chart.upper_moving_range] if one.stretch.chart else []
    scale = _panel(ink, values, _STEPS_TOP, _STEPS_BOTTOM, dials, 0.0)
    unit, _ = unit_mm(dials)
    ink.words(0, _STEPS_TOP - 3.4, (f"{unit}; step from the check before",))
    for one in shown:
        left, right = _ends(one, shown)
        if one.stretch.chart:
            y = scale.y(one.stretch.chart.upper_moving_range)
            ink.line(left, y, right, y, "scatter")
        ranges = one.stretch.moving_ranges_mm
        points = [
            (x, scale.y(ranges[place - 1]), place in one.stretch.jumps)
            for place, x in enumerate(one.x, start=one.first) if place
        ]  # fmt: skip
        if len(points) > 1:
            ink.outline([(x, y) for x, y, _ in points], "run", closed=False)
        for x, y, jump in points:
            _mark(ink, x, y, jump, False)
    _dates(ink, shown)


def _panel(ink: Ink, values_mm: Sequence[float], top: float, bottom: float, dials: Dials, pad: float) -> _Scale:
    """The frame of a panel with its grid and numbers."""
    _, one_mm = unit_mm(dials)
    low, high = min(values_mm) / one_mm, max(values_mm) / one_mm
    if high <= low:
        low, high = low - 0.001 / one_mm, high + 0.001 / one_mm
    room = (high - low) * pad
    step = _tick(high - low + 2 * room, (bottom - top) / _PART_ROOM)
    first, last = floor((low - room) / step), ceil((high + room) / step)
    scale = _Scale(first * step * one_mm, last * step * one_mm, top, bottom)
    places = max(0, -floor(log10(step)))
    for count in range(first, last + 1):
        y = scale.y(count * step * one_mm)
        ink.line(_LEFT, y, _RIGHT, y, "grid")
        ink.words(_LEFT - 1.5, y + 1.2, (f"{abs(count * step):.{places}f}",), "end")
    ink.box(_LEFT, top, _RIGHT - _LEFT, bottom - top)
    return scale


def _tick(span: float, parts: float) -> float:
    """A round step that cuts a span into so many parts at most."""
    rough = span / parts
    size_of = 10.0 ** floor(log10(rough))
    return next(size_of * many for many in (1, 2, 5, 10) if size_of * many >= rough * 0.999)


def _ends(one: _Shown, shown: Sequence[_Shown]) -> tuple[float, float]:
    """Left and right end of a stretch on the paper: half way to its neighbours."""
    place = shown.index(one)
    left = _LEFT if place == 0 else (shown[place - 1].x[-1] + one.x[0]) / 2
    right = _RIGHT if place == len(shown) - 1 else (one.x[-1] + shown[place + 1].x[0]) / 2
    return left, right


def _mark(ink: Ink, x: float, y: float, signal: bool, outside: bool) -> None:
    if signal:
        ink.outline(((x, y - 2.4), (x + 2.4, y), (x, y + 2.4), (x - 2.4, y)), "open")
    if outside:
        ink.line(x - 1.1, y - 1.1, x + 1.1, y + 1.1, "cross")
        ink.line(x - 1.1, y + 1.1, x + 1.1, y - 1.1, "cross")
    else:
        ink.parts.append(f'<circle class="dot" cx="{number(x)}" cy="{number(y)}" r="1"/>')


def _dates(ink: Ink, shown: Sequence[_Shown]) -> None:
    last = -_DATE_ROOM
    for one in shown:
        for x, check in zip(one.x, one.checks, strict=True):
            if x - last >= _DATE_ROOM and x <= WIDTH - 10:
                ink.line(x, _STEPS_BOTTOM, x, _STEPS_BOTTOM + 1.2, "edge")
                ink.words(x, _STEPS_BOTTOM + 5, (check.date_time[:10],), "middle")
                last = x


def _key(ink: Ink, shown: Sequence[_Shown], dials: Dials) -> float:
    """What shapes and letters mean; the height at which the next text begins."""
    x, y = 3.0, _FOOT
    for signal, outside, word in _SHAPES:
        _mark(ink, x, y, signal, outside)
        ink.words(x + 4, y + 1.2, (word,))
        x += 10 + text_width(word)
    x, y = 1.0, y + 6
    for kind, word in _LINES:
        if kind == "doubt":
            _whisker(ink, x + 9, y - 1.8, y + 1.8)
        else:
            ink.line(x, y, x + 11, y, kind)
        ink.words(x + 13, y + 1.2, (word,))
        x += 19 + text_width(word)
    words = (
        f"{letter}: {one.stretch.began}; {doubt_line(one.stretch, dials)}."
        for letter, one in zip(_letters(), shown, strict=False)
    )
    lines = [line for told in words for line in wrap(told, WIDTH)]
    ink.words(0, y + 7, lines)
    return y + 9 + LINE_HEIGHT * len(lines)


def _letters() -> Iterator[str]:
    """A, B, ... Z, A1, B1 ..."""
    yield from ascii_uppercase
    turn = 1
    while True:
        yield from (f"{letter}{turn}" for letter in ascii_uppercase)
        turn += 1


def _in_words(shown: Sequence[_Shown], dials: Dials) -> Iterator[str]:
    for one in shown:
        checks = (f"{check.date_time[:10]} {offset(check.offset_mm, dials)}" for check in one.checks)
        yield f"{one.stretch.began}: {', '.join(checks)}; {doubt_line(one.stretch, dials)}."
        if one.stretch.chart:
            chart = one.stretch.chart
            yield f"Limits of scatter {offset(chart.lower, dials)} to {offset(chart.upper, dials)}."
            yield f"Largest step {size(chart.upper_moving_range, dials)}."


def _document(ink: Ink, height: float, title: str, description: str) -> str:
    tall = number(height)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{number(WIDTH)}mm" height="{tall}mm" '
        f'viewBox="0 0 {number(WIDTH)} {tall}" role="img" aria-labelledby="title description">'
        f'<title id="title">{escape(title)}</title><desc id="description">{escape(description)}</desc>'
        f"<style>{_STYLE}</style>{''.join(ink.parts)}</svg>\n"
    )
