"""Whirling speeds against finite elements written out here, and against each other."""

import math
from collections.abc import Callable, Sequence
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.linalg import eigh

from spoilt import each_is_refused, spoilt
from tailtrue.calc.beams import self_weight_sag, whirl_speed_between_centres, whirl_speed_cantilever
from tailtrue.calc.bending import deflection_anywhere
from tailtrue.calc.rotors import (
    bow_growth,
    critical_speed,
    critical_speed_high_side,
    critical_speed_low_side,
    disc_speed,
    free_length_limit,
    mass_at_middle,
)
from tailtrue.calc.validity import OutOfRange

_BAR = {"diameter_mm": 25.0, "span_mm": 500.0, "modulus_mpa": 207000.0, "density_kg_m3": 7850.0}
_COLLARS = {"masses_kg": [0.3711, 0.3711], "stations_mm": [50.0, 450.0]}
_SOFT = {"headstock_n_per_mm": 50000.0, "tailstock_n_per_mm": 10000.0}
_GOOD: dict[Callable[..., Any], dict[str, Any]] = {
    disc_speed: {"mass_kg": 0.37, "span_mm": 500, "station_mm": 50, "modulus_mpa": 207000, "diameter_mm": 25},
    mass_at_middle: {"mass_kg": 0.37, "span_mm": 500, "station_mm": 50},
    critical_speed_low_side: {**_BAR, **_COLLARS, **_SOFT},
    critical_speed_high_side: {**_BAR, **_COLLARS},
    critical_speed: {**_BAR, **_COLLARS, **_SOFT},
    bow_growth: {"spindle_speed_per_min": 500, "critical_per_min": 1000},
    free_length_limit: {
        "diameter_mm": 12,
        "modulus_mpa": 206000,
        "density_kg_m3": 7850,
        "spindle_speed_per_min": 600,
        "share": 0.5,
    },
}
_THREE = [critical_speed_low_side, critical_speed_high_side, critical_speed]


@pytest.mark.parametrize(("formula", "calls"), spoilt(_GOOD))
def test_what_is_no_number_is_refused(formula: Callable[..., Any], calls: list[dict[str, Any]]) -> None:
    each_is_refused(formula, calls)


@pytest.mark.parametrize(
    ("formula", "change", "says"),
    [
        (disc_speed, {"mass_kg": 0}, "mass of the disc is 0 kg"),
        (disc_speed, {"station_mm": 0}, "the disc stands at 0 mm, upon a centre"),
        (disc_speed, {"station_mm": 500}, "the disc stands at 500 mm, upon a centre"),
        (disc_speed, {"diameter_mm": 101}, "span in diameters"),
        (mass_at_middle, {"mass_kg": 0}, "mass of the disc is 0 kg"),
        (mass_at_middle, {"span_mm": 0}, "span is 0 mm"),
        (mass_at_middle, {"station_mm": -1}, "station is -1 mm"),
        (mass_at_middle, {"station_mm": 501}, "station is 501 mm"),
        *[
            case
            for formula in _THREE
            for case in [
                (formula, {"span_mm": 0}, "span is 0 mm"),
                (formula, {"diameter_mm": 101}, "span in diameters is 4.95"),
                (formula, {"density_kg_m3": -1}, "density is -1 kg/m3"),
                (formula, {"masses_kg": [1.0]}, "1 masses are given for 2 stations; each mass needs one station"),
                (formula, {"masses_kg": [1.0, 0]}, "mass of a collar is 0 kg"),
                (formula, {"stations_mm": [-1, 450]}, "station is -1 mm"),
                (formula, {"stations_mm": [50, 501]}, "station is 501 mm"),
                (formula, {"density_kg_m3": 0, "stations_mm": [0, 500]}, "nothing between the centres has mass"),
                (formula, {"density_kg_m3": 0, "masses_kg": [], "stations_mm": []}, "nothing between the centres has mass"),
            ]
        ],
        (critical_speed, {"headstock_n_per_mm": 0}, "stiffness of the headstock centre is 0 N/mm"),
        (critical_speed, {"tailstock_n_per_mm": 0}, "stiffness of the tailstock centre is 0 N/mm"),
        (critical_speed_low_side, {"headstock_n_per_mm": 0}, "stiffness of the headstock centre is 0 N/mm"),
        (critical_speed_low_side, {"tailstock_n_per_mm": -1}, "stiffness of the tailstock centre is -1 N/mm"),
        (bow_growth, {"spindle_speed_per_min": -1}, "speed as a share of the critical one is -0.001"),
        (bow_growth, {"spindle_speed_per_min": 901}, "speed as a share of the critical one is 0.901"),
        (bow_growth, {"critical_per_min": 0}, "critical speed is 0 1/min"),
        (free_length_limit, {"diameter_mm": 0}, "diameter is 0 mm"),
        (free_length_limit, {"spindle_speed_per_min": 0}, "spindle speed is 0 1/min"),
        (free_length_limit, {"share": 0}, "share of the whirling speed is 0"),
        (free_length_limit, {"share": 0.901}, "share of the whirling speed is 0.901"),
        (free_length_limit, {"modulus_mpa": 0}, "modulus of elasticity is 0 MPa"),
    ],
)
def test_beyond_its_bounds_it_refuses_and_says_what_was_read(
    formula: Callable[..., Any], change: dict[str, Any], says: str
) -> None:
    with pytest.raises(OutOfRange) as refused:
        formula(**(_GOOD[formula] | change))
    assert says in str(refused.value)


def test_bounds_themselves_are_allowed() -> None:
    assert bow_growth(0, 1000) == 1
    assert bow_growth(900, 1000) == pytest.approx(1 / 0.19)
    assert mass_at_middle(1, 500, 0) == mass_at_middle(1, 500, 500) == 0
    assert mass_at_middle(1, 500, 250) == pytest.approx(1)
    assert free_length_limit(12, 206000, 7850, 600, 0.9) > 0
    for formula in _THREE:
        assert formula(**(_BAR | {"diameter_mm": 100.0}), **_COLLARS) > 0
        assert formula(**_BAR, masses_kg=[1.0], stations_mm=[0.0]) == pytest.approx(12099, rel=5e-3)
        assert formula(**(_BAR | {"density_kg_m3": 0.0}), masses_kg=[1.0, 1.0], stations_mm=[0.0, 250.0]) > 0


def _finite_elements(
    diameter: float,
    span: float,
    masses: Sequence[float],
    stations: Sequence[float],
    springs: tuple[float, float] = (1e9, 1e9),
    elements: int = 60,
) -> float:
    """Speed from cubic beam elements, in N, mm and tonnes; collars are lumps at the nearest node."""
    stiffness = 207000 * math.pi * diameter**4 / 64
    line = 7.85e-9 * math.pi * diameter**2 / 4
    size = span / elements
    k = stiffness / size**3 * np.array(
        [[12, 6 * size, -12, 6 * size], [6 * size, 4 * size**2, -6 * size, 2 * size**2],
         [-12, -6 * size, 12, -6 * size], [6 * size, 2 * size**2, -6 * size, 4 * size**2]]
    )  # fmt: skip
    m = line * size / 420 * np.array(
        [[156, 22 * size, 54, -13 * size], [22 * size, 4 * size**2, 13 * size, -3 * size**2],
         [54, 13 * size, 156, -22 * size], [-13 * size, -3 * size**2, -22 * size, 4 * size**2]]
    )  # fmt: skip
    whole_k, whole_m = np.zeros((2, 2 * elements + 2, 2 * elements + 2))
    for element in range(elements):
        here = slice(2 * element, 2 * element + 4)
        whole_k[here, here] += k
        whole_m[here, here] += m
    whole_k[0, 0] += springs[0]
    whole_k[-2, -2] += springs[1]
    for mass, station in zip(masses, stations, strict=True):
        node = 2 * round(station / size)
        assert node / 2 * size == pytest.approx(station)
        whole_m[node, node] += mass / 1000
    return float(math.sqrt(eigh(whole_k, whole_m, eigvals_only=True, subset_by_index=[0, 0])[0])) * 30 / math.pi


@pytest.mark.parametrize(
    ("diameter", "span", "first"),
    [(25, 300, 50), (25, 300, 30), (25, 500, 50), (25, 1000, 50), (20, 1000, 50), (40, 1000, 50)],
)
def test_critical_speed_is_that_of_finite_elements(diameter: float, span: float, first: float) -> None:
    masses, stations = [0.37, 0.37], [first, span - first]
    found = critical_speed(diameter, span, 207000, 7850, masses, stations)
    assert found == pytest.approx(_finite_elements(diameter, span, masses, stations), rel=1e-4)


@pytest.mark.parametrize("springs", [(50000.0, 10000.0), (20000.0, 5000.0), (5000.0, 1e9), (1e9, 2000.0)])
def test_soft_centres_lower_it_as_in_finite_elements(springs: tuple[float, float]) -> None:
    masses, stations = [0.37, 1.2], [50.0, 400.0]
    found = critical_speed(25, 500, 207000, 7850, masses, stations, *springs)
    assert found == pytest.approx(_finite_elements(25, 500, masses, stations, springs), rel=2e-4)
    low = critical_speed_low_side(25, 500, 207000, 7850, masses, stations, *springs)
    assert 0.8 * found < low < found < critical_speed(25, 500, 207000, 7850, masses, stations)


def test_low_side_sums_the_squares_of_periods() -> None:
    """Bare bar, each disc alone, and bar and discs each on the centres alone."""
    head, tail, bar_mass = 50000.0, 10000.0, 7.85e-6 * math.pi * 25**2 / 4 * 500
    periods = [1 / whirl_speed_between_centres(25, 500, 207000, 7850) ** 2]
    periods += [1 / disc_speed(0.3711, 500, at, 207000, 25) ** 2 for at in (50, 450)]
    turns = (math.pi / 30) ** 2 / 1000
    periods += [turns * 0.3711 * ((1 - u) ** 2 / head + u**2 / tail) for u in (0.1, 0.9)]
    periods += [turns * bar_mass / 3 / spring for spring in (head, tail)]
    found = critical_speed_low_side(**_BAR, **_COLLARS, headstock_n_per_mm=head, tailstock_n_per_mm=tail)
    assert found == pytest.approx(1 / math.sqrt(sum(periods)), rel=1e-9)


def test_two_discs_on_a_weightless_bar_follow_from_their_two_by_two_influences() -> None:
    masses, stations = [15.9, 24.9], [177.8, 508.0]
    bar = {"span_mm": 787.4, "modulus_mpa": 206843.0, "diameter_mm": 25.4}
    give = [
        [deflection_anywhere(1, load_station_mm=there, look_station_mm=here, **bar) for there in stations]
        for here in stations
    ]
    root = max(np.linalg.eigvals(np.array(give) @ np.diag(masses)).real)
    exact = 30 / math.pi * math.sqrt(1000 / root)
    line = {**bar, "density_kg_m3": 0.0, "masses_kg": masses, "stations_mm": stations}
    assert critical_speed(**line) == pytest.approx(exact, rel=1e-5)
    assert critical_speed_low_side(**line) < exact < critical_speed_high_side(**line)
    # One disc alone: all three say the same.
    one = line | {"masses_kg": [15.9], "stations_mm": [177.8]}
    alone = disc_speed(15.9, 787.4, 177.8, 206843, 25.4)
    for formula in _THREE:
        assert formula(**one) == pytest.approx(alone, rel=1e-5)


@pytest.mark.parametrize("formula", _THREE)
def test_bare_bar_whirls_at_its_own_speed(formula: Callable[..., float]) -> None:
    bare = whirl_speed_between_centres(25, 500, 207000, 7850)
    # The sag of a bare bar is no sine, so the estimate from above is a little high.
    assert formula(**_BAR, masses_kg=[], stations_mm=[]) == pytest.approx(
        bare, rel=2e-3 if formula is critical_speed_high_side else 1e-7
    )


def test_estimate_from_above_of_a_bare_bar_is_exact_for_its_sag() -> None:
    # y = s 16/5 p, p = u - 2 u^3 + u^4: the mean of p is 1/5 and that of its square 31/630.
    sag = self_weight_sag(**_BAR) * 16 / 5
    expected = 30 / math.pi * math.sqrt(9806.65 * (1 / 5) / (sag * 31 / 630))
    assert critical_speed_high_side(**_BAR, masses_kg=[], stations_mm=[]) == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize("formula", _THREE)
def test_light_bar_whirls_faster_by_the_root_of_its_density(formula: Callable[..., float]) -> None:
    heavy, light = (formula(**(_BAR | {"density_kg_m3": at}), masses_kg=[], stations_mm=[]) for at in (100.0, 1.0))
    assert light == pytest.approx(10 * heavy)


@pytest.mark.parametrize("formula", [critical_speed, critical_speed_low_side])
def test_centres_left_out_are_rigid(formula: Callable[..., float]) -> None:
    stiff = formula(**_BAR, **_COLLARS, headstock_n_per_mm=1e10, tailstock_n_per_mm=1e10)
    assert formula(**_BAR, **_COLLARS) == pytest.approx(stiff, rel=1e-6)
    softer = [formula(**_BAR, **_COLLARS, **{name: 10000.0}) for name in _SOFT]
    assert softer[0] == pytest.approx(softer[1])
    assert softer[0] < 0.99 * stiff


@settings(deadline=None, max_examples=40)
@given(
    diameter=st.floats(16, 40),
    span=st.floats(250, 1000),
    masses=st.lists(st.floats(0.05, 3), min_size=1, max_size=3),
    shares=st.lists(st.floats(0.05, 0.95), min_size=3, max_size=3),
    more=st.floats(1.05, 2),
)
def test_true_speed_lies_between_the_two_sides_and_mass_lowers_it(
    diameter: float, span: float, masses: list[float], shares: list[float], more: float
) -> None:
    places = [share * span for share in shares[: len(masses)]]
    bar = (diameter, span, 207000.0, 7850.0)
    low, high = (formula(*bar, masses, places) for formula in (critical_speed_low_side, critical_speed_high_side))
    best = critical_speed(*bar, masses, places)
    assert low <= best * (1 + 1e-6)
    assert best <= high * (1 + 1e-6)
    assert critical_speed(*bar, [more * mass for mass in masses], places) < best
    mirrored = critical_speed(*bar, masses, [span - place for place in places])
    assert mirrored == pytest.approx(best, rel=1e-9)


@given(mass=st.floats(0.1, 20), share=st.floats(0.05, 0.95))
def test_mass_moved_to_the_middle_whirls_at_the_same_speed(mass: float, share: float) -> None:
    there = disc_speed(mass, 500, share * 500, 207000, 25)
    assert disc_speed(mass_at_middle(mass, 500, share * 500), 500, 250, 207000, 25) == pytest.approx(there)


@given(diameter=st.floats(6, 50), speed=st.floats(50, 1500), share=st.floats(0.1, 0.9))
def test_free_length_is_the_whirling_speed_turned_round(diameter: float, speed: float, share: float) -> None:
    length = free_length_limit(diameter, 206000, 7850, speed, share)
    assert whirl_speed_cantilever(diameter, length, 206000, 7850) * share == pytest.approx(speed)
    assert free_length_limit(diameter, 206000, 7850, 4 * speed, share) == pytest.approx(length / 2)


def test_stock_too_thick_for_the_speed_is_refused_with_what_to_do() -> None:
    # The whirling speed of 2.5 diameters of a 100 mm bar is close to 57 300 1/min.
    edge = whirl_speed_cantilever(100, 250, 206000, 7850) * 0.5
    assert free_length_limit(100, 206000, 7850, edge * 0.9999, 0.5) == pytest.approx(250, rel=1e-3)
    with pytest.raises(OutOfRange, match=r"only 249 mm could stand out free.*\(2\.5 diameters\); let nothing stand out"):
        free_length_limit(100, 206000, 7850, edge * 1.005, 0.5)


def test_inches_and_pounds_whirl_as_millimetres_and_kilograms() -> None:
    # Bare bar: (pi / L)^2 sqrt(E I g / (gamma A)) in pounds force, inches and seconds.
    modulus, diameter, span, weight = 30e6, 1.0, 20.0, 0.2836
    per_second = (math.pi / span) ** 2 * diameter / 4 * math.sqrt(modulus * 386.0886 / weight)
    metric = critical_speed(25.4, 508.0, modulus * 0.006894757293168, weight * 27679.9047, masses_kg=[], stations_mm=[])
    assert metric == pytest.approx(per_second * 30 / math.pi, rel=1e-6)
