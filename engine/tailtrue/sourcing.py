"""What a source cell says: sources for a whole row, or for the columns that each stands behind.

``handbook:p. 12; common-practice`` stands behind every cell of its row. ``handbook:p. 12 + maker [torque]; memory [*]``
says it column by column: two sources for one, and memory for every other.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache, cached_property
from typing import NamedTuple

# What tells of a row, and is no value of the trade that a source would stand behind.
ABOUT_THE_ROW = ("source", "checked_on", "note")
REST = "*"
_COLUMNS = re.compile(r"(.*?)\s*\[([^\[\]]*)\]")


class Part(NamedTuple):
    """Sources that stand behind the same columns; no columns: behind the whole row."""

    sources: tuple[str, ...]
    columns: tuple[str, ...]


@dataclass(frozen=True)
class SourceCell:
    """A source cell, taken apart once."""

    parts: tuple[Part, ...]

    @cached_property
    def keys(self) -> tuple[str, ...]:
        """Every source that is named, places cut off."""
        return _keys(self.parts)

    @cached_property
    def by_column(self) -> bool:
        """Whether the cell says for single columns where they are from."""
        return any(part.columns for part in self.parts)

    def keys_of(self, column: str) -> tuple[str, ...]:
        """The sources of one column; what no part names is taken to hang on every source of the row."""
        if not self.by_column:
            return self.keys
        own = [part for part in self.parts if column in part.columns] or [
            part for part in self.parts if REST in part.columns
        ]
        return _keys(own) or self.keys

    def faults(self, numbers: Iterable[str], columns: Iterable[str]) -> Iterator[str]:
        """What is wrong with a cell that speaks of columns, in a row with these columns, and numbers in some of them."""
        if not self.by_column:
            return
        known = set(columns) - set(ABOUT_THE_ROW)
        named = [column for part in self.parts for column in part.columns]
        sources = [" + ".join(part.sources) for part in self.parts]
        for part in self.parts:
            if not part.columns:
                yield f"source '{' + '.join(part.sources)}' says no columns, and others do"
            if not part.sources:
                yield f"no source before [{', '.join(part.columns)}]"
        yield from (f"column '{column}' is named twice" for column in _twice(named))
        yield from (f"source '{source}' is named twice: write its columns together" for source in _twice(sources))
        yield from (f"no column is named '{column}'" for column in named if column != REST and column not in known)
        if REST not in named:
            yield from (f"column '{column}' has no source" for column in numbers if column not in named)
        elif known <= set(named):
            yield f"[{REST}] stands for no column: every one is named"


@cache
def source_cell(written: str) -> SourceCell:
    """A source cell taken apart.

    >>> source_cell("handbook:p. 12 + maker [torque]; memory [*]").keys_of("torque")
    ('handbook', 'maker')
    >>> source_cell("handbook:p. 12; common-practice").keys_of("torque")
    ('handbook', 'common-practice')
    """
    return SourceCell(tuple(_part(text.strip()) for text in written.split(";") if text.strip()))


def _part(text: str) -> Part:
    found = _COLUMNS.fullmatch(text)
    sources, columns = (found[1], found[2]) if found else (text, "")
    named = tuple(column.strip() for column in columns.split(",")) if found else ()
    return Part(tuple(one.strip() for one in sources.split(" + ") if one.strip()), named)


def _keys(parts: Iterable[Part]) -> tuple[str, ...]:
    written = (source for part in parts for source in part.sources)
    return tuple(dict.fromkeys(source.split(":", 1)[0].strip() for source in written))


def _twice(names: list[str]) -> list[str]:
    return sorted({name for name in names if names.count(name) > 1})
