"""What a line names is on the list: no steady where none stands, no grease where nothing is greased."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of, words_of_all

# What a line says of a thing that not every shop has, and the need that must be listed then.
_NAMED = (
    ("steady", re.compile(r"\bpads of the steady\b|\bgreased pads\b", re.IGNORECASE)),
    ("grease", re.compile(r"\bgrease the (?:centre )?hole\b|\bwith grease\b", re.IGNORECASE)),
)
# What a hand does with a pen; a witness line and a number wanted later are drawn with nothing else.
_DRAWN = re.compile(r"(?:^|(?<=[.:] ))(?:Mark\b|Draw (?:a|two) (?:witness )?lines?\b)|\bwith the pen\b")
_PEN = "marker"


def on_the_list(sheet: Sheet) -> Iterator[Fault]:
    """No line, reason or message of a step names a tool that the list of this sheet does not have."""
    listed = {need.id for need in sheet.procedure.needs}
    for placed in sheet.steps:
        step = placed.step
        texts = [*step.text, *(line.value for line in step.settings), *(line.reason for line in step.settings)]
        texts += [line for caution in step.cautions for line in caution.avoid]
        words = words_of_all(texts, "X")
        for need, pattern in _NAMED:
            if need not in listed and (found := pattern.search(words)):
                yield Fault(placed.where, f'"{found[0].lower()}" is said, and {need} is not on the list')


def pen_at_hand(sheet: Sheet) -> Iterator[Fault]:
    """A step that marks or draws a line has the pen among its tools."""
    for placed in sheet.steps:
        if _PEN not in placed.step.tools and any(_DRAWN.search(words_of(text, "X")) for text in placed.step.text):
            yield Fault(placed.where, "a line is drawn or a piece marked, and no pen is among the tools of the step")
