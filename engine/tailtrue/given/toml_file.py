"""Reading one TOML file: its tables and the lines they stand on, or one problem in the words of a shop."""

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from tailtrue.errors import Problem
from tailtrue.given.locate import Lines, locate
from tailtrue.given.quoting import harmless

_PLACE = re.compile(r"\(at line (\d+), column \d+\)")
_UNQUOTED = re.compile(r"""^(\s*[A-Za-z0-9_.-]+\s*=\s*)([^"'\[{\s][^#]*?)\s*(?:#.*)?$""")
_INCH_MARK = re.compile(r'^(\s*[A-Za-z0-9_.-]+\s*=\s*)"([^"\n]*")"\s*(?:#.*)?$')

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


def read_toml(path: Path, shown: str, look: str = "mend the name") -> TomlFile | Problem:
    """The tables of a file, or why there are none; `look` says what to do when it is not there."""
    try:
        if path.is_dir():
            return Problem(shown, "", "is a folder, not a file", "name the file in it")
        if path.exists() and not path.is_file():
            return Problem(shown, "", "is not a plain file", "name a TOML file")
        # A byte order mark, as some editors write it, is no part of the text.
        text = path.read_text(encoding="utf-8-sig")
    except FileNotFoundError:
        return Problem(shown, "", "there is no such file", look)
    except UnicodeDecodeError:
        return Problem(shown, "", "is not text in UTF-8", "save it again as UTF-8 text")
    except (OSError, ValueError) as trouble:
        reason = getattr(trouble, "strerror", None) or "its name cannot be used"
        return Problem(shown, "", f"cannot be read: {str(reason).lower()}", "mend the name or the rights of the file")
    return _parse(text, shown)


def _parse(text: str, shown: str) -> TomlFile | Problem:
    try:
        tables = tomllib.loads(text)
        return TomlFile(shown, tables, locate(text.replace("\r\n", "\n")))
    except RecursionError:
        return Problem(shown, "", "nests brackets too deeply", "take brackets out; no list needs more than one inside")
    except ValueError as broken:
        return _broken(text, shown, str(broken))


def _broken(text: str, shown: str, message: str) -> Problem:
    lines = text.splitlines() or [""]
    match = _PLACE.search(message)
    number = min(int(match[1]) if match else len(lines), len(lines))
    line = lines[number - 1]
    where = f"{shown}:{number}"
    said = harmless(line.strip())
    if any(word in message.lower() for word in _TWICE):
        return Problem(where, said, "is given a second time", "keep one of the two")
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
        return Problem(where, said, "the value stands without quotes", f'write {key} "{value}"')
    return Problem(where, said, "cannot be read as TOML", 'a line is: name = "value", or a heading in brackets')
