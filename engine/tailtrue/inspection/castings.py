"""A sheet with cast blanks says who may melt metal, where, and what stops it."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet

_CAST = frozenset({"inspect-casting", "pour-metal"})
_SAID = {
    "that a trained person melts and pours": re.compile(r"\btrained (?:founder|in molten metal)\b", re.IGNORECASE),
    "that the area is set up for it": re.compile(r"\barea (?:is )?set up for\b", re.IGNORECASE),
    "that bare concrete stops it": re.compile(r"\bSTOP where\b[^.]*\bbare concrete\b"),
    "that damp and rain stop it": re.compile(r"\bSTOP where\b[^.]*\bdamp\b[^.]*\brain\b"),
    "that a missing dry ingot mould stops it": re.compile(r"\bSTOP where no dry ingot mould\b"),
    "that incomplete clothing stops it": re.compile(r"\bSTOP where\b[^.]*\bclothing is not complete\b"),
    "that unknown metal stops it": re.compile(r"\bSTOP where\b[^.]*\b(?:metal|scrap) is not known\b"),
    "that nobody does it alone": re.compile(r"\bSTOP where\b[^.]*\balone\b"),
    "that the rules of insurer and fire come first": re.compile(r"\binsurer\b[^.]*\bfire\b", re.IGNORECASE),
    "that bar does the same job": re.compile(r"\bbar does the same job\b"),
}


def deferred_to_a_founder(sheet: Sheet) -> Iterator[Fault]:
    """Wherever a cast blank is used, each line that keeps others from molten metal stands on the sheet."""
    cast = [placed for placed in sheet.steps if _CAST & set(placed.step.activities)]
    if cast:
        for what, words in _SAID.items():
            if not any(map(words.search, sheet.lines)):
                yield Fault(cast[0].where, f"blanks are cast, and nothing on this sheet says {what}")
