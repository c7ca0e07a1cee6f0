"""Numbers of phases and steps: from one, without gap, each once."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet


def continuous(sheet: Sheet) -> Iterator[Fault]:
    """A reader who loses the place finds it again by its number."""
    for first, phase in enumerate(sheet.procedure.phases, start=1):
        if phase.number != str(first):
            yield Fault(f"phase {phase.number}", f'the number of this phase should be "{first}"')
        for second, step in enumerate(phase.steps, start=1):
            due = f"{first}.{second}"
            if step.number != due:
                yield Fault(f"step {step.number}", f'the number of this step should be "{due}"')
