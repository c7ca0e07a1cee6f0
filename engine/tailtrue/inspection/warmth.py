"""How warm a joint may be cut that warmth loosens: told wherever the bar is taken up again, not at one step alone."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in

_HOLDS = "joint.shrink_fit.holds_a_catch_to"
_SKIM = "skim"


def told_for_the_life_of_the_bar(sheet: Sheet) -> Iterator[Fault]:
    """A bar whose collars are shrunk on keeps its limit of warmth: in limits, care, card and record of the sheet."""
    procedure = sheet.procedure
    if not any(one.figure.fact == _HOLDS for one in sheet.at_steps):
        return
    skimmed = any(_SKIM in placed.step.activities for placed in sheet.steps)
    papers: tuple[tuple[str, object, bool], ...] = (
        ("limits", procedure.limits, skimmed),
        ("care of the bar", procedure.care, bool(procedure.care)),
        ("card", procedure.card, procedure.card is not None),
        ("record", procedure.record, procedure.record is not None),
    )
    for name, part, wanted in papers:
        if wanted and not any(figure.fact == _HOLDS for figure in figures_in((part,))):
            yield Fault(name, "the collars are shrunk on, and how warm they may be cut is not told here")
