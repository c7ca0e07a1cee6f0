"""Tables of the knowledge: CSV rows with their sources, looked up without ever reaching past their ends."""

import csv
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from itertools import product
from pathlib import Path

from tailtrue.sourcing import SourceCell, source_cell

_BETWEEN = "; "  # stands between the entries of a cell that says the same of several


class NoRow(LookupError):
    """A table has no row for what was asked: `table` is its place, `told` shows the nearest rows."""

    def __init__(self, table: str, told: str) -> None:
        self.table, self.told = table, told
        super().__init__(f"{table}: {told}")


@dataclass(frozen=True)
class Row:
    """One row: text cells by column, numbers on request."""

    table: str
    line: int
    cells: Mapping[str, str]
    read: dict[str, None] | None = field(default=None, compare=False, repr=False)

    def text(self, column: str) -> str:
        """The cell as text."""
        if self.read is not None:
            self.read[column] = None
        return self.cells[column]

    def number(self, column: str) -> float:
        """The cell as a number; NoRow when it is empty: an empty cell is unknown, never nought."""
        written = self.text(column)
        if written == "":
            raise NoRow(f"{self.table}, line {self.line}", f"{column} is not known")
        return float(written)

    def yes(self, column: str) -> bool:
        """Whether a cell says yes.

        >>> Row("t", 2, {"spacer": "no"}).yes("spacer")
        False
        """
        return self.text(column) == "yes"

    def all_said(self, column: str) -> tuple[str | None, ...]:
        """What a cell says: itself, and each entry where it is a list ``this; that``.

        >>> Row("t", 2, {"tool": "HSS; carbide"}).all_said("tool")
        ('HSS; carbide', 'HSS', 'carbide')
        """
        written = self.cells.get(column)
        if written is None or _BETWEEN not in written:
            return (written,)
        return (written, *dict.fromkeys(written.split(_BETWEEN)))

    def says(self, column: str, wanted: str) -> bool:
        """Whether a cell is just this, or lists it among others."""
        return wanted in self.all_said(column)

    def listed(self, column: str) -> tuple[str, ...]:
        """The entries of a cell that holds a list.

        >>> Row("t", 2, {"operations": "turn-rough; turn-finish"}).listed("operations")
        ('turn-rough', 'turn-finish')
        """
        return tuple(self.text(column).split(_BETWEEN))

    @property
    def source_cell(self) -> SourceCell:
        """What the row says about where its cells are from."""
        return source_cell(self.cells.get("source") or "")

    @property
    def sources(self) -> tuple[str, ...]:
        """The source keys of this row, places cut off."""
        return self.source_cell.keys


def source_keys(written: str) -> tuple[str, ...]:
    """Source keys of a cell such as ``handbook:p. 12; common-practice``.

    >>> source_keys("handbook:p. 12; common-practice")
    ('handbook', 'common-practice')
    """
    return tuple(part.split(":", 1)[0].strip() for part in written.split(";") if part.strip())


class Uses:
    """What one computation takes from tables: rows, and which of their cells it reads."""

    def __init__(self) -> None:
        self._read: dict[tuple[str, int], dict[str, None]] = {}
        self._taken: dict[tuple[str, int], Row] = {}

    def watch(self, row: Row) -> Row:
        """The row, telling here which of its cells are read."""
        return Row(row.table, row.line, row.cells, self._read.setdefault((row.table, row.line), {}))

    def take(self, row: Row) -> None:
        """Note that the result rests on this row."""
        self._taken[row.table, row.line] = row

    def sources(self) -> tuple[str, ...]:
        """The sources of the cells that were read of rows taken; of a row taken and not read, all of them."""
        found: dict[str, None] = {}
        for place, row in self._taken.items():
            cell, read = row.source_cell, self._read.get(place)
            keys = (key for column in read for key in cell.keys_of(column)) if read else cell.keys
            found |= dict.fromkeys(keys)
        return tuple(found)


@dataclass(frozen=True)
class Table:
    """All rows of one CSV file."""

    name: str
    rows: tuple[Row, ...]
    uses: Uses | None = None
    # The table of the knowledge, for one that notes what is read of it.
    of: "Table | None" = field(default=None, compare=False, repr=False)

    def noting(self, uses: Uses) -> "Table":
        """The same table, telling `uses` of each row that is taken and each cell that is read."""
        return Table(self.name, self.rows, uses, self)

    def __iter__(self) -> Iterator[Row]:
        return map(self._watched, self.rows)

    def _watched(self, row: Row) -> Row:
        return self.uses.watch(row) if self.uses is not None else row

    def take(self, row: Row) -> Row:
        """Note that a row was used."""
        if self.uses is not None:
            self.uses.take(row)
        return row

    def where(self, **cells: str) -> tuple[Row, ...]:
        """Rows whose cells are just these, or list them among others."""
        rows = (self.of or self)._by_cells(tuple(cells)).get(tuple(cells.values()), ())
        return tuple(map(self._watched, rows))

    @cached_property
    def _indexes(self) -> dict[tuple[str, ...], dict[tuple[str | None, ...], tuple[Row, ...]]]:
        return {}

    def _by_cells(self, columns: tuple[str, ...]) -> Mapping[tuple[str | None, ...], tuple[Row, ...]]:
        """The rows by what these columns say, sorted when it is first asked for: a table does not change."""
        if columns not in self._indexes:
            found: dict[tuple[str | None, ...], list[Row]] = {}
            for row in self.rows:
                for said in product(*(row.all_said(column) for column in columns)):
                    found.setdefault(said, []).append(row)
            self._indexes[columns] = {cells: tuple(rows) for cells, rows in found.items()}
        return self._indexes[columns]

    def one(self, **cells: str) -> Row:
        """The one row with these cells; NoRow when there is none or more than one."""
        found = self.where(**cells)
        if len(found) != 1:
            asked = ", ".join(f"{k} {v}" for k, v in cells.items())
            raise NoRow(self.name, f"{'no row' if not found else 'more than one row'} for {asked}")
        return self.take(found[0])

    def value(self, name: str) -> float:
        """A value by its name, in a table of named values: its first column names them."""
        return self.one(**{next(iter(self.rows[0].cells)): name}).number("value")

    def within(self, value: float, low: str, high: str, *, ends: str = "(]", **cells: str) -> Row:
        """The row whose interval holds a value; ``(]`` takes the upper end in, ``[)`` the lower.

        Raises NoRow beyond the ends of the table: there is no extrapolation.
        """
        near = []
        for row in self.where(**cells):
            bottom = float(row.text(low) or "-inf")
            top = float(row.text(high) or "inf")
            inside = bottom < value <= top if ends == "(]" else bottom <= value < top
            if inside:
                return self.take(row)
            near.append(f"{row.cells[low] or 'below'} to {row.cells[high] or 'above'}")
        asked = ", ".join(f"{k} {v}" for k, v in cells.items())
        raise NoRow(self.name, f"nothing for {value:g}{' with ' + asked if asked else ''}; rows are {'; '.join(near)}")


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
