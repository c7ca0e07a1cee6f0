"""The states of the machine in which an activity may be done, and steps that are written for another state."""

from collections.abc import Iterable, Iterator, Mapping
from typing import get_args

from tailtrue.errors import Problem
from tailtrue.parts import MachineState
from tailtrue.store.knowledge import StepText
from tailtrue.tables import Table

TABLE = "safety/states"
_STATES = frozenset(get_args(MachineState))


def allowed_states(table: Table) -> dict[str, frozenset[str]]:
    """The states that each activity may be done in."""
    return {row.text("activity"): frozenset(row.text("states").split()) for row in table}


def state_problems(table: Table, steps: Mapping[str, StepText], answered: Iterable[str]) -> Iterator[Problem]:
    """Activities without states, states that are none, and steps in a state that one of their activities forbids."""
    seen: set[str] = set()
    for row in table:
        where, activity = f"knowledge/{TABLE}.csv:{row.line}", row.text("activity")
        if activity in seen:
            yield Problem(where, activity, "stands in two rows", "leave one")
        seen.add(activity)
        states = set(row.text("states").split())
        if not states or states - _STATES:
            said = f"name one or more of {', '.join(sorted(_STATES))}"
            yield Problem(where, row.text("states"), "is no list of states of the machine", said)
    allowed = allowed_states(table)
    used: set[str] = set()
    for step in steps.values():
        used |= set(step.file.activities)
        for activity in step.file.activities:
            if activity not in allowed:
                yield Problem(step.where, activity, "nothing says in which state this may be done", f"add it to {TABLE}.csv")
            elif step.file.machine not in allowed[activity]:
                states_said = " or ".join(sorted(allowed[activity]))
                yield Problem(
                    step.where, activity, f"is done {states_said}, this step is {step.file.machine}", "mend the step"
                )
    for activity in sorted(seen - used - set(answered)):
        yield Problem(f"knowledge/{TABLE}.csv", activity, "no step and no caution knows this activity", "mend the name")
