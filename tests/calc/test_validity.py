"""Outside its range a formula refuses, and says what was read and what is allowed."""

import importlib
import inspect
import math
import re
from collections.abc import Callable
from typing import Any

import pytest

from tailtrue.calc import (
    alignment,
    beams,
    boring,
    cutting,
    drilling,
    fits,
    holding,
    joints,
    spindle,
    thermal,
    uncertainty,
)
from tailtrue.calc.validity import OutOfRange, at_least, between, finite, positive

_ACCEPTED: list[tuple[Callable[..., Any], dict[str, Any]]] = [
    (cutting.spindle_speed, {"surface_speed_m_min": 30, "diameter_mm": 25}),
    (cutting.surface_speed, {"spindle_speed_per_min": 300, "diameter_mm": 25}),
    (cutting.specific_force, {"kc11_mpa": 1350, "mc": 0.21, "chip_thickness_mm": 0.15}),
    (cutting.cutting_force, {"kc11_mpa": 1350, "mc": 0.21, "depth_mm": 1, "feed_mm": 0.15}),
    (cutting.cutting_power, {"force_n": 300, "surface_speed_m_min": 30}),
    (cutting.cut_time, {"length_mm": 100, "feed_mm": 0.1, "spindle_speed_per_min": 300}),
    (cutting.facing_time, {"diameter_mm": 50, "feed_mm": 0.1, "spindle_speed_per_min": 300}),
    (cutting.theoretical_peak_height, {"feed_mm": 0.1, "nose_radius_mm": 0.4}),
    (cutting.removal_rate, {"surface_speed_m_min": 30, "depth_mm": 1, "feed_mm": 0.15}),
    (drilling.point_length, {"diameter_mm": 10, "point_angle_deg": 118}),
    (drilling.least_pilot, {"diameter_mm": 10, "chisel_ratio": 0.18}),
    (
        drilling.thrust_shaw_oxford,
        {
            "kd": 18000,
            "feed_mm": 0.1,
            "diameter_mm": 10,
            "pilot_ratio": 0.3,
            "wear_factor": 1.3,
            "chisel_ratio": 0.18,
            "thrust_factor": 1.355,
            "chisel_thrust_factor": 0.03,
        },
    ),
    (
        drilling.torque_shaw_oxford,
        {
            "kd": 18000,
            "feed_mm": 0.1,
            "diameter_mm": 10,
            "pilot_ratio": 0.3,
            "wear_factor": 1.3,
            "chisel_ratio": 0.18,
            "torque_factor": 1.085,
        },
    ),
    (drilling.thrust_tool_maker, {"material_factor": 2, "feed_mm": 0.2, "diameter_mm": 10}),
    (drilling.torque_tool_maker, {"material_factor": 2, "feed_mm": 0.2, "diameter_mm": 10}),
    (
        drilling.hand_thrust,
        {"handwheel_force_n": 100, "handwheel_radius_mm": 75, "screw_pitch_mm": 5, "efficiency": 0.25},
    ),
    (
        drilling.taper_friction_torque,
        {"thrust_n": 1000, "friction": 0.12, "mean_diameter_mm": 16, "half_angle_deg": 1.43},
    ),
    (drilling.drill_power, {"torque_nmm": 5000, "spindle_speed_per_min": 300}),
    (boring.overhang_ratio, {"overhang_mm": 48, "shank_mm": 12}),
    (boring.boring_bar_deflection, {"force_n": 50, "overhang_mm": 48, "shank_mm": 12, "modulus_mpa": 206000}),
    (beams.second_moment, {"diameter_mm": 25}),
    (
        beams.deflection_between_centres,
        {"force_n": 10, "span_mm": 300, "station_mm": 30, "modulus_mpa": 205000, "diameter_mm": 25},
    ),
    (beams.deflection_midspan, {"force_n": 10, "span_mm": 300, "modulus_mpa": 205000, "diameter_mm": 25}),
    (
        beams.deflection_cantilever,
        {"force_n": 10, "length_mm": 127, "modulus_mpa": 205000, "diameter_mm": 25},
    ),
    (
        beams.self_weight_sag,
        {"diameter_mm": 25, "span_mm": 300, "modulus_mpa": 205000, "density_kg_m3": 7850},
    ),
    (beams.mass_cylinder, {"diameter_mm": 75, "length_mm": 20, "density_kg_m3": 2700, "bore_mm": 25}),
    (
        beams.whirl_speed_cantilever,
        {"diameter_mm": 12, "length_mm": 900, "modulus_mpa": 206000, "density_kg_m3": 7850},
    ),
    (
        beams.whirl_speed_between_centres,
        {"diameter_mm": 25, "span_mm": 300, "modulus_mpa": 206000, "density_kg_m3": 7850},
    ),
    (holding.unbalance_force, {"mass_kg": 1, "eccentricity_mm": 1, "spindle_speed_per_min": 300}),
    (holding.unbalance_speed_limit, {"eccentricity_mm": 1, "force_to_weight": 0.3}),
    (holding.rim_speed, {"diameter_mm": 100, "spindle_speed_per_min": 300}),
    (holding.kinetic_energy, {"mass_kg": 1, "speed_m_s": 5}),
    (joints.bond_area, {"diameter_mm": 25, "length_mm": 20}),
    (joints.bond_torque, {"shear_mpa": 1, "diameter_mm": 25, "length_mm": 20}),
    (joints.derated_shear, {"nominal_mpa": 20, "factors": [0.6], "safety": 3}),
    (joints.skim_torque, {"cutting_force_n": 30, "diameter_mm": 75}),
    (joints.bond_volume, {"diameter_mm": 25, "length_mm": 20, "diametral_clearance_mm": 0.05}),
    (
        alignment.tailstock_move,
        {"difference_mm": 0.02, "span_mm": 300, "first_station_mm": 30, "second_station_mm": 270},
    ),
    (
        alignment.diameter_difference,
        {"move_mm": 0.02, "span_mm": 300, "first_station_mm": 30, "second_station_mm": 270},
    ),
    (
        alignment.tailstock_move_exact,
        {"difference_mm": 0.02, "bar_span_mm": 300, "first_station_mm": 30, "second_station_mm": 270},
    ),
    (alignment.scaled_tolerance, {"tolerance_mm": 0.02, "tolerance_length_mm": 300, "spacing_mm": 240}),
    (
        alignment.height_error_difference,
        {
            "height_error_mm": 0.1,
            "collar_diameter_mm": 70,
            "span_mm": 300,
            "first_station_mm": 30,
            "second_station_mm": 270,
        },
    ),
    (
        alignment.tool_height_difference,
        {
            "tool_height_mm": 0.2,
            "height_error_mm": 0.1,
            "collar_diameter_mm": 70,
            "span_mm": 300,
            "first_station_mm": 30,
            "second_station_mm": 270,
        },
    ),
    (alignment.uses_left, {"diameter_mm": 70, "least_diameter_mm": 55, "diameter_per_use_mm": 0.15}),
    (
        alignment.setover_for_taper,
        {"large_diameter_mm": 50, "small_diameter_mm": 45, "taper_length_mm": 100, "span_mm": 200},
    ),
    (
        uncertainty.difference_uncertainty,
        {
            "repeatability_mm": 0.001,
            "readings": 3,
            "resolution_mm": 0.001,
            "local_error_mm": 0.001,
            "form_mm": 0.001,
            "temperature_mm": 0.001,
            "wear_mm": 0.001,
            "deflection_mm": 0.001,
        },
    ),
    (uncertainty.expanded, {"standard_uncertainty_mm": 0.002, "coverage": 2}),
    (uncertainty.verdict, {"difference_mm": 0.005, "expanded_mm": 0.003, "limit_mm": 0.01}),
    (thermal.growth, {"length_mm": 70, "expansion_per_k": 2.3e-5, "temperature_change_k": 5}),
    (fits.diametral_clearance, {"bore_mm": 25, "shaft_mm": 24.95}),
    (
        fits.bore_window,
        {
            "measured_least_mm": 24.966,
            "measured_largest_mm": 24.974,
            "least_gap_mm": 0.025,
            "largest_gap_mm": 0.075,
            "gauge_uncertainty_mm": 0.005,
            "step_mm": 0.001,
        },
    ),
    (spindle.choose_speed, {"available": [70, 300], "wanted_per_min": 200, "cap_per_min": 1000}),
    (
        spindle.choose_from_range,
        {
            "low_per_min": 50,
            "high_per_min": 2000,
            "step_per_min": 10,
            "wanted_per_min": 200,
            "cap_per_min": 1000,
        },
    ),
]
_UNBOUNDED = {drilling.tool_maker_holds}  # answers for any feed

_SPOILT = [
    pytest.param(formula, given | {name: bad}, id=f"{formula.__name__}-{name}-{bad}")
    for formula, given in _ACCEPTED
    for name in given
    for bad in (math.nan, math.inf, -math.inf)
    if name not in {"available", "factors"}
]


def test_every_formula_is_listed() -> None:
    modules = [
        alignment,
        beams,
        boring,
        cutting,
        drilling,
        fits,
        holding,
        joints,
        spindle,
        thermal,
        uncertainty,
    ]
    formulas = {
        member
        for module in modules
        for label, member in vars(module).items()
        if inspect.isfunction(member) and not label.startswith("_") and member.__module__ == module.__name__
    }
    assert formulas == {formula for formula, _ in _ACCEPTED} | _UNBOUNDED


@pytest.mark.parametrize(("formula", "given"), _ACCEPTED, ids=[formula.__name__ for formula, _ in _ACCEPTED])
def test_sound_input_is_accepted_and_gives_something_finite(formula: Callable[..., Any], given: dict[str, Any]) -> None:
    found = formula(**given)
    assert isinstance(found, str) or all(math.isfinite(value) for value in (found if isinstance(found, tuple) else (found,)))


@pytest.mark.parametrize(("formula", "given"), _SPOILT)
def test_what_is_no_number_is_refused(formula: Callable[..., Any], given: dict[str, Any]) -> None:
    with pytest.raises(OutOfRange):
        formula(**given)


@pytest.mark.parametrize(
    ("function", "arguments"),
    [
        ("cutting.specific_force", {"kc11_mpa": 1350, "mc": 0.21, "chip_thickness_mm": 0.019}),
        ("cutting.specific_force", {"kc11_mpa": 1350, "mc": 0.21, "chip_thickness_mm": 2.6}),
        ("cutting.spindle_speed", {"surface_speed_m_min": 30, "diameter_mm": 0}),
        ("cutting.theoretical_peak_height", {"feed_mm": 0.25, "nose_radius_mm": 0.4}),
        ("drilling.thrust_shaw_oxford", {"kd": 18000, "feed_mm": 0.1, "diameter_mm": 1.5}),
        ("drilling.torque_shaw_oxford", {"kd": 18000, "feed_mm": 1.3, "diameter_mm": 10}),
        ("drilling.torque_shaw_oxford", {"kd": 18000, "feed_mm": 0.1, "diameter_mm": 51}),
        ("drilling.thrust_shaw_oxford", {"kd": 18000, "feed_mm": 0.1, "diameter_mm": 10, "wear_factor": 0.9}),
        ("drilling.thrust_tool_maker", {"material_factor": 2, "feed_mm": 0.09, "diameter_mm": 10}),
        ("drilling.torque_tool_maker", {"material_factor": 2, "feed_mm": 0.51, "diameter_mm": 10}),
        (
            "drilling.hand_thrust",
            {"handwheel_force_n": 100, "handwheel_radius_mm": 75, "screw_pitch_mm": 5, "efficiency": 1.1},
        ),
        (
            "beams.deflection_midspan",
            {"force_n": 10, "span_mm": 124, "modulus_mpa": 205000, "diameter_mm": 25},
        ),
        (
            "beams.deflection_cantilever",
            {"force_n": 10, "length_mm": 62, "modulus_mpa": 205000, "diameter_mm": 25},
        ),
        (
            "beams.deflection_cantilever",
            {"force_n": 1000, "length_mm": 900, "modulus_mpa": 205000, "diameter_mm": 8},
        ),
        ("beams.mass_cylinder", {"diameter_mm": 75, "length_mm": 20, "density_kg_m3": 2700, "bore_mm": 76}),
        ("joints.bond_torque", {"shear_mpa": 1, "diameter_mm": 25, "length_mm": 38}),
        ("joints.derated_shear", {"nominal_mpa": 20, "factors": [0.6, 1.2], "safety": 3}),
        ("joints.derated_shear", {"nominal_mpa": 20, "factors": [0.6, 0], "safety": 3}),
        ("joints.derated_shear", {"nominal_mpa": 20, "factors": [math.nan], "safety": 3}),
        ("joints.derated_shear", {"nominal_mpa": 20, "factors": [0.6], "safety": 0.5}),
        (
            "alignment.tailstock_move",
            {"difference_mm": 0.02, "span_mm": 300, "first_station_mm": 270, "second_station_mm": 30},
        ),
        (
            "alignment.tailstock_move",
            {"difference_mm": 0.02, "span_mm": 300, "first_station_mm": 30, "second_station_mm": 301},
        ),
        (
            "alignment.tailstock_move",
            {"difference_mm": 12, "span_mm": 300, "first_station_mm": 30, "second_station_mm": 270},
        ),
        (
            "alignment.height_error_difference",
            {
                "height_error_mm": 4,
                "collar_diameter_mm": 70,
                "span_mm": 300,
                "first_station_mm": 30,
                "second_station_mm": 270,
            },
        ),
        (
            "alignment.setover_for_taper",
            {"large_diameter_mm": 50, "small_diameter_mm": 30, "taper_length_mm": 100, "span_mm": 200},
        ),
        (
            "uncertainty.difference_uncertainty",
            {
                "repeatability_mm": 0.001,
                "readings": 0,
                "resolution_mm": 0.001,
                "local_error_mm": 0,
                "form_mm": 0,
                "temperature_mm": 0,
                "wear_mm": 0,
                "deflection_mm": 0,
            },
        ),
        ("thermal.growth", {"length_mm": 70, "expansion_per_k": 2.3e-5, "temperature_change_k": 51}),
        ("spindle.choose_speed", {"available": [], "wanted_per_min": 200, "cap_per_min": 1000}),
        ("spindle.choose_speed", {"available": [70, math.nan], "wanted_per_min": 200, "cap_per_min": 1000}),
        (
            "spindle.choose_from_range",
            {
                "low_per_min": 2000,
                "high_per_min": 50,
                "step_per_min": 10,
                "wanted_per_min": 200,
                "cap_per_min": 1000,
            },
        ),
    ],
)
def test_outside_the_range_is_refused_in_plain_words(function: str, arguments: dict[str, Any]) -> None:
    module, name = function.split(".")
    with pytest.raises(OutOfRange) as refused:
        getattr(importlib.import_module(f"tailtrue.calc.{module}"), name)(**arguments)
    text = str(refused.value)
    assert re.match(r"[a-z]", text)
    assert not text.endswith(".")
    assert not re.search(r"\w_\w", text)


def test_messages_word_for_word() -> None:
    with pytest.raises(OutOfRange, match=r"^diameter is 0 mm; it must be more than 0 mm$"):
        positive(0, "diameter", "mm")
    with pytest.raises(OutOfRange, match=r"^feed is 3 mm/rev; the formula holds from 0\.1 mm/rev to 0\.5 mm/rev$"):
        between(3, 0.1, 0.5, "feed", "mm/rev")
    with pytest.raises(OutOfRange, match=r"^safety factor is 0\.5; the formula holds from 1 upward$"):
        at_least(0.5, 1, "safety factor")
    with pytest.raises(OutOfRange, match=r"^difference is nan mm; it must be a finite number$"):
        finite(math.nan, "difference", "mm")


def test_out_of_range_is_a_value_error() -> None:
    assert issubclass(OutOfRange, ValueError)
