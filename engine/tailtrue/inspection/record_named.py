"""Readings are sent to the record of this very sheet, and only where there is one."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet

_RECORD = re.compile(r"\brecord of sheet (.*?)(?=\.(?:\s|$))")


def by_its_number(sheet: Sheet) -> Iterator[Fault]:
    """No line sends readings to the record of another sheet, nor to one that this sheet does not have."""
    number = sheet.procedure.title.number
    kept = sheet.procedure.record is not None or sheet.procedure.work_record is not None
    for placed in sheet.steps:
        for text in placed.step.text:
            words = "".join(piece if isinstance(piece, str) else "#" for piece in text)
            for found in _RECORD.finditer(words):
                if found[1] != number:
                    yield Fault(placed.where, f'readings are sent to the record of "{found[1]}", this sheet is "{number}"')
                elif not kept:
                    yield Fault(placed.where, "readings are sent to a record, and this sheet has none")
