"""Sheets whose record of work is wrong."""

from typing import Any

from shops import EXAMPLES
from tailtrue.parts import Figure, Limits, Text
from tailtrue.record_sheet import Place
from tailtrue.work_record import LookTable, Way, WorkRecord

from .broken import breaks
from .changed import Job, sheet_of


def _job(name: str) -> Job:
    return sheet_of(EXAMPLES / "fernhill" / f"{name}.toml")


def _record(name: str) -> WorkRecord:
    made = _job(name)[0].work_record
    assert made is not None
    return made


def _with(name: str, **changes: Any) -> Job:
    tree, given = _job(name)
    return tree.model_copy(update={"work_record": _record(name).model_copy(update=changes)}), given


def _with_cell(name: str, table: str, line: int, cell: int, value: float | None) -> Job:
    """The record with another number in one cell; None takes it out."""

    def changed(one: LookTable) -> LookTable:
        lines = list(one.lines)
        cells = list(lines[line].cells)
        found = cells[cell]
        if value is not None:
            assert found is not None
            cells[cell] = found.model_copy(update={"value": value})
        else:
            cells[cell] = None
        lines[line] = lines[line].model_copy(update={"cells": tuple(cells)})
        return one.model_copy(update={"lines": tuple(lines)})

    return _with(name, tables=tuple(changed(one) if one.id == table else one for one in _record(name).tables))


def _value(name: str, table: str, line: int, cell: int) -> float:
    found = next(one for one in _record(name).tables if one.id == table).lines[line].cells[cell]
    assert found is not None
    return found.value


def _with_words(name: str, table: str, old: str, new: str) -> Job:
    """The record with the first line that says one thing saying another."""
    tables = []
    for one in _record(name).tables:
        lines = list(one.lines)
        if one.id == table:
            at = next(place for place, line in enumerate(lines) if line.says == old)
            lines[at] = lines[at].model_copy(update={"says": new})
        tables.append(one.model_copy(update={"lines": tuple(lines)}))
    return _with(name, tables=tuple(tables))


def _with_place(name: str, label: str, **changes: Any) -> Job:
    """The record with one place changed."""

    def changed(place: Place) -> Place:
        return place.model_copy(update=changes) if place.label == label else place

    blocks = tuple(
        block.model_copy(update={"entries": tuple(map(changed, block.entries))}) for block in _record(name).blocks
    )
    return _with(name, blocks=blocks)


def _without_block(name: str, block: str) -> Job:
    return _with(name, blocks=tuple(one for one in _record(name).blocks if one.id != block))


def _with_way(name: str, place: int, **changes: Text) -> Job:
    ways: list[Way] = list(_record(name).ways)
    ways[place] = ways[place].model_copy(update=changes)
    return _with(name, ways=tuple(ways))


def _limits(name: str, label: str) -> Limits:
    found = next(place.limits for block in _record(name).blocks for place in block.entries if place.label == label)
    assert found is not None
    return found


@breaks("V440", "work record", also="V479")
def height_judged_and_no_record() -> Job:
    tree, given = _job("height-and-droop")
    return tree.model_copy(update={"work_record": None}), given


@breaks("V440", "work record", also="V479")
def a_bar_certified_and_no_record() -> Job:
    tree, given = _job("make-bar")
    return tree.model_copy(update={"work_record": None}), given


@breaks("V440", "work record")
def a_joint_that_nobody_can_write_down() -> Job:
    return _without_block("make-bar", "joint")


@breaks("V442", "work record", also="V190")
def a_bore_that_the_record_does_not_judge() -> Job:
    return _without_block("make-bar", "bores")


@breaks("V440", "work record", also="V24 V31 V442")
def the_record_of_other_work() -> Job:
    tree, given = _job("height-and-droop")
    return tree.model_copy(update={"work_record": _record("chucked-bar-test")}), given


@breaks("V440", "work record")
def rounds_that_nobody_can_write_down() -> Job:
    return _without_block("chucked-bar-test", "readings-across")


@breaks("V440", "work record")
def a_record_of_work_that_nobody_signs() -> Job:
    return _without_block("rework", "signatures")


@breaks("V440", "work record")
def rejected_readings_without_a_place() -> Job:
    return _without_block("re-certify", "rejected")


@breaks("V440", "work record", also="V34 V190")
def a_record_without_its_cautions() -> Job:
    return _with("chucked-bar-test", safety=())


@breaks("V440", "work record", also="V34")
def a_record_that_says_nothing_of_keeping() -> Job:
    return _with("height-and-droop", keep=())


@breaks("V113", "work record, droop")
def a_reading_without_a_unit() -> Job:
    return _with_place("height-and-droop", "droop: half of top less bottom", unit="")


@breaks("V441", "work record, height")
def a_height_judged_with_nothing() -> Job:
    return _with_place("height-and-droop", "height of the quill over the spindle", read_with=())


@breaks("V441", "work record, height")
def a_height_judged_by_an_indicator_of_any_kind() -> Job:
    return _with_place("height-and-droop", "height of the quill over the spindle", resolution=None)


@breaks("V441", "work record, lie", also="V24")
def a_rise_judged_with_too_coarse_an_indicator() -> Job:
    coarse = Figure(fact="crib.coarse_division", value=0.05, unit="mm", rounding="difference")
    return _with_place("height-and-droop", "rise toward the nose", resolution=coarse)


@breaks("V441", "work record, lie", also="V442")
def a_band_without_an_end() -> Job:
    return _with_place("height-and-droop", "lean toward the tool", limits=Limits())


@breaks("V441", "work record, lie", also="V442")
def a_band_turned_round() -> Job:
    found = _limits("height-and-droop", "rise toward the nose")
    return _with_place("height-and-droop", "rise toward the nose", limits=Limits(low=found.high, high=found.low))


@breaks("V442", "work record")
def a_band_of_the_steps_that_the_record_lacks() -> Job:
    return _with_place("height-and-droop", "height of the quill over the spindle", limits=None)


@breaks("V442", "work record")
def a_collar_that_may_be_smaller_here_than_at_the_step() -> Job:
    found = _limits("re-certify", "smaller collar, before it is skimmed again").low
    assert found is not None
    limits = Limits(low=found.model_copy(update={"value": found.value - 1}))
    return _with_place("re-certify", "smaller collar, before it is skimmed again", limits=limits)


@breaks("V443", "work record, Change of the difference, and the part of the bar")
def the_whole_change_laid_to_the_bar() -> Job:
    value = _value("re-certify", "bar.swap_table", -1, 1)
    return _with_cell("re-certify", "bar.swap_table", -1, 1, 2 * value)


@breaks("V443", "work record, Change of the difference, and the part of the bar")
def a_bar_called_good_that_is_not() -> Job:
    return _with_words("re-certify", "bar.swap_table", "skim again", "is good")


@breaks("V443", "work record, Mean of both ways round, and where the tailstock centre stands")
def half_the_difference_told_as_the_way_of_the_centre() -> Job:
    value = _value("re-certify", "lookup.table", -1, 0)
    return _with_cell("re-certify", "lookup.table", -1, 1, value / 2)


@breaks("V443", "work record, Mean of both ways round, and where the tailstock centre stands")
def a_way_of_the_centre_beside_what_is_left() -> Job:
    return _with_words("re-certify", "lookup.table", "note it", "leave it")


@breaks("V443", "work record, Difference of the bands, and what it asks")
def a_foot_turned_in_limits() -> Job:
    return _with_words("chucked-bar-test", "chucked.bands", "in limits: turn no foot", "out: level the bed")


@breaks("V443", "work record, Difference of the bands, and what it asks")
def a_band_that_ends_before_the_next_begins() -> Job:
    return _with_cell("chucked-bar-test", "chucked.bands", 0, 1, 0.5 * _value("chucked-bar-test", "chucked.bands", 0, 1))


@breaks("V443", "work record, Difference of the bands, and what it asks")
def bands_that_end_before_what_is_out() -> Job:
    tables = tuple(
        one.model_copy(update={"lines": one.lines[:-1]}) if one.id == "chucked.bands" else one
        for one in _record("chucked-bar-test").tables
    )
    return _with("chucked-bar-test", tables=tables)


@breaks("V443", "work record, What a difference comes to that is acted on")
def a_difference_acted_on_that_is_not_surely_out() -> Job:
    return _with_cell("chucked-bar-test", "chucked.table", 0, 0, 0.5 * _value("chucked-bar-test", "chucked.bands", 2, 0))


@breaks("V443", "work record, Difference of the bands, and what it asks")
def what_is_out_left_alone() -> Job:
    return _with_words("chucked-bar-test", "chucked.bands", "out: level the bed", "in limits: turn no foot")


@breaks("V443", "work record, What a difference comes to that is acted on")
def the_whole_difference_told_as_the_lead_of_the_tool() -> Job:
    value = _value("chucked-bar-test", "chucked.table", -1, 0)
    return _with_cell("chucked-bar-test", "chucked.table", -1, 1, value)


@breaks("V443", "work record, What a difference comes to that is acted on")
def a_taper_of_another_length() -> Job:
    value = _value("chucked-bar-test", "chucked.table", -1, 2)
    return _with_cell("chucked-bar-test", "chucked.table", -1, 2, 1.2 * value)


@breaks("V443", "work record, What a difference comes to that is acted on")
def differences_that_do_not_rise() -> Job:
    tables = tuple(one.model_copy(update={"lines": one.lines[::-1]}) for one in _record("chucked-bar-test").tables)
    return _with("chucked-bar-test", tables=tables)


@breaks("V443", "work record, Height of the quill, and what would bring it to the middle")
def a_shim_as_thick_as_the_quill_is_low() -> Job:
    value = _value("height-and-droop", "height.table", 0, 0)
    return _with_cell("height-and-droop", "height.table", 0, 1, value)


@breaks("V443", "work record, Height of the quill, and what would bring it to the middle")
def a_quill_below_without_its_minus() -> Job:
    value = _value("height-and-droop", "height.table", 0, 0)
    return _with_cell("height-and-droop", "height.table", 0, 0, -value)


@breaks("V443", "work record, Height of the quill, and what would bring it to the middle")
def a_low_quill_without_what_it_lacks() -> Job:
    return _with_cell("height-and-droop", "height.table", 0, 1, None)


@breaks("V443", "work record, Height of the quill, and what would bring it to the middle")
def a_low_quill_called_in_limits() -> Job:
    return _with_words("height-and-droop", "height.table", "below: LOW", "below: in limits")


@breaks("V443", "work record, Height of the quill, and what would bring it to the middle")
def a_quill_below_told_as_above() -> Job:
    return _with_words("height-and-droop", "height.table", "below: LOW", "above: HIGH")


@breaks("V443", "work record, Cuts that open the bore, and what it reads after each")
def a_cut_that_opens_by_its_depth_alone() -> Job:
    value = _value("rework", "rework.cuts", 0, 3) - _value("rework", "rework.cuts", 0, 2)
    return _with_cell("rework", "rework.cuts", 0, 3, value)


@breaks("V443", "work record, Reading of the bore, and what it lacks of the middle")
def a_bore_too_small_that_is_said_to_fit() -> Job:
    return _with_words("rework", "rework.table", "is SMALL", "fits")


@breaks("V443", "work record, Reading of the bore, and what it lacks of the middle")
def a_bore_that_lacks_half_of_what_it_lacks() -> Job:
    value = _value("rework", "rework.table", 0, 1)
    return _with_cell("rework", "rework.table", 0, 1, value / 2)


@breaks("V443", "work record, A table of something")
def a_table_that_nobody_can_reckon_again() -> Job:
    first = _record("rework").tables[0].model_copy(update={"id": "rework.unknown", "title": "A table of something"})
    return _with("rework", tables=(first,))


@breaks("V444", "work record")
def the_foot_on_the_wrong_side() -> Job:
    return _with_way("chucked-bar-test", 0, side=("raise at the tailstock end the rear foot",))


@breaks("V444", "work record")
def a_side_told_by_a_sign() -> Job:
    return _with_way("chucked-bar-test", 1, side=("minus",))


@breaks("V444", "work record")
def the_centre_on_the_wrong_side() -> Job:
    return _with_way("re-certify", 0, side=("the tailstock centre stands toward you",))


@breaks("V444", "work record")
def a_low_quill_said_to_be_high() -> Job:
    return _with_way("height-and-droop", 1, side=("the quill stands above the spindle",))


@breaks("V444", "work record")
def a_quill_on_both_sides() -> Job:
    return _with_way("height-and-droop", 2, side=("the quill stands toward you or away from you",))


@breaks("V444", "work record")
def a_side_that_is_not_told() -> Job:
    return _with("height-and-droop", ways=_record("height-and-droop").ways[:-1])


@breaks("V444", "work record")
def a_large_bore_that_is_cut() -> Job:
    return _with_way("rework", 1, side=("cut it open from inside",))


@breaks("V360", "work record")
def readings_that_go_into_no_record() -> Job:
    tree, given = _job("height-and-droop")
    phases = tuple(
        phase.model_copy(
            update={
                "steps": tuple(
                    step.model_copy(update={"text": tuple(line for line in step.text if "record of sheet" not in str(line))})
                    for step in phase.steps
                )
            }
        )
        for phase in tree.phases
    )
    return tree.model_copy(update={"phases": phases}), given


@breaks("V443", "work record, What a difference comes to that is acted on")
def a_foot_to_turn_without_its_taper() -> Job:
    return _with_cell("chucked-bar-test", "chucked.table", -1, 2, None)
