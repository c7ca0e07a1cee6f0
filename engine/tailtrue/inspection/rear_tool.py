"""A tool at the rear of the work stands upside down, so that the spindle may go forward."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of

_FITTED = re.compile(r"\b(?:fit|set) (?:the|a) (?:[\w-]+ )?tool\b", re.IGNORECASE)
_UPSIDE_DOWN = re.compile(r"\bupside down\b", re.IGNORECASE)


def upside_down_at_the_rear(sheet: Sheet) -> Iterator[Fault]:
    """Each step that fits a turning tool says that it goes in upside down where it stands at the rear, and only there."""
    rear = sheet.shop.tool_side == "rear"
    for placed in sheet.steps:
        step = placed.step
        said = " ".join(words_of(text, "#") for text in (*step.text, *(line.value for line in step.settings)))
        if rear and _FITTED.search(said) and not _UPSIDE_DOWN.search(said):
            yield Fault(placed.where, "a tool is fitted at the rear, and nothing says that it goes in upside down")
        if not rear and _UPSIDE_DOWN.search(said):
            yield Fault(placed.where, "a tool at the front is told to go in upside down")
