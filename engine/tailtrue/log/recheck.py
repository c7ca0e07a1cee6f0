"""When to check a lathe again, from its own history, and what a series says: drift, or noise."""

from collections.abc import Iterator
from datetime import date, timedelta
from itertools import pairwise
from math import floor
from typing import NamedTuple

from tailtrue.calc.control_chart import trend_slope
from tailtrue.calc.validity import OutOfRange
from tailtrue.log.rules import ChartRules, RecheckRules
from tailtrue.log.says import said
from tailtrue.log.series import FIRST, Series, Stretch
from tailtrue.log.wording import AWAY, TOWARD


class Recheck(NamedTuple):
    """How long to wait with the next check, at most, the day it falls on, and the reason."""

    days: int
    due: str
    why: str


def day_of(date_time: str) -> date:
    """The day of a moment.

    >>> day_of("2026-11-24T09:40")
    datetime.date(2026, 11, 24)
    """
    return date.fromisoformat(date_time[:10])


def next_check(series: Series, rules: RecheckRules) -> Recheck | None:
    """The longest time until the next check that this history allows; None without any check.

    A check is in order when it was not outside its limit and no sign of more than scatter.
    """
    days_of_checks = (day_of(check.date_time) for check in series.checks)
    found = list(zip(days_of_checks, _alarms(series), strict=True))
    if not found:
        return None
    last, alarm = found[-1]
    # From a move on the time runs anew.
    since = last if series.moved_since is None else day_of(series.moved_since)
    gaps = [((after - before).days, bad) for (before, _), (after, bad) in pairwise(found) if after > before]
    if alarm:
        led_here = gaps[-1][0] if gaps else rules.often_days
        why = rules.alarm_why if series.moved_since is None else rules.alarm_moved_why
        days = min(led_here * rules.share_after_alarm, rules.often_days)
        days = max(days, rules.shortest_days)
    elif len(found) < rules.often_until or not (quiet := [gap for gap, bad in gaps if not bad]):
        days, why = rules.often_days, rules.often_why
    else:
        days, why = min(quiet) * rules.times_quiet, rules.quiet_why
        # Ten checks in a week say no more than that the lathe stays for a week; a month was allowed before them.
        if days < rules.often_days:
            days, why = rules.often_days, rules.often_why
        if days > rules.longest_days:
            days, why = rules.longest_days, rules.longest_why
    whole = floor(days)
    return Recheck(whole, (since + timedelta(days=whole)).isoformat(), why)


def _alarms(series: Series) -> Iterator[bool]:
    for stretch in series.stretches:
        for place, check in enumerate(stretch.checks):
            yield place in stretch.signals or check.outside


def drift_or_noise(series: Series, rules: ChartRules) -> tuple[str, ...]:
    """What the latest stretch of a series says, in sentences; the last one with limits too where they differ."""
    if not series.stretches:
        return (said("none"),)
    latest = series.stretches[-1]
    charted = [stretch for stretch in series.stretches if stretch.chart is not None]
    lines = [*_of_latest_check(series), *_said(latest, rules)]
    if latest.chart is None and charted:
        lines += (said("before", sentence=f"{one[0].lower()}{one[1:]}") for one in _said(charted[-1], rules))
    return tuple(lines)


def when_again(again: Recheck) -> str:
    """The next check in a sentence."""
    return said("again", days=again.days, day=again.due, why=again.why)


def _of_latest_check(series: Series) -> Iterator[str]:
    last = series.checks[-1]
    if series.moved_since is not None:
        yield said("moved", day=series.moved_since[:10])
    elif last.outside:
        yield said("outside", day=last.date_time[:10])


def _said(stretch: Stretch, rules: ChartRules) -> Iterator[str]:
    count = len(stretch.checks)
    began = stretch.began
    since = said("since_first", first=FIRST) if began == FIRST else said("since_change", change=began)
    if stretch.chart is None:
        yield said("few", checks=f"{count} {'check' if count == 1 else 'checks'}", since=since, fewest=rules.fewest)
        return
    days = [check.date_time[:10] for check in stretch.checks]
    if stretch.beyond:
        yield said("beyond", days=", ".join(days[place] for place in stretch.beyond))
    for place in stretch.jumps:
        yield said("jump", day=days[place - 1], next_day=days[place])
    if stretch.runs:
        yield said("run", run=rules.run, day=days[stretch.runs[-1]])
    if drifts := _drifts(stretch, rules.drift_probability):
        yield said("drift", way=drifts)
    if not stretch.signals and not drifts:
        yield said("noise", count=count, since=since)


def _drifts(stretch: Stretch, probability: float) -> str:
    """The side toward which the centre wanders when a straight drift stands out of the scatter; else nothing."""
    first = day_of(stretch.checks[0].date_time)
    days = [float((day_of(one.date_time) - first).days) for one in stretch.checks]
    try:
        trend = trend_slope(days, [one.offset_mm for one in stretch.checks], probability)
    except OutOfRange:  # all on one day
        return ""
    if not trend.differs_from_noise:
        return ""
    return TOWARD if trend.slope_mm > 0 else AWAY
