"""The page that tells what of the rule base the sweep reaches, by how many jobs, and what by none and why."""

from collections.abc import Iterator
from itertools import groupby

from tailtrue.store.knowledge import Knowledge
from tailtrue.sweeping.files import PASSED, UNREACHED
from tailtrue.sweeping.reach import Reach, everything

_HEAD = """# What the sweep reaches

Made from the knowledge by `tailtrue knowledge sweep`; do not edit.

A sweep makes jobs from the catalogue of given facts: starts that work, one of them with every alternative one at a time,
rows in which every pair of choices meets, jobs that aim at one thing, and visits to the lathe. Each part of the rule base
stands here with the number of jobs that reach it. Of a term it is told only that it stands on a sheet.
"""


def reach_page(knowledge: Knowledge, reach: Reach) -> str:
    """The page as Markdown."""
    return "\n".join([_HEAD, *_jobs(reach), *_none(knowledge, reach), *_kinds(knowledge, reach)])


def _jobs(reach: Reach) -> Iterator[str]:
    yield f"{reach.jobs} jobs: {reach.refused} are refused, {reach.unread} have files that contradict each other."
    yield ""


def _none(knowledge: Knowledge, reach: Reach) -> Iterator[str]:
    yield "## Reached by none\n"
    reasons = {(row.text("kind"), row.text("thing")): row.text("reason") for row in knowledge.tables[UNREACHED]}
    yield "| kind | thing | why |"
    yield "| --- | --- | --- |"
    for kind, name in everything(knowledge):
        if not reach.counted[kind, name]:
            yield f"| {kind} | {name} | {reasons.get((kind, name), 'not explained')} |"
    yield ""
    yield "## Stops passed over on a sheet\n"
    yield "What a stop asks was not known, and the sheet is made all the same.\n"
    yield "| stop | why that is safe |"
    yield "| --- | --- |"
    yield from (f"| {row.text('stop')} | {row.text('reason')} |" for row in knowledge.tables[PASSED].rows)
    yield ""


def _kinds(knowledge: Knowledge, reach: Reach) -> Iterator[str]:
    for kind, things in groupby(everything(knowledge), key=lambda thing: thing[0]):
        yield f"## By kind: {kind}\n"
        yield f"| {kind} | jobs |"
        yield "| --- | ---: |"
        yield from (f"| {name} | {reach.counted[kind, name]} |" for _, name in things)
        yield ""
