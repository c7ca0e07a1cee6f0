"""The spindle that was stopped, for whatever reason, is started again behind a start check alone."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet

_CHECK = "start-check"
_STOP = re.compile(r"\bstop the spindle\b", re.IGNORECASE)
# A stop to wind the tool back belongs to a pass: what the step cuts behind it starts the spindle once more.
_BETWEEN_PASSES = re.compile(r"\bstop the spindle before you wind\b[^.]*\.", re.IGNORECASE)
_CUTS_ON = re.compile(r"(?:^|[.:]\s+)(?:take|cut|repeat|turn|go on)\b", re.IGNORECASE)
_CHECKED = re.compile(r"\bstart check\b", re.IGNORECASE)


def checked_from_stopped(sheet: Sheet) -> Iterator[Fault]:
    """Behind a step that stops the spindle no step turns it before a start check of its own or in its words."""
    stopped_at = ""
    for placed in sheet.worked:
        if _CHECK in placed.step.activities:
            stopped_at = ""
        if placed.step.machine != "turning":
            continue
        if stopped_at and not _CHECKED.search(placed.words_alone):
            yield Fault(placed.where, f"{stopped_at} stops the spindle, and no start check stands before it turns again")
        stopped_at = placed.where if _STOP.search(placed.words_alone) else ""


def checked_between_passes(sheet: Sheet) -> Iterator[Fault]:
    """A step that stops between its passes has the start check made again before it cuts on."""
    for placed in sheet.worked:
        words = placed.words_alone
        found = _BETWEEN_PASSES.search(words)
        if placed.step.machine != "turning" or found is None:
            continue
        behind = words[found.end() :].strip()
        on = _CUTS_ON.search(behind)
        if on and not _CHECKED.search(behind[: on.start()]):
            yield Fault(placed.where, "the spindle is stopped between passes, and no start check stands before the next")
