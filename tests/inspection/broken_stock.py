"""Sheets that buy too little, or do not say how much."""

from typing import Any

from .broken import breaks
from .changed import Job, with_sheet
from .sample import procedure
from .sample_pieces import figure, mm


def _with_cut(**changes: Any) -> Job:
    (first,) = procedure().cut_list
    return with_sheet(cut_list=(first.model_copy(update=changes),))


@breaks("V48", "cut list, bar")
def stock_as_long_as_what_is_sawn() -> Job:
    return _with_cut(buy=mm("bar.buy_length", 384.0))


@breaks("V48", "cut list, bar")
def stock_for_one_piece_of_two() -> Job:
    return _with_cut(count=2)


@breaks("V48", "cut list, bar")
def stock_without_its_mass() -> Job:
    return _with_cut(mass_to_buy=None)


@breaks("V48", "cut list, bar")
def stock_lighter_than_what_is_made_of_it() -> Job:
    return _with_cut(mass_finished=figure("bar.finished_mass", 1.2, "kg", "mass"))


@breaks("V48", "cut list, bar")
def stock_lighter_than_any_metal() -> Job:
    return _with_cut(
        mass_to_buy=figure("bar.buy_mass", 0.12, "kg", "mass"), mass_finished=figure("bar.finished_mass", 0.11, "kg", "mass")
    )


@breaks("V48", "cut list, bar")
def stock_in_grams_taken_for_kilograms() -> Job:
    return _with_cut(mass_to_buy=figure("bar.buy_mass", 1152.0, "kg", "mass"))


@breaks("V48", "cut list, bar")
def stock_weighed_in_pounds() -> Job:
    return _with_cut(mass_to_buy=figure("bar.buy_mass", 2.5, "lb", "mass"))


@breaks("V49", "need compound")
def compound_without_an_amount() -> Job:
    return _with_amount(())


@breaks("V49", "need compound")
def compound_that_comes_to_nothing() -> Job:
    return _with_amount((figure("consume.compound", 0.0, "ml", "ratio"),))


def _with_amount(amount: tuple[Any, ...]) -> Job:
    needs = procedure().needs
    return with_sheet(
        needs=tuple(need.model_copy(update={"amount": amount}) if need.id == "compound" else need for need in needs)
    )
