"""A tailstock that cannot be set over: no paper of its lathe tells a move, and no other lathe lacks its move."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet

_TELLS_A_MOVE = re.compile(r"\b(?:the|a) move\b|\bmove the tailstock (?:toward|away)|^move$", re.IGNORECASE)
# Choices are laid out with all that they are not; derivations and terms speak of the trade at large.
_AT_LARGE = ("choice ", "derivation ", "glossary")
_KEYS = ("do", "id")  # words of the tree, which no page prints as they are


def tells_no_move(sheet: Sheet) -> Iterator[Fault]:
    """Where nothing moves the tailstock, nothing on the sheet asks for a move; elsewhere the table does."""
    fixed = sheet.shop.set_over == "none"
    tree = sheet.procedure
    for where, part in (("look-up table", tree.look_up), ("record", tree.record)):
        if part is not None and part.can_move == fixed:
            tells, can = ("a move", "cannot") if fixed else ("no move", "can")
            yield Fault(where, f"it tells {tells}, and this tailstock {can} be set over")
    if not fixed:
        return
    told = [(found.where, typed) for found, typed in zip(sheet.texts, sheet.typed, strict=True)]
    told += [(found.where, found.word) for found in sheet.words if found.field not in _KEYS]
    for where, words in told:
        if not where.startswith(_AT_LARGE) and _TELLS_A_MOVE.search(words):
            yield Fault(where, f'this tailstock cannot be set over, and the sheet says "{words}"')
