"""What the tables call too close to say: the band of limit and doubt, reckoned again from the two as they are printed."""

from collections.abc import Iterator
from math import isclose

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.procedure import LookUp
from tailtrue.record_sheet import RecordSheet

_SHEET, _RECORD = "look-up table", "record, look-up table"
_SAME = 1e-6
# What is surely in limits is told in these steps: the limit is brought down to one, the doubt up to one.
_STEP_MM = {"metric": 0.001, "inch": 0.00254}
_WRITTEN_DOWN = 2


def read_again_right(sheet: Sheet) -> Iterator[Fault]:
    """A difference whose doubt straddles the limit is read again, on sheet, card and record; no other is."""
    look_up, record = sheet.procedure.look_up, sheet.procedure.record
    if look_up is not None:
        yield from _on_the_sheet(sheet, look_up)
    if record is not None and look_up is not None:
        yield from _on_the_record(sheet, record)


def _on_the_sheet(sheet: Sheet, table: LookUp) -> Iterator[Fault]:
    """The rows between `inside` and `outside` are the ones printed with the words; the card prints the same table."""
    if not table.verdict_possible:
        if table.outside is not None:
            yield Fault(_SHEET, "a band that is read again is printed, and the instrument gives no verdict")
        return
    if table.inside is None:
        return  # told by the rule on verdicts
    limit, doubt = _printed(sheet, "align.limit"), _printed(sheet, "align.uncertainty")
    if limit is None or doubt is None:
        yield Fault(_SHEET, "limit and doubt are not both printed, so nobody can tell what is too close to say")
        return
    yield from _band(_SHEET, limit, doubt, table.inside.value, table.outside.value if table.outside else None, sheet)
    for row in table.rows:
        difference = row.difference.value
        again = row.move is not None and table.outside is not None and difference <= table.outside.value * (1 + _SAME)
        again = again and difference > table.inside.value
        if _straddles(difference, limit, doubt) and not again:
            yield Fault(_SHEET, f"a difference of {difference:g} mm straddles the limit and is not read again")


def _on_the_record(sheet: Sheet, record: RecordSheet) -> Iterator[Fault]:
    again = record.scales.again
    marked = [row.difference.value for row in record.rows if row.do == "again"]
    if again is None:
        yield from (Fault(_RECORD, f"{one:g} mm is read again, and no band is told") for one in marked)
        return
    limit, doubt = _printed(sheet, "truing.limit"), _printed(sheet, "align.uncertainty")
    if limit is None or doubt is None:
        yield Fault(_RECORD, "limit and doubt are not both printed, so nobody can tell what is too close to say")
        return
    yield from _band(_RECORD, limit, doubt, record.scales.leave.value, again.value, sheet)
    for row in record.rows:
        difference = row.difference.value
        if _straddles(difference, limit, doubt) != (row.do == "again") and not (
            row.do == "again" and record.scales.leave.value < difference < limit
        ):
            yield Fault(
                _RECORD, f'{difference:g} mm is marked "{row.do}"; the limit is {limit:.4g} mm, its doubt {doubt:.4g} mm'
            )


def _band(where: str, limit: float, doubt: float, inside: float, outside: float | None, sheet: Sheet) -> Iterator[Fault]:
    """Both ends of the band: what is surely in is written down by whole steps, what is surely out is limit and doubt."""
    written_down = _WRITTEN_DOWN * _STEP_MM[sheet.shop.dials]
    surely_in = limit - doubt
    if inside > surely_in * (1 + _SAME) or inside < surely_in - written_down * (1 + _SAME):
        yield Fault(where, f"surely in limits ends at {surely_in:.4g} mm, the table says {inside:.4g} mm")
    if outside is None or not isclose(outside, limit + doubt, rel_tol=_SAME):
        said = "nothing" if outside is None else f"{outside:.4g} mm"
        yield Fault(where, f"surely out of limits begins at {limit + doubt:.4g} mm, the table says {said}")


def _straddles(difference: float, limit: float, doubt: float) -> bool:
    return (limit - doubt) * (1 + _SAME) < difference <= (limit + doubt) * (1 + _SAME)


def _printed(sheet: Sheet, fact: str) -> float | None:
    """A number as it stands on the sheet or its record."""
    return sheet.first.get(fact)
