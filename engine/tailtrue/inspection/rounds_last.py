"""Stock for the rounds that a sheet allows, and nothing reckoned or wound up to the work beside a tool that cuts."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of

_PASSES, _CUT, _SKIM = "chucked.relief_passes", "chucked.relief.depth", "chucked.skim.depth"
_LEFT, _SMALL, _DEPTH = "setover.small_at_check", "setover.small", "setover.turning.depth"
_ROUNDS = re.compile(r"\b(two|three|four|five|six) times at most\b")
_COUNT = {"two": 2, "three": 3, "four": 4, "five": 5, "six": 6}
_TAPER_CUTS = 2  # one that corrects, one to size
_SUM = re.compile(r"\bwork out\b|\bworked out now\b", re.IGNORECASE)
_WOUND_UP = re.compile(r"\bwind the saddle (?:by hand )?up to where the cut ends\b", re.IGNORECASE)
_OFF_THE_WALL = re.compile(r"\bdraw the tip off the wall\b", re.IGNORECASE)
_SLACK_MM = 1e-6


def relief_outlasts_rounds(sheet: Sheet) -> Iterator[Fault]:
    """The middle of a chucked bar stays clear of the tool through the first round and every one that may follow."""
    told = _told(sheet)
    if _SKIM not in told:
        return
    again = sum(_COUNT[found[1]] for placed in sheet.steps if "level-machine" in placed.step.activities
                for found in _ROUNDS.finditer(placed.words_alone))  # fmt: skip
    relieved = [placed for placed in sheet.steps if _CUT in placed.told and _PASSES in placed.told]
    if not relieved:
        yield Fault("whole sheet", "two bands are skimmed, and no step says in how many passes the middle is relieved")
    for placed in relieved:
        deep, due = placed.told[_PASSES] * placed.told[_CUT], (1 + again) * told[_SKIM]
        if deep < due - _SLACK_MM:
            yield Fault(placed.where, f"the middle is {deep:.4g} mm lower for each side; {again} rounds more need {due:.4g}")


def taper_leaves_cuts(sheet: Sheet) -> Iterator[Fault]:
    """When a taper is checked, a cut that corrects it and one to size are left on its small end."""
    told = _told(sheet)
    if _SMALL not in told or _DEPTH not in told:
        return
    due = told[_SMALL] + 2 * _TAPER_CUTS * told[_DEPTH]
    if told.get(_LEFT, 0.0) < due - _SLACK_MM:
        where = next((one.where for one in sheet.steps if "cut-work" in one.step.activities), "whole sheet")
        yield Fault(
            where, f"the taper is checked with less than {due:.5g} mm on its small end, or nothing says at what size"
        )


def reckoned_at_rest(sheet: Sheet) -> Iterator[Fault]:
    """Sums are done with the spindle still, before the cut that they are for."""
    for placed in sheet.steps:
        if placed.step.machine == "turning" and any(_SUM.search(words_of(check.text)) for check in placed.step.checks):
            yield Fault(placed.where, "sizes are worked out at a spindle that turns, behind the lines that cut")


def tip_off_the_wall(sheet: Sheet) -> Iterator[Fault]:
    """Before the saddle goes up to the end of a bore at a still spindle, the tip is drawn off the wall."""
    for placed in sheet.steps:
        said = placed.words_alone
        for found in _WOUND_UP.finditer(said):
            if placed.step.machine != "turning" and not _OFF_THE_WALL.search(said[: found.start()]):
                yield Fault(placed.where, "the saddle is wound in with the tip at its last depth: it ploughs a line")


def _told(sheet: Sheet) -> dict[str, float]:
    return {fact: value for placed in sheet.steps for fact, value in placed.told.items()}
