"""Boring: no way back into a cut round the start check, cuts that reach their size, and a reading for each of them."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from math import isfinite

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet, at
from tailtrue.inspection.spelt import STEP_NAMED, words_of
from tailtrue.procedure import Phase, Step

_SAME = 1e-6
_BACK = re.compile(r"\bgo back\b", re.IGNORECASE)
_CHECK = re.compile(r"\bstart check\b", re.IGNORECASE)
_PHASE = re.compile(r"\bthe phase\b", re.IGNORECASE)
_PLUNGER = re.compile(r"\bplunger against the cross slide\b", re.IGNORECASE)
_ENDS = (("bore.head_low", "bore.head_high"), ("bore.tail_low", "bore.tail_high"), ("bore.middle_low", "bore.middle_high"))
_READS = frozenset({"micrometer-bore", "caliper-work"})  # what reads a telescoping gauge
# A size on the way, without limits, takes any of these.
_ON_THE_WAY = frozenset({"caliper-work", "bore-gauge", "micrometer-bar", "micrometer-collars"})


def back_over_the_check(sheet: Sheet) -> Iterator[Fault]:
    """Who goes back from still work to a cut, by a sentence or from a hold, passes a start check before it."""
    steps = [placed.step for placed in sheet.steps]
    phases = sheet.procedure.phases
    for phase in phases:
        for step in phase.steps:
            if step.machine == "turning":
                continue
            for text in step.text:
                words = words_of(text)
                if _BACK.search(words) and not _led(words, steps[: steps.index(step)], phases):
                    yield Fault(at(step), "work goes back to a cut, and not over a start check")
            if step.hold is not None and step.hold.go_back_to is not None and _straight(steps, step.hold.go_back_to):
                yield Fault(at(step), "its hold goes back to a cut, and not over a start check")


def _led(words: str, ahead: Sequence[Step], phases: Sequence[Phase]) -> bool:
    # Back to the start of a phase, whichever it is: none may begin with a cut.
    if number := STEP_NAMED.search(words):
        places = [step.number for phase in phases for step in phase.steps]
        steps = [step for phase in phases for step in phase.steps]
        return number[1] in places and not _turns_first(steps[places.index(number[1]) :])
    if _PHASE.search(words):
        return not any(_turns_first(phase.steps) for phase in phases)
    return _CHECK.search(words) is not None and any("start-check" in one.activities for one in ahead)


def _straight(steps: Sequence[Step], target: str) -> bool:
    places = [place for place, step in enumerate(steps) if target in (step.id, step.number)]
    return any(_turns_first(steps[place:]) for place in places[:1])


def _turns_first(steps: Sequence[Step]) -> bool:
    """Whether the spindle turns before a start check is made."""
    for step in steps:
        if "start-check" in step.activities:
            return False
        if step.machine == "turning":
            return True
    return False


def cuts_reach(sheet: Sheet) -> Iterator[Fault]:
    """Roughing passes reach the size to rough to, with none to spare; the last cuts reach the middle of the window."""
    for _, steps in sheet.by_phase:
        told = _told(steps)
        to = told.get("bore.rough_to")
        for placed in steps:
            here = placed.told
            passes, cuts = here.get("bore.rough_passes"), here.get("bore.finish_cuts")
            if passes is not None and "bore.rough_cut" in here:
                hole, each = _hole(steps, told), 2 * here["bore.rough_cut"]
                if to is None or hole is None:
                    yield Fault(placed.where, "roughing passes are counted, and nothing says from which hole to which size")
                elif not hole + (passes - 1) * each < to + _SAME or not hole + passes * each >= to - _SAME:
                    yield Fault(placed.where, f"{passes:g} passes of {each:g} mm take {hole:g} mm not just to {to:g} mm")
            if cuts is not None and to is not None and "bore.finish_depth" in here:
                reached, aim = to + 2 * cuts * here["bore.finish_depth"], _aim(told)
                if aim is not None and not (isfinite(reached) and reached >= aim - _SAME):
                    yield Fault(placed.where, f"the last cuts reach {reached:g} mm, the middle of the window is {aim:g} mm")


def _told(steps: Iterable[Placed]) -> Mapping[str, float]:
    """The value of each fact that these steps tell, the last of them."""
    return {fact: value for placed in steps for fact, value in placed.told.items()}


def _hole(steps: Iterable[Placed], told: Mapping[str, float]) -> float | None:
    """The hole that the boring bar begins in: the largest drill of the phase, or the hole that is there."""
    drills = [
        figure.value
        for placed in steps
        for _, figures in placed.set_there
        for figure in figures
        if "drill" in placed.step.activities and figure.fact.endswith(".size")
    ]
    return max(drills) if drills else told.get("hole.start")


def _aim(told: Mapping[str, float]) -> float | None:
    """The middle between the two sizes, at the larger end; where the bar is unmeasured, for the largest it may be."""
    middles = [(told[low] + told[high]) / 2 for low, high in _ENDS if low in told and high in told]
    if middles:
        return max(middles)
    parts = [told.get(name) for name in ("bar.expected_largest", "bore.add_least", "bore.add_most")]
    if None in parts:
        return None
    largest, least, most = (part for part in parts if part is not None)
    return largest + (least + most) / 2


def fine_indicator_late(sheet: Sheet) -> Iterator[Fault]:
    """An indicator on the cross slide is set after the roughing, and a start check knows of it before the next cut."""
    for _, steps in sheet.by_phase:
        for placed in steps:
            if not any(_PLUNGER.search(piece) for text in placed.step.text for piece in text if isinstance(piece, str)):
                continue
            if any("bore.rough_passes" in one.told for one in steps[placed.place + 1 :]):
                yield Fault(placed.where, "a fine indicator is set, and the roughing passes would run it past its travel")


def size_has_its_instrument(sheet: Sheet) -> Iterator[Fault]:
    """A size of turning work that is written down names an instrument among the tools of its step."""
    known = _ON_THE_WAY | set(sheet.shop.instruments)
    for placed in sheet.steps:
        step = placed.step
        asked = any(blank.unit in ("mm", "in") for check in step.checks for blank in check.blanks)
        if step.machine == "turning" and asked and not known & set(step.tools):
            yield Fault(placed.where, "a size is written down, and no tool of the step reads it")


def slack_is_honest(sheet: Sheet) -> Iterator[Fault]:
    """How far off a bar may read leaves half of the window to bore in."""
    for _, steps in sheet.by_phase:
        told = _told(steps)
        rooms = [told[high] - told[low] for low, high in _ENDS if low in told and high in told]
        slack = told.get("bore.bar_slack")
        if slack is not None and rooms and not 0 < slack <= min(rooms) / 4 + _SAME:
            where = next(one.where for one in steps if "bore.bar_slack" in one.told)
            yield Fault(where, f"a bar off by {slack:g} mm leaves too little of the {min(rooms):g} mm to bore in")


def grabbing_drills_dubbed(sheet: Sheet) -> Iterator[Fault]:
    """Where a drill may screw itself into the metal, every drill has its lips seen to, ticked, before it is fitted."""
    seen = False
    for placed in sheet.steps:
        step = placed.step
        if "dub-drills" in step.activities and any(check.blanks for check in step.checks):
            seen = True
        if "drill" in step.activities and not seen and any(one.id == "drill-screws-into-brass" for one in step.cautions):
            yield Fault(placed.where, "a drill may pull itself into this metal, and no step before it sees to its lips")


def gauge_has_its_reader(sheet: Sheet) -> Iterator[Fault]:
    """A telescoping gauge shows no size: where it is used, what reads it is on the list of that step."""
    if not sheet.shop.telescoping:
        return
    for placed in sheet.steps:
        if "bore-gauge" in placed.step.tools and not _READS & set(placed.step.tools):
            yield Fault(placed.where, "a telescoping gauge is used, and nothing on the list of this step reads it")
