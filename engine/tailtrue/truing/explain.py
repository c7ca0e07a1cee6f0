"""Why the move is what it is, with the figures of this bar and, where it was read, of this visit."""

from tailtrue.assemble.filling import Filler
from tailtrue.case import Case
from tailtrue.facts import Fact
from tailtrue.papers import Explained, Plan, Section
from tailtrue.parts import Figure
from tailtrue.truing.paper import head_of, lines_of, mend_first, needed
from tailtrue.truing.visit import Visit

_PARTS = (
    ("What the tool does to the bar", "explain-geometry"),
    ("Why twice", "explain-twice"),
    ("Why the places of the collars count", "explain-spread"),
    ("Why half the difference is too little", "explain-half"),
    ("What an indicator says", "explain-indicator"),
    ("What this test shows", "explain-shows"),
    ("What it cannot show", "explain-cannot"),
)


def explain(case: Case) -> Explained:
    """The explanation for a job; for a visit, when the case holds its readings.

    Raises FactsWrong when the job does not say what it follows from.
    """
    needed(case, "lookup.factor", "lookup.limit_move", "lookup.left_percent")
    sections = tuple(Section(title, lines) for title, part in _PARTS if (lines := lines_of(case, part)))
    return Explained(
        head=head_of(case),
        safety=lines_of(case, "explain-safety"),
        mend=mend_first(case),
        sections=sections,
        plan=_plan(case),
    )


def explain_visit(job: Case, visit: Visit) -> Explained:
    """The explanation for a visit to the lathe of a job; while a remark bars the move, for the job alone."""
    return explain(job if visit.barred else visit.case)


def _plan(case: Case) -> Plan:
    """The drawing: what was found when readings were judged, else a tailstock end that came out large."""
    filler = Filler(case)
    larger = case.value("visit.larger_end")
    moves = case.value("visit.advice") in ("move", "no-way")
    return Plan(
        span=filler.figure("truing.span"),
        head_station=filler.figure("truing.head_station"),
        tail_station=filler.figure("truing.tail_station"),
        spacing=filler.figure("lookup.spacing"),
        tool_in_front=case.value("lathe.tool_side") == "front",
        tailstock_larger=larger != "headstock",
        move=_known(case, "visit.move") if moves else None,
        difference=_known(case, "visit.gap") if larger in ("tailstock", "headstock") else None,
    )


def _known(case: Case, name: str) -> Figure | None:
    return Filler(case).figure(name) if isinstance(case.get(name), Fact) else None
