"""The typed tree of the safety review: what hurts, how likely, what is done about it, who accepts what is left."""

from typing import Literal

from pydantic import Field

from tailtrue.parts import Blank, MachineState, Node, Signal, Term, Text

Level = Literal["eliminate", "substitute", "guard", "instruct", "protect"]
Band = Literal["low", "moderate", "high", "extreme"]


class WorkPart(Node):
    """One activity of the job and the steps that it covers."""

    id: str
    title: str
    activities: tuple[str, ...]
    used_at: tuple[str, ...] = Field(description="numbers of the steps")
    machine: tuple[MachineState, ...]


class Rating(Node):
    """Severity and likelihood, their product, and the class it falls in."""

    severity: int
    likelihood: int
    score: int
    band: Band


class Control(Node):
    """One control of a hazard. Only what is counted lowers the likelihood."""

    level: Level
    text: str
    state: Literal["counted", "to-see", "not-here"]


class Held(Node):
    """What holds a hazard that stays high: a control that is no instruction, a hold of the sheet, or a person."""

    by: Literal["control", "hold", "acceptance"]
    hold_step: str | None = None


class ReviewedHazard(Node):
    """One hazard of the job, with every activity that meets it."""

    number: str
    caution: str
    signal: Signal
    hazard: str
    harm: str
    who: str
    shop_rule: str = Field(default="", description="who of the shop added or reworded it, and why")
    parts: tuple[str, ...] = Field(description="ids of the activities, the first of them being where it is listed")
    before: Rating
    controls: tuple[Control, ...]
    after: Rating
    held: Held | None = None


class RiskClass(Node):
    """One class of the matrix: its scores and what is due."""

    band: Band
    low: int
    high: int
    action: Text


class Matrix(Node):
    """The declared matrix: the words of both scales, the class of each cell, and how far a control may lower."""

    severities: tuple[Text, ...] = Field(description="in words, from 1 to 5")
    likelihoods: tuple[Text, ...] = Field(description="in words, from 1 to 5")
    cells: tuple[tuple[Band, ...], ...] = Field(description="a row for each likelihood from 1, a cell for each severity")
    classes: tuple[RiskClass, ...]
    lowers: dict[Level, int]
    weak_from_severity: int
    weak_least_likelihood: int
    rules: tuple[Text, ...]
    sources: tuple[str, ...]


class ReviewLine(Node):
    """Something to read or answer; `answer` is what the user's files say, else the blanks are filled in by hand."""

    id: str
    text: Text
    answer: Text | None = None
    blanks: tuple[Blank, ...] = ()
    must: bool = Field(default=False, description="to be filled in before work")


class CheckLine(Node):
    """One line of a machine check: what is looked at, what must be found, and what to do otherwise."""

    id: str
    item: Text
    passes: Text
    otherwise: Text
    blanks: tuple[Blank, ...]
    killer: bool
    not_applicable: bool = Field(description="whether a box offers that the line does not apply")


class CheckList(Node):
    """Lines that are done in one go, with the words that end them."""

    title: str
    lines: tuple[CheckLine, ...]
    ends_with: str


class WearState(Node):
    """What is worn in one state of the machine, and what is not."""

    id: str
    title: str
    used_at: tuple[str, ...]
    spindle_can_turn: bool
    wear: tuple[Text, ...]
    never: tuple[Text, ...]


class Chemical(Node):
    """A substance of the job with places for its data sheet."""

    need: str
    name: Text
    used_at: tuple[str, ...]
    blanks: tuple[Blank, ...]


class Elimination(Node):
    """A way to take a hazard out of the job: taken, or declined with the reason."""

    id: str
    hazard: str
    way: str
    verdict: Literal["taken", "declined"]
    because: Text
    sources: tuple[str, ...]


class NearMissLine(Node):
    """A rule that nearly held: what would have happened, and how far off it was."""

    id: str
    title: str
    short_by: str
    what_happens: str
    sources: tuple[str, ...]


class Signature(Node):
    """Somebody who signs, and what for."""

    id: str
    role: str
    text: Text


class SafetyReview(Node):
    """The whole review, made for one job from the same facts as its procedure."""

    title: str
    lead: tuple[Text, ...]
    head: tuple[ReviewLine, ...]
    work: tuple[WorkPart, ...]
    usual_person: str
    hazards: tuple[ReviewedHazard, ...]
    matrix: Matrix
    people: tuple[ReviewLine, ...]
    alone: tuple[ReviewLine, ...]
    wear: tuple[WearState, ...]
    checks: tuple[CheckList, ...]
    isolation: tuple[ReviewLine, ...]
    chemicals: tuple[Chemical, ...]
    emergency: tuple[ReviewLine, ...]
    near_misses: tuple[NearMissLine, ...]
    eliminations: tuple[Elimination, ...]
    accepts: Signature
    signatures: tuple[Signature, ...]
    sources: tuple[str, ...]
    glossary: tuple[Term, ...] = ()
