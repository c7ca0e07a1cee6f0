"""Texts that point to a step: it exists, and stands in every route of the step that points to it."""

from collections.abc import Iterator
from itertools import chain

from tailtrue.errors import Problem
from tailtrue.store.knowledge import Knowledge


def pointers(knowledge: Knowledge) -> Iterator[Problem]:
    """Only the lines, checks and reasons of a step may point to another, for they alone have a place on the sheet."""
    for step in knowledge.steps.values():
        rows = (text for row in step.settings for text in (row.label, row.value, row.reason))
        held = (step.hold.text,) if step.hold else ()
        for text in (*step.sentences, step.why, *(check.text for check in step.checks), *rows, *held):
            for pointer in text.pointers():
                said = " ".join(pointer.steps)
                wanted = (pointer.steps, (pointer.before,)) if pointer.before else (pointer.steps,)
                for name in chain.from_iterable(wanted):
                    if name not in knowledge.steps:
                        yield Problem(step.where, said, f"no step is named '{name}'", "mend the name")
                for route in knowledge.routes.values():
                    there = {name for phase in route.phases for name in phase.file.steps}
                    if step.file.id in there and not all(there & set(names) for names in wanted):
                        what = f"the route {route.file.id} has the step that points there, and none of these"
                        yield Problem(step.where, said, what, "name a step of that route too")
