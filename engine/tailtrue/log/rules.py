"""The rules of the log as the knowledge has them: how many checks make a chart, what may change, when to check again."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Annotated

from pydantic import AfterValidator, BaseModel, ConfigDict, Field

from tailtrue.errors import FactsWrong, KnowledgeInvalid, Problem
from tailtrue.given.knowledge_file import knowledge_toml, shaped
from tailtrue.given.toml_file import TomlFile
from tailtrue.log.record import Record
from tailtrue.places import knowledge_folder
from tailtrue.quantities import read_quantity

RULES_FILE = "alignment/log_rules.toml"
_DAY_S = 86400.0


def _length(text: str) -> str:
    return _readable(text, "mm")


def _time(text: str) -> str:
    return _readable(text, "s")


def _readable(text: str, unit: str) -> str:
    try:
        read_quantity(text, unit)
    except FactsWrong as wrong:
        raise ValueError(str(wrong)) from wrong
    return text


def _field(name: str) -> str:
    if name not in Record.model_fields:
        raise ValueError(f"a record has no field '{name}'")
    return name


Length = Annotated[str, AfterValidator(_length)]
Time = Annotated[str, AfterValidator(_time)]
FieldName = Annotated[str, AfterValidator(_field)]
Sources = Annotated[list[str], Field(min_length=1)]


class _Shape(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)


class _Chart(_Shape):
    fewest: int = Field(ge=2)
    run: int = Field(ge=2)
    drift_probability: float = Field(gt=0.5, lt=1)
    why: str
    sources: Sources


class _Same(_Shape):
    field: FieldName
    label: str
    why: str
    sources: Sources


class _Near(_Same):
    within: Length


class _Steps(_Shape):
    share: float = Field(gt=0, lt=0.1)
    why: str
    sources: Sources


class _Recheck(_Shape):
    often: Time
    often_until: int = Field(ge=2)
    often_why: str
    times_quiet: float = Field(gt=1)
    quiet_why: str
    longest: Time
    longest_why: str
    share_after_alarm: float = Field(gt=0, lt=1)
    shortest: Time
    alarm_why: str
    alarm_moved_why: str
    sources: Sources
    before: list[str]


class _Wear(_Shape):
    new_collars_from: Length
    why: str
    sources: Sources


class _File(_Shape):
    chart: _Chart
    same: list[_Same]
    near: list[_Near]
    steps: _Steps
    recheck: _Recheck
    wear: _Wear


@dataclass(frozen=True)
class ChartRules:
    """How checks are charted: how many make limits, how many in a row or how sure a slope is drift, what ends a stretch."""

    fewest: int
    run: int
    drift_probability: float
    same: Mapping[str, str]
    near: Mapping[str, tuple[str, float]]


@dataclass(frozen=True)
class RecheckRules:
    """When to check again, in days, each with its reason."""

    often_days: float
    often_until: int
    often_why: str
    times_quiet: float
    quiet_why: str
    longest_days: float
    longest_why: str
    share_after_alarm: float
    shortest_days: float
    alarm_why: str
    alarm_moved_why: str
    before: tuple[str, ...]


@dataclass(frozen=True)
class LogRules:
    """Everything the knowledge says of an alignment log."""

    chart: ChartRules
    recheck: RecheckRules
    step_share: float
    new_collars_from_mm: float


@cache
def log_rules() -> LogRules:
    """The rules that ship with the engine. Raises KnowledgeInvalid with all that is wrong with them."""
    return read_rules(knowledge_toml(knowledge_folder(), RULES_FILE))


def read_rules(file: TomlFile) -> LogRules:
    """Rules from their file. Raises KnowledgeInvalid."""
    problems: list[Problem] = []
    read = shaped(_File, file, problems)
    if read is None:
        raise KnowledgeInvalid(problems)
    near = {one.field: (one.label, read_quantity(one.within, "mm")) for one in read.near}
    again = read.recheck
    return LogRules(
        ChartRules(
            read.chart.fewest, read.chart.run, read.chart.drift_probability,
            {one.field: one.label for one in read.same}, near,
        ),
        RecheckRules(
            _days(again.often), again.often_until, again.often_why, again.times_quiet, again.quiet_why, _days(again.longest),
            again.longest_why, again.share_after_alarm, _days(again.shortest), again.alarm_why,
            again.alarm_moved_why, tuple(again.before),
        ),
        read.steps.share,
        read_quantity(read.wear.new_collars_from, "mm"),
    )  # fmt: skip


def _days(text: str) -> float:
    return read_quantity(text, "s") / _DAY_S
