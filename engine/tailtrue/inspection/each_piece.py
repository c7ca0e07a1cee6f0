"""Work done piece by piece: what is written or judged of one piece has its place for every other."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet
from tailtrue.parts import Check


def _of_many(sheet: Sheet) -> Iterator[Placed]:
    return (placed for placed in sheet.steps if len(placed.phase.each) > 1)


def named(check: Check, pieces: tuple[str, ...]) -> tuple[str, ...]:
    """The pieces that a check or one of its places names."""
    words = [piece for piece in check.text if isinstance(piece, str)] + [blank.label for blank in check.blanks]
    said = " ".join(words).lower()
    return tuple(piece for piece in pieces if piece.lower() in said)


def places_for_each(sheet: Sheet) -> Iterator[Fault]:
    """What a check asks to be written down has a place for each piece, unless the check is of the pieces that it names."""
    for placed in _of_many(sheet):
        pieces = placed.phase.each
        for check in placed.step.checks:
            for blank in check.blanks if not named(check, pieces) else ():
                if blank.each != pieces:
                    has = ", ".join(blank.each) or "one piece"
                    yield Fault(placed.where, f'"{blank.label}" is written for {has}, and the step is done for every piece')


def bands_for_each(sheet: Sheet) -> Iterator[Fault]:
    """Where the bands of a check belong to one piece, every other piece has a band of its own."""
    for placed in _of_many(sheet):
        pieces = placed.phase.each
        limited = [named(check, pieces) for check in placed.step.checks if check.limits is not None]
        has = {piece for of_one in limited for piece in of_one}
        for piece in pieces if has else ():
            if piece not in has:
                yield Fault(placed.where, f"{piece} is judged here too, and no band belongs to it")
