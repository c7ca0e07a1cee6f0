"""The book is only added to, tells what is wrong with its file, and never gives a record that was not written."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

import pytest

from tailtrue.errors import TailtrueError
from tailtrue.log.book import Book, Entry, Struck, Unread
from tailtrue.log.faults import LogUnusable, RecordWrong
from tailtrue.log.storage import FIRST_VERSION, TABLES, VERSION

from .sample import UNREAD, check, filled, record


@contextmanager
def by_hand(path: Path) -> Iterator[sqlite3.Connection]:
    """The file as any other program may open it; what was done is kept."""
    with closing(sqlite3.connect(path)) as connection, connection:
        yield connection


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "alignment-log.sqlite"


def said(error: TailtrueError) -> str:
    (problem,) = error.problems
    assert problem.where
    assert problem.do
    return problem.wrong


def test_records_come_back_as_they_went_in(path: Path) -> None:
    with Book.create(path) as book:
        assert [book.add(check(day, day)) for day in range(3)] == [1, 2, 3]
    with Book.open(path) as book:
        assert [one.record for one in book.records()] == [check(day, day) for day in range(3)]
        assert book.record(2).record == check(1, 1)


def test_records_are_chosen_by_lathe_bar_and_state(path: Path) -> None:
    with Book.create(path) as book:
        for number, changes in enumerate([{}, {"lathe": "Lathe 3"}, {"bar": "FM-2"}, {"state": "as left"}]):
            book.add(check(1, number, **changes))
        assert [one.number for one in book.records(lathe="Lathe 3")] == [2]
        assert [one.number for one in book.records(bar="FM-2")] == [3]
        assert [one.number for one in book.records(state="as left")] == [4]
        assert [one.number for one in book.records(lathe="Lathe 2", bar="FM-1", state="as found")] == [1]
        assert book.records(lathe="none") == ()


def test_a_struck_record_stays_and_no_longer_counts(path: Path) -> None:
    with Book.open(filled(path)) as book:
        assert [one.number for one in book.records()] == [1, 3]
        assert [one.number for one in book.records(struck=True)] == [1, 2, 3]
        strike = book.record(2).strike
        assert strike is not None
        assert (strike.reason, strike.initials, strike.date_time) == ("collar not clean", "FB", "2026-02-01")
        assert [one.number for one in book.series(lathe=None)[0].checks] == [1, 3]


@pytest.mark.parametrize(
    ("number", "reason", "initials", "date", "says"),
    [
        (9, "r", "FB", "2026-02-01", "there is no record of this number"),
        (2, "r", "FB", "2026-02-01", "was struck out by FB on 2026-02-01: collar not clean"),
        (1, " ", "FB", "2026-02-01", "is empty"),
        (1, "r", "", "2026-02-01", "is empty"),
        (1, "r", "FB", "yesterday", "is no date"),
    ],
)
def test_a_strike_that_cannot_be_is_refused(
    path: Path, number: int, reason: str, initials: str, date: str, says: str
) -> None:
    with Book.open(filled(path)) as book:
        with pytest.raises(TailtrueError) as caught:
            book.strike(number, reason, initials, date)
        assert says in said(caught.value)
        assert [one.number for one in book.records()] == [1, 3]


def test_an_unread_row_stays_until_it_is_struck_out(path: Path) -> None:
    with Book.open(filled(path)) as book:
        assert [one.row for one in book.unread()] == [UNREAD]
        book.strike_unread(1, "typed in by hand", "FB", "2026-02-02")
        assert book.unread() == ()
        ((number, row, strike),) = book.unread(struck=True)
        assert (number, row) == (1, UNREAD)
        assert strike is not None
        assert strike.reason == "typed in by hand"
        assert book.record(1).strike is None
        with pytest.raises(LogUnusable, match="there is no unread row"):
            book.strike_unread(2, "r", "FB", "2026-02-02")


def test_the_same_record_is_not_added_twice(path: Path) -> None:
    with Book.create(path) as book:
        book.add(record())
        with pytest.raises(RecordWrong) as caught:
            book.add(record())
        assert caught.value.problems[0].said == "record 1"
        assert len(book.records()) == 1


def test_taking_in_is_all_or_nothing_and_passes_over_what_is_known(path: Path) -> None:
    struck = Struck("r", "FB", "2026-02-01")
    with Book.create(path) as book:
        book.add(check(0, 0))
        taken = book.take_in([(check(0, 0), struck), (check(1, 1), None), (check(1, 1), None)], [UNREAD, UNREAD])
        assert taken == ((2,), 2, 1, (1,), 1)
        assert book.take_in([(check(0, 0), struck)], [UNREAD]) == ((), 1, 0, (), 1)
        with pytest.raises(RecordWrong):
            book.take_in([(check(5, 5), None), (check(6, 6), Struck("", "", ""))], unread=())
        assert [one.number for one in book.records(struck=True)] == [1, 2]


@pytest.mark.parametrize("table", TABLES)
@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE {t} SET body = '{{}}'",
        "UPDATE {t} SET number = 9",
        "DELETE FROM {t}",
        "INSERT OR REPLACE INTO {t} (number, seal, body) VALUES (1, 'x', '{{}}')",
        "REPLACE INTO {t} (seal, body) SELECT seal, '{{}}' FROM {t} WHERE number = 1",
        "INSERT INTO {t} (number, seal, body) VALUES (1, 'x', 'y') ON CONFLICT DO UPDATE SET body = '{{}}'",
    ],
)
def test_nothing_is_changed_or_removed_even_by_hand(path: Path, table: str, statement: str) -> None:
    filled(path)
    with by_hand(path) as connection:
        before = connection.execute(f"SELECT * FROM {table}").fetchall()
        assert before
        with pytest.raises(sqlite3.IntegrityError, match="only added to"):
            connection.execute(statement.format(t=table))
        assert connection.execute(f"SELECT * FROM {table}").fetchall() == before


def test_what_is_written_is_synced_with_the_folder(path: Path) -> None:
    with Book.create(path) as book:
        storage = book._storage
        assert storage.run("PRAGMA synchronous") == [(3,)]
        assert storage.run("PRAGMA journal_mode") == [("delete",)]
        assert storage.run("PRAGMA user_version") == [(FIRST_VERSION,)]


def test_the_file_is_known_by_its_mark_and_its_version(path: Path) -> None:
    filled(path)
    assert path.read_bytes()[68:72] == b"ttlg"  # the application id of an SQLite file
    assert path.read_bytes()[60:64] == b"\x00\x00\x00\x01"


def test_a_log_that_is_not_there_is_not_made_by_reading(path: Path) -> None:
    with pytest.raises(LogUnusable) as caught:
        Book.open(path)
    assert said(caught.value) == "there is no alignment log here yet"
    assert not path.exists()


def test_an_empty_file_is_an_empty_log(path: Path) -> None:
    path.touch()
    with pytest.raises(LogUnusable, match="nothing was ever added"):
        Book.open(path)
    with Book.create(path) as book:
        assert book.add(record()) == 1


@pytest.mark.parametrize(
    "content", [b"number,date\r\n1,2026-01-05\r\n" * 50, b"\x00" * 5000, b"SQLite format 3\x00" + b"\xff" * 5000]
)
def test_another_kind_of_file_is_left_as_it_was(path: Path, content: bytes) -> None:
    path.write_bytes(content)
    for opened in (Book.open, Book.create):
        with pytest.raises(LogUnusable):
            opened(path)
    assert path.read_bytes() == content


def test_a_database_of_something_else_is_left_as_it_was(path: Path) -> None:
    with by_hand(path) as connection:
        connection.execute("CREATE TABLE tools (name TEXT)")
    before = path.read_bytes()
    for opened in (Book.open, Book.create):
        with pytest.raises(LogUnusable, match="is no alignment log"):
            opened(path)
    assert path.read_bytes() == before


def test_a_newer_log_is_refused_and_left_as_it_was(path: Path) -> None:
    filled(path)
    with by_hand(path) as connection:
        connection.execute(f"PRAGMA user_version={VERSION + 1}")
    before = path.read_bytes()
    for opened in (Book.open, Book.create):
        with pytest.raises(LogUnusable, match="newer tailtrue"):
            opened(path)
    assert path.read_bytes() == before


def test_a_log_without_its_guards_is_not_believed(path: Path) -> None:
    filled(path)
    with by_hand(path) as connection:
        connection.execute("DROP TRIGGER record_keeps")
    with pytest.raises(LogUnusable, match="shape of an alignment log"):
        Book.open(path)


Content = tuple[tuple[Entry, ...], tuple[Unread, ...]]


def everything(path: Path) -> Content:
    with Book.open(path) as book:
        return book.records(struck=True), book.unread(struck=True)


def content(path: Path) -> Content | None:
    """Everything in a log, None when it is refused."""
    try:
        return everything(path)
    except LogUnusable:
        return None


def taken_out(path: Path, *statements: str) -> None:
    """Do to the file what its triggers forbid, and put the triggers back."""
    with by_hand(path) as connection:
        triggers = connection.execute("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'").fetchall()
        for name, _ in triggers:
            connection.execute(f"DROP TRIGGER {name}")
        for statement in (*statements, *(sql for _, sql in triggers)):
            connection.execute(statement)


@pytest.mark.parametrize(
    ("statement", "says"),
    [
        ("DELETE FROM record WHERE number = 2", "record 2: does not read as it was written"),
        ("DELETE FROM record WHERE number = 3", "record 3: is missing"),
        ("DELETE FROM record", "record 1: is missing"),
        ("DELETE FROM strike", "strike 1: is missing"),
        ("DELETE FROM unread", "unread 1: is missing"),
        ("UPDATE record SET body = replace(body, '69.84', '69.48') WHERE number = 1", "record 1: does not read"),
        ("UPDATE strike SET body = replace(body, '2', '1')", "strike 1: does not read"),
        ("UPDATE record SET body = CAST(body AS BLOB) WHERE number = 1", "record 1: does not read"),
    ],
)  # fmt: skip
def test_a_row_that_is_gone_or_changed_is_damage(path: Path, statement: str, says: str) -> None:
    taken_out(filled(path), statement)
    with pytest.raises(LogUnusable) as caught:
        everything(path)
    (problem,) = caught.value.problems
    assert says in f"{problem.said}: {problem.wrong}"
    assert "put the file aside" in problem.do


def test_flipped_bytes_never_make_another_record(path: Path) -> None:
    """Wherever a byte turns over, the log says so, or gives just what was written."""
    filled(path)
    whole = path.read_bytes()
    right = content(path)
    refused = 0
    for place in range(0, len(whole), 41):
        flip = 0x80 if place % 2 else 0x01
        path.write_bytes(whole[:place] + bytes([whole[place] ^ flip]) + whole[place + 1 :])
        found = content(path)
        assert found in (None, right), place
        refused += found is None
    assert refused > 100


def test_every_flipped_byte_of_the_head_is_told_or_harmless(path: Path) -> None:
    filled(path)
    whole = path.read_bytes()
    right = content(path)
    for place in range(100):
        path.write_bytes(whole[:place] + bytes([whole[place] ^ 0xFF]) + whole[place + 1 :])
        assert content(path) in (None, right), place


def test_a_log_cut_short_never_makes_another_record(path: Path) -> None:
    filled(path, 12)
    whole = path.read_bytes()
    right = content(path)
    refused = 0
    for length in range(1, len(whole), 997):
        path.write_bytes(whole[:length])
        found = content(path)
        assert found in (None, right), length
        refused += found is None
    assert refused > len(whole) / 997 - 3
