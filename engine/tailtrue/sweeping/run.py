"""The sweep: every start, one with every alternative, pairs of choices, jobs that aim at one thing, visits to the lathe."""

import json
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from contextlib import nullcontext
from dataclasses import dataclass, field
from itertools import chain
from typing import Any

from tailtrue.advise import advise, knowledge
from tailtrue.errors import Problem
from tailtrue.store.knowledge import Knowledge
from tailtrue.sweeping.agreeing import agreeing
from tailtrue.sweeping.files import Raw, Sweep, VisitFile, read_sweep, values
from tailtrue.sweeping.pairs import pairwise
from tailtrue.sweeping.reach import Reach, Thing, decided, on_sheets, reached_by, said, stopped, unfilled, wrong_on_paper

# The start that meets every alternative one at a time; the others are met by pairs and by jobs that aim at one thing.
_EVERY_WAY = "at-hand"
_DO, _SAME = "job.do", "make-and-use-bar"
_AT_ONCE = 40


@dataclass
class Swept:
    """What the sweep reaches together, each of its jobs with what it reaches, and the sheets that show new terms."""

    reach: Reach = field(default_factory=Reach)
    tried: list[tuple[Raw, set[Thing]]] = field(default_factory=list)
    sheets: list[tuple[Raw, set[Thing]]] = field(default_factory=list)


Reached = tuple[set[Thing] | None, bool, tuple[Problem, ...]]


def sweep_all(known: Knowledge, sweep: Sweep, workers: int = 1) -> Swept:
    """What the jobs of the sweep reach, each and together, and what the inspection finds on their sheets.

    More than one worker only for the knowledge that ships.
    """
    swept = Swept()
    jobs = list(jobs_of(known, sweep))
    with ProcessPoolExecutor(workers) if workers > 1 else nullcontext() as pool:
        found = pool.map(_one, jobs, chunksize=_AT_ONCE) if pool else (inspected(known, sweep, raw) for raw in jobs)
        for raw, (things, refused, faults) in zip(jobs, found, strict=True):
            swept.reach.add(things, refused=refused, faults=faults)
            swept.tried.append((raw, things or set()))
    for visit in sweep.visits:
        swept.reach.add(visited(known, sweep, visit))
    # Making a sheet takes long: starts and jobs that aim at one thing show every term.
    swept.sheets += on_sheets(known, sweep.job, chain(sweep.starts.values(), aimed(sweep)))
    swept.reach.counted.update(thing for _, things in swept.sheets for thing in things)
    return swept


def _one(raw: Raw) -> Reached:
    known = knowledge()
    return inspected(known, read_sweep(known), raw)


def inspected(known: Knowledge, sweep: Sweep, raw: Raw) -> Reached:
    """What a job reaches, whether it is refused, and what is wrong with its refusal or on its sheet."""
    things, advice, refused = reached_by(sweep.job, known, raw)
    if refused or advice is None:
        return things, refused, unfilled(advice, raw)
    return things, refused, wrong_on_paper(advice, raw)


def jobs_of(known: Knowledge, sweep: Sweep) -> Iterator[Raw]:
    """Every job of the sweep, as values laid over the files of its shop."""
    met: set[str] = set()
    ways = (agreeing(known.given, sweep.shop, sweep.starts[_EVERY_WAY], way) for way in sweep.ways)
    for raw in chain(sweep.starts.values(), ways, aimed(sweep), _pairs(known, sweep)):
        if raw is not None and (key := json.dumps(raw, sort_keys=True)) not in met:
            met.add(key)
            yield raw


def aimed(sweep: Sweep) -> Iterator[Raw]:
    return ({**sweep.starts[one.start], **one.set} for one in sweep.found)


def _pairs(known: Knowledge, sweep: Sweep) -> Iterator[Raw | None]:
    """Rows in which every pair of choices meets, each over the start that does the same.

    What is only said with others is left unsaid in some rows: most shops have no such thing.
    """
    facts = known.given.facts.values()
    with_others = frozenset(chain.from_iterable(known.given.together))
    factors = {
        fact.spec.name: values(fact) + ((None,) if fact.spec.name in with_others else ())
        for fact in facts
        if fact.spec.choices or fact.spec.kind == "yes-no"
    }
    over: dict[Any, Raw] = {raw.get(_DO, _SAME): raw for raw in reversed(list(sweep.starts.values()))}
    for row in pairwise(factors):
        drawn = {name: raw for name, raw in row.items() if raw is not None}
        yield agreeing(known.given, sweep.shop, over[row[_DO]], drawn)


def visited(known: Knowledge, sweep: Sweep, visit: VisitFile) -> set[Thing]:
    """What is reached at the lathe with these facts said."""
    case = advise(sweep.job, known, {**sweep.starts[visit.start], **visit.set}).case.with_values(visit.facts)
    return {*decided(case), *said(case), *stopped(case)}
