"""Inch fits of ANSI B4.1: limits of hole and shaft for a class such as RC4, from a table in thousandths of an inch."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from tailtrue.calc.fits import Fit, Zone, class_fit
from tailtrue.calc.size_table import SizeTable
from tailtrue.calc.validity import OutOfRange

_MM_PER_INCH = 25.4
_UM_PER_THOU = 25.4
_UM_DECIMALS = 4  # table values are in steps of 0.05 thousandths, so this takes off binary dust only


class InchFit(NamedTuple):
    """Limits of hole and shaft of one class, and the sources that the row of the table names."""

    hole: Zone
    shaft: Zone
    source: str


@dataclass(frozen=True)
class B41:
    """The classes of ANSI B4.1, each with its own ranges of size: those of force fits are finer than the others."""

    classes: Mapping[str, SizeTable]

    @classmethod
    def of(cls, rows: Iterable[Mapping[str, str]]) -> "B41":
        """Build the classes from rows of text.

        table of a class = its rows by ranges of size

        Parameters
        ----------
        rows : Rows with class, over_in, upto_incl_in, limits of hole and shaft in thousandths of an inch, source. [1]

        Returns
        -------
        The classes. [1]

        Valid for
        ---------
        Ranges of each class that follow each other without gap or overlap.

        Source
        ------
        Layout of our own tables.

        >>> row = {"class": "RC4", "over_in": "0.71", "upto_incl_in": "1.19", "source": "ANSI B4.1"}
        >>> row |= {"hole_lower_thou": "0", "hole_upper_thou": "1.2", "shaft_lower_thou": "-1.6", "shaft_upper_thou": "-0.8"}
        >>> list(B41.of([row]).classes)
        ['RC4']
        """
        by_class: dict[str, list[Mapping[str, str]]] = defaultdict(list)
        for row in rows:
            by_class[row["class"]].append(row)
        return cls({name: SizeTable.of(f"class {name}", "in", found) for name, found in by_class.items()})

    def limits(self, fit_class: str, size_mm: float) -> InchFit:
        """Limits of hole and shaft of a class for a nominal size.

        limit in um = 25.4 times the limit in thousandths of an inch

        Parameters
        ----------
        fit_class : Class such as RC4. [1]
        size_mm : Nominal size. [mm]

        Returns
        -------
        Limits of the hole, limits of the shaft, sources of the row. [um, um, 1]

        Valid for
        ---------
        Classes and sizes of the table; no such class or no row for the size is refused.

        Source
        ------
        ANSI B4.1.

        >>> row = {"class": "RC4", "over_in": "0.71", "upto_incl_in": "1.19", "source": "ANSI B4.1"}
        >>> row |= {"hole_lower_thou": "0", "hole_upper_thou": "1.2", "shaft_lower_thou": "-1.6", "shaft_upper_thou": "-0.8"}
        >>> B41.of([row]).limits("RC4", 25.4).shaft.upper_um
        -20.32
        """
        if fit_class not in self.classes:
            raise OutOfRange(f"the table has no class '{fit_class}'; it has {', '.join(self.classes)}")
        row = self.classes[fit_class].row(size_mm / _MM_PER_INCH)

        def zone(part: str) -> Zone:
            lower, upper = (
                round(float(row[f"{part}_{end}_thou"]) * _UM_PER_THOU, _UM_DECIMALS) for end in ("lower", "upper")
            )
            return Zone(size_mm, lower, upper)

        return InchFit(zone("hole"), zone("shaft"), row["source"])

    def fit(self, fit_class: str, size_mm: float) -> Fit:
        """Clearance of a class for a nominal size.

        least and largest clearance = `class_fit` of the limits

        Parameters
        ----------
        fit_class : Class such as RC4. [1]
        size_mm : Nominal size. [mm]

        Returns
        -------
        Least and largest diametral clearance. [mm, mm]

        Valid for
        ---------
        As `limits`.

        Source
        ------
        ANSI B4.1.

        >>> row = {"class": "RC4", "over_in": "0.71", "upto_incl_in": "1.19", "source": "ANSI B4.1"}
        >>> row |= {"hole_lower_thou": "0", "hole_upper_thou": "1.2", "shaft_lower_thou": "-1.6", "shaft_upper_thou": "-0.8"}
        >>> B41.of([row]).fit("RC4", 25.4).largest_clearance_mm
        0.07112
        """
        hole, shaft, _ = self.limits(fit_class, size_mm)
        return class_fit(hole.lower_um, hole.upper_um, shaft.lower_um, shaft.upper_um)
