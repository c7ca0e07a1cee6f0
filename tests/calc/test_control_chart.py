"""Charts of a lathe over time: limits, points beyond, runs, drift."""

from math import inf, nan, pi, sqrt

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy import stats

from tailtrue.calc.control_chart import individuals_chart, points_beyond, runs_on_one_side, trend_slope
from tailtrue.calc.validity import OutOfRange

_values = st.lists(st.floats(-0.1, 0.1), min_size=2, max_size=30)


def test_limits_are_three_sigma_either_side_of_the_mean() -> None:
    chart = individuals_chart([0.001, 0.003, 0.002])
    assert chart.mean == pytest.approx(0.002)
    assert chart.moving_range_mean == pytest.approx(0.0015)
    assert chart.sigma == pytest.approx(0.0015 * sqrt(pi) / 2)
    assert chart.upper == pytest.approx(0.002 + 2.6587 * 0.0015, rel=1e-4)
    assert chart.lower == pytest.approx(0.002 - 2.6587 * 0.0015, rel=1e-4)
    assert chart.upper_moving_range == pytest.approx(3.2665 * 0.0015, rel=1e-4)


def test_equal_values_leave_no_room_between_the_limits() -> None:
    assert individuals_chart([0.002, 0.002]) == (0.002, 0, 0, 0.002, 0.002, 0)


def test_constants_are_those_of_the_range_of_two_normal_values() -> None:
    pairs = np.random.default_rng(20240101).normal(size=(1_000_000, 2))
    ranges = np.abs(pairs[:, 0] - pairs[:, 1])
    chart = individuals_chart([0, 1])
    assert 1 / chart.sigma == pytest.approx(float(ranges.mean()), rel=3e-3)
    assert chart.upper_moving_range == pytest.approx(float(1 + 3 * ranges.std() / ranges.mean()), rel=3e-3)


def test_steady_lathe_rarely_goes_beyond_its_limits() -> None:
    found = np.random.default_rng(7).normal(0.001, 0.003, 20_000)
    chart = individuals_chart(found.tolist())
    assert chart.sigma == pytest.approx(0.003, rel=0.02)
    assert 0.001 < len(points_beyond(found.tolist(), chart.lower, chart.upper)) / 20_000 < 0.005  # 0.27 % expected


@pytest.mark.parametrize("values", [[], [0.001]])
def test_one_value_makes_no_chart(values: list[float]) -> None:
    with pytest.raises(OutOfRange, match=r"^number of values on the chart is \d; the formula holds from 2 upward$"):
        individuals_chart(values)


@given(values=_values, shift=st.floats(-0.1, 0.1))
def test_chart_moves_with_its_values_turns_with_them_and_keeps_its_unit(values: list[float], shift: float) -> None:
    chart = individuals_chart(values)
    moved = individuals_chart([value + shift for value in values])
    turned = individuals_chart([-value for value in values])
    inch = individuals_chart([value / 25.4 for value in values])
    assert moved.upper == pytest.approx(chart.upper + shift, abs=1e-12)
    assert moved.sigma == pytest.approx(chart.sigma, abs=1e-12)
    assert turned.upper == pytest.approx(-chart.lower, abs=1e-12)
    assert turned.upper_moving_range == pytest.approx(chart.upper_moving_range, abs=1e-12)
    assert [line * 25.4 for line in inch] == pytest.approx(list(chart), abs=1e-12)
    assert chart.lower <= chart.mean <= chart.upper


def test_point_on_a_limit_is_inside() -> None:
    assert points_beyond([-0.01, 0.01, 0.0100001, -0.0100001], -0.01, 0.01) == (2, 3)
    assert points_beyond([], -0.01, 0.01) == ()
    assert points_beyond([0.01], 0.01, 0.01) == ()


def test_limits_the_wrong_way_round_are_refused() -> None:
    with pytest.raises(OutOfRange, match=r"^upper limit is -0\.01 mm; the formula holds from 0\.01 mm upward$"):
        points_beyond([0], 0.01, -0.01)
    with pytest.raises(OutOfRange, match="lower limit is -inf mm"):
        points_beyond([0], -inf, 0.01)


@pytest.mark.parametrize(
    ("values", "length", "found"),
    [
        ([1, 1, 1], 3, (2,)),
        ([-1, -1, -1, -1], 3, (2, 3)),
        ([1, 1, 0, 1, 1], 3, ()),
        ([1, 1, -1, -1, -1], 3, (4,)),
        ([0, 0, 0, 0], 2, ()),
        ([1, 1, -1, -1, 1, 1], 2, (1, 3, 5)),
        ([0, 1, 1], 2, (2,)),
        ([1], 2, ()),
        ([], 8, ()),
    ],
)
def test_run_is_told_where_it_is_complete_and_while_it_lasts(
    values: list[float], length: int, found: tuple[int, ...]
) -> None:
    assert runs_on_one_side(values, 0, length) == found
    assert runs_on_one_side([value + 5 for value in values], 5, length) == found


@given(values=_values, length=st.integers(2, 8))
def test_run_ends_with_so_many_on_one_side(values: list[float], length: int) -> None:
    plain = tuple(
        place
        for place in range(length - 1, len(values))
        for last in [values[place - length + 1 : place + 1]]
        if all(value > 0 for value in last) or all(value < 0 for value in last)
    )
    assert runs_on_one_side(values, 0, length) == plain


def test_run_of_one_is_no_run() -> None:
    with pytest.raises(OutOfRange, match=r"^length of a run is 1; the formula holds from 2 upward$"):
        runs_on_one_side([1, 1], 0, 1)
    with pytest.raises(OutOfRange, match="centre line is nan mm"):
        runs_on_one_side([1, 1], nan, 8)


@pytest.mark.parametrize("bad", [nan, inf, -inf])
def test_value_that_is_no_number_is_named_by_its_place(bad: float) -> None:
    said = rf"^value no\. 2 of the row is {bad:g} mm; it must be a finite number$"
    for chart in (
        lambda values: individuals_chart(values),
        lambda values: points_beyond(values, -1, 1),
        lambda values: runs_on_one_side(values, 0, 2),
        lambda values: trend_slope([1, 2, 3], values, probability=0.95),
    ):
        with pytest.raises(OutOfRange, match=said):
            chart([0.001, bad, 0.002])
    with pytest.raises(OutOfRange, match=rf"^time no\. 3 of the row is {bad:g}; it must be a finite number$"):
        trend_slope([1, 2, bad], [0, 0, 0], probability=0.95)


@given(
    uses=st.lists(st.integers(0, 60), min_size=4, max_size=15, unique=True),
    data=st.data(),
    probability=st.sampled_from([0.9, 0.95, 0.99]),
)
def test_slope_and_test_agree_with_a_general_library(uses: list[int], data: st.DataObject, probability: float) -> None:
    values = data.draw(st.lists(st.integers(-50, 50), min_size=len(uses), max_size=len(uses)))
    assume(len(set(values)) > 2)
    outside = stats.linregress(uses, values)
    assume(outside.stderr > 1e-9)
    found = trend_slope(uses, [float(value) for value in values], probability)
    assert found.slope_mm == pytest.approx(outside.slope, abs=1e-12)
    assert found.standard_uncertainty_mm == pytest.approx(outside.stderr, rel=1e-6)
    assert found.degrees_of_freedom == len(uses) - 2
    assume(abs(outside.pvalue - (1 - probability)) > 1e-9)
    assert found.differs_from_noise == (outside.pvalue < 1 - probability)


def test_level_values_are_no_drift_and_a_straight_line_is() -> None:
    assert trend_slope([1, 2, 4], [0.1, 0.1, 0.1], probability=0.95) == (0, 0, 1, False)
    straight = trend_slope([1, 2, 4], [0.5, 1.0, 2.0], probability=0.95)
    assert straight.slope_mm == pytest.approx(0.5)
    assert straight.standard_uncertainty_mm == pytest.approx(0, abs=1e-12)
    assert straight.differs_from_noise


def test_pure_scatter_is_called_a_drift_one_time_in_twenty() -> None:
    scatter = np.random.default_rng(11).normal(0, 0.002, (4000, 6))
    called = sum(trend_slope(range(6), row.tolist(), probability=0.95).differs_from_noise for row in scatter)
    assert 0.04 < called / 4000 < 0.06


def test_drift_needs_three_values_at_different_times() -> None:
    with pytest.raises(OutOfRange, match=r"^the values of a trend are 2 in number; there must be at least 3 in all$"):
        trend_slope([1, 2], [0, 0], probability=0.95)
    with pytest.raises(
        OutOfRange, match=r"^all values were found at the same time; a drift shows only between different times$"
    ):
        trend_slope([4, 4, 4], [0, 0.001, 0], probability=0.95)
    with pytest.raises(OutOfRange, match=r"^the numbers of values and of times are 3 and 2; every value needs its time$"):
        trend_slope([1, 2], [0, 0, 0], probability=0.95)
