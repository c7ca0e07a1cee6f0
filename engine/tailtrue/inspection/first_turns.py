"""A new grip: hands look at it before power comes back, and its first turns are slow."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet

# What holds the work when the spindle turns.
_GRIPS = frozenset(
    {
        "grip-in-chuck", "grip-in-collet", "grip-in-soft-jaws", "grip-uneven", "mount-on-stub", "plug-in-jaws",
        "clamp-to-faceplate", "mount-between-centres",
    }
)  # fmt: skip
_CHECK = "start-check"
_POWER = re.compile(r"\brestore power\b", re.IGNORECASE)
_HANDS = re.compile(r"\b(?:tug|touch|turn the spindle by hand)\b", re.IGNORECASE)
_SLOWEST = re.compile(r"\bslowest speed\b", re.IGNORECASE)
_KEPT = re.compile(r"\bas it sits\b", re.IGNORECASE)
_FIRST = re.compile(r"\bfirst turns\b", re.IGNORECASE)


def hands_before_power(sheet: Sheet) -> Iterator[Fault]:
    """From the line that restores power to the end of its start check no line sends a hand to work, keys or spindle."""
    live = False
    for placed in sheet.worked:
        if placed.step.machine != "stopped":
            live = False
            continue
        words = placed.words_alone
        power = _POWER.search(words)
        behind = words if live else words[power.end() :] if power else ""
        if found := _HANDS.search(behind):
            yield Fault(placed.where, f'"{found[0].lower()}" stands behind the line that restores power')
        live = (live or power is not None) and _CHECK not in placed.step.activities


def slow_at_first(sheet: Sheet) -> Iterator[Fault]:
    """The start check of work that was gripped anew tells the slowest speed for its first turns."""
    new = checked = slow = False
    for placed in sheet.worked:
        does, words = set(placed.step.activities), placed.words_alone
        if placed.step.machine == "turning":
            if new and checked and not slow:
                yield Fault(placed.where, "a new grip turns, and no start check has its first turns at the slowest speed")
            new = False
        elif _GRIPS & does and not _KEPT.search(words):
            new, checked, slow = True, False, False
        elif _CHECK in does:
            checked = True
            slow = slow or (_SLOWEST.search(words) is not None and _FIRST.search(words) is not None)
