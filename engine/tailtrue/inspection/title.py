"""The title block: complete, dated, and for this machine."""

import re
from collections.abc import Iterator
from datetime import date

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet

_ISO = re.compile(r"\d{4}-\d{2}-\d{2}")
_LONGEST_YEAR = 366
# The approver signs on paper, after the sheet is printed.
_FIELDS = ("title", "shop", "machine", "number", "revision", "author", "knowledge_version", "checksum", "valid_for")


def filled(sheet: Sheet) -> Iterator[Fault]:
    """Whoever finds the sheet knows what it is, whose it is and which edition."""
    for name in _FIELDS:
        if not str(getattr(sheet.procedure.title, name)).strip():
            yield Fault("title block", f'"{name.replace("_", " ")}" is empty')


def dated(sheet: Sheet) -> Iterator[Fault]:
    """The date is there, year first."""
    written = sheet.procedure.title.date
    if not _ISO.fullmatch(written) or not _is_a_day(written):
        yield Fault("title block", f'the date "{written}" is no day written as year-month-day')


def reviewed_in_time(sheet: Sheet) -> Iterator[Fault]:
    """The next review is due within a year of the date of the sheet; one that is overdue is called so."""
    title = sheet.procedure.title
    if not _is_a_day(title.review_due):
        yield Fault("title block", f'the day of the review "{title.review_due}" is no day written as year-month-day')
        return
    # A sheet without a proper date fails for that.
    if not _is_a_day(title.date):
        return
    made, due = date.fromisoformat(title.date), date.fromisoformat(title.review_due)
    if (due - made).days > _LONGEST_YEAR:
        yield Fault("title block", f"the review is due on {due}, more than a year after {made}")
    if title.overdue != (due < made):
        yield Fault("title block", f"a review due on {due} is {'' if title.overdue else 'not '}called overdue on {made}")


def walked_before_approved(sheet: Sheet) -> Iterator[Fault]:
    """Nothing is called approved before somebody walked it through at the lathe and said so; an owner alone has no staff."""
    sop = sheet.procedure.sop
    staffed = any(step.who != "any" for phase in sheet.procedure.phases for step in phase.steps)
    if sheet.procedure.title.owner and staffed:
        yield Fault("title block", "the owner is said to work alone, and steps are marked for staff or a supervisor")
    if sop is not None and sop.control.status == "approved" and not sheet.procedure.title.walked_through.strip():
        yield Fault("standing procedure", "it is called approved, and nobody is named who walked it through")


def _is_a_day(written: str) -> bool:
    try:
        date.fromisoformat(written)
    except ValueError:
        return False
    return True


def for_this_machine(sheet: Sheet) -> Iterator[Fault]:
    """The sheet names the machine it was made for and prints in the system of its dials."""
    title, shop = sheet.procedure.title, sheet.shop
    if title.machine != shop.machine_name:
        yield Fault("title block", f'the sheet names "{title.machine}", the machine is "{shop.machine_name}"')
    if title.dials != shop.dials:
        yield Fault("title block", f"the sheet prints for {title.dials} dials, the machine has {shop.dials} ones")
