"""Lines of the alignment log at the command line: records, strikes, and rows that could not be read."""

from collections.abc import Iterator
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from tailtrue.log.book import Entry, Unread
    from tailtrue.log.record import Strike
    from tailtrue.log.unread import UnreadRow
    from tailtrue.parts import Dials


def one_line(text: str) -> str:
    """Text of a record on one line, harmless to a terminal."""
    return "".join(one if one.isprintable() else " " for one in text)


def entry_line(entry: "Entry", dials: "Dials") -> str:
    """One line of the list for a test."""
    from tailtrue.log.record import MICROMETER
    from tailtrue.log.wording import offset

    record = entry.record
    by = "" if record.read_by == MICROMETER else f", by {record.read_by}"
    words = (
        f"{entry.number:>5}  {record.date_time:<16}  {record.lathe}, bar {record.bar}, {record.state}: centre "
        f"{offset(record.offset_mm, dials)}; {record.judgement.verdict}{by} ({record.operator})"
    )
    return with_strike(words, entry.strike)


def with_strike(line: str, strike: "Strike | None") -> str:
    """A line of the list, and below it the strike through it."""
    if strike is None:
        return one_line(line)
    return f"{one_line(line)}\n       {strike_line(strike.initials, strike.date_time, strike.reason)}"


def strike_line(initials: str, date_time: str, reason: str) -> str:
    """Who struck it out, when and why."""
    return f"STRUCK OUT by {one_line(initials)} on {date_time}: {one_line(reason)}"


def unread_lines(found: "Unread") -> Iterator[str]:
    """An unread row and what is wrong with it."""
    yield f"unread row {found.number}"
    yield from fault_lines(found.row)
    yield f"  the row: {one_line(found.row.text)}"
    if found.strike is not None:
        yield f"  {strike_line(found.strike.initials, found.strike.date_time, found.strike.reason)}"


def fault_lines(row: "UnreadRow") -> Iterator[str]:
    """What is wrong with a row, and what to do."""
    for fault in row.faults:
        where = one_line(row.file) + (f":{row.line}" if row.line else "") + (f", {fault.column}" if fault.column else "")
        yield ": ".join(part for part in (where, fault.said, fault.wrong) if part)
        yield f"  {fault.do}"
