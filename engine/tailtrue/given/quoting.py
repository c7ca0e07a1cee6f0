"""What the user wrote, shown back on one line: short, harmless to a terminal, and as it would stand in the file."""

from collections.abc import Mapping, Sequence
from datetime import date, datetime, time
from typing import Any

_LONGEST = 60


def as_written(value: Any) -> str:
    """A value of a TOML file much as its author wrote it.

    >>> as_written('1/2"')
    '\\'1/2"\\''
    >>> as_written(["65 1/min", True])
    '["65 1/min", true]'
    """
    return _cut(_written(value))


def pair(key: str, value: Any) -> str:
    """A key and its value on one line."""
    return f"{harmless(key)} = {as_written(value)}"


def harmless(text: str) -> str:
    """Text without control characters, cut to a length that fits a line."""
    return _cut(printable(text))


def printable(text: str) -> str:
    """Text without control characters, of any length: the path of a file is of no use when it is cut."""
    return "".join(c if c.isprintable() else "\N{REPLACEMENT CHARACTER}" for c in text)


def _written(value: Any) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        shown = harmless(value)
        return f"'{shown}'" if '"' in shown else f'"{shown}"'
    if isinstance(value, Mapping):
        return "a table"
    if isinstance(value, Sequence):
        return f"[{', '.join(_written(one) for one in value[:_LONGEST])}]"
    if isinstance(value, date | datetime | time):
        return value.isoformat()
    return str(value)


def _cut(text: str) -> str:
    return text if len(text) <= _LONGEST else f"{text[: _LONGEST - 3]}..."
