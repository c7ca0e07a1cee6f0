"""The tables of the papers and of the keeping of visits held against what a record of the log says."""

from collections.abc import Collection, Iterator
from typing import get_args

from tailtrue.errors import Problem
from tailtrue.record_sheet import Kind, Part
from tailtrue.store.knowledge import Knowledge
from tailtrue.tables import Row
from tailtrue.truing.keep import SAME_PLACE
from tailtrue.truing.lookup import FIELDS, KNOWN, RULE

_KINDS = (KNOWN, RULE, *get_args(Kind))


def paper_problems(knowledge: Knowledge, keys: Collection[str]) -> Iterator[Problem]:
    """What is wrong with these tables; `keys` are those of a record."""
    for name in (FIELDS, SAME_PLACE):
        for row in knowledge.tables[name].rows:
            if row.text("name") not in keys:
                yield _problem(row, "name", "a record says no such thing", "mend it against log_record.toml")
    for row in knowledge.tables[FIELDS].rows:
        fact, kind = row.text("designation"), row.text("kind")
        if fact and fact not in knowledge.catalogue:
            yield _problem(row, "designation", f"no fact is named '{fact}'", "mend the name")
        if kind == KNOWN and not fact:
            yield _problem(row, "name", "is known, but from no fact", "name the fact as its designation")
        if kind not in _KINDS:
            yield _problem(row, "kind", "is no kind of a place", f"write one of {', '.join(_KINDS)}")
        elif kind not in (KNOWN, RULE) and row.text("set") not in get_args(Part):
            yield _problem(row, "set", "is no part of the paper", f"write one of {', '.join(get_args(Part))}")


def _problem(row: Row, column: str, wrong: str, do: str) -> Problem:
    return Problem(f"knowledge/{row.table}.csv:{row.line}", f"{column} {row.text(column)}", wrong, do)
