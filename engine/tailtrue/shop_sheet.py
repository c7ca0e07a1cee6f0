"""The standing procedure of a shared shop: who may do what on this lathe, within which limits, and what is kept of it.

It is a part of the tree of a procedure and is made of the same pieces.
"""

from typing import Literal

from pydantic import Field

from tailtrue.parts import MachineState, Node, ShopRule, Signal, Status, Term, Text


class Line(Node):
    """One line of a part, and where it comes from."""

    id: str
    text: Text
    sources: tuple[str, ...]


class Entry(Node):
    """A label with its value; without one there is a place to write."""

    label: str
    value: Text | None = None


class Signatory(Node):
    """Somebody who answers for the paper."""

    role: str
    name: str | None = None
    day: str | None = None


class Change(Node):
    """What changed since the last revision, and why."""

    what: str
    why: str


class Control(Node):
    """What the paper is, which edition, and until when it may be used."""

    id: str
    title: str
    type: str
    revision: str
    status: Status
    issued: str
    review_due: str
    review_because: str
    overdue: bool
    language: str
    use_level: str
    valid_for: str
    generator: str
    rules: str
    inputs: str = Field(description="a fingerprint of everything that was said of lathe, crib, stock and job")
    entries: tuple[Entry, ...]
    last_reviewed: Text | None = Field(default=None, description="by whom and when, where that was said")
    changes: tuple[Change, ...] = ()
    signatories: tuple[Signatory, ...]


class WhoStep(Node):
    """A step of the procedure."""

    number: str
    title: str


class WhoRow(Node):
    """The steps of one phase by who may do them."""

    phase: str
    title: str
    any: tuple[WhoStep, ...] = ()
    supervised: tuple[WhoStep, ...] = ()
    staff: tuple[WhoStep, ...] = ()


class Sign(Node):
    """A registered safety sign: its code and what it means."""

    code: str
    words: str
    shape: Literal["disc", "crossed-ring", "triangle", "square"]


class HazardRow(Node):
    """One of the worst hazards of this job and what answers it."""

    caution: str
    signal: Signal
    signs: tuple[str, ...]
    hazard: str
    harm: str
    avoid: Text
    shop_rule: str = Field(default="", description="who of the shop added or reworded it, and why")
    shop_says: Text = Field(default=(), description="the first line that the shop put beside the shipped ones")


class WearRow(Node):
    """What is worn and what is not in one state of the machine."""

    state: str
    machine: MachineState
    required: tuple[Text, ...]
    forbidden: tuple[Text, ...]
    signs: tuple[str, ...] = Field(default=(), description="codes of what is worn")
    never_signs: tuple[str, ...] = Field(default=(), description="codes of what is not")
    sources: tuple[str, ...]


class GuardRow(Node):
    """Something on this lathe that protects, the state it is in, and what that means."""

    name: str
    state: Text
    means: Text
    sources: tuple[str, ...]


class LimitRow(Node):
    """A limit of this lathe and job, what happens beyond it, and the way back."""

    label: str
    limit: Text
    beyond: Text
    back: Text
    sources: tuple[str, ...]


class UpkeepRow(Node):
    """What keeps the lathe sound, how often, and who does it."""

    every: str
    task: Text
    who: str
    sources: tuple[str, ...]


class EmergencyRow(Node):
    """What is seen, what is done first, and what is never done."""

    seen: str
    do: Text
    never: Text
    sources: tuple[str, ...]


class FormLine(Node):
    """A place to write on a form; a high one takes several lines."""

    label: str
    high: bool = False
    value: Text | None = Field(default=None, description="what stands there already")


class Form(Node):
    """A form to be filled in by hand."""

    id: str
    title: str
    lead: Text
    at_lathe: bool = Field(default=False, description="hangs at the lathe with the roster")
    places: tuple[FormLine, ...]


class Reference(Node):
    """A published source whose ideas the paper follows."""

    source: str
    title: str
    edition: str
    idea: str


class ShopSheet(Node):
    """The whole standing procedure."""

    made_unasked: bool = Field(description="whether it is made without being asked for by name")
    control: Control
    photo: Text = Field(description="what stands in the place for a photo of the lathe")
    first: tuple[Line, ...] = Field(default=(), description="who may use the lathe; it stands before all else")
    banners: tuple[Line, ...] = ()
    scope: tuple[Line, ...]
    who: tuple[WhoRow, ...]
    training: tuple[Line, ...]
    supervision: tuple[Line, ...]
    local: tuple[Entry, ...]
    hazards: tuple[HazardRow, ...]
    hazard_note: tuple[Line, ...] = Field(default=(), description="what the table of hazards does not say")
    signs: tuple[Sign, ...]
    wear: tuple[WearRow, ...]
    guards: tuple[GuardRow, ...]
    before: tuple[Line, ...]
    during: tuple[Line, ...]
    after: tuple[Line, ...]
    forbidden: tuple[Line, ...]
    limits: tuple[LimitRow, ...]
    shop_rules: tuple[ShopRule, ...] = Field(default=(), description="those of the sheet it goes with")
    upkeep: tuple[UpkeepRow, ...]
    isolation: tuple[Line, ...]
    emergency: tuple[EmergencyRow, ...]
    waste: tuple[Line, ...]
    records: tuple[Line, ...]
    acknowledgement: tuple[Line, ...]
    roster_rows: int
    forms: tuple[Form, ...]
    references: tuple[Reference, ...]
    glossary: tuple[Term, ...] = Field(default=(), description="terms that this paper uses")
