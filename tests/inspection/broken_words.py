"""Sheets that explain the wrong words, or explain them badly."""

from typing import Any

from tailtrue.parts import Term

from .broken import breaks
from .changed import Job, figure_of, with_sheet
from .sample import GLOSSARY, procedure
from .sample_pieces import figure
from .sample_record import record

_WHERE = "glossary"


def _explaining(*terms: Term) -> Job:
    return with_sheet(glossary=terms)


def _last(**changes: Any) -> Job:
    *rest, last = procedure().glossary
    return _explaining(*rest, last.model_copy(update=changes))


@breaks("V190", _WHERE)
def word_that_stands_nowhere() -> Job:
    return _last(seen_as="follow rest")


@breaks("V190", _WHERE)
def part_of_a_longer_word() -> Job:
    return _last(seen_as="ollar")


@breaks("V190", _WHERE)
def explained_twice() -> Job:
    return _explaining(*procedure().glossary, procedure().glossary[-1])


@breaks("V190", _WHERE)
def out_of_order() -> Job:
    return _explaining(*reversed(procedure().glossary))


@breaks("V190", _WHERE)
def number_typed_into_a_meaning() -> Job:
    return _last(meaning=("A ring, one of 2 on the bar.",))


@breaks("V190", _WHERE)
def number_in_a_meaning() -> Job:
    known = figure_of(figure("collar.width", 25.0, "mm", "length"), fact=procedure().derivations[0].fact)
    return _last(meaning=("A ring of width ", known, "."))


@breaks("V190", _WHERE)
def sentence_without_an_end() -> Job:
    return _last(meaning=("A ring " + "that is fixed on the bar and turned and " * 3 + "measured.",))


@breaks("V190", _WHERE)
def source_that_is_not_listed() -> Job:
    return _last(sources=("hearsay",))


@breaks("V190", _WHERE)
def no_source() -> Job:
    return _last(sources=())


@breaks("V190", "record")
def word_explained_that_the_record_does_not_say() -> Job:
    return with_sheet(record=record().model_copy(update={"glossary": GLOSSARY[:1]}))


@breaks("V190", "card")
def word_explained_that_the_card_does_not_say() -> Job:
    card = procedure().card
    assert card is not None
    return with_sheet(card=card.model_copy(update={"glossary": (GLOSSARY[0].model_copy(update={"seen_as": "apron"}),)}))
