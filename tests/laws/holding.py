"""Holding work, masses, castings."""

from functools import partial

from laws.law import DOWN, FREE, UP, Axis, Given, Law
from tailtrue.calc import balance, casting, centre_points, chuck, lifting, pouring, solids, turning_masses, work_holding

_SPEED = (0.0, 5000.0, UP)
_HOLD: dict[str, Axis] = {"grip_n": (0, 50000, UP), "friction": (0.01, 1, UP), "safety": (1, 10, DOWN)}
_DISC: dict[str, Axis] = {"diameter_mm": (50, 300, DOWN), "bore_mm": (10, 80, UP), "bore_offset_mm": (0, 10, UP)}
_BLANK = {
    "finished_diameter_mm": (20, 300, UP), "finished_width_mm": (5, 100, UP), "allowance_mm": (0.5, 10, UP), "top_extra_mm": (0, 20, UP),
    "draft_deg": (0, 5, UP),
}  # fmt: skip
_FRUSTUM: dict[str, Axis] = {"small_diameter_mm": (1, 50, UP), "large_diameter_mm": (50, 300, UP), "height_mm": (1, 300, UP)}


def _hole_within(given: Given) -> bool:
    return given["bore_mm"] / 2 + given["bore_offset_mm"] < 0.99 * given["diameter_mm"] / 2


LAWS: dict[str, Law] = {
    "chuck.grip_for_cut": Law(chuck.grip_for_cut, {"cutting_force_n": (0, 5000, UP), "cut_diameter_mm": (1, 500, UP),
                                               "grip_diameter_mm": (1, 500, DOWN), "friction": (0.01, 1, DOWN),
                                               "safety": (1.5, 10, UP)}),
    "chuck.residual_grip": Law(chuck.residual_grip, {"grip_at_rest_n": (0, 50000, UP), "jaw_pull_n": (0, 50000, DOWN)}),
    "chuck.jaw_pull": Law(partial(chuck.jaw_pull, 3), {"jaw_mass_kg": (0.01, 5, UP), "jaw_radius_mm": (5, 300, UP),
                                                         "spindle_speed_per_min": _SPEED}),
    "chuck.scroll_grip": Law(chuck.scroll_grip, {"key_torque_nmm": (1, 2e5, UP), "key_turns": (0.1, 20, UP),
                                                "scroll_pitch_mm": (1, 20, DOWN), "efficiency": (0.01, 1, UP)}),
    "work_holding.tilt_safety": Law(work_holding.tilt_safety,
                                  {"cutting_force_n": (1, 5000, DOWN), "overhang_mm": (0, 300, DOWN), "grip_n": (0, 50000, UP),
                                   "grip_length_mm": (1, 100, FREE), "grip_diameter_mm": (1, 300, UP), "friction": (0.01, 1, UP)}),
    "work_holding.least_grip_length": Law(partial(work_holding.least_grip_length, jaw_length_mm=100),
                          {"diameter_mm": (1, 100, UP), "share_of_diameter": (0.1, 1, UP), "share_of_jaw": (0.1, 1, UP), "least_mm": (1, 100, UP)}),
    "centre_points.separating_force": Law(centre_points.separating_force, {"radial_force_n": (0, 5000, UP), "point_angle_deg": (30, 120, UP)}),
    "centre_points.seat_load": Law(centre_points.seat_load, {"area_mm2": (0.1, 1000, UP), "pressure_mpa": (0.1, 500, UP)}),
    "turning_masses.unbalance_force": Law(turning_masses.unbalance_force, {"mass_kg": (0.01, 50, UP), "eccentricity_mm": (0, 50, UP),
                                               "spindle_speed_per_min": _SPEED}),
    "turning_masses.unbalance_speed_limit": Law(turning_masses.unbalance_speed_limit, {"eccentricity_mm": (1e-3, 50, DOWN), "force_to_weight": (1e-3, 2, UP)}),
    "turning_masses.kinetic_energy": Law(turning_masses.kinetic_energy, {"mass_kg": (0.01, 50, UP), "speed_m_s": (0, 100, UP)}),
    "balance.speed_for_force": Law(balance.speed_for_force, {"force_n": (0.01, 1000, UP), "mass_kg": (0.01, 50, DOWN),
                                                       "eccentricity_mm": (1e-3, 50, DOWN)}),
    "solids.mass_slab": Law(solids.mass_slab, {"width_mm": (0.1, 500, UP), "thickness_mm": (0.1, 200, UP),
                          "length_mm": (0.1, 2000, UP), "density_kg_m3": (1700, 9200, UP)}),
    "solids.turning_energy": Law(solids.turning_energy, {"mass_kg": (0.01, 50, UP), "diameter_mm": (1, 500, UP),
                                                            "spindle_speed_per_min": _SPEED}),
    "lifting.recommended_weight": Law(partial(lifting.recommended_weight, 23),
                          {"horizontal_mm": (0, 630, DOWN), "height_mm": (750, 1750, DOWN), "travel_mm": (0, 1750, DOWN),
                           "twist_deg": (0, 135, DOWN), "coupling": (0.5, 1, UP), "frequency": (0.1, 1, UP)}),
    "casting.pattern_size": Law(casting.pattern_size, {"casting_mm": (1, 1000, UP), "contraction": (0, 0.03, UP)}),
    "casting.modulus_factor": Law(casting.modulus_factor, {"time_ratio": (1, 2, UP)}, least=1),
    "pouring.melt_mass": Law(pouring.melt_mass, {"volume_mm3": (1, 1e7, UP), "density_kg_m3": (1000, 9000, UP), "surplus_share": (0, 1, UP)}),
    "pouring.casting_yield": Law(pouring.casting_yield, {"casting_volume_mm3": (1, 1e7, UP), "other_volume_mm3": (0, 1e7, DOWN)}),
    "chuck.grip_for_torque_and_thrust": Law(chuck.grip_for_torque_and_thrust,
                                            {"torque_nmm": (0, 1e6, UP), "axial_force_n": (0, 10000, UP), "grip_diameter_mm": (1, 500, DOWN),
                                             "friction": (0.01, 1, DOWN), "safety": (1.5, 10, UP)}),
    "chuck.grip_at_rest": Law(chuck.grip_at_rest, {"grip_needed_n": (0, 50000, UP), "jaw_pull_n": (0, 50000, UP), "safety": (1.5, 10, UP)}),
    "chuck.grip_speed_limit": Law(lambda jaws, **g: chuck.grip_speed_limit(jaws=round(jaws), **g),
                                  {"grip_at_rest_n": (100, 50000, UP), "grip_needed_n": (0, 30000, DOWN), "jaws": (2, 6, DOWN), "jaw_mass_kg": (0.01, 5, DOWN),
                                   "jaw_radius_mm": (5, 300, DOWN), "safety": (1.5, 10, DOWN)},
                                  together=lambda g: g["grip_at_rest_n"] / g["safety"] > 1.001 * g["grip_needed_n"]),
    "chuck.axial_hold": Law(chuck.axial_hold, _HOLD),
    "chuck.torque_hold": Law(chuck.torque_hold, _HOLD | {"grip_diameter_mm": (1, 500, UP)}),
    "chuck.rim_speed_limit": Law(chuck.rim_speed_limit, {"diameter_mm": (1, 1000, DOWN), "rim_speed_m_s": (1, 100, UP)}),
    "work_holding.tilt_moment_held": Law(work_holding.tilt_moment_held, {"grip_n": (0, 50000, UP), "grip_length_mm": (1, 100, UP),
                                                                         "grip_diameter_mm": (1, 300, UP), "friction": (0.01, 1, UP)}),
    "centre_points.seat_area": Law(centre_points.seat_area, {"seat_diameter_mm": (2, 30, UP), "pilot_diameter_mm": (0.5, 1.9, DOWN), "point_angle_deg": (30, 120, DOWN)}),
    "centre_points.dead_centre_heat": Law(centre_points.dead_centre_heat,
                                          {"axial_force_n": (0, 5000, UP), "friction": (0.01, 1, UP), "mean_diameter_mm": (1, 20, UP),
                                           "point_angle_deg": (30, 120, DOWN), "spindle_speed_per_min": _SPEED}),
    "turning_masses.rim_speed": Law(turning_masses.rim_speed, {"diameter_mm": (1, 500, UP), "spindle_speed_per_min": _SPEED}),
    "balance.balance_grade": Law(balance.balance_grade, {"eccentricity_mm": (0, 5, UP), "spindle_speed_per_min": _SPEED}),
    "balance.eccentricity_for_grade": Law(balance.eccentricity_for_grade, {"grade_mm_s": (0.1, 4000, UP), "spindle_speed_per_min": (1, 5000, DOWN)}),
    "balance.unbalance_for_grade": Law(balance.unbalance_for_grade, {"grade_mm_s": (0.1, 4000, UP), "mass_kg": (0.01, 50, UP), "spindle_speed_per_min": (1, 5000, DOWN)}),
    "balance.speed_for_grade": Law(balance.speed_for_grade, {"grade_mm_s": (0.1, 4000, UP), "eccentricity_mm": (1e-3, 5, DOWN)}),
    "balance.centre_of_mass": Law(lambda true_kg, off_kg, off_mm: balance.centre_of_mass([true_kg, off_kg], [0, off_mm]),
                                  {"true_kg": (0.01, 50, DOWN), "off_kg": (0.01, 50, UP), "off_mm": (0, 50, UP)}),
    "balance.bored_disc_offset: on its outside": Law(lambda **g: balance.bored_disc_offset(**g).from_outside_axis_mm, _DISC, together=_hole_within),
    "balance.bored_disc_offset: on its hole": Law(lambda **g: balance.bored_disc_offset(**g).from_hole_axis_mm, _DISC, together=_hole_within),
    "solids.mass_stepped": Law(lambda diameter_mm, length_mm, **g: solids.mass_stepped([diameter_mm, 20], [length_mm, 50], **g),
                               {"diameter_mm": (1, 300, UP), "length_mm": (1, 2000, UP), "density_kg_m3": (500, 20000, UP)}),
    "solids.mass_with_pieces": Law(lambda count, **g: solids.mass_with_pieces(count=round(count), **g),
                                   {"base_kg": (0, 50, UP), "piece_kg": (0, 10, UP), "count": (1, 5, UP)}),
    "solids.mass_cone": Law(solids.mass_cone, {"large_diameter_mm": (60, 100, UP), "small_diameter_mm": (30, 60, UP), "length_mm": (1, 300, UP),
                                               "density_kg_m3": (500, 20000, UP), "bore_mm": (0, 30, DOWN)}),
    "lifting.lifting_index": Law(lifting.lifting_index, {"mass_kg": (0.1, 100, UP), "recommended_kg": (0.1, 50, DOWN)}),
    "lifting.reduced_weight": Law(lambda weight_kg, reduction: lifting.reduced_weight(weight_kg, [0.2, reduction]), {"weight_kg": (1, 50, UP), "reduction": (0, 0.99, DOWN)}),
    "casting.draft_taper": Law(casting.draft_taper, {"height_mm": (1, 300, UP), "draft_deg": (0, 5, UP)}),
    "casting.cast_blank: small end": Law(lambda **g: casting.cast_blank(**g).small_diameter_mm, _BLANK, ),
    "casting.cast_blank: large end": Law(lambda **g: casting.cast_blank(**g).large_diameter_mm, _BLANK),
    "casting.cast_blank: height": Law(lambda **g: casting.cast_blank(**g).height_mm, _BLANK),
    "casting.blank_volume": Law(casting.blank_volume, _FRUSTUM),
    "casting.blank_surface": Law(casting.blank_surface, _FRUSTUM),
    "casting.modulus": Law(casting.modulus, {"volume_mm3": (1, 1e7, UP), "cooling_surface_mm2": (1, 1e6, DOWN)}),
    "casting.side_feeder_diameter": Law(casting.side_feeder_diameter, {"casting_modulus_mm": (0.1, 50, UP), "factor": (1, 2, UP), "height_ratio": (1, 1.5, DOWN)}),
    "casting.top_feeder_diameter": Law(casting.top_feeder_diameter, {"casting_volume_mm3": (1e4, 5e4, UP), "casting_surface_mm2": (15e3, 3e4, DOWN),
                                                                     "face_diameter_mm": (60, 100, FREE), "factor": (1, 1.5, UP), "height_ratio": (1, 1.5, DOWN)}),
    "casting.feeder_volume_least": Law(casting.feeder_volume_least, {"casting_volume_mm3": (1, 1e7, UP), "shrinkage": (0.01, 0.1, UP), "efficiency": (0.11, 1, DOWN)}),
    "casting.stick_height": Law(casting.stick_height, {"blank_height_mm": (1, 500, UP), "top_share": (0.4, 0.5, UP)}),
    "pouring.fall_velocity": Law(pouring.fall_velocity, {"height_mm": (0, 1000, UP)}),
    "pouring.fall_height": Law(pouring.fall_height, {"velocity_m_s": (0, 10, UP)}),
    "pouring.choke_area": Law(pouring.choke_area, {"mass_kg": (0.01, 50, UP), "density_kg_m3": (1000, 9000, DOWN), "time_s": (0.1, 100, DOWN),
                                                   "height_mm": (1, 1000, DOWN), "discharge": (0.1, 1, DOWN)}),
    "pouring.sprue_top_area": Law(pouring.sprue_top_area, {"choke_area_mm2": (1, 1000, UP), "total_height_mm": (50, 500, UP), "basin_height_mm": (1, 50, DOWN)}),
    "pouring.gate_velocity": Law(pouring.gate_velocity, {"mass_kg": (0.01, 50, UP), "density_kg_m3": (1000, 9000, DOWN), "time_s": (0.1, 100, DOWN),
                                                         "gate_area_mm2": (1, 1000, DOWN)}),
}  # fmt: skip
