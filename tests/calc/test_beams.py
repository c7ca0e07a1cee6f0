"""The bar as a beam: exact values at the bounds, and what is refused beyond them."""

import math
from collections.abc import Callable
from typing import Any

import pytest
from scipy.integrate import dblquad
from scipy.optimize import brentq

from tailtrue.calc.beams import (
    deflection_between_centres,
    deflection_cantilever,
    greatest_deflection_cantilever,
    mass_cylinder,
    second_moment,
    self_weight_sag,
    self_weight_stress,
    whirl_speed_between_centres,
    whirl_speed_cantilever,
)
from tailtrue.calc.validity import OutOfRange

_BETWEEN = {"force_n": 10, "span_mm": 300, "station_mm": 30, "modulus_mpa": 205000, "diameter_mm": 25}
_FREE = {"force_n": 10, "length_mm": 127, "modulus_mpa": 205000, "diameter_mm": 25}
_LINE = {"diameter_mm": 25, "span_mm": 300, "modulus_mpa": 205000, "density_kg_m3": 7850}
_BACK = {"diameter_mm": 12, "length_mm": 900, "modulus_mpa": 206000, "density_kg_m3": 7850}


@pytest.mark.parametrize(
    ("formula", "given", "says"),
    [
        (second_moment, {"diameter_mm": 0}, "diameter is 0 mm"),
        (deflection_between_centres, _BETWEEN | {"force_n": -0.1}, "force is -0.1 N"),
        (deflection_between_centres, _BETWEEN | {"modulus_mpa": 0}, "modulus of elasticity is 0 MPa"),
        (deflection_between_centres, _BETWEEN | {"span_mm": 0}, "span is 0 mm"),
        (deflection_between_centres, _BETWEEN | {"diameter_mm": 0}, "diameter is 0 mm"),
        (deflection_between_centres, _BETWEEN | {"diameter_mm": 60.3}, "span in diameters is 4.97"),
        (deflection_between_centres, _BETWEEN | {"station_mm": -0.1}, "station is -0.1 mm"),
        (deflection_between_centres, _BETWEEN | {"station_mm": 300.1}, "station is 300.1 mm"),
        (
            deflection_between_centres,
            _BETWEEN | {"station_mm": 150, "force_n": 211000},
            "the bar would bend by 30.194 mm over 300 mm",
        ),
        (deflection_cantilever, _FREE | {"force_n": -0.1}, "force is -0.1 N"),
        (deflection_cantilever, _FREE | {"modulus_mpa": 0}, "modulus of elasticity is 0 MPa"),
        (deflection_cantilever, _FREE | {"length_mm": 62.2}, "free length in diameters is 2.488"),
        (deflection_cantilever, _FREE | {"force_n": 73600}, "the bar would bend by 12.7"),
        (greatest_deflection_cantilever, _FREE | {"force_n": -0.1}, "force is -0.1 N"),
        (greatest_deflection_cantilever, _FREE | {"modulus_mpa": 0}, "modulus of elasticity is 0 MPa"),
        (greatest_deflection_cantilever, _FREE | {"length_mm": 12.4}, "free length in diameters is 0.496"),
        (greatest_deflection_cantilever, _FREE | {"force_n": 74000}, "the bar would bend by 13.1"),
        (self_weight_sag, _LINE | {"modulus_mpa": 0}, "modulus of elasticity is 0 MPa"),
        (self_weight_sag, _LINE | {"span_mm": 124}, "span in diameters is 4.96"),
        (self_weight_sag, _LINE | {"density_kg_m3": 0}, "density is 0 kg/m3"),
        (self_weight_sag, _LINE | {"span_mm": 6000, "diameter_mm": 6}, "the bar would bend by"),
        (self_weight_stress, {"diameter_mm": 25, "span_mm": 124, "density_kg_m3": 7850}, "span in diameters is 4.96"),
        (self_weight_stress, {"diameter_mm": 0, "span_mm": 124, "density_kg_m3": 7850}, "diameter is 0 mm"),
        (self_weight_stress, {"diameter_mm": 25, "span_mm": 300, "density_kg_m3": 0}, "density is 0 kg/m3"),
        (whirl_speed_cantilever, _BACK | {"length_mm": 29.8}, "free length in diameters is 2.48"),
        (whirl_speed_cantilever, _BACK | {"modulus_mpa": 0}, "modulus of elasticity is 0 MPa"),
        (whirl_speed_cantilever, _BACK | {"density_kg_m3": 0}, "density is 0 kg/m3"),
        (whirl_speed_between_centres, _LINE | {"span_mm": 124}, "span in diameters is 4.96"),
        (mass_cylinder, {"diameter_mm": 0, "length_mm": 20, "density_kg_m3": 2700}, "diameter is 0 mm"),
        (mass_cylinder, {"diameter_mm": 75, "length_mm": 0, "density_kg_m3": 2700}, "length is 0 mm"),
        (mass_cylinder, {"diameter_mm": 75, "length_mm": 20, "density_kg_m3": 0}, "density is 0 kg/m3"),
        (mass_cylinder, {"diameter_mm": 75, "length_mm": 20, "density_kg_m3": 2700, "bore_mm": -1}, "bore is -1 mm"),
        (mass_cylinder, {"diameter_mm": 75, "length_mm": 20, "density_kg_m3": 2700, "bore_mm": 75.1}, "bore is 75.1 mm"),
    ],
)
def test_beyond_its_bounds_it_refuses_and_says_what_was_read(
    formula: Callable[..., float], given: dict[str, Any], says: str
) -> None:
    with pytest.raises(OutOfRange) as refused:
        formula(**given)
    assert says in str(refused.value)


def test_bounds_themselves_are_allowed() -> None:
    assert deflection_between_centres(**(_BETWEEN | {"diameter_mm": 60})) > 0
    assert deflection_between_centres(**(_BETWEEN | {"force_n": 0})) == 0
    for end in (0, 300):
        assert deflection_between_centres(**(_BETWEEN | {"station_mm": end})) == 0
    assert deflection_between_centres(**(_BETWEEN | {"station_mm": 150, "force_n": 209000})) == pytest.approx(29.9, rel=1e-2)
    assert deflection_cantilever(**(_FREE | {"length_mm": 62.5, "force_n": 0})) == 0
    assert deflection_cantilever(**(_FREE | {"force_n": 72000})) == pytest.approx(12.5, rel=1e-2)
    assert greatest_deflection_cantilever(**(_FREE | {"length_mm": 12.5, "force_n": 0})) == 0
    assert greatest_deflection_cantilever(**(_FREE | {"force_n": 70000})) == pytest.approx(12.4, rel=1e-2)
    assert self_weight_sag(**(_LINE | {"span_mm": 125})) > 0
    assert self_weight_stress(25, 125, 7850) == pytest.approx(7850e-9 * 9.80665 * 125**2 / 25)
    assert whirl_speed_cantilever(**(_BACK | {"length_mm": 30})) > 0
    assert whirl_speed_between_centres(**(_LINE | {"span_mm": 125})) > 0
    assert mass_cylinder(75, 20, 2700, 75) == 0


def test_a_stouter_piece_yields_less_and_never_less_than_by_bending_alone() -> None:
    at = [greatest_deflection_cantilever(10, length, 205000, 50) for length in (25, 60, 100, 124, 125, 126, 150)]
    assert at == sorted(at)
    for length in (125, 150, 300):
        bending = deflection_cantilever(10, length, 205000, 50)
        assert bending < greatest_deflection_cantilever(10, length, 205000, 50) < 1.101 * bending


def test_second_moment_is_that_of_the_area_integrated() -> None:
    integrated, _ = dblquad(lambda r, angle: r * (r * math.sin(angle)) ** 2, 0, 2 * math.pi, 0, 12.5)
    assert second_moment(25) == pytest.approx(integrated)


def test_free_end_whirls_at_the_first_root_of_its_frequency_equation() -> None:
    root = brentq(lambda x: math.cos(x) * math.cosh(x) + 1, 1, 3, xtol=1e-14)
    sound = math.sqrt(206000e6 / 7850)
    per_second = (root / 0.9) ** 2 * 0.012 / 4 * sound / (2 * math.pi)
    assert whirl_speed_cantilever(**_BACK) == pytest.approx(60 * per_second, rel=1e-9)
