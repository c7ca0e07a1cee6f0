"""Sheets whose papers break what holds of every document: lists called out, limits, words of danger, review, walk-through."""

from typing import Any

from .broken import breaks
from .changed import Job, with_sheet
from .sample import procedure


def _start(**changes: Any) -> Job:
    card = procedure().card
    return with_sheet(card=card.model_copy(update={"start": card.start.model_copy(update=changes)}))


@breaks("V210", "card")
def start_called_out_without_an_end() -> Job:
    return _start(ends_with="Go on")


@breaks("V210", "card")
def start_called_out_without_the_key() -> Job:
    return _start(lines=procedure().card.start.lines[1:])


@breaks("V210", "card")
def start_called_out_with_an_answer_that_needs_no_look() -> Job:
    first, *rest = procedure().card.start.lines
    return _start(lines=(first.model_copy(update={"state": "checked"}), *rest))


@breaks("V210", "card")
def start_called_out_longer_than_it_is_read() -> Job:
    lines = procedure().card.start.lines
    return _start(lines=lines * 2)
