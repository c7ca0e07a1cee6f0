"""The shape of what stands on the pages of any job: front, cut list, drawings, card, trouble."""

from typing import Literal

from pydantic import Field, model_validator

from tailtrue.store.models import File, SettingFile, When


class PageLineFile(SettingFile):
    """A line of the front of the sheet or of the card; without `concerns` it stands on every sheet."""

    concerns: list[str] = Field(default=[])
    reason: str = ""


class CutFile(File):
    """One line of the cut list."""

    piece: str
    count: int
    material: str
    size: str
    saw_to: str
    buy: str | None = None
    mass_to_buy: str | None = None
    mass_finished: str | None = None
    when: When = Field(default=[])


class DrawingFile(File):
    """What the drawing shows: dimensions by fact, and words."""

    title: str
    caption: str
    dimensions: dict[str, str]
    also: dict[str, str] = Field(default={})
    also_when: When = Field(default=[])
    if_said: dict[str, str] = Field(default={})
    labels: dict[str, str]


class DrawnRecordsFile(File):
    """Dimensions made from the rows of a list: one for each row, named `name` and its number."""

    records: str
    field: str
    name: str


class StepDrawingFile(File):
    """A drawing of the making: its kind, where it stands, dimensions by fact, and words."""

    id: str
    kind: str
    title: str
    caption: str
    step: str = ""
    when: When = Field(default=[])
    dimensions: dict[str, str] = Field(default={})
    if_known: dict[str, str] = Field(default={})
    lists: dict[str, str] = Field(default={})
    rows: DrawnRecordsFile | None = None
    said: dict[str, str] = Field(default={})
    labels: dict[str, str] = Field(default={})


class CardLineFile(File):
    """One number on the card; without a label, that of the step. `beside` is one told with it, on a line of its own."""

    fact: str
    label: str = ""
    beside: str = ""
    beside_label: str = ""
    tool: str = Field(default="", description="what stands before the size of a tool, in place of the words of the step")


class CardPlaceFile(File):
    """A reading that a later step uses: the label of its blank at the step, and what the card calls it."""

    of: str = Field(min_length=1)
    label: str = Field(min_length=1)


class CardGroupFile(File):
    """The numbers of one operation, taken from settings of these steps, and places for what is read at them."""

    title: str
    steps: list[str]
    line: list[CardLineFile] = Field(default=[])
    place: list[CardPlaceFile] = Field(default=[])


class CareFile(File):
    """A line of the care of the bar that holds for bars of one kind."""

    text: str
    when: When = Field(min_length=1)


class TroubleFile(File):
    """What is seen, what to do, what not to do; without `concerns` it stands on every sheet."""

    seen: str
    do: str
    never: str
    when: When = Field(default=[])
    concerns: list[str] = Field(default=[])
    turning: bool = Field(default=False, description="seen only where the spindle turns")


class StartLineFile(File):
    """Something that is looked at before each start, and the state it must be in."""

    item: str = Field(min_length=1)
    state: str = Field(min_length=1)
    unit: str = ""
    answers: list[str] = Field(default=[])


class StartListFile(File):
    """The list before each start, and the words that end it."""

    title: str
    ends_with: str
    line: list[StartLineFile] = Field(min_length=1)


class OtherListFile(StartListFile):
    """The list of another machine, for jobs in which a step does one of these activities."""

    activities: list[str] = Field(min_length=1)


class ShortStepFile(File):
    """A line to do and confirm, for these steps where they follow each other; without a text, the title of each."""

    steps: list[str] = Field(min_length=1)
    text: str = ""


class ShortListFile(File):
    """The lines to do and confirm, in the order of the sheet, and the words round them."""

    title: str = Field(min_length=1)
    list_first: str = Field(min_length=1)
    interrupted: str = Field(min_length=1)
    interrupted_still: str = Field(min_length=1, description="where the spindle never turns")
    ends_with: str = Field(min_length=1)
    line: list[ShortStepFile] = Field(min_length=1)


class CardFile(File):
    """What stands on the card at the lathe."""

    pointer: str = Field(min_length=1)
    emergency: str = Field(min_length=1)
    messages: list[str] = Field(min_length=1)
    start: StartListFile
    still: StartListFile
    other: list[OtherListFile] = Field(default=[])
    short: ShortListFile
    notes: list[PageLineFile]
    group: list[CardGroupFile]


class StandingLineFile(File):
    """A standing line of the sheet. Written as a text alone, it stands on every sheet."""

    text: str
    concerns: list[str] = Field(default=[])
    where_said: str = Field(default="", description="words of a setting without which the line has nothing to explain")
    waits: bool = Field(default=False, description="it is about waiting, and stands where a step waits")

    @model_validator(mode="before")
    @classmethod
    def _text_alone(cls, written: object) -> object:
        return {"text": written} if isinstance(written, str) else written


class WorkLineFile(File):
    """A line of the front: in every job, or where the spindle turns or stands, or a step does one of the activities."""

    text: str
    spindle: Literal["", "turns", "stands"] = ""
    activities: list[str] = Field(default=[])

    @model_validator(mode="before")
    @classmethod
    def _text_alone(cls, written: object) -> object:
        return {"text": written} if isinstance(written, str) else written


class SupervisorFile(File):
    """Who releases a hold where somebody supervises, and what a learner does only with that person at the lathe."""

    when: When = Field(min_length=1)
    learner_when: When = Field(min_length=1, description="somebody to whom no hold is left, and whose steps are marked")
    releases: str = Field(min_length=1)
    learner_releases: str = Field(min_length=1)
    learner_activities: list[str] = Field(min_length=1, description="a step that does one is marked for a supervisor")
    adult_when: When = Field(min_length=1, description="somebody too young for some steps: an adult does these")
    adult_activities: list[str] = Field(min_length=1, description="a step that does one is then marked for staff")
    learner_may: list[str] = Field(min_length=1, description="who may do it, where a learner does it")


class PageFile(File):
    """Standing texts of the sheet."""

    conventions: list[StandingLineFile]
    stop_at_once: list[WorkLineFile]
    do_not_start: list[WorkLineFile]
    after_a_stop: list[WorkLineFile] = Field(min_length=1)
    in_emergency: list[str] = Field(min_length=1)
    who_may: list[str]
    who_may_owner: list[str]
    owner_when: When = Field(min_length=1)
    supervised: list[str]
    supervised_when: When = Field(min_length=1)
    supervisor: SupervisorFile
    care: list[str]
    care_besides: list[CareFile] = Field(default=[])
    trouble: list[TroubleFile]
    use_level: str = Field(min_length=1)
    control: list[PageLineFile] = Field(default=[])
    facts: list[PageLineFile]
    cut: list[CutFile]
    time_notes: list[StandingLineFile]
    drawing: DrawingFile
    card: CardFile
    sources: list[str]
