"""Decisions that come to a size: each row gives one, of one unit, and what settles the question stands first."""

from collections.abc import Iterator

from tailtrue.decisions import WEIGHED, Decision
from tailtrue.errors import Problem
from tailtrue.store.knowledge import Knowledge


def weighing_problems(knowledge: Knowledge) -> Iterator[Problem]:
    """What is wrong with the sizes that decisions weigh or give."""
    takers = {way.settled_by: name for name, way in knowledge.computed.items() if way.settled_by}
    for name, taker in takers.items():
        if name not in knowledge.decisions:
            yield Problem(f"computed fact {taker}", name, "no decision has this name", "name the decision that settles it")
    for name, decision in knowledge.decisions.items():
        if name in takers or decision.hit in WEIGHED or any(row.gives or row.settles for row in decision.rows):
            yield from _of_rows(knowledge, decision, takers.get(name, ""))


def _of_rows(knowledge: Knowledge, decision: Decision, taker: str) -> Iterator[Problem]:
    name = decision.spec.name
    if not taker:
        yield Problem(decision.where, name, "comes to a size that no fact takes", "let a computed fact be settled by it")
        return
    unit = knowledge.catalogue[taker].unit
    weighing = False
    for row in decision.rows:
        given = knowledge.catalogue.get(row.gives)
        said = f"{name}: {row.then}"
        if given is None or not given.is_number or given.unit != unit:
            yield Problem(decision.where, said, f"'{row.gives}' is no size in {unit}", f"name one in {unit}, as {taker} is")
        if row.settles and (weighing or decision.hit not in WEIGHED):
            yield Problem(decision.where, said, "settles the question behind rows that are weighed", "put it before them")
        weighing = weighing or not row.settles
