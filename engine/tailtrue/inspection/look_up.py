"""The look-up table, reckoned again from the drawing, and its directions."""

from collections.abc import Iterator
from typing import Literal

from tailtrue.inspection.drawing import size
from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet

_WHERE = "look-up table"
_WITHIN = 0.02  # of the move
_IN_LIMITS = "in limits"

Side = Literal["toward you", "away from you"]


def moves_right(sheet: Sheet) -> Iterator[Fault]:
    """Move of the tailstock = half the difference of the diameters, carried from the collars out to the centres."""
    table = sheet.procedure.look_up
    if table is None:
        return  # whether the sheet must have one is judged with its parts
    spacing = size(sheet, "collar.spacing")
    span = size(sheet, "centres.span") or size(sheet, "bar.length")
    if spacing is None or span is None or not spacing > 0 or not span > 0:
        yield Fault(_WHERE, "the drawing lacks the lengths to reckon the moves from")
        return
    for row in table.rows:
        difference = row.difference
        if row.difference.unit != "mm" or (row.move is not None and row.move.unit != "mm"):
            yield Fault(_WHERE, f"the row for {difference.value:g} is not in mm")
        elif row.move is not None:
            due = difference.value / 2 * span / spacing
            if not abs(row.move.value - due) <= _WITHIN * due:
                what = f"a difference of {difference.value:g} mm asks for a move of {due:.4g} mm"
                yield Fault(_WHERE, f"{what}, the table says {row.move.value:.4g} mm")


def rows_in_order(sheet: Sheet) -> Iterator[Fault]:
    """Differences rise from row to row, and only those inside the doubt are left alone."""
    table = sheet.procedure.look_up
    if table is None:
        return
    last = 0.0
    for row in table.rows:
        difference = row.difference.value
        if not difference > last:
            yield Fault(_WHERE, f"the difference {difference:g} mm does not follow {last:g} mm")
        last = difference
        if row.move is None and (table.leave is None or not difference <= table.leave.value):
            yield Fault(_WHERE, f"a difference of {difference:g} mm is left alone and is not inside the doubt")
        if row.move is not None and table.leave is not None and not difference > table.leave.value:
            yield Fault(_WHERE, f"a difference of {difference:g} mm is moved for and lies inside the doubt")


def direction_right(sheet: Sheet) -> Iterator[Fault]:
    """The centre goes toward the tool when its own end came out larger, away from it when smaller.

    Where nothing can be moved, the table says where the centre stands, which is on the other side.
    """
    table = sheet.procedure.look_up
    if table is None:
        return
    first: Side = "toward you" if (sheet.shop.tool_side == "front") == table.can_move else "away from you"
    second: Side = "away from you" if first == "toward you" else "toward you"
    asked: tuple[tuple[str, str, Side], ...] = (
        ("larger", table.larger_at_tailstock, first),
        ("smaller", table.smaller_at_tailstock, second),
    )
    does = "moves" if table.can_move else "has its centre"
    for end, words, due in asked:
        folded = words.lower().replace("towards", "toward")
        named = [side for side in ("toward you", "away from you") if side in folded]
        if named != [due]:
            what = f'with the tool on the {sheet.shop.tool_side}, a {end} tailstock end {does} "{due}"'
            yield Fault(_WHERE, f'{what}, the table says "{words}"')


def verdict_earned(sheet: Sheet) -> Iterator[Fault]:
    """A limit to pass at is printed only where the instrument can judge it, and then it is printed."""
    table = sheet.procedure.look_up
    if table is None:
        return
    if table.verdict_possible and (table.inside is None or not table.inside.value > 0):
        yield Fault(_WHERE, "a verdict is promised and no difference says what passes")
    if table.verdict_possible and table.leave is None:
        yield Fault(_WHERE, "a verdict is promised and the doubt of the reading is not given")
    if not table.verdict_possible and table.inside is not None:
        yield Fault(_WHERE, "a difference that passes is printed and the instrument cannot judge it")
    if table.inside is not None and table.outside is not None and table.outside.value <= table.inside.value:
        yield Fault(_WHERE, "what is surely out of limits does not lie beyond what is surely in")
    if not table.verdict_possible:
        for placed in sheet.steps:
            said = (*placed.step.text, *(check.text for check in placed.step.checks))
            if any(isinstance(piece, str) and _IN_LIMITS in piece.casefold() for text in said for piece in text):
                yield Fault(placed.where, "it asks whether something is in limits, and the instrument cannot judge it")
