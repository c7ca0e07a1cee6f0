"""Limits of ISO 286-1 for a tolerance class and a size.

Everything is looked up in tables that are handed in, because the standard's own rounding has exceptions that
no formula gives. The case of a letter is part of the class: H7 is a hole, h7 a shaft.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from tailtrue.calc.fits import Fit, Zone, class_fit
from tailtrue.calc.size_table import SizeTable
from tailtrue.calc.validity import OutOfRange

_CLASS = re.compile(r"([A-Za-z]{1,2})(01|\d{1,2})")
_GRADE = "IT"


class Letter(NamedTuple):
    """What a letter means in a band of grades: which limit its column gives, and whether delta is added."""

    letter: str
    kind: str
    bound: str
    lowest_grade: str
    highest_grade: str
    column: str
    with_delta: bool


@dataclass(frozen=True)
class Iso286:
    """The tables of ISO 286-1: grades, fundamental deviations of holes and shafts, delta, meaning of the letters."""

    grades: SizeTable
    deltas: SizeTable
    deviations: Mapping[str, SizeTable]
    letters: tuple[Letter, ...]

    @classmethod
    def of(
        cls,
        grades: Iterable[Mapping[str, str]],
        shafts: Iterable[Mapping[str, str]],
        holes: Iterable[Mapping[str, str]],
        deltas: Iterable[Mapping[str, str]],
        letters: Iterable[Mapping[str, str]],
    ) -> "Iso286":
        """Build the tables from rows of text.

        row = a range of size in mm with cells in micrometres

        Parameters
        ----------
        grades : Widths of the grades. [1]
        shafts : Fundamental deviations of shafts. [1]
        holes : Fundamental deviations of holes. [1]
        deltas : Delta of the grades, added where a letter says so. [1]
        letters : Rows with designation, kind (hole, shaft), type (upper, lower, both), grade_low, grade_high, series
            (its column among the deviations), delta (1 where it is added). [1]

        Returns
        -------
        The tables. [1]

        Valid for
        ---------
        Ranges of size that follow each other without gap or overlap.

        Source
        ------
        Layout of our own tables.

        >>> size = {"over_mm": "18", "upto_incl_mm": "30"}
        >>> heads = ["designation", "kind", "type", "grade_low", "grade_high", "series", "delta"]
        >>> letters = [dict(zip(heads, row.split())) for row in ("H hole lower 6 7 H 0", "g shaft upper 6 7 g 0")]
        >>> grades, shafts, holes = [size | {"IT6": "13", "IT7": "21"}], [size | {"g": "-7"}], [size | {"H": "0"}]
        >>> table = Iso286.of(grades, shafts, holes, [size], letters)
        >>> [letter.letter for letter in table.letters]
        ['H', 'g']
        """
        return cls(
            grades=SizeTable.of("standard tolerance grade", "mm", grades),
            deltas=SizeTable.of("delta", "mm", deltas),
            deviations={
                "shaft": SizeTable.of("fundamental deviation of shafts", "mm", shafts),
                "hole": SizeTable.of("fundamental deviation of holes", "mm", holes),
            },
            letters=tuple(
                Letter(
                    row["designation"], row["kind"], row["type"], row["grade_low"], row["grade_high"], row["series"],
                    row["delta"] == "1",
                )
                for row in letters
            ),
        )  # fmt: skip

    def width_um(self, grade: str, size_mm: float) -> float:
        """Width of a standard tolerance grade for a size.

        width = cell of the grade in the row of the size

        Parameters
        ----------
        grade : Grade such as 7. [1]
        size_mm : Nominal size. [mm]

        Returns
        -------
        Width. [um]

        Valid for
        ---------
        Grades and sizes of the table.

        Source
        ------
        ISO 286-1, table of standard tolerance grades.

        >>> size = {"over_mm": "18", "upto_incl_mm": "30"}
        >>> heads = ["designation", "kind", "type", "grade_low", "grade_high", "series", "delta"]
        >>> letters = [dict(zip(heads, row.split())) for row in ("H hole lower 6 7 H 0", "g shaft upper 6 7 g 0")]
        >>> grades, shafts, holes = [size | {"IT6": "13", "IT7": "21"}], [size | {"g": "-7"}], [size | {"H": "0"}]
        >>> table = Iso286.of(grades, shafts, holes, [size], letters)
        >>> table.width_um("7", 25)
        21.0
        """
        if grade not in self._grades():
            raise OutOfRange(f"there is no grade {grade}; grades are {', '.join(self._grades())}")
        return self.grades.number(_GRADE + grade, size_mm, f"grade {grade}")

    def limits(self, tolerance_class: str, size_mm: float) -> Zone:
        """Limits of a class for a nominal size.

        one limit = fundamental deviation (+ delta), the other lies the width of the grade from it

        Parameters
        ----------
        tolerance_class : Class such as H7 or js5; its capital is part of it. [1]
        size_mm : Nominal size. [mm]

        Returns
        -------
        Nominal size and its two deviations. [mm, um, um]

        Valid for
        ---------
        Classes and sizes of the table; no such class, or no value for it at this size, is refused.

        Source
        ------
        ISO 286-1, tables of fundamental deviations.

        >>> size = {"over_mm": "18", "upto_incl_mm": "30"}
        >>> heads = ["designation", "kind", "type", "grade_low", "grade_high", "series", "delta"]
        >>> letters = [dict(zip(heads, row.split())) for row in ("H hole lower 6 7 H 0", "g shaft upper 6 7 g 0")]
        >>> grades, shafts, holes = [size | {"IT6": "13", "IT7": "21"}], [size | {"g": "-7"}], [size | {"H": "0"}]
        >>> table = Iso286.of(grades, shafts, holes, [size], letters)
        >>> table.limits("g6", 25)
        Zone(nominal_mm=25, lower_um=-20.0, upper_um=-7.0)
        """
        meaning, grade = self._read(tolerance_class)
        width = self.width_um(grade, size_mm)
        if meaning.bound == "both":
            return Zone(size_mm, -width / 2, width / 2)
        asked = f"class {tolerance_class}"
        deviation = self.deviations[meaning.kind].number(meaning.column, size_mm, asked)
        if meaning.with_delta:
            deviation += self.deltas.number(_GRADE + grade, size_mm, asked)
        if meaning.bound == "upper":
            return Zone(size_mm, deviation - width, deviation)
        return Zone(size_mm, deviation, deviation + width)

    def fit(self, designation: str, size_mm: float) -> Fit:
        """Fit of a hole and a shaft class with one nominal size.

        least and largest clearance = `class_fit` of the limits

        Parameters
        ----------
        designation : Hole and shaft, such as H7/g6. [1]
        size_mm : Nominal size. [mm]

        Returns
        -------
        Least and largest diametral clearance. [mm, mm]

        Valid for
        ---------
        As `limits`; a hole first, then a shaft.

        Source
        ------
        ISO 286-1.

        >>> size = {"over_mm": "18", "upto_incl_mm": "30"}
        >>> heads = ["designation", "kind", "type", "grade_low", "grade_high", "series", "delta"]
        >>> letters = [dict(zip(heads, row.split())) for row in ("H hole lower 6 7 H 0", "g shaft upper 6 7 g 0")]
        >>> grades, shafts, holes = [size | {"IT6": "13", "IT7": "21"}], [size | {"g": "-7"}], [size | {"H": "0"}]
        >>> table = Iso286.of(grades, shafts, holes, [size], letters)
        >>> table.fit("H7/g6", 25)
        Fit(least_clearance_mm=0.007, largest_clearance_mm=0.041)
        """
        hole, _, shaft = designation.partition("/")
        if self._read(hole)[0].kind != "hole" or self._read(shaft)[0].kind != "shaft":
            raise OutOfRange(
                f"fit '{designation}' is not a hole and a shaft; capital letters are holes, small ones shafts: "
                "write the hole first, such as H7/g6"
            )
        hole_zone, shaft_zone = self.limits(hole, size_mm), self.limits(shaft, size_mm)
        return class_fit(hole_zone.lower_um, hole_zone.upper_um, shaft_zone.lower_um, shaft_zone.upper_um)

    def _read(self, tolerance_class: str) -> tuple[Letter, str]:
        found = _CLASS.fullmatch(tolerance_class)
        if found is None:
            raise OutOfRange(
                f"tolerance class '{tolerance_class}' cannot be read; "
                "write a letter and a grade: H7 for a hole, g6 for a shaft"
            )
        letter, grade = found[1], found[2]
        meanings = [meaning for meaning in self.letters if meaning.letter == letter]
        if not meanings:
            kind = "hole" if letter[0].isupper() else "shaft"
            known = dict.fromkeys(meaning.letter for meaning in self.letters if meaning.kind == kind)
            raise OutOfRange(
                f"the table has no letter {letter} for a {kind}; it has {', '.join(known)}. "
                "A letter that public tables give unalike, as j, is left out: js serves there"
            )
        if grade not in self._grades():
            raise OutOfRange(f"class {tolerance_class}: there is no grade {grade}; grades are {', '.join(self._grades())}")
        order = self._grades().index
        for meaning in meanings:
            if order(meaning.lowest_grade) <= order(grade) <= order(meaning.highest_grade):
                return meaning, grade
        least, largest = meanings[0].lowest_grade, meanings[-1].highest_grade
        raise OutOfRange(
            f"class {tolerance_class} is not defined in the table; it has {letter} in grades {least} to {largest}"
        )

    def _grades(self) -> list[str]:
        return [column.removeprefix(_GRADE) for column in self.grades.rows[0] if column.startswith(_GRADE)]
