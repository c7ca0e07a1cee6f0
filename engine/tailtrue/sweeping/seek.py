"""A job that reaches one thing, looked for step by step: the alternative that brings its condition nearest to holding."""

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from tailtrue.case import Case
from tailtrue.conditions import Atom, Condition
from tailtrue.facts import NotKnown
from tailtrue.store.knowledge import Caution, Knowledge, Note, Remark, Stop
from tailtrue.sweeping.files import Raw, Sweep
from tailtrue.sweeping.reach import Thing, reached_by, row_name
from tailtrue.truth import Truth

MOST_CHANGES = 4
_STARTS_TRIED = 3
# What a comparison that cannot be judged is worth, and how near one comes at best that does not hold.
_UNKNOWN, _NEAREST = 0.3, 0.9
_REFUSED = 0.25


@dataclass(frozen=True)
class Sought:
    """A job that reaches a thing: the start, and what is laid over it."""

    thing: Thing
    start: str
    set: Raw


def seek(knowledge: Knowledge, sweep: Sweep, thing: Thing) -> Sought | None:
    """A job that reaches the thing, or None where no few changes of a start do."""
    wanted = tuple(conditions_of(knowledge, thing))
    ways = _telling(knowledge, sweep, wanted)

    def worth(start: str, changes: Raw) -> tuple[float, bool]:
        things, advice, refused = reached_by(sweep.job, knowledge, {**sweep.starts[start], **changes})
        if advice is None or things is None:
            return -1.0, False
        on_paper = thing[0] not in ("stop", "alternative", "note")
        best = max((score(condition, advice.case) for condition in wanted), default=1.0)
        return best - _REFUSED * (on_paper and refused), thing in things

    ranked = sorted(sweep.starts, key=lambda start: -worth(start, {})[0])
    for start in ranked[:_STARTS_TRIED]:
        changes: dict[str, Any] = {}
        here, there = worth(start, changes)
        for _ in range(MOST_CHANGES):
            if there:
                return Sought(thing, start, changes)
            tried = [(*worth(start, {**changes, **way}), way) for way in ways]
            best, there, way = max(tried, key=lambda one: (one[1], one[0]), default=(here, False, {}))
            if not there and best <= here:
                break
            changes, here = {**changes, **way}, best
        if there:
            return Sought(thing, start, changes)
    return None


def conditions_of(knowledge: Knowledge, thing: Thing) -> Iterator[Condition]:
    """The conditions on which a thing hangs."""
    kind, name = thing
    rules: Mapping[str, Sequence[Caution | Stop | Note | Remark]] = {
        "caution": knowledge.cautions, "stop": knowledge.stops, "note": knowledge.notes, "remark": knowledge.remarks,
    }  # fmt: skip
    if kind in rules:
        yield from (rule.when for rule in rules[kind] if rule.file.id == name)
    elif kind == "alternative":
        for decision in knowledge.decisions.values():
            for place, row in enumerate(decision.rows, start=1):
                if row_name(decision.spec.name, place, row.then) == name:
                    yield row.when
    elif kind == "step":
        for route in knowledge.routes.values():
            for phase in route.phases:
                if name in phase.file.steps:
                    yield knowledge.steps[name].when
                    yield phase.when
    elif kind == "phase":
        for route in knowledge.routes.values():
            yield from (phase.when for phase in route.phases if f"{route.file.id}: {phase.file.id}" == name)


def score(condition: Condition, case: Case) -> float:
    """How near a condition comes to holding, one where it does."""
    if isinstance(condition, Atom):
        return _score_of(condition, case)
    parts = [score(part, case) for part in condition.parts]
    if condition.join == "not":
        return 1.0 - parts[0]
    if not parts:
        return 1.0
    return max(parts) if condition.join == "any" else sum(parts) / len(parts)


def _score_of(atom: Atom, case: Case) -> float:
    truth = case.judge(atom).truth
    if truth is Truth.YES:
        return 1.0
    if truth is Truth.UNKNOWN:
        return _UNKNOWN
    found = case.get(atom.fact)
    bound = case.value(atom.other) if atom.other else next(iter(atom.operands), None)
    if isinstance(found, NotKnown) or isinstance(bound, bool) or not isinstance(bound, float | int):
        return 0.0
    apart = abs(float(found.value) - bound) / max(abs(bound), abs(float(found.value)), 1e-9)
    return _NEAREST * max(0.0, 1.0 - apart)


def _telling(knowledge: Knowledge, sweep: Sweep, wanted: Iterable[Condition]) -> list[Raw]:
    """The alternatives that change a given fact on which one of the conditions hangs, near or far."""
    open_names = {name for condition in wanted for name in condition.names()}
    hangs_on: set[str] = set()
    while open_names:
        name = open_names.pop()
        if name in hangs_on:
            continue
        hangs_on.add(name)
        if name in knowledge.decisions:
            open_names |= set(knowledge.decisions[name].reads)
        elif name in knowledge.computed:
            open_names |= set(knowledge.computed[name].needs)
    given: Mapping[str, Any] = knowledge.given.facts
    said = {name for name, fact in given.items() if name in hangs_on or fact.stands_for in hangs_on}
    return [way for way in sweep.ways if said & set(way)]


def as_entry(one: Sought) -> str:
    """The job as an entry of ``found.toml``."""
    laid = ", ".join(f'"{name}" = {_toml(raw)}' for name, raw in one.set.items())
    return f'[[job]]\nid = "{" ".join(one.thing)}"\nstart = "{one.start}"\nset = {{ {laid} }}\n'


def _toml(raw: Any) -> str:
    if isinstance(raw, list | tuple):
        return f"[{', '.join(map(_toml, raw))}]"
    if isinstance(raw, dict):
        return "{ " + ", ".join(f"{key} = {_toml(part)}" for key, part in raw.items()) + " }"
    # Words, numbers and truths are written in TOML as in JSON.
    return json.dumps(raw)
