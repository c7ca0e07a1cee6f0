"""A shop that saws by hand: nothing on the sheet speaks of a blade that runs by itself."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of

_SAW, _BY_HAND = "saw", re.compile(r"\bhacksaw\b", re.IGNORECASE)
_POWERED = re.compile(
    r"\brunning blade\b|\bblade snatches\b|\bsaw band\b|\bsaw arm\b|\bnoise of sawing\b|\bpower saw running\b", re.IGNORECASE
)


def hand_saw_is_no_machine(sheet: Sheet) -> Iterator[Fault]:
    """Where the saw of the list is a hacksaw, no message, line or thing to wear is that of a power saw."""
    names = [need.name for need in sheet.procedure.needs if need.id == _SAW]
    if not any(_BY_HAND.search(words_of(name)) for name in names):
        return
    for where, field, word in sheet.words:
        if field in ("hazard", "harm", "state", "title") and _POWERED.search(word):
            yield Fault(where, f'the saw is a hacksaw, and this speaks of a power saw: "{word}"')
    for found, typed in zip(sheet.texts, sheet.typed, strict=True):
        if _POWERED.search(typed):
            yield Fault(found.where, f'the saw is a hacksaw, and this speaks of a power saw: "{typed}"')
