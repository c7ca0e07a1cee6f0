"""The record: its table reckoned again, its directions, its limits, and a place with a unit for all that is written."""

from collections.abc import Iterator
from math import isclose

from tailtrue.inspection.drawing import size
from tailtrue.inspection.look_up import Side
from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in
from tailtrue.parts import Figure

_RECORD = "record"
_TABLE = "record, look-up table"
_WITHIN = 0.02  # of the move
_SAME = 1e-6
_CLOSE_MM = 0.05  # lengths are told in tenths
_UNITS = frozenset({"mm", "degC", "s", "1/min", "mm/rev", "1", "um", "mm/m", "K", "deg", "N", "N mm"})
# What a record of a test must have places for, by the ids of its blocks; for a correction only where one can be made.
_BLOCKS = ("environment", "instruments", "bar", "passes", "rim", "computation", "decision", "vertical", "rejected",
           "statement", "signatures")  # fmt: skip
# A step that every way of fixing collars has, and that of a bond alone: then seats, bores and joint are written down too.
FIXED, _CURED = "mark-seats", "cure"
_PARTS = ("set-up", "skim", "measuring", "visit", "end")
_OPPOSITE: dict[Side, Side] = {"toward you": "away from you", "away from you": "toward you"}


def table_right(sheet: Sheet) -> Iterator[Fault]:
    """Every move is half the difference carried out to the centres, and the sheet says the same of the same difference."""
    record = sheet.procedure.record
    if record is None:
        return  # told by the rule on what must be there
    drawing, look_up = sheet.procedure.drawing, sheet.procedure.look_up
    if drawing is None or look_up is None:
        yield Fault(_TABLE, "a record stands here without the drawing and the look-up table that it belongs to")
        return
    spacing = size(sheet, "collar.spacing")
    span = size(sheet, "centres.span" if "centres.span" in drawing.dimensions else "bar.length")
    if spacing is None or span is None or not spacing > 0 or not span > 0:
        yield Fault(_TABLE, "the drawing lacks the lengths to reckon the moves from")
        return
    factor = span / spacing / 2
    if not isclose(record.scales.factor.value, factor, rel_tol=_WITHIN):
        yield Fault(_TABLE, f"the factor of this bar is {factor:.4g}, the record says {record.scales.factor.value:.4g}")
    on_sheet = {round(row.difference.value, 6): row.move for row in look_up.rows}
    last = 0.0
    for row in record.rows:
        difference = row.difference.value
        if row.difference.unit != "mm" or (row.move is not None and row.move.unit != "mm"):
            yield Fault(_TABLE, f"the row for {difference:g} is not in mm")
            continue
        if not difference > last:
            yield Fault(_TABLE, f"the difference {difference:g} mm does not follow {last:g} mm")
        last = difference
        if row.move is not None and not isclose(row.move.value, difference * factor, rel_tol=_WITHIN):
            what = f"a difference of {difference:g} mm asks for a move of {difference * factor:.4g} mm"
            yield Fault(_TABLE, f"{what}, the record says {row.move.value:.4g} mm")
        there = on_sheet.get(round(difference, 6))
        if there is not None and row.move is not None and not isclose(there.value, row.move.value, rel_tol=_SAME):
            yield Fault(_TABLE, f"for {difference:g} mm record and sheet name different moves")


def directions_right(sheet: Sheet) -> Iterator[Fault]:
    """The record sends the centre the way the tool side asks; where nothing moves, it says where the centre stands."""
    record = sheet.procedure.record
    if record is None:
        return
    front = sheet.shop.tool_side == "front"
    larger: Side = "toward you" if front else "away from you"
    for end, words, way in (
        ("larger", record.larger_at_tailstock, larger),
        ("smaller", record.smaller_at_tailstock, _OPPOSITE[larger]),
    ):
        folded = words.lower().replace("towards", "toward")
        due = way if record.can_move else _OPPOSITE[way]
        if [side for side in _OPPOSITE if side in folded] != [due]:
            yield Fault(_RECORD, f'for a {end} tailstock end the word is "{due}", the record says "{words}"')
        if not record.can_move and "move" in folded:
            yield Fault(_RECORD, f'this tailstock cannot be moved, and the record says "{words}"')


def limits_of_the_sheet(sheet: Sheet) -> Iterator[Fault]:
    """What the table calls in limits, too close or out is what the sheet calls so; a shared number is the same number."""
    record, look_up = sheet.procedure.record, sheet.procedure.look_up
    if record is None or look_up is None:
        return  # told by the rule on the table
    for row in record.rows:
        difference = row.difference.value
        stays = look_up.inside if look_up.verdict_possible else look_up.leave
        if stays is not None and (row.do == "leave") != (difference <= stays.value * (1 + _SAME)):
            yield Fault(_TABLE, f'{difference:g} mm is marked "{row.do}", and the sheet leaves up to {stays.value:g} mm')
        surely_out = look_up.outside if look_up.verdict_possible else None
        if surely_out is not None and row.do == "move" and not difference >= surely_out.value * (1 - _SAME):
            yield Fault(_TABLE, f"{difference:g} mm is acted on, and surely out is only {surely_out.value:g} mm")
        if (row.do == "move") != (row.move is not None):
            yield Fault(_TABLE, f'{difference:g} mm is marked "{row.do}", and its move says otherwise')
    told = {figure.fact: figure.value for figure in _of_the_sheet(sheet)}
    for figure in figures_in(record):
        if (
            "table" not in figure.fact
            and figure.fact in told
            and not isclose(figure.value, told[figure.fact], rel_tol=_SAME)
        ):
            yield Fault(_RECORD, f"{figure.fact} is {figure.value:g} here and {told[figure.fact]:g} on the sheet")


def _of_the_sheet(sheet: Sheet) -> Iterator[Figure]:
    look_up, drawing = sheet.procedure.look_up, sheet.procedure.drawing
    if look_up is not None:
        yield from (figure for figure in (look_up.inside, look_up.outside, look_up.leave) if figure is not None)
    yield from (found.figure for found in sheet.at_steps)
    if drawing is not None:
        yield from drawing.dimensions.values()


def places_say_what(sheet: Sheet) -> Iterator[Fault]:
    """Every place has a label, and one of: a unit, words to choose from, words to write."""
    record, work = sheet.procedure.record, sheet.procedure.work_record
    groups = [(f"record, {name}", places) for name, places in record.places.items()] if record is not None else []
    groups += [(f"record, {block.id}", block.entries) for block in (record.blocks if record is not None else ())]
    groups += [(f"work record, {block.id}", block.entries) for block in (work.blocks if work is not None else ())]
    for where, places in groups:
        for place in places:
            ways = [bool(place.unit), bool(place.choices), place.words]
            if ways.count(True) != 1:
                yield Fault(where, f'"{place.label}" must have one of a unit, choices, or words to write')
            elif place.unit and place.unit not in _UNITS:
                yield Fault(where, f'"{place.label}" is written in "{place.unit}", which is no unit of a record')
            if place.choices and len(set(place.choices)) < len(place.choices):
                yield Fault(where, f'"{place.label}" has the same choice twice')
            for figure in figures_in(place.planned):
                if place.unit and figure.unit not in (place.unit, "1"):
                    yield Fault(where, f'"{place.label}" is planned in {figure.unit} and written in {place.unit}')


def record_complete(sheet: Sheet) -> Iterator[Fault]:
    """A record has places for all that a test, and the making of its bar, write down, and its cautions."""
    record = sheet.procedure.record
    if record is None:
        if sheet.procedure.look_up is not None:
            yield Fault(_RECORD, "the sheet has a look-up table and no record to write on")
        return
    blocks = {block.id for block in record.blocks}
    there = {placed.step.id for placed in sheet.steps}
    made = ("made", "bond" if _CURED in there else "joint") if FIXED in there else ()
    due = (*_BLOCKS, *(("correction",) if record.can_move else ()), *made)
    for name in due:
        if name not in blocks:
            yield Fault(_RECORD, f'the record has no places for "{name}"')
    if not record.can_move and "correction" in blocks:
        yield Fault(_RECORD, "the record has places for a move, and this tailstock cannot be moved")
    for part in (*_PARTS, *(("moves",) if record.can_move else ())):
        if not any(name == part and places for name, places in record.places.items()):
            yield Fault(_RECORD, f'the record has no places for "{part}"')
    for name, lines in (("safety", record.safety), ("checks before power", record.verify), ("keeping", record.keep)):
        if not lines:
            yield Fault(_RECORD, f"the record says nothing of {name}")
    for block in record.blocks:
        if not block.columns or not block.entries:
            yield Fault(f"record, {block.id}", "there is nothing to write on here")


def bar_is_the_one_drawn(sheet: Sheet) -> Iterator[Fault]:
    """What the record knows of the bar is what the drawing shows."""
    record = sheet.procedure.record
    if record is None:
        return
    if not record.bar.strip():
        yield Fault(_RECORD, "the record does not name its bar")
    known = {figure.fact: figure.value for figure in figures_in(record.known)}
    span, spacing, station = (size(sheet, name) for name in ("centres.span", "collar.spacing", "collar.station"))
    head, tail = known.get("truing.head_station"), known.get("truing.tail_station")
    for name, said, due in (
        ("the distance between the points", known.get("truing.span"), span),
        ("the distance of the collars", None if head is None or tail is None else tail - head, spacing),
    ):
        if said is None:
            yield Fault(_RECORD, f"the record does not say {name}")
        elif due is not None and not isclose(said, due, abs_tol=_CLOSE_MM):
            yield Fault(_RECORD, f"{name} is {said:g} mm on the record and {due:g} mm on the drawing")
    if head is not None and station is not None and not head <= station + _CLOSE_MM:
        yield Fault(
            _RECORD, f"the headstock collar stands {head:g} mm from the point, and {station:g} mm from the end of the bar"
        )
