"""Where work goes on: a step of the sheet that was left, by the number it has there."""

from tailtrue.case import Case
from tailtrue.facts import Fact
from tailtrue.plan import first_there, left_sheet
from tailtrue.procedure import GoesOn
from tailtrue.store.knowledge import StepText
from tailtrue.truth import Truth


def goes_on(case: Case, step: StepText) -> GoesOn:
    """The first of the steps named for this case that the other sheet has."""
    ways = step.hold.goes_on if step.hold else ()
    wanted = [name for when, names in ways if case.judge(when).truth is Truth.YES for name in names]
    plan = left_sheet(case)
    number, name = first_there(plan, wanted, step)
    said = case.get("job.rework_sheet")
    return GoesOn(
        sheet=plan.route.file.title,
        sheet_number=str(said.value) if isinstance(said, Fact) else "",
        step=name,
        number=number,
        title=case.knowledge.steps[name].file.title,
    )
