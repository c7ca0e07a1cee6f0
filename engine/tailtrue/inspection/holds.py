"""Hold points: where work must stop until somebody releases it."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.procedure import Step

_TIMES = 2  # start and end of a wait


def named(sheet: Sheet) -> Iterator[Fault]:
    """A hold says who releases it and which step, at or before it, to go back to."""
    passed: set[str] = set()
    for placed in sheet.steps:
        passed.add(placed.step.id)
        hold = placed.step.hold
        if hold is None:
            continue
        if not hold.releases.strip():
            yield Fault(placed.where, "this hold does not say who releases it")
        if not hold.go_back_to:
            yield Fault(placed.where, "this hold does not say which step to go back to")
        elif hold.go_back_to not in passed:
            yield Fault(placed.where, f'this hold goes back to "{hold.go_back_to}", which is no step up to here')


def cured_before_turning(sheet: Sheet) -> Iterator[Fault]:
    """Bonded collars turn only after a wait with a hold, and every bonding begins the wait again."""
    skims = {placed.phase.number for placed in sheet.steps if "skim" in placed.step.activities}
    cured = bonded = False
    for placed in sheet.worked:
        step = placed.step
        bonded = bonded or "bond" in step.activities
        if step.hold is not None and ("cure-wait" in step.activities or _looked_over(sheet, step, bonded)):
            cured = True
        elif "bond" in step.activities:
            cured = False
        if step.machine == "turning" and placed.phase.number in skims and not cured:
            yield Fault(placed.where, "the collars turn without a hold that waits for the bond to cure")


def _looked_over(sheet: Sheet, step: Step, bonded: bool) -> bool:
    """Whether a bar that was bonded long ago is looked over here; a bond made on this very sheet must cure."""
    return sheet.shop.bar_exists and not bonded and "inspect-bar" in step.activities


def measured_before_boring(sheet: Sheet) -> Iterator[Fault]:
    """Nothing is bored before the bar itself has been measured, with a hold."""
    measured = False
    for placed in sheet.steps:
        step = placed.step
        if "measure-bar" in step.activities and step.hold is not None:
            measured = True
        if "bore" in step.activities and step.machine == "turning" and not measured:
            yield Fault(placed.where, "the bore is cut with no hold before it at which the bar is measured")


def wait_written(sheet: Sheet) -> Iterator[Fault]:
    """A wait has places for its start and its end."""
    for placed in sheet.steps:
        if "cure-wait" in placed.step.activities:
            blanks = sum(blank.count for check in placed.step.checks for blank in check.blanks)
            if blanks < _TIMES:
                yield Fault(placed.where, "this wait has no places to write down its start and its end")
