"""The title block: complete, dated, and for this machine."""

import re
from collections.abc import Iterator
from datetime import date

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet

_ISO = re.compile(r"\d{4}-\d{2}-\d{2}")
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
