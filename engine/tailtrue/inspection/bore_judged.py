"""A bore judged more than once: the same sizes are good each time, and what a line calls good no box turns down."""

from collections.abc import Iterator, Mapping

from tailtrue.inspection.each_piece import named
from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet, figures_in
from tailtrue.procedure import Phase

_GAUGED, _CUT = "gauge-bore", "bore"
_STILL_GOOD = "bore.usable_add"
_SEATS = {"collar 1": ("head",), "collar 2": ("tail",), "collar 3": ("middle", "tail")}
_SAME = 1e-6


def judged_alike(sheet: Sheet) -> Iterator[Fault]:
    """Each piece has one band wherever its bore is gauged, and from the gap that a bond takes on it is accepted."""
    for phase, steps in sheet.by_phase:
        cut = [placed.place for placed in steps if _CUT in placed.step.activities]
        # A hole that is gauged before it is bored is judged by what is left to bore. A kept bore is never cut.
        gauged = [one for one in steps[max(cut, default=0) :] if _GAUGED in one.step.activities and one.step.checks]
        if {"head", "tail"} <= set(sheet.shop.measured):
            yield from _banded(sheet, phase, gauged)
        elif any(map(_tells, gauged)):
            for placed in gauged:
                if not any(one.fact == _STILL_GOOD for one in figures_in(placed.step.checks)):
                    yield Fault(placed.where, "a tight bore is called good on this sheet, and this check does not say so")


def _tells(placed: Placed) -> bool:
    return any(one.fact == _STILL_GOOD for one in placed.figures)


def _banded(sheet: Sheet, phase: Phase, gauged: list[Placed]) -> Iterator[Fault]:
    first: dict[str, tuple[float, float]] = {}
    least = next((one.value for placed in gauged for one in placed.figures if one.fact == _STILL_GOOD), None)
    for placed in gauged:
        bands = _bands(placed, phase)
        for piece in phase.each:
            if piece not in bands:
                yield Fault(placed.where, f"the bore of {piece} is gauged, and nothing says between which sizes it is good")
                continue
            band = bands[piece]
            if max(abs(one - other) for one, other in zip(first.setdefault(piece, band), band, strict=True)) > _SAME:
                yield Fault(placed.where, f"the bore of {piece} is good within other sizes than where it was gauged before")
            if least is not None and band[0] > _largest(sheet.shop.measured, piece) + least + _SAME:
                yield Fault(placed.where, f"a bore of {piece} that a line calls good is not accepted")


def _bands(placed: Placed, phase: Phase) -> dict[str, tuple[float, float]]:
    bands: dict[str, tuple[float, float]] = {}
    for check in placed.step.checks:
        limits = check.limits
        if limits is not None and limits.low is not None and limits.high is not None:
            bands.update(dict.fromkeys(named(check, phase.each), (limits.low.value, limits.high.value)))
    return bands


def _largest(measured: Mapping[str, tuple[float, ...]], piece: str) -> float:
    return max(reading for seat in _SEATS.get(piece, ("head",)) for reading in measured.get(seat, (0.0,)))
