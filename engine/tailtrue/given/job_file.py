"""The job file as it was named on the command line: a folder, a slip of the pen or another file says which to give."""

import difflib
import re
from collections.abc import Iterator
from pathlib import Path

from tailtrue.errors import FactsWrong, Problem
from tailtrue.given.entries import FILES
from tailtrue.given.quoting import printable
from tailtrue.given.suggest import closest
from tailtrue.given.toml_file import Bare, TomlFile, read_toml

_MOST_NAMED = 6
_LARGEST_BYTES = 1_000_000
_HEADING = re.compile(r"^\s*\[\s*job\s*\]", re.MULTILINE)


def read_job_file(path: Path, bare: Bare | None) -> TomlFile:
    """The job file.

    Raises FactsWrong, with the job files that are there, when this is none.
    """
    if path.is_dir():
        folder = printable(str(path.resolve()))
        found = job_files(path)
        none = "no file in it begins with the line [job]; copy the folder of an example"
        do = f"give the job file in it: {_named(found)}" if found else none
        raise FactsWrong([Problem(folder, "", "is a folder; a job file is needed", do)])
    file = read_toml(path, path.name, _instead(path), bare)
    if isinstance(file, Problem):
        raise FactsWrong([file])
    other = next((kind for kind in FILES[1:] if kind in file.tables), None)
    if "job" not in file.tables and other:
        found = job_files(path.parent)
        do = f"give the job file that names it: {_named(found)}" if found else "give the job file that names it"
        raise FactsWrong([Problem(file.place(other), f"[{other}]", f"is a {other} file, not a job file", do)])
    if file.tables and "job" not in file.tables and all(_is_no_slip(key, one) for key, one in file.tables.items()):
        found = job_files(path.parent)
        do = f"give a job file: {_named(found)}" if found else "begin a job file with the line [job]"
        raise FactsWrong([Problem(file.place(), "", "is no job file: it holds no table [job]", do)])
    return file


def _is_no_slip(key: str, raw: object) -> bool:
    """Whether this is a table of another kind of file, and no table [job] that was misspelt."""
    return isinstance(raw, dict | list) and closest(key, ["job"]) is None


def _instead(path: Path) -> str:
    """What to do about a file that is not there."""
    folder = path.parent
    if not folder.is_dir():
        return f"there is no folder {printable(str(folder))} either; mend the name"
    found = job_files(folder)
    if not found:
        return f"mend the name; no job file is in {printable(str(folder)) if folder.name else 'this folder'}"
    near = difflib.get_close_matches(path.name, [one.name for one in found], n=1)
    first = sorted(found, key=lambda one: one.name not in near)
    return f"mend the name; job files there: {_named(tuple(first))}"


def job_files(folder: Path) -> tuple[Path, ...]:
    """The job files of a folder, the one of the usual name first."""
    return tuple(sorted(_job_files(folder), key=lambda one: (one.name != "job.toml", one.name)))


def _job_files(folder: Path) -> Iterator[Path]:
    for path in folder.glob("*.toml"):
        try:
            if path.is_file() and path.stat().st_size < _LARGEST_BYTES and _HEADING.search(path.read_text("utf-8-sig")):
                yield path
        except (OSError, ValueError):
            continue


def _named(found: tuple[Path, ...]) -> str:
    shown = ", ".join(printable(str(path)) for path in found[:_MOST_NAMED])
    more = len(found) - _MOST_NAMED
    return f"{shown} and {more} more" if more > 0 else shown
