"""The shape of the files of the safety review."""

from typing import Literal

from pydantic import Field

from tailtrue.parts import MachineState
from tailtrue.review import Band, Level
from tailtrue.store.models import BlankFile, File, When


class ClassFile(File):
    """One class of the matrix."""

    id: Band
    low: int
    high: int
    action: str


class MatrixFile(File):
    """The declared matrix and how far controls lower."""

    severities: list[str] = Field(min_length=5, max_length=5)
    likelihoods: list[str] = Field(min_length=5, max_length=5)
    never_low_from_severity: int = Field(ge=1, le=5)
    weak_from_severity: int = Field(ge=1, le=5)
    weak_least_likelihood: int = Field(ge=1, le=5)
    rules: list[str]
    lowers: dict[Level, int]
    class_: list[ClassFile] = Field(alias="class", min_length=1)
    sources: list[str] = Field(min_length=1)


class ReviewFile(File):
    """Standing words of the review."""

    title: str
    lead: list[str]
    usual_person: str
    ends_with: str
    chemical_blanks: list[str] = Field(min_length=1)
    near_misses_told: int = Field(ge=1)
    sources: list[str] = Field(min_length=1)


class PartFile(File):
    """One activity of the review and the activities of steps in it."""

    id: str
    title: str
    answers: list[str] = Field(min_length=1)


class LineFile(File):
    """A line that is read, answered or filled in."""

    id: str
    part: Literal["head", "people", "alone", "isolation", "emergency"]
    text: str
    answer: str = ""
    blanks: list[BlankFile] = Field(default=[])
    must: bool = False
    when: When = Field(default=[])
    sources: list[str] = Field(min_length=1)


class SignatureFile(File):
    """Somebody who signs."""

    id: str
    part: Literal["accepts", "sign"]
    role: str
    text: str
    when: When = Field(default=[])
    sources: list[str] = Field(min_length=1)


class ChemicalFile(File):
    """A need that is a substance; the id is that of the need."""

    id: str
    sources: list[str] = Field(min_length=1)


class WearFile(File):
    """What is worn in one state of the machine."""

    id: str
    title: str
    machine: list[MachineState] = Field(min_length=1)
    answers: list[str] = Field(default=[])
    alone: bool = False
    spindle_can_turn: bool = False
    when: When = Field(default=[])
    wear: list[str] = Field(min_length=1)
    never: list[str] = Field(min_length=1)
    sources: list[str] = Field(min_length=1)


class MachineCheckFile(File):
    """One line of a machine check."""

    id: str
    row: str
    in_list: str
    item: str
    passes: str
    otherwise: str
    blanks: list[BlankFile] = Field(min_length=1)
    killer: bool
    not_applicable: bool = False
    power: Literal["", "on", "off"] = Field(default="", description="whether power comes back in the job; none: both")
    when: When = Field(default=[])
    sources: list[str] = Field(min_length=1)


class EliminationFile(File):
    """A way to take a hazard out of the job."""

    id: str
    hazard: str
    way: str
    when: When = Field(default=[])
    taken: When
    because: str
    declined: str
    sources: list[str] = Field(min_length=1)


class NotMetFile(File):
    """A row of the list of hazards that no step meets, and why."""

    row: str
    hazard: str
    why: str
    sources: list[str] = Field(min_length=1)
