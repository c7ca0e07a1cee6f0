"""A move of the tailstock: isolated before it, clamped, verified and held after it."""

from collections.abc import Iterator, Sequence

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, at
from tailtrue.procedure import Step


def bracketed(sheet: Sheet) -> Iterator[Fault]:
    """Isolate, move, re-clamp, verify, in one phase, with the lathe isolated all the way."""
    for phase in sheet.procedure.phases:
        for index, step in enumerate(phase.steps):
            # Clamping again and verifying touch the tailstock too; they close a move and are none of their own.
            if "move-tailstock" in step.activities and "verify-tailstock" not in step.activities:
                yield from _bracket(phase.steps, index)


def _bracket(steps: Sequence[Step], index: int) -> Iterator[Fault]:
    where = at(steps[index])
    isolated = [place for place in range(index) if steps[place].machine == "isolated"]
    if not isolated:
        yield Fault(where, "the tailstock is moved and no step before it in this phase isolates the lathe")
    clamped = _next(steps, index, "re-clamp")
    if clamped is None:
        yield Fault(where, "the tailstock is moved and never clamped again in this phase")
    verified = _next(steps, index + 1, "verify-tailstock")
    if verified is None:
        yield Fault(where, "the tailstock is moved and never verified in this phase")
    elif clamped is not None and verified < clamped:
        yield Fault(at(steps[verified]), "the tailstock is verified before it is clamped again")
    last = len(steps) - 1 if verified is None else verified
    for step in steps[isolated[-1] if isolated else index : last + 1]:
        if step.machine != "isolated":
            yield Fault(at(step), f"the lathe is not isolated between the move at {where} and its verification")


def _next(steps: Sequence[Step], start: int, activity: str) -> int | None:
    places = (place for place in range(start, len(steps)) if activity in steps[place].activities)
    return next(places, None)


def held_after_clamping(sheet: Sheet) -> Iterator[Fault]:
    """Work stops at a hold once the tailstock is clamped again."""
    for phase in sheet.procedure.phases:
        for index, step in enumerate(phase.steps):
            if "re-clamp" in step.activities and not _held(phase.steps[index:]):
                yield Fault(at(step), "no hold follows the clamping of the tailstock before anything turns in this phase")


def _held(steps: Sequence[Step]) -> bool:
    for step in steps:
        if step.machine == "turning":
            return False
        if step.hold is not None:
            return True
    return False
