"""The look-up table as columns: the difference read, and what to do about it."""

from tailtrue.parts import Dials
from tailtrue.procedure import LookUp, Move
from tailtrue.render.numbers import Column, columns
from tailtrue.render.words import READ_AGAIN


def look_up_columns(look_up: LookUp | None, dials: Dials) -> tuple[Column, Column]:
    """Differences read and moves of the tailstock; empty columns for a sheet without the table.

    A difference too close to say has no move: it is read again first. One that is left alone has an empty cell.
    """
    rows = look_up.rows if look_up else ()
    differences = columns((row.difference for row in rows), dials)
    moves = columns((row.move for row in rows), dials)
    cells = zip(rows, moves.numbers, strict=True)
    told = tuple(READ_AGAIN if look_up and too_close(row, look_up) else cell for row, cell in cells)
    return differences, Column(moves.unit, told)


def too_close(row: Move, look_up: LookUp) -> bool:
    """Whether a difference lies between what is surely in limits and what is surely out of them."""
    if row.move is None or look_up.inside is None or look_up.outside is None:
        return False
    return look_up.inside.value < row.difference.value <= look_up.outside.value
