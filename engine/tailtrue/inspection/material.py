"""What is bought: enough for what is sawn, heavier than what is made of it; how much is used up is told."""

from collections.abc import Iterator
from math import pi

from tailtrue.inspection.drawing import size
from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in

_SAME = 1e-6
# A saw cut, what a saw vice holds by itself, and the least that is sawn off the end of a bar.
_KERF_MM, _HELD_MM, _SLIVER_MM = 3.0, 40.0, 6.0
# No metal of this job is lighter or heavier; in kg/mm3.
_LIGHTEST, _HEAVIEST = 1.7e-6, 9.2e-6


def enough_is_bought(sheet: Sheet) -> Iterator[Fault]:
    """Each line of the cut list buys more than it saws and more than it makes, of a metal that there is."""
    for cut in sheet.procedure.cut_list:
        where = f"cut list, {cut.piece}"
        if cut.buy is None and cut.mass_to_buy is None and cut.mass_finished is not None:
            if not cut.mass_finished.value > 0:
                yield Fault(where, "what is made of the piece weighs nothing")
            continue  # pieces that lie there as they are: nothing is sawn from a length
        if cut.buy is None or cut.mass_to_buy is None or cut.mass_finished is None:
            yield Fault(where, "nothing says how much stock to buy and what it weighs")
            continue
        sawn = sum(figure.value for figure in figures_in(cut.saw_to))
        if cut.buy.unit != "mm" or not cut.buy.value > cut.count * sawn:
            yield Fault(where, f"{cut.buy.value:g} mm of stock leave no saw cut for {cut.count} times {sawn:g} mm")
        if cut.mass_to_buy.unit != "kg" or cut.mass_finished.unit != "kg":
            yield Fault(where, "a mass here is not in kg")
        elif not 0 < cut.mass_finished.value < cut.mass_to_buy.value:
            yield Fault(where, "what is made of the stock weighs as much as the stock, or nothing")
        else:
            yield from _of_a_metal(sheet, where, cut.buy.value, cut.mass_to_buy.value)


def _of_a_metal(sheet: Sheet, where: str, length: float, mass: float) -> Iterator[Fault]:
    """A cylinder as thick as the bar weighs no more; one far thicker than the collars weighs no less."""
    bar, collar = size(sheet, "bar.diameter"), size(sheet, "collar.diameter")
    if bar is None or collar is None:
        return  # told by the rule on missing dimensions
    # Products, not powers: a wild size must come out as a fault, and a power of it has no result.
    least, most = _LIGHTEST * pi / 4 * bar * bar * length, _HEAVIEST * pi * collar * collar * length
    if not least * (1 - _SAME) <= mass <= most:
        yield Fault(where, f"no metal {length:g} mm long and as thick as this job needs weighs {mass:g} kg")


def use_is_told(sheet: Sheet) -> Iterator[Fault]:
    """What is used up says how much of it, and more than nothing."""
    for need in sheet.procedure.needs:
        if need.kind == "consumable":
            amounts = list(figures_in(need.amount))
            if not amounts or not all(figure.value > 0 for figure in amounts):
                yield Fault(f"need {need.id}", "this is used up, and nothing says how much of it is needed")


def held_in_the_saw(sheet: Sheet) -> Iterator[Fault]:
    """The vice holds enough at the last cut or is packed, what is bought allows for it, and no cut takes a sliver off."""
    stock = {figure.fact: figure.value for need in sheet.procedure.needs for figure in figures_in(need)}
    for cut in sheet.procedure.cut_list:
        sawn = sum(figure.value for figure in figures_in(cut.saw_to))
        if cut.buy is None:
            continue
        if cut.piece == "bar":
            over = stock["bar.stock_length"] - sawn if "bar.stock_length" in stock else None
            if over is not None and not over >= _SLIVER_MM - _SAME:
                yield Fault(f"cut list, {cut.piece}", f"{over:.3g} mm is sawn off, which is no more than the blade wanders")
            continue
        if not cut.buy.value >= cut.count * (sawn + _KERF_MM) + _HELD_MM - _SAME:
            yield Fault(f"cut list, {cut.piece}", "what is bought leaves too little in the vice at the last cut")
        if cut.piece != "collar blank" or "collar.stock_length" not in stock:
            continue
        left = stock["collar.stock_length"] - cut.count * (sawn + _KERF_MM)
        said = any(
            "packing" in piece
            for placed in sheet.steps
            if "saw-collar-stock" in placed.step.activities
            for line in placed.step.settings
            for piece in line.reason
            if isinstance(piece, str)
        )
        if 0 < left < _HELD_MM - _SAME and not said:
            yield Fault(
                f"cut list, {cut.piece}", f"the last cut leaves {left:.3g} mm in the vice, and nothing says to pack it"
            )
