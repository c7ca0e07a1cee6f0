"""The bar before what is set to it: in the jaws before the pads of a steady; its trial in a bore told from a burr."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of

_PADS = re.compile(r"\bpads to the bar\b", re.IGNORECASE)
_IN = re.compile(r"\b(?:put|lay|slide) the bar\b[^.]*\bchuck\b", re.IGNORECASE)
_TOUCH = re.compile(r"\bclose (?:them|the jaws)\b", re.IGNORECASE)
_READ = re.compile(r"\brun-out\b", re.IGNORECASE)
_TRIED = re.compile(r"\btry the bar in the bore\b", re.IGNORECASE)
_BURR = re.compile(r"\bfar edge\b[^.]*\bburr\b", re.IGNORECASE)
_FITS = re.compile(r"\bfit the [^.]*\btool\b|\bfit the tool\b", re.IGNORECASE)


def held_before_the_pads(sheet: Sheet) -> Iterator[Fault]:
    """The bar lies in jaws that touch it before pads are set to it, and what is read of it there has a limit."""
    for placed in sheet.steps:
        words = placed.words_alone
        pads = _PADS.search(words)
        if "steady-rest" not in placed.step.activities or pads is None:
            continue
        before = words[: pads.start()]
        held = _IN.search(before)
        if held is None or not _TOUCH.search(before[held.end() :]):
            yield Fault(placed.where, "the pads are set to a bar that no line has put into the chuck and gripped")
        for check in placed.step.checks:
            said = words_of(check.text)
            if _READ.search(said) and (check.limits is None or check.limits.high is None):
                yield Fault(placed.where, "a run-out is read, and nothing says how much is too much")


def chips_and_tool_isolated(sheet: Sheet) -> Iterator[Fault]:
    """Where one step clears chips and fits a tool, hands are at the work for long: the lathe is isolated."""
    for placed in sheet.steps:
        step = placed.step
        if "clear-chips" in step.activities and step.machine != "isolated" and _FITS.search(placed.words_alone):
            yield Fault(placed.where, "chips are cleared and a tool is fitted, and the lathe is not isolated")


def burr_is_no_tight_bore(sheet: Sheet) -> Iterator[Fault]:
    """A bar tried in a bore before its far edge is broken: the line says what a stop at that edge means."""
    for placed in sheet.steps:
        words = placed.words_alone
        if "gauge-bore" in placed.step.activities and _TRIED.search(words) and not _BURR.search(words):
            yield Fault(placed.where, "the bar is tried in a bore with a burr at its far edge, and no line tells of it")
