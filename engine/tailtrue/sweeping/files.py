"""What the sweep starts from and what it changes, read from ``knowledge/sweep``."""

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pydantic import Field

from tailtrue.errors import KnowledgeInvalid
from tailtrue.given.entries import FILES, GivenFact
from tailtrue.store.knowledge import Knowledge
from tailtrue.store.models import File
from tailtrue.store.reading import Reader
from tailtrue.tables import Table

FOLDER = "sweep"
UNREACHED = "sweep/unreached"
PASSED = "sweep/passed_over"
# Words of a shop: one is as good as another.
_PLAIN = frozenset({"text", "date", "texts", "records", "quantities"})

Raw = Mapping[str, Any]


class StartFile(File):
    """A job that is varied, laid on another start."""

    id: str
    on: str = ""
    set: dict[str, Any] = Field(default_factory=dict)


class EachFile(File):
    """Words: these, or those of a column of a table; of all rows, or of those that list one of `any_of` in `lists`."""

    table: str = ""
    column: str = ""
    lists: str = ""
    any_of: list[str] = Field(default_factory=list)
    words: list[str] = Field(default_factory=list)


class WayFile(File):
    """An alternative, or one for each row of a table."""

    id: str
    each: EachFile | None = None
    set: dict[str, Any]


class FoundFile(File):
    """A job that reaches what neither starts nor pairs do: values laid over a start."""

    id: str
    start: str
    set: dict[str, Any]


class VisitFile(File):
    """What is said at the lathe, laid over the job of a start, as plain values of facts."""

    id: str
    start: str
    set: dict[str, Any] = Field(default_factory=dict)
    facts: dict[str, Any]


@dataclass(frozen=True)
class Sweep:
    """Starts, what the files of their shop say, alternatives, jobs that aim at one thing, and visits."""

    job: Path
    shop: Raw
    starts: Mapping[str, Raw]
    ways: tuple[Raw, ...]
    found: tuple[FoundFile, ...]
    visits: tuple[VisitFile, ...]


def read_sweep(knowledge: Knowledge) -> Sweep:
    """What stands in the folder of the sweep. Raises KnowledgeInvalid with all that is wrong there."""
    reader = Reader(knowledge.folder)
    starts: dict[str, Raw] = {}
    for start, where in reader.entries(f"{FOLDER}/starts.toml", "start", StartFile):
        if start.on and start.on not in starts:
            reader.wrong(where, start.id, f"lies on '{start.on}'", "name a start that stands above it")
        starts[start.id] = {**starts.get(start.on, {}), **start.set}
    written = [way for way, _ in reader.entries(f"{FOLDER}/ways.toml", "way", WayFile)]
    found = tuple(one for one, _ in reader.entries(f"{FOLDER}/found.toml", "job", FoundFile))
    visits = tuple(one for one, _ in reader.entries(f"{FOLDER}/visits.toml", "visit", VisitFile))
    aimed: tuple[FoundFile | VisitFile, ...] = (*found, *visits)
    for one in aimed:
        if one.start not in starts:
            reader.wrong(f"knowledge/{FOLDER}", one.id, f"starts from '{one.start}'", f"use one of {', '.join(starts)}")
    if reader.problems:
        raise KnowledgeInvalid(tuple(reader.problems))
    ways = [set_ for one in written for set_ in _of_way(one, knowledge.tables)]
    ways += [{fact.spec.name: raw} for fact in knowledge.given.facts.values() for raw in values(fact)]
    shop = knowledge.folder / FOLDER / "shop"
    return Sweep(shop / "job.toml", _said_in(shop), starts, tuple(ways), found, visits)


def _said_in(shop: Path) -> Raw:
    """What the files of the shop say, by name of fact."""
    tables = (tomllib.loads((shop / f"{kind}.toml").read_text(encoding="utf-8")).get(kind, {}) for kind in FILES)
    return {f"{kind}.{key}": raw for kind, table in zip(FILES, tables, strict=True) for key, raw in table.items()}


def _of_way(one: WayFile, tables: Mapping[str, Table]) -> Iterator[Raw]:
    if one.each is None:
        yield one.set
        return
    for word in dict.fromkeys(_words(one.each, tables)):
        yield {name: _filled(raw, word) for name, raw in one.set.items()}


def _words(each: EachFile, tables: Mapping[str, Table]) -> list[str]:
    rows = tables[each.table].rows if each.table else ()
    serve = set(each.any_of)
    return each.words + [row.text(each.column) for row in rows if not serve or serve & set(row.listed(each.lists))]


def _filled(raw: Any, word: str) -> Any:
    if isinstance(raw, str):
        return raw.replace("{each}", word)
    if isinstance(raw, list):
        return [_filled(part, word) for part in raw]
    if isinstance(raw, dict):
        return {key: _filled(part, word) for key, part in raw.items()}
    return raw


def values(fact: GivenFact) -> tuple[Any, ...]:
    """The values of a given fact that the sweep tries: every choice, both answers, the ends of what is plausible."""
    if fact.spec.choices:
        return fact.spec.choices
    if fact.spec.kind == "yes-no":
        return (True, False)
    if fact.spec.kind in _PLAIN:
        return ()
    said_so = (said for said in (fact.least_said, fact.typical, fact.most_said) if said)
    return tuple(dict.fromkeys((*map(fact.as_written, said_so), *fact.words)))
