"""Writers of a log that are killed at any moment. A program of its own: it is small, so that a writer is soon forked."""

import json
import os
import random
import select
import signal
import sqlite3
import sys
import tempfile
import time
from contextlib import closing
from pathlib import Path

from tailtrue.log.book import Book

from .sample import by_indicator, check

A_BOOK = 40  # kills before a fresh book, so that the file is also made under fire
# One kill in four falls while the log is made or opened, the others after a first record.
WHILE_OPENING, LONGEST_S = 4, 0.003


def write_until_killed(path: Path, seed: int, acknowledge: int) -> None:
    number = 0
    with Book.create(path) as book:
        while True:
            # Every third one needs the second version of the log, so that its step is taken under fire as well.
            made = by_indicator if number % 3 == 2 else check
            added = made(number % 7, number, operator=f"{seed}", remarks="long enough to fill a page " * 20)
            book.add(added)
            os.write(acknowledge, f"{added.log_id}\n".encode())
            number += 1


def killed_once(path: Path, seed: int, moment_s: float) -> list[str]:
    """Ids of the records that one process saw added before it was killed."""
    read_end, write_end = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(read_end)
        try:
            write_until_killed(path, seed, write_end)
        finally:
            os._exit(1)
    os.close(write_end)
    if seed % WHILE_OPENING:
        select.select([read_end], [], [], 10)
    time.sleep(moment_s)
    os.kill(child, signal.SIGKILL)
    _, status = os.waitpid(child, 0)
    assert os.WIFSIGNALED(status), "the writer ended by itself"
    with os.fdopen(read_end) as pipe:
        return pipe.read().split()


def counts_of(kills: int, folder: Path) -> dict[str, int]:
    """What was met in so many kills; an AssertionError where a record was lost or torn."""
    chance = random.Random(20260105)
    acknowledged = survived_unheard = hot = 0
    for round_ in range(kills // A_BOOK):
        path = folder / f"log-{round_}.sqlite"
        told: list[str] = []
        for kill in range(A_BOOK):
            told += killed_once(path, round_ * A_BOOK + kill, chance.uniform(0, LONGEST_S))
            hot += Path(f"{path}-journal").exists()
        with Book.create(path) as book:
            records = [entry.record for entry in book.records()]
            found = {one.log_id for one in records}
        assert set(told) <= found
        with closing(sqlite3.connect(path)) as connection:
            assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
            assert connection.execute("SELECT count(*) FROM record").fetchone() == (len(found),)
            assert connection.execute("PRAGMA user_version").fetchone() == (max(one.version for one in records),)
        acknowledged += len(told)
        survived_unheard += len(found) - len(told)
    return {"acknowledged": acknowledged, "survived unheard": survived_unheard, "hot": hot}


if __name__ == "__main__":
    # In memory where there is such a folder: a kill takes the process and leaves what it handed to the system.
    memory = Path("/dev/shm")
    with tempfile.TemporaryDirectory(dir=memory if os.access(memory, os.W_OK) else None) as made:
        print(json.dumps(counts_of(int(sys.argv[1]), Path(made))))
