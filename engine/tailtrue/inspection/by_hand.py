"""Numbers set by hand: each the one that the job file says, marked wherever it stands, and beyond no bound."""

from collections.abc import Iterator
from math import isfinite

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.shop import HandSetting
from tailtrue.parts import Figure
from tailtrue.procedure import HandSet

_SAME = 1e-6  # relative: what converting between inches and millimetres may leave behind
_TABLE = "numbers set by hand"


def marked(sheet: Sheet) -> Iterator[Fault]:
    """A number set by hand is marked with who set it, is what the job file says, and no other number is marked."""
    said = sheet.shop.by_hand
    for where, figure in sheet.figures:
        one = said.get(figure.fact)
        if one is None:
            if figure.set_by is not None:
                yield Fault(where, f"{figure.fact} is marked as set by {figure.set_by}, and the job file does not set it")
        elif figure.set_by != one.initials:
            yield Fault(where, f"{figure.fact} was set by {one.initials} and does not say so here")
        elif not _alike(figure.value, one.value):
            yield Fault(
                where, f"{figure.fact} is {figure.value:g} here, the job file sets it to {one.value:g} {figure.unit}"
            )


def listed(sheet: Sheet) -> Iterator[Fault]:
    """The table in the front has one line, with reason and initials, for each number set by hand, and no other."""
    lines = [one.value.fact for one in sheet.procedure.set_by_hand]
    for fact in sheet.shop.by_hand:
        if lines.count(fact) != 1:
            yield Fault(_TABLE, f"{fact} is set by hand and has {lines.count(fact)} lines in the table")
    for one in sheet.procedure.set_by_hand:
        if one.value.fact not in sheet.shop.by_hand:
            yield Fault(_TABLE, f"{one.value.fact} stands in the table, and the job file does not set it")
        for what, word in (("reason", one.reason), ("initials", one.initials)):
            if not word.strip():
                yield Fault(_TABLE, f"{one.value.fact} is set by hand without {what}")


def within_bounds(sheet: Sheet) -> Iterator[Fault]:
    """A number set by hand is on the safe side of what was worked out and within every bound it has."""
    for one in sheet.procedure.set_by_hand:
        said = sheet.shop.by_hand.get(one.value.fact)
        if said is None:
            continue
        if one.safe != said.safe:
            yield Fault(_TABLE, f'{one.value.fact} may go "{said.safe}", the table says "{one.safe}"')
        yield from _passes(one.value, one.worked_out, said.safe, "what is worked out")
        yield from _bounds(sheet, one, said)


def _bounds(sheet: Sheet, one: HandSet, said: HandSetting) -> Iterator[Fault]:
    for bounds, names, safe in ((one.at_least, said.at_least, "higher"), (one.at_most, said.at_most, "lower")):
        if tuple(bound.fact for bound in bounds) != names:
            yield Fault(_TABLE, f"{one.value.fact} is to be held against {', '.join(names) or 'nothing'} on its {safe} side")
        for bound in bounds:
            yield from _passes(one.value, bound, safe, f"the bound {bound.fact}")
    # A bound in the table is the one that stands on the rest of the sheet.
    bounds_of = {bound.fact: bound.value for bound in (*one.at_least, *one.at_most)}
    for where, figure in sheet.figures:
        if figure.fact in bounds_of and not _alike(figure.value, bounds_of[figure.fact]):
            yield Fault(
                where, f"{figure.fact} is {figure.value:g} here and another number among the bounds of {one.value.fact}"
            )


def _passes(figure: Figure, bound: Figure, safe: str, what: str) -> Iterator[Fault]:
    higher = figure.value - bound.value
    room = _SAME * abs(bound.value)
    if figure.unit != bound.unit or not isfinite(higher):
        yield Fault(_TABLE, f"{figure.fact} cannot be held against {what}")
    elif (safe == "lower" and higher > room) or (safe == "higher" and higher < -room):
        yield Fault(_TABLE, f"{figure.fact} of {figure.value:g} {figure.unit} crosses {what}, {bound.value:g} {bound.unit}")


def _alike(one: float, other: float) -> bool:
    return abs(one - other) <= _SAME * abs(other)
