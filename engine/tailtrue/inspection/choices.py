"""What was chosen and why: figures beside a choice agree with the steps."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in

_SAME = 1e-9
_GAUGE, _READ = "bore.gauge", "bore.gauge_uncertainty"
_OWN = "_doubt"


def gauge_doubt_agrees(sheet: Sheet) -> Iterator[Fault]:
    """The doubt that stands beside the chosen gauge is the one that its readings are judged with."""
    judged_with = {placed.told[_READ] for placed in sheet.steps if _READ in placed.told}
    for choice in sheet.procedure.choices:
        if choice.id != _GAUGE:
            continue
        for way in choice.alternatives:
            said = {one.value for one in figures_in(way) if one.fact.endswith(_OWN)} if way.verdict == "chosen" else set()
            if any(abs(here - there) > _SAME for here in said for there in judged_with):
                yield Fault(
                    f"choice {choice.id}", f'"{way.name}" is said to be good to another doubt than the steps read with'
                )
