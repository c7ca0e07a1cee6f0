"""A table by ranges of size, looked up without ever reaching past its ends or over an empty cell."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from tailtrue.calc.validity import OutOfRange

_DECIMALS = 9  # a size that is a limit of a range is not pushed out of it by its binary form


@dataclass(frozen=True)
class SizeTable:
    """Rows for ranges of size that follow each other: over one size, up to and including another."""

    name: str
    unit: str
    rows: tuple[Mapping[str, str], ...]

    @classmethod
    def of(cls, name: str, unit: str, rows: Iterable[Mapping[str, str]]) -> "SizeTable":
        """Put rows in order of size.

        end of a range = start of the next

        Parameters
        ----------
        name : What the table holds, for messages. [1]
        unit : Unit of its sizes, the ending of its columns. [1]
        rows : Rows with over_<unit>, upto_incl_<unit> and cells. [1]

        Returns
        -------
        The table. [1]

        Valid for
        ---------
        At least one row, ranges that neither overlap nor leave a gap; else ValueError.

        Source
        ------
        Definition (ISO 286-1: over one size, up to and including another).

        >>> limits = [("10", "18", "18"), ("18", "30", "21")]
        >>> rows = [dict(zip(("over_mm", "upto_incl_mm", "IT7"), row)) for row in limits]
        >>> table = SizeTable.of("grades", "mm", rows)
        >>> len(table.rows)
        2
        """
        table = cls(name, unit, tuple(sorted(rows, key=lambda row: float(row[f"over_{unit}"]))))
        if not table.rows:
            raise ValueError(f"{name}: the table has no rows")
        starts = [table._start(row) for row in table.rows]
        ends = [table._end(row) for row in table.rows]
        for start, end, after in zip(starts, ends, [*starts[1:], ends[-1]], strict=True):
            if not start < end or end != after:
                raise ValueError(f"{name}: the range over {start:g} to {end:g} {unit} does not join the next at {after:g}")
        return table

    def row(self, size: float) -> Mapping[str, str]:
        """The row of a size.

        over < size <= up to and including

        Parameters
        ----------
        size : Size in the unit of the table. [1]

        Returns
        -------
        The row. [1]

        Valid for
        ---------
        From the start of the first range to the end of the last; beyond them it is refused.

        Source
        ------
        Definition (ISO 286-1: over one size, up to and including another).

        >>> limits = [("10", "18", "18"), ("18", "30", "21")]
        >>> rows = [dict(zip(("over_mm", "upto_incl_mm", "IT7"), row)) for row in limits]
        >>> table = SizeTable.of("grades", "mm", rows)
        >>> table.row(18)["IT7"]
        '18'
        """
        asked = round(size, _DECIMALS)
        for row in self.rows:
            if self._start(row) < asked <= self._end(row):
                return row
        least, largest = self._start(self.rows[0]), self._end(self.rows[-1])
        raise OutOfRange(
            f"{self.name} is not defined at {size:.7g} {self.unit}; "
            f"the table goes from over {least:g} to {largest:g} {self.unit}, the last included"
        )

    def number(self, column: str, size: float, asked: str) -> float:
        """The cell of a column for a size.

        number = cell of the column in the row of the size

        Parameters
        ----------
        column : Column. [1]
        size : Size in the unit of the table. [1]
        asked : What was asked for, named when there is none. [1]

        Returns
        -------
        The number in the cell. [1]

        Valid for
        ---------
        As `row`; an empty cell is refused.

        Source
        ------
        Definition (ISO 286-1: over one size, up to and including another).

        >>> limits = [("10", "18", "18"), ("18", "30", "21")]
        >>> rows = [dict(zip(("over_mm", "upto_incl_mm", "IT7"), row)) for row in limits]
        >>> table = SizeTable.of("grades", "mm", rows)
        >>> table.number("IT7", 25, "grade 7")
        21.0
        """
        row = self.row(size)
        if not row.get(column):
            raise OutOfRange(
                f"{asked} is not defined in the table over {self._start(row):g} to {self._end(row):g} {self.unit} "
                f"({self.name}); choose another class"
            )
        return float(row[column])

    def _start(self, row: Mapping[str, str]) -> float:
        return float(row[f"over_{self.unit}"])

    def _end(self, row: Mapping[str, str]) -> float:
        return float(row[f"upto_incl_{self.unit}"])
