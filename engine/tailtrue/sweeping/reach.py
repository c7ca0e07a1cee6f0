"""What one job reaches of the rule base, and what many jobs reach together."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from tailtrue.advise import Advice, advise, procedure_of, tree_of
from tailtrue.assemble.glossary import glossary
from tailtrue.case import Case, Gap
from tailtrue.errors import FactsWrong, InspectionFailed, Problem, Refused
from tailtrue.plan import Plan, make_plan
from tailtrue.store.knowledge import Knowledge
from tailtrue.store.sop import belonging
from tailtrue.sweeping.files import PASSED, UNREACHED
from tailtrue.truth import Truth

# Not a thing to reach: a stop that could not be judged on a job that gets its sheet.
PASSED_OVER = "passed over"
# Kind and name of a part of the rule base.
Thing = tuple[str, str]


@dataclass
class Reach:
    """How many jobs reach each thing, how many were tried, refused, and could not be read; what is wrong on their sheets."""

    counted: Counter[Thing] = field(default_factory=Counter)
    jobs: int = 0
    refused: int = 0
    unread: int = 0
    faults: list[Problem] = field(default_factory=list)

    def add(self, things: set[Thing] | None, *, refused: bool = False, faults: Sequence[Problem] = ()) -> None:
        """Count one job; None where its files contradict each other."""
        self.jobs += 1
        self.unread += things is None
        self.refused += refused
        self.counted.update(things or ())
        self.faults += faults


def everything(knowledge: Knowledge) -> tuple[Thing, ...]:
    """Every part of the rule base that some job should reach."""
    found: list[Thing] = []
    for name, decision in knowledge.decisions.items():
        found += [("alternative", row_name(name, place, row.then)) for place, row in enumerate(decision.rows, start=1)]
    found += [("caution", one.file.id) for one in knowledge.cautions]
    found += [("stop", one.file.id) for one in knowledge.stops]
    found += [("note", one.file.id) for one in knowledge.notes]
    found += [("remark", one.file.id) for one in knowledge.remarks]
    found += [("line", say_name(one.where, one.file.id)) for one in knowledge.says]
    found += [("route", name) for name in knowledge.routes]
    found += [("phase", f"{name}: {phase.file.id}") for name, route in knowledge.routes.items() for phase in route.phases]
    found += [("step", name) for name in knowledge.steps]
    found += [("tool", name) for name in knowledge.needs]
    found += [("drawing", one.file.id) for one in knowledge.drawings]
    found += [("trouble", one.seen) for one in knowledge.page.trouble]
    found += [("standing line", one.file.id) for one in knowledge.sop.lines]
    found += [("standing limit", one.file.label) for one in knowledge.sop.limits]
    found += [("term", one.file.id) for one in knowledge.glossary]
    return tuple(dict.fromkeys(found))


def unreached(knowledge: Knowledge, reach: Reach) -> Iterator[Problem]:
    """What no job reaches and nothing explains, what is explained and reached, and stops passed over without a reason."""
    told = {(row.text("kind"), row.text("thing")): row.line for row in knowledge.tables[UNREACHED]}
    every = everything(knowledge)
    for kind, name in every:
        if not reach.counted[kind, name] and (kind, name) not in told:
            do = "mend its condition, add a job that reaches it, or give the reason in sweep/unreached.csv"
            yield Problem("knowledge/sweep", f"{kind} {name}", "is reached by no job of the sweep", do)
    passed = {row.text("stop"): row.line for row in knowledge.tables[PASSED]}
    for kind, name in reach.counted:
        if kind == PASSED_OVER and name not in passed:
            do = "let it refuse what is not known, or say in sweep/passed_over.csv what keeps the hazard away then"
            yield Problem("knowledge/sweep", f"stop {name}", "is passed over on a sheet that is printed", do)
    for name, line in passed.items():
        if not reach.counted[PASSED_OVER, name]:
            yield Problem(f"knowledge/{PASSED}.csv:{line}", name, "is passed over on no sheet", "take the row out")
    for thing, line in told.items():
        if reach.counted[thing] or thing not in every:
            where = f"knowledge/{UNREACHED}.csv:{line}"
            yield Problem(where, " ".join(thing), "is reached, or is not there", "take the row out")


def row_name(decision: str, place: int, then: str) -> str:
    """An alternative by its decision and place: two rows may lead to the same choice."""
    return f"{decision}: {then} (row {place})"


def say_name(where: str, name: str) -> str:
    """A line that is said, by the room whose file holds it."""
    return f"{where.split('/')[1]}: {name}"


def reached_by(job: Path, knowledge: Knowledge, instead: Mapping[str, Any]) -> tuple[set[Thing] | None, Advice | None, bool]:
    """What a job reaches, the advice on it, and whether it is refused; nothing where the files cannot be read."""
    try:
        advice = advise(job, knowledge, instead)
    except FactsWrong:
        return None, None, False
    except Refused:
        # A number set by hand crosses what bounds it; the sweep sets none.
        return None, None, True
    things = set(_judged(advice))
    plan = None if advice.refused else _planned(advice)
    if plan is not None:
        things |= set(_on_paper(advice, plan))
    return things, advice, plan is None


def on_sheets(
    known: Knowledge, job: Path, raws: Iterable[Mapping[str, Any]]
) -> Iterator[tuple[Mapping[str, Any], set[Thing]]]:
    """The jobs whose papers show terms that no paper before them did; papers are made until each term was met."""
    open_terms = {term.file.id: term for term in known.glossary}
    for raw in raws:
        if not open_terms:
            return
        try:
            tree = tree_of(advise(job, known, raw))
        except (FactsWrong, Refused):
            continue
        papers = (tree.sop, tree.record, tree.work_record, tree.safety_review)
        shown = {term.id for term in (*tree.glossary, *glossary(open_terms.values(), *papers))} & set(open_terms)
        if shown:
            yield raw, {("term", name) for name in shown}
        for name in shown:
            del open_terms[name]


def unfilled(advice: Advice | None, instead: Mapping[str, Any]) -> tuple[Problem, ...]:
    """Stops that refuse a job and cannot say why: a fact that their text names is not known."""
    return tuple(
        Problem(f"stop {one.id}", _job(instead), "refuses and lacks the facts of its text", "ask for them in its condition")
        for one in (advice.refused if advice else ())
        if one.bare
    )


def wrong_on_paper(advice: Advice, instead: Mapping[str, Any]) -> tuple[Problem, ...]:
    """What the inspection finds on the sheet of a job that is not refused; the job stands beside it."""
    try:
        procedure_of(advice)
    except Refused:
        return ()
    except InspectionFailed as failed:
        where = f"sheet of the sweep with {_job(instead)}"
        return tuple(replace(one, where=f"{one.where}, {where}") for one in failed.problems)
    return ()


def _job(instead: Mapping[str, Any]) -> str:
    return ", ".join(f"{name} = {raw}" for name, raw in sorted(instead.items()))


def _judged(advice: Advice) -> Iterator[Thing]:
    case, known = advice.case, advice.case.knowledge
    yield from (("stop", one.id) for one in advice.refused)
    for note in known.notes:
        if advice.route.has_to_do_with(note.file.concerns) and case.judge(note.when).truth is Truth.YES:
            yield "note", note.file.id
    yield from decided(case)
    yield from said(case)


def decided(case: Case) -> Iterator[Thing]:
    """The alternatives that win, and those never taken that hold beside the choice."""
    for name in case.knowledge.decisions:
        for place, row in enumerate(case.outcome(name).rows, start=1):
            if row.chosen or (row.row.never_taken and row.judged.truth is Truth.YES):
                yield "alternative", row_name(name, place, row.row.then)


def said(case: Case) -> Iterator[Thing]:
    """Remarks that fire and lines that are said."""
    known = case.knowledge
    yield from (("remark", one.file.id) for one in known.remarks if case.judge(one.when).truth is Truth.YES)
    for line in known.says:
        if case.judge(line.when).truth is Truth.YES:
            yield "line", say_name(line.where, line.file.id)


def stopped(case: Case) -> Iterator[Thing]:
    """Stops that hold, whatever the route."""
    yield from (("stop", one.file.id) for one in case.knowledge.stops if case.judge(one.when).truth is Truth.YES)


def _planned(advice: Advice) -> Plan | None:
    try:
        return make_plan(advice.case, advice.route)
    except (Gap, FactsWrong):
        return None


def _on_paper(advice: Advice, plan: Plan) -> Iterator[Thing]:
    case, known, route = advice.case, advice.case.knowledge, advice.route
    steps = {step.file.id: step for planned in plan.phases for step in planned.steps}
    activities = {activity for step in steps.values() for activity in step.file.activities}

    def may(when: Any) -> bool:
        return case.judge(when).truth is not Truth.NO

    yield "route", route.file.id
    for stop in known.stops:
        if route.has_to_do_with(stop.file.concerns) and case.judge(stop.when).truth is Truth.UNKNOWN:
            yield PASSED_OVER, stop.file.id
    yield from (("phase", f"{route.file.id}: {planned.phase.file.id}") for planned in plan.phases)
    yield from (("step", name) for name in steps)
    for caution in known.cautions:
        if activities & set(caution.file.answers) and may(caution.when):
            yield "caution", caution.file.id
    for step in steps.values():
        gone_without = {tool for tool, when in step.without.items() if case.judge(when).truth is Truth.YES}
        yield from (("tool", tool) for tool in step.file.tools if tool not in gone_without)
    for drawing in known.drawings:
        if (not drawing.file.step or drawing.file.step in steps) and case.judge(drawing.when).truth is Truth.YES:
            yield "drawing", drawing.file.id
    for trouble in known.page.trouble:
        if route.has_to_do_with(trouble.concerns) and may(trouble.when):
            yield "trouble", trouble.seen
    if "sop" in route.file.parts:
        standing = belonging(known.sop, route.has_to_do_with, activities)
        for line in standing.lines:
            truth = case.judge(line.when).truth
            if truth is Truth.YES or (truth is Truth.UNKNOWN and line.file.if_unknown == "show"):
                yield "standing line", line.file.id
        yield from (("standing limit", one.file.label) for one in standing.limits if may(one.when))
    else:
        # A sheet without that paper tells the limits that its own steps meet.
        met = (one for one in known.sop.limits if activities & set(one.file.activities) and may(one.when))
        yield from (("standing limit", one.file.label) for one in met)
