"""Where work goes on: a step of the sheet that was left, by the number it has there; or why that sheet is void."""

from tailtrue.assemble.filling import Filler
from tailtrue.facts import Fact
from tailtrue.plan import first_there, left_sheet
from tailtrue.procedure import GoesOn, Void
from tailtrue.store.knowledge import HoldText, StepText
from tailtrue.truth import Truth


def goes_on(filler: Filler, step: StepText, hold: HoldText) -> tuple[GoesOn, ...]:
    """For each case that there may be the first of the steps named for it that the other sheet has."""
    ways = [way for way in hold.goes_on if filler.case.judge(way.when).truth is Truth.YES]
    if not ways:
        return ()
    plan = left_sheet(filler.case)
    found = [(first_there(plan, way.at, step), filler.text(way.said)) for way in ways]
    return tuple(
        GoesOn(
            sheet=plan.route.file.title,
            sheet_number=_number(filler),
            step=name,
            number=number,
            title=filler.case.knowledge.steps[name].file.title,
            when=said,
        )
        for (number, name), said in found
    )


def void(filler: Filler, hold: HoldText) -> Void | None:
    """Why the sheet that was left is not gone on with, where it is not."""
    for one in hold.void:
        if filler.case.judge(one.when).truth is Truth.YES:
            plan = left_sheet(filler.case)
            return Void(sheet=plan.route.file.title, sheet_number=_number(filler), text=filler.text(one.text))
    return None


def _number(filler: Filler) -> str:
    said = filler.case.get("job.rework_sheet")
    return str(said.value) if isinstance(said, Fact) else ""
