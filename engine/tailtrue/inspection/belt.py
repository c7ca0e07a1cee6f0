"""Speeds of a lathe: a belt is moved with the power off and its cover closed again; no speed while it turns."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet
from tailtrue.inspection.spelt import words_of

_CHECK = "start-check"
_SETS = re.compile(r"\b(?:set|move|shift)\b[^.]*\b(?:speed|belt)\b", re.IGNORECASE)
_ISOLATES = re.compile(r"\bisolate the lathe\b", re.IGNORECASE)
_POWER = re.compile(r"\b(?:restore power|bring power back)\b", re.IGNORECASE)
_CLOSES = re.compile(r"\bclose (?:all covers|the belt cover)\b", re.IGNORECASE)
_AGAIN = re.compile(r"\bstart check again\b", re.IGNORECASE)


def moved_without_power(sheet: Sheet) -> Iterator[Fault]:
    """On a belt lathe a line that sets a speed isolates the lathe first, and the cover is closed before power comes back."""
    for placed in sheet.steps if sheet.shop.belt else ():
        if "speed-change" not in placed.step.activities and placed.step.machine == "isolated":
            continue  # a press at the bench has a speed too
        lines = [words_of(text) for text in placed.step.text]
        for place, line in enumerate(lines):
            if (found := _SETS.search(line)) is None:
                continue
            isolated = _ISOLATES.search(line)
            if placed.step.machine != "isolated" and (isolated is None or isolated.start() > found.end()):
                yield Fault(placed.where, f'"{found[0]}": a belt is moved, and this line does not isolate the lathe first')
            behind = " ".join((line[found.end() :], *lines[place + 1 :]))
            power = _POWER.search(behind)
            if not _CLOSES.search(behind[: power.start()] if power else behind):
                yield Fault(placed.where, f'"{found[0]}": no line closes the belt cover before power comes back')


def set_in_a_start_check(sheet: Sheet) -> Iterator[Fault]:
    """A cut at another speed than the one before it has a start check between them, in a step of its own or in words."""
    before: float | None = None
    for placed in sheet.worked:
        if _CHECK in placed.step.activities:
            before = None
        speeds = _speeds(placed) if placed.step.machine == "turning" else ()
        if not speeds:
            continue
        if len({*speeds, *(() if before is None else (before,))}) > 1 and not _AGAIN.search(placed.words_alone):
            yield Fault(placed.where, "another speed is set here, and no start check stands before it turns at that speed")
        before = speeds[-1]


def _speeds(placed: Placed) -> tuple[float, ...]:
    return tuple(
        figure.value for line, figures in placed.set_there for figure in figures
        if figure.unit == "1/min" and figure in line.value
    )  # fmt: skip
