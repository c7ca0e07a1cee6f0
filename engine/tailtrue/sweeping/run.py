"""The sweep: every start, one with every alternative, pairs of choices, jobs that aim at one thing, visits to the lathe."""

import json
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from itertools import chain
from typing import Any

from tailtrue.advise import advise, knowledge, procedure_of
from tailtrue.assemble.glossary import glossary
from tailtrue.errors import InspectionFailed, Problem, Refused
from tailtrue.store.knowledge import Knowledge
from tailtrue.sweeping.agreeing import agreeing
from tailtrue.sweeping.files import Raw, Sweep, VisitFile, read_sweep, values
from tailtrue.sweeping.pairs import pairwise
from tailtrue.sweeping.reach import Reach, Thing, decided, reached_by, said, stopped, wrong_on_paper

# The start that meets every alternative one at a time; the others are met by pairs and by jobs that aim at one thing.
_EVERY_WAY = "at-hand"
_DO, _SAME = "job.do", "make-and-use-bar"
_AT_ONCE = 40

Reached = tuple[set[Thing] | None, bool, tuple[Problem, ...]]


def sweep_all(known: Knowledge, workers: int = 1, inspect_each: int = 1) -> Reach:
    """What the jobs of the sweep reach together, one sheet in so many inspected.

    More than one worker only for the knowledge that ships.
    """
    sweep = read_sweep(known)
    reach = Reach()
    jobs = [(raw, place % inspect_each == 0) for place, raw in enumerate(jobs_of(known, sweep))]
    if workers > 1:
        with ProcessPoolExecutor(workers) as pool:
            for things, refused, faults in pool.map(_one, jobs, chunksize=_AT_ONCE):
                reach.add(things, refused=refused, faults=faults)
    else:
        for job in jobs:
            things, refused, faults = _tried(known, sweep, *job)
            reach.add(things, refused=refused, faults=faults)
    for visit in sweep.visits:
        reach.add(visited(known, sweep, visit))
    reach.counted.update(_terms(known, sweep))
    return reach


def _one(job: tuple[Raw, bool]) -> Reached:
    known = knowledge()
    return _tried(known, read_sweep(known), *job)


def _tried(known: Knowledge, sweep: Sweep, raw: Raw, inspected: bool) -> Reached:
    things, advice, refused = reached_by(sweep.job, known, raw)
    return things, refused, wrong_on_paper(advice, raw) if inspected and advice is not None and not refused else ()


def jobs_of(known: Knowledge, sweep: Sweep) -> Iterator[Raw]:
    """Every job of the sweep, as values laid over the files of its shop."""
    met: set[str] = set()
    ways = (agreeing(known.given, sweep.shop, sweep.starts[_EVERY_WAY], way) for way in sweep.ways)
    aimed = ({**sweep.starts[one.start], **one.set} for one in sweep.found)
    for raw in chain(sweep.starts.values(), ways, aimed, _pairs(known, sweep)):
        if raw is not None and (key := json.dumps(raw, sort_keys=True)) not in met:
            met.add(key)
            yield raw


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


def _terms(known: Knowledge, sweep: Sweep) -> Iterator[Thing]:
    """The terms that stand on a sheet: sheets are made until each was met, for making one takes long."""
    open_terms = {term.file.id: term for term in known.glossary}
    aimed = ({**sweep.starts[one.start], **one.set} for one in sweep.found)
    for raw in chain(sweep.starts.values(), aimed):
        if not open_terms:
            return
        advice = advise(sweep.job, known, raw)
        try:
            tree = procedure_of(advice)
        except (Refused, InspectionFailed):
            continue
        papers = (tree.sop, tree.record, tree.work_record, tree.safety_review)
        for term in (*tree.glossary, *glossary(open_terms.values(), *papers)):
            if open_terms.pop(term.id, None) is not None:
                yield "term", term.id
