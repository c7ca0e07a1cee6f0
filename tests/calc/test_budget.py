"""A budget of uncertainty: what it comes to, which part weighs most, how wide it is printed."""

from functools import partial
from math import inf, nan, sqrt

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from uncertainties import correlated_values, ufloat

from tailtrue.calc.budget import (
    Component,
    Correlation,
    Expanded,
    Shape,
    combined_uncertainty,
    doubt_freedom,
    effective_freedom,
    expanded_uncertainty,
    shares,
    standard_uncertainty,
)
from tailtrue.calc.student import two_sided_factor
from tailtrue.calc.validity import OutOfRange

_component = st.tuples(st.floats(0.0001, 0.01), st.floats(-3, 3), st.one_of(st.floats(1, 100), st.just(inf)))


def _named(parts: list[tuple[float, float, float]]) -> list[Component]:
    return [Component(f"part {number}", *part) for number, part in enumerate(parts)]


_EXPANDED = partial(expanded_uncertainty, probability=0.95)
_budgets = st.lists(_component, min_size=1, max_size=6).map(_named)


@pytest.mark.parametrize(
    ("shape", "drawn"),
    [
        ("rectangular", lambda random: random.uniform(-1, 1, 200_000)),
        ("triangular", lambda random: random.triangular(-1, 0, 1, 200_000)),
        ("U-shaped", lambda random: np.sin(random.uniform(-np.pi, np.pi, 200_000))),
        ("normal", lambda random: random.normal(0, 0.5, 200_000)),
    ],
)
def test_shapes_scatter_as_they_do_when_drawn(shape: Shape, drawn) -> None:  # type: ignore[no-untyped-def]
    found = float(drawn(np.random.default_rng(20240101)).std())
    assert standard_uncertainty(1, shape) == pytest.approx(found, rel=5e-3)


def test_coverage_factor_belongs_to_the_normal_shape_only() -> None:
    assert standard_uncertainty(0.003, "normal", 3) == pytest.approx(0.001)
    assert standard_uncertainty(0.003, "normal") == pytest.approx(0.0015)
    assert standard_uncertainty(0.003, "rectangular", 3) == pytest.approx(0.003 / sqrt(3))
    assert standard_uncertainty(0, "triangular") == 0


def test_shape_must_be_known() -> None:
    said = r"^shape of the distribution is 'round'; it must be one of U-shaped, normal, rectangular, triangular$"
    with pytest.raises(OutOfRange, match=said):
        standard_uncertainty(0.001, "round")  # type: ignore[arg-type]
    with pytest.raises(OutOfRange, match=r"^half width is -0\.001 mm; the formula holds from 0 mm upward$"):
        standard_uncertainty(-0.001, "normal")
    with pytest.raises(OutOfRange, match=r"^coverage factor is 0; it must be more than 0$"):
        standard_uncertainty(0.001, "normal", 0)


def test_doubt_about_an_uncertainty_becomes_degrees_of_freedom() -> None:
    assert doubt_freedom(0) == inf
    assert doubt_freedom(0.01) == pytest.approx(5000)
    assert doubt_freedom(0.7) == pytest.approx(1.0204, rel=1e-4)
    for wrong in (-0.1, 0.71, nan):
        with pytest.raises(OutOfRange, match=r"^doubt about the uncertainty is .*; the formula holds from 0 to 0\.7$"):
            doubt_freedom(wrong)


def test_doubt_agrees_with_the_scatter_of_a_standard_deviation() -> None:
    drawn = np.random.default_rng(5).normal(size=(200_000, 51)).std(axis=1, ddof=1)
    assert doubt_freedom(float(drawn.std())) == pytest.approx(50, rel=0.02)


@given(components=_budgets)
def test_independent_parts_agree_with_an_uncertainty_library(components: list[Component]) -> None:
    result = sum(part.sensitivity * ufloat(1, part.standard_uncertainty_mm) for part in components)
    assert combined_uncertainty(components) == pytest.approx(result.std_dev, rel=1e-9, abs=1e-12)


@given(components=st.lists(_component, min_size=3, max_size=3).map(_named), seed=st.integers(0, 10_000))
def test_correlated_parts_agree_with_an_uncertainty_library(components: list[Component], seed: int) -> None:
    mixed = np.random.default_rng(seed).normal(size=(3, 5))
    matrix = np.corrcoef(mixed)
    unsure = np.array([part.standard_uncertainty_mm for part in components])
    values = correlated_values([1, 2, 3], matrix * np.outer(unsure, unsure))
    result = sum(part.sensitivity * value for part, value in zip(components, values, strict=True))
    pairs = [Correlation(f"part {i}", f"part {j}", float(matrix[i, j])) for i in range(3) for j in range(i)]
    assert combined_uncertainty(components, pairs) == pytest.approx(result.std_dev, rel=1e-6, abs=1e-8)


def test_common_error_of_one_instrument_cancels_in_a_difference_and_adds_in_a_sum() -> None:
    head, tail = Component("headstock collar", 0.003), Component("tailstock collar", 0.003, -1)
    alike = [Correlation("headstock collar", "tailstock collar", 1)]
    assert combined_uncertainty([head, tail], alike) == 0
    assert combined_uncertainty([head, tail]) == pytest.approx(0.003 * sqrt(2))
    assert combined_uncertainty([head, tail._replace(sensitivity=1)], alike) == pytest.approx(0.006)
    assert combined_uncertainty([head, tail], [Correlation("tailstock collar", "headstock collar", 0.5)]) == pytest.approx(
        0.003
    )


def test_errors_that_cancel_leave_nothing_behind_by_rounding() -> None:
    for first, second in [(0.1, 0.3), (0.7, 0.6), (0.7, 0.3)]:
        parts = [Component("a", first), Component("b", second, -first / second)]
        assert combined_uncertainty(parts, [Correlation("a", "b", 1)]) == 0
    nearly = [Component("a", 1), Component("b", 1 - 1e-5, -1)]
    assert combined_uncertainty(nearly, [Correlation("a", "b", 1)]) == pytest.approx(1e-5, rel=1e-4)


def test_correlations_must_not_contradict_one_another() -> None:
    parts = [Component(name, 0.001) for name in "abc"]
    pairs = [Correlation("a", "b", -1), Correlation("b", "c", -1), Correlation("a", "c", -1)]
    with pytest.raises(
        OutOfRange, match=r"^the correlations contradict one another: together they leave less than no uncertainty$"
    ):
        combined_uncertainty(parts, pairs)


@pytest.mark.parametrize("pair", [("a", "a"), ("a", "z"), ("z", "a")])
def test_correlation_names_two_components(pair: tuple[str, str]) -> None:
    parts = [Component("a", 0.001), Component("b", 0.001)]
    said = rf"^correlation of '{pair[0]}' with '{pair[1]}'; name two different components of the budget, once$"
    with pytest.raises(OutOfRange, match=said):
        combined_uncertainty(parts, [Correlation(*pair, 0.5)])
    with pytest.raises(OutOfRange, match=r"^correlation of 'b' with 'a'; name two different"):
        combined_uncertainty(parts, [Correlation("a", "b", 0.5), Correlation("b", "a", 0.5)])
    with pytest.raises(OutOfRange, match=r"^correlation of 'a' with 'b' is 1\.1; the formula holds from -1 to 1$"):
        combined_uncertainty(parts, [Correlation("a", "b", 1.1)])


@pytest.mark.parametrize("formula", [combined_uncertainty, shares, effective_freedom, _EXPANDED])
def test_budget_must_be_sound(formula) -> None:  # type: ignore[no-untyped-def]
    for parts, said in [
        ([], "number of components of the budget is 0; the formula holds from 1 upward"),
        ([Component("a", 1), Component("a", 2)], "component 'a' stands twice in the budget; give each a name of its own"),
        ([Component("a", -1)], "standard uncertainty of 'a' is -1 mm; the formula holds from 0 mm upward"),
        ([Component("a", nan)], "standard uncertainty of 'a' is nan mm; the formula holds from 0 mm upward"),
        ([Component("a", 1, inf)], "sensitivity to 'a' is inf; it must be a finite number"),
        ([Component("a", 1, 1, 0.9)], "number of degrees of freedom of 'a' is 0.9; the formula holds from 1 to inf"),
    ]:
        with pytest.raises(OutOfRange) as refused:
            formula(parts)
        assert str(refused.value) == said


def test_nothing_unsure_is_no_budget() -> None:
    parts = [Component("a", 0), Component("b", 0.001, 0)]
    assert combined_uncertainty(parts) == 0
    for formula in (shares, effective_freedom, _EXPANDED):
        with pytest.raises(
            OutOfRange, match=r"^nothing in the budget is unsure; no measurement is that good: name what is$"
        ):
            formula(parts)


@given(components=_budgets)
def test_shares_come_to_the_whole_and_follow_the_squares(components: list[Component]) -> None:
    assume(combined_uncertainty(components) > 1e-6)
    found = shares(components)
    assert sum(found) == pytest.approx(1)
    for part, share in zip(components, found, strict=True):
        alone = abs(part.sensitivity) * part.standard_uncertainty_mm
        assert share == pytest.approx((alone / combined_uncertainty(components)) ** 2, abs=1e-12)


def test_share_of_what_cancels_is_less_than_nothing() -> None:
    parts = [Component("a", 0.003), Component("b", 0.001, -1)]
    # 9 + 1 - 2 * 3 = 4: the pair of -6 is shared by halves.
    assert shares(parts, [Correlation("a", "b", 1)]) == pytest.approx((6 / 4, -2 / 4))


@given(components=_budgets, more=st.floats(0, 0.01), which=st.integers(0, 5))
def test_more_doubt_in_any_part_is_more_doubt_in_the_whole(components: list[Component], more: float, which: int) -> None:
    place = which % len(components)
    worse = list(components)
    worse[place] = worse[place]._replace(standard_uncertainty_mm=worse[place].standard_uncertainty_mm + more)
    assert combined_uncertainty(worse) >= combined_uncertainty(components) * (1 - 1e-12)
    inch = [part._replace(standard_uncertainty_mm=part.standard_uncertainty_mm / 25.4) for part in components]
    assert combined_uncertainty(inch) * 25.4 == pytest.approx(combined_uncertainty(components), abs=1e-15)


@given(components=_budgets)
def test_freedom_lies_between_the_least_and_the_sum_of_all(components: list[Component]) -> None:
    assume(combined_uncertainty(components) > 1e-6)
    alone = [part.degrees_of_freedom for part in components]
    found = effective_freedom(components)
    assert min(alone) * (1 - 1e-9) <= found <= sum(alone) * (1 + 1e-9) or found == inf
    small = [part._replace(standard_uncertainty_mm=part.standard_uncertainty_mm * 1e-80) for part in components]
    assert effective_freedom(small) == pytest.approx(found, rel=1e-6)


def test_freedom_of_known_bounds_is_endless() -> None:
    assert effective_freedom([Component("a", 1), Component("b", 2)]) == inf
    assert expanded_uncertainty([Component("a", 3), Component("b", 4)], probability=0.95) == Expanded(
        5, inf, two_sided_factor(0.95), 5 * two_sided_factor(0.95)
    )
    assert effective_freedom([Component("a", 1, 1, 7)]) == pytest.approx(7)
    assert effective_freedom([Component("a", 1, 1, 4), Component("b", 1, 2, 4)]) == pytest.approx(25 * 4 / 17)


def test_part_of_a_degree_of_freedom_does_not_count() -> None:
    parts = [Component("a", 1, 1, 4), Component("b", 1, 2, 4)]  # 5.88
    assert expanded_uncertainty(parts, probability=0.95).coverage_factor == two_sided_factor(0.95, 5)
    assert expanded_uncertainty(parts, 0.99).coverage_factor == two_sided_factor(0.99, 5)
    alike = [Component(name, 0.7, 1, 2) for name in "abc"]  # six, but for rounding
    assert 6 - 1e-14 < effective_freedom(alike) < 6
    assert expanded_uncertainty(alike, probability=0.95).coverage_factor == two_sided_factor(0.95, 6)
    assert expanded_uncertainty([Component("a", 1, 1, 5.9999999)], probability=0.95).coverage_factor == two_sided_factor(
        0.95, 5
    )


def test_expanded_uncertainty_covers_what_it_says_when_a_part_is_known_from_few_readings() -> None:
    random = np.random.default_rng(20240101)
    trials, readings = 8_000, 4
    noise = random.normal(0, 0.0015, (trials, readings))
    bound = random.uniform(-0.001, 0.001, trials)
    error = noise.mean(axis=1) + bound
    found = noise.std(axis=1, ddof=1) / sqrt(readings)
    other = standard_uncertainty(0.001, "rectangular")
    covered = 0
    for wrong, unsure in zip(error.tolist(), found.tolist(), strict=True):
        budget = [Component("readings", unsure, 1, readings - 1), Component("bound", other)]
        covered += abs(wrong) <= expanded_uncertainty(budget, probability=0.95).expanded_mm
    assert 0.935 < covered / trials < 0.965  # the effective freedom is an approximation
