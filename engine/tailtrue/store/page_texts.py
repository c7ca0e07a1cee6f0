"""The standing texts of the sheet and of its card, with their conditions read."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import NamedTuple

from tailtrue.conditions import Condition
from tailtrue.store.page_models import (
    CardFile,
    CardPlaceFile,
    CutFile,
    StandingLineFile,
    SupervisorFile,
    WorkLineFile,
)
from tailtrue.wording import Wording


@dataclass(frozen=True)
class SettingText:
    """A line of label, value and reason: a setting of a step, or what a page tells."""

    label: Wording
    value: Wording
    reason: Wording
    when: Condition


@dataclass(frozen=True)
class PageLine(SettingText):
    """A line of the front of the sheet or of the card."""

    concerns: tuple[str, ...]


class Care(NamedTuple):
    """A line of the care of the bar that holds for bars of one kind."""

    text: Wording
    when: Condition


class Trouble(NamedTuple):
    """What is seen, what to do and what not to do, with the texts read."""

    seen: str
    do: Wording
    never: Wording
    when: Condition
    concerns: tuple[str, ...]
    turning: bool


class CutText(NamedTuple):
    """A line of the cut list with its texts read."""

    file: CutFile
    material: Wording
    size: Wording
    saw_to: Wording
    when: Condition


class DrawingPlan(NamedTuple):
    """What the drawing shows, what besides where a condition holds, and what only where a step says it too."""

    title: str
    caption: str
    dimensions: Mapping[str, str]
    labels: Mapping[str, Wording]
    also: Mapping[str, str]
    also_when: Condition
    if_said: Mapping[str, str]


class CardLineText(NamedTuple):
    """A number on the card with its label read; an empty label stands for that of the step.

    `beside` is the fact of a number that the step gives in its reason; empty where none is told.
    """

    fact: str
    label: Wording
    beside: str
    beside_label: str
    tool: str


class CardGroupText(NamedTuple):
    """The numbers of one operation and the steps that set them."""

    title: str
    steps: frozenset[str]
    lines: tuple[CardLineText, ...]
    places: tuple[CardPlaceFile, ...]


class CardText(NamedTuple):
    """What stands on the card at the lathe; what has no fact in it stands in the file."""

    file: CardFile
    notes: tuple[PageLine, ...]
    groups: tuple[CardGroupText, ...]


class Supervisor(NamedTuple):
    """Who supervises, and a learner, with the conditions read."""

    file: SupervisorFile
    when: Condition
    learner_when: Condition
    adult_when: Condition
    learner_may: tuple[Wording, ...]


class WorkLine(NamedTuple):
    """A line of the front, and the jobs in which it is told."""

    file: WorkLineFile
    text: Wording


class StandingLine(NamedTuple):
    """A standing line of the sheet, and the jobs in which it is told."""

    file: StandingLineFile
    text: Wording


class Page(NamedTuple):
    """The standing texts of the sheet."""

    conventions: tuple[StandingLine, ...]
    stop_at_once: tuple[WorkLine, ...]
    do_not_start: tuple[WorkLine, ...]
    after_a_stop: tuple[WorkLine, ...]
    in_emergency: tuple[Wording, ...]
    who_may: tuple[Wording, ...]
    who_may_owner: tuple[Wording, ...]
    owner_when: Condition
    supervised: tuple[Wording, ...]
    supervised_when: Condition
    supervisor: Supervisor
    care: tuple[Wording, ...]
    care_besides: tuple[Care, ...]
    trouble: tuple[Trouble, ...]
    use_level: str
    control: tuple[PageLine, ...]
    facts: tuple[PageLine, ...]
    cuts: tuple[CutText, ...]
    time_notes: tuple[StandingLine, ...]
    drawing: DrawingPlan
    card: CardText
    sources: tuple[str, ...]

    @property
    def activities(self) -> frozenset[str]:
        """The activities that bring a stop condition, or a list of the card for another machine."""
        lines = (*self.stop_at_once, *self.do_not_start, *self.after_a_stop)
        named = (*(one.file.activities for one in lines), *(one.activities for one in self.card.file.other))
        return frozenset(name for names in named for name in names)
