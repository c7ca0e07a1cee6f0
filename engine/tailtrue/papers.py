"""What stands on the papers for the lathe: tags, the explanation, whose they are. Plain content; `render` sets it."""

from typing import NamedTuple

from tailtrue.parts import STANDING, Dials, Figure, Paper, Status, Text

BEFORE = "Before you move it"


class Head(NamedTuple):
    """Whose paper it is: on every page of it."""

    machine: str
    shop: str
    bar: str
    number: str
    revision: str
    paper: Paper
    dials: Dials
    rules: str
    dated: str = ""
    status: Status = "draft"
    checksum: str = ""

    @property
    def made_by(self) -> str:
        """The rules behind it, and the checksum of the sheet that it goes with, if it goes with one."""
        return f"rules {self.rules}" + (f", checksum {self.checksum}" if self.checksum else "")

    @property
    def standing(self) -> str:
        """The day of the sheet and whether it is approved or still in force, for a paper that says so; else nothing."""
        return f", dated {self.dated}, {STANDING[self.status]}" if self.dated else ""

    @property
    def mark(self) -> str:
        """What is called out at the top of a paper that says how it stands: that it is a draft, or superseded."""
        return f"  {self.status.upper()}" if self.dated and self.status != "approved" else ""


class Section(NamedTuple):
    """A heading with lines under it; steps are numbered."""

    title: str
    lines: tuple[Text, ...]
    steps: bool = False


class MachineTag(NamedTuple):
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


class SetOverTag(NamedTuple):
    """The tag for the time the tailstock is set over."""

    head: Head
    what: tuple[Text, ...]
    never: tuple[Text, ...]
    back: tuple[Text, ...]


class Plan(NamedTuple):
    """What the drawing needs."""

    span: Figure
    head_station: Figure
    tail_station: Figure
    spacing: Figure
    tool_in_front: bool
    tailstock_larger: bool
    move: Figure | None
    difference: Figure | None


class Explained(NamedTuple):
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
