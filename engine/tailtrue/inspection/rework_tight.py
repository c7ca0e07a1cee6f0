"""A bore that is left tight and bonded: wide enough for a bond as read, proved by its own bar, and cut no more."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet, figures_in

_LOW, _LEAST, _FOUND, _MARGIN = "rework.tight_low", "rework.gap_least", "rework.gap_found", "rework.tight_margin"
_SLACK = 1e-6  # mm


def bonded_as_found(sheet: Sheet) -> Iterator[Fault]:
    """Every reading leaves a gap that a bond takes, told as it is; the bar slides through before anybody goes on."""
    for placed in sheet.steps:
        told = {one.fact: one.value for line in placed.step.settings for one in figures_in(line)}
        if _LOW in told:
            yield from _of(sheet, placed, told)


def _of(sheet: Sheet, placed: Placed, told: dict[str, float]) -> Iterator[Fault]:
    rework = sheet.shop.rework
    bar = sheet.shop.measured.get(rework.end, ()) if rework else ()
    if rework is None or not rework.readings or not bar:
        yield Fault(placed.where, "a bore is left tight, and readings of bore or bar are missing")
        return
    least, most = sheet.shop.fit_mm
    gaps = {_LEAST: min(rework.readings) - max(bar), _FOUND: max(rework.readings) - min(bar)}
    for fact, gap in gaps.items():
        if abs(told.get(fact, -1.0) - gap) > _SLACK:
            yield Fault(placed.where, f"the gap comes to {gap:.4f} mm, and not to what {fact} says")
    if told[_LOW] < max(bar) + least - _SLACK:
        yield Fault(placed.where, f"a bond takes a gap of {least:g} mm and more, and the smallest bore told leaves less")
    if not (min(rework.readings) >= told[_LOW] - _SLACK and gaps[_FOUND] <= most + _SLACK):
        yield Fault(placed.where, "the bore as read leaves a gap that no bond takes")
    if told.get(_MARGIN, 0.0) < 1:
        yield Fault(placed.where, "nothing says that this bond carries a tool that catches")
    if placed.step.hold is None or not placed.step.checks:
        yield Fault(placed.where, "nobody has to show that the bar slides through before work goes on")
    for other in sheet.steps:
        if other.step.machine == "turning":
            yield Fault(other.where, "the bore is left as it is, and something is cut on the same sheet")
