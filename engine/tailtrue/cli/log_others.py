"""Certificates and heights at the command line: adding one, and a line of the list for each."""

from pathlib import Path
from typing import TYPE_CHECKING

from tailtrue.cli.log_beside import check_date, log_of, now
from tailtrue.errors import FactsWrong, Problem

if TYPE_CHECKING:
    from tailtrue.log.book import OtherEntry
    from tailtrue.log.kinds import Certificate, Height
    from tailtrue.parts import Dials

TEST = "test"
CHOICES = (TEST, "certificate", "height")


def check_kind(said: str | None) -> None:
    """Raise FactsWrong for a --kind that is none."""
    from tailtrue.given.suggest import one_of

    if said is not None and said not in CHOICES:
        raise FactsWrong((Problem("--kind", said, "is not one of the choices", f"write {one_of(CHOICES)}"),))


def add_other(job: Path, source: Path, kind: str, date: str | None) -> "tuple[int, Certificate | Height]":
    """Add the certificate or the height in a file; its number. Raises RecordWrong, FactsWrong, LogUnusable."""
    from tailtrue.log.book import Book
    from tailtrue.log.dates import wrong_date
    from tailtrue.log.faults import RecordWrong
    from tailtrue.log.other_file import read_other

    check_date(date)
    record, dated = read_other(source, kind, date, now())
    if wrong := wrong_date(record.date_time, now()):
        raise RecordWrong((Problem(source.name, f"date = {record.date_time}", *wrong),))
    with Book.create(log_of(job)) as book:
        return book.add(record, dated), record


def other_line(entry: "OtherEntry", dials: "Dials") -> str:
    """One line of the list."""
    from tailtrue.log.kinds import Certificate
    from tailtrue.log.wording import size

    record = entry.record
    if isinstance(record, Certificate):
        told = f"bar {record.bar}, certificate: smallest collar {size(record.smallest_mm, dials)}; {record.verdict}"
    else:
        way = "below" if record.height_mm < 0 else "above"
        told = f"height, {record.state}: quill {size(abs(record.height_mm), dials)} {way} the spindle; {record.verdict}"
    next_look = "" if record.next_look is None else f", next look {record.next_look}"
    return f"{entry.number:>5}  {record.date_time:<16}  {record.lathe}, {told}{next_look} ({record.operator})"
