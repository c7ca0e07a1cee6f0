"""Drilling and centre holes."""

import math
from typing import Any

import standard_point
from laws.law import DOWN, FREE, UP, Axis, Given, Law
from tailtrue.calc import centre_hole, drill_demand, drill_models, drilled_hole, drilling, morse_taper

_DRILL: dict[str, Axis] = {
    "kd": (1000, 60000, UP), "material_factor": (0.1, 5, UP), "feed_mm": (0.01, 1.25, UP), "diameter_mm": (1.6, 50, UP),
    "wear_factor": (1, 2, UP),
}  # fmt: skip
_SOLID = {name: axis for name, axis in _DRILL.items() if name != "material_factor"}
_TOOL_MAKER: dict[str, Axis] = {"material_factor": (0.1, 5, UP), "feed_mm": (0.1, 0.5, UP), "diameter_mm": (1.6, 50, UP)}
_BY_KC: dict[str, Axis] = {"kc_mpa": (100, 10000, UP), "feed_mm": (0.01, 1.25, UP), "diameter_mm": (1, 60, UP)}
_CONE: dict[str, Axis] = {"large_mm": (1.1, 20, UP), "small_mm": (1, 15, DOWN)}


def _demand(kd: float, **given: Any) -> drill_demand.DrillDemand:
    return standard_point.drill_demand(kd, kd, **{"pilot_ratio": 0, **given})


def _thrust(**given: Any) -> float:
    return _demand(**given).thrust_n


def _torque(**given: Any) -> float:
    return _demand(**given).torque_nmm


def _lips_and_chisel(given: Given, diameter_mm: float) -> float:
    lips: float = 0.05 * (given["feed_mm"] * diameter_mm) ** 0.8 * 1.355
    return given["kd"] * given["wear_factor"] * (lips + 0.007 * 0.03 * diameter_mm * diameter_mm)


def _feed_in_range(given: Given) -> bool:
    left = given["thrust_n"] / (given["kd"] * given["wear_factor"]) - 0.007 * 0.03 * given["diameter_mm"] ** 2
    return left > 0 and 0.0101 <= (left / (0.05 * 1.355)) ** 1.25 / given["diameter_mm"] <= 1.24


def _cone_left(given: Given) -> bool:
    return given["large_mm"] > given["small_mm"] + 0.01


LAWS: dict[str, Law] = {
    "drilling.hand_thrust": Law(drilling.hand_thrust, {"handwheel_force_n": (1, 500, UP), "handwheel_radius_mm": (10, 300, UP),
                                                   "screw_pitch_mm": (0.5, 12, DOWN), "efficiency": (0.01, 1, UP)}),
    "drill_demand.drill_demand: thrust planned": Law(_thrust, _DRILL),
    "drill_demand.drill_demand: torque planned": Law(_torque, _DRILL),
    "drill_demand.drill_demand: torque planned with a pilot": Law(_torque, _DRILL | {"pilot_ratio": (0.18, 0.99, DOWN)}),
    "drilled_hole.largest_hole": Law(drilled_hole.largest_hole, {"diameter_mm": (0.1, 80, UP), "oversize_mm": (0, 1, UP),
                                                            "tailstock_offset_mm": (0, 2, UP)}),
    "drilled_hole.least_boring_stock": Law(drilled_hole.least_boring_stock, {"oversize_mm": (0, 1, UP), "wander_mm": (0, 2, UP),
                                                              "tailstock_offset_mm": (0, 2, UP)}),
    "morse_taper.slip_margin": Law(morse_taper.slip_margin, {"thrust_n": (0, 10000, UP), "torque_nmm": (1, 1e6, DOWN),
                                                       "friction": (0, 1, UP), "mean_diameter_mm": (5, 80, UP),
                                                       "half_angle_deg": (0.1, 10, DOWN)}),
    "centre_hole.bearing_pressure": Law(centre_hole.bearing_pressure, {"force_n": (0.1, 5000, UP), "large_mm": (1.1, 20, DOWN),
                                                                    "small_mm": (1, 15, UP), "cone_deg": (20, 150, UP)},
                                     together=lambda g: g["large_mm"] > g["small_mm"] + 0.01),
    "drilling.point_length": Law(drilling.point_length, {"diameter_mm": (0.1, 80, UP), "point_angle_deg": (60, 180, DOWN)}),
    "drilling.least_pilot": Law(drilling.least_pilot, {"diameter_mm": (0.1, 80, UP), "chisel_ratio": (0, 0.5, UP)}),
    "drilling.thrust_shaw_oxford: from solid": Law(standard_point.thrust_shaw_oxford,
                                                   _SOLID | {"thrust_factor": (1, 2, UP), "chisel_thrust_factor": (0, 0.2, UP)}),
    "drilling.thrust_shaw_oxford: after a pilot": Law(standard_point.thrust_shaw_oxford, _SOLID | {"pilot_ratio": (0.18, 0.99, DOWN)}),
    "drilling.torque_shaw_oxford: from solid": Law(standard_point.torque_shaw_oxford, _SOLID | {"torque_factor": (1, 2, UP)}),
    "drilling.torque_shaw_oxford: after a pilot": Law(standard_point.torque_shaw_oxford, _SOLID | {"pilot_ratio": (0.18, 0.99, DOWN)}),
    "drilling.thrust_tool_maker": Law(drilling.thrust_tool_maker, _TOOL_MAKER),
    "drilling.torque_tool_maker": Law(drilling.torque_tool_maker, _TOOL_MAKER),
    "drilling.taper_friction_torque": Law(drilling.taper_friction_torque, {"thrust_n": (0, 10000, UP), "friction": (0, 1, UP),
                                                                           "mean_diameter_mm": (5, 80, UP), "half_angle_deg": (0.1, 10, DOWN)}),
    "drilling.drill_power": Law(drilling.drill_power, {"torque_nmm": (0, 1e6, UP), "spindle_speed_per_min": (1, 5000, UP)}),
    "drill_demand.chisel_share_of_thrust": Law(standard_point.chisel_share_of_thrust,
                                               {"feed_mm": (0.01, 1.25, DOWN), "diameter_mm": (1.6, 50, UP), "thrust_factor": (1, 2, UP),
                                                "chisel_thrust_factor": (0, 0.2, UP)}, most=1),
    "drill_demand.lips_left_by_pilot": Law(drill_demand.lips_left_by_pilot,
                                           {"pilot_ratio": (0.3, 0.99, DOWN), "chisel_ratio": (0, 0.29, UP)}, most=1),
    "drill_demand.feed_for_thrust": Law(standard_point.feed_for_thrust, {"thrust_n": (50, 10000, UP), "kd": (5000, 40000, DOWN),
                                                                       "diameter_mm": (1.6, 50, DOWN), "wear_factor": (1, 2, DOWN)},
                                        least=0.01, most=1.25, together=_feed_in_range),
    "drill_demand.largest_solid_drill": Law(standard_point.largest_solid_drill, {"thrust_n": (50, 10000, UP), "kd": (1000, 40000, DOWN),
                                                                               "feed_mm": (0.01, 1.25, DOWN), "wear_factor": (1, 2, DOWN)},
                                            least=1.6, most=50, together=lambda g: _lips_and_chisel(g, 1.6) < g["thrust_n"]),
    "drill_models.specific_force_drilling": Law(drill_models.specific_force_drilling,
                                                {"kc11_mpa": (1, 10000, UP), "mc": (0, 1, FREE), "feed_mm": (0.04, 1.25, DOWN),
                                                 "point_angle_deg": (60, 180, DOWN)},
                                                together=lambda g: g["feed_mm"] / 2 * math.sin(math.radians(g["point_angle_deg"] / 2)) >= 0.0201),
    "drill_models.torque_kienzle": Law(drill_models.torque_kienzle, _BY_KC),
    "drill_models.thrust_kienzle": Law(drill_models.thrust_kienzle, _BY_KC | {"thrust_share": (0.1, 1.5, UP)}),
    "drill_models.torque_power_law": Law(drill_models.torque_power_law, {"drill_constant": (0.01, 5, UP), "feed_mm": (0.01, 1.25, UP), "diameter_mm": (1, 60, UP)}),
    "drill_models.power_tool_maker": Law(drill_models.power_tool_maker, _TOOL_MAKER | {"spindle_speed_per_min": (1, 5000, UP)}),
    "drilled_hole.expected_oversize": Law(lambda diameter_mm: drilled_hole.expected_oversize(diameter_mm, [3, 13, 32], [0.05, 0.13, 0.2]),
                                          {"diameter_mm": (3, 32, UP)}, least=0.05, most=0.2),
    "drilled_hole.drill_before_reamer": Law(drilled_hole.drill_before_reamer,
                                            {"reamer_mm": (1, 50, UP), "undersize_mm": (0.05, 2, DOWN), "oversize_mm": (0, 0.5, DOWN), "metal_factor": (1, 2, DOWN)},
                                            together=lambda g: g["undersize_mm"] * g["metal_factor"] + g["oversize_mm"] < 0.499 * g["reamer_mm"]),
    "drilled_hole.peck_depths: how many": Law(lambda **g: len(drilled_hole.peck_depths(first_ratio=2, next_ratio=1, deep_ratio=0.5, deep_from_ratio=4, **g)),
                                              {"depth_mm": (1, 200, UP), "diameter_mm": (4, 50, DOWN)}, least=1),
    "drilled_hole.withdrawal_travel": Law(lambda first_mm, last_mm: drilled_hole.withdrawal_travel([first_mm, last_mm]),
                                          {"first_mm": (0.1, 50, UP), "last_mm": (51, 200, UP)}),
    "morse_taper.half_angle": Law(morse_taper.half_angle, {"taper_per_foot": (0.01, 4, UP)}, most=90),
    "morse_taper.mean_diameter": Law(morse_taper.mean_diameter, {"large_end_mm": (10, 80, UP), "small_end_mm": (1, 9.9, UP)}),
    "morse_taper.friction_at_slip": Law(morse_taper.friction_at_slip, {"thrust_n": (1, 10000, DOWN), "torque_nmm": (1, 1e6, UP),
                                                                       "mean_diameter_mm": (5, 80, DOWN), "half_angle_deg": (0.1, 10, UP)}),
    "morse_taper.shank_number": Law(lambda diameter_mm: morse_taper.shank_number(diameter_mm, [3, 14, 23, 32, 50]), {"diameter_mm": (0.1, 50, UP)}, least=1, most=5),
    "morse_taper.sleeve_steps": Law(lambda shank, quill: morse_taper.sleeve_steps(round(shank), round(quill)),
                                    {"shank": (0, 3, DOWN), "quill": (3, 7, UP)}, most=7),
    "centre_hole.cone_depth": Law(centre_hole.cone_depth, _CONE | {"cone_deg": (20, 150, DOWN)}, together=_cone_left),
    "centre_hole.cone_diameter": Law(centre_hole.cone_diameter, {"depth_mm": (0.01, 30, UP), "small_mm": (0.1, 20, UP), "cone_deg": (20, 150, UP)}),
    "centre_hole.cone_within_drill": Law(centre_hole.cone_within_drill, {"pilot_mm": (0.5, 9.9, UP), "largest_cone_mm": (10, 30, UP), "share": (0.05, 1, UP)}, most=30),
    "centre_hole.largest_cone": Law(centre_hole.largest_cone, {"bar_mm": (1, 200, UP), "cone_share": (0.1, 0.6, UP)}),
    "centre_hole.bearing_area": Law(centre_hole.bearing_area, _CONE | {"cone_deg": (20, 150, DOWN)}, together=_cone_left),
    "centre_hole.centre_load": Law(centre_hole.centre_load, {"mass_kg": (0.01, 50, UP), "gravity_m_s2": (9.7, 9.9, UP), "radial_force_n": (0, 5000, UP)}),
    "centre_hole.mean_cutting_diameter": Law(centre_hole.mean_cutting_diameter, {"pilot_mm": (0.5, 9.9, UP), "body_mm": (10, 30, UP)}),
}  # fmt: skip
