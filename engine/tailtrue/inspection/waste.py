"""Rags and chips: one bin for each, said alike everywhere on the sheet."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, at
from tailtrue.inspection.spelt import sentences_in
from tailtrue.parts import Text

_NAMED = re.compile(r"\b(?:chips|fines|swarf|rags?|wipes)\b", re.IGNORECASE)
_CHIPS, _RAGS = re.compile(r"\b(?:chips|fines|swarf)\b", re.IGNORECASE), re.compile(r"\b(?:rags?|wipes)\b", re.IGNORECASE)
_LIDDED = re.compile(r"\b(?:closed|lidded|covered|sealed)\b[^,]*\b(?:bins?|cans?)\b", re.IGNORECASE)
_OPEN = re.compile(r"\bopen\b[^,]*\b(?:bins?|cans?)\b", re.IGNORECASE)


def one_bin_for_each(sheet: Sheet) -> Iterator[Fault]:
    """Rags go under a lid, where no air feeds them; chips go in the open, where no gas gathers and water can leave."""
    for where, line in _orders(sheet):
        about = ""
        words = "".join([piece if isinstance(piece, str) else "X" for piece in line])
        for sentence in sentences_in(words) if _NAMED.search(words) else ():
            # "Put them in ..." is about what the sentence before it names.
            named = "chips" if _CHIPS.search(sentence) else "rags" if _RAGS.search(sentence) else ""
            about = named or about
            if about == "chips" and _LIDDED.search(sentence):
                yield Fault(where, "chips are sent into a closed bin here; wet light metal gives off gas in it")
            if about == "rags" and _OPEN.search(sentence):
                yield Fault(where, "rags are sent into an open bin here; they heat by themselves in it")


def _orders(sheet: Sheet) -> Iterator[tuple[str, Text]]:
    for where, caution in sheet.cautions:
        for line in caution.avoid:
            yield where, line
    for placed in sheet.steps:
        for line in placed.step.text:
            yield at(placed.step), line
    for one in sheet.procedure.sop.waste if sheet.procedure.sop else ():
        yield f"standing procedure, {one.id}", one.text
