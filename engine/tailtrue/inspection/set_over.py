"""A tailstock set over for a taper: how far and which way, reckoned again, and brought back before the sheet ends."""

import re
from collections.abc import Callable, Iterator, Sequence
from math import atan, sin

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet, figures_in
from tailtrue.inspection.shop import Taper
from tailtrue.inspection.spelt import words_of
from tailtrue.parts import Figure

_FACT = "setover.amount"
_WITHIN = 0.01  # of the set-over
_SIDES = ("toward you", "away from you")
_CLEAR = "setover.clear_of_dog"
_RUN_OFF_MM = 5.0  # no tool with its holder runs off in less


def amount_right(sheet: Sheet) -> Iterator[Fault]:
    """Set-over = L sin(atan(taper / 2)) over the length from point to point, wherever it stands on the sheet."""
    taper = sheet.shop.taper
    for found in sheet.figures:
        if found.figure.fact != _FACT:
            continue
        if taper is None:
            yield Fault(found.where, "a set-over is printed and no taper was given")
            continue
        due = _due(taper)
        if found.figure.unit != "mm" or not abs(found.figure.value - due) <= _WITHIN * due:
            what = f"the taper asks for a set-over of {due:.4g} mm"
            yield Fault(found.where, f"{what}, the sheet says {found.figure.value:.4g} {found.figure.unit}")


def _due(taper: Taper) -> float:
    slope = (taper.large_mm - taper.small_mm) / taper.length_mm
    return (taper.work_length_mm - taper.hole_depths_mm) * sin(atan(slope / 2))


def way_right(sheet: Sheet) -> Iterator[Fault]:
    """The centre at the small end goes toward the tool, and back the other way."""
    taper = sheet.shop.taper
    if taper is None:
        return
    toward = (taper.small_end == "tailstock") == (sheet.shop.tool_side == "front")
    for placed in sheet.steps:
        for activity, due in (("set-over", _SIDES[not toward]), ("set-back", _SIDES[toward])):
            if activity in placed.step.activities and "move-tailstock" in placed.step.activities:
                yield from _said(placed, due)


def _said(placed: Placed, due: str) -> Iterator[Fault]:
    lines = [line for line in placed.step.settings if any(one.fact == _FACT for one in figures_in(line.value))]
    if not lines:
        yield Fault(placed.where, "the tailstock is moved for a taper and nothing says how far")
    for line in lines:
        words = "".join(piece for piece in (*line.label, *line.value) if not isinstance(piece, Figure))
        if [side for side in _SIDES if side in words] != [due]:
            yield Fault(placed.where, f'the tailstock goes "{due}" here, the sheet says "{words.strip()}"')


def clear_of_dog(sheet: Sheet) -> Iterator[Fault]:
    """Dog, room to run off and the taper find room on the work, and where the taper must end is told at a step."""
    taper = sheet.shop.taper
    steps = sheet.steps
    cut = _next(steps, -1, lambda one: "set-over" in one.step.activities and one.step.machine == "turning")
    if taper is None or not cut:
        return
    where = steps[cut].where
    least = taper.dog_mm + _RUN_OFF_MM
    if taper.length_mm + least > taper.work_length_mm:
        what = f"{taper.length_mm:.4g} mm of taper and {least:.4g} mm for the dog do not go on {taper.work_length_mm:.4g} mm"
        yield Fault(where, what)
    told = [one for placed in steps[:cut] for one in placed.figures if one.fact == _CLEAR]
    if not told:
        yield Fault(where, "a taper is cut toward the dog, and no step before says where it must end")
    for figure in told:
        if figure.unit != "mm" or not least <= figure.value <= taper.work_length_mm - taper.length_mm:
            yield Fault(where, f"the taper may end {figure.value:.4g} {figure.unit} from the face, and the dog is there")


def touched_where_it_meets(sheet: Sheet) -> Iterator[Fault]:
    """On round work the end that is to be small meets the tool first: a dial set at the other digs in there."""
    if sheet.shop.taper is None:
        return
    for placed in sheet.steps:
        if "set-over" not in placed.step.activities or placed.step.machine != "turning":
            continue
        for text in placed.step.text:
            words = words_of(text)
            if re.search(r"\btouch\b", words, re.IGNORECASE) and not re.search(r"\bto be small\b|\bmeets it first\b", words):
                yield Fault(placed.where, "the dial is set where the tool does not meet the work first")


def brought_back(sheet: Sheet) -> Iterator[Fault]:
    """What is set over is set back, tested with the bar, and held, in this order, before the sheet ends."""
    steps = sheet.steps
    for index, placed in enumerate(steps):
        activities = placed.step.activities
        if "set-over" not in activities or "move-tailstock" not in activities:
            continue
        back = _next(steps, index, lambda one: "set-back" in one.step.activities)
        tested = back and _next(steps, back, lambda one: "skim" in one.step.activities and one.step.machine == "turning")
        held = tested and _next(steps, tested, lambda one: "set-over" in one.step.activities and one.step.hold is not None)
        if not back:
            yield Fault(placed.where, "the tailstock is set over and never set back")
        elif not tested:
            yield Fault(placed.where, "the tailstock is set back and the bar does not prove it")
        elif not held:
            yield Fault(placed.where, "no hold keeps the tag on the lathe until the bar has proved the return")


def _next(steps: Sequence[Placed], after: int, wanted: Callable[[Placed], bool]) -> int:
    """The place of the next step that is wanted; nought, which no later step has, when there is none."""
    return next((place for place in range(after + 1, len(steps)) if wanted(steps[place])), 0)
