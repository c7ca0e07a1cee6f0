"""What is laid ready and bought: nothing that the sheet itself makes, nothing that the stock on hand gainsays."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in
from tailtrue.inspection.spelt import words_of

_BAR = "finished-bar"
# A sheet that does these makes the bar itself.
_MAKES_ENDS, _MEASURES = frozenset({"centre-drill", "centre-on-press"}), "measure-bar"
_STOCK = "collar.stock_length"
_SCRIBER = re.compile(r"(?<!no )\bscriber\b", re.IGNORECASE)
_SEAT = re.compile(r"\bmark\b[^.:]*\b(?:seats?|bar|edge of each collar)\b", re.IGNORECASE)


def made_here(sheet: Sheet) -> Iterator[Fault]:
    """A bar that this sheet makes is not among what is gathered before the work."""
    done = {activity for placed in sheet.steps for activity in placed.step.activities}
    if sheet.shop.bar_exists or not (done & _MAKES_ENDS and _MEASURES in done):
        return
    for need in sheet.procedure.needs:
        if need.id == _BAR:
            yield Fault(f"need {need.id}", "this sheet makes it, and it is to be laid ready before the work")


def stock_told(sheet: Sheet) -> Iterator[Fault]:
    """Where more is to be bought than the stock that is taken has, the cut list says that the stock will do."""
    stock = {figure.fact: figure.value for need in sheet.procedure.needs for figure in figures_in(need)}
    for cut in sheet.procedure.cut_list:
        short = cut.piece == "collar blank" and cut.buy is not None and _STOCK in stock and cut.buy.value > stock[_STOCK]
        if short and not any(one.fact == _STOCK for one in figures_in(cut.size)):
            yield Fault(f"cut list, {cut.piece}", "more is to be bought than the stock that is taken, and nothing says why")


def seats_not_scribed(sheet: Sheet) -> Iterator[Fault]:
    """Where a seat of the bar is marked, no scriber lies on the list of the step: a scribed line stands up."""
    names = {
        need.id: words_of(need.name) for need in sheet.procedure.needs
    }  # fmt: skip
    for placed in sheet.steps:
        lines = " ".join(words_of(text) for text in placed.step.text)
        if not (_MEASURES in placed.step.activities and _SEAT.search(lines)):
            continue
        for tool in placed.step.tools:
            if _SCRIBER.search(names.get(tool, "")):
                yield Fault(placed.where, "the bar is marked at its seat, and a scriber lies there for it")
