"""The file of the log: one SQLite file that is only ever added to, held whole when opened.

Three tables have the same shape: a number, a body in JSON, a seal over the body. Triggers forbid change and removal.
Numbers run without a gap and the seals fit, or the file is damaged and nothing of it is believed.
"""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Literal, NoReturn

from tailtrue.errors import Problem
from tailtrue.log.faults import LogUnusable
from tailtrue.log.record import seal

LOG_FILE = "alignment-log.sqlite"
FIRST_VERSION = 1
VERSION = 3  # a log takes this step with the first record that needs it, and is read by an older tailtrue until then
APPLICATION = 0x74746C67  # "ttlg", so that the file is known for what it is
BUSY_S = 30.0

Table = Literal["record", "strike", "unread"]
TABLES: tuple[Table, ...] = ("record", "strike", "unread")

_ADDED_ONLY = "the alignment log is only added to"


def _made(table: Table) -> tuple[str, ...]:
    # A conflict clause such as OR REPLACE removes rows without asking the trigger on removal, so an insert over a row
    # is forbidden by itself.
    stop = f"BEGIN SELECT RAISE(ABORT, '{_ADDED_ONLY}'); END"
    return (
        f"CREATE TABLE {table} (number INTEGER PRIMARY KEY AUTOINCREMENT, seal TEXT NOT NULL UNIQUE, body TEXT NOT NULL)",
        f"CREATE TRIGGER {table}_keeps BEFORE DELETE ON {table} {stop}",
        f"CREATE TRIGGER {table}_stays BEFORE UPDATE ON {table} {stop}",
        f"CREATE TRIGGER {table}_adds BEFORE INSERT ON {table} WHEN EXISTS (SELECT 1 FROM {table} "
        f"WHERE number = NEW.number OR seal = NEW.seal) {stop}",
    )


SCHEMA = tuple(statement for table in TABLES for statement in _made(table))


class Storage:
    """An open log file."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self._connection: sqlite3.Connection | None = None

    def connect(self, make: bool) -> None:
        """Open the file, making it first where that is asked for, and hold it against its shape.

        Raises LogUnusable, and then the file is as it was.
        """
        with self._told():
            if not make and not self.path.exists():
                self._refuse("", "there is no alignment log here yet", "add a first record, or name the right job file")
            mode = "rwc" if make else "rw"
            address = f"{self.path.absolute().as_uri()}?mode={mode}"
            self._connection = sqlite3.connect(address, uri=True, timeout=BUSY_S, isolation_level=None)
        try:
            with self._told():
                # One step more than FULL: the folder is synced too, or a power cut could bring the undone state back.
                self.run("PRAGMA synchronous=EXTRA")
                self.run("PRAGMA fullfsync=ON")
                # A damaged file must not be able to make the engine run anything.
                self.run("PRAGMA trusted_schema=OFF")
                if make:
                    self._make()
                self._check_shape()
        except LogUnusable:
            self.close()
            raise

    def close(self) -> None:
        """Let go of the file."""
        if self._connection is not None:
            self._connection.close()
            self._connection = None

    def run(self, statement: str, values: tuple[object, ...] = ()) -> list[tuple[object, ...]]:
        """Every row of one statement."""
        if self._connection is None:
            self._refuse("", "the log is closed", "open it again")
        return self._connection.execute(statement, values).fetchall()

    @contextmanager
    def writing(self) -> Iterator[None]:
        """All that is written inside goes to the disk together when this ends, or not at all."""
        with self._told(), self._between("BEGIN IMMEDIATE"):
            yield

    @contextmanager
    def reading(self) -> Iterator[None]:
        """All that is read inside belongs to one moment."""
        with self._told(), self._between("BEGIN"):
            yield

    def rows(self, table: Table) -> list[tuple[int, str, str]]:
        """Number, seal and body of every row of a table; a row that is missing or changed is damage."""
        found = self.run(f"SELECT number, seal, body FROM {table} ORDER BY number")
        rows = []
        for expected, (number, stamp, body) in enumerate(found, start=1):
            whole = isinstance(number, int) and isinstance(stamp, str) and isinstance(body, str)
            if not whole or number != expected or seal(str(body)) != stamp:
                self._damaged(f"{table} {expected}", "does not read as it was written")
            rows.append((expected, str(stamp), str(body)))
        counted = self.run("SELECT seq FROM sqlite_sequence WHERE name = ?", (table,))
        if counted != ([(len(rows),)] if rows else []):
            self._damaged(f"{table} {len(rows) + 1}", "is missing")
        return rows

    def add(self, table: Table, body: str) -> int:
        """Write one row; its number. Must stand inside `writing`."""
        ((number,),) = self.run(f"INSERT INTO {table} (seal, body) VALUES (?, ?) RETURNING number", (seal(body), body))
        return int(str(number))

    def step_to(self, version: int) -> None:
        """Mark the file as one that needs this version to be read. Must stand inside `writing`."""
        if int(str(self.run("PRAGMA user_version")[0][0])) < version:
            self.run(f"PRAGMA user_version={version}")

    @contextmanager
    def _between(self, begin: str) -> Iterator[None]:
        self.run(begin)
        try:
            yield
            self.run("COMMIT")
        except BaseException:
            if self._connection is not None and self._connection.in_transaction:
                self._connection.execute("ROLLBACK")
            raise

    def _make(self) -> None:
        if self.run("PRAGMA user_version") != [(0,)] or self.run("SELECT count(*) FROM sqlite_schema") != [(0,)]:
            return
        with self._between("BEGIN IMMEDIATE"):
            # Another process may have made it while this one waited.
            if self.run("SELECT count(*) FROM sqlite_schema") == [(0,)] and self.run("PRAGMA application_id") == [(0,)]:
                for statement in SCHEMA:
                    self.run(statement)
                self.run(f"PRAGMA application_id={APPLICATION}")
                self.run(f"PRAGMA user_version={FIRST_VERSION}")

    def _check_shape(self) -> None:
        with self._between("BEGIN"):
            application, version = (int(str(self.run(f"PRAGMA {one}")[0][0])) for one in ("application_id", "user_version"))
            found = self.run("SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite_%'")
            if application != APPLICATION:
                if self.path.stat().st_size == 0:
                    self._refuse("", "nothing was ever added to this log", "add a first record")
                self._refuse("", "is no alignment log", "name the right file; this one was left as it is")
            if version > VERSION:
                self._refuse(
                    f"version {version}",
                    f"was written by a newer tailtrue; this one reads versions up to {VERSION}",
                    "use the newer one; the file was left as it is",
                )
            if version < FIRST_VERSION or sorted(str(sql) for (sql,) in found) != sorted(SCHEMA):
                self._damaged("", "does not have the shape of an alignment log")
            trouble = self.run("PRAGMA integrity_check(1)")
            if trouble != [("ok",)]:
                self._damaged("", f"is damaged: {str(trouble[0][0]).lower()}")

    def _refuse(self, said: str, wrong: str, do: str) -> NoReturn:
        raise LogUnusable((Problem(str(self.path), said, wrong, do),))

    def _damaged(self, said: str, wrong: str) -> NoReturn:
        self._refuse(
            said,
            wrong,
            "put the file aside as it is, do not write to it, and take the last export or copy of it in its place",
        )

    @contextmanager
    def _told(self) -> Iterator[None]:
        """Say in words what the file system or the database could not do."""
        try:
            yield
        except sqlite3.Error as error:
            self._say(error)
        except UnicodeError:
            self._damaged("", "holds text that cannot be read")
        except OSError as error:
            self._refuse("", f"cannot be reached: {str(error.strerror).lower()}", "look at the rights of the folder")

    def _say(self, error: sqlite3.Error) -> NoReturn:
        code = (getattr(error, "sqlite_errorcode", None) or 0) & 0xFF
        if code in (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED):
            self._refuse("", "another program is writing to the log and does not end", "wait until it has ended, then again")
        if code in (sqlite3.SQLITE_READONLY, sqlite3.SQLITE_PERM):
            self._refuse("", "may not be written to", "ask for the right to write in this folder; nothing was added")
        if code == sqlite3.SQLITE_CANTOPEN:
            self._refuse("", "cannot be opened or made", "look whether the folder is there and may be written to")
        if code == sqlite3.SQLITE_FULL:
            self._refuse("", "the disk is full", "make room on it; nothing was added")
        if code == sqlite3.SQLITE_IOERR:
            self._refuse(
                "", "the disk could not be read or written", "look at the disk before anything else; nothing was added"
            )
        if code == sqlite3.SQLITE_NOTADB:
            self._refuse(
                "", "is no alignment log, or its head is damaged", "name the right file; this one was left as it is"
            )
        self._damaged("", f"is damaged: {str(error).lower()}")
