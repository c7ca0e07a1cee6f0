"""Texts of the sheet as words, for rules that look for words in them."""

from collections.abc import Iterable

from tailtrue.parts import Figure, Text
from tailtrue.procedure import Step


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
