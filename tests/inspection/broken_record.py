"""Sheets whose record is wrong."""

from typing import Any

from shops import EXAMPLES
from tailtrue.record_sheet import Place, RecordSheet

from .broken import breaks
from .changed import Job, sheet_of, with_sheet
from .sample import procedure
from .sample_pieces import figure, mm


def _record() -> RecordSheet:
    made = procedure().record
    assert made is not None
    return made


def _with_record(**changes: Any) -> Job:
    return with_sheet(record=_record().model_copy(update=changes))


def _with_row(place: int, **changes: Any) -> Job:
    rows = list(_record().rows)
    rows[place] = rows[place].model_copy(update=changes)
    return _with_record(rows=tuple(rows))


def _with_places(name: str, *places: Place) -> Job:
    blocks = _record().blocks
    return _with_record(
        blocks=tuple(block.model_copy(update={"entries": places}) if block.id == name else block for block in blocks)
    )


@breaks("V110", "record, look-up table")
def a_move_of_half_the_difference() -> Job:
    return _with_row(3, move=mm("lookup.table.move", 0.025, "difference"))


@breaks("V110", "record, look-up table")
def a_factor_of_another_bar() -> Job:
    scales = _record().scales.model_copy(update={"factor": figure("lookup.factor", 1.0, "1", "ratio")})
    return _with_record(scales=scales)


@breaks("V110", "record, look-up table")
def a_row_that_is_no_length() -> Job:
    return _with_row(2, difference=figure("lookup.table.difference", 0.025, "in", "difference"))


@breaks("V110", "record, look-up table")
def rows_that_do_not_rise() -> Job:
    first, *rest = _record().rows
    return _with_record(rows=(first, first, *rest))


@breaks("V110", "record, look-up table")
def a_move_that_is_not_that_of_the_sheet() -> Job:
    move = _record().rows[3].move
    assert move is not None
    return _with_row(3, move=move.model_copy(update={"value": move.value * 1.01}))


@breaks("V111", "record")
def a_record_that_sends_the_centre_the_wrong_way() -> Job:
    return _with_record(
        larger_at_tailstock="Tailstock end LARGER: move the tailstock away from you.",
        smaller_at_tailstock="Tailstock end SMALLER: move the tailstock toward you.",
    )


@breaks("V111", "record")
def a_record_with_a_bare_sign() -> Job:
    return _with_record(larger_at_tailstock="Tailstock end LARGER: plus.")


@breaks("V111", "record", also="V114 V300")
def a_move_where_nothing_can_be_moved() -> Job:
    return _with_record(can_move=False)


@breaks("V112", "record, look-up table", also="V116")
def out_of_limits_left_alone() -> Job:
    return _with_row(2, do="leave", move=None)


@breaks("V112", "record, look-up table")
def in_limits_and_moved_for() -> Job:
    return _with_row(1, do="move", move=mm("lookup.table.move", 0.02 / 2 * 376 / 260, "difference"))


@breaks("V112", "record, look-up table")
def a_move_marked_and_not_given() -> Job:
    return _with_row(-1, move=None)


@breaks("V112", "record, look-up table")
def a_move_beside_what_is_read_again() -> Job:
    place = next(index for index, row in enumerate(_record().rows) if row.do == "again")
    difference = _record().rows[place].difference.value
    return _with_row(place, move=mm("lookup.table.move", difference / 2 * 376 / 260, "difference"))


@breaks("V112", "record, look-up table", also="V116")
def a_move_before_it_is_surely_out() -> Job:
    table = procedure().look_up.model_copy(update={"outside": mm("align.outside", 0.06, "difference")})
    told, givens = with_sheet(look_up=table)
    return told, givens


@breaks("V112", "record")
def a_limit_that_is_not_that_of_the_sheet() -> Job:
    _, *rest = _record().read
    return _with_record(read=(("In limits up to ", mm("align.inside", 0.03, "difference"), "."), *rest))


@breaks("V113", "record, rim")
def a_place_without_a_unit() -> Job:
    return _with_places("rim", Place(label="diameter"))


@breaks("V113", "record, rim")
def a_place_with_a_unit_for_words() -> Job:
    return _with_places("rim", Place(label="diameter", unit="mm", words=True))


@breaks("V113", "record, rim")
def a_place_in_a_unit_that_nobody_reads() -> Job:
    return _with_places("rim", Place(label="diameter", unit="furlong"))


@breaks("V113", "record, rim")
def a_choice_that_stands_twice() -> Job:
    return _with_places("rim", Place(label="seen", choices=("yes", "yes")))


@breaks("V113", "record, rim")
def a_plan_in_another_unit_than_its_place() -> Job:
    return _with_places("rim", Place(label="diameter", unit="mm", planned=(figure("skim.speed", 500, "1/min", "speed"),)))


@breaks("V114", "record", also="V116 V479")
def a_sheet_without_a_record() -> Job:
    return with_sheet(record=None)


@breaks("V114", "record")
def a_record_without_signatures() -> Job:
    return _with_record(blocks=tuple(block for block in _record().blocks if block.id != "signatures"))


@breaks("V114", "record")
def a_record_without_places_for_the_readings() -> Job:
    return _with_record(places={part: places for part, places in _record().places.items() if part != "visit"})


@breaks("V114", "record", also="V34")
def a_record_without_its_cautions() -> Job:
    return _with_record(safety=())


@breaks("V114", "record, rim", also="V34")
def a_block_with_nothing_to_write_on() -> Job:
    return _with_places("rim")


@breaks("V115", "record")
def a_record_of_another_bar() -> Job:
    (label, _), *rest = _record().known
    return _with_record(known=((label, (mm("truing.span", 400.0),)), *rest))


@breaks("V115", "record")
def a_record_of_collars_further_apart() -> Job:
    *rest, (label, _) = _record().known
    return _with_record(known=(*rest, (label, (mm("truing.tail_station", 340.0),))))


@breaks("V115", "record")
def a_record_that_does_not_know_its_bar() -> Job:
    return _with_record(known=_record().known[1:])


@breaks("V115", "record")
def a_collar_further_from_the_point_than_from_the_end() -> Job:
    first, (one, _), (two, _) = _record().known
    stations = ((one, (mm("truing.head_station", 70.0),)), (two, (mm("truing.tail_station", 330.0),)))
    return _with_record(known=(first, *stations))


def _made_without(shop: str, block: str) -> Job:
    """The sheet of a bar that is made and used, its record without one block."""
    tree, given = sheet_of(EXAMPLES / shop / "job.toml")
    assert tree.record is not None
    blocks = tuple(one for one in tree.record.blocks if one.id != block)
    assert len(blocks) < len(tree.record.blocks)
    return tree.model_copy(update={"record": tree.record.model_copy(update={"blocks": blocks})}), given


@breaks("V114", "record", also="V442")
def seats_and_bores_that_nobody_can_write_down() -> Job:
    return _made_without("fernhill", "made")


@breaks("V114", "record", also="V190")
def a_bond_that_nobody_can_write_down() -> Job:
    return _made_without("fernhill", "bond")


@breaks("V114", "record")
def a_shrink_fit_that_nobody_can_write_down() -> Job:
    return _made_without("ropewalk", "joint")


@breaks("V442", "record")
def a_bore_that_the_record_of_the_test_does_not_judge() -> Job:
    tree, given = sheet_of(EXAMPLES / "fernhill" / "job.toml")
    assert tree.record is not None
    blocks = tuple(
        one.model_copy(update={"entries": tuple(place.model_copy(update={"limits": None}) for place in one.entries)})
        for one in tree.record.blocks
    )
    return tree.model_copy(update={"record": tree.record.model_copy(update={"blocks": blocks})}), given
