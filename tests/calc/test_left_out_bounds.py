"""What an argument stands for when it is left out, written out here for every formula."""

import csv
import importlib
import json
from math import inf
from pathlib import Path
from typing import Any

import pytest

_PUBLISHED = Path(__file__).parents[1] / "published" / "data"
_RIGID_N_PER_MM = {"headstock_n_per_mm": 1e12, "tailstock_n_per_mm": 1e12}

_LEFT_OUT: dict[str, dict[str, Any]] = {
    "beams.mass_cylinder": {"bore_mm": 0},
    "boring_passes.error_after_passes": {"least_chip_mm": 0},
    "boring_passes.spring_passes_for": {"least_chip_mm": 0},
    "boring_passes.copied_taper": {"spring_passes": 0},
    "boring_passes.bore_error": {"recession_mm": 0},
    "conformity.conformity_probability": {"degrees_of_freedom": inf},
    "conformity.verdict_at_probability": {"degrees_of_freedom": inf},
    "cut_power.power_from_constant": {"feed_factor": 1, "wear_factor": 1},
    "cut_time.passes_time": {"reset_s": 0},
    "cut_time.drill_removal_rate": {"pilot_diameter_mm": 0},
    "drilled_hole.largest_hole": {"tailstock_offset_mm": 0},
    "drilled_hole.least_boring_stock": {"tailstock_offset_mm": 0},
    "drilled_hole.drill_before_reamer": {"metal_factor": 1},
    "drilling.thrust_shaw_oxford": {"pilot_ratio": 0, "wear_factor": 1},
    "drilling.torque_shaw_oxford": {"pilot_ratio": 0, "wear_factor": 1},
    "indicator.sweep": {"sag_mm": 0, "in_bore": False},
    "lengths.on_diameter": {"cuts": 1},
    "rotors.critical_speed_low_side": _RIGID_N_PER_MM,
    "rotors.critical_speed": _RIGID_N_PER_MM,
    "soft_centres.skim_deflection": _RIGID_N_PER_MM,
    "solids.mass_cone": {"bore_mm": 0},
    "steps.nearest_steps": {"parts": 1},
    "solids.turning_energy": {"bore_mm": 0},
    "spindle_band.speed_band": {"factor": 1},
    "student.two_sided_factor": {"degrees_of_freedom": inf},
    "student.one_sided_factor": {"degrees_of_freedom": inf},
    "student.probability_below": {"degrees_of_freedom": inf},
}  # fmt: skip


def _sound() -> dict[str, dict[str, Any]]:
    """Arguments that each formula is known to accept: those of its first checked figure."""
    found: dict[str, dict[str, Any]] = {}
    for path in sorted(_PUBLISHED.glob("*.csv")):
        with path.open(newline="", encoding="utf-8") as lines:
            for row in csv.DictReader(lines):
                if row.get("function") in _LEFT_OUT:
                    found.setdefault(row["function"], json.loads(row["arguments"]))
    return found


_SOUND = _sound()


@pytest.mark.parametrize("function", _LEFT_OUT)
def test_what_is_left_out_stands_for_the_value_written_here(function: str) -> None:
    module, name = function.split(".")
    formula = getattr(importlib.import_module(f"tailtrue.calc.{module}"), name)
    written = _LEFT_OUT[function]
    given = {argument: value for argument, value in _SOUND[function].items() if argument not in written}
    assert formula(**given) == formula(**given, **written)
