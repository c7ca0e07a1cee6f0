"""Cutting formulas at the edges of their validity."""

import math
from typing import Any

import pytest

from limits import (
    Formula,
    Limit,
    Table,
    above_zero,
    from_zero,
    holds_at_its_edges,
    is_whole,
    rows,
    within,
)
from tailtrue.calc import chip, cut_power, cut_time, cutting, finish, spindle, spindle_band, tool_wear

_FEED, _DIAMETER, _SPEED = above_zero("feed"), above_zero("diameter"), above_zero("spindle speed")
_DRILL, _DRILL_FEED = above_zero("diameter of the drill"), above_zero("feed of the drill")
_SURFACE, _NOSE = above_zero("surface speed"), above_zero("nose radius")
_APPROACH = within("approach angle", 10, 110)
_POINT = within("point angle", 60, 180)
_EXPONENT = within("exponent of tool life", 0.05, 0.6)
_EFFICIENCY = within("efficiency of the drive", 0.3, 1)

_TABLE: Table = {
    cutting.spindle_speed: (
        {"surface_speed_m_min": 30, "diameter_mm": 25},
        {"surface_speed_m_min": _SURFACE, "diameter_mm": _DIAMETER},
    ),
    cutting.surface_speed: (
        {"spindle_speed_per_min": 300, "diameter_mm": 25},
        {"spindle_speed_per_min": _SPEED, "diameter_mm": _DIAMETER},
    ),
    cutting.specific_force: (
        {"kc11_mpa": 1350, "mc": 0.21, "chip_thickness_mm": 0.15},
        {
            "kc11_mpa": above_zero("specific force kc1.1"),
            "mc": within("exponent mc", 0, 1),
            "chip_thickness_mm": within("chip thickness", 0.02, 2.5),
        },
    ),
    cutting.cutting_force: (
        {"kc11_mpa": 1350, "mc": 0.21, "depth_mm": 1, "feed_mm": 0.15},
        {
            "kc11_mpa": above_zero("specific force kc1.1"),
            "mc": within("exponent mc", 0, 1),
            "depth_mm": above_zero("depth of cut"),
            "feed_mm": within("chip thickness", 0.02, 2.5),
        },
    ),
    cutting.cutting_power: (
        {"force_n": 300, "surface_speed_m_min": 30},
        {"force_n": above_zero("cutting force"), "surface_speed_m_min": _SURFACE},
    ),
    cutting.cut_time: (
        {"length_mm": 100, "feed_mm": 0.1, "spindle_speed_per_min": 300},
        {"length_mm": above_zero("length"), "feed_mm": _FEED, "spindle_speed_per_min": _SPEED},
    ),
    cutting.theoretical_peak_height: (
        {"feed_mm": 0.1, "nose_radius_mm": 0.4},
        {
            "feed_mm": Limit("feed", (0, -1, 0.2008), (0.2,)),
            "nose_radius_mm": Limit("", (0, -1, 0.1992), (0.2,)),
        },
    ),
    cutting.passes_for_stock: (
        {"stock_on_diameter_mm": 3, "depth_mm": 0.4},
        {
            "stock_on_diameter_mm": Limit("number of passes is ", (-0.01, 803), (0, 800)),
            "depth_mm": Limit("", (0, -1, 0.00149), (0.0015,)),
        },
    ),
    cutting.removal_rate: (
        {"surface_speed_m_min": 30, "depth_mm": 1, "feed_mm": 0.15},
        {"surface_speed_m_min": _SURFACE, "depth_mm": above_zero("depth of cut"), "feed_mm": _FEED},
    ),
    spindle.choose_speed: (
        {"available": [70, 300], "wanted_per_min": 200, "cap_per_min": 1000},
        {
            "available": Limit("", ([], [0, 300], [70, -1], [70, math.nan]), ([70],)),
            "wanted_per_min": above_zero("wanted speed"),
            "cap_per_min": Limit("", (0, -1, 69), (70,)),
        },
    ),
    spindle.choose_from_range: (
        {
            "low_per_min": 50, "high_per_min": 2000, "step_per_min": 10, "wanted_per_min": 200, "cap_per_min": 1000,
        },
        {
            "low_per_min": Limit("", (0, -1, 1001, 2001), (1000,)),
            "high_per_min": Limit("fastest speed of the lathe is ", (49.9,), (50,)),
            "step_per_min": above_zero("step of speed"),
            "wanted_per_min": above_zero("wanted speed"),
            "cap_per_min": Limit("", (0, -1, 49), (50,)),
        },
    ),
    chip.chip_thickness: ({"feed_mm": 0.2, "approach_deg": 90}, {"feed_mm": _FEED, "approach_deg": _APPROACH}),
    chip.chip_width: (
        {"depth_mm": 1, "approach_deg": 90},
        {"depth_mm": above_zero("depth of cut"), "approach_deg": _APPROACH},
    ),
    chip.force_at_approach: (
        {"kc11_mpa": 1350, "mc": 0.21, "depth_mm": 1, "feed_mm": 0.2, "approach_deg": 60},
        {
            "kc11_mpa": above_zero("specific force kc1.1"),
            "mc": within("exponent mc", 0, 1),
            "depth_mm": above_zero("depth of cut"),
            "feed_mm": _FEED,
            "approach_deg": _APPROACH,
        },
    ),
    chip.rake_factor: (
        {"rake_deg": 10, "reference_rake_deg": 6, "change_per_degree": 0.01},
        {
            "rake_deg": within("rake less that of the tables", -14, 26),
            "reference_rake_deg": within("rake less that of the tables", -10, 30),
            "change_per_degree": within("change of force per degree of rake", 0, 0.03),
        },
    ),
    chip.corrected_force: (
        {"force_n": 300, "factors": [1.2]},
        {
            "force_n": above_zero("cutting force"),
            "factors": Limit("correction of the cutting force is ", ([0.498], [1.2, 2.01]), ([], [0.5], [1.2, 2])),
        },
    ),
    chip.force_band: (
        {
            "kc11_low_mpa": 1350, "mc_low": 0.21, "kc11_high_mpa": 1990, "mc_high": 0.26, "depth_mm": 1, "feed_mm": 0.2,
            "factors": [1.2], "ploughing_factor": 1.5, "ploughing_below_mm": 0.05,
        },
        {
            "kc11_low_mpa": above_zero("specific force kc1.1"),
            "kc11_high_mpa": above_zero("specific force kc1.1"),
            "mc_low": within("exponent mc", 0, 1),
            "mc_high": within("exponent mc", 0, 1),
            "depth_mm": above_zero("depth of cut"),
            "feed_mm": within("chip thickness", 0.02, 2.5),
            "factors": Limit("correction that raises the limit is ", ([0.996], [1.2, 0.9]), ([], [1], [2])),
            "ploughing_factor": within("ploughing factor", 1, 2),
            "ploughing_below_mm": above_zero("chip thickness below which the edge ploughs"),
        },
    ),
    chip.passive_force: (
        {"cutting_force_n": 300, "depth_mm": 1, "nose_radius_mm": 0.4, "light_share": 1, "deep_share": 0.5},
        {
            "cutting_force_n": above_zero("cutting force"),
            "depth_mm": above_zero("depth of cut"),
            "nose_radius_mm": _NOSE,
            "light_share": within("share in a light cut", 0.5, 1.5),
            "deep_share": above_zero("share in a deep cut"),
        },
    ),
    cut_power.power_from_constant: (
        {
            "kp_mpa": 1690, "surface_speed_m_min": 107, "depth_mm": 2.54, "feed_mm": 0.4, "feed_factor": 0.94,
            "wear_factor": 1.3,
        },
        {
            "kp_mpa": above_zero("power constant Kp"),
            "surface_speed_m_min": _SURFACE,
            "depth_mm": above_zero("depth of cut"),
            "feed_mm": _FEED,
            "feed_factor": within("feed factor C", 0.5, 2),
            "wear_factor": within("wear factor W", 1, 2),
        },
    ),
    cut_power.motor_power: (
        {"power_w": 300, "efficiency": 0.7},
        {"power_w": above_zero("power at the tool"), "efficiency": _EFFICIENCY},
    ),
    cut_power.power_at_tool: (
        {"motor_w": 750, "efficiency": 0.7, "use_share": 0.8},
        {
            "motor_w": above_zero("power of the motor"),
            "efficiency": _EFFICIENCY,
            "use_share": within("share of the power that is used", 0.1, 1),
        },
    ),
    cut_power.depth_for_power: (
        {"kc11_mpa": 1350, "mc": 0.21, "feed_mm": 0.15, "surface_speed_m_min": 30, "power_w": 150},
        {
            "kc11_mpa": above_zero("specific force kc1.1"),
            "mc": within("exponent mc", 0, 1),
            "feed_mm": within("chip thickness", 0.02, 2.5),
            "surface_speed_m_min": _SURFACE,
            "power_w": above_zero("power at the tool"),
        },
    ),
    cut_time.pass_time: (
        {"length_mm": 100, "approach_mm": 3, "overrun_mm": 2, "feed_mm": 0.1, "spindle_speed_per_min": 300},
        {
            "length_mm": above_zero("length"),
            "approach_mm": from_zero("approach"),
            "overrun_mm": from_zero("run-out"),
            "feed_mm": _FEED,
            "spindle_speed_per_min": _SPEED,
        },
    ),
    cut_time.passes_time: (
        {"pass_s": 210, "travel_mm": 105, "return_mm_s": 10, "passes": 3, "reset_s": 20},
        {
            "pass_s": above_zero("time of a cut"),
            "travel_mm": above_zero("way back"),
            "return_mm_s": above_zero("speed on the way back"),
            "passes": Limit("number of passes is ", (0, -1), (1,)),
            "reset_s": from_zero("time to set the dial"),
        },
    ),
    cut_time.facing_pass_time: (
        {
            "outer_mm": 75, "inner_mm": 25, "approach_mm": 2, "overrun_mm": 1, "feed_mm": 0.1,
            "spindle_speed_per_min": 400,
        },
        {
            "outer_mm": above_zero("diameter of the face"),
            "inner_mm": from_zero("hole in the face"),
            "approach_mm": from_zero("approach"),
            "overrun_mm": from_zero("run-out"),
            "feed_mm": _FEED,
            "spindle_speed_per_min": _SPEED,
        },
    ),
    cut_time.drill_travel: (
        {"depth_mm": 60, "diameter_mm": 10, "overrun_mm": 2, "point_angle_deg": 118},
        {
            "depth_mm": above_zero("depth of the hole"),
            "diameter_mm": _DRILL,
            "overrun_mm": from_zero("run-out"),
            "point_angle_deg": _POINT,
        },
    ),
    cut_time.drilling_time: (
        {
            "depth_mm": 60, "diameter_mm": 10, "feed_mm": 0.2, "spindle_speed_per_min": 900, "overrun_mm": 2,
            "point_angle_deg": 118,
        },
        {
            "depth_mm": above_zero("depth of the hole"),
            "diameter_mm": _DRILL,
            "feed_mm": _FEED,
            "spindle_speed_per_min": _SPEED,
            "overrun_mm": from_zero("run-out"),
            "point_angle_deg": _POINT,
        },
    ),
    cut_time.feed_for_time: (
        {"length_mm": 100, "time_s": 60, "spindle_speed_per_min": 1000},
        {"length_mm": above_zero("length"), "time_s": above_zero("time"), "spindle_speed_per_min": _SPEED},
    ),
    cut_time.drill_removal_rate: (
        {"diameter_mm": 23, "feed_mm": 0.15, "spindle_speed_per_min": 190, "pilot_diameter_mm": 14},
        {
            "diameter_mm": _DRILL,
            "feed_mm": _FEED,
            "spindle_speed_per_min": _SPEED,
            "pilot_diameter_mm": from_zero("pilot"),
        },
    ),
    finish.roughness_average: (
        {"feed_mm": 0.1, "nose_radius_mm": 0.4},
        {
            "feed_mm": Limit("feed", (0, -1, 0.2008), (0.2,)),
            "nose_radius_mm": Limit("", (0, -1, 0.1992), (0.2,)),
        },
    ),
    finish.expected_roughness: (
        {"feed_mm": 0.1, "nose_radius_mm": 0.4, "low_factor": 1.5, "high_factor": 3},
        {
            "feed_mm": Limit("feed", (0, -1, 0.2008), (0.2,)),
            "nose_radius_mm": Limit("", (0, -1, 0.1992), (0.2,)),
            "low_factor": Limit("factor of a good cut is ", (0.996,), (1,)),
            "high_factor": Limit("factor of a poor cut is ", (1.49,), (1.5,)),
        },
    ),
    finish.feed_for_peak_height: (
        {"peak_height_mm": 0.005, "nose_radius_mm": 0.4},
        {
            "peak_height_mm": Limit("", (0, -1, 0.0126), (0.01249,)),
            "nose_radius_mm": above_zero("nose radius"),
        },
    ),
    tool_wear.cutting_path: (
        {"diameter_mm": 70, "length_mm": 15, "feed_mm": 0.1},
        {"diameter_mm": _DIAMETER, "length_mm": above_zero("length of the cut"), "feed_mm": _FEED},
    ),
    tool_wear.edge_wear: (
        {"path_km": 0.03, "wear_um_per_km": 20},
        {"path_km": from_zero("way of the edge"), "wear_um_per_km": within("wear of the edge", 0, 500)},
    ),
    tool_wear.taper_from_wear: (
        {"diameter_mm": 70, "length_mm": 15, "feed_mm": 0.1, "wear_um_per_km": 20},
        {
            "diameter_mm": _DIAMETER,
            "length_mm": above_zero("length of the cut"),
            "feed_mm": _FEED,
            "wear_um_per_km": within("wear of the edge", 0, 500),
        },
    ),
    tool_wear.tool_life: (
        {"surface_speed_m_min": 30, "constant_m_min": 70, "exponent": 0.3},
        {
            "surface_speed_m_min": _SURFACE,
            "constant_m_min": above_zero("speed of one minute's life"),
            "exponent": Limit("exponent of tool life is ", (0.0498, 0.602), (0.6,)),
        },
    ),
    tool_wear.speed_for_life: (
        {"life_min": 60, "constant_m_min": 70, "exponent": 0.125},
        {
            "life_min": within("life of the edge", 1, 10_000),
            "constant_m_min": above_zero("speed of one minute's life"),
            "exponent": _EXPONENT,
        },
    ),
    tool_wear.life_ratio: (
        {"speed_ratio": 0.8, "exponent": 0.25},
        {"speed_ratio": within("new speed as a share of the old", 0.2, 2), "exponent": _EXPONENT},
    ),
    spindle_band.speed_band: (
        {"low_m_min": 24, "high_m_min": 33, "diameter_mm": 25, "factor": 1},
        {
            "low_m_min": Limit("", (0, -1, 33.01), (33,)),
            "high_m_min": Limit("upper surface speed is ", (23.9,), (24,)),
            "diameter_mm": _DIAMETER,
            "factor": within("factor on the speed", 0.1, 1.5),
        },
    ),
    spindle_band.speed_by_head: (
        {"surface_speed_m_min": 30, "diameter_mm": 25},
        {"surface_speed_m_min": _SURFACE, "diameter_mm": _DIAMETER},
    ),
    spindle_band.speed_by_head_metric: (
        {"surface_speed_m_min": 30, "diameter_mm": 25},
        {"surface_speed_m_min": _SURFACE, "diameter_mm": _DIAMETER},
    ),
    spindle_band.step_up: (
        {
            "available": [70, 300, 460], "chosen_per_min": 300, "cap_per_min": 1800, "diameter_mm": 25, "high_m_min": 33,
            "overrun": 1.05,
        },
        {
            "available": Limit("", ([], [70, 460], [0, 300], [300, math.nan]), ([300],)),
            "chosen_per_min": Limit("the chosen speed is ", (299, 0), (70, 460)),
            "cap_per_min": Limit("", (0, -1, 299), (300,)),
            "diameter_mm": _DIAMETER,
            "high_m_min": above_zero("upper surface speed"),
            "overrun": within("overrun of the upper surface speed", 1, 1.1),
        },
    ),
    spindle_band.step_down: (
        {"available": [70, 300, 460], "chosen_per_min": 300},
        {
            "available": Limit("", ([], [70, 460], [0, 300], [300]), ([299, 300],)),
            "chosen_per_min": Limit("the", (70, 299), (460,)),
        },
    ),
}  # fmt: skip


def test_every_formula_and_every_argument_has_its_limits() -> None:
    is_whole(_TABLE, chip, cut_power, cut_time, cutting, finish, spindle, spindle_band, tool_wear)


@pytest.mark.parametrize(("formula", "sound", "limits"), rows(_TABLE))
def test_a_formula_answers_on_its_edges_and_refuses_past_them(
    formula: Formula, sound: dict[str, Any], limits: dict[str, Limit]
) -> None:
    holds_at_its_edges(formula, sound, limits)
