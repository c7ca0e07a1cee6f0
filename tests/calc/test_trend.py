"""A slope that several groups share."""

from math import inf, nan

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tailtrue.calc.control_chart import trend_slope
from tailtrue.calc.trend import common_slope
from tailtrue.calc.validity import OutOfRange

_group = st.lists(st.tuples(st.integers(0, 20), st.integers(-30, 30)), min_size=1, max_size=5)


@given(groups=st.lists(_group, min_size=1, max_size=4))
def test_slope_agrees_with_least_squares_of_the_whole_model(groups: list[list[tuple[int, int]]]) -> None:
    total = sum(map(len, groups))
    assume(total >= len(groups) + 2)
    assume(any(len({time for time, _ in group}) > 1 for group in groups))
    times = [[float(time) for time, _ in group] for group in groups]
    values = [[value / 1000 for _, value in group] for group in groups]
    # One column for the level of each group, one for time.
    design = np.zeros((total, len(groups) + 1))
    row = 0
    for column, group in enumerate(times):
        for time in group:
            design[row, column], design[row, -1] = 1, time
            row += 1
    seen = np.concatenate([np.array(group) for group in values])
    fitted, *_ = np.linalg.lstsq(design, seen, rcond=None)
    free = total - len(groups) - 1
    rest = float(((seen - design @ fitted) ** 2).sum()) / free
    found = common_slope(times, values, probability=0.95)
    assert found.slope_mm == pytest.approx(float(fitted[-1]), abs=1e-12)
    assert found.standard_uncertainty_mm == pytest.approx(
        (rest * float(np.linalg.inv(design.T @ design)[-1, -1])) ** 0.5, abs=1e-9
    )
    assert found.degrees_of_freedom == free


def test_level_of_a_group_does_not_count() -> None:
    times = [[0.0, 3.0], [1.0, 2.0]]
    low, high = ([[50.0, 50.006], [base, base + 0.004]] for base in (50.02, 70.0))
    assert common_slope(times, low, probability=0.95).slope_mm == pytest.approx(0.0022)
    assert common_slope(times, high, probability=0.95).slope_mm == pytest.approx(0.0022)


def test_scatter_is_judged_at_the_probability_asked_for() -> None:
    times, values = [[0, 1, 2, 3]], [[0.0, 0.003, 0.003, 0.006]]
    # b = 0.0018, u = 0.000424, b / u = 4.24, between t95 = 4.30 and t90 = 2.92 of two degrees of freedom.
    found = common_slope(times, values, probability=0.95)
    assert found.slope_mm / found.standard_uncertainty_mm == pytest.approx(4.2426, rel=1e-4)
    assert not found.differs_from_noise
    assert common_slope(times, values, 0.90).differs_from_noise
    assert common_slope(times, [[-value for value in values[0]]], 0.90).differs_from_noise


@pytest.mark.parametrize(("times_its_doubt", "drifts"), [(4.2, False), (4.4, True)])
def test_a_slope_is_told_from_noise_where_student_says(times_its_doubt: float, drifts: bool) -> None:
    # Two degrees of freedom: t = 4.303. What is left over, (1, -1, -1, 1), lies square to the slope; u = sqrt(0.4).
    slope = times_its_doubt * 0.4**0.5
    values = [slope * time + rest for time, rest in zip(range(4), (1, -1, -1, 1), strict=True)]
    for found in (common_slope([range(4)], [values], probability=0.95), trend_slope(range(4), values, probability=0.95)):
        assert found.standard_uncertainty_mm == pytest.approx(0.4**0.5)
        assert found.differs_from_noise is drifts


@pytest.mark.parametrize(
    ("times", "values", "said"),
    [
        ([[1, 2]], [[0, 0, 0]], "the numbers of values and of times are 3 and 2; every value needs its time"),
        ([[1, 2], [3]], [[0, 0], []], "the numbers of values and of times are 2 + 0 and 2 + 1; every value needs its time"),
        ([[1, 2], [3]], [[0, 0], [0]], "the values of a trend are 2 + 1 in number; there must be at least 4 in all"),
        ([], [], "the values of a trend are 0 in number; there must be at least 2 in all"),
        (
            [[1, 1], [2, 2]],
            [[0, 0], [0, 1]],
            "all values were found at the same time; a drift shows only between different times",
        ),
        ([[1, 2, 3]], [[0, nan, 0]], "value no. 2 of the row is nan mm; it must be a finite number"),
        ([[1, 2, inf]], [[0, 0, 0]], "time no. 3 of the row is inf; it must be a finite number"),
    ],
)
def test_what_makes_no_trend_is_refused(times: list[list[float]], values: list[list[float]], said: str) -> None:
    with pytest.raises(OutOfRange) as refused:
        common_slope(times, values, probability=0.95)
    assert str(refused.value) == said


def test_group_without_values_is_passed_over() -> None:
    assert common_slope([[0, 1, 2, 3], []], [[0, 1, 2, 3], []], probability=0.95).slope_mm == pytest.approx(1)
