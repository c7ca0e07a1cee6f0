"""How long the collars of a bar will last, from the log: what a test takes off, what is left."""

from collections.abc import Iterable
from itertools import pairwise
from typing import NamedTuple

from tailtrue.calc.alignment import uses_left
from tailtrue.log.record import Record


class Wear(NamedTuple):
    """One bar: collar diameter now, least diameter, what one test takes off on diameter, tests left; None: not known."""

    bar: str
    tests: int
    now_mm: float
    least_mm: float | None
    per_test_mm: float | None
    left: int | None


def wear_of(records: Iterable[Record], new_collars_from_mm: float, least_mm: float | None = None) -> tuple[Wear, ...]:
    """The life of each bar, whichever lathe it was used on; a least diameter in the records goes before the given one."""
    by_bar: dict[str, list[Record]] = {}
    for record in sorted(records, key=lambda one: one.date_time):
        by_bar.setdefault(record.bar, []).append(record)
    return tuple(
        _wear(bar, _on_these_collars(found, new_collars_from_mm), least_mm) for bar, found in sorted(by_bar.items())
    )


def _on_these_collars(records: list[Record], new_collars_from_mm: float) -> list[Record]:
    start = 0
    for place, (before, after) in enumerate(pairwise(records), start=1):
        if after.collar_diameter_after_mm - before.collar_diameter_after_mm >= new_collars_from_mm:
            start = place
    return records[start:]


def _wear(bar: str, records: list[Record], least_mm: float | None) -> Wear:
    now = records[-1].collar_diameter_after_mm
    said = [one.collar_least_diameter_mm for one in records if one.collar_least_diameter_mm is not None]
    least = said[-1] if said else least_mm
    lost = records[0].collar_diameter_after_mm - now
    per_test = lost / (len(records) - 1) if lost > 0 else None
    left = None if least is None or per_test is None else uses_left(now, least, per_test)
    return Wear(bar, len(records), now, least, per_test, left)
