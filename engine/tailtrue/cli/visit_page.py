"""A judged visit as lines for a terminal and as content for JSON."""

from typing import TYPE_CHECKING, Any

from tailtrue.cli.layout import sections, wrapped

if TYPE_CHECKING:
    from tailtrue.parts import Dials
    from tailtrue.truing.visit import Visit

NOT_YET = "DO NOT MOVE THE TAILSTOCK YET: the readings do not hang together."
_FIGURES = (
    "visit.head", "visit.tail", "visit.difference", "visit.uncertainty", "truing.limit", "visit.toward_tool",
    "visit.move_uncertainty", "visit.divisions", "visit.more_readings", "visit.visits_left", "visit.before_difference",
    "visit.share", "visit.left_after", "visit.bow_signed", "visit.bow_uncertainty",
)  # fmt: skip


def visit_content(visit: "Visit", dials: "Dials") -> dict[str, Any]:
    """Everything a visit came to."""
    from tailtrue.render.words import say

    return {
        "lathe": visit.case.value("lathe.name"),
        "bar": visit.case.value("truing.bar"),
        "advice": visit.advice,
        "verdict": visit.case.value("visit.verdict"),
        "way": visit.case.value("visit.way"),
        "figures": {name: visit.case.value(name) for name in _FIGURES},
        "remarks": [{"id": one.id, "bars_move": one.bars_move, "text": say(one.text, dials)} for one in visit.remarks],
        "lines": [{"id": one.id, "part": one.part, "text": say(one.text, dials)} for one in visit.lines],
        "mend_before_cutting": [say(one, dials) for one in visit.mend],
    }


def visit_page(visit: "Visit", dials: "Dials") -> list[str]:
    """The page: what was read, the verdict, what to do, step by step."""
    from tailtrue.render.paper import MEND
    from tailtrue.render.words import say

    def told(part: str) -> list[str]:
        return [say(line.text, dials) for line in visit.part(part)]

    lines = [f"{visit.case.value('lathe.name')}, {visit.case.value('truing.bar')}", ""]
    for text in (*told("found"), *told("verdict")):
        lines += wrapped(text, "  ")
    barring = [say(one.text, dials) for one in visit.remarks if one.bars_move]
    beside = [say(one.text, dials) for one in visit.remarks if not one.bars_move]
    if barring:
        lines += ["", *wrapped(NOT_YET, "  ")]
    for text in told("do"):
        lines += ["", *wrapped(text, "  ")]
    lines += sections(
        (
            ("FIRST", barring),
            ("STEP BY STEP", told("steps")),
            ("THEN", told("after")),
            ("TAKE NOTE", beside),
            ("WHAT THIS CANNOT SHOW", told("limits")),
        )
    )
    if visit.mend:
        lines += ["", MEND]
        for one in visit.mend:
            lines += wrapped(say(one, dials), "  - ")
    return lines
