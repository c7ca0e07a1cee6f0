"""What is done for several pieces and judged against a limit has a place to write in for each of them."""

from collections import Counter
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet


def one_for_each(sheet: Sheet) -> Iterator[Fault]:
    """A step that is ticked for each piece gives what it judges as many places as there are pieces, or some each.

    Each piece may have a check of its own: what one instrument judges is counted together.
    """
    for placed in sheet.steps:
        pieces, places = len(placed.step.boxes), Counter[str]()
        for check in placed.step.checks:
            if check.limits is not None:
                places[check.instrument or ""] += sum(blank.places for blank in check.blanks if blank.unit)
        for written in places.values():
            if pieces > 1 and 0 < written < pieces:
                what = f"{pieces} pieces are judged against a limit, and {written:g} is written down"
                yield Fault(placed.where, what)
