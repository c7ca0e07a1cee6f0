"""Tables of the knowledge that a user's word must be found in."""

from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from tailtrue.tables import Row, read_table

_SEPARATOR = ";"


@dataclass(frozen=True)
class References:
    """The CSV tables of one knowledge folder, each read when it is first asked for."""

    folder: Path

    @cached_property
    def _read(self) -> dict[str, tuple[Row, ...]]:
        return {}

    def rows(self, table: str) -> tuple[Row, ...]:
        """The rows of a table, none when there is no such table."""
        if table not in self._read:
            path = self.folder / f"{table}.csv"
            self._read[table] = read_table(path, table).rows if path.is_file() else ()
        return self._read[table]

    def exists(self, table: str, column: str) -> bool:
        """Whether the table is there, holds something, and has this column."""
        rows = self.rows(table)
        return bool(rows) and column in rows[0].cells

    def words(self, table: str, column: str, role: str = "") -> tuple[str, ...]:
        """What a column holds, each once, in the order of the table; of the rows with a role, when one is asked."""
        rows = (row for row in self.rows(table) if not role or role in roles_of(row))
        return tuple(dict.fromkeys(row.text(column) for row in rows))


def roles_of(row: Row) -> tuple[str, ...]:
    """What the thing in a row may be used as.

    >>> roles_of(Row("materials", 2, {"roles": "bar; collar"}))
    ('bar', 'collar')
    """
    written = row.cells.get("roles") or ""
    return tuple(role.strip() for role in written.split(_SEPARATOR) if role.strip())
