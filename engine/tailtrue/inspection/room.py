"""Room behind a blank on a spacer, in soft jaws or held by its band, and how warm a shrunk joint may be cut."""

from collections.abc import Iterator
from math import radians, tan

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of

_POINT = tan(radians(118 / 2))  # half the angle of a common drill point
_DRILL, _HOLE = "hole.ladder.size", "blank.hole"
_ROOM = ("crib.spacer", "collar.room_behind", "blank.room_behind", "crib.packing_height")
_SET_FORWARD = {"spacer-behind-work", "grip-in-soft-jaws", "grip-on-band", "clamp-to-faceplate"}
_DEGREES = ("degC", "degF")  # a blank stands in the unit of the dials
_SKIM, _THERMOMETER = "skim", "thermometer"
_SHRUNK = "shrink-fit"
_HOLDS, _LETS_GO = "joint.shrink_fit.holds_a_catch_to", "joint.shrink_fit.lets_go_at"


def drill_has_room(sheet: Sheet) -> Iterator[Fault]:
    """Behind a blank on a spacer, a step or its band the last drill finds told room, or a hole in the chuck."""
    if not any(_SET_FORWARD & set(placed.step.activities) for placed in sheet.steps):
        return
    for placed in sheet.steps:
        told = [(figure.fact, figure.value) for figure in placed.figures]
        drills = [value for fact, value in told if fact == _DRILL]
        if "drill" not in placed.step.activities or not drills:
            continue
        point = max(drills) / 2 / _POINT
        room = max((value for fact, value in told if fact in _ROOM), default=0.0)
        hole = max((value for fact, value in told if fact == _HOLE), default=0.0)
        if not room > point and not hole > max(drills):
            what = (
                f"the point of the last drill comes {point:.3g} mm out behind the blank, where {room:.3g} mm of room is told"
            )
            yield Fault(placed.where, what)


def heat_told(sheet: Sheet) -> Iterator[Fault]:
    """Where a joint lets go warm, the lower temperature up to which it holds a catch stands beside it."""
    for placed in sheet.steps:
        told = placed.told
        if _LETS_GO not in told and "cool-part" not in placed.step.activities:
            continue
        if _HOLDS not in told or _LETS_GO not in told:
            yield Fault(placed.where, "a joint that warmth loosens is told, and not how warm it still holds a catch")
        elif not told[_HOLDS] < told[_LETS_GO]:
            yield Fault(
                placed.where,
                f"a catch is held up to {told[_HOLDS]:.3g} degC, and the collar lets go at {told[_LETS_GO]:.3g} degC",
            )


def cooled_before_cuts(sheet: Sheet) -> Iterator[Fault]:
    """Each cut over collars that warmth loosens follows a step at which they are measured cool with the lathe isolated."""
    phases = {placed.phase.number for placed in sheet.steps if _SKIM in placed.step.activities}
    told_loose = any(_LETS_GO in placed.told for placed in sheet.steps)
    if not told_loose and sheet.shop.fixed_by != _SHRUNK and not _nobody_knows(sheet):
        return
    number, cool = "", False
    for placed in sheet.steps:
        step = placed.step
        if placed.phase.number not in phases:
            continue
        if placed.phase.number != number:
            number, cool = placed.phase.number, False
        degrees = any(blank.unit in _DEGREES for check in step.checks for blank in check.blanks)
        if step.machine == "isolated" and _THERMOMETER in step.tools and degrees:
            cool = True
        elif step.machine == "turning":
            if degrees:
                yield Fault(placed.where, "a temperature is taken at the work while the spindle may turn")
            if _SKIM in step.activities and not cool:
                yield Fault(placed.where, "warmth loosens these collars, and no isolated step before this cut measures it")
            cool = False


def fixing_told(sheet: Sheet) -> Iterator[Fault]:
    """The sheet for a bar on hand says of its collars what the stock file says, or that nobody knows."""
    if not (sheet.shop.bar_on_hand and sheet.shop.bar_exists):
        return
    wanted = "nobody knows how" if _nobody_knows(sheet) else f"with {sheet.shop.fixed_by}".replace("-", " ")
    lines = (words_of(line.value) for line in sheet.procedure.facts)
    said = [one.replace("-", " ") for one in lines]
    if not any(one.endswith(f"fixed {wanted}") for one in said):
        yield Fault("facts", f'nothing says of the collars: "fixed {wanted}"')


def _nobody_knows(sheet: Sheet) -> bool:
    return bool(sheet.shop.bar_on_hand) and not sheet.shop.fixed_by
