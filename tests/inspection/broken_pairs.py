"""Sheets that give the ends of a band the wrong way round."""

from typing import Any

from tailtrue.parts import Figure

from .broken import breaks
from .changed import Job
from .sample import procedure, shop
from .sample_pieces import mm


def _end(name: str, value: float, bound: str, **changes: Any) -> Figure:
    return mm(name, value, "fit").model_copy(update={"bound": bound, **changes})


def _band(low: Figure, high: Figure, between: str = " to ") -> Job:
    """The sample with a band in its lead, both ends derived."""
    tree = procedure()
    first = tree.derivations[0]
    known = {one.fact for one in tree.derivations}
    new = dict.fromkeys(end.fact for end in (low, high) if end.fact not in known)
    derivations = (*tree.derivations, *(first.model_copy(update={"fact": name}) for name in new))
    return tree.model_copy(update={"lead": (*tree.lead, low, between, high, "."), "derivations": derivations}), shop()


@breaks("V462", "lead")
def most_before_least() -> Job:
    return _band(_end("play.wide", 0.04, "most"), _end("play.narrow", 0.03, "least"))


@breaks("V462", "lead")
def band_inverted() -> Job:
    return _band(_end("play.near", 0.0403, "least"), _end("play.far", 0.0397, "most"), " and ")


@breaks("V462", "lead")
def named_ends_inverted() -> Job:
    return _band(_end("play.least", 0.05, "nearest"), _end("play.largest", 0.04, "nearest"))


@breaks("V462", "lead")
def ends_in_two_kinds() -> Job:
    return _band(_end("play.near", 0.03, "least", rounding="size"), _end("play.far", 0.04, "most"))
