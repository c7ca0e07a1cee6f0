"""What is done for several pieces and judged against a limit has a place to write in for each of them."""

from collections.abc import Iterator

from tailtrue.inspection.each_piece import named
from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet


def one_for_each(sheet: Sheet) -> Iterator[Fault]:
    """A step that is ticked for each piece gives what it judges as many places as there are pieces, or some each."""
    for placed in sheet.steps:
        pieces = len(placed.step.boxes)
        limited = [named(check, placed.phase.each) for check in placed.step.checks if check.limits is not None]
        own = {piece for of_one in limited for piece in of_one} >= set(placed.phase.each)
        for check in placed.step.checks:
            # What names its piece is judged for that one alone, where each of the others has a check of its own.
            if own and named(check, placed.phase.each):
                continue
            places = sum(blank.places for blank in check.blanks if blank.unit)
            if check.limits is not None and pieces > 1 and places and places < pieces:
                what = f"{pieces} pieces are judged against a limit, and {places:g} is written down"
                yield Fault(placed.where, what)
