"""Two tables of bars, worked out apart from this package: under a skim, and with collars.

They hold each other's cells together: a formula that fits one size by chance does not fit ninety.
"""

import csv
from pathlib import Path

import pytest

from tailtrue.calc.beams import deflection_between_centres, deflection_midspan, mass_cylinder, self_weight_sag
from tailtrue.calc.bending import bow_from_bending, diameter_error, sag_with_collars
from tailtrue.calc.rotors import critical_speed, critical_speed_low_side
from tailtrue.calc.thermal import growth
from tailtrue.calc.validity import OutOfRange

_DATA = Path(__file__).parent / "data"
_ROUND_GRAVITY = 9.81 / 9.80665  # the table of bars with collars was worked with 9.81 m/s2
_LEAST_SPAN_IN_DIAMETERS = 5  # below it the formulas refuse; the table goes on


def _rows(name: str) -> list[dict[str, str]]:
    with (_DATA / name).open(newline="", encoding="utf-8") as lines:
        return list(csv.DictReader(lines))


_SKIMMED, _COLLARED = _rows("bar_under_skim.csv"), _rows("bar_with_collars.csv")


def _stubby(row: dict[str, str]) -> bool:
    return float(row["L_mm"]) < _LEAST_SPAN_IN_DIAMETERS * float(row["bar_dia_mm"])


_SLENDER = [row for row in _SKIMMED if not _stubby(row)]


def test_tables_are_whole() -> None:
    assert (len(_SKIMMED), len(_SLENDER), len(_COLLARED)) == (90, 87, 45)
    assert all(row["source"].strip() for row in _SKIMMED + _COLLARED)


@pytest.mark.parametrize(
    "row", _SLENDER, ids=[f"{row['L_mm']}-{row['bar_dia_mm']}-{row['radial_force_N']}" for row in _SLENDER]
)
def test_bar_under_skim(row: dict[str, str]) -> None:
    span, diameter, force = (float(row[name]) for name in ("L_mm", "bar_dia_mm", "radial_force_N"))
    last_digit = 0.00051e-3  # mm; the table is in micrometres to three places
    at_collar = deflection_between_centres(force, span, span / 10, 205000, diameter)
    middle = deflection_midspan(force, span, 205000, diameter)
    bow = bow_from_bending(force, span, span / 10, span / 2, span * 0.9, 205000, diameter)
    sag = self_weight_sag(diameter, span, 205000, 7850)
    assert at_collar == pytest.approx(float(row["bend_at_0.1L_um"]) / 1000, abs=last_digit)
    assert middle == pytest.approx(float(row["bend_mid_um"]) / 1000, abs=last_digit)
    assert diameter_error(middle) == pytest.approx(float(row["mid_collar_diameter_error_um"]) / 1000, abs=last_digit)
    assert bow == pytest.approx(float(row["bow_mid_minus_ends_um"]) / 1000, abs=last_digit)
    assert sag == pytest.approx(float(row["self_weight_sag_um"]) / 1000, abs=last_digit)
    assert (diameter_error(middle) <= 0.001) == (row["mid_error_le_1um"] == "yes")


@pytest.mark.parametrize("row", [row for row in _SKIMMED if _stubby(row)], ids=lambda row: row["radial_force_N"])
def test_bar_too_stubby_for_the_formula_is_refused(row: dict[str, str]) -> None:
    with pytest.raises(OutOfRange, match="span in diameters is 4"):
        deflection_midspan(float(row["radial_force_N"]), float(row["L_mm"]), 205000, float(row["bar_dia_mm"]))


@pytest.mark.parametrize("row", _COLLARED, ids=[f"{row['bar_d_mm']}-{row['length_mm']}" for row in _COLLARED])
def test_bar_with_collars(row: dict[str, str]) -> None:
    diameter, span = float(row["bar_d_mm"]), float(row["length_mm"])
    collar = mass_cylinder(75, 35, 2700, diameter)
    both = {"masses_kg": [collar, collar], "stations_mm": [40.0, span - 40]}
    steel = {"diameter_mm": diameter, "span_mm": span, "modulus_mpa": 207000.0, "density_kg_m3": 7850.0}
    at_collar = deflection_between_centres(20, span, 40, 207000, diameter)
    half_um = 0.0051e-3

    def said(name: str) -> float:
        return float(row[name])

    assert mass_cylinder(diameter, span, 7850) == pytest.approx(said("bar_mass_kg"), abs=5.1e-4)
    sag, collared = self_weight_sag(**steel), sag_with_collars(**steel, **both, look_station_mm=span / 2)
    assert sag * _ROUND_GRAVITY == pytest.approx(said("sag_self_um") / 1000, abs=half_um)
    assert collared * _ROUND_GRAVITY == pytest.approx(said("sag_mid_with_collars_um") / 1000, abs=half_um)
    assert 1e-3 / deflection_midspan(1, span, 207000, diameter) == pytest.approx(said("k_mid_N_per_um"), rel=1e-3)
    assert 20e-3 / at_collar == pytest.approx(said("k_collar_N_per_um"), rel=1e-3)
    assert at_collar == pytest.approx(said("deflection_at_collar_for_20N_um") / 1000, rel=5e-3)
    assert diameter_error(at_collar) == pytest.approx(said("dia_error_beam_only_20N_um") / 1000, rel=5e-3)
    low = critical_speed_low_side(**steel, **both)
    assert low == pytest.approx(said("n_crit_dunkerley_rpm"), rel=2e-4)
    assert low / 2 == pytest.approx(said("n_max_half_crit_rpm"), rel=2e-4, abs=1)
    assert critical_speed(**steel, **both) == pytest.approx(said("n_crit_FE_rpm"), rel=2e-4)
    assert growth(span, 11.7e-6, 10) == pytest.approx(said("growth_per_10K_um") / 1000, abs=5.1e-5)
