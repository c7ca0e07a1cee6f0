"""What the files settle is said: no line leaves the reader to look up which of two cases is his."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of
from tailtrue.procedure import Phase

_LEFT_OPEN = re.compile(
    r"\bwhere the (?:list|table|line)[^.]* names?\b|\bthat the (?:list|table|line) says\b", re.IGNORECASE
)
_PASSED_OVER = re.compile(r"\bnext drill has a straight shank\b", re.IGNORECASE)
_LAST_ALONE = re.compile(r"\bfor the last drill alone\b", re.IGNORECASE)
_LAST_OF_THEM = re.compile(r"\bdrills with a taper shank, the last of the list\b", re.IGNORECASE)
_DRILL, _TAPER = re.compile(r"^drill, "), re.compile(r"^drill, taper shank\b")
_FAR_END = {"bush": re.compile(r"\bfit the bush\b", re.IGNORECASE), "tape": re.compile(r"\bwind the tape\b", re.IGNORECASE)}
_NO_FLUID, _BRUSHED = re.compile(r"\bdrill dry\b", re.IGNORECASE), re.compile(r"\bbrush on fluid\b", re.IGNORECASE)


def nothing_left_open(sheet: Sheet) -> Iterator[Fault]:
    """No line sends to a list for whether it holds; of bush and tape, oil and none, a line says what its row says."""
    for placed in sheet.steps:
        words = placed.words
        if found := _LEFT_OPEN.search(words):
            yield Fault(placed.where, f'"{found[0]}" leaves open what the files settle')
        rows = {words_of(line.label, "#"): words_of(line.value, "#") for line in placed.step.settings}
        for part, fitted in _FAR_END.items():
            if fitted.search(words) and not any(label.startswith(f"{part} on the far end") for label in rows):
                yield Fault(placed.where, f"a line fits the {part}, and no row gives its size")
        fluid = rows.get("cutting fluid")
        if fluid and (_BRUSHED if fluid.startswith("dry") else _NO_FLUID).search(words):
            yield Fault(placed.where, f"the row says {fluid}, and a line says otherwise")


def taper_shanks_in_their_turn(sheet: Sheet) -> Iterator[Fault]:
    """The step for taper shanks names the drills that it is for as the list of the phase has them."""
    for placed in sheet.steps:
        words, list_ = placed.words, _drills(placed.phase)
        tapers = sum(list_)
        at_end = list_ == sorted(list_)
        if _LAST_ALONE.search(words) and not (at_end and tapers == 1 < len(list_)):
            yield Fault(placed.where, "said of the last drill alone, and the list has other taper shanks or none")
        if _LAST_OF_THEM.search(words) and not (at_end and 1 < tapers < len(list_)):
            yield Fault(placed.where, "said of the last drills of the list, and their shanks are others there")
        if _PASSED_OVER.search(words) and at_end:
            yield Fault(placed.where, "left open which drills have a straight shank, and the list tells it")


def _drills(phase: Phase) -> list[bool]:
    """For each drill of the list in a phase, in order, whether its shank is a taper."""
    labels = [words_of(line.label, "#") for step in phase.steps for line in step.settings]
    return [_TAPER.match(label) is not None for label in labels if _DRILL.match(label)]
