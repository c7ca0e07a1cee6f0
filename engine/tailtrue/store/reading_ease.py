"""Whether texts can be read at a machine: orders that begin with what to do, no vague words, short sentences."""

import re
from collections.abc import Iterable, Iterator

from tailtrue.errors import Problem
from tailtrue.store.knowledge import StepText
from tailtrue.tables import Table
from tailtrue.wording import Wording

# ASD-STE100 allows twenty words where something is to be done and twenty-five where something is told. What stands on the
# sheet is read at the machine, so the lower one holds for all of it; the higher one holds for reasons and hints.
MOST_WORDS, MOST_IN_REASON = 20, 25
VERBS, VAGUE = "words/verbs", "words/vague"
_SENTENCE = re.compile(r"(?<=[.!?])\s+")

# Place of a text, what it belongs to, and the text.
Placed = tuple[str, str, Wording]


def sentences(text: str) -> list[str]:
    """The sentences of a text.

    >>> sentences("Stop the spindle. Is it still?")
    ['Stop the spindle.', 'Is it still?']
    """
    return _SENTENCE.split(text)


def first_word(line: str) -> str:
    """The word that a line begins with, in small letters.

    >>> first_word("Stop: isolate the lathe.")
    'stop'
    """
    return re.split(r"[\s,.:]", line.strip(), maxsplit=1)[0].lower()


def order_problems(steps: Iterable[StepText], verbs: Table) -> Iterator[Problem]:
    """Lines of steps that do not begin with an order, or with the case that one is for."""
    known = {row.text("word") for row in verbs}
    for step in steps:
        for line in step.sentences:
            first = first_word(line.words)
            if first not in known:
                do = "begin with what to do; a new verb goes into words/verbs.csv"
                yield Problem(step.where, line.words[:60], f"'{first}' is not the beginning of an order", do)


def second_orders(steps: Iterable[StepText], verbs: Table) -> Iterator[Problem]:
    """Sentences with a second order in them: read with a tool in the hand, its first half is done and the rest is lost."""
    orders = "|".join(re.escape(row.text("word")) for row in verbs if row.text("begins") == "order")
    # A word that is a thing as well as an order (file, bore, dog) is an order where something follows that it is done to.
    second = re.compile(
        rf"(?:, then|, and then| and then) (?:{orders})\b"
        rf"|(?:,| and|, and|;) ({orders})(?= (?:the|it|a|an|its|them|your|after|before|by|off|again|one|each)\b)",
    )
    for step in steps:
        for line in step.sentences:
            if match := second.search(line.words):
                do = "one action a sentence: begin a new one here"
                yield Problem(step.where, line.words[:60], f"'{match[0].strip(', ')}' is a second order in one sentence", do)


def vague_problems(texts: Iterable[Placed], vague: Table) -> Iterator[Problem]:
    """Words that tell nobody what to do."""
    words = "|".join(re.escape(row.text("word")) for row in vague)
    found = re.compile(rf"\b(?:{words})\b", re.IGNORECASE)
    # From first letter to first letter, which is twice as quick: few texts get past it.
    may_be = re.compile(rf"(?:{words})\b")
    for where, said, text in texts:
        if may_be.search(text.words.lower()) and (match := found.search(text.words)):
            do = "say what is done, or how it is seen or felt"
            yield Problem(where, said, f"'{match[0]}' tells nobody what to do", do)


def long_sentences(texts: Iterable[Placed], most: int) -> Iterator[Problem]:
    """Sentences with more words than one takes in at a glance; a place for a fact counts as one word."""
    for where, said, text in texts:
        if len(text.words.split()) <= most:
            continue
        for sentence in sentences(text.words):
            if len(sentence.split()) > most:
                yield Problem(where, f"{said}: {sentence}", f"has more than {most} words", "say it in two sentences")
