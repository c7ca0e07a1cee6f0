"""One visit judged: the case of the job with the readings added, what is remarked, and what is said."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from tailtrue.assemble.filling import Filler
from tailtrue.case import Case
from tailtrue.errors import FactsWrong, Problem, ReadingsWrong
from tailtrue.facts import Fact, NotKnown
from tailtrue.procedure import Text
from tailtrue.truing.paper import mend_first
from tailtrue.truing.typed import Readings, typed_step
from tailtrue.truth import Truth

PARTS = ("found", "verdict", "do", "steps", "after", "limits")
_OF_A_MOVE = ("verdict", "do", "steps", "after")


@dataclass(frozen=True)
class Line:
    """A line of what is said: which part it belongs to, which rule says it."""

    id: str
    part: str
    text: Text
    sources: tuple[str, ...]


@dataclass(frozen=True)
class Remarked:
    """A remark that fired."""

    id: str
    bars_move: bool
    text: Text
    sources: tuple[str, ...]


@dataclass(frozen=True)
class Visit:
    """What a visit came to: its case for every figure, the remarks, the lines in their order."""

    case: Case
    readings: Readings
    remarks: tuple[Remarked, ...]
    lines: tuple[Line, ...]
    mend: tuple[Text, ...]

    @property
    def advice(self) -> str:
        """What to do: the rule's answer, or `read-again` while a remark bars the move."""
        return "read-again" if self.barred else str(self.case.value("visit.advice"))

    @property
    def barred(self) -> bool:
        """Whether a remark keeps the tailstock where it is."""
        return any(remark.bars_move for remark in self.remarks)

    def part(self, name: str) -> tuple[Line, ...]:
        """The lines of one part."""
        return tuple(line for line in self.lines if line.part == name)


def judge_visit(case: Case, readings: Readings, kind: str = "micrometer", also: Mapping[str, Any] | None = None) -> Visit:
    """Judge the readings of one visit to the lathe of a case; `also` holds further facts said at the lathe.

    Raises ReadingsWrong when the readings cannot be of this bar or this crib, FactsWrong when the job does not say
    what is needed.
    """
    _plausible(case, readings)
    said: dict[str, Any] = {
        "visit.head_readings": readings.of("head"),
        "visit.tail_readings": readings.of("tail"),
        "visit.instrument_kind": kind,
        "visit.typed_step": typed_step(readings),
        "visit.read_twice": False,
        **(also or {}),
    }
    if readings.order:
        said["visit.order"] = readings.order
    here = case.with_said({name: Fact(case.knowledge.catalogue[name], value) for name, value in said.items()})
    _needed(here, "visit.uncertainty", "visit.move_uncertainty", "visit.advice", "visit.way")
    filler = Filler(here)
    remarks = tuple(
        Remarked(one.file.id, one.file.bars_move, filler.text(one.text), tuple(one.file.sources))
        for one in here.knowledge.remarks
        if here.judge(one.when).truth is Truth.YES
    )
    barred = any(remark.bars_move for remark in remarks)
    lines = tuple(
        Line(one.file.id, one.file.part, filler.text(one.text), tuple(one.file.sources))
        for part in PARTS
        for one in here.knowledge.says
        if one.file.part == part and not (barred and part in _OF_A_MOVE) and here.judge(one.when).truth is Truth.YES
    )
    return Visit(here, readings, remarks, lines, mend_first(here))


def _needed(case: Case, *names: str) -> None:
    for name in names:
        found = case.get(name)
        if not isinstance(found, NotKnown):
            continue
        if found.missing:
            missing = ", ".join(case.knowledge.catalogue[one].label for one in found.missing)
            raise FactsWrong((Problem("the job", missing, "is not said", "write it into the files of the job"),))
        do = "read both collars with one instrument of the crib, and write down every digit that it shows"
        raise ReadingsWrong((Problem("readings", "", found.trouble or f"{found.spec.label} cannot be worked out", do),))


def _plausible(case: Case, readings: Readings) -> None:
    """A reading that this bar cannot have is a slip of the hand, and no move may come of it."""
    largest, least = case.value("collar.stock_diameter"), case.value("skim.worn_out_at")
    faults = []
    for one in readings.taken:
        if largest is not None and one.diameter_mm > largest:
            wrong = f"is more than the stock that the collars were turned from, {_size(case, largest)}"
            faults.append(Problem(one.where, one.said, wrong, "look at the reading, its unit and its decimal point"))
        elif least is not None and one.diameter_mm < least:
            wrong = f"is less than {_size(case, least)}, at which these collars are worn out"
            do = "look at the reading again; if it stands, put the bar away: it needs new collars"
            faults.append(Problem(one.where, one.said, wrong, do))
    if faults:
        raise ReadingsWrong(faults)


def _size(case: Case, size_mm: float) -> str:
    return f"{size_mm / 25.4:.3f} in" if case.value("lathe.dials") == "inch" else f"{size_mm:.2f} mm"
