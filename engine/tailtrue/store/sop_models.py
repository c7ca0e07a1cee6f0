"""The shape of the files in ``knowledge/sop``."""

from typing import Literal

from pydantic import Field

from tailtrue.parts import MachineState
from tailtrue.store.models import ExampleFile, File, When

Part = Literal[
    "first", "banner", "scope", "training", "supervision", "hazard-note", "before", "during", "after", "forbidden",
    "isolation", "waste", "records", "acknowledgement",
]  # fmt: skip


class EntryFile(File):
    """A label of the control block or of the shop's own particulars; a value that is not known is a place to write."""

    label: str
    value: str = ""
    when: When = Field(default=[], description="the paper that it stands on; on every one without")
    activities: list[str] = Field(default=[], description="those of which a step must do one; any step without")


class RoleFile(File):
    """Somebody who answers for the paper: the facts that hold the name and the day; `owner` in a shop of one only."""

    role: str
    name: str
    day: str | None = None
    owner: bool = False


class FormFile(File):
    """A form to be filled in by hand: `high` names the places of several lines, `others` those that an owner alone lacks.

    `given` is what stands in a place already, where it was said.
    """

    id: str
    title: str
    lead: str
    lead_owner: str = Field(default="", description="what it says first in a shop of one, where that is something else")
    blanks: list[str] = Field(min_length=1)
    high: list[str] = Field(default=[])
    others: list[str] = Field(default=[])
    given: dict[str, str] = Field(default={})
    at_lathe: bool = Field(default=False, description="hangs at the lathe with the roster")


class ReferenceFile(File):
    """A source whose ideas the paper follows."""

    source: str
    idea: str


class PaperFile(File):
    """What the paper of one route is called, and what it is for."""

    route: str
    title: str
    scope: str


class SopPageFile(File):
    """The frame of the paper."""

    made_when: When = Field(min_length=1)
    id: str
    type: str
    type_owner: str
    language: str
    use_level: str
    hazards_at_least: int = Field(ge=1, le=5, description="the least severity of a hazard that stands in the table")
    likely_at_least: int = Field(ge=1, le=5, description="the least likelihood of one that is no danger")
    hazards_fewest: int = Field(ge=1, description="how many stand in the table where fewer are as bad as that")
    roster_rows: int = Field(ge=15)
    photo: str
    last_reviewed: str
    sources: list[str] = Field(min_length=1)
    paper: list[PaperFile] = Field(min_length=1)
    control: list[EntryFile]
    place: list[EntryFile]
    role: list[RoleFile] = Field(min_length=1)
    form: list[FormFile] = Field(min_length=1)
    reference: list[ReferenceFile] = Field(min_length=1)


class SopRuleFile(File):
    """What every entry has: a sheet that has to do with it, a step that does one of its activities, and a condition."""

    id: str
    when: When = Field(default=[])
    concerns: list[str] = Field(default=[], description="what a sheet must have to do with; any sheet without")
    activities: list[str] = Field(default=[], description="those of which a step must do one; any step without")
    sources: list[str] = Field(min_length=1)
    example: list[ExampleFile] = Field(default=[])


class SopLineFile(SopRuleFile):
    """A line of one part; `others` where it has no sense for an owner who works alone."""

    part: Part
    text: str
    others: bool = False
    if_unknown: Literal["show", "leave-out"] = "show"


class SopLimitFile(SopRuleFile):
    """A limit, what happens beyond it, and the way back; the sheet prints those that name an activity of its steps."""

    label: str
    value: str
    beyond: str = Field(min_length=1)
    back: str = Field(min_length=1)
    turning: bool = Field(default=False, description="met only where the spindle turns")


class SopControlFile(SopRuleFile):
    """Something that protects, in one of its states."""

    name: str
    state: str
    means: str


class SopWearFile(SopRuleFile):
    """What is worn in one state of the machine."""

    state: str
    machine: MachineState
    required: list[str] = Field(min_length=1)
    forbidden: list[str] = Field(min_length=1)
    signs: list[str] = Field(default=[])
    never_signs: list[str] = Field(default=[])


class SopUpkeepFile(SopRuleFile):
    """What keeps the lathe sound."""

    every: str
    task: str
    who: str
    owner: str = Field(default="", description="who it is in a shop of one, where it is somebody else")


class SopMachineFile(File):
    """The file of controls, wear and upkeep."""

    control: list[SopControlFile]
    wear: list[SopWearFile]
    upkeep: list[SopUpkeepFile]


class SopEmergencyFile(SopRuleFile):
    """What to do first; without `do` the sheet's own table says it."""

    seen: str
    do: str = ""
    never: str = ""
