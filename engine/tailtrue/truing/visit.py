"""One visit judged: the case of the job with the readings added, what is remarked, and what is said."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from tailtrue.assemble.filling import Filler
from tailtrue.case import Case
from tailtrue.errors import FactsWrong, Problem, ReadingsWrong
from tailtrue.facts import NotKnown
from tailtrue.parts import Text
from tailtrue.quantities import read_quantity
from tailtrue.render.numbers import show_one
from tailtrue.truing.paper import head_of, mend_first
from tailtrue.truing.typed import Readings, systems, typed_step
from tailtrue.truth import Truth

PARTS = ("found", "verdict", "do", "steps", "after", "limits")
_OF_A_MOVE = ("verdict", "do", "steps", "after")
USUAL = "alignment/repeatability"  # what instruments do to readings, by the step they are read to
_READ_AGAIN = "read both collars with one instrument of the crib, and write down every digit that it shows"
FROM_ZERO = "indicator"  # reads from a zero of its own, no diameter
# What was said and cannot be judged keeps the move back: silence would pass for a sound reading.
_JUDGED = {
    "visit.head_temperature": ("visit.warm_difference", "look at the thermometer; let the bar cool, then read again"),
    "visit.middle_readings": ("visit.bow", "measure from the headstock centre to the middle of that collar again"),
}


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

    @property
    def kind(self) -> str:
        """What read the collars: micrometer, indicator or caliper."""
        return str(self.case.value("visit.instrument_kind"))

    def part(self, name: str) -> tuple[Line, ...]:
        """The lines of one part."""
        return tuple(line for line in self.lines if line.part == name)


def judge_visit(case: Case, readings: Readings, kind: str, also: Mapping[str, Any] | None) -> Visit:
    """Judge the readings of one visit to the lathe of a case; `also` holds further facts said at the lathe.

    Raises ReadingsWrong when the readings cannot be of this bar or this crib, FactsWrong when the job does not say
    what is needed.
    """
    (_plausible if kind != FROM_ZERO else _no_diameters)(case, readings)
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
    here = case.with_values(said)
    _fine_enough(here, readings, kind)
    _needed(here, "visit.uncertainty", "visit.move_uncertainty", "visit.advice", "visit.way")
    for told, (name, do) in _JUDGED.items():
        if told in said:
            _needed(here, name, do=do)
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


def _needed(case: Case, *names: str, do: str = _READ_AGAIN) -> None:
    for name in names:
        found = case.get(name)
        if not isinstance(found, NotKnown):
            continue
        if found.missing:
            missing = ", ".join(case.knowledge.catalogue[one].label for one in found.missing)
            raise FactsWrong((Problem("the job", missing, "is not said", "write it into the files of the job"),))
        raise ReadingsWrong((Problem("readings", "", found.trouble or f"{found.spec.label} cannot be worked out", do),))


def _fine_enough(case: Case, readings: Readings, kind: str) -> None:
    """Readings without their last digits cannot show what is looked for, whatever the instrument was."""
    rows = case.knowledge.tables[USUAL].rows
    coarsest = max((row.number("upto_mm") for row in rows if row.text("instrument") == kind), default=None)
    step = typed_step(readings)
    if coarsest is not None and step > coarsest:
        shown = f"{step / read_quantity('1 in', 'mm'):.3g} in" if systems(readings.taken) == {"inch"} else f"{step:.3g} mm"
        wrong = f"are too coarse: they were written to {shown}"
        do = f"write every digit that the {kind} shows, a nought at the end too"
        raise ReadingsWrong((Problem("readings", ", ".join(one.said for one in readings.taken), wrong, do),))


def _plausible(case: Case, readings: Readings) -> None:
    """A reading that this bar cannot have is a slip of the hand, and no move may come of it."""
    largest, least = case.value("collar.read_most"), case.value("skim.worn_out_at")
    faults = []
    for one in readings.taken:
        if largest is not None and one.diameter_mm > largest:
            wrong = f"is more than a collar of this bar can be, {_size(case, 'collar.read_most')}"
            do = "look at the reading, its unit and its decimal point; if it stands, mend the diameter in the stock file"
            faults.append(Problem(one.where, one.said, wrong, do))
        elif least is not None and one.diameter_mm < least:
            wrong = f"is less than {_size(case, 'skim.worn_out_at')}, at which these collars are worn out"
            do = "look at the reading again; if it stands, put the bar away: it needs new collars"
            faults.append(Problem(one.where, one.said, wrong, do))
    if faults:
        raise ReadingsWrong(dict.fromkeys(faults))


def _no_diameters(case: Case, readings: Readings) -> None:
    """What is as large as a collar was read with something else than an indicator."""
    least = case.value("skim.worn_out_at")
    do = "leave --indicator and read_by out where a micrometer read it, or write what the indicator showed"
    wrong = "is a diameter; an indicator reads from a zero of its own"
    faults = [
        Problem(one.where, one.said, wrong, do)
        for one in readings.taken if least is not None and abs(one.diameter_mm) >= least
    ]  # fmt: skip
    if faults:
        raise ReadingsWrong(dict.fromkeys(faults))


def _size(case: Case, name: str) -> str:
    return show_one(Filler(case).figure(name), head_of(case).dials)
