"""The alignment log beside a job file: where it is, what stands in it, and adding to it."""

from pathlib import Path
from typing import TYPE_CHECKING

from tailtrue.errors import FactsWrong, Problem

if TYPE_CHECKING:
    from tailtrue.case import Case
    from tailtrue.log.record import Record
    from tailtrue.log.typed import Typed
    from tailtrue.log.unread import UnreadRow
    from tailtrue.truing.session import Keeping


def log_of(job: Path) -> Path:
    """The log beside a job file; a job that is not there is a slip of the name, and no place for a new log."""
    from tailtrue.log.storage import LOG_FILE

    if not job.is_file():
        raise FactsWrong((Problem(str(job), "", "there is no such file", "mend the name of the job file"),))
    return job.parent / LOG_FILE


def is_empty(path: Path) -> bool:
    """Whether there is no log yet; a file without a single byte is one that nothing was added to."""
    return not path.exists() or path.stat().st_size == 0


def records_of(job: Path) -> "list[Record]":
    """Every record that counts; none where there is no log yet. Raises LogUnusable."""
    from tailtrue.log.book import Book

    path = log_of(job)
    if is_empty(path):
        return []
    with Book.open(path) as book:
        return [entry.record for entry in book.records()]


def earlier_records(job: Path, needed: bool) -> "tuple[list[Record], str]":
    """The records of the log, and why they cannot be read; that stops nothing but the keeping."""
    from tailtrue.log.faults import LogUnusable

    try:
        return records_of(job), ""
    except LogUnusable as unusable:
        if needed:
            raise
        return [], str(unusable)


def record_as_before(records: "list[Record]", case: "Case", date: str) -> "Record":
    """The record whose set-up still holds. Raises UsageError when there is none."""
    from tailtrue.errors import Problem, UsageError
    from tailtrue.truing.history import last_record

    last = last_record(records, case, date)
    if last is None:
        do = "say the set-up this once, in a visit file (--from) or with --say"
        raise UsageError((Problem("", "--as-before", "finds no earlier record of this lathe and bar in the log", do),))
    return last


def number_of(job: Path, record: "Record") -> int:
    """The number of a record that stands in the log. Raises LogUnusable."""
    from tailtrue.log.book import Book

    with Book.open(log_of(job)) as book:
        return next(one.number for one in book.records() if one.record == record)


def keeping_beside(job: Path, as_before: "Record | None", dated: bool = True) -> "Keeping":
    """How visits are kept in the log beside a job; `dated` when somebody said the date, and it is not that of the clock."""
    from tailtrue.truing.session import Keeping

    return Keeping(lambda record: add_to_log(job, record), as_before, lambda row: set_aside(job, row, dated))


def set_aside(job: Path, row: "UnreadRow", dated: bool = True) -> int:
    """Keep a visit that is no record as an unread row; its number, or that of the row that says the same already.

    Raises LogUnusable.
    """
    from tailtrue.log.book import Book

    with Book.create(log_of(job)) as book:
        alike = (one.number for one in book.unread() if not dated and one.row.but_for_the_date == row.but_for_the_date)
        if number := next(alike, None):
            return number
        book.take_in((), (row,))
        return next(one.number for one in book.unread(struck=True) if one.row.same == row.same)


def add_to_log(job: Path, record: "Record") -> int:
    """Add a record for good; its number. Raises LogUnusable, RecordWrong."""
    from tailtrue.log.book import Book

    with Book.create(log_of(job)) as book:
        return book.add(record)


def check_typed_date(typed: "Typed") -> None:
    """Raise RecordWrong for a date that is none, or that is still to come."""
    from tailtrue.log.dates import wrong_date
    from tailtrue.log.faults import RecordWrong

    said = [key for key in ("date", "chuck_test_date") if typed.says(key)]
    found = ((key, wrong_date(str(typed.content[key]), now())) for key in said)
    if faults := [typed.places[key].problem((), *wrong) for key, wrong in found if wrong]:
        raise RecordWrong(faults)


def check_date(said: str | None) -> None:
    """Raise FactsWrong for a --date that is none, or that is still to come."""
    from tailtrue.log.dates import wrong_date

    if said and (wrong := wrong_date(said, now())):
        raise FactsWrong((Problem("--date", said, *wrong),))


def now() -> str:
    """The time of the shop's clock."""
    from datetime import datetime

    return datetime.now().isoformat(timespec="seconds")
