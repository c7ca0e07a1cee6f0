"""How far a tailstock was set over is read on something that shows so much, in numbers that somebody can count."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet

_AMOUNT, _TURNS, _OVER = "setover.amount", "setover.turns", "setover.divisions_over"
_MOVES = {"set-over", "set-back"}


def shown_in_turns(sheet: Sheet) -> Iterator[Fault]:
    """A set-over is told in whole turns of a needle that travels so far, and divisions over; else a caliper is at hand."""
    for placed in sheet.steps:
        done = set(placed.step.activities)
        if "move-tailstock" not in done or not done & _MOVES or _AMOUNT not in placed.told:
            continue
        if _TURNS not in placed.told:
            if "caliper" not in placed.step.tools:
                yield Fault(placed.where, "nothing shows the set-over: neither turns of a needle nor a caliper")
            continue
        yield from (Fault(placed.where, what) for what in _counted(sheet, placed))


def _counted(sheet: Sheet, placed: Placed) -> Iterator[str]:
    shop, told = sheet.shop, placed.told
    division, turn, travel = shop.indicator_division_mm, shop.indicator_turn_mm, shop.indicator_travel_mm
    if division is None or turn is None or travel is None:
        yield "turns of a needle are counted, and nobody gave its turn, division and travel"
        return
    if not told[_AMOUNT] < travel:
        yield f"the plunger travels {travel:.4g} mm, and {told[_AMOUNT]:.4g} mm are read on it"
    over = told.get(_OVER, 0.0) * division
    if not 0 <= over < turn:
        yield f"{told.get(_OVER, 0.0):g} divisions are to be counted, and one turn has {turn / division:.4g}"
    if not abs(told[_TURNS] * turn + over - told[_AMOUNT]) <= division:
        yield f"turns and divisions come to {told[_TURNS] * turn + over:.4g} mm, the set-over is {told[_AMOUNT]:.4g} mm"
