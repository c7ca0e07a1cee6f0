"""Collars of a bar on hand that outlast the sheet: what is accepted at the start bears every skim that comes after it."""

from collections.abc import Iterator
from itertools import takewhile

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet, figures_in
from tailtrue.inspection.spelt import words_of

_WORN, _USE = "skim.worn_out_at", "skim.use_per_visit"
# What sends somebody round again, and how often the collars are skimmed then.
_AGAIN = (("Repeat test", 1), ("skim both ways again", 2))
_SLACK_MM = 1e-6
# Ways to fix a collar that leave steel, or a slit, below its rim.
_STEEL_BELOW = frozenset({"set-screws", "axial-pin", "radial-pin", "split-clamp"})


def accepted_in_time(sheet: Sheet) -> Iterator[Fault]:
    """The least that is accepted is worn out, and what every phase that skims costs on top of it."""
    if not sheet.shop.bar_on_hand:
        return
    steps = list(sheet.steps)
    for place, placed in enumerate(steps):
        if "inspect-bar" in placed.step.activities:
            skims = {one.phase.number for one in steps[place:] if _skims(one)}
            yield from _accepted(sheet, placed, len(skims))


def measured_each_round(sheet: Sheet) -> Iterator[Fault]:
    """Whoever is sent round again measures the collars first, against the skims that come."""
    if not sheet.shop.bar_on_hand:
        return
    for placed in sheet.steps:
        said = " ".join(words_of(text) for text in placed.step.text)
        for again, skims in _AGAIN:
            if again in said:
                yield from _accepted(sheet, placed, skims)


def swapped_in_time(sheet: Sheet) -> Iterator[Fault]:
    """Between two phases that skim the collars are measured again."""
    if not sheet.shop.bar_on_hand:
        return
    last = ""
    lows: list[float] = []
    for placed in sheet.steps:
        lows += _lows(placed)
        if not _skims(placed):
            continue
        if last and placed.phase.number != last and not lows:
            yield Fault(placed.where, "the collars were skimmed before, and nobody measured what is left of them")
        if placed.phase.number != last:
            last, lows = placed.phase.number, []


def steel_not_met(sheet: Sheet) -> Iterator[Fault]:
    """Collars of a bar on hand are felt before they turn where steel may lie in them, and not cut below what was told."""
    shop = sheet.shop
    if not shop.bar_on_hand or not any(_skims(placed) for placed in sheet.steps):
        return
    told = {one.fact: one.value for placed in sheet.steps for one in figures_in(placed.step.settings)}
    if shop.worn_out_mm is not None and told.get(_WORN, 0.0) < shop.worn_out_mm - _SLACK_MM:
        yield Fault("sheet", f"the collars of this bar are told worn out at {shop.worn_out_mm:.4g} mm, and are cut below it")
    if shop.fixed_by in _STEEL_BELOW and shop.worn_out_mm is None:
        yield Fault("sheet", "steel lies in the collars of this bar, and nobody told how deep")
    if shop.fixed_by in _STEEL_BELOW or not shop.fixed_by:
        before = takewhile(lambda placed: not _skims(placed), sheet.steps)
        if not any("joint-check" in one.step.activities and one.step.machine == "isolated" for one in before):
            yield Fault("sheet", "steel may lie in the collars of this bar, and nobody feels their rims before they turn")


def _skims(placed: Placed) -> bool:
    return "skim" in placed.step.activities and placed.step.machine == "turning"


def _lows(placed: Placed) -> list[float]:
    """The least sizes of collars that a step accepts."""
    return [
        check.limits.low.value
        for check in placed.step.checks
        if check.limits is not None and check.limits.low is not None and check.instrument == "micrometer-collars"
    ]


def _accepted(sheet: Sheet, placed: Placed, skims: int) -> Iterator[Fault]:
    told = {one.fact: one.value for other in sheet.steps for one in figures_in(other.step.settings)}
    if _WORN not in told or _USE not in told:
        yield Fault(placed.where, "collars are accepted, and nothing says where they are worn out or what a skim costs")
        return
    due = told[_WORN] + skims * told[_USE]
    lows = _lows(placed)
    if not lows:
        yield Fault(placed.where, f"collars are skimmed after this, and no check accepts them from {due:.4g} mm up")
    for low in lows:
        if low < due - _SLACK_MM:
            yield Fault(placed.where, f"collars of {low:.4g} mm are accepted; {skims} times skimmed they need {due:.4g} mm")
