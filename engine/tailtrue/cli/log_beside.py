"""The alignment log beside a job file: where it is, what stands in it, and adding to it."""

from pathlib import Path
from typing import TYPE_CHECKING

from tailtrue.errors import FactsWrong, Problem

if TYPE_CHECKING:
    from tailtrue.log.record import Record


def log_of(job: Path) -> Path:
    """The log beside a job file; a job that is not there is a slip of the name, and no place for a new log."""
    from tailtrue.log.storage import LOG_FILE

    if not job.is_file():
        raise FactsWrong((Problem(str(job), "", "there is no such file", "mend the name of the job file"),))
    return job.parent / LOG_FILE


def records_of(job: Path) -> "list[Record]":
    """Every record that counts; none where there is no log yet. Raises LogUnusable."""
    from tailtrue.log.book import Book

    path = log_of(job)
    if not path.exists():
        return []
    with Book.open(path) as book:
        return [entry.record for entry in book.records()]


def add_to_log(job: Path, record: "Record") -> int:
    """Add a record for good; its number. Raises LogUnusable, RecordWrong."""
    from tailtrue.log.book import Book

    with Book.create(log_of(job)) as book:
        return book.add(record)


def now() -> str:
    """The time of the shop's clock."""
    from datetime import datetime

    return datetime.now().isoformat(timespec="seconds")
