"""A series in the terminal: one line a check, the reading drawn across it; then the step from check to check."""

import textwrap
from collections.abc import Iterator

from tailtrue.given.quoting import harmless
from tailtrue.log.recheck import Recheck, drift_or_noise, when_again
from tailtrue.log.rules import LogRules
from tailtrue.log.says import said
from tailtrue.log.series import Check, Series, Stretch
from tailtrue.log.wear import Wear
from tailtrue.log.wording import AWAY, TOWARD, doubt, offset, size
from tailtrue.parts import Dials

_WIDTH = 78  # any window has it
_HALF = 14  # characters from the middle to one end
_STEP = 47  # characters from nought to the end
_ARTICLE = {"micrometer": "a", "indicator": "an"}
_ROOM = 1.1  # of the largest value on the scale


def chart_lines(series: Series, dials: Dials, rules: LogRules, again: Recheck | None) -> Iterator[str]:
    """The chart with its key, what it says, and when to check again."""
    yield f"{harmless(series.lathe)}, bar {harmless(series.bar)}: tailstock centre as found"
    if series.stretches:
        reach_mm = _reach_mm(series)
        yield f"  left of |: {AWAY}; right: {TOWARD}"
        for stretch in series.stretches:
            yield from _wrapped(stretch.began)
            for place, check in enumerate(stretch.checks):
                yield _line(check, stretch, place, reach_mm, dials)
            yield from _wrapped(doubt_line(stretch, dials))
            yield from _limits(stretch, dials)
        yield "  o check   X check outside its limit   ! more than scatter"
        yield "  : limit   [ ] limits of scatter   | in line"
        yield from _steps(series, dials, rules.chart.fewest)
    for number, why in series.left_out:
        yield f"  record {number} is not charted: {why}"
    yield from drift_or_noise(series, rules.chart)
    if again is not None:
        yield when_again(again)
        yield said("sooner", occasions=", ".join(rules.recheck.before))


def wear_line(wear: Wear, dials: Dials) -> str:
    """What is left of the collars of a bar, in a sentence."""
    words = said(
        "wear",
        bar=harmless(wear.bar),
        now=size(wear.now_mm, dials),
        tests=f"{wear.tests} {'test' if wear.tests == 1 else 'tests'}",
    )
    if wear.since:
        words = said("wear_since", wear=words, since=wear.since)
    if wear.least_mm is None:
        return said("wear_no_least", wear=words)
    least = size(wear.least_mm, dials)
    if wear.now_mm <= wear.least_mm:
        return said("wear_worn_out", wear=words, least=least)
    if wear.per_test_mm is None or wear.left is None:
        return said("wear_rate_unknown", wear=words, least=least)
    return said("wear_left", wear=words, least=least, per_test=size(wear.per_test_mm, dials), left=wear.left)


def _reach_mm(series: Series) -> float:
    values = [abs(value) for check in series.checks for value in (check.offset_mm, check.limit_mm)]
    values += [abs(end) for one in series.stretches if one.chart for end in (one.chart.lower, one.chart.upper)]
    return max(values) * _ROOM


def _line(check: Check, stretch: Stretch, place: int, reach_mm: float, dials: Dials) -> str:
    row = [" "] * (2 * _HALF + 1)

    def put(value_mm: float, sign: str) -> None:
        row[_HALF + round(value_mm / reach_mm * _HALF)] = sign

    put(0.0, "|")
    if stretch.chart is not None:
        put(stretch.chart.lower, "[")
        put(stretch.chart.upper, "]")
    put(-check.limit_mm, ":")
    put(check.limit_mm, ":")
    put(check.offset_mm, "X" if check.outside else "o")
    mark = "!" if place in stretch.signals else " "
    return f"{_named(check)} {''.join(row)} {mark} {offset(check.offset_mm, dials)}"


def _named(check: Check) -> str:
    """Number and day; the time of day stands in the log, and would cost the drawing its width."""
    return f"{check.number:>4} {check.date_time[:10]}"


def _wrapped(text: str) -> list[str]:
    return textwrap.wrap(text, _WIDTH, initial_indent="  ", subsequent_indent="  ")


def doubt_line(stretch: Stretch, dials: Dials) -> str:
    """What read the checks of a stretch, and the doubt of each of them: never one for all."""
    least, most = (doubt(end(one.uncertainty_mm for one in stretch.checks), dials) for end in (min, max))
    instruments = " or ".join(dict.fromkeys(f"{_ARTICLE[one.read_by]} {one.read_by}" for one in stretch.checks))
    return said("doubt", instrument=instruments, doubt=least if least == most else f"{least} to {most}")


def _limits(stretch: Stretch, dials: Dials) -> Iterator[str]:
    if stretch.chart is not None:
        chart = stretch.chart
        yield f"  mean {offset(chart.mean, dials)}"
        yield f"  scatter {offset(chart.lower, dials)} to {offset(chart.upper, dials)}"


def _steps(series: Series, dials: Dials, fewest: int) -> Iterator[str]:
    """The moving range: how far each check is from the one before, either way; never across a change."""
    values = [step for stretch in series.stretches for step in stretch.moving_ranges_mm]
    values += [stretch.chart.upper_moving_range for stretch in series.stretches if stretch.chart]
    reach_mm = max(values, default=0.0)
    yield "step from the check before, either way"
    for stretch in series.stretches:
        yield from _wrapped(stretch.began)
        for place, step_mm in enumerate(stretch.moving_ranges_mm, start=1):
            mark = "!" if place in stretch.jumps else " "
            row = _step_row(step_mm, stretch, reach_mm)
            yield f"{_named(stretch.checks[place])} {row} {mark} {size(step_mm, dials)}"
        if len(stretch.checks) == 1:
            yield "  one check: no step yet"
        elif stretch.chart is None:
            yield f"  no limit of the step yet: {len(stretch.checks)} checks, {fewest} are needed"
        else:
            yield f"  upper limit of the step {size(stretch.chart.upper_moving_range, dials)}"
    yield "  o step   ! more than scatter   ] upper limit of the step   | no step"


def _step_row(step_mm: float, stretch: Stretch, reach_mm: float) -> str:
    def place(value_mm: float) -> int:
        return round(value_mm / reach_mm * _STEP) if reach_mm else 0

    end = place(step_mm)
    row = ["|", *("-" if at < end else " " for at in range(1, _STEP + 1))]
    if stretch.chart is not None:
        row[place(stretch.chart.upper_moving_range)] = "]"
    row[end] = "o"
    return "".join(row)
