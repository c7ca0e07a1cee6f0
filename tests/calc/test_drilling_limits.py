"""Drilling formulas at the edges of their validity."""

import math
from typing import Any

import pytest

from limits import (
    Formula,
    Limit,
    Table,
    above_zero,
    above_zero_to,
    from_zero,
    holds_at_its_edges,
    is_whole,
    rows,
    within,
)
from tailtrue.calc import drill_demand, drill_ladder, drill_models, drilled_hole, drilling, morse_taper

_FEED, _DIAMETER, _SPEED = above_zero("feed"), above_zero("diameter"), above_zero("spindle speed")
_DRILL, _DRILL_FEED = above_zero("diameter of the drill"), above_zero("feed of the drill")
_POINT = within("point angle", 60, 180)
_SHAW_DRILL = within("diameter of the drill", 1.6, 50)
_SHAW_FEED = within("feed of the drill", 0.01, 1.25)
_RATIOS = {"least_ratio": 0.18, "most_ratio": 0.5, "step_most_ratio": 2.5, "step_least_ratio": 1.1}
_RATIO_LIMITS = {
    "least_ratio": within("least pilot as a share of the drill", 0.03, 0.5),
    "most_ratio": within("widest pilot as a share of the drill", 0.18, 0.9),
    "step_most_ratio": within("largest step from drill to drill", 1.1, 6),
    "step_least_ratio": Limit("", (1.046, 2.51), (1.05, 2.5)),
}

_K = above_zero("material factor K")

_TABLE: Table = {
    drilling.point_length: ({"diameter_mm": 10, "point_angle_deg": 118}, {"diameter_mm": _DRILL, "point_angle_deg": _POINT}),
    drilling.least_pilot: (
        {"diameter_mm": 10, "chisel_ratio": 0.18},
        {"diameter_mm": _DRILL, "chisel_ratio": within("chisel edge as a share of the diameter", 0, 0.5)},
    ),
    drilling.thrust_shaw_oxford: (
        {
            "kd": 18000, "feed_mm": 0.1, "diameter_mm": 10, "pilot_ratio": 0.3, "wear_factor": 1.3, "chisel_ratio": 0.18,
            "thrust_factor": 1.355, "chisel_thrust_factor": 0.03,
        },
        {
            "kd": above_zero("drilling constant Kd"),
            "feed_mm": _SHAW_FEED,
            "diameter_mm": _SHAW_DRILL,
            "pilot_ratio": Limit("the pilot is ", (0.179, 1, -0.1, 0.18 - 1e-7), (0, 0.18, 0.999)),
            "wear_factor": within("wear factor", 1, 2),
            "chisel_ratio": Limit("", (-0.01, 0.301), (0, 0.3)),
            "thrust_factor": Limit("thrust factor B is ", (0.996,), (1,)),
            "chisel_thrust_factor": from_zero("thrust factor J"),
        },
    ),
    drilling.torque_shaw_oxford: (
        {
            "kd": 18000, "feed_mm": 0.1, "diameter_mm": 10, "pilot_ratio": 0.3, "wear_factor": 1.3, "chisel_ratio": 0.18,
            "torque_factor": 1.085,
        },
        {
            "kd": above_zero("drilling constant Kd"),
            "feed_mm": _SHAW_FEED,
            "diameter_mm": _SHAW_DRILL,
            "pilot_ratio": Limit("the pilot is ", (0.179, 1, -0.1, 0.18 - 1e-7), (0, 0.18, 0.999)),
            "wear_factor": within("wear factor", 1, 2),
            "chisel_ratio": Limit("", (-0.01, 0.301), (0, 0.3)),
            "torque_factor": Limit("torque factor A is ", (0.996,), (1,)),
        },
    ),
    drilling.thrust_tool_maker: (
        {"material_factor": 2, "feed_mm": 0.2, "diameter_mm": 10},
        {"material_factor": _K, "feed_mm": within("feed of the drill", 0.1, 0.5), "diameter_mm": _DRILL},
    ),
    drilling.torque_tool_maker: (
        {"material_factor": 2, "feed_mm": 0.2, "diameter_mm": 10},
        {"material_factor": _K, "feed_mm": within("feed of the drill", 0.1, 0.5), "diameter_mm": _DRILL},
    ),
    drilling.hand_thrust: (
        {"handwheel_force_n": 100, "handwheel_radius_mm": 75, "screw_pitch_mm": 5, "efficiency": 0.25},
        {
            "handwheel_force_n": above_zero("force of the hand"),
            "handwheel_radius_mm": above_zero("radius of the handwheel"),
            "screw_pitch_mm": above_zero("pitch of the quill screw"),
            "efficiency": above_zero_to("efficiency of the quill screw", 1),
        },
    ),
    drilling.taper_friction_torque: (
        {"thrust_n": 1000, "friction": 0.12, "mean_diameter_mm": 16, "half_angle_deg": 1.43},
        {
            "thrust_n": from_zero("thrust"),
            "friction": within("coefficient of friction", 0, 1),
            "mean_diameter_mm": above_zero("mean diameter of the taper"),
            "half_angle_deg": above_zero_to("half angle of the taper", 10),
        },
    ),
    drilling.drill_power: (
        {"torque_nmm": 5000, "spindle_speed_per_min": 300},
        {"torque_nmm": Limit("torque is ", (-0.01, -1), (0, 0.5)), "spindle_speed_per_min": _SPEED},
    ),
    drill_demand.drill_demand: (
        {
            "kd_of_thrust": 18000, "kd_of_torque": 18000, "material_factor": 2, "feed_mm": 0.2, "diameter_mm": 10,
            "pilot_ratio": 0.3, "wear_factor": 1.3, "chisel_ratio": 0.18, "torque_factor": 1.085,
            "thrust_factor": 1.355, "chisel_thrust_factor": 0.03,
        },
        {
            "kd_of_thrust": above_zero("drilling constant Kd"),
            "kd_of_torque": above_zero("drilling constant Kd"),
            "material_factor": _K,
            "feed_mm": _SHAW_FEED,
            "diameter_mm": _SHAW_DRILL,
            "pilot_ratio": Limit("the pilot is ", (0.179, 1, -0.1), (0, 0.18, 0.999)),
            "wear_factor": within("wear factor", 1, 2),
            "chisel_ratio": Limit("", (-0.01, 0.301), (0, 0.3)),
            "torque_factor": Limit("torque factor A is ", (0.996,), (1,)),
            "thrust_factor": Limit("thrust factor B is ", (0.996,), (1,)),
            "chisel_thrust_factor": from_zero("thrust factor J"),
        },
    ),
    drill_demand.chisel_share_of_thrust: (
        {"feed_mm": 0.2, "diameter_mm": 10, "thrust_factor": 1.355, "chisel_thrust_factor": 0.03},
        {
            "feed_mm": _SHAW_FEED,
            "diameter_mm": _SHAW_DRILL,
            "thrust_factor": Limit("thrust factor B is ", (0.996,), (1,)),
            "chisel_thrust_factor": from_zero("thrust factor J"),
        },
    ),
    drill_demand.lips_left_by_pilot: (
        {"pilot_ratio": 0.4, "chisel_ratio": 0.18},
        {
            "pilot_ratio": Limit("pilot as a share of the drill", (0.179, 1.01), (0.18, 1)),
            "chisel_ratio": Limit("", (-0.01, 0.401), (0, 0.4)),
        },
    ),
    drill_demand.feed_for_thrust: (
        {
            "thrust_n": 2000, "kd": 18000, "diameter_mm": 10, "wear_factor": 1.3, "thrust_factor": 1.355,
            "chisel_thrust_factor": 0.03,
        },
        {
            "thrust_n": Limit("", (0, -1)),
            "kd": above_zero("drilling constant Kd"),
            "diameter_mm": Limit("diameter of the drill is ", (1.59, 50.1)),
            "wear_factor": within("wear factor", 1, 2),
            "thrust_factor": Limit("thrust factor B is ", (0.996,), (1,)),
            "chisel_thrust_factor": from_zero("thrust factor J"),
        },
    ),
    drill_demand.largest_solid_drill: (
        {
            "thrust_n": 2000, "kd": 18000, "feed_mm": 0.1, "wear_factor": 1.3, "thrust_factor": 1.355,
            "chisel_thrust_factor": 0.03,
        },
        {
            "thrust_n": Limit("", (0, -1)),
            "kd": above_zero("drilling constant Kd"),
            "feed_mm": Limit("feed of the drill is ", (0.00996, 1.26), (0.01,)),
            "wear_factor": within("wear factor", 1, 2),
            "thrust_factor": Limit("thrust factor B is ", (0.996,), (1,)),
            "chisel_thrust_factor": from_zero("thrust factor J"),
        },
    ),
    drill_models.specific_force_drilling: (
        {"kc11_mpa": 1500, "mc": 0.22, "feed_mm": 0.2, "point_angle_deg": 118},
        {
            "kc11_mpa": above_zero("specific force kc1.1"),
            "mc": within("exponent mc", 0, 1),
            "feed_mm": _DRILL_FEED,
            "point_angle_deg": _POINT,
        },
    ),
    drill_models.torque_kienzle: (
        {"kc_mpa": 2500, "feed_mm": 0.2, "diameter_mm": 10},
        {"kc_mpa": above_zero("specific force at the lips"), "feed_mm": _DRILL_FEED, "diameter_mm": _DRILL},
    ),
    drill_models.thrust_kienzle: (
        {"kc_mpa": 2500, "feed_mm": 0.2, "diameter_mm": 10, "thrust_share": 0.7},
        {
            "kc_mpa": above_zero("specific force at the lips"),
            "feed_mm": _DRILL_FEED,
            "diameter_mm": _DRILL,
            "thrust_share": within("share of the thrust", 0.1, 1.5),
        },
    ),
    drill_models.torque_power_law: (
        {"drill_constant": 0.36, "feed_mm": 0.3, "diameter_mm": 10},
        {"drill_constant": above_zero("drilling constant kD"), "feed_mm": _DRILL_FEED, "diameter_mm": _DRILL},
    ),
    drill_models.power_tool_maker: (
        {"material_factor": 2, "feed_mm": 0.2, "diameter_mm": 10, "spindle_speed_per_min": 800},
        {
            "material_factor": _K,
            "feed_mm": within("feed of the drill", 0.1, 0.5),
            "diameter_mm": _DRILL,
            "spindle_speed_per_min": _SPEED,
        },
    ),
    drilled_hole.expected_oversize: (
        {"diameter_mm": 10, "sizes_mm": [6.35, 12.7], "oversizes_mm": [0.1, 0.127]},
        {
            "diameter_mm": within("diameter of the drill", 6.35, 12.7),
            "sizes_mm": Limit("the table of oversizes ", ([6.35], [12.7, 6.35], [9, 9], [6.35, math.nan])),
            "oversizes_mm": Limit("", ([0.1], [0.1, math.nan])),
        },
    ),
    drilled_hole.largest_hole: (
        {"diameter_mm": 20, "oversize_mm": 0.13, "tailstock_offset_mm": 0.2},
        {
            "diameter_mm": _DRILL,
            "oversize_mm": from_zero("oversize"),
            "tailstock_offset_mm": from_zero("offset of the tailstock"),
        },
    ),
    drilled_hole.least_boring_stock: (
        {"oversize_mm": 0.13, "wander_mm": 0.3, "tailstock_offset_mm": 0.1},
        {
            "oversize_mm": from_zero("oversize"),
            "wander_mm": from_zero("wander of the drill"),
            "tailstock_offset_mm": from_zero("offset of the tailstock"),
        },
    ),
    drilled_hole.drill_before_reamer: (
        {"reamer_mm": 16, "undersize_mm": 0.25, "oversize_mm": 0.05, "metal_factor": 1},
        {
            "reamer_mm": above_zero("reamer"),
            "undersize_mm": above_zero("stock for the reamer"),
            "oversize_mm": from_zero("oversize"),
            "metal_factor": within("factor on the stock", 1, 2),
        },
    ),
    drilled_hole.peck_depths: (
        {
            "depth_mm": 40, "diameter_mm": 5, "first_ratio": 2, "next_ratio": 1, "deep_ratio": 0.5, "deep_from_ratio": 6,
        },
        {
            "depth_mm": Limit("depth of the hole", (0, -1, 0.0498, 250.5), (0.05, 250)),
            "diameter_mm": Limit("", (0, -1, 0.79), (0.8,)),
            "first_ratio": Limit("", (0.996, 20.1), (1, 20)),
            "next_ratio": Limit("", (0.498, 2.01), (0.5, 2)),
            "deep_ratio": Limit("", (0.0996, 1.004), (0.1, 1)),
            "deep_from_ratio": within("depth in diameters from which on pecks are short", 0.1, 20),
        },
    ),
    drilled_hole.withdrawal_travel: (
        {"depths_mm": [10, 15, 20]},
        {"depths_mm": Limit("", ([], [0, 5], [10, 10], [10, 5], [10, math.inf]), ([10],))},
    ),
    drill_ladder.pilot_choices: (
        {"diameter_mm": 22, "sizes_mm": [5, 6, 10, 13], **_RATIOS},
        {
            "diameter_mm": _DRILL,
            "sizes_mm": Limit("size of a drill is ", ([0], [5, -1], [math.nan]), ([],)),
            **_RATIO_LIMITS,
        },
    ),
    drill_ladder.drill_steps: (
        {"last_mm": 22, "sizes_mm": [6, 8, 9, 10, 11, 12, 13, 20, 20.9], "solid_most_mm": 20.95, **_RATIOS},
        {
            "last_mm": above_zero("last drill"),
            "sizes_mm": Limit("", ([0, 6], [30], [math.nan])),
            "solid_most_mm": Limit("largest drill from the spot is ", (0, -1), (22,)),
            **_RATIO_LIMITS,
        },
    ),
    morse_taper.half_angle: (
        {"taper_per_foot": 0.6},
        {"taper_per_foot": within("taper in inches per foot", 0.01, 4)},
    ),
    morse_taper.mean_diameter: (
        {"large_end_mm": 17.78, "small_end_mm": 14.529},
        {
            "large_end_mm": Limit("", (0, -1, 14.529, 14), (14.53,)),
            "small_end_mm": Limit("", (0, -1, 17.78, 18), (17.77,)),
        },
    ),
    morse_taper.slip_margin: (
        {"thrust_n": 2000, "torque_nmm": 20000, "friction": 0.12, "mean_diameter_mm": 16, "half_angle_deg": 1.43},
        {
            "thrust_n": from_zero("thrust"),
            "torque_nmm": above_zero("torque on the drill"),
            "friction": within("coefficient of friction", 0, 1),
            "mean_diameter_mm": above_zero("mean diameter of the taper"),
            "half_angle_deg": above_zero_to("half angle of the taper", 10),
        },
    ),
    morse_taper.friction_at_slip: (
        {"thrust_n": 2000, "torque_nmm": 20000, "mean_diameter_mm": 16, "half_angle_deg": 1.43},
        {
            "thrust_n": above_zero("thrust"),
            "torque_nmm": above_zero("torque on the drill"),
            "mean_diameter_mm": above_zero("mean diameter of the taper"),
            "half_angle_deg": within("half angle of the taper", 0.1, 10),
        },
    ),
    morse_taper.shank_number: (
        {"diameter_mm": 20, "upper_limits_mm": [14, 23]},
        {
            "diameter_mm": Limit("", (0, -1, 23.01), (23,)),
            "upper_limits_mm": Limit("", ([], [0, 23], [23, 23], [30, 23], [14, math.inf]), ([23],)),
        },
    ),
    morse_taper.sleeve_steps: (
        {"shank_taper": 2, "quill_taper": 3},
        {
            "shank_taper": Limit("", (-1, 4, 8), (0, 3)),
            "quill_taper": Limit("", (1, 8), (2, 7)),
        },
    ),
}  # fmt: skip


def test_every_formula_and_every_argument_has_its_limits() -> None:
    # The question whether a feed lies in the range of a model is answered for any feed.
    is_whole(
        _TABLE,
        drill_demand,
        drill_models,
        drilled_hole,
        drilling,
        drill_ladder,
        morse_taper,
        without={drilling.tool_maker_holds},
    )


@pytest.mark.parametrize(("formula", "sound", "limits"), rows(_TABLE))
def test_a_formula_answers_on_its_edges_and_refuses_past_them(
    formula: Formula, sound: dict[str, Any], limits: dict[str, Limit]
) -> None:
    holds_at_its_edges(formula, sound, limits)
