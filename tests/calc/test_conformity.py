"""How sure a verdict is."""

from math import inf, nan

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from tailtrue.calc.conformity import (
    acceptance_limit,
    conformity_probability,
    methods_agree,
    pass_rate,
    rejection_limit,
    verdict_at_probability,
    worth_moving,
)
from tailtrue.calc.student import one_sided_factor, probability_below
from tailtrue.calc.uncertainty import verdict
from tailtrue.calc.validity import OutOfRange

_difference = st.floats(-0.05, 0.05)
_unsure = st.floats(0.0001, 0.02)
_limit = st.floats(0.002, 0.03)
_more = st.floats(1, 5)


def test_guard_band_is_taken_off_inside_and_added_outside() -> None:
    assert acceptance_limit(0.01, 0.002, coverage=2) == pytest.approx(0.006)
    assert rejection_limit(0.01, 0.002, coverage=2) == pytest.approx(0.014)
    assert acceptance_limit(0.01, 0.002, 1.65) == pytest.approx(0.0067)
    assert rejection_limit(0.01, 0.002, 1.65) == pytest.approx(0.0133)
    assert acceptance_limit(0.5, 0.25, coverage=2) == 0
    assert acceptance_limit(0.01, 0, coverage=2) == rejection_limit(0.01, 0, coverage=2) == 0.01


def test_guard_band_wider_than_the_limit_accepts_nothing() -> None:
    said = (
        r"^guard band is 0\.012 mm and the limit 0\.01 mm; no reading could be called inside: "
        r"take a better instrument or a wider limit$"
    )
    with pytest.raises(OutOfRange, match=said):
        acceptance_limit(0.01, 0.006, coverage=2)
    assert pass_rate(0, 0.006, 0.01, coverage=2) == 0


@given(difference=_difference, unsure=_unsure, limit=_limit, coverage=st.floats(1, 3))
def test_guard_bands_say_what_the_verdict_says(difference: float, unsure: float, limit: float, coverage: float) -> None:
    said = verdict(difference, coverage * unsure, limit)
    slack = 1e-12
    if said == "inside":
        assert abs(difference) <= acceptance_limit(limit, unsure, coverage) + slack
    elif said == "outside":
        assert abs(difference) > rejection_limit(limit, unsure, coverage) - slack
    else:
        assert abs(difference) <= rejection_limit(limit, unsure, coverage) + slack
        assert coverage * unsure > limit - slack or abs(difference) > acceptance_limit(limit, unsure, coverage) - slack


@given(difference=_difference, unsure=_unsure, limit=_limit, freedom=st.one_of(st.just(inf), st.floats(1, 50)))
def test_probability_agrees_with_a_general_library(difference: float, unsure: float, limit: float, freedom: float) -> None:
    law = stats.norm(difference, unsure) if freedom == inf else stats.t(freedom, difference, unsure)
    found = conformity_probability(difference, unsure, limit, freedom)
    assert found == pytest.approx(law.cdf(limit) - law.cdf(-limit), abs=1e-9)
    assert 0 <= found <= 1
    assert conformity_probability(-difference, unsure, limit, freedom) == found


def test_both_sides_of_the_limit_count() -> None:
    assert conformity_probability(0, 0.01, 0.01) == pytest.approx(0.682689, rel=1e-5)
    assert conformity_probability(0.01, 0.01, 0.01) == pytest.approx(0.477250, rel=1e-5)


def test_without_uncertainty_it_is_certain() -> None:
    assert conformity_probability(0.01, 0, 0.01) == conformity_probability(-0.01, 0, 0.01) == 1
    assert conformity_probability(0.0101, 0, 0.01) == conformity_probability(-0.0101, 0, 0.01) == 0
    assert verdict_at_probability(0.01, 0, 0.01, probability=0.95) == "inside"
    assert verdict_at_probability(0.0101, 0, 0.01, probability=0.95) == "outside"
    assert conformity_probability(0.005, 5e-324, 0.01) == 1
    assert conformity_probability(0.015, 5e-324, 0.01) == 0


@given(difference=_difference, unsure=_unsure, limit=_limit, more=_more)
def test_more_uncertainty_never_makes_a_verdict_surer(difference: float, unsure: float, limit: float, more: float) -> None:
    for judge in (
        lambda u: verdict(difference, 2 * u, limit),
        lambda u: verdict_at_probability(difference, u, limit, probability=0.95),
    ):
        before, after = judge(unsure), judge(unsure * more)
        assert before == after or after == "too close to say"


@given(difference=_difference, unsure=_unsure, limit=_limit, freedom=st.floats(1, 50), probability=st.floats(0.9, 0.9999))
def test_verdict_is_symmetric_keeps_its_unit_and_never_beats_one_side(
    difference: float, unsure: float, limit: float, freedom: float, probability: float
) -> None:
    said = verdict_at_probability(difference, unsure, limit, probability, freedom)
    assert verdict_at_probability(-difference, unsure, limit, probability, freedom) == said
    keeps = conformity_probability(difference, unsure, limit, freedom)
    assert (said == "inside") == (keeps >= probability)
    if said == "outside":
        assert 1 - keeps >= probability
        assert abs(difference) - one_sided_factor(probability, freedom) * unsure >= limit - 1e-9
    if said == "inside":
        assert abs(difference) + one_sided_factor(probability, freedom) * unsure <= limit + 1e-9
        assert verdict_at_probability(difference, unsure, limit, probability) == "inside"


def test_poor_instrument_finds_no_fault_by_its_poverty() -> None:
    assert conformity_probability(0, 0.05, 0.002) < 0.05
    assert verdict_at_probability(0, 0.05, 0.002, probability=0.95) == "too close to say"
    assert verdict_at_probability(0.09, 0.05, 0.01, probability=0.95) == "too close to say"
    assert verdict_at_probability(0.093, 0.05, 0.01, probability=0.95) == "outside"


def test_verdict_at_its_bounds() -> None:
    # Far from the other side of the limit, 95 % is 1.644854 standard uncertainties.
    for distance, said in [
        (1.6449, "inside"),
        (1.6448, "too close to say"),
        (-1.6448, "too close to say"),
        (-1.6449, "outside"),
    ]:
        assert verdict_at_probability(0.01 - distance * 0.0005, 0.0005, 0.01, probability=0.95) == said
        assert verdict_at_probability(0.01 - distance * 0.0005, 0.0005, 0.01, 0.95, inf) == said
    assert verdict_at_probability(0.009, 0.0005, 0.01, 0.99) == "too close to say"
    assert verdict_at_probability(0.009, 0.0005, 0.01, 0.95, 2) == "too close to say"  # t of two is 2.92
    keeps = conformity_probability(0.0088, 0.0005, 0.01)
    assert verdict_at_probability(0.0088, 0.0005, 0.01, keeps) == "inside"
    beyond = probability_below((0.0108 - 0.01) / 0.0005)
    assert verdict_at_probability(0.0108, 0.0005, 0.01, beyond) == "outside"
    for allowed in (0.9, 0.9999):
        assert verdict_at_probability(0, 0.0005, 0.01, allowed) == "inside"
    for wrong in (0.899, 0.99995, nan):
        with pytest.raises(
            OutOfRange, match=r"^probability of a right verdict is .*; the formula holds from 0\.9 to 0\.9999$"
        ):
            verdict_at_probability(0, 0.0005, 0.01, wrong)


@pytest.mark.parametrize(("coverage", "most"), [(2.0, 0.0228), (one_sided_factor(0.95), 0.0501)])
@pytest.mark.parametrize("true", [0.01, 0.0101, 0.011, -0.01, -0.012])
def test_wrong_passes_are_rare_when_drawn(coverage: float, most: float, true: float) -> None:
    drawn = np.random.default_rng(20240101).normal(true, 0.0018, 200_000)
    passed = float((np.abs(drawn) + coverage * 0.0018 <= 0.01).mean())
    assert pass_rate(true, 0.0018, 0.01, coverage) == pytest.approx(passed, abs=2e-3)
    assert pass_rate(true, 0.0018, 0.01, coverage) <= most <= 0.0501
    assert passed <= 0.05 + 1e-3
    # The word itself, as it falls in a few of the trials.
    for found in drawn[:200].tolist():
        assert (verdict(found, coverage * 0.0018, 0.01) == "inside") == (abs(found) + coverage * 0.0018 <= 0.01)


@given(true=_difference, unsure=_unsure, limit=_limit, more=_more)
def test_beyond_the_limit_few_pass_and_fewer_the_farther(true: float, unsure: float, limit: float, more: float) -> None:
    beyond = limit * more
    assert pass_rate(beyond, unsure, limit, coverage=2) <= 0.02276
    assert pass_rate(beyond * 1.1, unsure, limit, coverage=2) <= pass_rate(beyond, unsure, limit, coverage=2)
    assert pass_rate(-true, unsure, limit, coverage=2) == pass_rate(true, unsure, limit, coverage=2)
    # What passes lies inside the limit by the guard band, on either side.
    band, law = max(limit - 2 * unsure, 0), stats.norm(true, unsure)
    expected = law.cdf(band) - law.cdf(-band)
    assert pass_rate(true, unsure, limit, coverage=2) == pytest.approx(expected, abs=1e-9)
    assert pass_rate(true, unsure, limit, 3) <= pass_rate(true, unsure, limit, coverage=2)


def test_rate_without_uncertainty_or_band() -> None:
    assert (pass_rate(0.01, 0, 0.01, coverage=2), pass_rate(-0.0101, 0, 0.01, coverage=2)) == (1, 0)
    assert pass_rate(0, 0.25, 0.5, coverage=2) == 0  # band as wide as the limit
    assert pass_rate(0, 0.002, 0.01, coverage=2) == pytest.approx(0.9973, abs=1e-4)


@given(move=st.floats(-0.1, 0.1), unsure=st.floats(0, 0.05))
def test_move_smaller_than_its_uncertainty_is_left(move: float, unsure: float) -> None:
    assert worth_moving(move, unsure) == worth_moving(-move, unsure) == (move > unsure or move < -unsure)


def test_methods_agree_up_to_the_root_of_both_squares() -> None:
    assert methods_agree(0.005, 0.003, 0.0, 0.004)
    assert methods_agree(0.0, 0.003, 0.005, 0.004)
    assert not methods_agree(0.00501, 0.003, 0.0, 0.004)
    assert not methods_agree(0.0, 0.003, 0.00501, 0.004)
    assert methods_agree(0.01, 0, 0.01, 0)


@pytest.mark.parametrize(
    ("formula", "sound", "names"),
    [
        (acceptance_limit, (0.01, 0.001, 2), ("limit", "standard uncertainty", "factor of the guard band")),
        (rejection_limit, (0.01, 0.001, 2), ("limit", "standard uncertainty", "factor of the guard band")),
        (
            conformity_probability,
            (0, 0.001, 0.01, 5),
            ("difference", "standard uncertainty", "limit", "number of degrees of freedom"),
        ),
        (pass_rate, (0, 0.001, 0.01, 2), ("true difference", "standard uncertainty", "limit", "factor of the guard band")),
        (worth_moving, (0, 0.001), ("move of the centre", "expanded uncertainty of the move")),
        (
            methods_agree,
            (0, 0.001, 0, 0.001),
            (
                "first result",
                "expanded uncertainty of the first result",
                "second result",
                "expanded uncertainty of the second result",
            ),
        ),
    ],
)
def test_what_is_no_sound_number_is_refused_by_name(formula, sound, names) -> None:  # type: ignore[no-untyped-def]
    formula(*sound)
    for place, name in enumerate(names):
        signed = "expanded" not in name and any(word in name for word in ("result", "difference", "move of"))
        for bad in (nan, -inf if signed else -1e-6):
            with pytest.raises(OutOfRange, match=rf"^{name} is {bad:g}"):
                formula(*(bad if place == other else value for other, value in enumerate(sound)))


def test_freedom_counts_from_one_even_without_uncertainty() -> None:
    with pytest.raises(OutOfRange, match=r"^number of degrees of freedom is 0\.5; the formula holds from 1 to inf$"):
        conformity_probability(0, 0, 0.01, 0.5)
    with pytest.raises(OutOfRange, match=r"^limit is 0 mm; it must be more than 0 mm$"):
        pass_rate(0, 0.001, 0, coverage=2)
    with pytest.raises(OutOfRange, match=r"^factor of the guard band is 0; it must be more than 0$"):
        rejection_limit(0.01, 0.001, 0)
