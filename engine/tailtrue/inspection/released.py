"""Where every sheet holds work, besides the holds of its joints and of the tailstock."""

from collections.abc import Iterator

from tailtrue.inspection.holds import named
from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet
from tailtrue.inspection.spelt import words_of

_REVIEW, _INSTRUCTOR, _WITNESS = "safety review", "instructor", "witness"
_BETWEEN, _IN_CHUCK = "mount-between-centres", "grip-in-chuck"


def held(sheet: Sheet) -> Iterator[Fault]:
    """Each hold is complete; the review, a learner's first start between centres and the cut that proves have theirs."""
    yield from named(sheet)
    yield from _review_accepted(sheet)
    yield from _instructor_there(sheet)
    yield from _cut_witnessed(sheet)


def _review_accepted(sheet: Sheet) -> Iterator[Fault]:
    first = next(iter(sheet.steps), None)
    if first is not None and not (_holds_for(first, _REVIEW) and sheet.procedure.title.number in _text(first)):
        yield Fault(first.where, "work begins without a hold for the safety review of this sheet, by its number")


def _instructor_there(sheet: Sheet) -> Iterator[Fault]:
    if not sheet.shop.instructed:
        return
    between = False
    for placed in sheet.steps:
        if _BETWEEN in placed.step.activities:
            between = True
        elif _IN_CHUCK in placed.step.activities:
            between = False
        if between and placed.step.hold is not None and _INSTRUCTOR in placed.step.hold.releases:
            return
        if between and placed.step.machine == "turning":
            yield Fault(placed.where, "a learner starts between centres with no hold that an instructor releases")
            return


def _cut_witnessed(sheet: Sheet) -> Iterator[Fault]:
    if not any("move-tailstock" in placed.step.activities for placed in sheet.steps):
        return
    skims = [place for place, placed in enumerate(sheet.steps) if "skim" in placed.step.activities]
    seen = [
        place
        for place, placed in enumerate(sheet.steps)
        if any(_WITNESS in blank.label for check in placed.step.checks for blank in check.blanks)
    ]
    if skims and not any(place > skims[-1] for place in seen):
        what = "the cut that proves the tailstock has no place for a witness or a second look"
        yield Fault(sheet.steps[skims[-1]].where, what)


def _holds_for(placed: Placed, words: str) -> bool:
    return placed.step.hold is not None and words in _text(placed)


def _text(placed: Placed) -> str:
    hold = placed.step.hold
    return words_of(hold.text) if hold else ""
