"""Gaps at the bench grinder, as the rule for them is read on the scale of the shop."""

from tailtrue.computed.registry import computed
from tailtrue.tables import Table

_GAPS = "safety/grinder_gaps"


@computed("grinder.rest", label="gap between work rest and grinding wheel, at most", unit="mm", rounding="tool",
          bound="most", needs=("lathe.dials",), tables=(_GAPS,),
          how="what the rule allows: in a wider gap the tool tips down, jams and breaks the wheel")  # fmt: skip
def rest(dials: str, gaps: Table) -> tuple[float, str]:
    return _gap(gaps, dials, "rest")


@computed("grinder.tongue", label="gap between tongue guard and grinding wheel, at most", unit="mm", rounding="tool",
          bound="most", needs=("lathe.dials",), tables=(_GAPS,),
          how="what the rule allows: what a burst wheel throws stays under the guard")  # fmt: skip
def tongue(dials: str, gaps: Table) -> tuple[float, str]:
    return _gap(gaps, dials, "tongue")


def _gap(gaps: Table, dials: str, where: str) -> tuple[float, str]:
    row = gaps.one(dials=dials, part=where)
    return row.number("most_mm"), row.text("label").replace(" ", "\u00a0")
