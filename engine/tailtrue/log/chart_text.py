"""A series in the terminal: one line a check, the reading drawn across it."""

from collections.abc import Iterator

from tailtrue.given.quoting import harmless
from tailtrue.log.recheck import Recheck, drift_or_noise
from tailtrue.log.rules import LogRules
from tailtrue.log.series import Check, Series, Stretch
from tailtrue.log.wear import Wear
from tailtrue.log.wording import AWAY, TOWARD, offset, size
from tailtrue.render.numbers import Dials

_HALF = 20  # characters from the middle to one end
_ROOM = 1.1  # of the largest value on the scale


def chart_lines(series: Series, dials: Dials, rules: LogRules, again: Recheck | None) -> Iterator[str]:
    """The chart with its key, what it says, and when to check again."""
    yield f"{harmless(series.lathe)}, bar {harmless(series.bar)}: tailstock centre as found"
    if series.stretches:
        reach_mm = _reach_mm(series)
        yield f"{'':>24}{AWAY:<{_HALF}} {TOWARD:>{_HALF}}"
        for stretch in series.stretches:
            yield f"  {harmless(stretch.began)}"
            for place, check in enumerate(stretch.checks):
                yield _line(check, stretch, place, reach_mm, dials)
            yield from _limits(stretch, dials)
        yield "  o check   X check outside its limit   ! more than scatter   : limit   [ ] limits of scatter   | in line"
    for number, why in series.left_out:
        yield f"  record {number} is not charted: {why}"
    yield from drift_or_noise(series, rules.chart)
    if again is not None:
        yield f"Check again within {again.days} days, by {again.due}: {again.why}."
        yield f"Sooner {', '.join(rules.recheck.before)}."


def wear_line(wear: Wear, dials: Dials) -> str:
    """What is left of the collars of a bar, in a sentence."""
    words = f"Bar {harmless(wear.bar)}: collar {size(wear.now_mm, dials)} after {wear.tests} in the log"
    if wear.least_mm is None:
        return f"{words}. Its least diameter is not known; say it with --least, or in the records."
    words += f", least {size(wear.least_mm, dials)}"
    if wear.now_mm <= wear.least_mm:
        return f"{words}: worn out. Fit new collars before the next test."
    if wear.per_test_mm is None or wear.left is None:
        return f"{words}. What a test takes off is not known yet."
    return f"{words}, {size(wear.per_test_mm, dials)} off a test: good for about {wear.left} more."


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
    return f"{check.number:>5}  {check.date_time:<16} {''.join(row)} {mark} {offset(check.offset_mm, dials)}"


def _limits(stretch: Stretch, dials: Dials) -> Iterator[str]:
    if stretch.chart is not None:
        chart = stretch.chart
        yield (
            f"  mean {offset(chart.mean, dials)}; limits of scatter {offset(chart.lower, dials)} to "
            f"{offset(chart.upper, dials)}; largest step {size(chart.upper_moving_range, dials)}"
        )
