"""The log among others: two that write at once, one that holds it, one that may not write."""

import json
import multiprocessing
import os
import shutil
import sqlite3
import tempfile
from pathlib import Path

import pytest

from tailtrue.log.book import Book
from tailtrue.log.faults import LogUnusable

from .sample import check, filled, record

# The child does nothing but its work and ends; threads of the test runner do not matter to it.
of_forking = pytest.mark.filterwarnings("ignore:.*fork.*:DeprecationWarning")


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "alignment-log.sqlite"


def add_many(path: Path, start: int, count: int, gate: "multiprocessing.synchronize.Event") -> None:
    gate.wait()
    with Book.create(path) as book:
        for day in range(start, start + count):
            book.add(check(1, day))


@of_forking
def test_two_processes_add_at_once_and_both_succeed(path: Path) -> None:
    """Even the file itself is made by whoever comes first."""
    fork = multiprocessing.get_context("fork")
    gate = fork.Event()
    workers = [fork.Process(target=add_many, args=(path, start, 20, gate)) for start in (0, 100, 200)]
    for worker in workers:
        worker.start()
    gate.set()
    for worker in workers:
        worker.join(60)
        assert worker.exitcode == 0
    with Book.open(path) as book:
        days = sorted(one.record.date_time for one in book.records())
        assert days == sorted(check(1, start + day).date_time for start in (0, 100, 200) for day in range(20))


def test_a_log_that_another_program_holds_is_told(path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("tailtrue.log.storage.BUSY_S", 0.05)
    filled(path)
    holder = sqlite3.connect(path, isolation_level=None)
    with Book.open(path) as book:
        holder.execute("BEGIN IMMEDIATE")
        with pytest.raises(LogUnusable, match="another program is writing"):
            book.add(record())
        holder.execute("ROLLBACK")
        assert book.add(record()) == 4
    holder.close()


def test_a_closed_book_says_so(path: Path) -> None:
    book = Book.create(path)
    book.close()
    with pytest.raises(LogUnusable, match="the log is closed"):
        book.records()


def test_a_folder_that_is_not_there_is_told(tmp_path: Path) -> None:
    with pytest.raises(LogUnusable, match="cannot be opened or made"):
        Book.create(tmp_path / "nowhere" / "alignment-log.sqlite")
    with pytest.raises(LogUnusable, match="cannot be opened or made"):
        Book.open(tmp_path)


def in_a_child_without_rights(folder: Path, path: Path) -> str:
    """What reading and adding say to somebody who may read the folder and not write to it."""
    read_end, write_end = os.pipe()
    child = os.fork()
    if child == 0:
        told = []
        try:
            if os.getuid() == 0:
                os.setgid(65534)
                os.setuid(65534)
            for opened in (Book.open, Book.create):
                with opened(path) as book:
                    told.append(str(len(book.records())))
                    try:
                        book.add(record())
                    except LogUnusable as refused:
                        told.append(refused.problems[0].wrong)
            try:
                Book.create(folder / "other.sqlite")
            except LogUnusable as refused:
                told.append(refused.problems[0].wrong)
        except BaseException as unexpected:
            told.append(repr(unexpected))
        os.write(write_end, json.dumps(told).encode())
        os._exit(0)
    os.close(write_end)
    os.waitpid(child, 0)
    with os.fdopen(read_end) as pipe:
        return pipe.read()


@of_forking
def test_a_folder_without_the_right_to_write_is_read_and_told() -> None:
    folder = Path(tempfile.mkdtemp())
    path = filled(folder / "alignment-log.sqlite")
    before = path.read_bytes()
    path.chmod(0o444)
    folder.chmod(0o555)
    try:
        told = json.loads(in_a_child_without_rights(folder, path))
    finally:
        folder.chmod(0o755)
        after = path.read_bytes()
        shutil.rmtree(folder)
    assert told == ["2", "may not be written to", "2", "may not be written to", "cannot be opened or made"]
    assert after == before
