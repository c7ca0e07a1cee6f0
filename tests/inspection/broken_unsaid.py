"""Sheets that hide what nobody said of a protection."""

from dataclasses import replace
from functools import cache

from tailtrue.parts import Text
from tailtrue.procedure import Finding

from .broken import breaks
from .changed import Job
from .sample import procedure, shop

_LABEL = "no-volt release"


@cache
def _job(level: str, *text: str) -> Job:
    """The sample of a lathe whose no-volt release nobody tried, with one finding more."""
    words: Text = text
    more = (Finding(level=level, text=words, sources=("gum:7",)),) if text else ()
    tree = procedure()
    return tree.model_copy(update={"findings": (*tree.findings, *more)}), replace(shop(), unsaid=(_LABEL,))


@breaks("V267", "findings")
def nothing_told_of_a_protection_that_nobody_tried() -> Job:
    return _job("attention")


@breaks("V267", "findings")
def told_as_a_note_only() -> Job:
    return _job("note", f"Not said: {_LABEL}. Say it in the lathe file.")


@breaks("V267", "findings")
def another_fact_told_in_its_place() -> Job:
    return _job("attention", "Not said: the swing over the cross slide. Say it in the lathe file.")
