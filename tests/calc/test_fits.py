"""The window for the bore: drawn in by the gauge, rounded inward, refused when nothing is left."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tailtrue.calc.fits import bore_window
from tailtrue.calc.validity import OutOfRange


def test_whole_steps_stay_where_they_are() -> None:
    # 24.974 + 0.025 is a whole step whose binary form may lie on either side of it.
    assert bore_window(24.966, 24.974, 0.025, 0.075, 0, 0.001) == pytest.approx((24.999, 25.041), abs=1e-9)


def test_zero_readings_give_what_is_to_be_added() -> None:
    low, high = bore_window(0, 0, 0.025, 0.075, 0.01, 0.005)
    assert (low, high) == pytest.approx((0.035, 0.065), abs=1e-9)


def test_an_uneven_bar_or_a_coarse_gauge_leaves_nothing() -> None:
    with pytest.raises(OutOfRange, match=r"^no bore is surely right: .* helps$"):
        bore_window(24.90, 24.974, 0.025, 0.075, 0, 0.001)
    with pytest.raises(OutOfRange, match=r"at least 25\.029 mm and at most 25\.011 mm in steps of 0\.001 mm"):
        bore_window(24.966, 24.974, 0.025, 0.075, 0.03, 0.001)


def test_readings_must_come_smallest_first() -> None:
    with pytest.raises(OutOfRange, match=r"^largest reading of the bar is 24\.9 mm"):
        bore_window(25, 24.9, 0.025, 0.075, 0, 0.001)


@given(
    bar=st.floats(10, 60),
    uneven=st.floats(0, 0.02),
    least=st.floats(0, 0.05),
    wide=st.floats(0.02, 0.2),
    unsure=st.floats(0, 0.03),
    step=st.sampled_from([0.001, 0.002, 0.005, 0.01, 0.00127, 0.00254, 0.0127]),
)
def test_any_accepted_reading_gives_a_clearance_inside_the_limits(
    bar: float, uneven: float, least: float, wide: float, unsure: float, step: float
) -> None:
    largest = least + wide
    try:
        low, high = bore_window(bar, bar + uneven, least, largest, unsure, step)
    except OutOfRange:
        # Refused only when less than two whole steps fit between the drawn-in limits.
        assert (bar + largest - unsure) - (bar + uneven + least + unsure) < 2 * step
        return
    assert low < high
    slack = 1e-5 * step
    assert low - unsure - (bar + uneven) >= least - slack
    assert high + unsure - bar <= largest + slack
    assert abs(low / step - round(low / step)) < 1e-6
    assert abs(high / step - round(high / step)) < 1e-6


@given(unsure=st.floats(0, 0.02), more=st.floats(0, 0.02))
def test_a_worse_gauge_never_widens_the_window(unsure: float, more: float) -> None:
    assume(unsure + more < 0.02)
    low, high = bore_window(25, 25, 0.02, 0.10, unsure, 0.001)
    low_worse, high_worse = bore_window(25, 25, 0.02, 0.10, unsure + more, 0.001)
    assert low_worse >= low
    assert high_worse <= high
