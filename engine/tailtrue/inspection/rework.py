"""A sheet of rework: it goes back to a step that is there, measures before and after, and never cuts past the window."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, at
from tailtrue.parts import Figure
from tailtrue.procedure import Step

_DEPTH, _LEAST, _LARGEST = "rework.cuts.depth", "rework.cuts.least_after", "rework.cuts.largest_after"
_BEGIN, _TRIES = "rework.begin_most", "rework.tries"
_CUTS = frozenset({"bore", "skim", "turning", "facing", "drill"})
_SLACK = 1e-6  # mm
_REPEAT = re.compile(r"\brepeat\b", re.IGNORECASE)


def goes_back(sheet: Sheet) -> Iterator[Fault]:
    """The sheet ends with a hold: it names steps of the sheet that was left, by number and title, or calls it void."""
    steps = sheet.steps
    rework = sheet.shop.rework
    named = [one for one in steps if one.step.hold is not None and (one.step.hold.goes_on or one.step.hold.void)]
    if rework is None:
        for placed in named:
            yield Fault(placed.where, "work goes on with another sheet, and no sheet was left for this one")
        return
    if not steps or [placed.step.number for placed in named] != [steps[-1].step.number]:
        yield Fault("whole sheet", "the last step, and no other, says where the work goes on")
    for placed in named:
        for on in placed.step.hold.goes_on if placed.step.hold else ():
            if rework.left.get(on.number) != on.step:
                yield Fault(placed.where, f'the sheet that was left has no step {on.number} named "{on.step}"')
            elif rework.titles.get(on.number) != on.title:
                yield Fault(placed.where, f'step {on.number} of the sheet that was left is not called "{on.title}"')
        if placed.step.machine != "isolated":
            yield Fault(
                placed.where, f"the sheet is left with the lathe {placed.step.machine}, and the other begins with hands in"
            )


def measured_round_cuts(sheet: Sheet) -> Iterator[Fault]:
    """Whatever is cut on a sheet of rework is measured before, with a hold, and after, with a hold and limits."""
    if sheet.shop.rework is None:
        return
    steps = [placed.step for placed in sheet.steps]
    for place, step in enumerate(steps):
        if step.machine != "turning" or not _CUTS & set(step.activities):
            continue
        if not any(_measures(one) for one in steps[:place]):
            yield Fault(at(step), "this cut has no hold before it at which the piece is measured")
        if not any(_measures(one) and any(check.limits for check in one.checks) for one in steps[place + 1 :]):
            yield Fault(at(step), "this cut has no hold after it at which the piece is measured against limits")


def _measures(step: Step) -> bool:
    return step.hold is not None and step.machine != "turning" and {"gauge-bore", "measure"} & set(step.activities) != set()


def ends_inside(sheet: Sheet) -> Iterator[Fault]:
    """Readings as found, and twice the depths that are told: the bore ends inside the limits it is judged by."""
    rework = sheet.shop.rework
    if rework is None:
        return
    for index, placed in enumerate(sheet.steps):
        depths = [one for _, figures in placed.set_there for one in figures if one.fact == _DEPTH]
        if not depths:
            continue
        low, high = _judged_by(sheet, index)
        if not rework.readings or low is None or high is None:
            yield Fault(placed.where, "a bore is opened, and readings or limits are missing")
            continue
        grown = 0.0
        told = [figures for _, figures in placed.set_there if any(one.fact == _DEPTH for one in figures)]
        for figures in told:
            grown += 2 * sum(one.value for one in figures if one.fact == _DEPTH)
            for fact, found in ((_LEAST, min(rework.readings)), (_LARGEST, max(rework.readings))):
                said = [one.value for one in figures if one.fact == fact]
                if len(said) != 1 or abs(said[0] - found - grown) > _SLACK:
                    yield Fault(
                        placed.where, f"after this cut the bore measures {found + grown:.4f} mm, and not what is told"
                    )
        if max(rework.readings) + grown > high.value + _SLACK:
            yield Fault(placed.where, f"these cuts open the bore past {high.value:g} mm")
        if min(rework.readings) + grown < low.value - _SLACK:
            yield Fault(placed.where, f"these cuts leave the bore below {low.value:g} mm")
        begin = [one.value for _, figures in placed.set_there for one in figures if one.fact == _BEGIN]
        if len(begin) != 1 or begin[0] + grown > high.value + _SLACK:
            yield Fault(placed.where, "nothing right says from which bore these cuts may begin")
        yield from _of_the_seat(sheet, placed.where, low, high)


def _judged_by(sheet: Sheet, index: int) -> tuple[Figure | None, Figure | None]:
    for placed in sheet.steps[index + 1 :]:
        for check in placed.step.checks:
            if "gauge-bore" in placed.step.activities and check.limits is not None:
                return check.limits.low, check.limits.high
    return None, None


def _of_the_seat(sheet: Sheet, where: str, low: Figure, high: Figure) -> Iterator[Fault]:
    """The limits leave the clearance that the joint takes at the seat where this collar belongs."""
    bar = sheet.shop.measured.get(sheet.shop.rework.end if sheet.shop.rework else "", ())
    least, most = sheet.shop.fit_mm
    if not bar:
        yield Fault(where, "a bore is opened for a seat that nobody measured")
    elif low.value - max(bar) < least - _SLACK or high.value - min(bar) > most + _SLACK:
        yield Fault(where, "the limits of the bore do not belong to the seat of this collar")


def loops_capped(sheet: Sheet) -> Iterator[Fault]:
    """What a sheet of rework repeats has a most, which is told and is no more than the limit."""
    rework = sheet.shop.rework
    if rework is None:
        return
    for placed in sheet.steps:
        told = [one.value for _, figures in placed.set_there for one in figures if one.fact == _TRIES]
        words = " ".join(piece for text in placed.step.text for piece in text if isinstance(piece, str))
        if _REPEAT.search(words) and not told:
            yield Fault(placed.where, "this step repeats something, and no line says how often at most")
        if any(not 1 <= value <= rework.most_tries for value in told):
            yield Fault(placed.where, f"so many tries are not allowed, {rework.most_tries} is the most")
