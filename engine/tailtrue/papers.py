"""What stands on the papers for the lathe: the record paper, tags, the explanation. Plain content; `render` sets it."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from tailtrue.parts import Dials, Figure, Paper, Text
from tailtrue.procedure import LookUp

Do = Literal["leave", "again", "move"]
Kind = Literal["blank", "readings", "way", "moves", "wide"]
Part = Literal["set-up", "skim", "measuring", "visit", "moves", "end"]
BEFORE = "Before you move it"


@dataclass(frozen=True)
class Head:
    """Whose paper it is: on every page of it."""

    machine: str
    shop: str
    bar: str
    number: str
    revision: str
    paper: Paper
    dials: Dials
    rules: str


@dataclass(frozen=True)
class Section:
    """A heading with lines under it; steps are numbered."""

    title: str
    lines: tuple[Text, ...]
    steps: bool = False


@dataclass(frozen=True)
class Scales:
    """What the scales show: the differences from end to end, the factor of this bar, where the tailstock stays."""

    least: Figure
    most: Figure
    factor: Figure
    leave: Figure
    again: Figure | None


@dataclass(frozen=True)
class TableRow:
    """One line of the table: the difference, what to do, the move where there is one."""

    difference: Figure
    do: Do
    move: Figure | None


@dataclass(frozen=True)
class Place:
    """A place to write in: what, in which unit, which words to tick, what is planned."""

    label: str
    unit: str = ""
    choices: tuple[str, ...] = ()
    planned: Text = ()
    kind: Kind = "blank"


@dataclass(frozen=True)
class RecordSheet:
    """Everything that stands on the paper. Where nothing can be moved, a move is how far the centre stands off."""

    head: Head
    safety: tuple[Text, ...]
    mend: tuple[Text, ...]
    can_move: bool
    look_up: LookUp
    rows: tuple[TableRow, ...]
    scales: Scales
    read: tuple[Text, ...]
    scales_read: tuple[Text, ...]
    cannot: tuple[Text, ...]
    fill: tuple[Text, ...]
    verify: tuple[Text, ...]
    known: tuple[tuple[str, Text], ...]
    places: Mapping[Part, tuple[Place, ...]]


@dataclass(frozen=True)
class MachineTag:
    """What one tag says. An empty text is a place to write in."""

    head: Head
    result: Text
    in_limits: bool
    difference: Text
    date: str
    initials: str
    next_due: str
    means: tuple[Text, ...]
    mend: tuple[Text, ...]


@dataclass(frozen=True)
class SetOverTag:
    """The tag for the time the tailstock is set over."""

    head: Head
    what: tuple[Text, ...]
    never: tuple[Text, ...]
    back: tuple[Text, ...]


@dataclass(frozen=True)
class Plan:
    """What the drawing needs."""

    span: Figure
    head_station: Figure
    tail_station: Figure
    spacing: Figure
    tool_in_front: bool
    tailstock_larger: bool
    move: Figure | None
    difference: Figure | None


@dataclass(frozen=True)
class Explained:
    """The whole explanation."""

    head: Head
    safety: tuple[Text, ...]
    mend: tuple[Text, ...]
    sections: tuple[Section, ...]
    plan: Plan

    @property
    def told(self) -> tuple[Section, ...]:
        """The same for a terminal: the reasons, and what to mind before the hand goes to the screws."""
        return (*self.sections, Section(BEFORE, self.safety))
