"""Sheets of a shared shop on which nobody stands by where somebody should."""

from shops import EXAMPLES
from tailtrue.procedure import Phase
from tailtrue.shop_sheet import WhoRow

from .broken import breaks
from .changed import Job, sheet_of


def _job() -> Job:
    return sheet_of(EXAMPLES / "fernhill" / "job.toml")


def _anybody(name: str) -> Job:
    """The shipped sheet with a step that anybody may do, in the table of its standing procedure too."""
    tree, known = _job()
    assert tree.sop is not None
    number = next(step.number for phase in tree.phases for step in phase.steps if step.id == name)

    def of_phase(phase: Phase) -> Phase:
        steps = (step.model_copy(update={"who": "any"}) if step.number == number else step for step in phase.steps)
        return phase.model_copy(update={"steps": tuple(steps)})

    def of_row(row: WhoRow) -> WhoRow:
        here = tuple(step for step in row.supervised if step.number == number)
        left = tuple(step for step in row.supervised if step.number != number)
        return row.model_copy(update={"any": (*row.any, *here), "supervised": left})

    sop = tree.sop.model_copy(update={"who": tuple(map(of_row, tree.sop.who))})
    return tree.model_copy(update={"phases": tuple(map(of_phase, tree.phases)), "sop": sop}), known


@breaks("V505", "step 7.1")
def chuck_that_anybody_changes() -> Job:
    return _anybody("change-to-centres")


@breaks("V505", "step 3.1")
def tool_that_anybody_grinds() -> Job:
    return _anybody("grind-tool")


@breaks("V505", "step 8.4")
def first_start_between_centres_with_nobody_by() -> Job:
    return _anybody("first-start-seen")
