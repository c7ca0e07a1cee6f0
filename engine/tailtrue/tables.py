"""Tables of the knowledge: CSV rows with their sources, looked up without ever reaching past their ends."""

import csv
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path


class NoRow(LookupError):
    """A table has no row for what was asked: the message shows the nearest rows."""


@dataclass(frozen=True)
class Row:
    """One row: text cells by column, numbers on request."""

    table: str
    line: int
    cells: Mapping[str, str]

    def text(self, column: str) -> str:
        """The cell as text."""
        return self.cells[column]

    def number(self, column: str) -> float:
        """The cell as a number; NoRow when it is empty: an empty cell is unknown, never nought."""
        if self.cells[column] == "":
            raise NoRow(f"{self.table}, line {self.line}: {column} is not known")
        return float(self.cells[column])

    @property
    def sources(self) -> tuple[str, ...]:
        """The source keys of this row, places cut off."""
        return source_keys(self.cells.get("source", ""))


def source_keys(written: str) -> tuple[str, ...]:
    """Source keys of a cell such as ``handbook:p. 12; common-practice``.

    >>> source_keys("handbook:p. 12; common-practice")
    ('handbook', 'common-practice')
    """
    return tuple(part.split(":", 1)[0].strip() for part in written.split(";") if part.strip())


@dataclass(frozen=True)
class Table:
    """All rows of one CSV file."""

    name: str
    rows: tuple[Row, ...]
    used: Callable[[Row], None] | None = None

    def noting(self, used: Callable[[Row], None]) -> "Table":
        """The same table, telling `used` of each row that is taken."""
        return Table(self.name, self.rows, used)

    def __iter__(self) -> Iterator[Row]:
        return iter(self.rows)

    def take(self, row: Row) -> Row:
        """Note that a row was used."""
        if self.used is not None:
            self.used(row)
        return row

    def where(self, **cells: str) -> tuple[Row, ...]:
        """Rows whose cells are just these."""
        found: Sequence[Row] = self.rows
        for column, cell in cells.items():
            found = [row for row in found if row.cells.get(column) == cell]
        return tuple(found)

    def one(self, **cells: str) -> Row:
        """The one row with these cells; NoRow when there is none or more than one."""
        found = self.where(**cells)
        if len(found) != 1:
            asked = ", ".join(f"{k} {v}" for k, v in cells.items())
            raise NoRow(f"{self.name}: {'no row' if not found else 'more than one row'} for {asked}")
        return self.take(found[0])

    def within(self, value: float, low: str, high: str, *, ends: str = "(]", **cells: str) -> Row:
        """The row whose interval holds a value; ``(]`` takes the upper end in, ``[)`` the lower.

        Raises NoRow beyond the ends of the table: there is no extrapolation.
        """
        near = []
        for row in self.where(**cells):
            bottom = float(row.cells[low]) if row.cells[low] else float("-inf")
            top = float(row.cells[high]) if row.cells[high] else float("inf")
            inside = bottom < value <= top if ends == "(]" else bottom <= value < top
            if inside:
                return self.take(row)
            near.append(f"{row.cells[low] or 'below'} to {row.cells[high] or 'above'}")
        asked = ", ".join(f"{k} {v}" for k, v in cells.items())
        raise NoRow(f"{self.name}: nothing for {value:g}{' with ' + asked if asked else ''}; rows are {'; '.join(near)}")


def read_table(path: Path, name: str) -> Table:
    """Read a CSV file of the knowledge."""
    with path.open(encoding="utf-8", newline="") as opened:
        reader = csv.DictReader(opened)
        rows = tuple(Row(name, number, dict(row)) for number, row in enumerate(reader, start=2))
    return Table(name, rows)


def read_tables(folder: Path) -> dict[str, Table]:
    """Every CSV file below a folder, by its path without the ending (``cutting/speeds``)."""
    tables = {}
    for path in sorted(folder.rglob("*.csv")):
        name = path.relative_to(folder).with_suffix("").as_posix()
        tables[name] = read_table(path, name)
    return tables
