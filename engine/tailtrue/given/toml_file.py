"""Reading one TOML file: its tables and the lines they stand on, or one problem in the words of a shop."""

import re
import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from tailtrue.errors import Problem
from tailtrue.given.locate import Lines, locate
from tailtrue.given.quoting import as_written, harmless

_PLACE = re.compile(r"\(at line (\d+), column \d+\)")
_TOO_MANY_DIGITS = re.compile(r"\d{500}")
_UNQUOTED = re.compile(r"""^(\s*[A-Za-z0-9_.-]+\s*=\s*)([^"'\[{\s][^#]*?)\s*(?:#.*)?$""")
_OPEN = re.compile(r"""^\s*[A-Za-z0-9_.-]+\s*=\s*"[^"]*$""")
_NO_COMMA = re.compile(r"""("[^"\[\]=,]+")\s+("[^"\[\]=,]+")""")
_INCH_MARK = re.compile(r'^(\s*[A-Za-z0-9_.-]+\s*=\s*)"([^"\n]*")"\s*(?:#.*)?$')

_HEADING = re.compile(r"^\s*\[+\s*([A-Za-z0-9_.-]+)\s*\]+")
_CURLY = "\u201c\u201d\u201e\u201f\u00ab\u00bb\u2018\u2019"
_STRAIGHT = str.maketrans(_CURLY, '"' * len(_CURLY))
_AS_UTF_8 = "save it again as plain text in UTF-8; a plain text editor does that, an office program under Save as"

# How a file begins that is no plain text, whatever its name.
_BEGINS = {
    b"PK\x03\x04": "is a document of an office program, or packed, and not plain text",
    b"{\\rtf": "is a document of an office program and not plain text",
    b"\xd0\xcf\x11\xe0": "is a document of an office program and not plain text",
    b"%PDF": "is a PDF and not plain text",
    b"\xff\xfe": "is text in UTF-16, as some editors save it",
    b"\xfe\xff": "is text in UTF-16, as some editors save it",
}

# What a reader of values says of one that stands without quotes, below a heading: what is wrong and what to do.
Bare = Callable[[str, str, str], tuple[str, str] | None]

_TWICE = ("overwrite", "twice", "mutate", "duplicate")
_YES_NO = {"yes": "true", "true": "true", "no": "false", "false": "false"}


@dataclass(frozen=True)
class TomlFile:
    """A file as read: how it is named to the user, its tables, its lines."""

    shown: str
    tables: Mapping[str, Any]
    lines: Lines

    def place(self, *path: str | int) -> str:
        """File and line of a key."""
        return f"{self.shown}:{self.lines.line(*path)}"


def read_toml(path: Path, shown: str, look: str = "mend the name", bare: Bare | None = None) -> TomlFile | Problem:
    """The tables of a file, or why there are none; `look` says what to do when it is not there."""
    try:
        if path.is_dir():
            return Problem(shown, "", "is a folder, not a file", "name the file in it")
        if path.exists() and not path.is_file():
            return Problem(shown, "", "is not a plain file", "name a TOML file")
        content = path.read_bytes()
    except FileNotFoundError:
        return Problem(shown, "", "there is no such file", look)
    except (OSError, ValueError) as trouble:
        reason = getattr(trouble, "strerror", None) or "its name cannot be used"
        return Problem(shown, "", f"cannot be read: {str(reason).lower()}", "mend the name or the rights of the file")
    for begins, wrong in _BEGINS.items():
        if content.startswith(begins):
            return Problem(shown, "", wrong, _AS_UTF_8)
    if content[:1] + content[2:3] == b"\0\0" or content[1:2] + content[3:4] == b"\0\0":
        # Without the mark at its head: every other byte of plain letters is nought.
        return Problem(shown, "", _BEGINS[b"\xff\xfe"], _AS_UTF_8)
    if b"\0" in content:
        return Problem(shown, "", "is not text", "name a TOML file, which a plain text editor shows")
    try:
        # A byte order mark, as some editors write it, is no part of the text.
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as wrong_byte:
        line = content.count(b"\n", 0, wrong_byte.start) + 1
        return Problem(f"{shown}:{line}", "", "holds a letter that is not in UTF-8", _AS_UTF_8)
    if "\r" in text.replace("\r\n", ""):
        return Problem(shown, "", "ends its lines in a way that TOML does not know", _AS_UTF_8)
    return _parse(text, shown, bare)


def _parse(text: str, shown: str, bare: Bare | None) -> TomlFile | Problem:
    try:
        tables = tomllib.loads(text)
        return TomlFile(shown, tables, locate(text.replace("\r\n", "\n")))
    except RecursionError:
        lines = text.splitlines()
        number = max(range(len(lines)), key=lambda at: lines[at].count("[") + lines[at].count("{")) + 1
        do = "take brackets out; no list needs more than one inside"
        return Problem(f"{shown}:{number}", harmless(lines[number - 1].strip()), "nests brackets too deeply", do)
    except tomllib.TOMLDecodeError as broken:
        return _broken(text, shown, str(broken), bare)
    except ValueError:
        # A whole number of thousands of digits: the reader gives it up without telling the line.
        lines = text.splitlines()
        number = next((at for at, line in enumerate(lines, start=1) if _TOO_MANY_DIGITS.search(line)), 1)
        said = harmless(lines[number - 1].strip())
        return Problem(f"{shown}:{number}", said, "holds a number of too many digits", "write the number that is meant")


def _broken(text: str, shown: str, message: str, judge: Bare | None) -> Problem:
    lines = text.splitlines() or [""]
    match = _PLACE.search(message)
    number = min(int(match[1]) if match else len(lines), len(lines))
    line = lines[number - 1]
    where = f"{shown}:{number}"
    said = harmless(line.strip())
    if any(word in message.lower() for word in _TWICE):
        return Problem(where, said, "is given a second time", "keep one of the two")
    if any(mark in line for mark in _CURLY) and '"' not in line:
        straight = harmless(line.strip().translate(_STRAIGHT))
        return Problem(where, said, "the quotation marks are curly, as an office program sets them", f"write {straight}")
    if inch := _INCH_MARK.match(line):
        return Problem(
            where, said, "the inch mark ends the text", f"write {harmless(inch[1].strip())} '{harmless(inch[2])}'"
        )
    if "\\" in line and ("escape" in message.lower() or "\\" in message):
        return Problem(where, said, "a backslash means something else in quotes", "write / in the names of files")
    if bare := _UNQUOTED.match(line):
        key, value = harmless(bare[1].strip()), harmless(bare[2])
        if yes_no := _YES_NO.get(value.casefold()):
            return Problem(where, said, "yes and no are written true and false", f"write {key} {yes_no}")
        headings = [found[1] for one in lines[: number - 1] if (found := _HEADING.match(one))]
        name = key.rstrip("= ")
        if judge and (judged := judge(headings[-1] if headings else "", name, value)):
            return Problem(where, said, *judged)
        return Problem(where, said, "the value stands without quotes", f"write {key} {as_written(bare[2])}")
    if _OPEN.match(line):
        return Problem(where, said, "the quotation marks are not closed", f'write {said}"')
    if apart := _NO_COMMA.search(line):
        do = f"write {harmless(apart[1])}, {harmless(apart[2])}"
        return Problem(where, said, "no comma stands between two entries of a list", do)
    return Problem(where, said, "cannot be read as TOML", 'a line is: name = "value", or a heading in brackets')
