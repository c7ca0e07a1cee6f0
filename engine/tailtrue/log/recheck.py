"""When to check a lathe again, from its own history, and what a series says: drift, or noise."""

from collections.abc import Iterator
from datetime import date, timedelta
from itertools import pairwise
from math import floor
from typing import NamedTuple

from tailtrue.calc.control_chart import trend_slope
from tailtrue.calc.validity import OutOfRange
from tailtrue.log.rules import ChartRules, RecheckRules
from tailtrue.log.series import FIRST, Series, Stretch
from tailtrue.log.wording import AWAY, TOWARD

_PROBABILITY = 0.95


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
        days, why = min(led_here * rules.share_after_alarm, rules.often_days), rules.alarm_why
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
        return ("No test as found can be charted yet.",)
    latest = series.stretches[-1]
    charted = [stretch for stretch in series.stretches if stretch.chart is not None]
    said = [*_of_latest_check(series), *_said(latest, rules)]
    if latest.chart is None and charted:
        said += (f"Before that: {sentence[0].lower()}{sentence[1:]}" for sentence in _said(charted[-1], rules))
    return tuple(said)


def _of_latest_check(series: Series) -> Iterator[str]:
    last = series.checks[-1]
    if series.moved_since is not None:
        yield f"The tailstock was moved on {series.moved_since[:10]}; the next check as found begins a new stretch."
    elif last.outside:
        yield f"The latest check, of {last.date_time[:10]}, was outside its limit: bring the tailstock into line."


def _said(stretch: Stretch, rules: ChartRules) -> Iterator[str]:
    count = len(stretch.checks)
    since = f"since the {FIRST}" if stretch.began == FIRST else f"since a change ({stretch.began})"
    if stretch.chart is None:
        checks = "check" if count == 1 else "checks"
        yield (
            f"{count} {checks} {since}: no limits of scatter yet, for {rules.fewest} are needed. "
            "Compare each check with its limit alone."
        )
        return
    days = [check.date_time[:10] for check in stretch.checks]
    if stretch.beyond:
        yield (
            f"Checks beyond what scatter explains: {', '.join(days[place] for place in stretch.beyond)}. "
            "Look for a cause before you move anything."
        )
    for place in stretch.jumps:
        yield f"From {days[place - 1]} to {days[place]} the reading jumped by more than scatter explains."
    if stretch.runs:
        yield (
            f"{rules.run} checks or more in a row lie on one side of the mean, up to {days[stretch.runs[-1]]}: "
            "this is drift, not noise."
        )
    drifts = _drifts(stretch)
    if drifts:
        yield f"The centre wanders steadily {drifts}: this is drift, not noise."
    if not stretch.signals and not drifts:
        yield (
            f"The {count} checks {since} scatter about one level: noise. "
            "To move the tailstock for a check inside its limit only adds to it."
        )


def _drifts(stretch: Stretch) -> str:
    """The side toward which the centre wanders when a straight drift stands out of the scatter; else nothing."""
    first = day_of(stretch.checks[0].date_time)
    days = [float((day_of(one.date_time) - first).days) for one in stretch.checks]
    try:
        trend = trend_slope(days, [one.offset_mm for one in stretch.checks], _PROBABILITY)
    except OutOfRange:  # all on one day
        return ""
    if not trend.differs_from_noise:
        return ""
    return TOWARD if trend.slope_mm > 0 else AWAY
