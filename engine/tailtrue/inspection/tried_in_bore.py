"""Whether the bar is tried in a bore or kept away from it is said, and left to nobody."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet

_TRIED, _AWAY = re.compile(r"\btry the bar\b", re.IGNORECASE), re.compile(r"\bbar away from the bore\b", re.IGNORECASE)
_ASKED = re.compile(r"\bIF the table says that the bar\b", re.IGNORECASE)


def as_it_fits(sheet: Sheet) -> Iterator[Fault]:
    """A bore smaller than its bar never meets it cold; a larger one is tried; no line asks which it is."""
    for found in sheet.said(_ASKED):
        yield Fault(found.where, "the way of fixing is settled, and the line asks whether the bar goes in")
    tight = sheet.shop.fit_mm[0] < 0
    for found in sheet.said(_TRIED if tight else _AWAY):
        if tight:
            yield Fault(found.where, "the bore is smaller than the bar, and the bar is tried in it")
        else:
            yield Fault(found.where, "the bar is to slide through, and is kept away from the bore")
