"""The typed tree of a finished procedure: what is printed, and what the inspection reads. Its pieces are in `parts`."""

from typing import Literal

from pydantic import Field

from tailtrue.parts import (
    STANDING,
    Caution,
    Check,
    Dials,
    Figure,
    MachineState,
    Node,
    Origin,
    Paper,
    Setting,
    ShopRule,
    Status,
    Term,
    Text,
    status_of,
)
from tailtrue.record_sheet import RecordSheet
from tailtrue.review import SafetyReview
from tailtrue.shop_sheet import Change, Entry, LimitRow, ShopSheet, Sign
from tailtrue.work_record import WorkRecord


class GoesOn(Node):
    """Where work goes on with the sheet that was left: its title, its number where it was given, and a step of it.

    `when`: the case in which it goes on there, where there are several.
    """

    sheet: str
    sheet_number: str = ""
    step: str
    number: str
    title: str
    when: Text = ()


class Void(Node):
    """The sheet that was left is not gone on with: its title, its number where it was given, and why."""

    sheet: str
    sheet_number: str = ""
    text: Text


class Hold(Node):
    """Work stops here until somebody releases it."""

    text: Text
    releases: str
    go_back_to: str | None = None
    goes_on: tuple[GoesOn, ...] = ()
    void: Void | None = None


class Span(Node):
    """How long something takes: somebody is at it from so long to so long; waiting runs by itself."""

    low: Figure
    high: Figure
    waiting: Figure | None = None


class StepTime(Span):
    """The time of a step; what is cut of it stands apart, reckoned from the settings."""

    cutting: Figure | None = None


class TimePlan(Node):
    """The time of the whole job, and what is to be known about it."""

    total: Span
    notes: tuple[Text, ...]


class Step(Node):
    """One thing the operator does, with the state the machine is in while it is done."""

    id: str
    number: str
    title: str
    who: Literal["any", "supervised", "staff"] = "any"
    machine: MachineState
    activities: tuple[str, ...] = ()
    cautions: tuple[Caution, ...] = ()
    hold: Hold | None = None
    text: tuple[Text, ...]
    settings: tuple[Setting, ...] = ()
    checks: tuple[Check, ...] = ()
    why: Text = ()
    tools: tuple[str, ...] = ()
    boxes: tuple[str, ...] = Field(default=("",), description="one tick box each; a label per piece for repeated work")
    shop_rule: str = Field(default="", description="who of the shop reworded it, and why")
    of_shop: int = Field(default=0, description="how many lines, the last ones, the shop put beside the shipped ones")
    again: str = Field(default="", description="number of the earlier step in full: paper gives the checks alone")
    time: StepTime | None = Field(default=None, description="for one piece")


class Phase(Node):
    """A stretch of work with one purpose; `each` names the pieces it is done for, one after the other."""

    id: str
    number: str
    title: str
    purpose: Text = ()
    each: tuple[str, ...] = ()
    cautions: tuple[Caution, ...] = ()
    steps: tuple[Step, ...]
    time: Span | None = Field(default=None, description="for every piece together")


class Need(Node):
    """Something the job uses: a tool, an instrument, stock, a consumable, something to wear."""

    id: str
    kind: Literal["tool", "instrument", "stock", "consumable", "wear"]
    name: Text
    detail: Text = ()
    amount: Text = Field(default=(), description="how much of it is used up")
    in_shop: bool
    used_at: tuple[str, ...]


class Cut(Node):
    """One line of the cut list."""

    piece: str
    count: int
    material: str
    size: Text
    saw_to: Text
    buy: Figure | None = Field(default=None, description="length of stock for all pieces, saw cuts counted in")
    mass_to_buy: Figure | None = None
    mass_finished: Figure | None = Field(default=None, description="of all pieces")


# Reasons that say no more than the verdict beside them: small print leaves them out.
IT_FITS, IT_BINDS, ANOTHER_FIRST, ANOTHER_BINDS = "it fits", "it binds", "another comes first", "another binds before it"
TOLD_BY_VERDICT = frozenset({IT_FITS, IT_BINDS, ANOTHER_FIRST, ANOTHER_BINDS})


class Alternative(Node):
    """One way a question could have been answered, and what came of it."""

    name: str
    verdict: Literal["chosen", "fits", "no", "unknown"]
    reason: str
    why: str
    sources: tuple[str, ...]
    figures: Text = Field(default=(), description="what it comes to in this job, where that is known")
    size: Figure | None = Field(default=None, description="the size that it comes to, where the question is one of sizes")


class Choice(Node):
    """A question the rules answered: what was chosen and every alternative judged.

    `settles` names the number that takes its size, `weighed` whether the least or the greatest of the sizes binds,
    `every_way` that each way is told wherever the choice is.
    """

    id: str
    question: str
    chosen: str
    alternatives: tuple[Alternative, ...]
    settles: str | None = None
    weighed: Literal["least", "greatest"] | None = None
    every_way: bool = False

    @property
    def sources(self) -> tuple[str, ...]:
        """The sources of every way that was judged, each once."""
        return tuple(dict.fromkeys(key for way in self.alternatives for key in way.sources))


class HandSet(Node):
    """A number that stands where a computed one would: what was worked out, what bounds it, why it was changed, by whom."""

    label: str
    value: Figure
    worked_out: Figure
    safe: Literal["lower", "higher", ""]
    at_least: tuple[Figure, ...] = ()
    at_most: tuple[Figure, ...] = ()
    reason: str
    initials: str


class Derivation(Node):
    """How one number came about."""

    fact: str
    label: str
    value: Text
    how: str
    read: tuple[str, ...] = ()
    limited_by: Text = ()
    by_hand: Text = ()
    on_sheet: bool = Field(default=True, description="stands on the procedure, not on its other papers alone")
    own_sources: tuple[str, ...] = Field(default=(), description="of this number alone")
    sources: tuple[str, ...] = Field(description="of this number and of all that it was made from")
    weakest: Origin


class Source(Node):
    """One line of the list of sources."""

    id: str
    kind: str
    title: str
    edition: str = ""
    status: str


class Move(Node):
    """One column of the look-up table: the difference read and the move of the tailstock; no move: leave it."""

    difference: Figure
    move: Figure | None


class LookUp(Node):
    """Difference of the collars read, and what to do about it.

    Where the tailstock cannot be moved, `move` of a row is how far its centre stands off the line, and the words say on
    which side.
    """

    can_move: bool = True
    rows: tuple[Move, ...]
    larger_at_tailstock: str
    smaller_at_tailstock: str
    inside: Figure | None
    outside: Figure | None = None
    leave: Figure | None
    verdict_possible: bool
    lines: tuple[Text, ...] = Field(default=(), description="what is done between two rows, and beyond the last")


class CardLine(Node):
    """One number on the card at the lathe: a setting of the step whose number is given."""

    label: Text
    value: Figure
    step: str


class CardPlace(Node):
    """A place to write a reading that a later step uses, as it stands at its own step."""

    label: str
    unit: str = ""
    at: str = Field(description="the label of the blank at the step")
    step: str


class CardGroup(Node):
    """The lines of one operation, and the readings that are carried from it."""

    title: str
    lines: tuple[CardLine, ...]
    places: tuple[CardPlace, ...] = ()


class StartLine(Node):
    """What is called out before a start, and the state that must be found; what is a value has a blank."""

    item: str
    state: str
    unit: str = Field(default="", description="of the value that is written, where it is one")
    answers: tuple[str, ...] = Field(default=(), description="the dangers of the sheet that this line keeps off")


class StartList(Node):
    """The list called out before each start, or before hands go in where nothing turns, with the words that end it."""

    title: str
    lines: tuple[StartLine, ...]
    ends_with: str


class ShortStep(Node):
    """A line of the card to do and confirm, for a stretch of the sheet from one step to another."""

    step: str
    last: str
    text: str
    starts: bool = Field(description="the spindle turns on the way, so the list comes first")


class Card(Node):
    """What of the sheet hangs at the headstock, besides the stop conditions and the look-up table."""

    messages: tuple[str, ...] = Field(description="the dangers that stand on it in full; others are kept off by the list")
    start: StartList
    besides: tuple[StartList, ...] = Field(default=(), description="lists of other machines that start on the way")
    notes: tuple[Setting, ...]
    groups: tuple[CardGroup, ...]
    steps_title: str
    steps: tuple[ShortStep, ...]
    list_first: str = Field(description="what the mark before a line means")
    interrupted: str
    ends_with: str
    emergency: str
    pointer: str
    glossary: tuple[Term, ...] = Field(default=(), description="terms on the card that not every lathe has")


class Drawing(Node):
    """What a drawing needs: figures by the name of the dimension, and where on the sheet it stands."""

    id: str
    kind: str = Field(description="which way of drawing; each kind asks for dimensions of its own")
    place: str = Field(description="the number of the step it stands at, or front")
    title: str
    caption: str
    dimensions: dict[str, Figure]
    labels: dict[str, str]
    said: dict[str, str] = Field(default={}, description="what the user chose or calls things, as far as it is known")


class Finding(Node):
    """Something the engine noticed: a note, a warning about the plan, or a near limit."""

    level: Literal["note", "attention"]
    text: Text
    shop_rule: str = ""
    sources: tuple[str, ...] = ()


class TitleBlock(Node):
    """Identity of the sheet."""

    title: str
    shop: str
    machine: str
    machine_detail: Text
    number: str
    revision: str
    date: str
    author: str
    approver: str
    owner: bool = Field(default=False, description="the owner works alone at home, and approves the sheet")
    use_level: str = Field(default="", description="whether each line is read and ticked, or looked up")
    operator: str = Field(default="", description="how experienced the operator was said to be")
    technical_reviewer: str = ""
    safety_reviewer: str = ""
    stated: str = Field(default="", description="the status that the job file gives")
    control: tuple[Entry, ...] = Field(default=(), description="further lines, each with its value or a place to write")
    changes: tuple[Change, ...] = Field(default=(), description="since the last revision")
    generator: str = Field(default="", description="what made the sheet, and its version")
    inputs: str = Field(default="", description="a fingerprint of everything that was said of lathe, crib, stock and job")
    walked_through: str = Field(default="", description="who read it at the lathe with a user before approval, and when")
    review_due: str
    overdue: bool = False
    paper: Paper
    knowledge_version: str
    checksum: str
    dials: Dials
    valid_for: str

    @property
    def approved(self) -> bool:
        """Approved by name, and walked through before."""
        return bool(self.approver and self.walked_through)

    @property
    def status(self) -> Status:
        """Superseded when the job file says so, else a draft until it is approved."""
        return status_of(self.stated, approved=self.approved)

    @property
    def standing(self) -> str:
        """The status as it stands on a page."""
        return STANDING[self.status]


class Procedure(Node):
    """A whole procedure, ready for inspection and for the page."""

    schema_version: Literal["1"] = "1"
    title: TitleBlock
    lead: Text
    facts: tuple[Setting, ...]
    drawing: Drawing | None
    drawings: tuple[Drawing, ...] = Field(default=(), description="those of the making, in the order of the steps")
    who_may: tuple[Text, ...]
    do_not_start: tuple[Text, ...]
    stop_at_once: tuple[Text, ...]
    after_a_stop: tuple[Text, ...] = Field(default=(), description="in this order, whatever stopped the work")
    in_emergency: tuple[Text, ...] = Field(default=(), description="beside the emergency list of the safety review")
    if_it_goes_wrong: tuple[tuple[str, Text, Text], ...]
    limits: tuple[LimitRow, ...] = ()
    conventions: tuple[Text, ...]
    job_cautions: tuple[Caution, ...]
    needs: tuple[Need, ...]
    cut_list: tuple[Cut, ...]
    phases: tuple[Phase, ...]
    time: TimePlan | None = None
    look_up: LookUp | None
    card: Card | None
    safety_review: SafetyReview
    record: RecordSheet | None = None
    work_record: WorkRecord | None = Field(default=None, description="where the work is no test of the tailstock")
    care: tuple[Text, ...]
    findings: tuple[Finding, ...]
    set_by_hand: tuple[HandSet, ...] = ()
    shop_rules: tuple[ShopRule, ...] = ()
    choices: tuple[Choice, ...]
    derivations: tuple[Derivation, ...]
    sources: tuple[Source, ...]
    signs: tuple[Sign, ...] = Field(default=(), description="the safety signs of the cautions, in words")
    sop: ShopSheet | None = None
    glossary: tuple[Term, ...] = Field(default=(), description="terms that this sheet uses; the other papers have their own")
