"""A day of the calendar, written year, month, day; of other ways to write one, what to write instead."""

import re
from collections.abc import Iterator
from datetime import date
from typing import Any

_ISO = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_PARTS = re.compile(r"\s*([0-9]{1,4})\s*([-./ ])\s*([0-9]{1,2})\s*\2\s*([0-9]{1,4})\s*")
_EXAMPLE = "write year, month and day, such as 2026-03-31"
# The years in which a sheet of today can have been made; of two digits the century is theirs.
_CENTURY = 2000


def day_of(raw: Any) -> str:
    """The day in the order year, month, day.

    Raises ValueError with what is wrong and what to do.
    """
    text = raw.strip() if isinstance(raw, str) else ""
    if _ISO.fullmatch(text):
        try:
            return date.fromisoformat(text).isoformat()
        except ValueError as wrong:
            raise ValueError("is no day of the calendar", _EXAMPLE) from wrong
    raise ValueError("is not a date", instead(text) or _EXAMPLE)


def instead(text: str) -> str:
    """What to write for a day that stands in another order; empty where none can be meant.

    >>> instead("24.11.2026")
    'write 2026-11-24'
    """
    meant = tuple(dict.fromkeys(_meant(text)))
    whichever = ", whichever is meant" if len(meant) > 1 else ""
    return f"write {' or '.join(meant)}{whichever}" if meant else ""


def _meant(text: str) -> Iterator[str]:
    """The days that numbers in another order may mean; points stand between day, month and year, strokes in either order."""
    match = _PARTS.fullmatch(text)
    if match is None:
        return
    first, mark, second, third = match[1], match[2], match[3], match[4]
    if len(first) == 4:
        orders = [(first, second, third)]
    else:
        orders = [(third, second, first)] + ([(third, first, second)] if mark != "." else [])
    for year, month, day in orders:
        whole = int(year) + (_CENTURY if len(year) <= 2 else 0)
        try:
            yield date(whole, int(month), int(day)).isoformat()
        except ValueError:
            continue
