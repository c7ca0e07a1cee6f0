"""Sentences of steps: short, no typed number, and no repeat without an end."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import sentences_in, words_of
from tailtrue.parts import Figure, Text

MOST_WORDS = 20
_WORD = re.compile(r"\w")
_DIGIT = re.compile(r"\d")
_NUMBER = re.compile(r"\S*\d\S*")
_UNIT = (
    r"(?:mm|cm|µm|um|m|km|in|inch(?:es)?|ft|feet|thou|mil|rpm|rev(?:/min)?|1/min|m/min|ft/min|mm/rev|kN|N|Nm|MPa|kPa"
    r"|Pa|psi|kW|W|hp|kg|g|lbs?|oz|deg(?:rees?|C|F)?|°\s?[CF]?|%|percent|s|sec(?:onds?)?|min(?:utes?)?|h|hours?"
    r"|days?|millimet(?:re|er)s?|metres?|meters?|newtons?|watts?)"
)
_WITH_UNIT = re.compile(rf"\d[\s\u00a0\u202f-]*{_UNIT}(?![\w])")
_STEP = re.compile(r"\b(?:steps?|phases?)\s+\d+(?:\.\d+)*(?:\s*(?:to|and|or|,)\s*\d+(?:\.\d+)+)*", re.IGNORECASE)
_LEAST_LABEL = 3
_ONLY_A_NUMBER = re.compile(rf"[\d\s\u00a0.,/]*{_UNIT}?")


def _plain(text: Text, names: tuple[str, ...]) -> str:
    """The typed part of a text that holds digits, without references to steps and without names."""
    # A figure keeps its place with a mark that is neither digit nor letter.
    return _unnamed("".join([piece if isinstance(piece, str) else "\u25a1" for piece in text]), names)


def _unnamed(words: str, names: tuple[str, ...]) -> str:
    if not _DIGIT.search(words):
        return ""
    for name in names:
        words = words.replace(name, "\u25a1")
    return _STEP.sub("\u25a1", words)


def _labels(sheet: Sheet) -> tuple[str, ...]:
    """The user's own words. What is a number and nothing else is no name, wherever it was written."""
    theirs = (one for one in sheet.shop.labels if len(one) >= _LEAST_LABEL and not _ONLY_A_NUMBER.fullmatch(one))
    # A short word would else be taken out of the middle of a long one, and leave its numbers behind.
    return tuple(sorted(theirs, key=len, reverse=True))


def unit_comes_from_figure(sheet: Sheet) -> Iterator[Fault]:
    """A number with a unit is a figure, never typed."""
    names = (*_labels(sheet), *(name for phase in sheet.procedure.phases for name in phase.each))
    numbers = {words: typed for words in sheet.lines if (typed := _WITH_UNIT.search(_unnamed(words, names)))}
    for found, words in zip(sheet.texts, sheet.typed, strict=True):
        typed = numbers.get(words)
        if typed:
            yield Fault(found.where, f'the number "{typed[0]}" is typed into the text, so it is in one unit system only')


def no_bare_number(sheet: Sheet) -> Iterator[Fault]:
    """The sentences of a step hold no digit but those of another step or of a piece."""
    # A sheet may have a bare number; it is named as that of the sheet.
    labels = (f"sheet {sheet.procedure.title.number}", *_labels(sheet))
    for placed in sheet.steps:
        for sentence in placed.step.text:
            typed = _NUMBER.search(_plain(sentence, (*labels, *placed.phase.each)))
            if typed:
                yield Fault(placed.where, f'the sentence holds the typed number "{typed[0]}"')


def short_enough(sheet: Sheet) -> Iterator[Fault]:
    """Twenty words a sentence at most; a figure counts as one."""
    for placed in sheet.steps:
        for text in placed.step.text:
            words = "".join("1" if isinstance(piece, Figure) else piece for piece in text)
            for sentence in sentences_in(words):
                # What is not even so many with its dashes has not so many words.
                parts = sentence.split()
                count = sum(1 for word in parts if _WORD.search(word)) if len(parts) > MOST_WORDS else 0
                if count > MOST_WORDS:
                    yield Fault(placed.where, f"a sentence has {count} words, {MOST_WORDS} is the most: {sentence}")


def repeat_ends(sheet: Sheet) -> Iterator[Fault]:
    """Whoever is told to repeat is told how often at most."""
    for placed in sheet.steps:
        for text in placed.step.text:
            words = words_of(text)
            for sentence in sentences_in(words):
                if sentence.strip().lower().startswith("repeat") and "at most" not in sentence.lower():
                    yield Fault(placed.where, f"this repeat has no end, it does not say how often at most: {sentence}")
