"""Entries that no job can reach: told from the rules alone, so that it takes no job to find them."""

from collections.abc import Iterator

from tailtrue.decisions import decide
from tailtrue.store.examples import example_case
from tailtrue.store.knowledge import Knowledge, Note, Stop


def dead_entries(knowledge: Knowledge) -> Iterator[str]:
    """Steps on no route, cautions that no step meets, rules of no route, alternatives that no example makes win."""
    routed = {name for route in knowledge.routes.values() for phase in route.phases for name in phase.file.steps}
    yield from (f"step {name}" for name in knowledge.steps if name not in routed)
    met = {activity for name in routed for activity in knowledge.steps[name].file.activities}
    for caution in knowledge.cautions:
        if met.isdisjoint(caution.file.answers):
            yield f"caution {caution.file.id}"
    rules: tuple[Stop | Note, ...] = (*knowledge.stops, *knowledge.notes)
    for rule in rules:
        if not any(route.has_to_do_with(rule.file.concerns) for route in knowledge.routes.values()):
            yield f"rule {rule.file.id}"
    used = {tool for name in routed for tool in knowledge.steps[name].file.tools}
    yield from (f"need {name}" for name in knowledge.needs if name not in used)
    yield from _alternatives(knowledge)


def _alternatives(knowledge: Knowledge) -> Iterator[str]:
    for name, decision in knowledge.decisions.items():
        won: set[int] = set()
        for example in knowledge.decision_examples[name]:
            outcome = decide(decision, example_case(example.facts, knowledge.catalogue, knowledge.limits))
            won |= {place for place, row in enumerate(outcome.rows) if row.chosen}
        for place, row in enumerate(decision.rows):
            if place not in won:
                yield f"alternative {name}: {row.then} (row {place + 1})"
