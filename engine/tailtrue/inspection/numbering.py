"""Numbers of phases and steps: from one, without gap, each once; and what a text points to is there."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import STEP_NAMED, words_of


def pointed_to(sheet: Sheet) -> Iterator[Fault]:
    """A text that names a step by its number names another one that stands on this sheet."""
    numbers = {placed.step.number for placed in sheet.steps}
    for placed in sheet.steps:
        step = placed.step
        reasons = (line.reason for line in step.settings)
        for text in (*step.text, step.why, *reasons, *(check.text for check in step.checks)):
            for number in STEP_NAMED.findall(words_of(text)):
                if number not in numbers - {step.number}:
                    yield Fault(placed.where, f"it points to step {number}, and no other step has that number")


def continuous(sheet: Sheet) -> Iterator[Fault]:
    """A reader who loses the place finds it again by its number."""
    for first, phase in enumerate(sheet.procedure.phases, start=1):
        if phase.number != str(first):
            yield Fault(f"phase {phase.number}", f'the number of this phase should be "{first}"')
        for second, step in enumerate(phase.steps, start=1):
            due = f"{first}.{second}"
            if step.number != due:
                yield Fault(f"step {step.number}", f'the number of this step should be "{due}"')
