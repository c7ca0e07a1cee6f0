"""What is held of the glossary: each form once, in order, said in short sentences, with its source."""

import re
from collections.abc import Collection, Iterator, Sequence

from tailtrue.errors import Problem
from tailtrue.given.knowledge_file import unknown_source
from tailtrue.store.knowledge import Term
from tailtrue.store.reading_ease import MOST_WORDS, long_sentences
from tailtrue.tables import source_keys
from tailtrue.wording import Wording

_DIGIT = re.compile(r"\d")


def glossary_problems(terms: Sequence[Term], sources: Collection[str]) -> Iterator[Problem]:
    """The faults of the glossary."""
    seen: dict[str, str] = {}
    for term in terms:
        file = term.file
        for form in term.forms:
            if (other := seen.setdefault(form.lower(), file.id)) != file.id:
                yield Problem(term.where, form, f"stands for '{other}' too", "leave it at one of them")
        for key in (key for written in file.sources for key in source_keys(written)):
            if key not in sources:
                yield Problem(term.where, file.id, *unknown_source(key))
        if _DIGIT.search(file.meaning):
            yield Problem(term.where, file.id, "a number is typed into its meaning", "say it without")
        yield from long_sentences([(term.where, file.id, Wording((file.meaning,)))], MOST_WORDS)
        if not file.meaning.endswith("."):
            yield Problem(term.where, file.id, "its meaning is no whole sentence", "end it with a full stop")
    names = [term.file.term.lower() for term in terms]
    for term, before in zip(terms[1:], names, strict=False):
        if term.file.term.lower() < before:
            yield Problem(term.where, term.file.term, f"stands after '{before}'", "keep the terms in order of the alphabet")
