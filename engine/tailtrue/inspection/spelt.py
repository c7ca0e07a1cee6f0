"""Texts of the sheet as words, for rules that look for words in them, and words that several rules look for."""

import re
from collections.abc import Iterable

from tailtrue.parts import Figure, Text
from tailtrue.procedure import Step

STEP_NAMED = re.compile(r"\bstep (\d+\.\d+)")
BY_TOP_SLIDE = re.compile(r"\bdepth\b.*\btop slide\b", re.IGNORECASE)
DIVISIONS = re.compile(r"\bdivisions?\b", re.IGNORECASE)
_SENTENCE_ENDS = re.compile(r"(?<=[.!?])\s+")


def words_of(text: Iterable[str | Figure], figure: str = "") -> str:
    """The words of a text; `figure` stands in the place of each number.

    >>> words_of(("Wait ", Figure(fact="a.b", value=5.0, unit="s", rounding="time"), "."), "#")
    'Wait #.'
    """
    return "".join([piece if isinstance(piece, str) else figure for piece in text])


def words_of_all(texts: Iterable[Text], figure: str = "") -> str:
    """The words of several texts, one after the other."""
    return " ".join([words_of(text, figure) for text in texts])


def words_of_step(step: Step, figure: str = "") -> str:
    """The words of all lines of a step."""
    return words_of_all(step.text, figure)


def sentences_in(words: str) -> list[str]:
    """The sentences of a text.

    >>> sentences_in("Stop. Is it still? Isolate the lathe.")
    ['Stop.', 'Is it still?', 'Isolate the lathe.']
    """
    return _SENTENCE_ENDS.split(words)
