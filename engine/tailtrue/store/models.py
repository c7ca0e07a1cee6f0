"""The shape of the knowledge files. Unknown keys are refused: a misspelt `severity` must never pass as absent."""

from typing import Any, Literal

from pydantic import BaseModel, ConfigDict, Field, model_validator

from tailtrue.parts import MachineState, Rounding, Signal

When = list[Any]


class File(BaseModel):
    """A part of a knowledge file."""

    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)


class ExampleFile(File):
    """A situation, and what the rule must say of it; of a stop or line that cannot be judged also what comes then."""

    name: str
    facts: dict[str, Any]
    expect: str
    then: Literal["", "refuses", "passes over", "shows", "leaves out"] = ""


class DecisionExampleFile(ExampleFile):
    """What must be chosen, and which alternatives that are never taken hold beside it: these and no others."""

    beside: list[str] = []


class ControlFile(File):
    """One control of a hazard, by its place in the hierarchy, and how it is known to be there.

    With `when` the files of the user say so. Without, `by` does: the sheet itself, or whoever looks. What is left out
    follows the level: nobody knows of a guard or a substitute that nobody asked for.
    """

    level: Literal["eliminate", "substitute", "guard", "instruct", "protect"]
    text: str
    when: When = []
    by: Literal["sheet", "sight", "level"] = "level"


class CautionFile(File):
    """A hazard and what answers it."""

    id: str
    row: str
    signal: Signal
    severity: int = Field(ge=1, le=5)
    likelihood: int = Field(ge=1, le=5)
    hazard: str
    harm: str
    who: str = Field(default="", description="who is hurt, where it is not the operator")
    avoid: list[str] = Field(min_length=1, max_length=3)
    controls: list[ControlFile] = Field(min_length=1)
    protective_equipment: list[str]
    signs: list[str]
    answers: list[str] = Field(min_length=1)
    scope: Literal["step", "job"]
    when: When
    if_unknown: Literal["show"] = "show"
    sources: list[str] = Field(min_length=1)
    held_at: str = Field(default="", description="the step whose hold keeps this hazard from going on")
    at_back: bool = Field(default=False, description="holds at any lathe and in any job: the front only names it")
    example: list[ExampleFile] = []


class StopFile(File):
    """When no procedure may be printed, why, and the shortest way out.

    `near`: whether almost holding is worth telling; without `concerns` it holds for every route. `row` is the hazard that
    the stop keeps away, where there is one; `asked_by` the line of the check of the lathe that asks where nobody said.
    `behind` names the choices that find no way because of it and that its condition does not read.
    """

    id: str
    row: str = ""
    asked_by: str = ""
    behind: list[str] = []
    title: str
    concerns: list[str] = []
    when: When = Field(min_length=1)
    if_unknown: Literal["refuse", "pass-over"] = "refuse"
    near: bool = True
    text: str
    way_out: list[str] = Field(min_length=1)
    sources: list[str] = Field(min_length=1)
    example: list[ExampleFile] = Field(min_length=2)


class NoteFile(File):
    """Something worth saying about this job that does not stop it."""

    id: str
    level: Literal["note", "attention"]
    concerns: list[str] = []
    when: When
    text: str
    sources: list[str] = Field(min_length=1)
    example: list[ExampleFile] = []


class SaidAtLatheFile(File):
    """A fact that is said at the lathe, reading by reading, and not in the files of a job."""

    id: str
    kind: Literal["quantity", "quantities", "choice", "yes-no", "text", "count"]
    label: str
    unit: str = ""
    rounding: Rounding = "ratio"
    choices: list[str] = []
    how: str
    sources: list[str] = Field(min_length=1)


class RemarkFile(File):
    """What a careful hand would say of readings. One that bars a move keeps the tailstock where it is."""

    id: str
    bars_move: bool
    when: When = Field(min_length=1)
    text: str
    sources: list[str] = Field(min_length=1)
    example: list[ExampleFile] = Field(min_length=2)


class SayFile(File):
    """A line of what is said after a visit or stands on a paper for the lathe."""

    id: str
    part: Literal[
        "found", "verdict", "do", "steps", "after", "limits",
        "record-safety", "record-read", "record-table", "record-scales", "record-cannot", "record-fill", "record-verify",
        "record-keep",
        "taper-found", "taper-do", "taper-steps", "taper-turn", "taper-check", "taper-back", "taper-warn",
        "settag-what", "settag-never", "settag-back", "tag-result", "tag-means",
        "explain-geometry", "explain-twice", "explain-spread", "explain-half", "explain-indicator", "explain-shows",
        "explain-cannot", "explain-safety",
        "clamp-found", "clamp-do", "clamp-limits", "reverse-found", "reverse-do", "reverse-limits",
    ]  # fmt: skip
    when: When = []
    text: str
    sources: list[str] = Field(min_length=1)


class ReasonFile(File):
    """Plain words for why an alternative does not hold, and when they are the ones to say."""

    when: When = Field(min_length=1)
    text: str


class DecisionRowFile(File):
    """One alternative of a decision. `figures` is what it comes to in this job, shown whether or not it wins.

    `never_taken` is the reason why it stands beside the choice, judged, and is never the choice. `gives` names the size that
    it comes to. Where sizes are weighed, a row that `settles` stands before the others and is taken without weighing.
    """

    then: str
    name: str
    when: When
    why: str
    sources: list[str] = Field(min_length=1)
    if_unknown: Literal["ask", "pass-over"] = "ask"
    figures: str = ""
    says: list[ReasonFile] = []
    closed_by: str = ""
    never_taken: str = ""
    gives: str = ""
    settles: bool = False


class StatedFile(File):
    """When the answer of a decision stands elsewhere, because the work was done: the fact that tells it."""

    fact: str
    when: When = Field(min_length=1)
    says: str = Field(min_length=1)


class DecisionFile(File):
    """A question and its alternatives. A shop may close one only where each row holds by its own conditions.

    With `concerns` it is answered on the paper of those routes alone, whatever else asks it.
    """

    id: str
    question: str
    label: str
    concerns: list[str] = []
    hit: Literal["unique", "priority", "least", "greatest"]
    shop_may_close: bool = False
    stated: StatedFile | None = None
    every_way: bool = Field(default=False, description="whether the printed sheet tells what was ruled out by a word too")
    row: list[DecisionRowFile] = Field(min_length=1)
    example: list[DecisionExampleFile] = Field(min_length=2)


class TermFile(File):
    """A term of the trade as the pages use it; `also` holds other forms of it that are looked for."""

    id: str
    term: str
    also: list[str] = []
    meaning: str
    known_at_lathe: bool = Field(
        default=False, description="whoever is released for a lathe knows it: the card leaves it out"
    )
    sources: list[str] = Field(min_length=1)


class LimitFile(File):
    """A named limit with its safe direction."""

    id: str
    value: str
    unit: str
    rounding: Rounding
    safe: Literal["lower", "higher"]
    label: str
    why: str
    sources: list[str] = Field(min_length=1)


class NeedFile(File):
    """Something a step may use, how it is named on the page, and when the shop has it."""

    id: str
    kind: Literal["tool", "instrument", "stock", "consumable", "wear"]
    name: str
    amount: str = ""
    detail: str = ""
    have: When = []
    given: str = Field(default="", description="the given fact that must be said for the shop to have it")


class SettingFile(File):
    """A line of a settings table. Words need a reason as numbers do: nothing tells a reader which of them was chosen."""

    label: str
    value: str
    reason: str = Field(min_length=1)
    when: When = []


class SettingsFromFile(File):
    """Settings with one line for each row of a computed list of records."""

    records: str
    label: str
    value: str
    reason: str = Field(min_length=1)


class BlankFile(File):
    """A place to write in, or as many of one kind as `count`, in rows of `abreast` where a place is read more than once."""

    label: str
    unit: str = ""
    count: int = Field(default=1, ge=1)
    abreast: int = Field(default=1, ge=1)


class CheckFile(File):
    """What is compared or written down."""

    text: str
    low: str | None = None
    high: str | None = None
    instrument: str | None = None
    resolution: str | None = None
    uncertainty: str | None = None
    blanks: list[BlankFile] = []
    when: When = []

    @model_validator(mode="after")
    def _rows_are_full(self) -> "CheckFile":
        """Places in rows stand in one table: none may be left over."""
        shapes = {(one.count, one.abreast) for one in self.blanks if one.abreast > 1}
        if len(shapes) > 1 or any(count % abreast for count, abreast in shapes):
            raise ValueError("places abreast fill every row, and all of one check have as many rows")
        return self


class GoesOnFile(File):
    """Where work goes on with another sheet: the first of these steps that stands on it, when this holds.

    `said`: the case in words, where whoever works finds out which of several it is.
    """

    when: When = Field(min_length=1)
    at: list[str] = Field(min_length=1)
    said: str = ""


class VoidFile(File):
    """When the sheet that was left is not gone on with, and why."""

    when: When = Field(min_length=1)
    text: str


class HoldFile(File):
    """A hold point. `go_back_to`: a step, or the first of several that stands on the sheet; none where one only waits on.

    `by`: whether whoever works releases it, a second person where there is one, or somebody else in any case.
    `goes_on`: once released, work goes on with the sheet that was left. `void`: it does not, for that sheet is void.
    """

    text: str
    releases: str
    by: Literal["self", "second", "other"] = "self"
    go_back_to: str | list[str] | None = None

    @property
    def ways_back(self) -> tuple[str, ...]:
        """Steps to go back to, the first that stands on the sheet before the others."""
        back = self.go_back_to
        return () if back is None else (back,) if isinstance(back, str) else tuple(back)

    goes_on: list[GoesOnFile] = []
    void: list[VoidFile] = []


class TimeFile(File):
    """What the time of a step is made from: a row of the table of handling, and facts."""

    handling: str
    cutting: str | None = None
    waiting: str | None = None


class StepFile(File):
    """The front matter of a step."""

    id: str
    title: str
    who: Literal["any", "supervised", "staff"] = "any"
    machine: MachineState
    time: TimeFile | None = None
    when: When = []
    needs: list[str] = []
    makes: list[str] = []
    ends: list[str] = []
    tools: list[str] = []
    without: dict[str, When] = Field(default={}, description="tools that the step goes without, and when")
    only: dict[str, When] = Field(default={}, description="lines of its text that stand in some jobs only, and when")
    activities: list[str] = []
    settings: list[SettingFile] = []
    settings_from: SettingsFromFile | None = None
    check: list[CheckFile] = []
    checks_tell_all: bool = Field(default=False, description="whether its checks alone are printed where it comes again")
    hold: HoldFile | None = None
    why: str = ""
    sources: list[str] = Field(min_length=1)


class SourceFile(File):
    """Where knowledge comes from."""

    kind: str
    title: str
    edition: str = ""
    status: Literal["read", "cited", "open"] = "open"
    note: str = ""
