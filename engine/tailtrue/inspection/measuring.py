"""Measured sizes: a band that makes sense, an instrument that can judge it, and a place to write the reading in."""

from collections.abc import Iterator
from math import isfinite

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet
from tailtrue.parts import Check, Figure


def _limited(sheet: Sheet) -> Iterator[tuple[Placed, Check, Figure | None, Figure | None]]:
    for placed in sheet.steps:
        for check in placed.step.checks:
            if check.limits is not None:
                yield placed, check, check.limits.low, check.limits.high


def band_makes_sense(sheet: Sheet) -> Iterator[Fault]:
    """A band has at least one side, and its low side is the lower one."""
    for placed, _, low, high in _limited(sheet):
        if low is None and high is None:
            yield Fault(placed.where, "a check has limits and neither of them is given")
        elif low is not None and high is not None:
            if low.unit != high.unit:
                yield Fault(placed.where, f"the limits of a check are in two units, {low.unit} and {high.unit}")
            elif not low.value < high.value:
                yield Fault(placed.where, f"the low limit {low.value:g} is not below the high limit {high.value:g}")


def instrument_covers(sheet: Sheet) -> Iterator[Fault]:
    """A limited size is measured with an instrument of the shop that reaches it."""
    for placed, check, low, high in _limited(sheet):
        if check.instrument is None:
            yield Fault(placed.where, "a size with limits is checked and no instrument is named")
            continue
        reach = sheet.shop.instruments.get(check.instrument)
        if reach is None:
            yield Fault(placed.where, f'the shop has no instrument "{check.instrument}"')
            continue
        for limit in (low, high):
            if limit is None:
                continue
            if limit.unit != "mm":
                yield Fault(placed.where, f'"{check.instrument}" reads lengths, the limit is in {limit.unit}')
            elif not reach[0] <= limit.value <= reach[1]:
                what = f'"{check.instrument}" reads {reach[0]:g} mm to {reach[1]:g} mm'
                yield Fault(placed.where, f"{what}, which leaves out the limit {limit.value:g} mm")


def instrument_can_judge(sheet: Sheet) -> Iterator[Fault]:
    """The doubt of the reading is at most half the band, or at most the limit where there is only one."""
    for placed, check, low, high in _limited(sheet):
        doubt = _doubt(sheet, check)
        if doubt is None:
            yield Fault(placed.where, "nothing says how well a size with limits is measured")
            continue
        if low is not None and high is not None:
            most, of = (high.value - low.value) / 2, "half the band"
        else:
            most, of = abs(low.value if low else high.value if high else 0.0), "the limit"
        if check.uncertainty is not None and check.uncertainty.unit != (low or high or check.uncertainty).unit:
            yield Fault(placed.where, "the doubt of the reading and the limits are in two units")
        elif not (isfinite(doubt) and 0 < doubt <= most):
            yield Fault(placed.where, f"the reading is in doubt by {doubt:g} mm, and {of} is {most:g} mm")


def _doubt(sheet: Sheet, check: Check) -> float | None:
    if check.uncertainty is not None:
        return check.uncertainty.value
    if check.resolution is None:
        # What the shop knows of its instrument and the paper does not say helps nobody at the lathe.
        return None
    reach = sheet.shop.instruments.get(check.instrument or "")
    return reach[2] if reach else None


def reading_written(sheet: Sheet) -> Iterator[Fault]:
    """A limited size has a blank with a unit to write the reading in."""
    for placed, check, _, _ in _limited(sheet):
        if not any(blank.unit and blank.count >= 1 for blank in check.blanks):
            yield Fault(placed.where, "a size with limits has no blank with a unit to write it in")
