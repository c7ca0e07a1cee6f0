"""Files of the log to and from other programs: CSV or JSON by the ending of the name."""

from collections.abc import Callable, Iterator
from pathlib import Path

from tailtrue.errors import Problem, UsageError
from tailtrue.log.book import Book, TakenIn
from tailtrue.log.csv_file import from_csv, to_csv
from tailtrue.log.json_file import from_json, to_json
from tailtrue.log.rows import Good
from tailtrue.log.unread import UnreadRow

Read = Callable[[str, str, str | None], Iterator[Good | UnreadRow]]

Write = Callable[[Book], str]

_FORMS: dict[str, tuple[Write, Read]] = {
    ".csv": (lambda book: to_csv(book.records(struck=True)), from_csv),
    ".json": (lambda book: to_json(book.everything()), from_json),
}


def written(book: Book, path: Path) -> str:
    """The whole log as the text of a file of this name, struck records included; a table holds the tests alone.

    Raises UsageError.
    """
    return _form(path)[0](book)


def bring_in(book: Book, path: Path, now: str | None = None) -> tuple[TakenIn, tuple[UnreadRow, ...]]:
    """Add what is new in a file; rows that do not fit are kept aside in the book, and returned.

    `now` is the time of the shop's clock; a row with a date that is still to come does not fit.

    Raises UsageError when the file as a whole cannot be read, LogUnusable when the log cannot be written; nothing is
    added then.
    """
    read = _form(path)[1]
    rows = list(read(_text(path), path.name, now))
    good = [row for row in rows if not isinstance(row, UnreadRow)]
    unread = tuple(row for row in rows if isinstance(row, UnreadRow))
    return book.take_in(good, unread), unread


def _form(path: Path) -> tuple[Write, Read]:
    form = _FORMS.get(path.suffix.lower())
    if form is None:
        raise UsageError((Problem(str(path), path.suffix, "is no kind of file for a log", "end the name in .csv or .json"),))
    return form


def _text(path: Path) -> str:
    try:
        with path.open(encoding="utf-8", newline="") as opened:
            return opened.read()
    except FileNotFoundError:
        raise _unreadable(path, "there is no such file", "mend the name") from None
    except UnicodeDecodeError:
        raise _unreadable(path, "is not text in UTF-8", "save it again as CSV in UTF-8") from None
    except OSError as wrong:
        raise _unreadable(
            path, f"cannot be read: {str(wrong.strerror).lower()}", "look at the name and the rights"
        ) from wrong


def _unreadable(path: Path, wrong: str, do: str) -> UsageError:
    return UsageError((Problem(str(path), "", wrong, do),))
