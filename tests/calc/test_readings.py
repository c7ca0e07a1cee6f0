"""What raw readings say."""

from functools import partial
from math import inf, nan, sqrt
from statistics import mean, stdev

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.calc.readings import (
    difference_from_order,
    drift_per_step,
    order_bias,
    pooled_deviation,
    reading_summary,
    repeatability,
    thread_slip,
)
from tailtrue.calc.validity import OutOfRange

_size = st.floats(69, 71)
_row = st.lists(_size, min_size=2, max_size=8)
_order = st.text("HT", min_size=2, max_size=10).filter(lambda order: len(set(order)) == 2)


@given(readings=_row)
def test_summary_agrees_with_the_standard_library(readings: list[float]) -> None:
    found = reading_summary(readings)
    assert found.mean_mm == pytest.approx(mean(readings))
    assert found.standard_deviation_mm == pytest.approx(stdev(readings), abs=1e-9)
    assert found.degrees_of_freedom == len(readings) - 1
    assert found.standard_uncertainty_mm == pytest.approx(stdev(readings) / sqrt(len(readings)), abs=1e-9)


def test_equal_readings_have_no_scatter_at_all() -> None:
    assert reading_summary([69.842, 69.842, 69.842]) == (69.842, 0, 2, 0)


def test_one_reading_says_nothing_of_scatter() -> None:
    for few in ([], [69.842]):
        with pytest.raises(
            OutOfRange, match=rf"^number of readings of one size is {len(few)}; the formula holds from 2 upward$"
        ):
            reading_summary(few)


@given(first=_row, second=_row)
def test_pooled_scatter_lies_between_those_of_the_sizes(first: list[float], second: list[float]) -> None:
    found = pooled_deviation([first, second])
    apart = sorted([stdev(first), stdev(second)])
    assert apart[0] - 1e-9 <= found.standard_deviation_mm <= apart[1] + 1e-9
    assert found.degrees_of_freedom == len(first) + len(second) - 2
    squares = sum((len(row) - 1) * stdev(row) ** 2 for row in (first, second))
    assert found.standard_deviation_mm == pytest.approx(sqrt(squares / (len(first) + len(second) - 2)), abs=1e-9)
    assert pooled_deviation([first]).standard_deviation_mm == pytest.approx(stdev(first), abs=1e-9)
    # A single reading of another size adds nothing, and no size counts by its level.
    assert pooled_deviation([first, second, [12.0]]) == found


@pytest.mark.parametrize(
    ("groups", "counts"),
    [
        ([[1.0], [2.0]], "1, 1"),
        ([], "0"),
        ([[1.0, 2.0], []], "2, 0"),
        ([[], [1.0]], "0, 1"),
        ([[1.0, 2.0, 3.0], []], "3, 0"),
    ],
)
def test_nothing_read_twice_has_no_scatter(groups: list[list[float]], counts: str) -> None:
    with pytest.raises(
        OutOfRange, match=rf"^the sizes were read {counts} times; read each at least once, and one of them twice or more$"
    ):
        pooled_deviation(groups)


@given(first=_row, second=_row, known=st.floats(0.0001, 0.01), freedom=st.floats(1, 50))
def test_scatter_is_never_less_than_what_is_known_nor_than_what_was_read(
    first: list[float], second: list[float], known: float, freedom: float
) -> None:
    read = pooled_deviation([first, second])
    found = repeatability([first, second], known, freedom)
    assert found.standard_deviation_mm == max(known, read.standard_deviation_mm)
    assert found.degrees_of_freedom == (freedom if known >= read.standard_deviation_mm else read.degrees_of_freedom)


def test_what_is_known_stands_in_for_single_readings() -> None:
    assert repeatability([[69.842], [69.866]], 0.0015, 9) == (0.0015, 9)
    assert repeatability([[69.842], [69.866]], 0.0015) == (0.0015, inf)
    assert repeatability([[0.0, 2.0], [4.0, 6.0]], 2**0.5, 9) == (2**0.5, 9)  # alike: the better known one
    assert repeatability([[69.842, 69.852], [69.866]], 0.0015) == pytest.approx((0.01 / sqrt(2), 1))


def test_known_scatter_and_readings_must_be_sound() -> None:
    with pytest.raises(OutOfRange, match=r"^known scatter of one reading is 0 mm; it must be more than 0 mm$"):
        repeatability([[1.0], [2.0]], 0)
    with pytest.raises(OutOfRange, match=r"^number of degrees of freedom is 0\.9; the formula holds from 1 to inf$"):
        repeatability([[1.0], [2.0]], 0.001, 0.9)
    with pytest.raises(OutOfRange, match=r"^the sizes were read 0 times"):
        repeatability([], 0.001)
    with pytest.raises(OutOfRange, match=r"^the sizes were read 1, 0 times"):
        repeatability([[1.0], []], 0.001)
    with pytest.raises(OutOfRange, match=r"^reading no\. 2 is nan mm; it must be a finite number$"):
        repeatability([[1.0], [nan]], 0.001)


@pytest.mark.parametrize("bad", [nan, inf, -inf])
def test_reading_that_is_no_number_is_named_by_its_place(bad: float) -> None:
    said = rf"^reading no\. 2 is {bad:g} mm; it must be a finite number$"
    for formula in (
        lambda row: reading_summary(row),
        lambda row: pooled_deviation([row]),
        lambda row: difference_from_order(row, "HTT"),
        lambda row: drift_per_step(row, "HTT", probability=0.95),
    ):
        with pytest.raises(OutOfRange, match=said):
            formula([1.0, bad, 2.0])


@given(order=_order, drift=st.floats(-0.01, 0.01), apart=st.floats(-0.1, 0.1))
def test_bias_is_the_drift_that_the_order_leaves_in_the_difference(order: str, drift: float, apart: float) -> None:
    readings = [70 + (apart if letter == "T" else 0) + drift * place for place, letter in enumerate(order)]
    found = difference_from_order(readings, order)
    assert found.bias_steps == order_bias(order)
    assert found.difference_mm - found.bias_steps * drift == pytest.approx(apart, abs=1e-9)
    assert order_bias(order.translate({ord("H"): "T", ord("T"): "H"})) == pytest.approx(-found.bias_steps)
    assert order_bias(order[::-1]) == pytest.approx(-found.bias_steps)


@given(order=_order)
def test_there_and_back_leaves_no_bias(order: str) -> None:
    assert order_bias(order + order[::-1]) == pytest.approx(0)


def test_middle_collar_takes_time_but_is_not_in_the_difference() -> None:
    assert order_bias("HMT") == 2
    assert order_bias("HMTTMH") == 0
    assert difference_from_order([1, 5, 3], "HMT") == (2, 2)
    assert drift_per_step([1, 5, 3, 1, 9, 2], "HMTHMT", probability=0.95).slope_mm == pytest.approx((0 + 4 - 1) / 9)


def test_drift_is_judged_at_the_probability_asked_for() -> None:
    found = drift_per_step([50.0, 50.022, 50.026, 50.006], "HTTH", 0.5)
    assert found.slope_mm == pytest.approx(0.0022)
    assert found.degrees_of_freedom == 1
    assert found.differs_from_noise
    assert not drift_per_step([50.0, 50.022, 50.026, 50.006], "HTTH", probability=0.95).differs_from_noise


@pytest.mark.parametrize(("times_its_doubt", "drifts"), [(12.5, False), (12.9, True)])
def test_a_drift_is_told_from_noise_where_student_says(times_its_doubt: float, drifts: bool) -> None:
    # One degree of freedom: t = 12.706. What is left over, (-1, 1) and (3, -3), lies square to the drift; u = 2.
    slope = 2 * times_its_doubt
    readings = [-1.5 * slope - 1, -0.5 * slope + 3, 0.5 * slope - 3, 1.5 * slope + 1]
    found = drift_per_step(readings, "HTTH", probability=0.95)
    assert found.standard_uncertainty_mm == pytest.approx(2)
    assert found.differs_from_noise is drifts


def test_planted_drift_is_found_within_its_uncertainty() -> None:
    random = np.random.default_rng(3)
    order = "HTTHHTTH"
    hits = 0
    for _ in range(2000):
        noise = random.normal(0, 0.0015, len(order))
        found = drift_per_step([70 + 0.001 * place + noise[place] for place in range(len(order))], order, probability=0.95)
        hits += abs(found.slope_mm - 0.001) <= 2.571 * found.standard_uncertainty_mm  # t of 5 degrees of freedom
    assert 0.93 < hits / 2000 < 0.97


@pytest.mark.parametrize("order", ["", "HH", "T", "HTX", "htth", "H T", "MM", "HT?"])
def test_order_is_written_with_h_and_t(order: str) -> None:
    said = f"order of reading is '{order}'; write H and T, and M for a middle collar, with at least one H and T"
    for formula in (
        order_bias,
        lambda row: difference_from_order([1] * len(row), row),
        lambda row: drift_per_step([1] * len(row), row, probability=0.95),
    ):
        with pytest.raises(OutOfRange) as refused:
            formula(order)
        assert str(refused.value) == said


def test_every_reading_needs_its_letter() -> None:
    for formula in (difference_from_order, partial(drift_per_step, probability=0.95)):
        with pytest.raises(OutOfRange, match=r"^there are 3 readings and 4 letters of their order; write one for each$"):
            formula([1, 2, 3], "HTTH")


@pytest.mark.parametrize(
    ("difference", "turns"),
    [
        (0.0, 0), (0.02, 0), (0.229, 0), (0.231, 0.5), (0.25, 0.5), (0.269, 0.5), (0.271, 0), (0.479, 0), (0.481, 1),
        (0.519, 1), (0.521, 0), (0.75, 1.5), (1.0, 2), (-0.25, -0.5), (-0.5, -1), (-0.479, 0), (-25.5, -51),
    ],
)  # fmt: skip
def test_turns_of_the_thimble_are_counted_in_halves(difference: float, turns: float) -> None:
    assert thread_slip(difference, 0.5, 0.02) == turns
    assert thread_slip(difference / 0.5 * 0.635, 0.635, 0.02 / 0.5 * 0.635) == turns


@given(turns=st.integers(-80, 80), near=st.floats(-1, 1), pitch=st.sampled_from([0.5, 0.635, 1.0]))
def test_planted_slip_is_found_with_its_sign(turns: int, near: float, pitch: float) -> None:
    assert thread_slip(turns / 2 * pitch + 0.0199 * near, pitch, 0.02) == turns / 2
    assert thread_slip((turns / 2 + 0.25) * pitch, pitch, 0.02) == 0


def test_slip_needs_a_plausible_screw_and_a_small_tolerance() -> None:
    assert thread_slip(0.5, 0.5, 0.1249) == 1
    assert thread_slip(0.5625, 0.5, 0.0625) == thread_slip(0.4375, 0.5, 0.0625) == 1
    with pytest.raises(
        OutOfRange, match=r"^tolerance is 0\.125 mm; it must be less than a quarter of the pitch, here 0\.125 mm$"
    ):
        thread_slip(0.5, 0.5, 0.125)
    with pytest.raises(OutOfRange, match=r"^tolerance is 0 mm; it must be more than 0 mm$"):
        thread_slip(0.5, 0.5, 0)
    with pytest.raises(OutOfRange, match=r"^pitch of the screw is 0\.09 mm; the formula holds from 0\.1 mm to 5 mm$"):
        thread_slip(0.5, 0.09, 0.01)
    with pytest.raises(OutOfRange, match=r"^pitch of the screw is 5\.1 mm"):
        thread_slip(0.5, 5.1, 0.01)
    assert thread_slip(5, 5, 0.02) == thread_slip(0.1, 0.1, 0.02) == 1
    for wrong in (1000.5, -1000.5, nan):
        with pytest.raises(
            OutOfRange, match=r"^difference of two readings is .* the formula holds from -1000 mm to 1000 mm$"
        ):
            thread_slip(wrong, 0.5, 0.02)
    assert (thread_slip(1000, 0.5, 0.02), thread_slip(-1000, 0.5, 0.02)) == (2000, -2000)
