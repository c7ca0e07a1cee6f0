"""Run-out and out of round: a bound finer than a rule reads has something that reads it, and a place to write it in."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in
from tailtrue.parts import Figure, Text

_WANDERS = re.compile(r"\brun-out\b|\bout of round\b", re.IGNORECASE)
_RULE_READS_MM = 1.0
_LENGTHS = frozenset({"mm", "in"})
_READS = frozenset({"caliper", "caliper-work", "indicator", "micrometer-bar", "micrometer-collars"})


def run_out_is_read(sheet: Sheet) -> Iterator[Fault]:
    """What must not wander by more than a rule tells is read at its step with something finer, and written down there."""
    for placed in sheet.steps:
        set_there = [one for line in placed.step.settings for one in _bounds(line.label, line.value)]
        checked = [one for check in placed.step.checks if check.limits is None for one in _bounds(check.text, check.text)]
        for bound in (set_there + checked)[:1]:
            if not (_READS | set(sheet.shop.instruments)) & set(placed.step.tools):
                yield Fault(placed.where, f"{bound.value:.3g} mm bounds a run-out, and no tool of the step reads it")
            if not any(blank.unit in _LENGTHS for check in placed.step.checks for blank in check.blanks):
                yield Fault(placed.where, f"{bound.value:.3g} mm bounds a run-out, and no reading is written down")
        for bound in checked:
            if not any(_WANDERS.search(blank.label) for check in placed.step.checks for blank in check.blanks):
                yield Fault(placed.where, f"{bound.value:.3g} mm bounds what is looked at, and no place is for it")


def _bounds(label: Text, value: Text) -> Iterator[Figure]:
    words = " ".join(piece for piece in label if isinstance(piece, str))
    if _WANDERS.search(words) and "at most" in words:
        yield from (one for one in figures_in(value) if one.unit == "mm" and one.value <= _RULE_READS_MM)
