"""Formulas of the alignment: where each stops; clamping, wear in both orders, rows of causes."""

import csv
import importlib
import json
import math
from collections.abc import Callable
from pathlib import Path
from statistics import mean, stdev
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spoilt import each_is_refused
from tailtrue.calc import (
    carriage_path,
    causes,
    clamping,
    cut_order,
    indicator,
    lathe_geometry,
    setover,
    sides,
)
from tailtrue.calc.validity import OutOfRange

_LAYOUT = {"span_mm": 300, "first_station_mm": 30, "second_station_mm": 270}
_FIGURES = Path(__file__).parents[1] / "published" / "data" / "alignment_geometry.csv"


def _spoilt() -> dict[str, list[dict[str, Any]]]:
    found = {}
    with _FIGURES.open(newline="", encoding="utf-8") as lines:
        for row in csv.DictReader(lines):
            for name, value in (sound := json.loads(row["arguments"])).items():
                if not isinstance(value, bool | str | list | dict):
                    found[row["function"], name] = sound
    calls: dict[str, list[dict[str, Any]]] = {}
    for (function, name), sound in found.items():
        calls.setdefault(function, []).extend(sound | {name: bad} for bad in (math.nan, math.inf, -math.inf))
    return calls


_SPOILT = _spoilt()


@pytest.mark.parametrize("function", _SPOILT)
def test_what_is_no_number_is_refused(function: str) -> None:
    module, name = function.split(".")
    each_is_refused(getattr(importlib.import_module(f"tailtrue.calc.{module}"), name), _SPOILT[function])


_BOW = {
    "headstock_diameter_mm": 70,
    "middle_diameter_mm": 70,
    "tailstock_diameter_mm": 70,
    "first_station_mm": 30,
    "middle_station_mm": 150,
    "second_station_mm": 270,
}
_RADIUS = {
    "cross_slide_mm": 35,
    "offset_to_tool_mm": 0,
    "tool_height_mm": 0,
    "height_error_mm": 0,
    "station_mm": 30,
    "span_mm": 300,
}
_HEIGHT = {"difference_mm": 0.001, "collar_diameter_mm": 70, **_LAYOUT}
_CHUCKED = {
    "path_lean_mm_per_mm": 0,
    "headstock_yaw_mm_per_mm": 0,
    "first_station_mm": 20,
    "second_station_mm": 170,
    "tool_side": "front",
}
_CENTRES = {"path_lean_mm_per_mm": 0, "tailstock_offset_mm": 0, **_LAYOUT, "tool_side": "front"}
_SWEPT = {
    "chucked_difference_mm": 0.01,
    "first_station_mm": 20,
    "second_station_mm": 170,
    "span_mm": 300,
    "tool_side": "front",
}
_WEAR = {"front_wear_mm": 0.02, "rear_wear_mm": 0, "centre_height_mm": 130, "way_spacing_mm": 150}
_UNTWIST = {"tailstock_offset_mm": 0, "lean_taken_out_mm_per_mm": 0, "span_mm": 300, "overhang_mm": 80}
_SWEEP = {"front_mm": 0, "top_mm": 0, "rear_mm": 0, "bottom_mm": 0}
_MOST_HEIGHT_DIFFERENCE = 0.01 * 35 * (270**2 - 30**2) / 300**2
_STEEP_RULE = 2 * math.tan(math.radians(4))
_STEEP = 2 * math.tan(math.radians(15))


@pytest.mark.parametrize(
    ("formula", "sound", "name", "last_good", "first_bad", "message"),
    [
        (lathe_geometry.radius_cut, _RADIUS, "cross_slide_mm", 1e-9, 0, "distance of the tool from the axis is 0 mm"),
        (lathe_geometry.radius_cut, _RADIUS, "span_mm", 30, 0, "span is 0 mm"),
        (lathe_geometry.radius_cut, _RADIUS, "span_mm", 30, 29.9, "station is 30 mm"),
        (lathe_geometry.radius_cut, _RADIUS, "offset_to_tool_mm", 30, 30.01, "offset as a share of the span"),
        (lathe_geometry.radius_cut, _RADIUS, "offset_to_tool_mm", -30, -30.01, "offset as a share of the span"),
        (lathe_geometry.radius_cut, _RADIUS, "height_error_mm", 30, 30.01, "height error as a share of the span"),
        (lathe_geometry.radius_cut, _RADIUS, "height_error_mm", -30, -30.01, "height error as a share of the span"),
        (lathe_geometry.radius_cut, _RADIUS, "station_mm", 0, -0.01, "station is -0.01 mm"),
        (lathe_geometry.radius_cut, _RADIUS, "station_mm", 300, 300.01, "station is 300.01 mm"),
        (lathe_geometry.height_for_difference, _HEIGHT, "difference_mm", 0, -1e-9, "difference of the collars"),
        (
            lathe_geometry.height_for_difference,
            _HEIGHT,
            "difference_mm",
            _MOST_HEIGHT_DIFFERENCE,
            _MOST_HEIGHT_DIFFERENCE * 1.001,
            "difference of the collars",
        ),
        (lathe_geometry.height_for_difference, _HEIGHT, "collar_diameter_mm", 1, 0, "diameter of the collars is 0 mm"),
        (lathe_geometry.height_for_difference, _HEIGHT, "span_mm", 270, 269.9, "station of the tailstock collar"),
        (lathe_geometry.height_for_difference, _HEIGHT, "first_station_mm", 0, -0.1, "station of the headstock collar"),
        (lathe_geometry.height_for_difference, _HEIGHT, "second_station_mm", 70, 30, "distance from headstock collar"),
        (lathe_geometry.quill_shift, {"extension_change_mm": 50}, "slope_mm_per_mm", 0.01, 0.0101, "slope of the quill"),
        (lathe_geometry.quill_shift, {"extension_change_mm": 50}, "slope_mm_per_mm", -0.01, -0.0101, "slope of the quill"),
        (lathe_geometry.third_collar_bow, _BOW, "headstock_diameter_mm", 1, 0, "diameter of the headstock collar is 0 mm"),
        (lathe_geometry.third_collar_bow, _BOW, "middle_diameter_mm", 1, 0, "diameter of the third collar is 0 mm"),
        (lathe_geometry.third_collar_bow, _BOW, "tailstock_diameter_mm", 1, 0, "diameter of the tailstock collar is 0 mm"),
        (lathe_geometry.third_collar_bow, _BOW, "first_station_mm", 0, -1, "station of the headstock collar is -1 mm"),
        (lathe_geometry.third_collar_bow, _BOW, "middle_station_mm", 31, 30, "distance from headstock collar to third"),
        (lathe_geometry.third_collar_bow, _BOW, "middle_station_mm", 269, 270, "distance from third collar to tailstock"),
        (carriage_path.path_lean, {"distance_mm": 300, "centre_height_mm": 150}, "level_change_mm_per_m", 10, 10.1, "change of the level"),
        (carriage_path.path_lean, {"distance_mm": 300, "centre_height_mm": 150}, "level_change_mm_per_m", -10, -10.1, "change of the level"),
        (carriage_path.path_lean, {"level_change_mm_per_m": 1, "centre_height_mm": 150}, "distance_mm", 1, 0, "distance along the bed"),
        (carriage_path.path_lean, {"level_change_mm_per_m": 1, "distance_mm": 300}, "centre_height_mm", 1, 0, "height of the centres"),
        (carriage_path.wear_shift, _WEAR, "front_wear_mm", 0, -0.001, "wear of the front way is -0.001 mm"),
        (carriage_path.wear_shift, _WEAR, "rear_wear_mm", 0, -0.001, "wear of the rear way is -0.001 mm"),
        (carriage_path.wear_shift, _WEAR, "front_wear_mm", 1.5, 1.51, "difference of the wear as a share"),
        (carriage_path.wear_shift, _WEAR, "rear_wear_mm", 1.52, 1.53, "difference of the wear as a share"),
        (carriage_path.wear_shift, _WEAR, "centre_height_mm", 1, 0, "height of the centres is 0 mm"),
        (carriage_path.wear_shift, _WEAR, "way_spacing_mm", 2, 0, "distance of the ways is 0 mm"),
        (carriage_path.chucked_difference, _CHUCKED, "path_lean_mm_per_mm", 0.01, 0.0101, "lean of the path"),
        (carriage_path.chucked_difference, _CHUCKED, "path_lean_mm_per_mm", -0.01, -0.0101, "lean of the path"),
        (carriage_path.chucked_difference, _CHUCKED, "headstock_yaw_mm_per_mm", 0.01, 0.0101, "yaw of the headstock"),
        (carriage_path.chucked_difference, _CHUCKED, "second_station_mm", 21, 20, "distance from the collar at the chuck"),
        (carriage_path.chucked_difference, _CHUCKED, "tool_side", "rear", "back", "side of the tool is 'back'"),
        (carriage_path.between_centres_difference, _CENTRES, "path_lean_mm_per_mm", 0.01, 0.0101, "lean of the path"),
        (carriage_path.between_centres_difference, _CENTRES, "tailstock_offset_mm", 6, 6.01, "move as a share of the span"),
        (carriage_path.between_centres_difference, _CENTRES, "tool_side", "rear", "", "side of the tool is ''"),
        (carriage_path.offset_from_path, {"tailstock_offset_mm": 0, "span_mm": 300}, "path_lean_mm_per_mm", 0.01, 0.0101, "lean"),
        (carriage_path.offset_from_path, {"tailstock_offset_mm": 0, "path_lean_mm_per_mm": 0}, "span_mm", 1, 0, "span is 0 mm"),
        (
            carriage_path.offset_from_spindle_axis,
            {"tailstock_offset_mm": 0, "span_mm": 300},
            "headstock_yaw_mm_per_mm",
            0.01,
            0.0101,
            "yaw of the headstock",
        ),
        (carriage_path.offset_from_spindle_axis, {"tailstock_offset_mm": 0, "headstock_yaw_mm_per_mm": 0}, "span_mm", 1, 0, "span is"),
        (carriage_path.collars_less_sweep, _SWEPT, "chucked_difference_mm", 3, 3.01, "slope that the chucked bar shows"),
        (carriage_path.collars_less_sweep, _SWEPT, "second_station_mm", 21, 20, "distance from the collar at the chuck"),
        (carriage_path.collars_less_sweep, _SWEPT, "span_mm", 1, 0, "span is 0 mm"),
        (carriage_path.collars_less_sweep, _SWEPT, "tool_side", "rear", "Front", "side of the tool is 'Front'"),
        (carriage_path.offset_after_untwisting, _UNTWIST, "lean_taken_out_mm_per_mm", 0.01, 0.0101, "lean of the path"),
        (carriage_path.offset_after_untwisting, _UNTWIST, "span_mm", 1, 0, "span is 0 mm"),
        (carriage_path.offset_after_untwisting, _UNTWIST, "overhang_mm", 0, -1, "overhang of the centre is -1 mm"),
        (lathe_geometry.offset_tolerance, {"tolerance_length_mm": 1, "span_mm": 1}, "tolerance_mm", 1, 0, "tolerance is 0 mm"),
        (lathe_geometry.offset_tolerance, {"tolerance_mm": 1, "span_mm": 1}, "tolerance_length_mm", 1, 0, "length of the"),
        (lathe_geometry.offset_tolerance, {"tolerance_mm": 1, "tolerance_length_mm": 1}, "span_mm", 1, 0, "span is 0 mm"),
        (setover.taper_per_foot, {}, "inches_per_foot", 0.1, 0, "taper per foot is 0 in"),
        (setover.taper_from_diameters, {"small_diameter_mm": 0, "length_mm": 9}, "large_diameter_mm", 1, 0, "large diameter"),
        (setover.taper_from_diameters, {"large_diameter_mm": 9, "length_mm": 9}, "small_diameter_mm", 9, 9.1, "small diameter"),
        (setover.taper_from_diameters, {"large_diameter_mm": 9, "length_mm": 9}, "small_diameter_mm", 0, -1, "small diameter"),
        (setover.taper_from_diameters, {"large_diameter_mm": 9, "small_diameter_mm": 8}, "length_mm", 1, 0, "length of the taper"),
        (setover.taper_from_half_angle, {}, "half_angle_deg", 15, 15.01, "half angle of the taper is 15.01 degrees"),
        (setover.taper_from_half_angle, {}, "half_angle_deg", 0, -0.01, "half angle of the taper"),
        (setover.half_angle_of_taper, {}, "taper_mm_per_mm", _STEEP * (1 - 1e-9), _STEEP * 1.001, "half angle of the taper"),
        (setover.half_angle_of_taper, {}, "taper_mm_per_mm", 0, -0.001, "taper is -0.001 mm/mm"),
        (setover.setover_by_rule, {"span_mm": 300}, "taper_mm_per_mm", _STEEP_RULE * (1 - 1e-9), _STEEP_RULE * 1.001, "half angle"),
        (setover.setover_by_rule, {"taper_mm_per_mm": 0.05}, "span_mm", 1, 0, "span is 0 mm"),
        (setover.setover_exact, {"bar_span_mm": 300}, "taper_mm_per_mm", _STEEP * (1 - 1e-9), _STEEP * 1.001, "half angle"),
        (setover.setover_exact, {"taper_mm_per_mm": 0.05}, "bar_span_mm", 1, 0, "span is 0 mm"),
        (setover.taper_from_setover, {"bar_span_mm": 300}, "setover_mm", 77.6, 77.7, "half angle of the taper"),
        (setover.taper_from_setover, {"bar_span_mm": 300}, "setover_mm", 0, -0.1, "set-over is -0.1 mm"),
        (setover.taper_from_setover, {"bar_span_mm": 300}, "setover_mm", 77, 150.1, "set-over is 150.1 mm"),
        (setover.taper_from_setover, {"setover_mm": 0}, "bar_span_mm", 1, 0, "span is 0 mm"),
        (setover.working_span, {"headstock_depth_mm": 3, "tailstock_depth_mm": 4}, "overall_length_mm", 7.1, 7, "length between"),
        (setover.working_span, {"headstock_depth_mm": 0, "tailstock_depth_mm": 0}, "overall_length_mm", 1, 0, "length of the bar"),
        (setover.working_span, {"overall_length_mm": 9, "tailstock_depth_mm": 0}, "headstock_depth_mm", 0, -1, "depth of the headstock"),
        (setover.working_span, {"overall_length_mm": 9, "headstock_depth_mm": 0}, "tailstock_depth_mm", 0, -1, "depth of the tailstock"),
        (setover.steepest_taper, {"travel_mm": 9, "greatest_share": 0.02}, "span_mm", 1, 0, "span is 0 mm"),
        (setover.steepest_taper, {"span_mm": 300, "greatest_share": 0.02}, "travel_mm", 0, -1, "travel of the tailstock across"),
        (setover.steepest_taper, {"span_mm": 300, "travel_mm": 9}, "greatest_share", 0.07, 0.0701, "largest set-over as a share"),
        (setover.steepest_taper, {"span_mm": 300, "travel_mm": 9}, "greatest_share", 0, -0.001, "largest set-over as a share"),
        (setover.setover_toward_tool, {"small_end": "headstock"}, "setover_mm", 0, -1, "set-over is -1 mm"),
        (setover.setover_toward_tool, {"setover_mm": 1}, "small_end", "headstock", "left", "small end is 'left'; it must be tailstock"),
        (indicator.move_factor, {"place": "quill", **_LAYOUT}, "place", "radius dial", "dial", "place of the reading is 'dial'"),
        (indicator.move_factor, {"place": "quill", **_LAYOUT}, "span_mm", 270, 269, "station of the tailstock collar"),
        (indicator.move_factor, {"place": "quill", **_LAYOUT}, "first_station_mm", 0, -1, "station of the headstock collar"),
        (indicator.move_factor, {"place": "quill", **_LAYOUT}, "second_station_mm", 31, 30, "distance from headstock collar"),
        (indicator.move_factor, {"place": "quill", "first_station_mm": 0, "second_station_mm": 1}, "span_mm", 1, 0, "span is 0"),
        (indicator.sweep, _SWEEP, "sag_mm", 0, -0.001, "sag of the indicator is -0.001 mm"),
        (indicator.sweep, _SWEEP, "sag_mm", 1, 1.001, "sag of the indicator is 1.001 mm"),
        (indicator.screw_angle, {"pitch_mm": 1}, "move_mm", 0, -0.1, "move is -0.1 mm"),
        (indicator.screw_angle, {"move_mm": 1}, "pitch_mm", 1, 0, "pitch of the screw is 0 mm"),
        (clamping.clamping_scatter, {"released_mm": [0, 0]}, "clamped_mm", [0, 1], [0, 1, 2], "2 readings released and 3 clamped"),
        (clamping.achieved_share, {"after_mm": 0}, "before_mm", 1e-6, 0, "difference before is 0 mm; there was nothing"),
        (sides.toward_operator, {"toward_tool_mm": 1}, "tool_side", "front", "unknown", "side of the tool is 'unknown'"),
        (sides.toward_tool, {"toward_operator_mm": 1}, "tool_side", "front", "unknown", "side of the tool is 'unknown'"),
        (causes.chucked_row, {"station_mm": 20}, "tool_side", "rear", "left", "side of the tool is 'left'; it must be front or"),
        (causes.between_centres_row, {"span_mm": 300, "tool_side": "rear"}, "station_mm", 300, 300.1, "station is 300.1 mm"),
        (causes.between_centres_row, {"span_mm": 300, "tool_side": "rear"}, "station_mm", 0, -0.1, "station is -0.1 mm"),
        (causes.between_centres_row, {"station_mm": 0, "tool_side": "rear"}, "span_mm", 1, 0, "span is 0 mm"),
        (causes.traverse_row, {"span_mm": 300, "tool_side": "rear"}, "station_mm", 300, 300.1, "station is 300.1 mm"),
        (causes.level_row, {"centre_height_mm": 150}, "distance_mm", 1, 0, "distance along the bed is 0 mm"),
        (causes.level_row, {"distance_mm": 150}, "centre_height_mm", 1, 0, "height of the centres is 0 mm"),
        (causes.sweep_row, {}, "span_mm", 1, 0, "span is 0 mm"),
        (causes.sweep_height_row, {}, "span_mm", 1, 0, "span is 0 mm"),
        (causes.riding_the_bed, {"row": causes.sweep_row(300), "span_mm": 300}, "overhang_mm", 0, -1, "overhang of the centre"),
        (causes.riding_the_bed, {"row": causes.sweep_row(300), "overhang_mm": 9}, "span_mm", 1, 0, "span is 0 mm"),
        (
            causes.riding_the_bed,
            {"span_mm": 300, "overhang_mm": 80},
            "row",
            causes.sweep_row(300),
            causes.level_row(500, 150),
            "row has no tailstock offset",
        ),
        (causes.wear_term, {}, "collars_before", 0, -1, "number of collars cut before is -1"),
        (causes.bed_bow_term, {"station_mm": 9, "from_mm": 0, "tool_side": "front"}, "to_mm", 1, 0, "length of the bowed stretch"),
        (
            causes.tool_height_term,
            {"collar_diameter_mm": 70, "station_mm": 30, "span_mm": 300},
            "tool_height_mm",
            3.5,
            3.51,
            "height of the tool as a share of the radius",
        ),
        (
            causes.tool_height_term,
            {"collar_diameter_mm": 70, "station_mm": 30, "span_mm": 300},
            "tool_height_mm",
            -3.5,
            -3.51,
            "height of the tool as a share of the radius",
        ),
        (
            causes.tool_height_term,
            {"tool_height_mm": 0, "station_mm": 30, "span_mm": 300},
            "collar_diameter_mm",
            1,
            0,
            "diameter of the collar is 0 mm",
        ),
    ],
)  # fmt: skip
def test_a_formula_stops_at_its_bound(
    formula: Callable[..., Any], sound: dict[str, Any], name: str, last_good: Any, first_bad: Any, message: str
) -> None:
    formula(**sound | {name: last_good})
    with pytest.raises(OutOfRange) as refused:
        formula(**sound | {name: first_bad})
    assert str(refused.value).startswith(message)


def test_a_scatter_needs_two_cycles() -> None:
    assert clamping.clamping_scatter([0, 0], [0.01, 0.01]).degrees_of_freedom == 1
    with pytest.raises(OutOfRange, match=r"^cycles of clamping are 1; a scatter needs 2 or more$"):
        clamping.clamping_scatter([0], [0.01])
    for released, clamped in (([0, math.nan], [0, 0]), ([0, 0], [0, math.inf])):
        with pytest.raises(OutOfRange, match="reading of the indicator"):
            clamping.clamping_scatter(released, clamped)


@given(st.lists(st.tuples(st.floats(-0.1, 0.1), st.floats(-0.1, 0.1)), min_size=2, max_size=10))
def test_scatter_agrees_with_the_statistics_of_the_standard_library(cycles: list[tuple[float, float]]) -> None:
    released, clamped = map(list, zip(*cycles, strict=True))
    shifts = [after - before for before, after in cycles]
    found = clamping.clamping_scatter(released, clamped)
    assert found.mean_shift_mm == pytest.approx(mean(shifts), abs=1e-12)
    assert found.shift_deviation_mm == pytest.approx(stdev(shifts), abs=1e-9)
    assert found.clamped_deviation_mm == pytest.approx(stdev(clamped), abs=1e-9)
    assert found.degrees_of_freedom == len(cycles) - 1


def test_aiming_off_by_the_shift_ends_on_the_mark() -> None:
    assert clamping.aim_before_clamping(0.015, 0.004) + 0.004 == pytest.approx(0.015)
    assert clamping.aim_before_clamping(-0.015, 0.004) + 0.004 == pytest.approx(-0.015)


@pytest.mark.parametrize(("after", "share"), [(0.0, 1), (0.0048, 0.8), (0.024, 0), (0.048, -1), (-0.012, 1.5)])
def test_share_of_a_round(after: float, share: float) -> None:
    assert clamping.achieved_share(0.024, after) == pytest.approx(share)
    assert clamping.achieved_share(-0.024, -after) == pytest.approx(share)


@given(true=st.floats(-0.1, 0.1), wear=st.floats(0, 0.01))
def test_wear_cancels_in_both_orders(true: float, wear: float) -> None:
    found = cut_order.from_both_orders(true + wear, true - wear)
    assert found == pytest.approx((true, wear), abs=1e-12)


@pytest.mark.parametrize(
    ("station", "share"),
    [(-1, 0), (49, 0), (50, 0), (75, 0.4375), (100, 0.75), (150, 1), (200, 0.75), (250, 0), (260, 0)],
)
def test_bow_is_a_hump_between_its_ends_and_nothing_outside(station: float, share: float) -> None:
    assert causes.bed_bow_term(station, 50, 250, "front") == pytest.approx({causes.LOCAL_WEAR: 2 * share})
    assert causes.bed_bow_term(station, 50, 250, "rear") == pytest.approx({causes.LOCAL_WEAR: -2 * share})


def test_rows_name_their_own_setting() -> None:
    assert "setting chucked" in causes.chucked_row(20, "front")
    assert "setting first" in causes.chucked_row(20, "front", "first")
    assert "setting between centres" in causes.between_centres_row(20, 300, "front")
    assert "setting traverse" in causes.traverse_row(20, 300, "front")
    assert "setting chucked traverse" in causes.chucked_traverse_row(20, "front")
    assert causes.traverse_row(20, 300, "front") == causes.traverse_row(20, 300, "front", swapped=False)


def test_riding_keeps_every_other_factor() -> None:
    row = {causes.TAILSTOCK_OFFSET: 2.0, causes.HEADSTOCK_YAW: 5.0}
    assert causes.riding_the_bed(row, 300, 80) == {
        causes.HEADSTOCK_YAW: 5.0,
        causes.TAILSTOCK_ON_BED: 2.0,
        causes.PATH_LEAN: 760.0,
    }
    assert row == {causes.TAILSTOCK_OFFSET: 2.0, causes.HEADSTOCK_YAW: 5.0}
