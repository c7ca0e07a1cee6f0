"""What is held of the routes: steps are there and used, what turns is held, nothing concerns what no route does."""

from collections.abc import Iterator, Sequence

from tailtrue.errors import Problem
from tailtrue.store.knowledge import Knowledge, Route

CHOSEN_BY = "job.do"


def route_problems(knowledge: Knowledge) -> Iterator[Problem]:
    """The faults of the routes."""
    yield from _steps(knowledge)
    yield from _chosen(knowledge)
    yield from _concerns(knowledge)
    yield from _behind(knowledge)
    yield from _stand_ins(knowledge)
    for route in knowledge.routes.values():
        yield from _held(knowledge, route)
        for name in route.file.answers:
            if name not in knowledge.decisions:
                yield Problem(route.where, name, "its back is to tell a decision that is not there", "mend the name")


def _steps(knowledge: Knowledge) -> Iterator[Problem]:
    used: set[str] = set()
    for route in knowledge.routes.values():
        for phase in route.phases:
            for name in phase.file.steps:
                used.add(name)
                if name not in knowledge.steps:
                    yield Problem(route.where, name, "the route names a step that is not there", "mend the route")
    for name, step in knowledge.steps.items():
        if name not in used:
            yield Problem(step.where, name, "no route uses this step", "put it in a route, or take it out")


def _chosen(knowledge: Knowledge) -> Iterator[Problem]:
    spec = knowledge.catalogue[CHOSEN_BY]
    for name in sorted(set(spec.choices) ^ set(knowledge.routes)):
        wrong = "is offered and there is no such route" if name in spec.choices else "is a route that nobody can choose"
        yield Problem(spec.where, name, wrong, f"make the choices of {CHOSEN_BY} and the files of routes agree")


def _concerns(knowledge: Knowledge) -> Iterator[Problem]:
    known = {word for route in knowledge.routes.values() for word in route.file.concerns}
    page = knowledge.page
    named: list[tuple[str, str, Sequence[str]]] = [
        *((stop.where, stop.file.id, stop.file.concerns) for stop in knowledge.stops),
        *((note.where, note.file.id, note.file.concerns) for note in knowledge.notes),
        *((one.where, name, one.concerns) for name, one in knowledge.decisions.items()),
        *(("knowledge/page.toml", row.seen, row.concerns) for row in page.trouble),
        *(("knowledge/page.toml", row.label.words, row.concerns) for row in (*page.facts, *page.card.notes)),
    ]
    for where, said, concerns in named:
        for word in concerns:
            if word not in known:
                do = f"no route has to do with '{word}'; routes have to do with {', '.join(sorted(known))}"
                yield Problem(where, said, f"concerns '{word}'", do)


def _behind(knowledge: Knowledge) -> Iterator[Problem]:
    for stop in knowledge.stops:
        for name in stop.file.behind:
            if name not in knowledge.decisions:
                yield Problem(stop.where, stop.file.id, f"is behind '{name}', and no choice has this name", "mend the name")


def _stand_ins(knowledge: Knowledge) -> Iterator[Problem]:
    """What a job says beforehand of the work at the lathe is the same kind of thing there."""
    for name, fact in knowledge.given.facts.items():
        if not fact.stands_for:
            continue
        other = knowledge.catalogue.get(fact.stands_for)
        if other is None:
            yield Problem(
                fact.spec.where, name, f"stands for '{fact.stands_for}', and no fact has this name", "mend the name"
            )
        elif (other.kind, other.unit, set(other.choices)) != (fact.spec.kind, fact.spec.unit, set(fact.spec.choices)):
            wrong = f"stands for '{fact.stands_for}', which is of another kind"
            yield Problem(fact.spec.where, name, wrong, "make kind, unit and choices agree")


def _held(knowledge: Knowledge, route: Route) -> Iterator[Problem]:
    for phase in route.phases:
        turns = [name for name in phase.file.steps if name in knowledge.steps and _turns(knowledge, name)]
        if turns and phase.file.held == "nothing":
            wrong = f"the spindle turns at step '{turns[0]}' and nothing is said to hold the work"
            yield Problem(
                route.where,
                phase.file.id,
                wrong,
                "say held = chuck, bar, blank, faceplate, stub or centres: it limits the speed",
            )


def _turns(knowledge: Knowledge, step: str) -> bool:
    return knowledge.steps[step].file.machine == "turning"
