"""The order of lines inside a step: the quill is locked behind its setting, a tool is used before the next is fetched."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of

_SET = re.compile(
    r"\bset (?:it|the quill) (?:again )?without end shake|\buntil the end shake is just gone|\btake up what end shake",
    re.IGNORECASE,
)
_LOCKED = re.compile(r"\block (?:it|the quill)\b", re.IGNORECASE)
_NEXT = re.compile(r"\bgo back to step \S+ for the next one\b", re.IGNORECASE)
_WORKS = re.compile(r"\b(?:feed in|feed by hand|ease off)\b", re.IGNORECASE)


def quill_locked(sheet: Sheet) -> Iterator[Fault]:
    """The line that takes up end shake locks the quill: what is left slack backs off at the next start."""
    for placed in sheet.steps:
        for line in (words_of(text) for text in placed.step.text):
            shake = _SET.search(line)
            if shake and not _LOCKED.search(line, shake.end()):
                yield Fault(placed.where, "end shake is taken up with the quill, and the line does not lock it")


def used_before_the_next(sheet: Sheet) -> Iterator[Fault]:
    """Lines are worked down the page: what sends back for the next tool stands behind all that is done with this one."""
    for placed in sheet.steps:
        sent = False
        for line in (words_of(text, "X") for text in placed.step.text):
            if sent and _WORKS.search(line):
                yield Fault(placed.where, "the line before sends back for the next tool, and this one has not cut yet")
            sent = sent or _NEXT.search(line) is not None
