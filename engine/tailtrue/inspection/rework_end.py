"""How a sheet of rework ends: a sheet that does not hold any longer is not gone on with, and what is spoiled is not used."""

import re
from collections.abc import Iterator

from tailtrue.inspection.activities import RELEASED_BY
from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet
from tailtrue.inspection.spelt import words_of

# A bar in use on which one of these was found is not measured with again.
_IN_USE = frozenset({"use-bar", "re-certify"})
_BAR_LOST = frozenset({"collar-slipped", "bond-failed", "centre-bruised"})
# What is done where the bar is no longer the one that the other sheet was made for.
_OTHER_BAR = re.compile(r"\btag on the bar\b|\bnew stock\b|\binto the stock file\b", re.IGNORECASE)
_FIXES = re.compile(r"\b(?:fix|bond|press|screw|pin) [^.]*\b(?:anew|again|collar)\b|\bits phase\b", re.IGNORECASE)
_SAWN, _CROSSED = "hand-saw", re.compile(r"\bcross [^.]*\bcollars? out\b", re.IGNORECASE)
_WHOLE = re.compile(r"\bwhole\b", re.IGNORECASE)
_MADE_ANEW = re.compile(r"\b(?:saw|look)\b.*\b(?:blanks?|slugs?|castings?)\b", re.IGNORECASE)


def one_end(sheet: Sheet) -> Iterator[Fault]:
    """The sheet that was left goes on, in cases that are told apart, or it is void and says why; never both."""
    for placed in sheet.steps:
        hold = placed.step.hold
        if hold is None or not (hold.goes_on or hold.void):
            continue
        if hold.goes_on and hold.void:
            yield Fault(placed.where, "the sheet that was left is void, and work goes on with it")
        if hold.void and not words_of(hold.void.text).strip():
            yield Fault(placed.where, "the sheet that was left is void, and nothing says why")
        cases = [words_of(on.when).strip() for on in hold.goes_on]
        if len(cases) > 1 and (not all(cases) or len(set(cases)) < len(cases)):
            yield Fault(placed.where, "work goes on at several steps, and nothing says when at which")


def void_where_the_bar_is_lost(sheet: Sheet) -> Iterator[Fault]:
    """Nobody goes on with a sheet whose bar is out of use, spoiled or shorter than that sheet says."""
    rework = sheet.shop.rework
    if rework is None:
        return
    lost = rework.of in _IN_USE and rework.found in _BAR_LOST
    lost = lost or any(_OTHER_BAR.search(words_of(text)) for placed in sheet.steps for text in placed.step.text)
    for placed in _ends(sheet):
        hold = placed.step.hold
        if lost and hold is not None and hold.goes_on:
            yield Fault(placed.where, "work goes on with a sheet that was made for a bar which is lost to it")


def spoiled_is_made_anew(sheet: Sheet) -> Iterator[Fault]:
    """A collar that is crossed out is made anew; where it may be sawn through, only a whole one goes on the bar again."""
    done = {name for placed in sheet.steps for name in placed.step.activities}
    crossed = any(_CROSSED.search(words_of(text)) for placed in sheet.steps for text in placed.step.text)
    for placed in _ends(sheet):
        on = placed.step.hold.goes_on if placed.step.hold else ()
        again = [one for one in on if not _MADE_ANEW.search(one.title)]
        if on and (crossed or _SAWN in done) and len(again) == len(on):
            yield Fault(placed.where, "a collar is lost, and work does not go on where one is made anew")
        elif (crossed or _SAWN in done) and any(not _WHOLE.search(words_of(one.when)) for one in again):
            yield Fault(placed.where, "a collar that may be lost is used again, and nothing says that it must be whole")


def fixed_only_where_it_is_fixed(sheet: Sheet) -> Iterator[Fault]:
    """What is done about trouble is no work that the sheet has no steps for: nobody fixes a collar on a sheet that tests."""
    fixes = any(RELEASED_BY.keys() & set(placed.step.activities) for placed in sheet.steps)
    for _, do, _ in (row for row in sheet.procedure.if_it_goes_wrong if len(row) == 3):
        if not fixes and _FIXES.search(words_of(do)):
            yield Fault("if it goes wrong", "a collar is fixed, and this sheet has no steps that fix one")


def _ends(sheet: Sheet) -> Iterator[Placed]:
    return (one for one in sheet.steps if one.step.hold is not None and (one.step.hold.goes_on or one.step.hold.void))
