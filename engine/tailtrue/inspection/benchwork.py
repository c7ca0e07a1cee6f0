"""Work at the bench and looks at small sizes: a bar that stands is clamped, a size has what reads it, a seat stays clean."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in

_UPRIGHT = re.compile(r"\bupright\b", re.IGNORECASE)
_CLAMPED = re.compile(r"\bclamp\b[^.]*\b(?:block|bench)\b|\bclamp the bar\b|\bclamp bar\b", re.IGNORECASE)
_TURNED_OVER = re.compile(r"\bturn the bar over\b", re.IGNORECASE)
_CLAMPED_AGAIN = re.compile(r"\bclamp\b", re.IGNORECASE)
_MARKED_ON_A_FACE = re.compile(r"\bmark\b[^.:]*\bface\b", re.IGNORECASE)
# Sizes that are told to a hundredth; a rule reads lengths.
_FINE = frozenset({"size", "tool"})
_READS = frozenset({"caliper-work", "bore-gauge", "micrometer-bar", "micrometer-collars"})


def standing_bar_clamped(sheet: Sheet) -> Iterator[Fault]:
    """A bar that stands upright is clamped in its block, and again once it has been turned over."""
    for placed in sheet.steps:
        words = placed.words
        if _UPRIGHT.search(words) and not _CLAMPED.search(words):
            yield Fault(placed.where, "the bar stands upright, and nothing clamps it")
        over = _TURNED_OVER.search(words)
        if over and not _CLAMPED_AGAIN.search(words, over.end()):
            yield Fault(placed.where, "the bar is turned over, and nothing clamps it again")


def looked_at_size_is_read(sheet: Sheet) -> Iterator[Fault]:
    """A size finer than a rule reads, told in a check and written down, has an instrument at its step."""
    known = _READS | set(sheet.shop.instruments)
    for placed in sheet.steps:
        if known & set(placed.step.tools):
            continue
        for check in placed.step.checks:
            told = [one for one in figures_in((check.text,)) if one.unit == "mm" and one.rounding in _FINE]
            if told and any(blank.unit in ("mm", "in") for blank in check.blanks):
                yield Fault(placed.where, f"{told[0].value:.3g} mm is to be found again, and no tool of the step reads it")


def seat_unmarked(sheet: Sheet) -> Iterator[Fault]:
    """Where a collar seats on a shoulder by its cut face, no step marks it on a face: a burr there seats it crooked."""
    if not any("mount-on-stub" in placed.step.activities for placed in sheet.steps):
        return
    for placed in sheet.steps:
        if "gauge-bore" in placed.step.activities and _MARKED_ON_A_FACE.search(placed.words):
            yield Fault(placed.where, "the collar is marked on a face that seats on the shoulder of the stub")
