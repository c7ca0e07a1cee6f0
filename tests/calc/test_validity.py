"""Outside its range a formula refuses, and says what was read and what is allowed."""

import csv
import importlib
import inspect
import json
import math
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from spoilt import each_is_refused
from tailtrue.calc.validity import (
    OutOfRange,
    at_least,
    between,
    collars_on_span,
    each_finite,
    finite,
    in_order,
    on_span,
    positive,
    up_to,
)

_PUBLISHED = Path(__file__).parents[1] / "published" / "data"
_THRUST_POINT = {"chisel_ratio": 0.18, "thrust_factor": 1.355, "chisel_thrust_factor": 0.03}
_TORQUE_POINT = {"chisel_ratio": 0.18, "torque_factor": 1.085}
_UNBOUNDED = {"drilling.tool_maker_holds"}  # answers for any feed


def _formula(name: str) -> Callable[..., Any]:
    module, function = name.split(".")
    found: Callable[..., Any] = getattr(importlib.import_module(f"tailtrue.calc.{module}"), function)
    return found


def _sound() -> dict[str, dict[str, Any]]:
    """Arguments that each formula is known to accept: those of its first checked figure."""
    found: dict[str, dict[str, Any]] = {}
    for path in sorted(_PUBLISHED.glob("*.csv")):
        with path.open(newline="", encoding="utf-8") as lines:
            for row in csv.DictReader(lines):
                if "function" in row:
                    found.setdefault(row["function"], json.loads(row["arguments"]))
    return found


def _may_be_endless(formula: Callable[..., Any], name: str) -> bool:
    """Whether the docstring lets a parameter be infinite, as degrees of freedom may be."""
    entry = re.search(rf"^{name} : (.*?)\[", inspect.getdoc(formula) or "", re.MULTILINE | re.DOTALL)
    return entry is not None and "endless" in entry[1]


def _spoilt(name: str, given: dict[str, Any]) -> list[dict[str, Any]]:
    return [
        given | {argument: bad}
        for argument, value in given.items()
        if isinstance(value, int | float) and not isinstance(value, bool)
        for bad in (math.nan, math.inf, -math.inf)
        if not (bad == math.inf and _may_be_endless(_formula(name), argument))
    ]


_SPOILT = {name: calls for name, given in _sound().items() if name not in _UNBOUNDED and (calls := _spoilt(name, given))}


@pytest.mark.parametrize("name", _SPOILT)
def test_what_is_no_number_is_refused(name: str) -> None:
    each_is_refused(_formula(name), _SPOILT[name])


@pytest.mark.parametrize(
    ("function", "arguments"),
    [
        ("cutting.specific_force", {"kc11_mpa": 1350, "mc": 0.21, "chip_thickness_mm": 0.019}),
        ("cutting.specific_force", {"kc11_mpa": 1350, "mc": 0.21, "chip_thickness_mm": 2.6}),
        ("cutting.spindle_speed", {"surface_speed_m_min": 30, "diameter_mm": 0}),
        ("cutting.theoretical_peak_height", {"feed_mm": 0.25, "nose_radius_mm": 0.4}),
        ("drilling.thrust_shaw_oxford", {"kd": 18000, "feed_mm": 0.1, "diameter_mm": 1.5, **_THRUST_POINT}),
        ("drilling.torque_shaw_oxford", {"kd": 18000, "feed_mm": 1.3, "diameter_mm": 10, **_TORQUE_POINT}),
        ("drilling.torque_shaw_oxford", {"kd": 18000, "feed_mm": 0.1, "diameter_mm": 51, **_TORQUE_POINT}),
        (
            "drilling.thrust_shaw_oxford",
            {"kd": 18000, "feed_mm": 0.1, "diameter_mm": 10, "wear_factor": 0.9, **_THRUST_POINT},
        ),
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
        ("joints.slowed_cure", {"full_cure_s": 0, "times": 2}),
        ("joints.slowed_cure", {"full_cure_s": 86400, "times": 0.9}),
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


@pytest.mark.parametrize("wrong", [0, -1, 1.001, math.nan, math.inf])
def test_a_share_is_more_than_nought_and_at_most_its_bound(wrong: float) -> None:
    up_to(1, 1, "friction")
    up_to(1e-9, 1, "friction")
    with pytest.raises(OutOfRange, match=rf"^friction is {wrong:g}; "):
        up_to(wrong, 1, "friction")
    with pytest.raises(OutOfRange, match=r"^rise is 260 K; the formula holds from 0 K to 250 K$"):
        up_to(260, 250, "rise", "K")


def test_a_row_names_what_is_no_number_by_its_place() -> None:
    each_finite([1, 2], "reading no. {}", "mm")
    each_finite([], "reading no. {}")
    with pytest.raises(OutOfRange, match=r"^reading no\. 2 is nan mm; it must be a finite number$"):
        each_finite([1, math.nan], "reading no. {}", "mm")


def test_a_place_lies_between_the_centres() -> None:
    on_span(0, 300)
    on_span(300, 300)
    for wrong in (-0.1, 300.1, math.nan):
        with pytest.raises(OutOfRange, match=rf"^station looked at is {wrong:g} mm; the formula holds from 0 mm to 300 mm$"):
            on_span(wrong, 300, "station looked at")
    with pytest.raises(OutOfRange, match=r"^station is 301 mm"):
        on_span(301, 300)
    with pytest.raises(OutOfRange, match=r"^span is 0 mm; it must be more than 0 mm$"):
        on_span(0, 0)


def test_the_headstock_collar_comes_first() -> None:
    collars_on_span(300, 0, 300)
    apart = "^distance from headstock collar to tailstock collar is "
    for stations, message in (
        ((300, -1, 270), "^station of the headstock collar is -1 mm"),
        ((300, 30, 301), "^station of the tailstock collar is 301 mm"),
        ((300, 270, 30), apart + "-240 mm; it must be more than 0 mm$"),
        ((300, 30, 30), apart + "0 mm"),
        ((0, 0, 0), "^span is 0 mm"),
    ):
        with pytest.raises(OutOfRange, match=message):
            collars_on_span(*stations)
    in_order(30, 30.001)
    with pytest.raises(OutOfRange, match=r"^way is 0 mm"):
        in_order(30, 30, "way")


def test_out_of_range_is_a_value_error() -> None:
    assert issubclass(OutOfRange, ValueError)
