"""The log as a table for a spreadsheet: one row a record. What is written here reads back to the very same bytes."""

import csv
import io
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from tailtrue.errors import Problem, UsageError
from tailtrue.given.quoting import harmless
from tailtrue.given.suggest import closest
from tailtrue.log.book import Entry
from tailtrue.log.faults import Path
from tailtrue.log.flat import cell, cells_of, columns_of, content_of
from tailtrue.log.record import Record
from tailtrue.log.rows import FileRow, Good, read_row
from tailtrue.log.unread import RowFault, UnreadRow

# Spreadsheets take a file for UTF-8 only when it begins with this mark.
_MARK = "\ufeff"
_OWN = ("number", "log_id")
_STRUCK = ("struck.reason", "struck.initials", "struck.date_time")


def to_csv(entries: Iterable[Entry]) -> str:
    """Every record with its number, its lasting id, its values, and the strike through it."""
    found = list(entries)
    contents = [one.record.model_dump(mode="json") for one in found]
    columns = [*_OWN, *columns_of(contents), *(_STRUCK if any(one.strike for one in found) else ())]
    text = io.StringIO()
    writer = csv.DictWriter(text, columns, restval="", lineterminator="\r\n")
    writer.writeheader()
    for entry, content in zip(found, contents, strict=True):
        row = {"number": str(entry.number), "log_id": entry.record.log_id}
        row |= {column: text for column, text in cells_of(content) if text}
        if entry.strike is not None:
            row |= {name: cell(getattr(entry.strike, name.removeprefix("struck."))) for name in _STRUCK}
        writer.writerow(row)
    return _MARK + text.getvalue()


def from_csv(text: str, file: str, now: str | None = None) -> Iterator[Good | UnreadRow]:
    """Each row of such a table: a record, or the row and what is wrong with it.

    Raises UsageError when the file is no table of the log at all.
    """
    lines = list(_lines(text.removeprefix(_MARK)))
    if not lines:
        raise _no_table(file, 1, "", "is empty", "name a file that was exported, or one with the same columns")
    head, *rows = lines
    columns = head.cells
    known = {*_OWN, *_STRUCK, *Record.model_fields}
    if not any(column.split(".")[0] in known for column in columns):
        do = "separate the columns by commas" if ";" in head.text else "name a file that was exported from a log"
        raise _no_table(file, 1, harmless(head.text.strip()), "holds none of the columns of a log", do)
    twice = {column for column in columns if columns.count(column) > 1}
    if twice:
        raise _no_table(file, 1, ", ".join(sorted(twice)), "stands twice among the columns", "keep one of the two")
    for row in rows:
        if any(one.strip() for one in row.cells):
            yield _read(row, columns, head.text.rstrip("\r\n"), file, now)


@dataclass(frozen=True)
class _Line:
    number: int
    text: str
    cells: list[str]


def _lines(text: str) -> Iterator[_Line]:
    """Rows of cells with the text they were read from; a cell may hold line breaks."""
    taken: list[str] = []

    def feed() -> Iterator[str]:
        for line in io.StringIO(text, newline=""):
            taken.append(line)
            yield line

    number, lines = 1, feed()
    try:
        for cells in csv.reader(lines, strict=True):
            yield _Line(number, "".join(taken), cells)
            number += len(taken)
            taken.clear()
    except csv.Error as wrong:
        # The quotes are out of step: where the row ends cannot be known, so the rest of the file is one unread row.
        rest = "".join([*taken, *lines])
        yield _Line(number, rest, [str(wrong)])


def _read(row: _Line, columns: list[str], head: str, file: str, now: str | None) -> Good | UnreadRow:
    text = row.text.rstrip("\r\n")
    if len(row.cells) > len(columns) or len(row.cells) < len(columns):
        wrong = f"has {len(row.cells)} cells where the table has {len(columns)} columns"
        return _unread(row, head, text, file, wrong, "look for a comma or a quote too many or too few")
    cells = dict(zip(columns, row.cells, strict=True))
    cells.pop("number", None)
    log_id = cells.pop("log_id", "").strip() or None
    struck = {name.removeprefix("struck."): cells.pop(name, "") for name in _STRUCK}
    marked, _ = content_of({name: text for name, text in struck.items() if text.strip()})
    content, places = content_of(cells)
    found = read_row(
        FileRow(file, row.number, head, text, content, log_id, marked or None, now),
        lambda path: _column(path, places, content),
    )
    return _with_hints(found, columns) if isinstance(found, UnreadRow) else found


def _column(path: Path, places: dict[Path, str], content: dict[str, Any]) -> str:
    """The column of a place, also of one that no cell holds."""
    if path in places and content:
        return places[path]
    above = _column(path[:-1], places, content) if len(path) > 1 else ""
    last = path[-1] + 1 if isinstance(path[-1], int) else path[-1]
    return f"{above}.{last}" if above else str(last)


def _with_hints(row: UnreadRow, columns: list[str]) -> UnreadRow:
    """Say what a misspelt column was meant to be."""

    def hinted(fault: RowFault) -> RowFault:
        close = closest(fault.column, Record.model_fields) if fault.column in columns else None
        unknown = fault.column.split(".")[0] not in Record.model_fields
        return fault.model_copy(update={"do": f"a column named '{close}' exists"}) if close and unknown else fault

    return row.model_copy(update={"faults": tuple(map(hinted, row.faults))})


def _unread(row: _Line, head: str, text: str, file: str, wrong: str, do: str) -> UnreadRow:
    fault = RowFault(column="", said=harmless(text), wrong=wrong, do=do)
    return UnreadRow(file=file, line=row.number, columns=head, text=text, faults=(fault,))


def _no_table(file: str, line: int, said: str, wrong: str, do: str) -> UsageError:
    return UsageError((Problem(f"{file}:{line}", said, wrong, do),))
