"""The book of a shop: records are added and struck out with a reason; nothing is changed and nothing goes."""

import json
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from types import TracebackType
from typing import NamedTuple, Self

from pydantic import ValidationError

from tailtrue.errors import Problem
from tailtrue.log.faults import LogUnusable, RecordWrong, faults_of
from tailtrue.log.kinds import Certificate, Height, Other, validated
from tailtrue.log.record import Record, State, Strike, canonical
from tailtrue.log.series import Series, gather
from tailtrue.log.storage import Storage, Table
from tailtrue.log.unread import UnreadRow


class Entry(NamedTuple):
    """A record with its number in this book, and the strike through it if there is one."""

    number: int
    record: Record
    strike: Strike | None


class OtherEntry(NamedTuple):
    """A certificate or a height with its number in this book, and the strike through it if there is one."""

    number: int
    record: Certificate | Height
    strike: Strike | None


class Unread(NamedTuple):
    """A row that could not be taken in, with its number, and the strike through it when it is dealt with."""

    number: int
    row: UnreadRow
    strike: Strike | None


class Struck(NamedTuple):
    """What stands on one row of another book: the reason, the initials and the date of its strike."""

    reason: str
    initials: str
    date_time: str


class TakenIn(NamedTuple):
    """What became of the rows of a file."""

    added: tuple[int, ...]
    known: int
    struck: int
    unread: tuple[int, ...]
    unread_known: int


class Book:
    """An open alignment log."""

    def __init__(self, storage: Storage) -> None:
        self._storage = storage

    @classmethod
    def open(cls, path: Path) -> Self:
        """The log in an existing file. Raises LogUnusable."""
        return cls._connected(path, make=False)

    @classmethod
    def create(cls, path: Path) -> Self:
        """The log in a file, which is made when it is not there. Raises LogUnusable."""
        return cls._connected(path, make=True)

    @classmethod
    def _connected(cls, path: Path, make: bool) -> Self:
        storage = Storage(path)
        storage.connect(make)
        return cls(storage)

    def close(self) -> None:
        """Let go of the file."""
        self._storage.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None) -> None:
        self.close()

    def add(self, record: Record | Other, dated: bool = True) -> int:
        """Add one record for good; its number. When this returns, the record is on the disk.

        `dated` when somebody said the date of the test, and it is not that of the clock. Raises RecordWrong when the very
        same record is there already, or the same test but for a date that nobody said; LogUnusable when the file cannot
        be written.
        """
        with self._storage.writing():
            known = self._numbers()
            if record.log_id in known:
                number = known[record.log_id]
                raise RecordWrong(
                    (
                        Problem(
                            str(self._storage.path), f"record {number}", "is the same record, word for word",
                            "nothing is to be done; a new test has its own date and time",
                        ),
                    )
                )  # fmt: skip
            if not dated and (alike := self._same_test(record)):
                raise RecordWrong(
                    (
                        Problem(
                            str(self._storage.path), f"record {alike.number} of {alike.record.date_time[:10]}",
                            "has the same readings, lathe, bar and state, and this test was given no date",
                            "nothing is to be done if it is that test; add another one with its own date",
                        ),
                    )
                )  # fmt: skip
            return self._write(record)

    def records(
        self, lathe: str | None = None, bar: str | None = None, state: State | None = None, struck: bool = False
    ) -> tuple[Entry, ...]:
        """Records in the order in which they were added; those struck out only when they are asked for."""
        return tuple(
            one for one in self.everything()
            if isinstance(one, Entry)
            and (struck or one.strike is None)
            and lathe in (None, one.record.lathe) and bar in (None, one.record.bar) and state in (None, one.record.state)
        )  # fmt: skip

    def others(self, lathe: str | None, bar: str | None, struck: bool) -> tuple[OtherEntry, ...]:
        """Certificates and heights in the order in which they were added; no height is one of a bar."""
        return tuple(
            one for one in self.everything()
            if isinstance(one, OtherEntry)
            and (struck or one.strike is None)
            and lathe in (None, one.record.lathe) and bar in (None, getattr(one.record, "bar", ""))
        )  # fmt: skip

    def record(self, number: int) -> Entry | OtherEntry:
        """One record of any kind by its number, struck out or not. Raises LogUnusable when there is none."""
        for entry in self.everything():
            if entry.number == number:
                return entry
        raise self._no_such("record", number)

    def strike(self, number: int, reason: str, initials: str, date: str) -> int:
        """Strike out a record: it stays in the book and no longer counts; the number of the strike.

        Raises RecordWrong when reason, initials or date are missing, LogUnusable when there is no such record or it is
        struck out already.
        """
        return self._strike("record", number, Struck(reason, initials, date))

    def strike_unread(self, number: int, reason: str, initials: str, date: str) -> int:
        """Strike out an unread row that has been dealt with. Raises as `strike`."""
        return self._strike("unread", number, Struck(reason, initials, date))

    def unread(self, struck: bool = False) -> tuple[Unread, ...]:
        """Rows of imported files that could not be taken in; those struck out only when they are asked for."""
        with self._storage.reading():
            strikes = self._strikes("unread")
            rows = self._storage.rows("unread")
        found = (Unread(number, UnreadRow.model_validate_json(body), strikes.get(number)) for number, _, body in rows)
        return tuple(one for one in found if struck or one.strike is None)

    def series(self, lathe: str | None, bar: str | None = None) -> tuple[Series, ...]:
        """The checks of each lathe and bar in the order of time, never mixed."""
        return gather((one.number, one.record) for one in self.records(lathe, bar))

    def take_in(self, records: Iterable[tuple[Record | Other, Struck | None]], unread: Sequence[UnreadRow]) -> TakenIn:
        """Add what is new of another book or of a file, all or nothing; what is known already is passed over."""
        added: list[int] = []
        already = strokes = 0
        with self._storage.writing():
            known = self._numbers()
            struck = self._strikes("record")
            for record, strike in records:
                number = known.get(record.log_id)
                if number is None:
                    number = known[record.log_id] = self._write(record)
                    added.append(number)
                else:
                    already += 1
                if strike is not None and number not in struck:
                    struck[number] = self._write_strike("record", number, strike)
                    strokes += 1
            rows = {UnreadRow.model_validate_json(body).same for _, _, body in self._storage.rows("unread")}
            new = [one for one in {one.same: one for one in unread}.values() if one.same not in rows]
            numbers = tuple(self._storage.add("unread", canonical(one.model_dump(mode="json"))) for one in new)
        return TakenIn(tuple(added), already, strokes, numbers, len(unread) - len(new))

    def _same_test(self, record: Record | Other) -> Entry | OtherEntry | None:
        """The record that is this one but for its date; one that was struck out does not count."""
        return next((one for one in self._read() if one.strike is None and one.record.test == record.test), None)

    def everything(self) -> tuple[Entry | OtherEntry, ...]:
        """Tests, certificates and heights in the order in which they were added, struck out or not."""
        with self._storage.reading():
            return tuple(self._read())

    def _read(self) -> Iterator[Entry | OtherEntry]:
        """Every record of the book. Must stand inside `reading` or `writing`."""
        strikes = self._strikes("record")
        for number, _, body in self._storage.rows("record"):
            record = self._record(number, body)
            if isinstance(record, Record):
                yield Entry(number, record, strikes.get(number))
            else:
                yield OtherEntry(number, record, strikes.get(number))

    def _write(self, record: Record | Other) -> int:
        self._storage.step_to(record.version)
        return self._storage.add("record", record.body())

    def _numbers(self) -> dict[str, int]:
        return {stamp: number for number, stamp, _ in self._storage.rows("record")}

    def _record(self, number: int, body: str) -> Record | Certificate | Height:
        try:
            # A text in JSON has its quotes escaped, so only the key of a line can read like this.
            return validated(json.loads(body)) if '"kind":' in body else Record.model_validate_json(body)
        except ValidationError as error:
            wrong = faults_of(error)[0]
            raise LogUnusable(
                (Problem(str(self._storage.path), f"record {number}", f"cannot be read: {wrong.wrong}", wrong.do),)
            ) from error

    def _strikes(self, of: Table) -> dict[int, Strike]:
        strikes = (Strike.model_validate_json(body) for _, _, body in self._storage.rows("strike"))
        return {one.number: one for one in strikes if one.of == of}

    def _strike(self, of: Table, number: int, struck: Struck) -> int:
        with self._storage.writing():
            if number not in {found for found, _, _ in self._storage.rows(of)}:
                raise self._no_such(of, number)
            if before := self._strikes(of).get(number):
                raise LogUnusable(
                    (
                        Problem(
                            str(self._storage.path), f"{of} {number}",
                            f"was struck out by {before.initials} on {before.date_time}: {before.reason}",
                            "nothing is to be done",
                        ),
                    )
                )  # fmt: skip
            self._write_strike(of, number, struck)
            return len(self._storage.rows("strike"))

    def _write_strike(self, of: Table, number: int, struck: Struck) -> Strike:
        try:
            strike = Strike.model_validate({"of": of, "number": number, **struck._asdict()})
        except ValidationError as error:
            raise RecordWrong(
                Problem(str(one.path[0]).replace("date_time", "date"), "", one.wrong, one.do) for one in faults_of(error)
            ) from error
        self._storage.add("strike", canonical(strike.model_dump(mode="json")))
        return strike

    def _no_such(self, of: Table, number: int) -> LogUnusable:
        word = "record" if of == "record" else "unread row"
        return LogUnusable(
            (Problem(str(self._storage.path), f"{number}", f"there is no {word} of this number", "look it up in the list"),)
        )
