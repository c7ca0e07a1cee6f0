"""Sizes laid out, doubts and margins: the last value that is taken, the first that is refused, and what is said then."""

from collections.abc import Callable
from math import sqrt
from typing import Any

import pytest

from tailtrue.calc import (
    budget,
    centre_hole,
    clamping,
    doubts,
    indicator,
    joints,
    lathe_geometry,
    lengths,
    margins,
    pins,
    readings,
    rework,
    solids,
    steps,
    tapers,
)
from tailtrue.calc.validity import OutOfRange

_STEP = {"value_mm": 25.43, "step_mm": 0.05}
_CUT = {"stock_on_diameter_mm": 1.71, "passes": 3, "step_mm": 0.025}
_CLAMP = {"coverage": 2, "deviation_mm": 0.003, "step_mm": 0.002}
_SHIFT = {"coverage": 2, "shift_deviation_mm": 0.003, "step_mm": 0.002, "cycles": 5}
_MEANS = {"deviation_mm": 0.0015, "first_readings": 3, "second_readings": 3}
_TAPER = {"large_unsure_mm": 0.003, "small_unsure_mm": 0.004, "apart_mm": 100, "span_mm": 300, "setting_unsure_mm": 0}
_BOW = {"difference_unsure_mm": 0.004, "first_station_mm": 30, "middle_station_mm": 150, "second_station_mm": 270}
_LIGHT = {"least_mm": 24.9, "low_mm": 25.0, "high_mm": 25.02, "depth_mm": 0.02}
_SEATS = {"area_mm2": 2748.9, "diametral_clearance_mm": 0.1, "waste_factor": 2, "count": 2}
_RAISED = {"strength_mpa": 8, "margin": 0.8, "margin_wanted": 1}
_WIDENED = {"width_mm": 8, "margin": 0.8, "margin_wanted": 1}
_SHALLOW = {"depth_mm": 1, "margin": 1.2, "margin_wanted": 1.5}
_NARROW = {"margin": 1.5, "width_mm": 28, "full_width_mm": 35}
_PIECES = {"piece_mm": 38, "kerf_mm": 2, "count": 2}
_STOCK = {"stock_mm": 82, "kerf_mm": 2, "count": 2}

# Formula, sound arguments, the argument looked at, the last value that is taken, the first that is refused, what is said.
_BOUNDS: list[tuple[Callable[..., float], dict[str, float], str, float, float, str]] = [
    (steps.step_down, _STEP, "step_mm", 1e-3, 0, "step is 0 mm"),
    (steps.step_up, _STEP, "step_mm", 1e-3, 0, "step is 0 mm"),
    (steps.steps_in, _STEP, "step_mm", 1e-3, 0, "step is 0 mm"),
    (steps.nearest_steps, _STEP, "step_mm", 1e-3, 0, "step is 0 mm"),
    (steps.nearest_steps, _STEP, "parts", 1, 0, "parts of a step is 0"),
    (steps.nearest_steps, _STEP, "parts", 10, 11, "parts of a step is 11"),
    (steps.length_of_steps, {"count": 7, "step_mm": 0.1}, "step_mm", 1e-3, 0, "step is 0 mm"),
    (steps.surely_less, {"whole_mm": 0.02, "doubt_mm": 0.004, "step_mm": 0.001}, "doubt_mm", 0, -1e-6, "doubt is -1e-06 mm"),
    (steps.equal_cut, _CUT, "stock_on_diameter_mm", 0, -0.01, "stock is -0.01 mm"),
    (steps.equal_cut, _CUT, "passes", 1, 0.5, "number of cuts is 0.5"),
    (steps.equal_cut, _CUT, "step_mm", 1e-3, 0, "step is 0 mm"),
    (steps.finishing_cut, _CUT, "stock_on_diameter_mm", 0, -0.01, "stock is -0.01 mm"),
    (steps.finishing_cut, _CUT, "passes", 1, 0.5, "number of cuts is 0.5"),
    (steps.finishing_cut, _CUT, "step_mm", 1e-3, 0, "step is 0 mm"),
    (lengths.share_of, {"whole_mm": 0.016, "share": 0.25}, "whole_mm", 0, -0.1, "whole is -0.1 mm"),
    (lengths.share_of, {"whole_mm": 0.016, "share": 0.25}, "share", 0, -0.01, "share is -0.01"),
    (lengths.share_of, {"whole_mm": 0.016, "share": 0.25}, "share", 1, 1.001, "share is 1.001"),
    (lengths.length_of_diameters, {"diameter_mm": 25, "ratio": 2}, "diameter_mm", 1e-3, 0, "diameter is 0 mm"),
    (lengths.length_of_diameters, {"diameter_mm": 25, "ratio": 2}, "ratio", 0, -0.01, "number of diameters is -0.01"),
    (lengths.length_ratio, {"length_mm": 304, "measure_mm": 38}, "length_mm", 0, -0.1, "length is -0.1 mm"),
    (lengths.length_ratio, {"length_mm": 304, "measure_mm": 38}, "measure_mm", 1e-3, 0, "held against is 0 mm"),
    (lengths.percentage, {"part_mm": 240, "whole_mm": 300}, "whole_mm", 1e-3, 0, "whole is 0 mm"),
    (lengths.within_both_sides, {"outer_mm": 180, "margin_mm": 10}, "margin_mm", 0, -0.1, "margin is -0.1 mm"),
    (lengths.over_both_sides, {"inner_mm": 180, "margin_mm": 10}, "margin_mm", 0, -0.1, "margin is -0.1 mm"),
    (lengths.per_side, {"outer_mm": 70, "inner_mm": 25}, "outer_mm", 0, -0.1, "diameter is -0.1 mm"),
    (lengths.per_side, {"outer_mm": 70, "inner_mm": 25}, "inner_mm", 0, -0.1, "diameter is -0.1 mm"),
    (lengths.on_diameter, {"depth_mm": 0.05, "cuts": 2}, "depth_mm", 0, -0.1, "depth of cut is -0.1 mm"),
    (lengths.on_diameter, {"depth_mm": 0.05, "cuts": 2}, "cuts", 0, -0.5, "number of cuts is -0.5"),
    (lengths.near_edge, {"middle_mm": 48, "width_mm": 35}, "width_mm", 1e-3, 0, "width is 0 mm"),
    (lengths.middle_past, {"edge_mm": 30.5, "width_mm": 35}, "width_mm", 1e-3, 0, "width is 0 mm"),
    (lengths.length_for_pieces, _PIECES, "piece_mm", 1e-3, 0, "length of a piece is 0 mm"),
    (lengths.length_for_pieces, _PIECES, "kerf_mm", 0, -0.1, "saw cut is -0.1 mm"),
    (lengths.length_for_pieces, _PIECES, "count", 1, 0, "number of pieces is 0"),
    (lengths.piece_of_stock, _STOCK, "stock_mm", 0, -0.1, "length of the stock is -0.1 mm"),
    (lengths.piece_of_stock, _STOCK, "kerf_mm", 0, -0.1, "saw cut is -0.1 mm"),
    (lengths.piece_of_stock, _STOCK, "count", 1, 0.5, "number of pieces is 0.5"),
    (joints.compound_needed, _SEATS, "area_mm2", 1e-3, 0, "area is 0 mm2"),
    (joints.compound_needed, _SEATS, "diametral_clearance_mm", 0, -0.01, "gap is -0.01 mm"),
    (joints.compound_needed, _SEATS, "waste_factor", 1, 0.99, "factor for what is wiped off is 0.99"),
    (joints.compound_needed, _SEATS, "count", 1, 0, "number of seats is 0"),
    (margins.catch_torque, {"cutting_force_n": 200, "dull_factor": 3, "diameter_mm": 75}, "dull_factor", 1, 0.99, "tool is 0.99"),
    (margins.catch_torque, {"cutting_force_n": 200, "dull_factor": 3, "diameter_mm": 75}, "dull_factor", 5, 5.01, "tool is 5.01"),
    (margins.torque_margin, {"carried_nmm": 3, "asked_nmm": 2}, "carried_nmm", 0, -0.1, "torque carried is -0.1 N mm"),
    (margins.torque_margin, {"carried_nmm": 3, "asked_nmm": 2}, "asked_nmm", 1e-3, 0, "torque asked for is 0 N mm"),
    (margins.width_for_margin, _WIDENED, "width_mm", 1e-3, 0, "width is 0 mm"),
    (margins.width_for_margin, _WIDENED, "margin", 1e-3, 0, "margin is 0"),
    (margins.width_for_margin, _WIDENED, "margin_wanted", 1e-3, 0, "margin wanted is 0"),
    (margins.strength_for_margin, _RAISED, "strength_mpa", 1e-3, 0, "strength is 0 MPa"),
    (margins.strength_for_margin, _RAISED, "margin", 1e-3, 0, "margin is 0"),
    (margins.strength_for_margin, _RAISED, "margin_wanted", 1e-3, 0, "margin wanted is 0"),
    (margins.depth_for_margin, _SHALLOW, "depth_mm", 1e-3, 0, "depth of the cut is 0 mm"),
    (margins.depth_for_margin, _SHALLOW, "margin", 1e-3, 0, "margin is 0"),
    (margins.depth_for_margin, _SHALLOW, "margin_wanted", 1e-3, 0, "margin wanted is 0"),
    (margins.margin_of_narrow, _NARROW, "margin", 0, -0.1, "margin is -0.1"),
    (margins.margin_of_narrow, _NARROW, "width_mm", 1e-3, 0, "width as found is 0 mm"),
    (margins.margin_of_narrow, _NARROW, "full_width_mm", 1e-3, 0, "full width is 0 mm"),
    (pins.pin_shear_stress, {"shear_force_n": 26400, "pin_diameter_mm": 4}, "shear_force_n", 0, -1, "shear force is -1 N"),
    (pins.pin_shear_stress, {"shear_force_n": 26400, "pin_diameter_mm": 4}, "pin_diameter_mm", 1e-3, 0, "diameter of the pin is 0 mm"),
    (clamping.repeat_scatter, _CLAMP, "coverage", 1e-3, 0, "factor is 0"),
    (clamping.repeat_scatter, _CLAMP, "deviation_mm", 0, -1e-3, "standard deviation is -0.001 mm"),
    (clamping.repeat_scatter, _CLAMP, "step_mm", 1e-4, 0, "step of the indicator is 0 mm"),
    (clamping.mean_shift_doubt, _SHIFT, "coverage", 1e-3, 0, "factor is 0"),
    (clamping.mean_shift_doubt, _SHIFT, "shift_deviation_mm", 0, -1e-3, "standard deviation is -0.001 mm"),
    (clamping.mean_shift_doubt, _SHIFT, "step_mm", 1e-4, 0, "step of the indicator is 0 mm"),
    (clamping.mean_shift_doubt, _SHIFT, "cycles", 2, 1.9, "number of cycles is 1.9"),
    (doubts.both_together, {"first_mm": 3, "second_mm": 4}, "first_mm", 0, -0.1, "first doubt is -0.1 mm"),
    (doubts.both_together, {"first_mm": 3, "second_mm": 4}, "second_mm", 0, -0.1, "second doubt is -0.1 mm"),
    (doubts.of_one_collar, {"difference_unsure_mm": 1}, "difference_unsure_mm", 0, -0.1, "doubt of the difference is -0.1 mm"),
    (doubts.as_read_once, _MEANS, "deviation_mm", 0, -1e-3, "standard deviation is -0.001 mm"),
    (doubts.as_read_once, _MEANS, "first_readings", 1, 0.5, "number of readings is 0.5"),
    (doubts.as_read_once, _MEANS, "second_readings", 1, 0.5, "number of readings is 0.5"),
    (doubts.without_scatter, _MEANS | {"standard_mm": 0.002}, "standard_mm", 0, -1e-3, "standard uncertainty is -0.001 mm"),
    (budget.carried_uncertainty, {"unsure_mm": 1, "sensitivity": 2}, "unsure_mm", 0, -0.1, "uncertainty is -0.1 mm"),
    (tapers.length_in_one, {"taper_mm_per_mm": 1}, "taper_mm_per_mm", 1e-3, 0, "taper is 0 mm/mm"),
    (tapers.taper_of_ratio, {"length_in_one": 1}, "length_in_one", 1e-3, 0, "length in which the diameter loses one is 0"),
    (tapers.difference_over, {"taper_mm_per_mm": 1, "length_mm": 1}, "taper_mm_per_mm", 0, -0.1, "taper is -0.1 mm/mm"),
    (tapers.difference_over, {"taper_mm_per_mm": 1, "length_mm": 1}, "length_mm", 1e-3, 0, "length is 0 mm"),
    (tapers.correction_doubt, _TAPER, "large_unsure_mm", 0, -1e-3, "doubt of the larger diameter is -0.001 mm"),
    (tapers.correction_doubt, _TAPER, "small_unsure_mm", 0, -1e-3, "doubt of the smaller diameter is -0.001 mm"),
    (tapers.correction_doubt, _TAPER, "apart_mm", 1e-3, 0, "distance of the readings is 0 mm"),
    (tapers.correction_doubt, _TAPER, "span_mm", 100, 99.9, "length of the work is 99.9 mm"),
    (tapers.correction_doubt, _TAPER, "setting_unsure_mm", 0, -1e-3, "doubt of the setting is -0.001 mm"),
    (lathe_geometry.bow_doubt, _BOW, "difference_unsure_mm", 0, -1e-3, "doubt of the difference is -0.001 mm"),
    (lathe_geometry.bow_doubt, _BOW, "first_station_mm", 0, -0.1, "station of the headstock collar is -0.1 mm"),
    (lathe_geometry.bow_doubt, _BOW, "middle_station_mm", 30.001, 30, "distance from headstock collar to middle collar is 0 mm"),
    (lathe_geometry.bow_doubt, _BOW, "second_station_mm", 150.001, 150, "distance from middle collar to tailstock collar is 0 mm"),
    (centre_hole.centre_load, {"mass_kg": 2, "gravity_m_s2": 9.81, "radial_force_n": 30}, "mass_kg", 1e-3, 0, "mass is 0 kg"),
    (centre_hole.centre_load, {"mass_kg": 2, "gravity_m_s2": 9.81, "radial_force_n": 30}, "gravity_m_s2", 1e-3, 0, "gravity is 0 m/s2"),
    (centre_hole.centre_load, {"mass_kg": 2, "gravity_m_s2": 9.81, "radial_force_n": 30}, "radial_force_n", 0, -0.1, "radial force is -0.1 N"),
    (solids.mass_with_pieces, {"base_kg": 1, "piece_kg": 1, "count": 2}, "base_kg", 0, -0.1, "mass is -0.1 kg"),
    (solids.mass_with_pieces, {"base_kg": 1, "piece_kg": 1, "count": 2}, "piece_kg", 0, -0.1, "mass of a piece is -0.1 kg"),
    (solids.mass_with_pieces, {"base_kg": 1, "piece_kg": 1, "count": 2}, "count", 1, 0, "number of pieces is 0"),
    (readings.drift_over, {"slope_mm": 0.001, "readings": 7}, "readings", 1, 0, "number of readings is 0"),
    (rework.light_cuts, _LIGHT, "least_mm", 1e-3, 0, "least reading is 0 mm"),
    (rework.light_cuts, _LIGHT, "low_mm", 1e-3, 0, "smallest bore is 0 mm"),
    (rework.light_cuts, _LIGHT, "high_mm", 25.0, 24.99, "largest bore is 24.99 mm"),
    (rework.light_cuts, _LIGHT, "depth_mm", 1e-3, 0, "depth of cut is 0 mm"),
]  # fmt: skip


@pytest.mark.parametrize(("formula", "sound", "argument", "last", "past", "says"), _BOUNDS)
def test_the_last_value_is_taken_and_the_next_refused(
    formula: Callable[..., float], sound: dict[str, Any], argument: str, last: float, past: float, says: str
) -> None:
    formula(**sound | {argument: last})
    with pytest.raises(OutOfRange) as refused:
        formula(**sound | {argument: past})
    assert says in str(refused.value)


def test_a_whole_step_is_not_lost_to_its_binary_form() -> None:
    assert steps.step_down(25.4, 0.05) == pytest.approx(25.4)
    assert steps.step_up(0.1 + 0.2, 0.1) == pytest.approx(0.3)
    assert steps.steps_in(25.4, 0.05) == 508
    assert steps.step_down(25.4 - 1e-6, 0.05) == pytest.approx(25.35)
    assert steps.step_up(25.4 + 1e-6, 0.05) == pytest.approx(25.45)
    assert steps.steps_in(25.4 - 1e-6, 0.05) == 507
    # What is allowed for is dust: a ten-millionth of a step is already a size of its own.
    assert (steps.steps_in(3 - 1e-7, 1), steps.step_down(3 - 1e-7, 1), steps.step_up(3 + 1e-7, 1)) == (2, 2, 4)


def test_what_is_surely_inside_is_written_in_whole_steps_while_any_are_left() -> None:
    assert steps.surely_less(0.010, 0.0085, 0.001) == pytest.approx(0.001)
    assert steps.surely_less(0.010, 0.0095, 0.001) == pytest.approx(0.0005)
    assert steps.surely_less(0.5, 0, 1) == pytest.approx(0.5)


def test_equal_cuts_stay_short_of_the_size_and_last_cuts_reach_it() -> None:
    assert steps.equal_cut(1.71, 3, 0.025) == pytest.approx(0.275)
    assert steps.equal_cut(0.02, 3, 0.025) == 0.025
    assert steps.finishing_cut(0.31, 2, 0.02) == pytest.approx(0.08)
    assert steps.finishing_cut(0.33, 2, 0.02) == pytest.approx(0.1)


def test_parts_of_a_division_are_read_to_the_nearest() -> None:
    assert steps.nearest_steps(0.0374, 0.01) == 4
    assert steps.nearest_steps(0.0374, 0.01, 2) == 3.5
    assert steps.nearest_steps(0.0376, 0.01, 2) == 4


def test_a_wide_collar_counts_as_the_full_one() -> None:
    assert margins.margin_of_narrow(1.5, 36, 35) == 1.5
    assert margins.margin_of_narrow(1.5, 17.5, 35) == pytest.approx(0.75)


def test_scatter_and_step_add_by_their_squares() -> None:
    root = sqrt(12)
    assert clamping.repeat_scatter(2, 0.003, 0.004 * root) == pytest.approx(0.01)
    assert clamping.repeat_scatter(2, 0, 0.002 * root) == pytest.approx(0.004)
    assert clamping.mean_shift_doubt(2, 0.003, 0.004 * root / sqrt(2), 4) == pytest.approx(0.005)


def test_readings_that_are_many_leave_what_they_do_not_lessen() -> None:
    assert doubts.as_read_once(0.002, 4, 4) == pytest.approx(0.001)
    assert doubts.as_read_once(0.002, 1, 2) == pytest.approx(0.002 * sqrt(0.75))
    assert doubts.without_scatter(0.005, 0.003, 1, 2) == pytest.approx(sqrt(25e-6 - 13.5e-6))
    assert doubts.without_scatter(0.001, 0.003, 1, 1) == 0


def test_a_budget_has_a_part_and_none_below_nought() -> None:
    assert doubts.all_together([0.004]) == pytest.approx(0.004)
    assert doubts.all_together([0, 0]) == 0
    with pytest.raises(OutOfRange, match=r"^number of parts is 0; "):
        doubts.all_together([])
    with pytest.raises(OutOfRange, match=r"^part of the uncertainty is -0.001 mm; "):
        doubts.all_together([0.002, -0.001])


def test_a_factor_below_nought_carries_the_same_doubt() -> None:
    assert budget.carried_uncertainty(0.004, -0.625) == pytest.approx(0.0025)


def test_a_middle_collar_near_one_end_takes_most_of_its_doubt_from_there() -> None:
    # Quarter of the way: 1, 3/4 and 1/4 of the doubt of one collar.
    assert lathe_geometry.bow_doubt(0.004, 30, 90, 270) == pytest.approx(0.004 / sqrt(2) * sqrt(1 + 10 / 16))


def test_a_reading_on_the_tool_side_moves_the_other_way() -> None:
    assert indicator.move_from_reading("traverse on the tool side", 0.01, 300, 30, 270) == pytest.approx(-0.0125)
    assert indicator.move_from_reading("diameter dial", -0.02, 300, 30, 270) == pytest.approx(-0.01)


def test_whole_light_cuts_are_not_one_more_by_their_binary_form() -> None:
    assert rework.light_cuts(24.93, 25.0, 25.02, 0.02) == 2
    assert rework.light_cuts(24.929, 25.0, 25.02, 0.02) == 3
    assert rework.light_cuts(25.01, 25.0, 25.02, 0.02) == 0
