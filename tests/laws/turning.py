"""Turning and boring."""

import math
from functools import partial
from typing import Any

from laws.law import DOWN, FREE, UP, Axis, Given, Law
from tailtrue.calc import (
    boring,
    boring_passes,
    chip,
    cut_power,
    cut_time,
    cutting,
    fine_feed,
    finish,
    rework,
    run_out,
    spindle,
    spindle_band,
    tool_wear,
)

_PASS: dict[str, Axis] = {"depth_mm": (0.001, 20.0, UP), "feed_mm": (0.02, 2.5, UP)}
_KC: dict[str, Axis] = {"kc11_mpa": (1.0, 10000.0, UP), "mc": (0.0, 1.0, FREE)}
_TURNING: dict[str, Axis] = {"feed_mm": (0.001, 5, DOWN), "spindle_speed_per_min": (1, 5000, DOWN)}
_RIDGE: dict[str, Axis] = {"feed_mm": (0.001, 1.5, UP), "nose_radius_mm": (0.05, 3, DOWN)}
_BAND: dict[str, Axis] = {"diameter_mm": (0.1, 1000, DOWN), "factor": (0.1, 1.5, UP)}
_STEPS = (70, 115, 190, 300, 460, 755, 1255, 2000)


def _fine_feed(given: Given) -> bool:
    return given["feed_mm"] <= given["nose_radius_mm"] / 2


def _band_in_order(given: Given) -> bool:
    return given["low_m_min"] <= given["high_m_min"]


def _passes_time(passes: float, **given: Any) -> float:
    return cut_time.passes_time(passes=round(passes), **given)


def _copied_taper(spring_passes: float, **given: Any) -> float:
    return boring_passes.copied_taper(spring_passes=round(spring_passes), **given)


LAWS: dict[str, Law] = {
    "fine_feed.slide_angle": Law(fine_feed.slide_angle, {"ratio": (1, 1000, DOWN)}),
    "fine_feed.slide_step": Law(fine_feed.slide_step, {"division_mm": (0.001, 1, UP), "ratio": (1, 1000, DOWN)}),
    "cutting.spindle_speed": Law(cutting.spindle_speed, {"surface_speed_m_min": (0.1, 1000, UP), "diameter_mm": (0.1, 1000, DOWN)}),
    "cutting.cutting_force": Law(cutting.cutting_force, _KC | _PASS),
    "cutting.cut_time": Law(cutting.cut_time, {"length_mm": (0.1, 2000, UP), "feed_mm": (0.001, 5, DOWN),
                                            "spindle_speed_per_min": (1, 5000, DOWN)}),
    "cutting.theoretical_peak_height": Law(cutting.theoretical_peak_height, {"feed_mm": (0.001, 1.5, UP), "nose_radius_mm": (0.05, 3, DOWN)},
                            together=lambda g: g["feed_mm"] <= g["nose_radius_mm"] / 2),
    "cutting.passes_for_stock": Law(cutting.passes_for_stock, {"stock_on_diameter_mm": (0, 10, UP), "depth_mm": (0.01, 5, DOWN)}, least=1),
    "chip.force_at_approach": Law(chip.force_at_approach, _KC | _PASS | {"approach_deg": (10, 110, FREE)},
                                        together=lambda g: g["feed_mm"] * math.sin(math.radians(g["approach_deg"])) >= 0.02),
    "chip.force_band": Law(lambda **g: chip.force_band(1350, 0.21, 1990, 0.26, factors=(), ploughing_below_mm=0.05, ploughing_factor=1.5, **g).limit_n,
                       {"depth_mm": (0.001, 20, UP), "feed_mm": (0.05, 2.5, UP)}),
    "chip.passive_force": Law(partial(chip.passive_force, light_share=1, deep_share=0.5),
                         {"cutting_force_n": (0.1, 5000, UP), "depth_mm": (0.001, 5, DOWN), "nose_radius_mm": (0.05, 3, UP)}),
    "chip.corrected_force": Law(lambda force_n, factor: chip.corrected_force(force_n, [1.2, factor]),
                                  {"force_n": (0.1, 5000, UP), "factor": (0.5, 2, UP)}),
    "chip.rake_factor": Law(partial(chip.rake_factor, reference_rake_deg=6),
                              {"rake_deg": (-14, 26, DOWN), "change_per_degree": (0, 0.03, FREE)}),
    "cut_power.depth_for_power": Law(partial(cut_power.depth_for_power, mc=0.25),
                             {"kc11_mpa": (100, 4000, DOWN), "feed_mm": (0.02, 2.5, DOWN),
                              "surface_speed_m_min": (1, 500, DOWN), "power_w": (1, 5000, UP)}),
    "cut_time.facing_pass_time": Law(cut_time.facing_pass_time,
                                 {"outer_mm": (20, 300, UP), "inner_mm": (0, 19, DOWN), "approach_mm": (0, 10, UP), "overrun_mm": (0, 10, UP),
                                  "feed_mm": (0.01, 2, DOWN), "spindle_speed_per_min": (10, 5000, DOWN)}),
    "cut_time.drilling_time": Law(cut_time.drilling_time,
                                  {"depth_mm": (0.1, 200, UP), "diameter_mm": (0.5, 60, UP), "feed_mm": (0.01, 2, DOWN),
                                   "spindle_speed_per_min": (10, 5000, DOWN), "overrun_mm": (0, 10, UP), "point_angle_deg": (60, 180, DOWN)}),
    "cut_time.drill_travel": Law(cut_time.drill_travel, {"depth_mm": (0.1, 200, UP), "diameter_mm": (0.5, 60, UP), "overrun_mm": (0, 10, UP),
                                                  "point_angle_deg": (60, 180, DOWN)}),
    "finish.feed_for_peak_height": Law(finish.feed_for_peak_height, {"peak_height_mm": (1e-5, 0.1, UP), "nose_radius_mm": (0.05, 3, UP)},
                           together=lambda g: 8 * g["peak_height_mm"] <= 0.25 * g["nose_radius_mm"]),
    "tool_wear.taper_from_wear": Law(tool_wear.taper_from_wear, {"diameter_mm": (1, 500, UP), "length_mm": (0.1, 1000, UP),
                                                       "feed_mm": (0.005, 5, DOWN), "wear_um_per_km": (0, 500, UP)}),
    "tool_wear.life_ratio": Law(tool_wear.life_ratio, {"speed_ratio": (0.2, 2, DOWN), "exponent": (0.05, 0.6, FREE)}),
    "boring.boring_bar_deflection": Law(boring.boring_bar_deflection, {"force_n": (0, 100, UP), "overhang_mm": (15, 300, UP),
                                                     "shank_mm": (6, 40, DOWN), "modulus_mpa": (60000, 650000, DOWN)},
                      together=lambda g: 2.5 <= g["overhang_mm"] / g["shank_mm"] <= 12),
    "boring.overhang_ratio": Law(boring.overhang_ratio, {"overhang_mm": (0.1, 300, UP), "shank_mm": (1, 60, DOWN)}),
    "boring_passes.error_after_passes": Law(partial(boring_passes.error_after_passes, spring_passes=2),
                             {"set_depth_mm": (1e-4, 5, UP), "cut_stiffness_n_per_mm": (1, 1000, UP),
                              "tool_stiffness_n_per_mm": (100, 1e5, DOWN)}),
    "boring_passes.share_left": Law(boring_passes.share_left, {"cut_stiffness_n_per_mm": (0.1, 1000, UP), "machine_n_per_mm": (100, 1e6, DOWN)}),
    "boring_passes.bore_error": Law(boring_passes.bore_error, {"depth_left_mm": (0, 1, UP), "recession_mm": (0, 0.1, UP)}),
    "run_out.copied_eccentricity": Law(partial(run_out.copied_eccentricity, passes=1),
                               {"eccentricity_mm": (0, 5, UP), "cut_n_per_mm": (1, 1000, UP),
                                "machine_n_per_mm": (100, 1e6, DOWN)}),
    "run_out.collar_eccentricity": Law(run_out.collar_eccentricity, {"bore_run_out_mm": (0, 1, UP), "diametral_clearance_mm": (0, 0.5, UP),
                                                              "centre_eccentricity_mm": (0, 1, UP)}),
    "run_out.cleanup_stock": Law(run_out.cleanup_stock, {"eccentricity_mm": (0, 2, UP), "least_depth_mm": (0.01, 2, UP)}),
    "cutting.surface_speed": Law(cutting.surface_speed, {"spindle_speed_per_min": (1, 5000, UP), "diameter_mm": (0.1, 1000, UP)}),
    "cutting.specific_force": Law(cutting.specific_force, _KC | {"chip_thickness_mm": (0.02, 2.5, DOWN)}),
    "cutting.cutting_power": Law(cutting.cutting_power, {"force_n": (0.1, 10000, UP), "surface_speed_m_min": (0.1, 1000, UP)}),
    "cutting.removal_rate": Law(cutting.removal_rate, _PASS | {"surface_speed_m_min": (0.1, 1000, UP)}),
    "chip.chip_thickness: up to square": Law(chip.chip_thickness, {"feed_mm": (0.01, 2.5, UP), "approach_deg": (10, 90, UP)}),
    "chip.chip_thickness: past square": Law(chip.chip_thickness, {"feed_mm": (0.01, 2.5, UP), "approach_deg": (90, 110, DOWN)}),
    "chip.chip_width: up to square": Law(chip.chip_width, {"depth_mm": (0.001, 20, UP), "approach_deg": (10, 90, DOWN)}),
    "chip.chip_width: past square": Law(chip.chip_width, {"depth_mm": (0.001, 20, UP), "approach_deg": (90, 110, UP)}),
    "cut_power.power_from_constant": Law(cut_power.power_from_constant,
                                         _PASS | {"kp_mpa": (100, 10000, UP), "surface_speed_m_min": (0.1, 1000, UP),
                                                  "feed_factor": (0.5, 2, UP), "wear_factor": (1, 2, UP)}),
    "cut_power.motor_power": Law(cut_power.motor_power, {"power_w": (0.1, 5000, UP), "efficiency": (0.3, 1, DOWN)}),
    "cut_power.power_at_tool": Law(cut_power.power_at_tool, {"motor_w": (0.1, 5000, UP), "efficiency": (0.3, 1, UP), "use_share": (0.1, 1, UP)}),
    "cut_time.pass_time": Law(cut_time.pass_time, {"length_mm": (0.1, 2000, UP), "approach_mm": (0, 20, UP), "overrun_mm": (0, 20, UP)} | _TURNING),
    "cut_time.passes_time": Law(_passes_time, {"pass_s": (0.1, 5000, UP), "travel_mm": (0.1, 2000, UP), "return_mm_s": (0.1, 100, DOWN),
                                               "passes": (1, 100, UP), "reset_s": (0, 100, UP)}),
    "cut_time.feed_for_time": Law(cut_time.feed_for_time, {"length_mm": (0.1, 2000, UP), "time_s": (0.1, 5000, DOWN),
                                                           "spindle_speed_per_min": (1, 5000, DOWN)}),
    "cut_time.drill_removal_rate": Law(cut_time.drill_removal_rate, {"diameter_mm": (5, 60, UP), "feed_mm": (0.01, 2, UP),
                                                                     "spindle_speed_per_min": (1, 5000, UP), "pilot_diameter_mm": (0, 4.9, DOWN)}),
    "finish.roughness_average": Law(finish.roughness_average, _RIDGE, together=_fine_feed),
    "finish.expected_roughness: lower": Law(lambda **g: finish.expected_roughness(high_factor=5, **g).low_mm,
                                            _RIDGE | {"low_factor": (1, 5, UP)}, together=_fine_feed),
    "finish.expected_roughness: upper": Law(lambda **g: finish.expected_roughness(low_factor=1, **g).high_mm,
                                            _RIDGE | {"high_factor": (1, 10, UP)}, together=_fine_feed),
    "tool_wear.cutting_path": Law(tool_wear.cutting_path, {"diameter_mm": (1, 500, UP), "length_mm": (0.1, 1000, UP), "feed_mm": (0.005, 5, DOWN)}),
    "tool_wear.edge_wear": Law(tool_wear.edge_wear, {"path_km": (0, 50, UP), "wear_um_per_km": (0, 500, UP)}),
    "tool_wear.tool_life": Law(tool_wear.tool_life, {"surface_speed_m_min": (5, 300, DOWN), "constant_m_min": (10, 300, UP), "exponent": (0.05, 0.6, DOWN)},
                               least=1, most=10000,
                               together=lambda g: 0 <= math.log(g["constant_m_min"] / g["surface_speed_m_min"]) / g["exponent"] <= math.log(9999)),
    "tool_wear.speed_for_life": Law(tool_wear.speed_for_life, {"life_min": (1, 10000, DOWN), "constant_m_min": (1, 500, UP), "exponent": (0.05, 0.6, DOWN)}),
    "spindle.choose_speed": Law(partial(spindle.choose_speed, _STEPS), {"wanted_per_min": (1, 5000, UP), "cap_per_min": (70, 5000, UP)}, least=70, most=2000),
    "spindle.choose_from_range": Law(partial(spindle.choose_from_range, low_per_min=50, step_per_min=10),
                                     {"wanted_per_min": (1, 5000, UP), "cap_per_min": (50, 5000, UP), "high_per_min": (50, 3000, UP)}, least=50, most=3000),
    "spindle_band.speed_band: low": Law(lambda **g: spindle_band.speed_band(**g).low_per_min, _BAND | {"low_m_min": (1, 300, UP), "high_m_min": (1, 500, FREE)},
                                        together=_band_in_order),
    "spindle_band.speed_band: middle": Law(lambda **g: spindle_band.speed_band(**g).middle_per_min,
                                           _BAND | {"low_m_min": (1, 300, UP), "high_m_min": (1, 500, UP)}, together=_band_in_order),
    "spindle_band.speed_band: high": Law(lambda **g: spindle_band.speed_band(**g).high_per_min, _BAND | {"low_m_min": (1, 300, FREE), "high_m_min": (1, 500, UP)},
                                         together=_band_in_order),
    "spindle_band.speed_by_head": Law(spindle_band.speed_by_head, {"surface_speed_m_min": (0.1, 1000, UP), "diameter_mm": (0.1, 1000, DOWN)}),
    "spindle_band.speed_by_head_metric": Law(spindle_band.speed_by_head_metric, {"surface_speed_m_min": (0.1, 1000, UP), "diameter_mm": (0.1, 1000, DOWN)}),
    "spindle_band.step_up": Law(partial(spindle_band.step_up, _STEPS, 190), {"cap_per_min": (190, 5000, UP), "diameter_mm": (5, 300, DOWN),
                                                                             "high_m_min": (1, 300, UP), "overrun": (1, 1.1, UP)}, least=190, most=300),
    "spindle_band.step_down": Law(lambda place: spindle_band.step_down(_STEPS, _STEPS[round(place)]), {"place": (1, 7, UP)}, least=70, most=1255),
    "boring_passes.bored_bar_deflection": Law(boring_passes.bored_bar_deflection,
                                              {"force_n": (0, 100, UP), "overhang_mm": (15, 300, UP), "shank_mm": (6, 40, DOWN), "hole_mm": (0, 30, UP),
                                               "modulus_mpa": (60000, 650000, DOWN)},
                                              together=lambda g: 2.5 <= g["overhang_mm"] / g["shank_mm"] <= 12 and g["hole_mm"] <= 0.8 * g["shank_mm"]),
    "boring_passes.equal_stiffness_overhang": Law(boring_passes.equal_stiffness_overhang,
                                                  {"overhang_mm": (1, 300, UP), "modulus_mpa": (60000, 650000, DOWN), "other_modulus_mpa": (60000, 650000, UP)},
                                                  together=lambda g: 0.2 <= g["modulus_mpa"] / g["other_modulus_mpa"] <= 5),
    "boring_passes.boring_passes": Law(boring_passes.boring_passes, {"from_mm": (10, 50, DOWN), "to_mm": (50, 100, UP), "depth_mm": (0.05, 5, DOWN)}, least=1),
    "boring_passes.cut_stiffness": Law(boring_passes.cut_stiffness, {"kc_mpa": (100, 10000, UP), "feed_mm": (0.01, 2.5, UP), "passive_share": (0.05, 1.5, UP)}),
    "boring_passes.spring_passes_for": Law(boring_passes.spring_passes_for,
                                           {"set_depth_mm": (0.05, 2, UP), "cut_stiffness_n_per_mm": (1, 500, UP),
                                            "tool_stiffness_n_per_mm": (5000, 1e5, DOWN), "wanted_mm": (1e-4, 0.05, DOWN)}),
    "boring_passes.copied_taper": Law(_copied_taper, {"depth_mouth_mm": (0, 5, DOWN), "depth_bottom_mm": (0, 5, UP), "cut_stiffness_n_per_mm": (1, 1000, UP),
                                                      "tool_stiffness_n_per_mm": (100, 1e5, DOWN), "spring_passes": (0, 5, DOWN)},
                                      together=lambda g: g["depth_bottom_mm"] >= g["depth_mouth_mm"]),
    "rework.light_cuts": Law(partial(rework.light_cuts, low_mm=25, high_mm=25.02), {"least_mm": (24, 25, DOWN), "depth_mm": (0.005, 0.5, DOWN)}),
    "run_out.eccentricity": Law(run_out.eccentricity, {"run_out_mm": (0, 5, UP)}),
}  # fmt: skip
