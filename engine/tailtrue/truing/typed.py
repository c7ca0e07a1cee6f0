"""Readings as a person types them: a line for each collar, or a table in the order they were taken."""

import csv
import io
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

from tailtrue.errors import Problem, ReadingsWrong
from tailtrue.quantities import QuantityWrong, System, read_quantity

Collar = Literal["head", "tail"]
MOST_READINGS = 60

_WORDS: dict[str, Collar] = {
    "head": "head", "headstock": "head", "h": "head", "tail": "tail", "tailstock": "tail", "t": "tail",
}  # fmt: skip
_SEPARATOR = re.compile(r"\s*[,;\n]\s*")
_BARE = re.compile(r"[-+]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)")
_UNIT = re.compile(r"(?<=[0-9.])\s*([^0-9\s.,;][^0-9,;]*)$")
_NEEDED = "write each reading with its unit, such as 49.612 mm or 1.9532 in"


@dataclass(frozen=True)
class Reading:
    """One reading of one collar: as it was typed, and in millimetres; of an indicator, from its own zero."""

    collar: Collar
    said: str
    diameter_mm: float
    where: str = ""


@dataclass(frozen=True)
class Readings:
    """The readings of one visit. `in_order` when they stand in the order in which they were taken."""

    taken: tuple[Reading, ...]
    in_order: bool = False

    def of(self, collar: Collar) -> tuple[float, ...]:
        """Diameters read on one collar. [mm]"""
        return tuple(one.diameter_mm for one in self.taken if one.collar == collar)

    @property
    def order(self) -> str:
        """The order as letters, such as HTTH; empty when nobody said it."""
        return "".join(one.collar[0].upper() for one in self.taken) if self.in_order else ""


def read_lists(head: str, tail: str, order: str = "", from_zero: bool = False, system: System = "") -> Readings:
    """Readings from one line for each collar; `order` is such as ``HTTH``, or empty when it was not kept.

    `from_zero` when an indicator read from a zero of its own, so that nought and less may be read.
    Raises ReadingsWrong with every fault at once.

    >>> read_lists("49.612 mm, 49.613 mm", "49.655 mm, 49.654 mm").of("tail")
    (49.655, 49.654)
    """
    faults: list[Problem] = []
    by_collar: dict[Collar, list[Reading]] = {
        "head": _line("head", head, faults, from_zero, system),
        "tail": _line("tail", tail, faults, from_zero, system),
    }
    if faults:
        raise ReadingsWrong(faults)
    taken = tuple(one for readings in by_collar.values() for one in readings)
    if not order:
        return checked(Readings(taken))
    letters = [letter for letter in order.upper() if letter in "HT"]
    if len(letters) != len(re.sub(r"[\s,;-]", "", order)) or any(
        letters.count(collar[0].upper()) != len(readings) for collar, readings in by_collar.items()
    ):
        counts = f"{len(by_collar['head'])} for the head and {len(by_collar['tail'])} for the tail"
        do = f"write one letter for each reading, {counts}, in the order they were read: head, tail, tail, head is HTTH"
        raise ReadingsWrong((Problem("order", order, "does not fit the readings", do),))
    queues = {collar[0].upper(): iter(readings) for collar, readings in by_collar.items()}
    return checked(Readings(tuple(next(queues[letter]) for letter in letters), in_order=True))


def read_table(text: str, name: str, from_zero: bool = False, system: System = "") -> Readings:
    """Readings from a table with the columns ``collar`` and ``reading``, one row for each, in the order they were taken.

    Raises ReadingsWrong with every bad row named.

    >>> read_table("collar,reading\\nhead,49.612 mm\\ntail,49.655 mm", "readings.csv").order
    'HT'
    """
    rows = csv.reader(io.StringIO(text))
    head = [cell.strip().casefold() for cell in next(rows, [])]
    if sorted(head) != ["collar", "reading"]:
        wrong = "does not name the two columns"
        raise ReadingsWrong((Problem(f"{name}:1", ",".join(head), wrong, "begin with the line: collar,reading"),))
    faults: list[Problem] = []
    taken = []
    for cells in rows:
        where = f"{name}:{rows.line_num}"
        if not any(cell.strip() for cell in cells):
            continue
        if len(cells) != len(head):
            faults.append(Problem(where, ",".join(cells), "has not two cells", "write the collar, a comma, the reading"))
            continue
        row = dict(zip(head, (cell.strip() for cell in cells), strict=True))
        collar = _WORDS.get(row["collar"].casefold())
        if collar is None:
            faults.append(Problem(where, row["collar"], "is no collar of this bar", "write head or tail"))
            continue
        taken += _readings(collar, [row["reading"]], where, faults, from_zero, system)
    if faults:
        raise ReadingsWrong(faults)
    return checked(Readings(tuple(taken), in_order=True))


def read_one(collar: Collar, text: str, from_zero: bool, system: System = "") -> Reading:
    """A single reading, as it is asked for at a prompt.

    Raises ReadingsWrong.
    """
    faults: list[Problem] = []
    found = _readings(collar, [text.strip()], "", faults, from_zero, system)
    if faults:
        raise ReadingsWrong(faults)
    return found[0]


def temperatures(head: str, tail: str, system: System) -> dict[str, float]:
    """Temperatures of the collars, as facts of a visit; nothing when neither was said. [degC]

    Raises ReadingsWrong.
    """
    if not head and not tail:
        return {}
    faults, found = [], {}
    for collar, text in (("head", head), ("tail", tail)):
        try:
            found[f"visit.{collar}_temperature"] = read_quantity(text, "degC")
        except QuantityWrong as wrong:
            faults.append(Problem(f"temperature, {collar}", text, wrong.problems[0].wrong, wrong.do_in(system)))
    if faults:
        raise ReadingsWrong(faults)
    return found


def checked(readings: Readings) -> Readings:
    """The readings, when both collars were read and in one system of units.

    Raises ReadingsWrong.
    """
    faults = [
        Problem(collar, "", "has no reading", "read both collars, with the same instrument")
        for collar in ("head", "tail")
        if not readings.of(collar)
    ]
    if len(readings.taken) > MOST_READINGS:
        faults.append(Problem("", f"{len(readings.taken)} readings", "are too many", f"give at most {MOST_READINGS}"))
    if len(systems(readings.taken)) > 1:
        inch = next(one for one in readings.taken if _system(one.said) == "inch")
        metric = next(one for one in readings.taken if _system(one.said) == "metric")
        what = "are in two systems of units, so they did not come from one instrument"
        faults.append(
            Problem(
                metric.where or "readings", f"{metric.said} and {inch.said}", what, "read both collars with one micrometer"
            )
        )
    if faults:
        raise ReadingsWrong(faults)
    return readings


def typed_step(readings: Readings) -> float:
    """The last place that was written down in any reading: what the instrument showed. [mm]

    >>> typed_step(read_lists("49.61 mm, 49.615 mm", "49.6 mm"))
    0.001
    """
    return min(place_of(one.said) for one in readings.taken)


def place_of(said: str) -> float:
    """The last place of one reading as it was written. [mm]

    >>> place_of("-0.004 mm")
    0.001
    """
    match = re.match(r"[-+]?[0-9]*\.?([0-9]*)", said)
    step = f"0.{'0' * (len(match[1]) - 1)}1" if match and match[1] else "1"
    unit = _UNIT.search(said)
    return read_quantity(f"{step} {unit[1] if unit else 'mm'}", "mm")


def systems(taken: Iterable[Reading]) -> set[str]:
    """The systems of units in which readings were typed: metric, inch."""
    return {_system(one.said) for one in taken}


def _system(said: str) -> str:
    unit = _UNIT.search(said.strip())
    return "inch" if unit and unit[1].strip().casefold() in ("in", '"', "inch", "inches", "thou", "ft", "''") else "metric"


def _line(collar: Collar, text: str, faults: list[Problem], from_zero: bool, system: System) -> list[Reading]:
    pieces = [piece for piece in _SEPARATOR.split(text.strip()) if piece]
    if not pieces:
        faults.append(Problem(collar, text, "has no reading", _NEEDED))
        return []
    whole = _with_last_unit(pieces)
    if any(_BARE.fullmatch(piece) and "." not in piece for piece in whole[:-1]):
        # Most likely decimal commas: half a reading on either side of each. Quoted as it was typed.
        wrong = "holds a whole number without a unit; the decimal mark must be a point"
        faults.append(Problem(collar, text, wrong, _NEEDED))
        return []
    return _readings(collar, whole, collar, faults, from_zero, system)


def _with_last_unit(pieces: Sequence[str]) -> list[str]:
    """A unit written once, at the end, goes for all; but never for a bare whole number.

    ``49,612 mm`` would otherwise be taken for two readings.
    """
    unit = _UNIT.search(pieces[-1])
    bare = [piece for piece in pieces[:-1] if _BARE.fullmatch(piece)]
    if not unit or not bare or len(bare) != len(pieces) - 1 or any("." not in piece for piece in pieces):
        return list(pieces)
    return [*(f"{piece} {unit[1].strip()}" for piece in pieces[:-1]), pieces[-1]]


def _readings(
    collar: Collar, pieces: Sequence[str], where: str, faults: list[Problem], from_zero: bool, system: System
) -> list[Reading]:
    found = []
    for piece in pieces:
        try:
            diameter = read_quantity(piece, "mm")
        except QuantityWrong as wrong:
            faults.append(Problem(where, piece, wrong.problems[0].wrong, wrong.do_in(system)))
            continue
        if diameter <= 0 and not from_zero:
            faults.append(Problem(where, piece, "is no diameter", _NEEDED))
            continue
        found.append(Reading(collar, piece, diameter, where))
    return found
