"""Work in a collet is spoken of as work in a collet; what a hold needs beside its chuck is fitted by a line of its own."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet, at
from tailtrue.inspection.spelt import words_of_all

_COLLET, _KEY, _PAD = "grip-in-collet", "chuck-key", "face-pad"
# What lets the work go, or holds it otherwise.
_LET_GO = {"chuck-change", "mount-between-centres", "grip-in-chuck"}
_OF_JAWS = re.compile(r"\b(?:in|by|of|under) the jaws\b|\bchuck key\b", re.IGNORECASE)
# A part that a hold is made with, how a line fits it, and the line that must come after.
_FITTED = (
    (
        "spindle-bush",
        re.compile(r"\b(?:fit (?:the )?bush|wind the tape)\b", re.IGNORECASE),
        re.compile(r"\bslide the bar\b", re.IGNORECASE),
    ),
    (
        "jaw-strips",
        re.compile(r"\b(?:fit|lay)\b[^.]*\bstrips\b", re.IGNORECASE),
        re.compile(r"\btighten\b", re.IGNORECASE),
    ),
)


def said_of_the_collet(sheet: Sheet) -> Iterator[Fault]:
    """While a collet holds the work, no line, reason or caution speaks of jaws that hold it or of their key."""
    held = False
    for placed in sheet.worked:
        done = set(placed.step.activities)
        if _COLLET in done:
            held = True
        elif done & _LET_GO and "collet-key" not in placed.step.tools:
            held = False
        if held and (found := _OF_JAWS.search(_all_words(placed))):
            yield Fault(placed.where, f'"{found[0].lower()}" is said, and a collet holds the work')
        if held and _KEY in placed.step.tools:
            yield Fault(placed.where, "the key of a chuck is used, and a collet holds the work")


def fitted_by_a_line(sheet: Sheet) -> Iterator[Fault]:
    """Bush and strips of a hold are fitted by a line, before the bar goes in and before its jaws are tightened."""
    for placed in sheet.steps:
        words = placed.words
        for tool, fitting, after in _FITTED:
            if tool not in placed.step.tools:
                continue
            line, then = fitting.search(words), after.search(words)
            if line is None or (then is not None and then.start() < line.start()):
                yield Fault(placed.where, f"no line fits the {tool.replace('-', ' ')} before the bar is held")


def tightened_again(sheet: Sheet) -> Iterator[Fault]:
    """Behind the first cut on a blank gripped by skin or corners its jaws are drawn tight again, before the next cut."""
    for phase in sheet.procedure.phases:
        gripped = cut = False
        for step in phase.steps:
            done = set(step.activities)
            if _KEY in step.tools and "grip-in-chuck" in done and step.machine == "isolated":
                # A first grip and a second look alike: what was cut since the last is what counts.
                gripped, cut = "grip-uneven" in done or (gripped and not cut and "grip-on-band" not in done), False
            elif step.machine == "turning" and gripped:
                if cut:
                    yield Fault(at(step), "the blank was cut once, and nobody has tightened its jaws again")
                cut = True


def pad_pressed_again(sheet: Sheet) -> Iterator[Fault]:
    """A pad that the tailstock presses on a blank is pressed again when its jaws are drawn tight: the blank moves away."""
    for phase in sheet.procedure.phases:
        pressed = False
        for step in phase.steps:
            done = set(step.activities)
            if step.machine != "isolated" or "grip-in-chuck" not in done:
                continue
            pressed = "grip-on-band" not in done and (pressed or _PAD in step.tools)
            if pressed and "the pad on" not in words_of_all(step.text):
                yield Fault(at(step), "the jaws are drawn tight, and nobody presses the pad of the tailstock on again")


def _all_words(placed: Placed) -> str:
    step = placed.step
    texts = [*step.text, *(line.reason for line in step.settings), *(check.text for check in step.checks)]
    for caution in step.cautions:
        texts += [(caution.hazard,), *caution.avoid]
    return words_of_all(texts, "#")
