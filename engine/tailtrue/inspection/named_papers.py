"""A sheet names the papers that it is worked with, by number, where they are needed; its title block says how it is used."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of
from tailtrue.parts import Text

_REVIEW, _RECORD = "safety review", "record of sheet"


def papers_named(sheet: Sheet) -> Iterator[Fault]:
    """Without its safety review nobody starts; readings of a test go into the record, at a step after the cut."""
    tree = sheet.procedure
    number = tree.title.number
    if not any(_names(line, _REVIEW, number) for line in tree.do_not_start):
        yield Fault("front", "the conditions of the start do not name the safety review by its number")
    if tree.work_record is not None and not any(
        _names(line, _RECORD, number) for one in sheet.steps for line in one.step.text
    ):
        yield Fault("work record", "no step says, by its number, into which record the readings go")
    if tree.record is None:
        return
    skims = [place for place, placed in enumerate(sheet.steps) if "skim" in placed.step.activities]
    after = sheet.steps[skims[-1] :] if skims else sheet.steps
    if not any(_names(line, _RECORD, number) for placed in after for line in placed.step.text):
        yield Fault("record", "no step after the last cut says, by its number, into which record the readings go")


def used_as_said(sheet: Sheet) -> Iterator[Fault]:
    """The title block says how the sheet is used and by whom, and does not stay in force when another took its place."""
    title, sop = sheet.procedure.title, sheet.procedure.sop
    if not title.use_level.strip():
        yield Fault("title block", "it does not say how the sheet is used")
    if title.operator != sheet.shop.operator:
        yield Fault("title block", f'the operator is "{title.operator}", the job says "{sheet.shop.operator}"')
    if sop is not None and (sop.control.status == "superseded") != (title.status == "superseded"):
        yield Fault("title block", f"the sheet is {title.status}, its standing procedure {sop.control.status}")


def _names(text: Text, paper: str, number: str) -> bool:
    words = words_of(text)
    return paper in words and number in words
