"""A sheet on which nothing turns speaks of no turning: no speeds, no limit of one, no depth, no wait that is not there."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in
from tailtrue.inspection.spelt import words_of

_PLATE, _SPEED = "speed-plate", "1/min"
_DEPTH = re.compile(r"\bdepth is per side\b|\bper side\b", re.IGNORECASE)
_WAITS = re.compile(r"\bwaits\b", re.IGNORECASE)
_TURNS = re.compile(r"\bwhile the work turns\b|\bbefore the tool meets\b", re.IGNORECASE)


def nothing_of_turning(sheet: Sheet) -> Iterator[Fault]:
    """No plate of speeds and no limit of a speed stands where the spindle never turns, and no trouble of a turning one."""
    if any(placed.step.machine == "turning" for placed in sheet.steps):
        return
    procedure = sheet.procedure
    if any(drawing.kind == _PLATE for drawing in procedure.drawings):
        yield Fault("drawings", "the speeds of the lathe are drawn, and nothing turns on this sheet")
    for row in procedure.limits:
        if any(figure.unit == _SPEED for figure in figures_in(row)):
            yield Fault("limits", f'"{row.label}" is a limit of a speed, and nothing turns on this sheet')
    for seen, do, _ in (row for row in procedure.if_it_goes_wrong if len(row) == 3):
        if _TURNS.search(f"{seen} {words_of(do)}"):
            yield Fault("if it goes wrong", f'"{seen}" is seen on a spindle that turns, and none does on this sheet')


def nothing_that_is_not_done(sheet: Sheet) -> Iterator[Fault]:
    """What a depth is, is told where one is set; that the waits run by themselves, where something waits."""
    procedure = sheet.procedure
    set_there = any(_DEPTH.search(words_of(line.label)) for placed in sheet.steps for line in placed.step.settings)
    notes = [line.label for line in procedure.card.notes] if procedure.card else []
    if not set_there and any(_DEPTH.search(words_of(text)) for text in (*procedure.conventions, *notes)):
        yield Fault("front", "it is told what a depth is, and none is set on this sheet")
    waits = any(placed.step.time and placed.step.time.waiting for placed in sheet.steps)
    if procedure.time and not waits and any(_WAITS.search(words_of(text)) for text in procedure.time.notes):
        yield Fault("time", "it is told what to do about the waits, and nothing waits on this sheet")
