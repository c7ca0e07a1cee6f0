"""Back to a start from an isolated lathe: power comes back as a step of its own, before the start check."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.parts import Text

_BACK_TO_THE_CHECK = re.compile(r"\b(?:go back|again)\b[^.]*\bstart check\b", re.IGNORECASE)
_POWER = re.compile(r"\bpower\b", re.IGNORECASE)
_ISOLATED = re.compile(r"\bisolate\b", re.IGNORECASE)


def power_before_the_check(sheet: Sheet) -> Iterator[Fault]:
    """Who is sent back to a start check from an isolated lathe is sent over the step that brings power back."""
    for placed in sheet.steps:
        step = placed.step
        for text in (*step.text, *(line.reason for line in step.settings)):
            words = _joined(text)
            isolated = step.machine == "isolated" or _ISOLATED.search(words)
            if isolated and _BACK_TO_THE_CHECK.search(words) and not _POWER.search(words):
                yield Fault(placed.where, "work goes back to a start check from an isolated lathe, and no power comes back")


def _joined(text: Text) -> str:
    return "".join(piece if isinstance(piece, str) else "#" for piece in text)
