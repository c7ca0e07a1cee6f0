"""Over the whole range in which a formula holds it gives a finite number of the right sign that goes the right way.

One row a formula: for each argument the ends of its range (of what is plausible, where the formula itself sets no end) and
the way the result goes when it grows: UP, DOWN, or FREE where it may go either way.
"""

import math
from collections.abc import Callable, Mapping
from functools import partial
from itertools import product
from typing import Any, NamedTuple

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tailtrue.calc import (
    adequacy,
    alignment,
    balance,
    beams,
    bending,
    bore_gauging,
    boring,
    boring_passes,
    carriage_path,
    casting,
    centre_hole,
    centre_points,
    chip,
    chuck,
    conformity,
    control_chart,
    cut_power,
    cut_time,
    cutting,
    difference_budget,
    drill_demand,
    drilled_hole,
    drilling,
    finish,
    fit_temperature,
    fits,
    indicator,
    interference,
    interference_grip,
    joints,
    lathe_geometry,
    lifting,
    morse_taper,
    pins,
    pouring,
    rotors,
    run_out,
    screws,
    setover,
    shrink,
    soft_centres,
    solids,
    student,
    thermal,
    tool_wear,
    turning_masses,
    uncertainty,
    work_holding,
)
from tailtrue.calc.validity import OutOfRange

UP, DOWN, FREE = 1, -1, 0
Axis = tuple[float, float, int]
_SLACK = 1e-9


class Law(NamedTuple):
    """A formula with the range of each argument, the sign of its result, and what else must hold between arguments."""

    formula: Callable[..., float]
    axes: Mapping[str, Axis]
    least: float = 0.0  # no result is below this
    together: Callable[[Mapping[str, float]], bool] = lambda _: True


_PASS = {"depth_mm": (0.001, 20.0, UP), "feed_mm": (0.02, 2.5, UP)}
_KC = {"kc11_mpa": (1.0, 10000.0, UP), "mc": (0.0, 1.0, FREE)}
_FORCE = {"force_n": (0.0, 500.0, UP)}
_BEAM = {"modulus_mpa": (60000.0, 600000.0, DOWN), "diameter_mm": (5.0, 60.0, DOWN)}
_CENTRES = {"span_mm": (100.0, 1500.0, UP), "density_kg_m3": (1000.0, 9000.0, UP)}
_SPEED = (0.0, 5000.0, UP)
_FIT = {
    "joint_diameter_mm": (10.0, 100.0, FREE),
    "collar_diameter_mm": (12.0, 300.0, FREE),
    "bar_modulus_mpa": (60000.0, 220000.0, FREE),
    "collar_modulus_mpa": (2000.0, 220000.0, FREE),
    "bar_poisson": (0.0, 0.5, FREE),
    "collar_poisson": (0.0, 0.5, FREE),
}
_COLLARS = {"first_station_mm": (0.0, 1500.0, FREE), "second_station_mm": (0.0, 1500.0, FREE)}
_KELVIN = (1e-6, 1.2e-4)


def _slender(at_least: float, length: str = "span_mm") -> Callable[[Mapping[str, float]], bool]:
    return lambda given: given[length] >= at_least * given["diameter_mm"]


def _on_span(given: Mapping[str, float]) -> bool:
    return given["first_station_mm"] + 1e-3 < given["second_station_mm"] <= given["span_mm"]


def _thick(given: Mapping[str, float]) -> bool:
    return given["collar_diameter_mm"] > 1.01 * given["joint_diameter_mm"]


def _thrust(**given: Any) -> float:
    return drill_demand.drill_demand(given["kd"], given["kd"], **{n: v for n, v in given.items() if n != "kd"}).thrust_n


def _torque(**given: Any) -> float:
    return drill_demand.drill_demand(given["kd"], given["kd"], **{n: v for n, v in given.items() if n != "kd"}).torque_nmm


_DRILL: dict[str, Axis] = {
    "kd": (1000, 60000, UP), "material_factor": (0.1, 5, UP), "feed_mm": (0.01, 1.25, UP), "diameter_mm": (1.6, 50, UP),
    "wear_factor": (1, 2, UP),
}  # fmt: skip


def _least_torque(**given: Any) -> float:
    return interference_grip.grip(
        **given, bar_modulus_mpa=207e3, bar_poisson=0.29, collar_modulus_mpa=69e3, collar_poisson=0.33, low_friction=0.1,
        high_friction=0.2, elastic_limit_mpa=1e6, greatest_interference_mm=0.04, collar_diameter_mm=75,
    ).least_torque_nmm  # fmt: skip


_LAWS: dict[str, Law] = {
    # cutting
    "spindle speed": Law(cutting.spindle_speed, {"surface_speed_m_min": (0.1, 1000, UP), "diameter_mm": (0.1, 1000, DOWN)}),
    "cutting force": Law(cutting.cutting_force, _KC | _PASS),
    "cutting force at an approach": Law(chip.force_at_approach, _KC | _PASS | {"approach_deg": (10, 110, FREE)},
                                        together=lambda g: g["feed_mm"] * math.sin(math.radians(g["approach_deg"])) >= 0.02),
    "limit force": Law(lambda **g: chip.force_band(1350, 0.21, 1990, 0.26, **g).limit_n,
                       {"depth_mm": (0.001, 20, UP), "feed_mm": (0.05, 2.5, UP)}),
    "passive force": Law(partial(chip.passive_force, light_share=1, deep_share=0.5),
                         {"cutting_force_n": (0.1, 5000, UP), "depth_mm": (0.001, 5, DOWN), "nose_radius_mm": (0.05, 3, UP)}),
    "depth for a power": Law(partial(cut_power.depth_for_power, mc=0.25),
                             {"kc11_mpa": (100, 4000, DOWN), "feed_mm": (0.02, 2.5, DOWN),
                              "surface_speed_m_min": (1, 500, DOWN), "power_w": (1, 5000, UP)}),
    "time of a cut": Law(cutting.cut_time, {"length_mm": (0.1, 2000, UP), "feed_mm": (0.001, 5, DOWN),
                                            "spindle_speed_per_min": (1, 5000, DOWN)}),
    "height of ridges": Law(cutting.theoretical_peak_height, {"feed_mm": (0.001, 1.5, UP), "nose_radius_mm": (0.05, 3, DOWN)},
                            together=lambda g: g["feed_mm"] <= g["nose_radius_mm"] / 2),
    "feed for ridges": Law(finish.feed_for_peak_height, {"peak_height_mm": (1e-5, 0.1, UP), "nose_radius_mm": (0.05, 3, UP)},
                           together=lambda g: 8 * g["peak_height_mm"] <= 0.25 * g["nose_radius_mm"]),
    "taper from wear": Law(tool_wear.taper_from_wear, {"diameter_mm": (1, 500, UP), "length_mm": (0.1, 1000, UP),
                                                       "feed_mm": (0.005, 5, DOWN), "wear_um_per_km": (0, 500, UP)}),
    "life ratio": Law(tool_wear.life_ratio, {"speed_ratio": (0.2, 2, DOWN), "exponent": (0.05, 0.6, FREE)}),
    # drilling
    "thrust planned": Law(_thrust, _DRILL),
    "torque planned": Law(_torque, _DRILL),
    "torque planned with a pilot": Law(_torque, _DRILL | {"pilot_ratio": (0.18, 0.99, DOWN)}),
    "thrust of a hand": Law(drilling.hand_thrust, {"handwheel_force_n": (1, 500, UP), "handwheel_radius_mm": (10, 300, UP),
                                                   "screw_pitch_mm": (0.5, 12, DOWN), "efficiency": (0.01, 1, UP)}),
    "margin of a taper": Law(morse_taper.slip_margin, {"thrust_n": (0, 10000, UP), "torque_nmm": (1, 1e6, DOWN),
                                                       "friction": (0, 1, UP), "mean_diameter_mm": (5, 80, UP),
                                                       "half_angle_deg": (0.1, 10, DOWN)}),
    "largest drilled hole": Law(drilled_hole.largest_hole, {"diameter_mm": (0.1, 80, UP), "oversize_mm": (0, 1, UP),
                                                            "tailstock_offset_mm": (0, 2, UP)}),
    "stock for boring": Law(drilled_hole.least_boring_stock, {"oversize_mm": (0, 1, UP), "wander_mm": (0, 2, UP),
                                                              "tailstock_offset_mm": (0, 2, UP)}),
    # boring
    "boring bar": Law(boring.boring_bar_deflection, {"force_n": (0, 100, UP), "overhang_mm": (15, 300, UP),
                                                     "shank_mm": (6, 40, DOWN), "modulus_mpa": (60000, 650000, DOWN)},
                      together=lambda g: 2.5 <= g["overhang_mm"] / g["shank_mm"] <= 12),
    "left after passes": Law(partial(boring_passes.error_after_passes, spring_passes=2),
                             {"set_depth_mm": (1e-4, 5, UP), "cut_stiffness_n_per_mm": (1, 1000, UP),
                              "tool_stiffness_n_per_mm": (100, 1e5, DOWN)}),
    "copied eccentricity": Law(partial(run_out.copied_eccentricity, passes=1),
                               {"eccentricity_mm": (0, 5, UP), "cut_n_per_mm": (1, 1000, UP),
                                "machine_n_per_mm": (100, 1e6, DOWN)}),
    # bars
    "bend between centres": Law(partial(beams.deflection_midspan), _FORCE | {"span_mm": (25, 1500, UP)} | _BEAM,
                                together=lambda g: 5 <= g["span_mm"] / g["diameter_mm"] <= 60
                                and g["force_n"] * g["span_mm"] ** 2 < 0.2 * g["modulus_mpa"] * g["diameter_mm"] ** 4),
    "sag": Law(beams.self_weight_sag, _BEAM | _CENTRES, together=lambda g: 5 <= g["span_mm"] / g["diameter_mm"] <= 100),
    "whirl between centres": Law(beams.whirl_speed_between_centres,
                                 {"diameter_mm": (5, 60, UP), "span_mm": (25, 1500, DOWN), "modulus_mpa": (60000, 600000, UP),
                                  "density_kg_m3": (1000, 9000, DOWN)}, together=_slender(5)),
    "whirl of a free end": Law(beams.whirl_speed_cantilever,
                               {"diameter_mm": (5, 60, UP), "length_mm": (15, 1500, DOWN), "modulus_mpa": (60000, 600000, UP),
                                "density_kg_m3": (1000, 9000, DOWN)}, together=_slender(2.5, "length_mm")),
    "whirl with collars": Law(lambda mass, **g: rotors.critical_speed_low_side(**g, masses_kg=[mass], stations_mm=[g["span_mm"] / 4]),
                              {"diameter_mm": (5, 60, FREE), "span_mm": (25, 1500, DOWN), "modulus_mpa": (60000, 600000, UP),
                               "density_kg_m3": (1000, 9000, DOWN), "mass": (0.01, 5, DOWN),
                               "tailstock_n_per_mm": (1000, 1e6, UP)}, together=_slender(5)),
    "buckling": Law(bending.buckling_load, {"diameter_mm": (2, 60, UP), "span_mm": (1, 2000, DOWN),
                                            "modulus_mpa": (60000, 600000, UP), "yield_mpa": (50, 2000, UP)}),
    "give of the centres": Law(lambda **g: soft_centres.centre_give(10, 300, 30, 270, **g),
                               {"headstock_n_per_mm": (100, 1e6, DOWN), "tailstock_n_per_mm": (100, 1e6, DOWN)}),
    # holding
    "grip for a cut": Law(chuck.grip_for_cut, {"cutting_force_n": (0, 5000, UP), "cut_diameter_mm": (1, 500, UP),
                                               "grip_diameter_mm": (1, 500, DOWN), "friction": (0.01, 1, DOWN),
                                               "safety": (1.5, 10, UP)}),
    "grip left at speed": Law(chuck.residual_grip, {"grip_at_rest_n": (0, 50000, UP), "jaw_pull_n": (0, 50000, DOWN)}),
    "pull of the jaws": Law(partial(chuck.jaw_pull, 3), {"jaw_mass_kg": (0.01, 5, UP), "jaw_radius_mm": (5, 300, UP),
                                                         "spindle_speed_per_min": _SPEED}),
    "unbalance": Law(turning_masses.unbalance_force, {"mass_kg": (0.01, 50, UP), "eccentricity_mm": (0, 50, UP),
                                               "spindle_speed_per_min": _SPEED}),
    "speed for unbalance": Law(turning_masses.unbalance_speed_limit, {"eccentricity_mm": (1e-3, 50, DOWN), "force_to_weight": (1e-3, 2, UP)}),
    "speed for a force": Law(balance.speed_for_force, {"force_n": (0.01, 1000, UP), "mass_kg": (0.01, 50, DOWN),
                                                       "eccentricity_mm": (1e-3, 50, DOWN)}),
    "energy of a flung part": Law(turning_masses.kinetic_energy, {"mass_kg": (0.01, 50, UP), "speed_m_s": (0, 100, UP)}),
    "mass of a slab": Law(solids.mass_slab, {"width_mm": (0.1, 500, UP), "thickness_mm": (0.1, 200, UP),
                          "length_mm": (0.1, 2000, UP), "density_kg_m3": (1700, 9200, UP)}),
    "energy of a turning part": Law(solids.turning_energy, {"mass_kg": (0.01, 50, UP), "diameter_mm": (1, 500, UP),
                                                            "spindle_speed_per_min": _SPEED}),
    "mass": Law(beams.mass_cylinder, {"diameter_mm": (1, 500, UP), "length_mm": (0.1, 3000, UP), "density_kg_m3": (500, 20000, UP)}),
    "safety against tilting": Law(work_holding.tilt_safety,
                                  {"cutting_force_n": (1, 5000, DOWN), "overhang_mm": (0, 300, DOWN), "grip_n": (0, 50000, UP),
                                   "grip_length_mm": (1, 100, FREE), "grip_diameter_mm": (1, 300, UP), "friction": (0.01, 1, UP)}),
    "weight to lift": Law(partial(lifting.recommended_weight, 23),
                          {"horizontal_mm": (0, 630, DOWN), "height_mm": (750, 1750, DOWN), "travel_mm": (0, 1750, DOWN),
                           "twist_deg": (0, 135, DOWN), "coupling": (0.5, 1, UP), "frequency": (0.1, 1, UP)}),
    "force that parts a centre": Law(centre_points.separating_force, {"radial_force_n": (0, 5000, UP), "point_angle_deg": (30, 120, UP)}),
    "pressure in a centre hole": Law(centre_hole.bearing_pressure, {"force_n": (0.1, 5000, UP), "large_mm": (1.1, 20, DOWN),
                                                                    "small_mm": (1, 15, UP), "cone_deg": (20, 150, UP)},
                                     together=lambda g: g["large_mm"] > g["small_mm"] + 0.01),
    # joints
    "torque of a bond": Law(joints.bond_torque, {"shear_mpa": (0.01, 40, UP), "diameter_mm": (5, 100, UP), "length_mm": (0.1, 150, UP)},
                            together=lambda g: g["length_mm"] <= 1.5 * g["diameter_mm"]),
    "pressure of a fit": Law(interference.contact_pressure, _FIT | {"diametral_interference_mm": (0, 0.04, UP)}, together=_thick),
    "stress of a collar": Law(lambda **g: interference.collar_stress(**g).von_mises_mpa,
                              {"pressure_mpa": (0, 200, UP), "joint_diameter_mm": (10, 100, UP), "collar_diameter_mm": (12, 300, DOWN)},
                              together=_thick),
    "least torque of a fit": Law(_least_torque, {"least_interference_mm": (-0.05, 0.04, UP), "roughness_loss_mm": (0, 0.05, DOWN),
                                                 "joint_diameter_mm": (10, 60, FREE), "length_mm": (1, 100, UP),
                                                 "end_diameter_mm": (61, 75, UP)}),
    "interference that presses": Law(interference.effective_interference,
                                     {"diametral_interference_mm": (-0.1, 0.1, UP), "bar_roughness_um": (0, 50, DOWN),
                                      "collar_roughness_um": (0, 50, DOWN), "loss_factor": (0, 1.2, DOWN)}),
    "heat for a shrink fit": Law(shrink.shrink_rise, {"diametral_interference_mm": (0, 0.05, UP), "clearance_mm": (0.001, 0.05, UP),
                                                      "joint_diameter_mm": (40, 200, DOWN), "expansion_per_k": (1.05e-5, 1.2e-4, DOWN)}),
    "hold of set screws": Law(lambda **g: screws.screws_hold(angles_deg=[0, 90], factors=[0.85], **g).torque_nmm,
                              {"holding_n": (1, 20000, UP), "safety": (1.5, 10, DOWN), "joint_diameter_mm": (5, 100, UP)}),
    "hold of a cross pin": Law(lambda **g: pins.cross_pin(pin_diameter_mm=4, joint_diameter_mm=25, **g).carried_nmm,
                               {"shear_force_n": (1, 50000, UP), "pin_length_mm": (25.1, 100, UP), "collar_bearing_mpa": (1, 500, UP),
                                "bar_bearing_mpa": (1, 900, UP), "safety": (1, 10, DOWN)}),
    "hold of a pin along the joint": Law(lambda **g: pins.axial_pins(count=1, pin_diameter_mm=4, joint_diameter_mm=25, **g).carried_nmm,
                                         {"pin_length_mm": (0.1, 60, UP), "shear_mpa": (1, 900, UP), "bearing_mpa": (1, 500, UP),
                                          "safety": (1, 10, DOWN)}),
    "safety in a catch": Law(lambda **g: joints.joint_safety(**g).catch,
                             {"carried_torque_nmm": (0, 1e6, UP), "cutting_force_n": (0.1, 100, FREE), "catch_force_n": (100, 2000, DOWN),
                              "diameter_mm": (10, 300, DOWN)}),
    "thrust of a warm bar": Law(lambda **g: thermal.growth_thrust(**g).yielding_n,
                                {"span_mm": (10, 2000, FREE), "diameter_mm": (2, 80, UP), "modulus_mpa": (60000, 600000, UP),
                                 "expansion_per_k": (*_KELVIN, UP), "temperature_change_k": (0, 50, UP),
                                 "machine_n_per_mm": (100, 1e6, UP)}),
    # alignment
    "difference from height": Law(alignment.height_error_difference,
                                  {"height_error_mm": (0, 1, UP), "collar_diameter_mm": (20, 300, DOWN), "span_mm": (100, 1500, DOWN)}
                                  | _COLLARS, together=_on_span),
    "move for a fat tailstock collar": Law(alignment.tailstock_move,
                                           {"difference_mm": (0, 0.5, UP), "span_mm": (100, 1500, UP), "first_station_mm": (0, 300, UP),
                                            "second_station_mm": (0, 1500, DOWN)},
                                           together=lambda g: _on_span(g) and g["second_station_mm"] - g["first_station_mm"] > 20),
    "height for a difference": Law(lathe_geometry.height_for_difference,
                                   {"difference_mm": (0, 1e-3, UP), "collar_diameter_mm": (40, 300, UP), "span_mm": (100, 1500, UP)}
                                   | _COLLARS, together=lambda g: _on_span(g) and g["second_station_mm"] > 0.6 * g["span_mm"]
                                   and g["first_station_mm"] < 0.3 * g["span_mm"]),
    "set-over": Law(setover.setover_exact, {"taper_mm_per_mm": (0, 0.5358, UP), "bar_span_mm": (1, 3000, UP)}),
    "taper of a set-over": Law(setover.taper_from_setover, {"setover_mm": (0, 100, UP), "bar_span_mm": (20, 3000, DOWN)},
                               together=lambda g: g["setover_mm"] <= 0.25 * g["bar_span_mm"]),
    # plain laws that the others rest on
    "second moment": Law(beams.second_moment, {"diameter_mm": (0.1, 300, UP)}),
    "overhang ratio": Law(boring.overhang_ratio, {"overhang_mm": (0.1, 300, UP), "shank_mm": (1, 60, DOWN)}),
    "share left by a pass": Law(boring_passes.share_left, {"cut_stiffness_n_per_mm": (0.1, 1000, UP), "machine_n_per_mm": (100, 1e6, DOWN)}),
    "bore left small": Law(boring_passes.bore_error, {"depth_left_mm": (0, 1, UP), "recession_mm": (0, 0.1, UP)}),
    "passes for the stock": Law(cutting.passes_for_stock, {"stock_on_diameter_mm": (0, 10, UP), "depth_mm": (0.01, 5, DOWN)}, least=1),
    "time of a facing pass": Law(cut_time.facing_pass_time,
                                 {"outer_mm": (20, 300, UP), "inner_mm": (0, 19, DOWN), "approach_mm": (0, 10, UP), "overrun_mm": (0, 10, UP),
                                  "feed_mm": (0.01, 2, DOWN), "spindle_speed_per_min": (10, 5000, DOWN)}),
    "time of a drilled hole": Law(cut_time.drilling_time,
                                  {"depth_mm": (0.1, 200, UP), "diameter_mm": (0.5, 60, UP), "feed_mm": (0.01, 2, DOWN),
                                   "spindle_speed_per_min": (10, 5000, DOWN), "overrun_mm": (0, 10, UP), "point_angle_deg": (60, 180, DOWN)}),
    "way of a drill": Law(cut_time.drill_travel, {"depth_mm": (0.1, 200, UP), "diameter_mm": (0.5, 60, UP), "overrun_mm": (0, 10, UP),
                                                  "point_angle_deg": (60, 180, DOWN)}),
    "load on a seat": Law(centre_points.seat_load, {"area_mm2": (0.1, 1000, UP), "pressure_mpa": (0.1, 500, UP)}),
    "force with its factors": Law(lambda force_n, factor: chip.corrected_force(force_n, [1.2, factor]),
                                  {"force_n": (0.1, 5000, UP), "factor": (0.5, 2, UP)}),
    "factor of the rake": Law(partial(chip.rake_factor, reference_rake_deg=6),
                              {"rake_deg": (-14, 26, DOWN), "change_per_degree": (0, 0.03, FREE)}),
    "grip of a scroll": Law(chuck.scroll_grip, {"key_torque_nmm": (1, 2e5, UP), "key_turns": (0.1, 20, UP),
                                                "scroll_pitch_mm": (1, 20, DOWN), "efficiency": (0.01, 1, UP)}),
    "growth of a pressed collar": Law(interference.collar_growth,
                                      {"pressure_mpa": (0, 300, UP), "joint_diameter_mm": (10, 100, UP), "collar_diameter_mm": (12, 300, DOWN),
                                       "collar_modulus_mpa": (2000, 220000, DOWN)}, together=_thick),
    "shear of a pin": Law(pins.pin_shear_force, {"shear_strength_mpa": (1, 900, UP), "pin_diameter_mm": (0.5, 20, UP)}),
    "bar left beside a pin": Law(pins.bar_section_left, {"pin_diameter_mm": (0.5, 20, DOWN), "joint_diameter_mm": (10, 60, UP)},
                                 together=lambda g: 3 * g["pin_diameter_mm"] <= g["joint_diameter_mm"]),
    "shear of a thread": Law(screws.thread_shear, {"preload_n": (0, 20000, UP), "thread_diameter_mm": (3, 10, DOWN),
                                                   "engagement_mm": (5, 40, DOWN)}),
    "bow that grows with speed": Law(rotors.bow_growth, {"spindle_speed_per_min": (0, 900, UP), "critical_per_min": (1000, 60000, DOWN)},
                                     least=1),
    "collar out of centre": Law(run_out.collar_eccentricity, {"bore_run_out_mm": (0, 1, UP), "diametral_clearance_mm": (0, 0.5, UP),
                                                              "centre_eccentricity_mm": (0, 1, UP)}),
    "stock to clean up": Law(run_out.cleanup_stock, {"eccentricity_mm": (0, 2, UP), "least_depth_mm": (0.01, 2, UP)}),
    "temperature for a shrink fit": Law(partial(shrink.shrink_temperature, hottest_degc=300),
                                        {"temperature_change_k": (0.1, 250, UP), "room_degc": (0, 50, UP)}),
    "draft over the jaws": Law(work_holding.draft_over_jaws, {"grip_length_mm": (0.1, 100, UP), "draft_deg": (0, 10, UP)}),
    "length to grip": Law(partial(work_holding.least_grip_length, jaw_length_mm=100),
                          {"diameter_mm": (1, 100, UP), "share_of_diameter": (0.1, 1, UP), "share_of_jaw": (0.1, 1, UP), "least_mm": (1, 100, UP)}),
    # castings
    "pattern": Law(casting.pattern_size, {"casting_mm": (1, 1000, UP), "contraction": (0, 0.03, UP)}),
    "factor of a modulus": Law(casting.modulus_factor, {"time_ratio": (1, 2, UP)}, least=1),
    "melt": Law(pouring.melt_mass, {"volume_mm3": (1, 1e7, UP), "density_kg_m3": (1000, 9000, UP), "surplus_share": (0, 1, UP)}),
    "yield of a casting": Law(pouring.casting_yield, {"casting_volume_mm3": (1, 1e7, UP), "other_volume_mm3": (0, 1e7, DOWN)}),
    # geometry of the lathe
    "tool and tailstock off height": Law(lambda **g: -alignment.tool_height_difference(**g),
                                         {"tool_height_mm": (0, 1, UP), "height_error_mm": (0, 1, UP), "collar_diameter_mm": (20, 300, DOWN),
                                          "span_mm": (100, 1500, DOWN)} | _COLLARS, together=_on_span),
    "shift by worn ways": Law(carriage_path.wear_shift, {"front_wear_mm": (0, 1, UP), "rear_wear_mm": (0, 1, DOWN),
                                                         "centre_height_mm": (50, 500, FREE), "way_spacing_mm": (100, 1000, FREE)},
                              least=-math.inf),
    "offset from the path": Law(carriage_path.offset_from_path, {"tailstock_offset_mm": (-1, 1, UP), "path_lean_mm_per_mm": (-0.01, 0.01, DOWN),
                                                                 "span_mm": (1, 1500, FREE)}, least=-math.inf),
    "quill that points off": Law(lathe_geometry.quill_shift, {"slope_mm_per_mm": (0, 0.01, UP), "extension_change_mm": (0, 150, UP)}),
    "turn of a screw": Law(indicator.screw_angle, {"move_mm": (0, 1, UP), "pitch_mm": (0.2, 5, DOWN)}),
    "steepest taper": Law(setover.steepest_taper, {"span_mm": (10, 1500, DOWN), "travel_mm": (0, 50, UP), "greatest_share": (0.001, 0.07, UP)}),
    "length between the points": Law(setover.working_span, {"overall_length_mm": (40, 1500, UP), "headstock_depth_mm": (0, 19, DOWN),
                                                            "tailstock_depth_mm": (0, 19, DOWN)}),
    "doubt of a growth": Law(difference_budget.temperature_uncertainty,
                             {"length_mm": (1, 300, UP), "expansion_per_k": (*_KELVIN, UP), "expansion_unsure_per_k": (0, 1e-5, UP),
                              "temperature_change_k": (0, 50, UP), "unsure_change_k": (0, 5, UP)}),
    # measuring
    "uncertainty of the move": Law(partial(difference_budget.move_uncertainty, 0.02, 300, 30, 270),
                                   {"difference_unsure_mm": (0, 0.1, UP), "span_unsure_mm": (0, 12, UP),
                                    "first_unsure_mm": (0, 12, UP), "second_unsure_mm": (0, 12, UP)}),
    "expanded uncertainty": Law(uncertainty.expanded, {"standard_uncertainty_mm": (0, 1, UP), "coverage": (0.1, 20, UP)}),
    "acceptance limit": Law(conformity.acceptance_limit, {"limit_mm": (0.001, 1, UP), "standard_uncertainty_mm": (0, 0.5, DOWN),
                                                          "coverage": (0.1, 5, DOWN)},
                            together=lambda g: g["coverage"] * g["standard_uncertainty_mm"] <= g["limit_mm"]),
    "probability of keeping a limit": Law(conformity.conformity_probability,
                                          {"difference_mm": (0, 0.1, DOWN), "standard_uncertainty_mm": (0, 0.1, FREE),
                                           "limit_mm": (0.001, 0.1, UP), "degrees_of_freedom": (1, 200, FREE)}),
    "wrong passes": Law(conformity.pass_rate, {"true_difference_mm": (0, 0.1, DOWN), "standard_uncertainty_mm": (0, 0.1, FREE),
                                               "limit_mm": (0.001, 0.1, UP), "coverage": (0.1, 5, DOWN)}),
    "coverage factor": Law(student.two_sided_factor, {"probability": (0.5, 0.9999, UP), "degrees_of_freedom": (1, 1e6, DOWN)}),
    "readings for a target": Law(partial(adequacy.readings_for_target, most_readings=10**9),
                                 {"target_mm": (0.001, 0.1, DOWN), "repeatability_mm": (0, 0.02, UP), "other_mm": (0, 0.1, UP)},
                                 least=1, together=lambda g: g["target_mm"] > 1.001 * g["other_mm"]),
    "lean of a gauge": Law(bore_gauging.tilt_error, {"diameter_mm": (1, 300, UP), "tilt_deg": (0, 5, UP)}),
    "reading of a bore": Law(partial(bore_gauging.bore_reading_uncertainty, readings=3),
                             {"instrument_mm": (0, 0.1, UP), "reading_mm": (0, 0.1, UP), "feel_mm": (0, 0.1, UP),
                              "temperature_mm": (0, 0.1, UP), "form_mm": (0, 0.1, UP)}),
    "size of a warm part": Law(fit_temperature.size_at_20, {"reading_mm": (1, 300, UP), "work_per_k": (*_KELVIN, FREE),
                                                            "work_degc": (-30, 70, DOWN), "gauge_per_k": (*_KELVIN, FREE),
                                                            "gauge_degc": (-30, 70, UP)}),
    "clearance of a warm fit": Law(fit_temperature.clearance_at,
                                   {"clearance_at_20_mm": (-0.1, 0.5, UP), "diameter_mm": (1, 200, FREE), "bore_per_k": (*_KELVIN, FREE),
                                    "bore_degc": (-30, 70, UP), "shaft_per_k": (*_KELVIN, FREE), "shaft_degc": (-30, 70, DOWN)},
                                   least=-math.inf),
    "clearance": Law(fits.diametral_clearance, {"bore_mm": (1, 200, UP), "shaft_mm": (1, 200, DOWN)}, least=-math.inf),
    "limit of a chart": Law(lambda step: control_chart.individuals_chart([0, step, 0, step]).upper, {"step": (0, 1, UP)}),
}  # fmt: skip


def _value(law: Law, given: Mapping[str, float]) -> float:
    found = law.formula(**given)
    assert math.isfinite(found)
    assert found >= law.least - _SLACK
    return found


@pytest.mark.parametrize("law", _LAWS.values(), ids=_LAWS)
def test_every_corner_of_the_range_gives_a_number(law: Law) -> None:
    tried = 0
    for corner in product(*((low, high) for low, high, _ in law.axes.values())):
        given_here = dict(zip(law.axes, corner, strict=True))
        if law.together(given_here):
            _value(law, given_here)
            tried += 1
    assert tried


@pytest.mark.parametrize("law", _LAWS.values(), ids=_LAWS)
@settings(max_examples=50)
@given(data=st.data())
def test_a_result_goes_the_right_way(law: Law, data: st.DataObject) -> None:
    here = {name: data.draw(st.floats(low, high), label=name) for name, (low, high, _) in law.axes.items()}
    if not law.together(here):
        return
    found = _value(law, here)
    for name, (_, high, goes) in law.axes.items():
        more = here | {name: data.draw(st.floats(here[name], high), label=f"more {name}")}
        if not law.together(more):
            continue
        change = _value(law, more) - found
        assert goes == FREE or goes * change >= -_SLACK * max(1, abs(found)), name


def test_what_lies_past_a_range_is_refused_not_reckoned() -> None:
    with pytest.raises(OutOfRange):
        _thrust(kd=24000, material_factor=2, feed_mm=1.26, diameter_mm=10, wear_factor=1)
