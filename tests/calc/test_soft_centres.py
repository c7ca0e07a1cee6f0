"""Centres that give against the statics of two springs, and the pull test against the centres it is made on."""

from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat

from spoilt import each_is_refused, spoilt
from tailtrue.calc.beams import deflection_between_centres
from tailtrue.calc.bending import difference_from_bending
from tailtrue.calc.soft_centres import (
    RIGID_N_PER_MM,
    centre_give,
    difference_from_centres,
    pull_correction,
    pull_stiffness,
    skim_deflection,
)
from tailtrue.calc.validity import OutOfRange

_SOFT = {"headstock_n_per_mm": 50000.0, "tailstock_n_per_mm": 10000.0}
_COLLARS = {"force_n": 10.0, "span_mm": 300.0, "first_station_mm": 30.0, "second_station_mm": 270.0}
_GOOD: dict[Callable[..., Any], dict[str, Any]] = {
    centre_give: {"force_n": 10, "span_mm": 300, "load_station_mm": 30, "look_station_mm": 270, **_SOFT},
    difference_from_centres: {**_COLLARS, **_SOFT},
    skim_deflection: {**_COLLARS, "modulus_mpa": 205000, "diameter_mm": 25, **_SOFT},
    pull_stiffness: {"pull_force_n": 50, "give_mm": 0.004},
    pull_correction: {
        "cutting_force_n": 10,
        "pull_force_n": 50,
        "headstock_give_mm": 0.001,
        "tailstock_give_mm": 0.004,
    },
}


@pytest.mark.parametrize(("formula", "calls"), spoilt(_GOOD))
def test_what_is_no_number_is_refused(formula: Callable[..., Any], calls: list[dict[str, Any]]) -> None:
    each_is_refused(formula, calls)


@pytest.mark.parametrize(
    ("formula", "change", "says"),
    [
        (centre_give, {"force_n": -0.1}, "force is -0.1 N"),
        (centre_give, {"span_mm": 0}, "span is 0 mm"),
        (centre_give, {"load_station_mm": -1}, "station of the force is -1 mm"),
        (centre_give, {"load_station_mm": 301}, "station of the force is 301 mm"),
        (centre_give, {"look_station_mm": -1}, "station looked at is -1 mm"),
        (centre_give, {"look_station_mm": 301}, "station looked at is 301 mm"),
        (centre_give, {"headstock_n_per_mm": 0}, "stiffness of the headstock centre is 0 N/mm"),
        (centre_give, {"tailstock_n_per_mm": 0}, "stiffness of the tailstock centre is 0 N/mm"),
        (difference_from_centres, {"second_station_mm": 30}, "distance from headstock collar to tailstock collar is 0 mm"),
        (skim_deflection, {"second_station_mm": 30}, "distance from headstock collar to tailstock collar is 0 mm"),
        (skim_deflection, {"diameter_mm": 61}, "span in diameters"),
        (pull_stiffness, {"pull_force_n": 0}, "force of the pull is 0 N"),
        (pull_stiffness, {"give_mm": 0}, "give under the pull is 0 mm"),
        (pull_correction, {"pull_force_n": 0}, "force of the pull is 0 N"),
        (pull_correction, {"cutting_force_n": 51}, "radial force of the skim is 51 N; the formula holds from 0 N to 50 N"),
        (pull_correction, {"cutting_force_n": -1}, "radial force of the skim is -1 N"),
        (pull_correction, {"headstock_give_mm": -0.001}, "give of the headstock collar is -0.001 mm"),
        (pull_correction, {"tailstock_give_mm": -0.001}, "give of the tailstock collar is -0.001 mm"),
    ],
)
def test_beyond_its_bounds_it_refuses_and_says_what_was_read(
    formula: Callable[..., Any], change: dict[str, Any], says: str
) -> None:
    with pytest.raises(OutOfRange) as refused:
        formula(**(_GOOD[formula] | change))
    assert says in str(refused.value)


def test_bounds_themselves_are_allowed() -> None:
    assert centre_give(0, 300, 0, 300, 50000, 10000) == 0
    assert centre_give(10, 300, 0, 0, 50000, 10000) == pytest.approx(0.0002)
    assert centre_give(10, 300, 300, 300, 50000, 10000) == pytest.approx(0.001)
    assert centre_give(10, 300, 0, 300, 50000, 10000) == 0
    assert pull_correction(50, 50, 0.001, 0.004) == pytest.approx(0.006)
    assert pull_correction(0, 50, 0, 0) == 0


@given(place=st.floats(0, 1), look=st.floats(0, 1), head=st.floats(1000, 1e5), tail=st.floats(1000, 1e5))
def test_give_is_that_of_a_beam_on_two_springs(place: float, look: float, head: float, tail: float) -> None:
    """Unknowns: movement of either end. Forces and moments about the headstock balance."""
    span, force = 300.0, 10.0
    ends = np.linalg.solve(np.array([[head, tail], [0.0, tail * span]]), np.array([force, force * place * span]))
    expected = float(ends[0] + (ends[1] - ends[0]) * look)
    ours = centre_give(force, span, place * span, look * span, head, tail)
    assert ours == pytest.approx(expected, abs=1e-9)
    assert ours == pytest.approx(centre_give(force, span, look * span, place * span, head, tail), rel=1e-9, abs=1e-15)


@given(share=st.floats(0.02, 0.45), head=st.floats(1000, 1e5), tail=st.floats(1000, 1e5))
def test_softer_tailstock_looks_fat_and_like_centres_cancel(share: float, head: float, tail: float) -> None:
    places = {"force_n": 10.0, "span_mm": 300.0, "first_station_mm": 300 * share, "second_station_mm": 300 * (1 - share)}
    difference = difference_from_centres(**places, headstock_n_per_mm=head, tailstock_n_per_mm=tail)
    assert difference == pytest.approx(2 * 10 * (1 - 2 * share) * (1 / tail - 1 / head), rel=1e-6, abs=1e-12)
    assert difference_from_centres(**places, headstock_n_per_mm=head, tailstock_n_per_mm=head) == pytest.approx(0, abs=1e-15)
    swapped = difference_from_centres(**places, headstock_n_per_mm=tail, tailstock_n_per_mm=head)
    assert swapped == pytest.approx(-difference, abs=1e-15)


@given(first=st.floats(10, 140), second=st.floats(150, 290), force=st.floats(0.5, 50))
def test_bar_and_centres_add_up(first: float, second: float, force: float) -> None:
    bar = {"modulus_mpa": 205000.0, "diameter_mm": 25.0}
    places = {"force_n": force, "span_mm": 300.0, "first_station_mm": first, "second_station_mm": second}
    found = skim_deflection(**places, **bar, **_SOFT)
    parts = difference_from_bending(**places, **bar) + difference_from_centres(**places, **_SOFT)
    assert found.difference_of_diameters_mm == pytest.approx(parts, abs=1e-12)
    give = found.at_tailstock_collar_mm - found.at_headstock_collar_mm
    assert found.difference_of_diameters_mm == pytest.approx(2 * give, abs=1e-15)
    assert found.at_headstock_collar_mm > deflection_between_centres(force, 300, first, 205000, 25)


def test_centres_left_out_are_rigid() -> None:
    bar = {**_COLLARS, "modulus_mpa": 205000.0, "diameter_mm": 25.0}
    rigid = skim_deflection(**bar)
    assert rigid.at_headstock_collar_mm == pytest.approx(deflection_between_centres(10, 300, 30, 205000, 25), rel=1e-4)
    assert rigid == skim_deflection(**bar, headstock_n_per_mm=RIGID_N_PER_MM, tailstock_n_per_mm=RIGID_N_PER_MM)
    assert abs(rigid.difference_of_diameters_mm) < 1e-9


@given(cut=st.floats(1, 50), head=st.floats(5000, 1e5), tail=st.floats(2000, 5e4))
def test_pull_test_finds_what_the_softness_will_add(cut: float, head: float, tail: float) -> None:
    """Pulled at each collar in turn, indicator there, on the very centres that later bear the skim."""
    soft = {"headstock_n_per_mm": head, "tailstock_n_per_mm": tail}
    places = {
        "span_mm": 300.0,
        "first_station_mm": 30.0,
        "second_station_mm": 250.0,
        "modulus_mpa": 205000.0,
        "diameter_mm": 25.0,
    }
    pulled = skim_deflection(force_n=50, **places, **soft)
    correction = pull_correction(cut, 50, pulled.at_headstock_collar_mm, pulled.at_tailstock_collar_mm)
    assert correction == pytest.approx(skim_deflection(force_n=cut, **places, **soft).difference_of_diameters_mm)
    assert pull_stiffness(50, pulled.at_tailstock_collar_mm) < tail / (250 / 300) ** 2


def test_uncertainty_of_a_pull_goes_into_the_correction_twice_over() -> None:
    pull, near, far = ufloat(50, 2), ufloat(0.001, 0.0005), ufloat(0.004, 0.0005)
    whole = 2 * 10 * (far - near) / pull
    assert pull_correction(10, 50, 0.001, 0.004) == pytest.approx(whole.nominal_value)
    slope = (pull_correction(10, 50, 0.001, 0.004 + 1e-6) - pull_correction(10, 50, 0.001, 0.004)) / 1e-6
    assert slope == pytest.approx(whole.derivatives[far])
