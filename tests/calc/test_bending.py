"""The bent bar against beams solved by others: symbolically, and by integrating its curvature."""

import math
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_bvp
from sympy import Rational, symbols
from sympy.physics.continuum_mechanics.beam import Beam

from spoilt import each_is_refused, spoilt
from tailtrue.calc.alignment import tailstock_move
from tailtrue.calc.beams import deflection_between_centres, deflection_cantilever, deflection_midspan, self_weight_sag
from tailtrue.calc.bending import (
    bow_from_bending,
    buckling_load,
    deflection_anywhere,
    diameter_error,
    difference_from_bending,
    largest_force,
    least_diameter,
    sag_with_collars,
)
from tailtrue.calc.validity import OutOfRange

_STEEL = {"modulus_mpa": 205000.0, "diameter_mm": 25.0}
_GOOD: dict[Callable[..., Any], dict[str, Any]] = {
    deflection_anywhere: {"force_n": 10, "span_mm": 300, "load_station_mm": 30, "look_station_mm": 150, **_STEEL},
    sag_with_collars: {
        "span_mm": 300,
        "density_kg_m3": 7850,
        "masses_kg": [0.4],
        "stations_mm": [50],
        "look_station_mm": 150,
        **_STEEL,
    },
    diameter_error: {"deflection_mm": 0.001},
    difference_from_bending: {"force_n": 10, "span_mm": 300, "first_station_mm": 30, "second_station_mm": 200, **_STEEL},
    bow_from_bending: {
        "force_n": 10,
        "span_mm": 300,
        "first_station_mm": 30,
        "middle_station_mm": 150,
        "second_station_mm": 270,
        **_STEEL,
    },
    largest_force: {"tolerance_mm": 0.01, "share": 0.1, "span_mm": 300, "station_mm": 150, **_STEEL},
    least_diameter: {
        "force_n": 10,
        "tolerance_mm": 0.01,
        "share": 0.1,
        "span_mm": 300,
        "station_mm": 150,
        "modulus_mpa": 205000,
    },
    buckling_load: {"diameter_mm": 25, "span_mm": 500, "modulus_mpa": 207000, "yield_mpa": 450},
}


@pytest.mark.parametrize(("formula", "calls"), spoilt(_GOOD))
def test_what_is_no_number_is_refused(formula: Callable[..., Any], calls: list[dict[str, Any]]) -> None:
    each_is_refused(formula, calls)


@pytest.mark.parametrize(
    ("formula", "change"),
    [
        (deflection_anywhere, {"diameter_mm": 60}),
        (deflection_anywhere, {"force_n": 0}),
        (deflection_anywhere, {"load_station_mm": 0}),
        (deflection_anywhere, {"look_station_mm": 300}),
        (sag_with_collars, {"density_kg_m3": 0}),
        (sag_with_collars, {"look_station_mm": 0, "stations_mm": [0]}),
        (sag_with_collars, {"look_station_mm": 300, "stations_mm": [300]}),
        (diameter_error, {"deflection_mm": 0}),
        (difference_from_bending, {"first_station_mm": 0, "second_station_mm": 300}),
        (largest_force, {"share": 1}),
        (largest_force, {"station_mm": 0.1}),
        (largest_force, {"station_mm": 299.9}),
        (least_diameter, {"share": 1}),
        (least_diameter, {"station_mm": 0.1}),
        (least_diameter, {"force_n": 100, "tolerance_mm": 0.0087}),
        (buckling_load, {"yield_mpa": 1}),
        (buckling_load, {"span_mm": 10000}),
        (buckling_load, {"span_mm": 25}),
    ],
)
def test_formula_holds_up_to_its_bounds(formula: Callable[..., float], change: dict[str, Any]) -> None:
    assert math.isfinite(formula(**(_GOOD[formula] | change)))


@pytest.mark.parametrize(
    ("formula", "change", "says"),
    [
        (deflection_anywhere, {"diameter_mm": 60.1}, "span in diameters is 4.99168"),
        (deflection_anywhere, {"force_n": -1}, "force is -1 N"),
        (deflection_anywhere, {"load_station_mm": -0.1}, "station of the force is -0.1 mm"),
        (deflection_anywhere, {"load_station_mm": 300.1}, "station of the force is 300.1 mm"),
        (deflection_anywhere, {"look_station_mm": -0.1}, "station looked at is -0.1 mm"),
        (deflection_anywhere, {"look_station_mm": 300.1}, "station looked at is 300.1 mm"),
        (deflection_anywhere, {"force_n": 300000}, "the bar would bend by"),
        (sag_with_collars, {"density_kg_m3": -1}, "density is -1 kg/m3"),
        (sag_with_collars, {"stations_mm": [50, 60]}, "1 masses are given for 2 stations"),
        (sag_with_collars, {"masses_kg": [0]}, "mass of a collar is 0 kg"),
        (sag_with_collars, {"stations_mm": [301]}, "station of the force is 301 mm"),
        (sag_with_collars, {"look_station_mm": 301}, "station looked at is 301 mm"),
        (sag_with_collars, {"look_station_mm": -1}, "station looked at is -1 mm"),
        (sag_with_collars, {"masses_kg": [], "stations_mm": [], "look_station_mm": 300.5}, "station looked at is 300.5 mm"),
        (sag_with_collars, {"masses_kg": [], "stations_mm": [], "look_station_mm": -0.5}, "station looked at is -0.5 mm"),
        (diameter_error, {"deflection_mm": -1e-6}, "deflection is -1e-06 mm"),
        (difference_from_bending, {"first_station_mm": 200}, "distance from one collar to the next is 0 mm"),
        (bow_from_bending, {"middle_station_mm": 30}, "distance from one collar to the next is 0 mm"),
        (bow_from_bending, {"middle_station_mm": 270}, "distance from one collar to the next is 0 mm"),
        (bow_from_bending, {"second_station_mm": 301}, "station is 301 mm"),
        (largest_force, {"tolerance_mm": 0}, "tolerance is 0 mm"),
        (largest_force, {"share": 0}, "share of the tolerance is 0"),
        (largest_force, {"share": 1.001}, "share of the tolerance is 1.001"),
        (largest_force, {"station_mm": 0}, "the collar stands at 0 mm, upon a centre"),
        (largest_force, {"station_mm": 300}, "the collar stands at 300 mm, upon a centre"),
        (largest_force, {"station_mm": 301}, "station is 301 mm"),
        (largest_force, {"tolerance_mm": 601}, "the bar would bend by 30.05 mm"),
        (least_diameter, {"force_n": 0}, "force is 0 N"),
        (largest_force, {"span_mm": 0, "station_mm": 0}, "span is 0 mm"),
        (least_diameter, {"span_mm": 0, "station_mm": 0}, "span is 0 mm"),
        (least_diameter, {"modulus_mpa": 0}, "modulus of elasticity is 0 MPa"),
        (buckling_load, {"modulus_mpa": 0}, "modulus of elasticity is 0 MPa"),
        (buckling_load, {"yield_mpa": 0}, "yield stress is 0 MPa"),
        (least_diameter, {"station_mm": 300}, "the collar stands at 300 mm, upon a centre"),
        (least_diameter, {"station_mm": -1}, "station is -1 mm"),
        (least_diameter, {"force_n": 100, "tolerance_mm": 0.0085}, "the bar would have to be 60.2 mm thick"),
        (buckling_load, {"diameter_mm": 0}, "diameter is 0 mm"),
        (buckling_load, {"span_mm": 0}, "span is 0 mm"),
    ],
)
def test_beyond_its_bounds_it_refuses_and_says_what_was_read(
    formula: Callable[..., float], change: dict[str, Any], says: str
) -> None:
    with pytest.raises(OutOfRange) as refused:
        formula(**(_GOOD[formula] | change))
    assert says in str(refused.value)


@pytest.mark.parametrize("load", [Rational(30), Rational(150), Rational(211)])
def test_deflection_is_that_of_a_beam_solved_symbolically(load: Rational) -> None:
    span, modulus, second = 300, 205000, Rational(191748, 10)
    x, first, second_reaction = symbols("x R1 R2")
    beam = Beam(span, modulus, second, x)
    beam.apply_load(first, 0, -1)
    beam.apply_load(second_reaction, span, -1)
    beam.apply_load(10, load, -1)
    beam.bc_deflection = [(0, 0), (span, 0)]
    beam.solve_for_reaction_loads(first, second_reaction)
    curve = beam.deflection()
    for look in (0, 30, 77, 150, 240, 300):
        ours = deflection_anywhere(10, span, float(load), look, modulus, 25)
        assert ours == pytest.approx(abs(float(curve.subs(x, look))), rel=1e-5, abs=1e-15)
    assert deflection_between_centres(10, span, float(load), modulus, 25) == pytest.approx(
        abs(float(curve.subs(x, load))), rel=1e-5
    )


def test_sag_is_that_of_the_beam_equation_solved_numerically() -> None:
    """E I y'''' = q with the ends held and free to turn; the weight of each collar is a narrow smooth hump."""
    span, modulus, diameter, density = 500.0, 207000.0, 25.0, 7850.0
    masses, stations, width = [0.371, 0.9], [50.0, 320.0], 1.0
    stiffness = modulus * math.pi * diameter**4 / 64
    own = density * 1e-9 * math.pi * diameter**2 / 4 * 9.80665

    def load(place: Any) -> Any:
        humps = [
            mass * 9.80665 * np.exp(-(((place - station) / width) ** 2) / 2) / (width * math.sqrt(2 * math.pi))
            for mass, station in zip(masses, stations, strict=True)
        ]
        return own + sum(humps)

    def change(place: Any, state: Any) -> Any:
        return np.vstack([state[1], state[2], state[3], load(place) / stiffness])

    def ends(left: Any, right: Any) -> Any:
        return np.array([left[0], left[2], right[0], right[2]])

    mesh = np.linspace(0, span, 4001)
    solved = solve_bvp(change, ends, mesh, np.zeros((4, mesh.size)), tol=1e-3, max_nodes=40000)
    assert solved.success
    for look in (50, 200, 250, 410):
        ours = sag_with_collars(diameter, span, modulus, density, masses, stations, look)
        assert ours == pytest.approx(float(solved.sol(look)[0]), rel=1e-4)


def test_free_end_is_that_of_a_beam_solved_symbolically() -> None:
    x, reaction, moment = symbols("x R M")
    beam = Beam(127, 205000, Rational(4988192, 100), x)  # 31.75 mm
    beam.apply_load(reaction, 0, -1)
    beam.apply_load(moment, 0, -2)
    beam.apply_load(10, 127, -1)
    beam.bc_deflection = [(0, 0)]
    beam.bc_slope = [(0, 0)]
    beam.solve_for_reaction_loads(reaction, moment)
    found = abs(float(beam.deflection().subs(x, 127)))
    assert deflection_cantilever(10, 127, 205000, 31.75) == pytest.approx(found, rel=1e-5)


_spans = st.floats(200, 1000)
_shares = st.floats(0, 1)
_forces = st.floats(0.1, 50)
_thick = st.floats(16, 40)


@given(force=_forces, span=_spans, diameter=_thick, load=_shares, look=_shares)
def test_load_and_look_may_change_places(force: float, span: float, diameter: float, load: float, look: float) -> None:
    there = deflection_anywhere(force, span, load * span, look * span, 205000, diameter)
    assert there == pytest.approx(deflection_anywhere(force, span, look * span, load * span, 205000, diameter), rel=1e-9)
    assert there >= -1e-15  # on the point of a centre the two sides of the formula cancel but for rounding
    turned = deflection_anywhere(force, span, span - load * span, span - look * span, 205000, diameter)
    assert turned == pytest.approx(there, rel=1e-6, abs=1e-12)


@given(force=_forces, span=_spans, diameter=_thick, place=_shares)
def test_under_the_load_it_is_the_deflection_at_the_load(force: float, span: float, diameter: float, place: float) -> None:
    ours = deflection_anywhere(force, span, place * span, place * span, 205000, diameter)
    assert ours == pytest.approx(
        deflection_between_centres(force, span, place * span, 205000, diameter), rel=1e-6, abs=1e-12
    )


@given(force=_forces, span=_spans, diameter=_thick, share=st.floats(0.01, 0.49))
def test_symmetric_collars_cancel_the_bending_of_the_bar(force: float, span: float, diameter: float, share: float) -> None:
    first = share * span
    steel = {"force_n": force, "span_mm": span, "modulus_mpa": 205000.0, "diameter_mm": diameter}
    assert difference_from_bending(first_station_mm=first, second_station_mm=span - first, **steel) == pytest.approx(
        0, abs=1e-12
    )
    # Moved toward the middle a collar comes out larger, so its own end looks fat.
    assert (
        difference_from_bending(first_station_mm=first, second_station_mm=span - first - 0.01 * span, **steel) > 0
        or share > 0.48
    )
    bow = bow_from_bending(first_station_mm=first, middle_station_mm=span / 2, second_station_mm=span - first, **steel)
    middle, end = (deflection_between_centres(force, span, place, 205000, diameter) for place in (span / 2, first))
    assert bow == pytest.approx(diameter_error(middle) - diameter_error(end), rel=1e-6)
    assert bow > 0


def test_chord_of_uneven_collars_is_a_straight_line_between_them() -> None:
    near, middle, far = (diameter_error(deflection_between_centres(10, 300, at, 205000, 25)) for at in (30, 80, 230))
    chord = near + (far - near) * (80 - 30) / (230 - 30)
    assert bow_from_bending(10, 300, 30, 80, 230, 205000, 25) == pytest.approx(middle - chord)


@given(force=_forces, span=st.floats(300, 1000), diameter=_thick, share=st.floats(0.05, 0.95))
def test_largest_force_and_least_diameter_are_ways_back(force: float, span: float, diameter: float, share: float) -> None:
    error = diameter_error(deflection_between_centres(force, span, share * span, 205000, diameter))
    assert largest_force(error * 4, 0.25, span, share * span, 205000, diameter) == pytest.approx(force)
    assert least_diameter(force, error * 4, 0.25, span, share * span, 205000) == pytest.approx(diameter)


@given(span=st.floats(300, 600), share=st.floats(0.1, 0.9), more=st.floats(1.01, 1.5))
def test_more_force_or_less_tolerance_asks_for_a_thicker_bar(span: float, share: float, more: float) -> None:
    rest = {"share": 0.1, "span_mm": span, "station_mm": share * span, "modulus_mpa": 205000}
    bar = least_diameter(10, 0.02, **rest)
    assert least_diameter(10 * more, 0.02, **rest) > bar
    assert least_diameter(10, 0.02 / more, **rest) == pytest.approx(bar * more**0.25)


@given(diameter=_thick, span=_spans, look=_shares)
def test_bare_bar_sags_as_its_own_formula_says_and_collars_add_to_it(diameter: float, span: float, look: float) -> None:
    steel = {"diameter_mm": diameter, "span_mm": span, "modulus_mpa": 205000.0, "density_kg_m3": 7850.0}
    middle = self_weight_sag(**steel)
    bare = sag_with_collars(**steel, masses_kg=[], stations_mm=[], look_station_mm=look * span)
    assert bare <= middle * (1 + 1e-9)
    assert sag_with_collars(**steel, masses_kg=[], stations_mm=[], look_station_mm=span / 2) == pytest.approx(middle)
    collared = sag_with_collars(**steel, masses_kg=[1.0], stations_mm=[0.3 * span], look_station_mm=look * span)
    alone = deflection_anywhere(9.80665, span, 0.3 * span, look * span, 205000, diameter)
    assert collared - bare == pytest.approx(alone, rel=1e-6, abs=1e-12)


def test_bar_of_next_to_no_weight_sags_by_its_share() -> None:
    whole, thousandth = (sag_with_collars(25, 500, 207000, density, [], [], 250) for density in (1000, 1))
    assert thousandth == pytest.approx(whole / 1000)


def test_inches_and_pounds_give_the_same_bar_as_millimetres_and_newtons() -> None:
    # F b x (L^2 - b^2 - x^2) / (6 E I L) in pounds force and inches
    force, span, load, look, modulus, diameter = 4.5, 20.0, 14.0, 3.0, 30e6, 1.0
    b = span - load
    inches = force * b * look * (span**2 - b**2 - look**2) / (6 * modulus * math.pi * diameter**4 / 64 * span)
    ours = deflection_anywhere(
        force * 4.4482216152605, span * 25.4, load * 25.4, look * 25.4, modulus * 0.006894757293168, diameter * 25.4
    )
    assert ours / 25.4 == pytest.approx(inches)


def test_twice_the_deflection_goes_to_the_diameter_and_half_the_difference_to_the_move() -> None:
    difference = difference_from_bending(10, 300, 0, 150, 205000, 25)
    assert difference == pytest.approx(2 * deflection_midspan(10, 300, 205000, 25))
    assert tailstock_move(difference, 300, 0, 150) == pytest.approx(difference)


def test_a_bar_as_slim_as_the_elastic_column_allows_buckles_alike_by_both_rules() -> None:
    # Source: tangent of Johnson's parabola to Euler's curve, at half the yield stress (any text on machine design; memory).
    slim = math.pi * math.sqrt(2 * 207000 / 450)  # length over radius of gyration, which is d / 4
    load, area = buckling_load(25, slim * 25 / 4, 207000, 450), math.pi * 25**2 / 4
    assert load == pytest.approx(area * 450 / 2, rel=1e-9)
    assert buckling_load(25, slim * 25 / 4 * 1.0001, 207000, 450) == pytest.approx(load, rel=3e-4)
    assert buckling_load(25, slim * 25 / 4 * 0.9999, 207000, 450) == pytest.approx(load, rel=3e-4)
    assert buckling_load(25, 1, 207000, 450) == pytest.approx(area * 450, rel=1e-4)


@given(diameter=st.floats(5, 50), span=st.floats(20, 2000), strength=st.floats(100, 1500), more=st.floats(1.01, 2))
def test_a_shorter_thicker_stronger_bar_buckles_no_sooner(
    diameter: float, span: float, strength: float, more: float
) -> None:
    load = buckling_load(diameter, span, 207000, strength)
    assert 0 < load < math.pi * diameter**2 / 4 * strength
    assert load <= math.pi**3 * 207000 * diameter**4 / 64 / span**2 * (1 + 1e-9)
    assert buckling_load(diameter, span * more, 207000, strength) < load
    assert buckling_load(diameter * more, span, 207000, strength) > load
    assert buckling_load(diameter, span, 207000, strength * more) >= load
