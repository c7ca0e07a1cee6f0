"""The plan: which steps of a route belong to this job, and the proof that their order works.

The order is authored; nothing is reordered here. A simulation of the shop's state walks the steps: what a step needs
must have been made by an earlier one and not been ended since. A hole is a refusal to print.
"""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from tailtrue.case import Case, Gap
from tailtrue.conditions import Condition
from tailtrue.errors import FactsWrong, KnowledgeInvalid, Problem
from tailtrue.facts import NotKnown
from tailtrue.store.knowledge import Also, Phase, Route, StepText
from tailtrue.truth import Truth

EACH, EVERY = "{each}", "{every}"
LEFT = "job.rework_of"


class PlannedPhase(NamedTuple):
    """A phase that belongs to this job, with those of its steps that do."""

    phase: Phase
    steps: tuple[StepText, ...]
    also: tuple[Also, ...] = ()

    @property
    def each(self) -> tuple[str, ...]:
        """The pieces that the phase is done for in this job; none where it is done once."""
        return (*self.phase.file.each, *(one.name for one in self.also))


class Plan(NamedTuple):
    """Phases and steps in the order of the route."""

    route: Route
    phases: tuple[PlannedPhase, ...]


def make_plan(case: Case, route: Route) -> Plan:
    """Choose the steps that belong to a case and prove their order.

    Raises FactsWrong when a missing fact leaves open whether a step belongs, Gap when such a fact cannot be worked out,
    KnowledgeInvalid when the proof fails.
    """
    open_facts: dict[str, str] = {}
    phases = []
    for phase in route.phases:
        if not _belongs(case, phase.when, phase.file.id, open_facts):
            continue
        steps = tuple(
            step
            for step in (case.knowledge.steps[name] for name in phase.file.steps)
            if _belongs(case, step.when, step.file.id, open_facts)
        )
        if steps:
            also = tuple(one for one in phase.also if _belongs(case, one.when, phase.file.id, open_facts))
            phases.append(PlannedPhase(phase, steps, also))
    for name in open_facts:
        found = case.get(name)
        if isinstance(found, NotKnown) and found.trouble:
            raise Gap(name, found)
    if open_facts:
        raise FactsWrong(tuple(_open(case, name, step) for name, step in open_facts.items()))
    plan = Plan(route, tuple(phases))
    prove(plan)
    return plan


def left_sheet(case: Case) -> Plan:
    """The plan of the sheet that was being worked through when something went wrong."""
    return make_plan(case, case.knowledge.routes[str(case.value(LEFT))])


def _belongs(case: Case, when: Condition, name: str, open_facts: dict[str, str]) -> bool:
    """Whether something holds; the facts that leave it open are noted with the first name that asked for them."""
    judged = case.judge(when)
    if judged.truth is Truth.UNKNOWN:
        for fact in judged.missing:
            open_facts.setdefault(fact, name)
    return judged.truth is Truth.YES


def _open(case: Case, name: str, step: str) -> Problem:
    how = case.knowledge.catalogue[name].how
    return Problem(name, "", f"not known, and step '{step}' depends on it", how or "say it")


def numbered(plan: Plan) -> dict[str, str]:
    """Name of each step by the number it is printed with."""
    return {
        f"{number}.{place}": step.file.id
        for number, planned in enumerate(plan.phases, start=1)
        for place, step in enumerate(planned.steps, start=1)
    }


def first_there(plan: Plan, wanted: Sequence[str], step: StepText) -> tuple[str, str]:
    """Number and name of the first of these steps that a plan has; where it comes twice, of its first place.

    Raises KnowledgeInvalid, at the step that asks, when the plan has none of them.
    """
    numbers = {name: number for number, name in reversed(numbered(plan).items())}
    for name in wanted:
        if name in numbers:
            return numbers[name], name
    wrong = f"the sheet '{plan.route.file.title}' has no step to go on at: {', '.join(wanted) or 'none is named'}"
    raise KnowledgeInvalid((Problem(step.where, step.file.id, wrong, "name a step that it has"),))


def walk(plan: Plan) -> Iterator[tuple[StepText, str]]:
    """Every step as it is done, with the piece it is done to: a phase for each collar is walked once for each."""
    for planned in plan.phases:
        for each in planned.each or ("",):
            for step in planned.steps:
                yield step, each


def prove(plan: Plan) -> None:
    """Walk the plan with the shop's state; raise KnowledgeInvalid on the first hole."""
    state = set(plan.route.file.starts_with)
    for step, each in walk(plan):
        for need in _named(_of_every_piece(plan, step.file.needs), each):
            if need not in state:
                raise KnowledgeInvalid((_hole(plan, step, need, each),))
        state -= set(_named(step.file.ends, each))
        state |= set(_named(step.file.makes, each))
    for wanted in plan.route.file.must_reach:
        if wanted not in state:
            wrong = f"the route ends without '{wanted}'"
            raise KnowledgeInvalid((Problem(plan.route.where, plan.route.file.id, wrong, "add the step that makes it"),))


def _of_every_piece(plan: Plan, needs: list[str]) -> list[str]:
    """Needs of all pieces spelled out: one for each piece of the phases that make them piece by piece."""
    found: list[str] = []
    for need in needs:
        if EVERY not in need:
            found.append(need)
            continue
        made = need.replace(EVERY, EACH)
        makers = [one for one in plan.phases if any(made in step.file.makes for step in one.steps)]
        pieces = dict.fromkeys(piece for one in makers for piece in one.each)
        found += [need.replace(EVERY, piece) for piece in pieces] if pieces else [need]
    return found


def _named(states: list[str], each: str) -> list[str]:
    return [state.replace(EACH, each) for state in states]


def _hole(plan: Plan, step: StepText, need: str, each: str) -> Problem:
    makers = [step.file.id for one in plan.phases for step in one.steps if need in _named(step.file.makes, each)]
    made = f"made only by: {', '.join(makers)}" if makers else "no step makes it"
    return Problem(step.where, step.file.id, f"needs '{need}', which is not there; {made}", "mend the route")
