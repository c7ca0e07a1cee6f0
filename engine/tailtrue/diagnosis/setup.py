"""What a diagnosis takes from the job: the lathe, the bar, the side of the tool."""

from collections.abc import Mapping
from dataclasses import dataclass

from tailtrue.case import Case
from tailtrue.errors import FactsWrong, Problem
from tailtrue.facts import NotKnown
from tailtrue.parts import Dials
from tailtrue.tables import Table


@dataclass(frozen=True)
class Setup:
    """The lathe and the bar of a job, in mm; what the tables say of doubts, signatures and limits."""

    tool_side: str
    span_mm: float
    head_mm: float
    tail_mm: float
    limit_mm: float
    height_of_centres_mm: float
    most_overhang: float
    has_screws: bool
    dials: Dials
    grade: str
    tables: Mapping[str, Table]


def setup_of(case: Case) -> Setup:
    """The setup of a job. Raises FactsWrong with everything that is not said."""
    missing: dict[str, None] = {}

    def value(name: str) -> float:
        found = case.get(name)
        if isinstance(found, NotKnown):
            missing.update(dict.fromkeys(found.missing or (name,)))
            return 1.0
        return float(found.value)

    span, head, tail, limit = (value(f"truing.{name}") for name in ("span", "head_station", "tail_station", "limit"))
    swing, most = value("lathe.swing_over_bed"), value("limit.overhang_most")
    side = case.value("lathe.tool_side")
    if side is None:
        missing["lathe.tool_side"] = None
    accuracy = str(case.value("job.accuracy"))
    if missing:
        labels = ", ".join(case.knowledge.catalogue[one].label for one in missing)
        raise FactsWrong((Problem("the job", labels, "is not said", "write it into the files of the job"),))
    return Setup(
        tool_side=str(side),
        span_mm=span,
        head_mm=head,
        tail_mm=tail,
        limit_mm=limit,
        height_of_centres_mm=swing / 2,
        most_overhang=most,
        has_screws=case.value("lathe.set_over") != "none",
        dials="inch" if case.value("lathe.dials") == "inch" else "metric",
        grade=case.knowledge.tables["alignment/accuracy"].one(word=accuracy).text("machine_class"),
        tables=case.knowledge.tables,
    )
