"""Which knowledge this is, and which engine reads it."""

import hashlib
import os
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pydantic

_PACKAGE = Path(__file__).resolve().parent.parent


def knowledge_version(folder: Path) -> str:
    """A short fingerprint of every file of the knowledge, names and contents."""
    return _read(folder)[0][:8]


@cache
def made_from(folder: Path) -> str:
    """Everything that the loaded knowledge of a folder hangs on: each file by name, size and content, and the engine.

    The engine's own files are told apart as Python tells its compiled modules apart, by size and time of change.
    """
    digest, sizes = _read(folder)
    engine = [(name, *_size_and_time(path)) for name, path in _files(_PACKAGE, ".py")]
    said = repr((str(folder), digest, sizes, engine, sys.version, pydantic.VERSION))
    return hashlib.sha256(said.encode()).hexdigest()


def _read(folder: Path) -> tuple[str, tuple[tuple[tuple[str, ...], int], ...]]:
    digest = hashlib.sha256()
    sizes = []
    for name, path in _files(folder):
        digest.update("/".join(name).encode())
        with open(path, "rb") as opened:
            content = opened.read()
        digest.update(content)
        sizes.append((name, len(content)))
    return digest.hexdigest(), tuple(sizes)


def _size_and_time(path: str) -> tuple[int, int]:
    found = os.stat(path)
    return found.st_size, found.st_mtime_ns


def _files(folder: Path, ending: str = "") -> list[tuple[tuple[str, ...], str]]:
    """Every file below a folder, its name in parts, in order of these."""
    return sorted(_below(str(folder), (), ending))


def _below(folder: str, above: tuple[str, ...], ending: str) -> Iterator[tuple[tuple[str, ...], str]]:
    with os.scandir(folder) as found:
        for entry in found:
            name = (*above, entry.name)
            if entry.is_dir():
                yield from _below(entry.path, name, ending)
            elif entry.is_file() and entry.name.endswith(ending):
                yield name, entry.path
