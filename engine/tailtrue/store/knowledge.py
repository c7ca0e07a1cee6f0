"""The whole knowledge, loaded and checked, as the engine uses it."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from typing import NamedTuple

from tailtrue.computed.registry import Computed
from tailtrue.conditions import Condition
from tailtrue.decisions import Decision
from tailtrue.facts import Fact, FactSpec
from tailtrue.given.catalogue import Catalogue
from tailtrue.store.models import (
    BlankFile,
    CautionFile,
    DecisionExampleFile,
    HoldFile,
    NeedFile,
    NoteFile,
    RemarkFile,
    SayFile,
    SourceFile,
    StepFile,
    StopFile,
    TermFile,
)
from tailtrue.store.page_models import StepDrawingFile
from tailtrue.store.page_texts import Page, SettingText
from tailtrue.store.records import BlockText, WorkRecordText
from tailtrue.store.route_models import PhaseFile, RouteFile
from tailtrue.store.safety import ControlText, SafetyText
from tailtrue.store.sop import SopTexts
from tailtrue.tables import Table
from tailtrue.wording import Wording


@dataclass(frozen=True)
class Caution:
    """A caution with its condition and texts read."""

    file: CautionFile
    when: Condition
    avoid: tuple[Wording, ...]
    controls: tuple[ControlText, ...]
    where: str


@dataclass(frozen=True)
class Stop:
    """A stop with its condition and texts read."""

    file: StopFile
    when: Condition
    text: Wording
    way_out: tuple[Wording, ...]
    where: str


class Note(NamedTuple):
    """A note with its condition and text read."""

    file: NoteFile
    when: Condition
    text: Wording
    where: str


class Remark(NamedTuple):
    """A remark on readings with its condition and text read."""

    file: RemarkFile
    when: Condition
    text: Wording
    where: str


class Say(NamedTuple):
    """A line said after a visit with its condition and text read."""

    file: SayFile
    when: Condition
    text: Wording
    where: str


class Term(NamedTuple):
    """A term of the trade with its place."""

    file: TermFile
    where: str

    @property
    def forms(self) -> tuple[str, ...]:
        """Every form that stands for it."""
        return (self.file.term, *self.file.also)


class SettingsFrom(NamedTuple):
    """Settings lines made from a list of records."""

    records: str
    label: Wording
    value: Wording
    reason: Wording


class CheckText(NamedTuple):
    """A check with its texts read; limits and instrument are names of facts."""

    text: Wording
    low: str | None
    high: str | None
    instrument: str | None
    resolution: str | None
    uncertainty: str | None
    blanks: tuple[BlankFile, ...]
    when: Condition


class GoesOnText(NamedTuple):
    """A way on with another sheet, with its condition and its case read."""

    when: Condition
    at: tuple[str, ...]
    said: Wording


class VoidText(NamedTuple):
    """Why another sheet is not gone on with, read."""

    when: Condition
    text: Wording


class HoldText(NamedTuple):
    """A hold point with its text read."""

    file: HoldFile
    text: Wording
    goes_on: tuple[GoesOnText, ...] = ()
    void: tuple[VoidText, ...] = ()

    def wordings(self) -> tuple[Wording, ...]:
        """Every text of the hold."""
        return (self.text, *(one.said for one in self.goes_on), *(one.text for one in self.void))


@dataclass(frozen=True)
class StepText:
    """A step with its texts read."""

    file: StepFile
    when: Condition
    sentences: tuple[Wording, ...]
    settings: tuple[SettingText, ...]
    settings_from: SettingsFrom | None
    checks: tuple[CheckText, ...]
    without: Mapping[str, Condition]
    only: Mapping[str, Condition]
    hold: HoldText | None
    why: Wording
    where: str


class Also(NamedTuple):
    """One more piece of a phase with its condition and purpose read."""

    name: str
    when: Condition
    purpose: Wording


class Phase(NamedTuple):
    """A phase of a route with its condition and purpose read."""

    file: PhaseFile
    when: Condition
    purpose: Wording
    also: tuple[Also, ...] = ()


@dataclass(frozen=True)
class Route:
    """A route with its texts read."""

    file: RouteFile
    lead: Wording
    phases: tuple[Phase, ...]
    where: str

    @property
    def leaves_another(self) -> bool:
        """Whether another sheet was left for this one."""
        return bool(self.file.leaves)

    def has_to_do_with(self, concerns: Collection[str]) -> bool:
        """Whether a rule that concerns these things has a say on this route; one that names none always has."""
        return not concerns or not set(concerns).isdisjoint(self.file.concerns)


class Need(NamedTuple):
    """Something the job may use, with its texts read."""

    file: NeedFile
    have: Condition
    name: Wording
    detail: Wording
    amount: Wording


class StepDrawing(NamedTuple):
    """A drawing of the making, with its condition and its words read."""

    file: StepDrawingFile
    when: Condition
    labels: Mapping[str, Wording]
    where: str


class ShopChange(NamedTuple):
    """One change that a shop makes: what is done to what, why, by whom; of a limit also its values, and whether it binds."""

    kind: str
    what: str
    name: str
    label: str
    reason: str
    by: str
    date: str
    where: str
    shipped: float | None = None
    drawn: float | None = None
    binds: bool = True


@dataclass(frozen=True)
class ShopRules:
    """What a shop laid over the knowledge: its changes, marks and own lines of changed rules, what was as shipped."""

    changes: tuple[ShopChange, ...] = ()
    marks: Mapping[tuple[str, str], str] = field(default_factory=dict)
    own: Mapping[tuple[str, str], int] = field(default_factory=dict)
    kept: Mapping[tuple[str, str], tuple[tuple[str, ...], ...]] = field(default_factory=dict)
    limits: Mapping[str, Fact] = field(default_factory=dict)
    signals: Mapping[str, str] = field(default_factory=dict)
    always: tuple[CautionFile, ...] = ()
    # By activity: the place that takes a caution out which answers it, and the caution.
    taken_out: Mapping[str, tuple[str, str]] = field(default_factory=dict)

    def own_lines(self, what: str, name: str) -> int:
        """How many lines of a rule, the last ones, the shop has put beside the shipped ones."""
        return self.own.get((what, name), 0)

    def mark(self, what: str, name: str) -> str:
        """What stands beside a changed rule on paper; empty where it is as shipped."""
        return self.marks.get((what, name), "")


@dataclass(frozen=True)
class Knowledge:
    """Everything the trade knows, for the engine."""

    version: str
    given: Catalogue
    catalogue: Mapping[str, FactSpec]
    computed: Mapping[str, Computed]
    limits: Mapping[str, Fact]
    decisions: Mapping[str, Decision]
    decision_examples: Mapping[str, tuple[DecisionExampleFile, ...]]
    cautions: tuple[Caution, ...]
    stops: tuple[Stop, ...]
    notes: tuple[Note, ...]
    remarks: tuple[Remark, ...]
    says: tuple[Say, ...]
    glossary: tuple[Term, ...]
    blocks: tuple[BlockText, ...]
    records: Mapping[str, WorkRecordText]
    steps: Mapping[str, StepText]
    routes: Mapping[str, Route]
    needs: Mapping[str, Need]
    page: Page
    drawings: tuple[StepDrawing, ...]
    safety: SafetyText
    sources: Mapping[str, SourceFile]
    tables: Mapping[str, Table]
    sop: SopTexts
    folder: Path
    shop: ShopRules

    def hanging_on(self, name: str) -> frozenset[str]:
        """A fact and every fact that may be made from it, at once or by way of others."""
        if name not in self._hanging:
            found, ahead = {name}, [name]
            while ahead:
                more = self._readers.get(ahead.pop(), set()) - found
                found |= more
                ahead += more
            self._hanging[name] = frozenset(found)
        return self._hanging[name]

    @cached_property
    def _hanging(self) -> dict[str, frozenset[str]]:
        return {}

    @cached_property
    def _readers(self) -> Mapping[str, set[str]]:
        found: dict[str, set[str]] = {}
        ways = {name: way.needs for name, way in self.computed.items()}
        for name, reads in (ways | {name: decision.reads for name, decision in self.decisions.items()}).items():
            for one in reads:
                found.setdefault(one, set()).add(name)
        return found
