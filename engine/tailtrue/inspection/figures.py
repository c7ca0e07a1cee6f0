"""Numbers: finite, with a unit, and each with an account of how it came about."""

from collections.abc import Iterator
from math import isfinite

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in

_ACCOUNT = "derivation of "


def finite(sheet: Sheet) -> Iterator[Fault]:
    """Every number is a number."""
    for where, figure in sheet.figures:
        if not isfinite(figure.value):
            yield Fault(where, f"{figure.fact} is {figure.value}, which is no number")


def with_unit(sheet: Sheet) -> Iterator[Fault]:
    """Every number has a unit; a plain count has the unit 1."""
    for where, figure in sheet.figures:
        if not figure.unit.strip():
            yield Fault(where, f"{figure.fact} has no unit")


def derived(sheet: Sheet) -> Iterator[Fault]:
    """Every fact printed says how it came about and from which source."""
    told = {made.fact for made in sheet.procedure.derivations if made.sources}
    missing: dict[str, str] = {}
    for where, figure in sheet.figures:
        if figure.fact not in told:
            missing.setdefault(figure.fact, where)
    for fact, where in missing.items():
        yield Fault(where, f'nothing says how "{fact}" came about and from which source')


def told_with_unit(sheet: Sheet) -> Iterator[Fault]:
    """The account of a number that is printed gives it as a number with its unit, not in bare digits."""
    printed = {figure.fact for where, figure in sheet.figures if not where.startswith(_ACCOUNT)}
    for made in sheet.procedure.derivations:
        if made.fact in printed and not figures_in(made.value):
            yield Fault(f"{_ACCOUNT}{made.fact}", f'the account of "{made.label}" gives no number with a unit')
