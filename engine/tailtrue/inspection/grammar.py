"""The grammar of conditions, notes and waits: what hides in a note is not done, and every IF has an otherwise."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import sentences_in, words_of

_CONDITION = re.compile(r"\b(?:IF|WHEN)\b(.*?),")
_MOST_JOINED = 1
# Verbs that set, move or hold something; as the first word of a note they are a step that nobody ticks. Behind some of
# them goes what makes a name or a figure of speech of the word.
_COMMAND = re.compile(
    r"(?:Back|Brush|Clamp|Clean|Close|Cut|Drill|Feed|Fit|Grease|Isolate|Keep|Lock|Loosen|Measure|Mount|Move|Oil|Press|Set"
    r"|Slacken|Stop|Take|Tighten|Turn|Unlock|Use|Wait|Wipe)\b(?!-| or\b| of\b|[^.]*:)"
)
_OTHERWISE = re.compile(r"\bIF a condition is not met, THEN go on\b")
_MISSED = re.compile(r"\bIF\b[^.]*\bnot written\b[^.]*, THEN\b")


def notes_command_nothing(sheet: Sheet) -> Iterator[Fault]:
    """What must be done stands in a line of its own, with a box, and not among the reasons."""
    for placed in sheet.steps:
        for sentence in sentences_in(words_of(placed.step.why, "X")):
            if _COMMAND.match(sentence):
                yield Fault(placed.where, f"a command hides in the reason of this step: {sentence}")


def conditions_single(sheet: Sheet) -> Iterator[Fault]:
    """A condition is not joined of AND and OR, nor of three parts."""
    for placed in sheet.steps:
        for text in placed.step.text:
            for condition in _CONDITION.findall(words_of(text, "X")):
                words = condition.lower().split()
                if words.count("and") + words.count("or") > _MOST_JOINED:
                    yield Fault(placed.where, f"a condition of more than two parts is misread: {condition.strip()}")


def otherwise_told(sheet: Sheet) -> Iterator[Fault]:
    """Where a step says IF, the sheet says what whoever does not meet it does."""
    asked = any("IF " in words_of(text, "X") for placed in sheet.steps for text in placed.step.text)
    if asked and not any(_OTHERWISE.search(words_of(text, "X")) for text in sheet.procedure.conventions):
        yield Fault("conventions", "a step says IF, and nothing says what to do when it is not so")


def missed_wait_told(sheet: Sheet) -> Iterator[Fault]:
    """A wait that nobody wrote down begins again, and its hold says so."""
    for placed in sheet.steps:
        if "cure-wait" in placed.step.activities and not (
            placed.step.hold and _MISSED.search(words_of(placed.step.hold.text, "X"))
        ):
            yield Fault(placed.where, "nothing says what to do when the time of this wait was not written down")
