"""Factors and probabilities of Student's t, against a general library."""

from math import inf, nan

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from tailtrue.calc.student import one_sided_factor, probability_below, two_sided_factor
from tailtrue.calc.validity import OutOfRange

_freedom = st.one_of(st.floats(1, 500), st.just(inf))


def _law(freedom: float):  # type: ignore[no-untyped-def]
    return stats.norm() if freedom == inf else stats.t(freedom)


@given(probability=st.floats(0.5, 0.9999), freedom=_freedom)
def test_factors_agree_with_a_general_library(probability: float, freedom: float) -> None:
    assert two_sided_factor(probability, freedom) == pytest.approx(_law(freedom).ppf((1 + probability) / 2), rel=1e-6)
    assert one_sided_factor(probability, freedom) == pytest.approx(_law(freedom).ppf(probability), rel=1e-6, abs=1e-9)


@given(value=st.floats(-50, 50), freedom=_freedom)
def test_probability_agrees_with_a_general_library(value: float, freedom: float) -> None:
    assert probability_below(value, freedom) == pytest.approx(_law(freedom).cdf(value), rel=1e-6, abs=1e-12)
    assert probability_below(value, freedom) + probability_below(-value, freedom) == pytest.approx(1)


@given(probability=st.floats(0.501, 0.9999), freedom=st.floats(1, 500))
def test_factor_covers_what_it_says_and_fewer_readings_need_more(probability: float, freedom: float) -> None:
    both, one = two_sided_factor(probability, freedom), one_sided_factor(probability, freedom)
    assert probability_below(both, freedom) - probability_below(-both, freedom) == pytest.approx(probability, rel=1e-9)
    assert probability_below(one, freedom) == pytest.approx(probability, rel=1e-9)
    assert one < both
    assert two_sided_factor(probability, freedom + 1) < both
    assert both > two_sided_factor(probability)
    assert one > one_sided_factor(probability)


def test_uncertainty_is_taken_as_known_unless_said_otherwise() -> None:
    assert two_sided_factor(0.95) == two_sided_factor(0.95, inf) == pytest.approx(1.959964, rel=1e-6)
    assert one_sided_factor(0.95) == one_sided_factor(0.95, inf) == pytest.approx(1.644854, rel=1e-6)
    assert probability_below(1.0) == probability_below(1.0, inf) == pytest.approx(0.841345, rel=1e-6)


@pytest.mark.parametrize("factor", [two_sided_factor, one_sided_factor])
def test_probability_from_a_half_to_nearly_sure(factor) -> None:  # type: ignore[no-untyped-def]
    for allowed in (0.5, 0.9999):
        assert factor(allowed, 3) >= 0
    for wrong in (0.4999, 0.99991, 0, 1, nan, 95):
        with pytest.raises(OutOfRange, match=rf"^probability is {wrong:g}; take one from 0\.5 to 0\.9999, such as 0\.95$"):
            factor(wrong, 3)


@pytest.mark.parametrize("wrong", [0, 0.999, -1, nan, -inf])
def test_no_statement_without_a_degree_of_freedom(wrong: float) -> None:
    said = rf"^number of degrees of freedom is {wrong:g}; the formula holds from 1 to inf$"
    for formula in (two_sided_factor, one_sided_factor):
        with pytest.raises(OutOfRange, match=said):
            formula(0.95, wrong)
        assert formula(0.95, 1) > 0
    with pytest.raises(OutOfRange, match=said):
        probability_below(1, wrong)
    assert probability_below(1, 1) == pytest.approx(0.75)  # arctan(1) / pi + 1/2


@pytest.mark.parametrize("wrong", [nan, inf, -inf])
def test_what_is_no_number_has_no_probability(wrong: float) -> None:
    with pytest.raises(OutOfRange, match=rf"^deviation in standard uncertainties is {wrong:g}; it must be a finite number$"):
        probability_below(wrong)
