"""Where an estimate draws the line between what readings see, what only rounding sees, and what they do not see."""

import pytest

from tailtrue.calc.estimation import Fit, Reading


def _two(slant: float) -> Fit:
    """Two readings whose rows differ by a small slant only."""
    return Fit.of([Reading({"a": 1, "b": 1}, 1, 1), Reading({"a": 1, "b": 1 + slant}, 2, 1)])


def test_rows_that_differ_by_less_than_their_rounding_are_one_row() -> None:
    # Two columns of length 1 at an angle of half the slant: the smaller singular value is a quarter of it of the larger.
    assert (_two(1e-8).rank, _two(3e-7).rank) == (1, 1)
    assert (_two(5e-7).rank, _two(1e-5).rank) == (2, 2)


def test_columns_are_brought_to_length_1() -> None:
    fit = Fit.of([Reading({"a": 3, "b": 1}, 1, 1), Reading({"a": 4, "b": 1}, 1, 0.5), Reading({"a": 1, "b": -7}, 1, 2)])
    assert sum(value**2 for value in fit.singular_values) == pytest.approx(2, rel=1e-12)


def test_a_combination_may_miss_what_is_seen_by_rounding_only() -> None:
    fit = Fit.of([Reading({"a": 1, "b": 1}, 1, 1)])
    assert fit.sees({"a": 1, "b": 1 + 1.99e-6})
    assert not fit.sees({"a": 1, "b": 1 + 2.01e-6})


def test_a_combination_too_large_to_be_measured_is_not_seen() -> None:
    assert not Fit.of([Reading({"a": 1, "b": 1}, 1, 1)]).sees({"a": 1.7e308, "b": -1.7e308})


def test_every_unknown_by_itself_or_none() -> None:
    found = Fit.of([Reading({"a": 2}, 3, 0.5), Reading({"b": 1, "c": 1}, 1, 1)]).estimates()
    assert found == {"a": pytest.approx((1.5, 0.25), rel=1e-12), "b": None, "c": None}


def test_unknowns_that_go_together_hide_none_that_follows() -> None:
    fit = Fit.of([Reading({"a": 1, "b": 1, "c": 1}, 1, 1), Reading({"a": 1, "b": 1, "c": -2}, 1, 1)])
    assert fit.combinations == (pytest.approx({"a": 1, "b": 1}), pytest.approx({"c": 1}))


def test_less_than_a_millionth_of_a_combination_is_left_out_of_it() -> None:
    # d is b and a hundred-thousandth of a; c is about 200 a less 200 b.
    readings = [
        Reading({"a": 1, "b": 1, "c": 1, "d": 1.00001}, 1, 1),
        Reading({"a": 1, "b": 1.01, "c": -1, "d": 1.01001}, 1, 1),
    ]
    first, second = Fit.of(readings).combinations
    assert first == pytest.approx({"a": 1, "c": 201}, rel=1e-6)
    assert second == pytest.approx({"b": 1, "c": -200, "d": 1}, rel=1e-6)


@pytest.mark.parametrize(
    "rows",
    [
        [{"b": 1, "d": 2}, {"a": 1, "b": 1}, {"a": 1, "b": -1}],
        [{"b": 1}, {"a": 1, "b": 1}, {"b": 1, "c": 2}],
        [{"b": 1}, {"b": -1, "c": 2}, {"a": 1, "b": 2}],
        [{"a": 2, "c": -1}, {"a": 1}, {"b": 2}],
    ],
)
def test_what_is_seen_in_full_stands_by_itself_in_the_order_met(rows: list[dict[str, float]]) -> None:
    fit = Fit.of([Reading(row, 1, 1) for row in rows])
    assert fit.combinations == tuple(pytest.approx({name: 1}) for name in fit.unknowns)


def test_a_factor_is_weighed_by_the_uncertainty_of_its_reading_before_it_counts_as_nothing() -> None:
    sure = Reading({"a": 1, "b": 1e-301}, 1, 1e-3)
    unsure = Reading({"a": 1, "b": 1e-298}, 1, 1e3)
    assert Fit.of([sure]).unknowns == ("a", "b")
    assert Fit.of([unsure]).unknowns == ("a",)
