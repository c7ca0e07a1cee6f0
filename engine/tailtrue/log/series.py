"""The checks of one lathe with one bar over time, cut into stretches in which the level was not changed on purpose.

Only tests as found are charted. A stretch ends where the tailstock was moved, and where the set-up is no longer the
same: readings before and after such a change cannot be compared.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

from tailtrue.calc.control_chart import IndividualsChart, individuals_chart, points_beyond, runs_on_one_side
from tailtrue.log.record import MICROMETER, Record
from tailtrue.log.rules import ChartRules, log_rules

FIRST = "first check"
_MOVED = "tailstock moved"


class Check(NamedTuple):
    """One test as found: where the tailstock centre stood, more than 0 toward the tool."""

    number: int
    date_time: str
    offset_mm: float
    uncertainty_mm: float
    limit_mm: float
    outside: bool
    read_by: str = MICROMETER


@dataclass(frozen=True)
class Stretch:
    """Checks at one level; limits only when there are enough of them."""

    began: str
    checks: tuple[Check, ...]
    chart: IndividualsChart | None
    beyond: tuple[int, ...] = ()
    jumps: tuple[int, ...] = ()
    runs: tuple[int, ...] = ()

    @property
    def signals(self) -> frozenset[int]:
        """Places of the checks that are more than scatter."""
        return frozenset((*self.beyond, *self.jumps, *self.runs))

    @property
    def moving_ranges_mm(self) -> tuple[float, ...]:
        """Step from each check to the next."""
        offsets = [one.offset_mm for one in self.checks]
        return tuple(abs(after - before) for before, after in pairwise(offsets))


@dataclass(frozen=True)
class Series:
    """One lathe with one bar: its stretches in the order of time, and what was left out of them with the reason.

    `moved_since` is the moment of the latest test as left with a move, when no check followed it.
    """

    lathe: str
    bar: str
    stretches: tuple[Stretch, ...]
    left_out: tuple[tuple[int, str], ...]
    moved_since: str | None
    records: tuple[tuple[int, Record], ...]

    @property
    def checks(self) -> tuple[Check, ...]:
        """Every check of every stretch."""
        return tuple(check for stretch in self.stretches for check in stretch.checks)


def gather(records: Iterable[tuple[int, Record]]) -> tuple[Series, ...]:
    """Series of each lathe and bar; records are put in the order of their dates."""
    by_pair: dict[tuple[str, str], list[tuple[int, Record]]] = {}
    for number, record in sorted(records, key=lambda one: (one[1].date_time, one[0])):
        by_pair.setdefault((record.lathe, record.bar), []).append((number, record))
    rules = log_rules().chart
    return tuple(_series(lathe, bar, found, rules) for (lathe, bar), found in sorted(by_pair.items()))


def _series(lathe: str, bar: str, records: list[tuple[int, Record]], rules: ChartRules) -> Series:
    stretches: list[Stretch] = []
    left_out: list[tuple[int, str]] = []
    checks: list[Check] = []
    began, moved = FIRST, ""
    before: Record | None = None
    for number, record in records:
        if record.state == "as left":
            moved = record.date_time if record.moves else moved
            continue
        if not record.quill_clamped:
            left_out.append((number, "the quill was not clamped"))
            continue
        news = [*([_MOVED] if moved else []), *(_changes(before, record, rules) if before else ())]
        if checks and news:
            stretches.append(_stretch(began, checks, rules))
            checks = []
            began = ", ".join(dict.fromkeys(news))
        checks.append(_check(number, record))
        before, moved = record, ""
    if checks:
        stretches.append(_stretch(began, checks, rules))
    return Series(lathe, bar, tuple(stretches), tuple(left_out), moved or None, tuple(records))


def _check(number: int, record: Record) -> Check:
    judged = record.judgement
    return Check(
        number,
        record.date_time,
        record.offset_mm,
        judged.move_uncertainty_mm,
        record.offset_limit_mm,
        judged.verdict == "outside",
        record.read_by,
    )


def _changes(before: Record, after: Record, rules: ChartRules) -> Iterator[str]:
    """What of the set-up is not as it was at the check before."""
    for name, label in rules.same.items():
        if getattr(before, name) != getattr(after, name):
            yield f"another {label}"
    for name, (label, within) in rules.near.items():
        if abs(getattr(before, name) - getattr(after, name)) > within:
            yield f"another {label}"


def _stretch(began: str, checks: list[Check], rules: ChartRules) -> Stretch:
    kept = tuple(checks)
    if len(kept) < rules.fewest:
        return Stretch(began, kept, None)
    offsets = [one.offset_mm for one in kept]
    chart = individuals_chart(offsets)
    plain = Stretch(began, kept, chart)
    steps = points_beyond(plain.moving_ranges_mm, 0.0, chart.upper_moving_range)
    return Stretch(
        began, kept, chart,
        beyond=points_beyond(offsets, chart.lower, chart.upper),
        jumps=tuple(place + 1 for place in steps),
        runs=runs_on_one_side(offsets, chart.mean, rules.run),
    )  # fmt: skip
