"""The four files of a job read together: everything that is known, or everything that is wrong, at once."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from types import MappingProxyType
from typing import Any

from tailtrue.errors import FactsWrong, Problem
from tailtrue.facts import SetByHand
from tailtrue.given.by_hand import TABLE, OverrideReading
from tailtrue.given.entries import FILES, Catalogue
from tailtrue.given.instead import changed
from tailtrue.given.job_file import read_job_file
from tailtrue.given.own_units import system_in
from tailtrue.given.quoting import pair
from tailtrue.given.reading import GivenValue, Reading
from tailtrue.given.relations import does, file_problems, named_elsewhere
from tailtrue.given.seat_readings import reading_problems
from tailtrue.given.toml_file import TomlFile, read_toml
from tailtrue.given.unquoted import judge_of
from tailtrue.given.values import single
from tailtrue.quantities import System

__all__ = ["Given", "GivenValue", "read_job"]

_CLASS_KEY = "lathe.starts_from"
_LOOK = "mend the name; it is looked for beside the job file"


@dataclass(frozen=True)
class Given:
    """Everything a user said of a job, what the class of the lathe filled in, and the defaults."""

    values: Mapping[str, GivenValue]
    files: tuple[Path, ...]
    by_hand: Mapping[str, SetByHand] = field(default_factory=dict)

    def value(self, name: str, otherwise: Any = None) -> Any:
        """The plain value of a fact, or something else when it was not given."""
        found = self.values.get(name)
        return otherwise if found is None else found.value

    def text_of(self, name: str) -> str:
        """A fact in the words it was said in; empty when it was not given."""
        found = self.values.get(name)
        return "" if found is None else found.said

    def place_of(self, name: str) -> str:
        """File and line of a fact; empty when it was not given."""
        found = self.values.get(name)
        return "" if found is None else found.where


def read_job(path: Path, catalogue: Catalogue, instead: Mapping[str, Any] = MappingProxyType({})) -> Given:
    """Read a job file and the lathe, crib and stock files that it names; `instead` holds raw values in place of theirs.

    Raises FactsWrong with every problem of all four files.
    """
    job = read_job_file(path, judge_of(catalogue, ""))
    problems: list[Problem] = []
    values: dict[str, GivenValue] = {}
    paths = [path]
    opened = {kind: read_toml(below, name, _LOOK, judge_of(catalogue, "")) for kind, name, below in _others(job, path)}
    dials = _dials(opened.get("lathe"))
    named = {kind: name for kind, name, _ in _others(job, path)}
    changed_job = changed(job, "job", instead)
    own = OverrideReading(
        catalogue, changed_job, beside=frozenset({TABLE}), system=_system(changed_job, dials), named=named
    )  # fmt: skip
    values.update(own.table("job"))
    by_hand = own.overrides()
    _finish(own, "job", values, problems)
    for kind in FILES[1:]:
        said = values.get(f"job.{kind}")
        if said is None:
            continue
        below = path.parent / str(said.value)
        found = opened[kind] if named.get(kind) == said.value else read_toml(below, str(said.value), _LOOK)
        if isinstance(found, Problem):
            problems.append(_at_its_name(found, said, kind))
            continue
        paths.append(below)
        file = changed(found, kind, instead)
        reading = Reading(catalogue, file, system=_system(file, dials), named=named)
        values.update(reading.table(kind))
        if kind == "lathe":
            _fill_from_class(reading, values)
        _finish(reading, kind, values, problems)
    problems += named_elsewhere(catalogue, values)
    problems += reading_problems(catalogue, values)
    if problems:
        raise FactsWrong(problems)
    values.update(_defaults(catalogue, values))
    return Given(values, tuple(paths), by_hand)


def _others(job: TomlFile, path: Path) -> Iterator[tuple[str, str, Path]]:
    """Kind, name and place of the files that a job names, as far as it does."""
    table = job.tables.get("job")
    for kind in FILES[1:]:
        name = table.get(kind) if isinstance(table, Mapping) else None
        if isinstance(name, str) and name.strip():
            yield kind, name.strip(), path.parent / name.strip()


def _dials(lathe: TomlFile | Problem | None) -> System:
    """The system of the lathe's dials, before anything else of the file is judged."""
    table = lathe.tables.get("lathe") if isinstance(lathe, TomlFile) else None
    said = table.get("dials") if isinstance(table, Mapping) else None
    return said if said in ("metric", "inch") else ""


def _system(file: TomlFile, dials: System) -> System:
    """The system that a file is written in; that of the dials where it does not tell."""
    return system_in(*_leaves(file.tables)) or dials


def _leaves(found: Any) -> Iterator[Any]:
    if isinstance(found, Mapping | list):
        for one in found.values() if isinstance(found, Mapping) else found:
            yield from _leaves(one)
    else:
        yield found


def _finish(reading: Reading, kind: str, values: Mapping[str, GivenValue], problems: list[Problem]) -> None:
    """Add the problems of one file in the order of its lines, what is missing behind them."""
    problems += sorted(reading.problems, key=_line)
    problems += file_problems(reading.catalogue, kind, reading.met, values, reading.file.shown, reading.system)


def _line(problem: Problem) -> int:
    number = problem.where.rpartition(":")[2]
    return int(number) if number.isdigit() else 0


def _no_line(problem: Problem) -> bool:
    return not problem.where.rpartition(":")[2].isdigit()


def _at_its_name(problem: Problem, named: GivenValue, kind: str) -> Problem:
    """A file that cannot be opened is a fault of the line that names it."""
    return replace(problem, where=named.where, said=pair(kind, named.said)) if _no_line(problem) else problem


def _fill_from_class(reading: Reading, values: dict[str, GivenValue]) -> None:
    """Take from the class of the lathe what its owner did not say.

    A thing that can be said in several ways is left alone when the owner said it in any of them.
    """
    chosen = values.get(_CLASS_KEY)
    if chosen is None:
        return
    catalogue = reading.catalogue
    closed = {name for ways in catalogue.ways_of("lathe") if reading.met & set(ways.names()) for name in ways.names()}
    machine = Reading(catalogue, _of_class(catalogue, str(chosen.value)))
    for name, value in machine.table("lathe", origin="class").items():
        if name not in reading.met and name not in closed:
            values[name] = value
            reading.met.add(name)


def _of_class(catalogue: Catalogue, word: str) -> TomlFile:
    """The class file without its label and notes, which are no facts of the lathe."""
    file = catalogue.classes[word].file
    return replace(file, tables={"lathe": file.tables["lathe"]})


def _defaults(catalogue: Catalogue, values: Mapping[str, GivenValue]) -> Iterator[tuple[str, GivenValue]]:
    spared = catalogue.spared_in(does(catalogue, values), values)
    for name, fact in catalogue.facts.items():
        if name in values:
            continue
        if fact.ask == "default":
            value, said = single(fact, fact.default, catalogue.references)
            yield name, GivenValue(value, fact.spec.where, said, "default")
        elif fact.ask == "must" and fact.spec.kind == "records" and name in spared:
            # A list that this job need not have is one without entries, and nothing that hangs on it is "not said".
            yield name, GivenValue((), fact.spec.where, "none", "default")
