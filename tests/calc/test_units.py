"""Wherever a formula changes units on the way, the same formula with units carried along by pint gives the same result."""

from math import atan, cos, pi, sin, tan
from typing import Any

import pint
import pytest

from tailtrue.calc import (
    b41,
    balance,
    beams,
    bending,
    bore_gauging,
    carriage_path,
    casting,
    causes,
    centre_hole,
    centre_points,
    chip,
    chuck,
    cut_power,
    cut_time,
    cutting,
    drill_models,
    drilling,
    fits,
    indicator,
    interference,
    lifting,
    morse_taper,
    pouring,
    rotors,
    screws,
    setover,
    shrink,
    solids,
    spindle_band,
    thermal,
    tool_wear,
    turning_masses,
)

_Q: Any = pint.UnitRegistry().Quantity

_G = _Q(9.80665, "m/s**2")
_SPEED = _Q(600, "1/min")
_TURN = 2 * pi * _SPEED  # radians in a time, which pint counts as plain numbers
_STEEL = {"modulus_mpa": 207000, "density_kg_m3": 7850}
_E, _RHO = _Q(207000, "MPa"), _Q(7850, "kg/m**3")
_D, _L = _Q(25, "mm"), _Q(500, "mm")
_I = pi * _D**4 / 64
_ALPHA = _Q(23.6e-6, "1/delta_degC")


def _radians(degrees: float) -> float:
    turned: float = _Q(degrees, "degree").to("radian").m
    return turned


_CASES = [
    # speeds, times and powers of a cut
    (cutting.spindle_speed(30, 25), _Q(30, "m/min") / (pi * _D), "1/min"),
    (cutting.surface_speed(600, 25), _SPEED * pi * _D, "m/min"),
    (spindle_band.speed_by_head(30, 25), 4 * _Q(30, "m/min").to("ft/min").m / _D.to("inch").m * _Q(1, "1/min"), "1/min"),
    (chuck.rim_speed_limit(160, 25), _Q(25, "m/s") / (pi * _Q(160, "mm")), "1/min"),
    (turning_masses.rim_speed(160, 600), _SPEED * pi * _Q(160, "mm"), "m/s"),
    (cutting.cutting_power(301.6, 30), _Q(301.6, "N") * _Q(30, "m/min"), "W"),
    (cutting.removal_rate(30, 1, 0.15), _Q(30, "m/min") * _Q(1, "mm") * _Q(0.15, "mm"), "cm**3/min"),
    (cutting.cut_time(100, 0.1, 600), _Q(100, "mm") / (_Q(0.1, "mm") * _SPEED), "s"),
    (cut_time.facing_pass_time(50, 10, 2, 1, 0.1, 600), _Q(23, "mm") / (_Q(0.1, "mm") * _SPEED), "s"),
    (cut_time.passes_time(60, 100, 10, 3, 5), 3 * (_Q(65, "s") + _Q(100, "mm") / _Q(10, "mm/s")), "s"),
    (cut_time.feed_for_time(100, 60, 600), _Q(100, "mm") / (_Q(60, "s") * _SPEED), "mm"),
    (cut_time.drill_removal_rate(10, 0.2, 600, 4), pi / 4 * _Q(84, "mm**2") * _Q(0.2, "mm") * _SPEED, "cm**3/min"),
    (
        cut_power.power_from_constant(1690, 107, 2.54, 0.4),
        _Q(1690, "MPa") * _Q(107, "m/min") * _Q(2.54, "mm") * _Q(0.4, "mm"),
        "W",
    ),
    (cut_power.depth_for_power(2000, 0, 0.1, 30, 150), _Q(150, "W") / (_Q(2000, "MPa") * _Q(0.1, "mm") * _Q(30, "m/min")), "mm"),
    (drilling.drill_power(17550, 600), _Q(17550, "N*mm") * _TURN, "W"),
    (tool_wear.cutting_path(70, 15, 0.1), pi * _Q(70, "mm") * 150, "km"),
    (tool_wear.edge_wear(0.033, 50), _Q(0.033, "km") * _Q(50, "um/km"), "mm"),
    # masses, forces and energies of what turns
    (beams.mass_cylinder(25, 500, 7850), _RHO * pi / 4 * _D**2 * _L, "kg"),
    (solids.mass_stepped([25, 40], [500, 10], 7850), _RHO * pi / 4 * (_D**2 * _L + _Q(16000, "mm**3")), "kg"),
    (solids.mass_slab(80, 40, 164, 2700), _Q(2700, "kg/m**3") * _Q(80 * 40 * 164, "mm**3"), "kg"),
    (solids.mass_cone(80, 40, 30, 2700), _Q(2700, "kg/m**3") * pi / 12 * _Q(11200 * 30, "mm**3"), "kg"),
    (turning_masses.unbalance_force(1.2, 3, 600), _Q(1.2, "kg") * _Q(3, "mm") * _TURN**2, "N"),
    (turning_masses.unbalance_speed_limit(3, 0.3), (0.3 * _G / _Q(3, "mm")) ** 0.5 / (2 * pi), "1/min"),
    (turning_masses.kinetic_energy(0.3, 12), _Q(0.3, "kg") * _Q(12, "m/s") ** 2 / 2, "J"),
    (solids.turning_energy(9, 160, 600), _Q(9, "kg") * _Q(160, "mm") ** 2 / 8 * _TURN**2 / 2, "J"),
    (balance.balance_grade(3, 600), _Q(3, "mm") * _TURN, "mm/s"),
    (balance.eccentricity_for_grade(6.3, 600), _Q(6.3, "mm/s") / _TURN, "mm"),
    (balance.unbalance_for_grade(6.3, 1.2, 600), _Q(1.2, "kg") * _Q(6.3, "mm/s") / _TURN, "g*mm"),
    (balance.speed_for_grade(6.3, 0.1), _Q(6.3, "mm/s") / _Q(0.1, "mm") / (2 * pi), "1/min"),
    (balance.speed_for_force(14, 1.2, 3), (_Q(14, "N") / (_Q(1.2, "kg") * _Q(3, "mm"))) ** 0.5 / (2 * pi), "1/min"),
    (chuck.jaw_pull(3, 0.35, 60, 600), 3 * _Q(0.35, "kg") * _Q(60, "mm") * _TURN**2, "N"),
    (
        chuck.grip_speed_limit(9000, 2400, 3, 0.35, 60, 1.5),
        (_Q(3600, "N") / (3 * _Q(0.35, "kg") * _Q(60, "mm"))) ** 0.5 / (2 * pi),
        "1/min",
    ),
    (
        centre_points.dead_centre_heat(300, 0.1, 5, 60, 600),
        _Q(300, "N") * 0.1 / 0.5 * pi * _Q(5, "mm") * _SPEED,
        "W",
    ),
    # bars that bend and whirl
    (beams.self_weight_stress(25, 500, 7850), _RHO * _G * pi / 4 * _D**2 * _L**2 / 8 / (pi / 32 * _D**3), "MPa"),
    (beams.self_weight_sag(25, 500, **_STEEL), 5 * _RHO * _G * pi / 4 * _D**2 * _L**4 / (384 * _E * _I), "mm"),
    (
        bending.sag_with_collars(25, 500, 207000, 0, [0.4], [250], 250),
        _Q(0.4, "kg") * _G * _L**3 / (48 * _E * _I),
        "mm",
    ),
    (
        beams.whirl_speed_between_centres(25, 500, **_STEEL),
        (pi / _L) ** 2 * (_E * _D**2 / (16 * _RHO)) ** 0.5 / (2 * pi),
        "1/min",
    ),
    (
        beams.whirl_speed_cantilever(25, 500, **_STEEL),
        (1.8751040687 / _L) ** 2 * (_E * _D**2 / (16 * _RHO)) ** 0.5 / (2 * pi),
        "1/min",
    ),
    (rotors.disc_speed(0.4, 500, 250, 207000, 25), (48 * _E * _I / (_L**3 * _Q(0.4, "kg"))) ** 0.5 / (2 * pi), "1/min"),
    (
        rotors.critical_speed_low_side(25, 500, 207000, 0, [0.4], [250]),
        (48 * _E * _I / (_L**3 * _Q(0.4, "kg"))) ** 0.5 / (2 * pi),
        "1/min",
    ),
    (rotors.critical_speed(25, 500, **_STEEL, masses_kg=[], stations_mm=[]), beams.whirl_speed_between_centres(25, 500, **_STEEL) * _Q(1, "1/min"), "1/min"),
    (
        rotors.critical_speed_high_side(25, 500, 207000, 0, [0.4], [250]),
        (48 * _E * _I / (_L**3 * _Q(0.4, "kg"))) ** 0.5 / (2 * pi),
        "1/min",
    ),
    (
        rotors.free_length_limit(12, 206000, 7850, 600, 0.5),
        1.8751040687 * ((0.5 / _TURN) * (_Q(206000, "MPa") * _Q(12, "mm") ** 2 / (16 * _RHO)) ** 0.5) ** 0.5,
        "mm",
    ),
    # angles, tapers and levels
    (carriage_path.path_lean(0.2, 500, 150), _Q(0.2, "mm/m") * 150 / 500, "mm/mm"),
    (1 / causes.level_row(500, 150)["path lean"], _Q(1, "mm/m") * 150 / 500, "mm/mm"),
    (setover.taper_per_foot(1.5), _Q(1.5, "inch/foot"), "mm/mm"),
    (morse_taper.half_angle(0.602), _Q(atan(_Q(0.602, "inch/foot").to("").m / 2), "radian"), "degree"),
    (indicator.screw_angle(0.015, 1.25), _Q(0.012, "turn"), "degree"),
    (setover.taper_from_half_angle(2.5), _Q(2 * tan(_radians(2.5)), "mm/mm"), "mm/mm"),
    (setover.half_angle_of_taper(0.08), _Q(atan(0.04), "radian"), "degree"),
    (bore_gauging.tilt_error(25, 2), _D / cos(_radians(2)) - _D, "mm"),
    (casting.draft_taper(41, 2), 2 * _Q(41, "mm") * tan(_radians(2)), "mm"),
    (centre_hole.cone_depth(5.3, 2.5, cone_deg=60), _Q(1.4, "mm") / tan(_radians(30)), "mm"),
    (centre_hole.cone_diameter(2, 2.5, cone_deg=60), _Q(2.5, "mm") + _Q(4, "mm") * tan(_radians(30)), "mm"),
    (chip.chip_thickness(0.2, 60), _Q(0.2, "mm") * sin(_radians(60)), "mm"),
    (drilling.point_length(20, 118), _Q(10, "mm") / tan(_radians(59)), "mm"),
    (drill_models.specific_force_drilling(1500, 0, 0.2, point_angle_deg=118), _Q(1500, "MPa"), "MPa"),
    (drilling.taper_friction_torque(1000, 0.12, 16.1544, 1.4307), 0.12 * _Q(1, "kN") * _Q(16.1544, "mm") / (2 * sin(_radians(1.4307))), "N*mm"),
    (morse_taper.friction_at_slip(1000, 20000, 16, 1.43), 2 * _Q(20, "N*m") * sin(_radians(1.43)) / (_Q(1, "kN") * _Q(16, "mm")), ""),
    (screws.screws_ratio([0, 90]), _Q((2 + abs(1 + 1j)) / 2, ""), ""),
    # metal that is poured
    (pouring.fall_velocity(150), (2 * _G * _Q(150, "mm")) ** 0.5, "m/s"),
    (pouring.fall_height(1.7), _Q(1.7, "m/s") ** 2 / (2 * _G), "mm"),
    (
        pouring.choke_area(1.288, 2400, 6, 150, 0.8),
        _Q(1.288, "kg") / (_Q(2400, "kg/m**3") * _Q(6, "s") * 0.8 * (2 * _G * _Q(150, "mm")) ** 0.5),
        "mm**2",
    ),
    (pouring.gate_velocity(1.288, 2400, 6, 130), _Q(1.288, "kg") / (_Q(2400, "kg/m**3") * _Q(6, "s") * _Q(130, "mm**2")), "m/s"),
    # sizes and pressures
    (centre_hole.bearing_pressure(249, 5.3, 2.5, cone_deg=60), _Q(249, "N") / (3**0.5 / 4 * (_Q(5.3, "mm") ** 2 - _Q(2.5, "mm") ** 2)), "MPa"),
    (bore_gauging.reamer_limits(10, 40, 62)[1], _Q(10, "mm") + _Q(58, "um"), "mm"),
    (bore_gauging.reamer_limits(10, 40, 62)[0], _Q(10, "mm") + _Q(50, "um"), "mm"),
    # warmth
    (thermal.growth(70, 23.6e-6, 5), _Q(70, "mm") * _ALPHA * _Q(5, "delta_degC"), "mm"),
    (shrink.shrink_rise(0.03, 0.025, 25, 23.6e-6), _Q(0.055, "mm") / (_D * _ALPHA), "delta_degC"),
    # thousandths and micrometres
    (interference.effective_interference(0.028, 6.3, 6.3, 0.4), _Q(28 - 0.4 * 12.6, "um"), "mm"),
    (fits.class_fit(0, 21, -20, -7).least_clearance_mm, _Q(7, "um"), "mm"),
    (fits.class_fit(0, 21, -20, -7).largest_clearance_mm, _Q(41, "um"), "mm"),
    (fits.Zone(25, -20, -7).largest_mm, _D - _Q(7, "um"), "mm"),
]  # fmt: skip


@pytest.mark.parametrize(("found", "expected", "unit"), _CASES, ids=[str(place) for place in range(len(_CASES))])
def test_units_agree(found: float, expected: Any, unit: str) -> None:
    assert found == pytest.approx(expected.to(unit).m, rel=1e-9)


def test_thousandths_of_an_inch_agree() -> None:
    row = {"class": "RC4", "over_in": "0.71", "upto_incl_in": "1.19", "source": "x"}
    limits = {"hole_lower_thou": "0", "hole_upper_thou": "1.2", "shaft_lower_thou": "-1.6", "shaft_upper_thou": "-0.8"}
    hole, shaft, _ = b41.B41.of([row | limits]).limits("RC4", 25.4)
    assert hole.upper_um == pytest.approx(_Q(1.2, "thou").to("um").m)
    assert shaft.lower_um == pytest.approx(_Q(-1.6, "thou").to("um").m)
    assert shaft.largest_mm == pytest.approx(_Q(0.9992, "inch").to("mm").m)


def test_thrust_of_a_warm_bar_agrees() -> None:
    found = thermal.growth_thrust(
        span_mm=500,
        diameter_mm=25,
        modulus_mpa=207e3,
        expansion_per_k=11.7e-6,
        temperature_change_k=10,
        machine_n_per_mm=20e3,
    )
    grown = _L * _Q(11.7e-6, "1/delta_degC") * _Q(10, "delta_degC")
    bar = _E * pi * _D**2 / 4 / _L
    assert found.rigid_n == pytest.approx((grown * bar).to("N").m)
    assert found.yielding_n == pytest.approx((grown / (1 / bar + 1 / _Q(20, "kN/mm"))).to("N").m)


def test_lifting_in_millimetres_is_lifting_in_centimetres() -> None:
    reach, height, travel = (_Q(value, "mm").to("cm").m for value in (500, 1100, 300))
    printed = 23 * (25 / reach) * (1 - 0.003 * abs(height - 75)) * (0.82 + 4.5 / travel) * (1 - 0.0032 * 45) * 0.95
    assert lifting.recommended_weight(23, 500, 1100, 300, 45, 0.95, 1) == pytest.approx(printed)
