"""Mass and energy of round parts against their volume integrated slice by slice."""

import math
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from spoilt import each_is_refused, spoilt
from tailtrue.calc.beams import mass_cylinder
from tailtrue.calc.solids import mass_cone, mass_slab, mass_stepped, turning_energy
from tailtrue.calc.turning_masses import kinetic_energy, rim_speed
from tailtrue.calc.validity import OutOfRange

_GOOD: dict[Callable[..., Any], dict[str, Any]] = {
    mass_stepped: {
        "diameters_mm": [75, 40],
        "lengths_mm": [35, 20],
        "density_kg_m3": 2700,
        "bores_mm": [25, 25],
    },
    mass_cone: {
        "large_diameter_mm": 84,
        "small_diameter_mm": 81,
        "length_mm": 41,
        "density_kg_m3": 2680,
        "bore_mm": 20,
    },
    mass_slab: {"width_mm": 80, "thickness_mm": 40, "length_mm": 164, "density_kg_m3": 2700},
    turning_energy: {"mass_kg": 9, "diameter_mm": 160, "spindle_speed_per_min": 1000, "bore_mm": 40},
}


@pytest.mark.parametrize(("formula", "calls"), spoilt(_GOOD))
def test_what_is_no_number_is_refused(formula: Callable[..., Any], calls: list[dict[str, Any]]) -> None:
    each_is_refused(formula, calls)


@pytest.mark.parametrize(
    ("formula", "change", "says"),
    [
        (
            mass_stepped,
            {"diameters_mm": [], "lengths_mm": [], "bores_mm": []},
            "0 diameters, 0 lengths and 0 bores are given",
        ),
        (mass_stepped, {"lengths_mm": [35]}, "2 diameters, 1 lengths and 2 bores are given"),
        (mass_stepped, {"bores_mm": [25]}, "2 diameters, 2 lengths and 1 bores are given; each step needs one of each"),
        (mass_stepped, {"bores_mm": [25, 41]}, "bore is 41 mm"),
        (mass_cone, {"large_diameter_mm": 0, "small_diameter_mm": 0}, "large diameter is 0 mm"),
        (mass_cone, {"small_diameter_mm": 84.1}, "small diameter is 84.1 mm"),
        (mass_cone, {"small_diameter_mm": -1}, "small diameter is -1 mm"),
        (mass_cone, {"length_mm": 0}, "length is 0 mm"),
        (mass_cone, {"density_kg_m3": 0}, "density is 0 kg/m3"),
        (mass_cone, {"bore_mm": -1}, "bore is -1 mm"),
        (mass_cone, {"bore_mm": 81.1}, "bore is 81.1 mm"),
        (mass_slab, {"width_mm": 0}, "width is 0 mm"),
        (mass_slab, {"thickness_mm": 0}, "thickness is 0 mm"),
        (mass_slab, {"length_mm": 0}, "length is 0 mm"),
        (mass_slab, {"density_kg_m3": 0}, "density is 0 kg/m3"),
        (turning_energy, {"mass_kg": 0}, "mass is 0 kg"),
        (turning_energy, {"diameter_mm": 0}, "diameter is 0 mm"),
        (turning_energy, {"spindle_speed_per_min": -1}, "spindle speed is -1 1/min"),
        (turning_energy, {"bore_mm": -1}, "bore is -1 mm"),
        (turning_energy, {"bore_mm": 161}, "bore is 161 mm"),
    ],
)
def test_beyond_its_bounds_it_refuses_and_says_what_was_read(
    formula: Callable[..., Any], change: dict[str, Any], says: str
) -> None:
    with pytest.raises(OutOfRange) as refused:
        formula(**(_GOOD[formula] | change))
    assert says in str(refused.value)


def test_steps_without_bores_are_solid() -> None:
    solid = mass_stepped([75, 40], [35, 20], 2700)
    assert solid == mass_stepped([75, 40], [35, 20], 2700, [0, 0])
    assert solid == pytest.approx(mass_cylinder(75, 35, 2700) + mass_cylinder(40, 20, 2700))
    assert mass_stepped([75, 40], [35, 20], 2700, [25, 0]) == pytest.approx(solid - mass_cylinder(25, 35, 2700))


def test_bounds_themselves_are_allowed() -> None:
    assert mass_cone(84, 0, 41, 2680) > 0
    assert mass_cone(84, 84, 41, 2680) == pytest.approx(mass_cylinder(84, 41, 2680))
    assert mass_cone(84, 84, 41, 2680, 84) == pytest.approx(0, abs=1e-12)
    assert turning_energy(9, 160, 0) == 0
    # A thin hoop holds as much as if it flew off with the speed of its rim.
    assert turning_energy(9, 160, 1000, 160) == pytest.approx(kinetic_energy(9, rim_speed(160, 1000)))


@given(large=st.floats(20, 100), share=st.floats(0, 1), bore=st.floats(0, 1), length=st.floats(5, 100))
def test_cone_weighs_as_much_as_its_slices(large: float, share: float, bore: float, length: float) -> None:
    small = large * share
    hole = small * bore
    volume, _ = quad(lambda z: math.pi / 4 * ((large + (small - large) * z / length) ** 2 - hole**2), 0, length)
    assert mass_cone(large, small, length, 7850, hole) == pytest.approx(7.85e-6 * volume, rel=1e-9, abs=1e-12)


@given(diameter=st.floats(20, 300), share=st.floats(0, 0.99), speed=st.floats(10, 3000))
def test_ring_holds_the_energy_of_its_thin_hoops(diameter: float, share: float, speed: float) -> None:
    """Each hoop moves with the speed of its own circle; the mass is spread evenly over the area."""
    bore = diameter * share
    area = math.pi / 4 * (diameter**2 - bore**2)
    turns = math.pi * speed / 30
    held, _ = quad(lambda r: 5 / area * 2 * math.pi * r * (r * 1e-3 * turns) ** 2 / 2, bore / 2, diameter / 2)
    assert turning_energy(5, diameter, speed, bore) == pytest.approx(held, rel=1e-6)


def test_pounds_and_inches_weigh_the_same() -> None:
    # 0.0975 lb to the cubic inch, a ring of 3 in by 1 in, 1.5 in long
    pounds = 0.0975 * math.pi / 4 * (3**2 - 1**2) * 1.5
    assert mass_stepped([76.2], [38.1], 0.0975 * 27679.9047, [25.4]) / 0.45359237 == pytest.approx(pounds)
