"""Hold points: where work must stop until somebody releases it."""

import re
from collections.abc import Iterator

from tailtrue.inspection.activities import RELEASED_BY
from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, at
from tailtrue.inspection.spelt import words_of

_TIMES = 2  # start and end of a wait
_ON_TIME, _WAIT_ON = "cure-wait", re.compile(r"\bwait on\b")
_NEED_A_TRUE_GRIP = {"drill", "taper-shank-drill", "centre-drill", "bore", "facing"}


def named(sheet: Sheet) -> Iterator[Fault]:
    """A hold says who releases it and which step, at or before it, to go back to; one on time alone says to wait on."""
    passed: set[str] = set()
    for placed in sheet.steps:
        passed.add(placed.step.id)
        hold = placed.step.hold
        if hold is None:
            continue
        if not hold.releases.strip():
            yield Fault(placed.where, "this hold does not say who releases it")
        if _ON_TIME in placed.step.activities:
            if hold.go_back_to:
                yield Fault(
                    placed.where, f'this hold is on time, and goes back to "{hold.go_back_to}" instead of waiting on'
                )
            if not _WAIT_ON.search(words_of(hold.text)):
                yield Fault(placed.where, "this hold is on time, and does not say to wait on")
        elif not hold.go_back_to:
            yield Fault(placed.where, "this hold does not say which step to go back to")
        elif hold.go_back_to not in passed:
            yield Fault(placed.where, f'this hold goes back to "{hold.go_back_to}", which is no step up to here')


def fixed_before_turning(sheet: Sheet) -> Iterator[Fault]:
    """Collars turn only after the hold that belongs to how they were fixed, and fixing anew begins the wait again."""
    skims = {placed.phase.number for placed in sheet.steps if "skim" in placed.step.activities}
    waits: set[str] = set()
    ever = False
    for placed in sheet.worked:
        step = placed.step
        if step.hold is not None:
            waits -= set(step.activities)
            # A bar that was made long ago is looked over; a joint made on this very sheet has a hold of its own.
            ever = ever or (sheet.shop.bar_exists and "inspect-bar" in step.activities)
        for activity in set(step.activities) & RELEASED_BY.keys():
            ever = True
            waits.add(RELEASED_BY[activity])
        if step.machine == "turning" and placed.phase.number in skims and (waits or not ever):
            yield Fault(placed.where, "the collars turn without a hold at which the joint was found cured or sound")


def measured_before_boring(sheet: Sheet) -> Iterator[Fault]:
    """Nothing is bored before the bar itself has been measured, with a hold."""
    measured = False
    for placed in sheet.steps:
        step = placed.step
        if "measure-bar" in step.activities and step.hold is not None:
            measured = True
        if "bore" in step.activities and step.machine == "turning" and not measured:
            yield Fault(placed.where, "the bore is cut with no hold before it at which the bar is measured")


def held_true_before_boring(sheet: Sheet) -> Iterator[Fault]:
    """A blank first gripped on a draft, a skin or flats is gripped on a turned band before it is drilled or bored."""
    for phase in sheet.procedure.phases:
        uneven = turned = False
        for step in phase.steps:
            done = set(step.activities)
            if "grip-uneven" in done:
                uneven, turned = True, False
            elif "grip-on-band" in done:
                if uneven and not turned:
                    yield Fault(at(step), "the blank is gripped on a band that no step has turned")
                uneven = False
            elif uneven and step.machine == "turning":
                turned = True
            if uneven and done & _NEED_A_TRUE_GRIP:
                yield Fault(at(step), "the blank is worked while it is gripped on a draft, a skin or flats")


def wait_written(sheet: Sheet) -> Iterator[Fault]:
    """A wait has places for its start and its end."""
    for placed in sheet.steps:
        if "cure-wait" in placed.step.activities:
            blanks = sum(blank.count for check in placed.step.checks for blank in check.blanks)
            if blanks < _TIMES:
                yield Fault(placed.where, "this wait has no places to write down its start and its end")
