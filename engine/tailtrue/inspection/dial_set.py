"""A depth in divisions counts from somewhere: the work was touched and the dial set to zero with this very tool."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, at
from tailtrue.inspection.spelt import BY_TOP_SLIDE, DIVISIONS, words_of
from tailtrue.procedure import Step

_TOOL_FITTED = re.compile(r"\bfit (?:the|a) [^.]*\btool\b|\btip at centre height\b", re.IGNORECASE)
_ZERO = {
    "cross slide": re.compile(
        r"\btouch [^.]*\. Set the dial to zero\b|\bfirst bright line\. Read the dial\b|\bdial at the first bright line\b",
        re.IGNORECASE,
    ),
    "top slide": re.compile(r"\btouch [^.]*\. Set the dial of the top slide to zero\b", re.IGNORECASE),
}


def dial_zeroed(sheet: Sheet) -> Iterator[Fault]:
    """Before a depth in divisions of a dial, in its phase and with its tool, the work is touched and that dial zeroed."""
    for phase in sheet.procedure.phases:
        known: set[str] = set()
        for step in phase.steps:
            words = " ".join(words_of(text, "#") for text in step.text)
            *before, words = _TOOL_FITTED.split(words)
            if before:
                known.clear()
            known |= {dial for dial, said in _ZERO.items() if said.search(words)}
            for dial in _dials(step) - known:
                yield Fault(at(step), f"a depth is told in divisions, and nothing has set the dial of the {dial} to zero")


def _dials(step: Step) -> set[str]:
    """The dials whose divisions a step of cutting counts."""
    if step.machine != "turning":
        return set()
    counted = [words_of(line.label, "#") for line in step.settings if DIVISIONS.search(words_of(line.reason, "#"))]
    return {"top slide" if BY_TOP_SLIDE.search(label) else "cross slide" for label in counted}
