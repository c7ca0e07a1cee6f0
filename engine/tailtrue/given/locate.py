"""On which line of a TOML file each key and each list entry stands; the standard reader does not tell.

Only text that the standard reader has accepted comes here, so the scanner follows the shape of the language and checks
nothing.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

Path = tuple[str | int, ...]

_BARE = re.compile(r"[A-Za-z0-9_-]+")
_BASIC = re.compile(r'"(?:[^"\\]|\\.)*"')
_LITERAL = re.compile(r"'[^']*'")
_LONG_BASIC = re.compile(r'"""(?:[^\\]|\\.)*?"""(?:"{0,2})', re.DOTALL)
_LONG_LITERAL = re.compile(r"'''.*?'''(?:'{0,2})", re.DOTALL)
_BLANK = re.compile(r"(?:[ \t\r\n]|#[^\n]*)*")
_SPACE = re.compile(r"[ \t]*")
_SCALAR = re.compile(r"[^,\]}#\r\n]*")
_ESCAPE = re.compile(r"\\(u[0-9A-Fa-f]{4}|U[0-9A-Fa-f]{8}|.)")
_ESCAPED = {"b": "\b", "t": "\t", "n": "\n", "f": "\f", "r": "\r", "e": "\x1b"}


@dataclass(frozen=True)
class Lines:
    """Lines by path; a path that is not there has the line of what holds it."""

    by_path: Mapping[Path, int]

    def line(self, *path: str | int) -> int:
        """The line of a path, counted from one."""
        while path and path not in self.by_path:
            path = path[:-1]
        return self.by_path.get(path, 1)


def locate(text: str) -> Lines:
    """The line of every key, table and list entry of a TOML text.

    >>> locate('[lathe]\\nspeeds = [\\n  "65 1/min",\\n]').line("lathe", "speeds", 0)
    3
    """
    return Lines(_Scanner(text).scan())


@dataclass
class _Scanner:
    text: str
    at: int = 0
    line: int = 1
    found: dict[Path, int] = field(default_factory=dict)
    counts: dict[Path, int] = field(default_factory=dict)

    def scan(self) -> dict[Path, int]:
        table: Path = ()
        self._skip(_BLANK)
        while self.at < len(self.text):
            if self.text[self.at] == "[":
                table = self._header()
            else:
                self._pair(table)
            self._skip(_BLANK)
        return self.found

    def _skip(self, pattern: re.Pattern[str]) -> str:
        match = pattern.match(self.text, self.at)
        taken = match[0] if match else ""
        self.at += len(taken)
        self.line += taken.count("\n")
        return taken

    def _note(self, path: Path) -> None:
        self.found.setdefault(path, self.line)

    def _header(self) -> Path:
        many = self.text.startswith("[[", self.at)
        self.at += 2 if many else 1
        keys = self._key()
        self.at += 2 if many else 1
        path = self._inside((), keys[:-1])
        last = (*path, keys[-1])
        self._note(last)
        if many:
            number = self.counts.get(last, 0)
            self.counts[last] = number + 1
            last = (*last, number)
            self._note(last)
        elif last in self.counts:
            last = (*last, self.counts[last] - 1)
        return last

    def _inside(self, path: Path, keys: tuple[str, ...]) -> Path:
        """Follow keys down; in a list of tables that is the last table so far."""
        for key in keys:
            path = (*path, key)
            self._note(path)
            if path in self.counts:
                path = (*path, self.counts[path] - 1)
        return path

    def _pair(self, table: Path) -> None:
        keys = self._key()
        path = (*self._inside(table, keys[:-1]), keys[-1])
        self._note(path)
        self.at += 1  # the equals sign
        self._skip(_SPACE)
        self._value(path)

    def _key(self) -> tuple[str, ...]:
        keys = []
        while True:
            self._skip(_SPACE)
            keys.append(self._key_part())
            self._skip(_SPACE)
            if not self.text.startswith(".", self.at):
                return tuple(keys)
            self.at += 1

    def _key_part(self) -> str:
        if self.text[self.at] == '"':
            return _ESCAPE.sub(_unescaped, self._skip(_BASIC)[1:-1])
        if self.text[self.at] == "'":
            return self._skip(_LITERAL)[1:-1]
        return self._skip(_BARE)

    def _value(self, path: Path) -> None:
        start = self.text[self.at]
        if start == "[":
            self._list(path)
        elif start == "{":
            self._inline(path)
        elif start in "\"'":
            long, short = (_LONG_BASIC, _BASIC) if start == '"' else (_LONG_LITERAL, _LITERAL)
            self._skip(long if self.text.startswith(start * 3, self.at) else short)
        else:
            self._skip(_SCALAR)

    def _list(self, path: Path) -> None:
        self.at += 1
        number = 0
        self._skip(_BLANK)
        while self.text[self.at] != "]":
            self._note((*path, number))
            self._value((*path, number))
            number += 1
            self._skip(_BLANK)
            if self.text[self.at] == ",":
                self.at += 1
                self._skip(_BLANK)
        self.at += 1

    def _inline(self, path: Path) -> None:
        self.at += 1
        self._skip(_BLANK)
        while self.text[self.at] != "}":
            self._pair(path)
            self._skip(_BLANK)
            if self.text[self.at] == ",":
                self.at += 1
                self._skip(_BLANK)
        self.at += 1


def _unescaped(match: re.Match[str]) -> str:
    code = match[1]
    if len(code) > 1:
        return chr(int(code[1:], 16))
    return _ESCAPED.get(code, code)
