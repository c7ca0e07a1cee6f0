"""Where work goes on: a step of the sheet that was left, by the number it has there."""

from tailtrue.case import Case
from tailtrue.errors import KnowledgeInvalid, Problem
from tailtrue.facts import Fact
from tailtrue.plan import left_sheet, numbered
from tailtrue.procedure import GoesOn
from tailtrue.store.knowledge import StepText
from tailtrue.truth import Truth


def goes_on(case: Case, step: StepText) -> GoesOn:
    """The first of the steps named for this case that the other sheet has.

    Raises KnowledgeInvalid when the other sheet has none of them.
    """
    ways = step.hold.goes_on if step.hold else ()
    wanted = [name for when, names in ways if case.judge(when).truth is Truth.YES for name in names]
    plan = left_sheet(case)
    # The first number of a step that comes twice.
    numbers = {name: number for number, name in reversed(numbered(plan).items())}
    name = next((one for one in wanted if one in numbers), None)
    if name is None:
        wrong = f"the sheet '{plan.route.file.title}' has no step to go on at: {', '.join(wanted) or 'none is named'}"
        raise KnowledgeInvalid((Problem(step.where, step.file.id, wrong, "name a step that it has"),))
    said = case.get("job.rework_sheet")
    return GoesOn(
        sheet=plan.route.file.title,
        sheet_number=str(said.value) if isinstance(said, Fact) else "",
        step=name,
        number=numbers[name],
        title=case.knowledge.steps[name].file.title,
    )
