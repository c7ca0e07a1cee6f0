"""How long the collars of a bar will last, from the log: what a test takes off, what is left."""

from collections.abc import Iterable
from itertools import pairwise
from typing import NamedTuple

from tailtrue.calc.alignment import uses_left
from tailtrue.log.record import Record


class Wear(NamedTuple):
    """One bar: collar diameter now, least diameter, what one test takes off on diameter, tests left; None: not known.

    `since` is how many tests an indicator read after the diameter was last measured: each took something off as well.
    """

    bar: str
    tests: int
    now_mm: float
    least_mm: float | None
    per_test_mm: float | None
    left: int | None
    since: int = 0


def wear_of(records: Iterable[Record], new_collars_from_mm: float, least_mm: float | None = None) -> tuple[Wear, ...]:
    """The life of each bar, whichever lathe it was used on; a least diameter in the records goes before the given one.

    Bars whose collars an indicator alone has read, which tells no diameter, are left out.
    """
    by_bar: dict[str, list[Record]] = {}
    for record in sorted(records, key=lambda one: one.date_time):
        by_bar.setdefault(record.bar, []).append(record)
    return tuple(
        _wear(bar, _on_these_collars(found, new_collars_from_mm), least_mm)
        for bar, found in sorted(by_bar.items())
        if any(one.collar_diameter_after_mm is not None for one in found)
    )


def _on_these_collars(records: list[Record], new_collars_from_mm: float) -> list[Record]:
    start = 0
    for (_, before_mm), (place, after_mm) in pairwise(_measured(records)):
        if after_mm - before_mm >= new_collars_from_mm:
            start = place
    return records[start:]


def _measured(records: list[Record]) -> list[tuple[int, float]]:
    """Place and diameter of the tests whose collars were measured."""
    found = enumerate(one.collar_diameter_after_mm for one in records)
    return [(place, size) for place, size in found if size is not None]


def _wear(bar: str, records: list[Record], least_mm: float | None) -> Wear:
    measured = _measured(records)
    (first, new), (last, now) = measured[0], measured[-1]
    said = [one.collar_least_diameter_mm for one in records if one.collar_least_diameter_mm is not None]
    least = said[-1] if said else least_mm
    per_test = (new - now) / (last - first) if new > now else None
    since = len(records) - 1 - last
    left = None if least is None or per_test is None else max(0, uses_left(now, least, per_test) - since)
    return Wear(bar, len(records), now, least, per_test, left, since)
