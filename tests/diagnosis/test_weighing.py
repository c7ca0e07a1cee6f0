"""Weights of explanations against an oracle: the density of the readings, worked with whole matrices."""

from itertools import combinations
from math import log

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import chi2, multivariate_normal, norm

from tailtrue.calc.estimation import Reading
from tailtrue.diagnosis.weighing import Expected, Scatter, separation, shares, weigh

EXPECTED = {"a": Expected(0.05, 0.3), "b": Expected(0.01, 0.1), "c": Expected(0.02, 0.2)}
ROWS = (
    {"a": 1.0, "b": 0.2, "setting one": 2.0}, {"a": 0.3, "b": -1.0, "setting one": 2.0}, {"a": -1.0, "setting one": 2.0},
    {"b": 1.0, "c": 0.5, "setting two": 1.0}, {"b": 2.0, "c": -0.5, "setting two": 1.0}, {"c": 1.0},
)  # fmt: skip
SURE = (0.002, 0.003, 0.002, 0.01, 0.01, 0.004)
WIDE = 10.0  # settings know nothing beforehand; as wide as the whole matrices bear


def readings(values: list[float]) -> list[Reading]:
    return [Reading(row, value, sure) for row, value, sure in zip(ROWS, values, SURE, strict=True)]


def oracle(values: list[float]) -> dict[tuple[str, ...], float]:
    weights = {}
    settings_ = np.array([[row.get(name, 0.0) for name in ("setting one", "setting two")] for row in ROWS])
    for count in range(4):
        for causes in combinations("abc", count):
            spread = np.diag(np.square(SURE)) + WIDE**2 * settings_ @ settings_.T
            prior = 0.0
            for name in causes:
                column = np.array([row.get(name, 0.0) for row in ROWS]) * EXPECTED[name].usual
                spread = spread + np.outer(column, column)
                prior += log(EXPECTED[name].chance / (1 - EXPECTED[name].chance))
            weights[causes] = prior + multivariate_normal(cov=spread).logpdf(values)
    top = max(weights.values())
    raw = {causes: np.exp(one - top) for causes, one in weights.items()}
    return {causes: one / sum(raw.values()) for causes, one in raw.items()}


SIZES = st.lists(st.floats(-0.03, 0.03), min_size=6, max_size=6)


@settings(max_examples=60, deadline=None)
@given(values=SIZES)
def test_weights_are_those_of_the_densities(values: list[float]) -> None:
    found = {one.causes: one.weight for one in weigh(readings(values), EXPECTED, 3)}
    for causes, weight in oracle(values).items():
        assert found[causes] == pytest.approx(weight, abs=2e-3)


@settings(max_examples=60, deadline=None)
@given(values=SIZES, first=st.floats(-50, 50), second=st.floats(-50, 50))
def test_settings_do_not_matter(values: list[float], first: float, second: float) -> None:
    moved = [
        value + row.get("setting one", 0.0) * first + row.get("setting two", 0.0) * second
        for value, row in zip(values, ROWS, strict=True)
    ]
    plain = {one.causes: one.weight for one in weigh(readings(values), EXPECTED, 2)}
    for one in weigh(readings(moved), EXPECTED, 2):
        assert one.weight == pytest.approx(plain[one.causes], abs=1e-6)


@settings(max_examples=60, deadline=None)
@given(values=SIZES)
def test_weights_add_up_and_the_likeliest_comes_first(values: list[float]) -> None:
    found = weigh(readings(values), EXPECTED, 3)
    assert sum(one.weight for one in found) == pytest.approx(1.0)
    assert [one.weight for one in found] == sorted((one.weight for one in found), reverse=True)
    heavy = shares(found)
    assert list(heavy.values()) == sorted(heavy.values(), reverse=True)
    assert heavy["a"] == pytest.approx(sum(one.weight for one in found if "a" in one.causes))


def test_sizes_are_drawn_toward_nought_by_what_is_usual() -> None:
    """One reading of one cause: size = usual^2 / (usual^2 + doubt^2) of it."""
    (found,) = (one for one in weigh([Reading({"a": 1.0}, 0.04, 0.03)], EXPECTED, 1) if one.causes)
    assert found.sizes["a"] == pytest.approx(0.04 * 0.05**2 / (0.05**2 + 0.03**2))
    assert found.chi_squared == pytest.approx(((0.04 - found.sizes["a"]) / 0.03) ** 2)


def test_what_is_left_over_is_judged_by_its_spare_readings() -> None:
    (found,) = (one for one in weigh(readings([0.01, -0.01, 0.02, 0, 0.01, 0.02]), EXPECTED, 1) if not one.causes)
    # Six readings, two settings.
    assert found.freedom == 4
    assert found.chance_of_worse == pytest.approx(chi2.sf(found.chi_squared, 4))


def test_without_spare_readings_nothing_is_judged() -> None:
    (found,) = (one for one in weigh([Reading({"a": 1.0}, 0.04, 0.03)], EXPECTED, 1) if one.causes)
    assert found.freedom == 0
    assert found.chance_of_worse is None


def test_no_more_causes_at_once_than_allowed() -> None:
    assert {len(one.causes) for one in weigh(readings([0.0] * 6), EXPECTED, 2)} == {0, 1, 2}


def test_a_cause_of_one_sign_weighs_twice_its_side() -> None:
    either = {"a": Expected(0.05, 0.3)}
    one_sign = {"a": Expected(0.05, 0.3, positive=True)}

    def odds(expected: dict[str, Expected], value: float) -> float:
        found = {one.causes: one.weight for one in weigh([Reading({"a": 1.0}, value, 0.03)], expected, 1)}
        return found[("a",)] / found[()]

    for value in (0.04, -0.04, 0.0):
        spread = (1 / (1 / 0.05**2 + 1 / 0.03**2)) ** 0.5
        middle = value * 0.05**2 / (0.05**2 + 0.03**2)
        expected = odds(either, value) * 2 * norm.cdf(middle / spread)
        assert odds(one_sign, value) == pytest.approx(expected)


def test_a_cause_that_only_its_setting_could_hide_is_not_seen() -> None:
    found = weigh([Reading({"a": 1.0, "setting one": 1.0}, 0.5, 0.001)], EXPECTED, 3)
    assert [one.causes for one in found] == [()]


@pytest.mark.parametrize("squares", [0.0, 4e-6, 4e-4])
def test_repeats_weigh_for_the_scatter_they_show(squares: float) -> None:
    expected = {"a": Expected(0.01, 0.3)}
    found = {one.causes: one.weight for one in weigh([], expected, 1, Scatter("a", squares, 4, 0.001))}
    # Density of the repeats about their mean: (1 / s^4) exp(-squares / 2 s^2), four of them free.
    densities = [(1 / s**4) * np.exp(-squares / 2 / s**2) for s in (0.001, (0.001**2 + 0.01**2) ** 0.5)]
    assert found[("a",)] / found[()] == pytest.approx(0.3 / 0.7 * densities[1] / densities[0])


def test_a_reading_that_sees_one_cause_sets_two_apart() -> None:
    both = [Reading({"a": 1.0, "b": 1.0}, 0.02, 0.001)]
    alike = weigh(both, EXPECTED, 1)
    of_a, of_b = (next(one for one in alike if one.causes == (name,)) for name in "ab")
    before = separation(both, EXPECTED, of_a, of_b)
    after = separation([*both, Reading({"a": 1.0}, 0.0, 0.001)], EXPECTED, of_a, of_b)
    useless = separation([*both, Reading({"c": 1.0}, 0.0, 0.001)], EXPECTED, of_a, of_b)
    assert after > before + 100
    assert useless == pytest.approx(before)
