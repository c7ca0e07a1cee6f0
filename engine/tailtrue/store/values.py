"""Where the values of the knowledge come from: each number, by the weakest source that it relies on."""

import re
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any, Literal

from tailtrue.conditions import Condition, atoms
from tailtrue.sourcing import ABOUT_THE_ROW
from tailtrue.store.knowledge import Caution, Knowledge, Note, Remark, Say, Stop
from tailtrue.tables import Row, source_keys

Origin = Literal["published", "common_practice", "memory"]
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?(?:e-?\d+)?")
_QUANTITY = re.compile(r"-?\d+(?:[.,/ ]\d+)*(?: .*)?")


@dataclass(frozen=True)
class Values:
    """How many numbers of one place come from where."""

    where: str
    origin: Origin
    count: int


def origin_of(written: Iterable[str]) -> Origin:
    """The weakest origin among sources: what rests on memory in part counts as memory.

    >>> origin_of(["handbook:p. 12; memory"])
    'memory'
    """
    keys = {key for text in written for key in source_keys(text)}
    if "memory" in keys:
        return "memory"
    return "common_practice" if "common-practice" in keys else "published"


def values(knowledge: Knowledge) -> Iterator[Values]:
    """Every place with numbers: rows of tables, limits, classes of machines, bounds in the conditions of rules."""
    for table in knowledge.tables.values():
        for row in table.rows:
            yield from (Values(table.name, origin_of(row.source_cell.keys_of(column)), 1) for column in numbers_in(row))
    for limit in knowledge.limits.values():
        yield Values("limits", origin_of(limit.sources), 1)
    for machine in knowledge.given.classes.values():
        yield Values("machines", origin_of(machine.sources), _quantities(machine.file.tables))
    for where, when, sources in _conditions(knowledge):
        yield Values(where, origin_of(sources), sum(_bounds(when)))


def by_origin(found: Iterable[Values]) -> dict[str, int]:
    """How many numbers come from where."""
    counts: Counter[str] = Counter()
    for one in found:
        counts[one.origin] += one.count
    return {origin: counts[origin] for origin in ("published", "common_practice", "memory")}


def unconfirmed(found: Iterable[Values]) -> list[tuple[str, int]]:
    """Places by how many of their numbers no published source confirms, the most first."""
    counts: Counter[str] = Counter()
    for one in found:
        if one.origin != "published" and one.count:
            counts[one.where] += one.count
    return sorted(counts.items(), key=lambda pair: (-pair[1], pair[0]))


def numbers_in(row: Row) -> tuple[str, ...]:
    """The columns in which a row holds a number; a unit of 1 is a name, no number."""
    skipped = (*ABOUT_THE_ROW, "unit")
    return tuple(column for column, text in row.cells.items() if column not in skipped and text and _NUMBER.fullmatch(text))


def _quantities(said: Any) -> int:
    if isinstance(said, dict):
        return sum(_quantities(value) for value in said.values())
    if isinstance(said, list | tuple):
        return sum(_quantities(value) for value in said)
    if isinstance(said, bool):
        return 0
    return int(isinstance(said, int | float) or (isinstance(said, str) and _QUANTITY.fullmatch(said) is not None))


def _conditions(knowledge: Knowledge) -> Iterator[tuple[str, Condition, Iterable[str]]]:
    rules: tuple[Caution | Stop | Note | Remark | Say, ...] = (
        *knowledge.cautions, *knowledge.stops, *knowledge.notes, *knowledge.remarks, *knowledge.says,
    )  # fmt: skip
    for rule in rules:
        yield "rules", rule.when, rule.file.sources
    for decision in knowledge.decisions.values():
        yield from (("rules", row.when, row.sources) for row in decision.rows)


def _bounds(when: Condition) -> Iterator[int]:
    for atom in atoms(when):
        yield sum(1 for operand in atom.operands if isinstance(operand, float))
