"""One row of an imported file, whatever its form: a record that fits, or everything that is wrong with it."""

from collections.abc import Callable, Iterator, Mapping
from typing import Any, NamedTuple

from pydantic import ValidationError

from tailtrue.given.quoting import harmless
from tailtrue.log.book import Struck
from tailtrue.log.dates import wrong_date
from tailtrue.log.faults import Fault, Path, faults_of
from tailtrue.log.fields import implausible
from tailtrue.log.kinds import Other, validated
from tailtrue.log.record import Record, Strike
from tailtrue.log.unread import RowFault, UnreadRow


class FileRow(NamedTuple):
    """A row as it stands in its file: where, its text, the line of the columns, the content in it.

    `now` is the time of the shop's clock, which no date may be past; None where dates are held against no clock.
    """

    file: str
    line: int
    columns: str
    text: str
    content: Mapping[str, Any]
    log_id: str | None
    struck: Mapping[str, Any] | None
    now: str | None = None


Good = tuple[Record | Other, Struck | None]


def read_row(row: FileRow, name: Callable[[Path], str]) -> Good | UnreadRow:
    """The record in a row with its strike, or the row with its faults; `name` is the column of a place."""
    faults: list[Fault] = []
    record = struck = None
    try:
        record = validated(row.content)
        faults += (*(implausible(record) if isinstance(record, Record) else ()), *_to_come(record, row.now))
        if row.log_id is not None and row.log_id != record.log_id:
            do = "clear this cell to add the row as a new record, or put back what was changed"
            faults.append(Fault(("log_id",), "does not fit the row: something in it was changed since it was written", do))
    except ValidationError as wrong:
        faults += faults_of(wrong)
    if row.struck is not None:
        try:
            strike = Strike.model_validate({**row.struck, "number": 1})
            struck = Struck(strike.reason, strike.initials, strike.date_time)
            faults += _late((("struck", "date_time"), strike.date_time), row.now)
        except ValidationError as wrong:
            faults += (one._replace(path=("struck", *one.path)) for one in faults_of(wrong))
    if faults or record is None:
        told = tuple(
            RowFault(column=harmless(name(one.path)), said=_said(row, one.path), wrong=harmless(one.wrong), do=one.do)
            for one in faults
        )
        return UnreadRow(file=row.file, line=row.line, columns=row.columns, text=row.text, faults=told)
    return record, struck


def _to_come(record: Record | Other, now: str | None) -> Iterator[Fault]:
    """Dates of a record that are still to come."""
    yield from _late((("date_time",), record.date_time), now)
    if isinstance(record, Record) and record.chuck_test is not None:
        yield from _late((("chuck_test", "date"), record.chuck_test.date), now)


def _late(said: tuple[Path, str], now: str | None) -> Iterator[Fault]:
    path, date = said
    if now is not None and (wrong := wrong_date(date, now)):
        yield Fault(path, *wrong)


def _said(row: FileRow, path: Path) -> str:
    """What was read at a place; nothing where there is no single value."""
    here: Any = {**row.content, "log_id": row.log_id, "struck": row.struck}
    for step in path:
        if isinstance(here, Mapping):
            here = here.get(str(step))
        elif isinstance(here, list) and isinstance(step, int) and step < len(here):
            here = here[step]
        else:
            return ""
    return harmless(str(here)) if isinstance(here, str | int | float) else ""
