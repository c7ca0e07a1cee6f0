"""Which speed is set: never above the cap, never a speed the lathe does not have."""

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.calc.cutting import spindle_speed, surface_speed
from tailtrue.calc.spindle import choose_from_range, choose_speed
from tailtrue.calc.spindle_band import speed_band, speed_by_head, speed_by_head_metric, step_down, step_up
from tailtrue.calc.validity import OutOfRange

_STEPS = [755, 70, 2000, 190, 115, 460, 300, 1255]


@pytest.mark.parametrize(
    ("wanted", "cap", "speed"),
    [
        (363, 1800, 300),
        (300, 1800, 300),
        (299.9, 1800, 190),
        (5000, 1800, 1255),
        (5000, 9000, 2000),
        (40, 1800, 70),
        (40, 70, 70),
        (363, 200, 190),
    ],
)
def test_step_at_or_below_wanted_and_cap(wanted: float, cap: float, speed: float) -> None:
    assert choose_speed(_STEPS, wanted, cap) == speed


def test_no_step_below_the_cap_names_the_slowest() -> None:
    expected = (
        r"^the slowest speed of the lathe is 70 1/min, and the limit is 60 1/min; "
        r"another way of holding or another machine is needed$"
    )
    with pytest.raises(OutOfRange, match=expected):
        choose_speed(_STEPS, 363, 60)
    with pytest.raises(OutOfRange, match=expected):
        choose_from_range(70, 2000, 10, 363, 60)


def test_no_speeds_at_all() -> None:
    with pytest.raises(OutOfRange, match=r"^the lathe has no speeds to choose from$"):
        choose_speed([], 363, 60)


@pytest.mark.parametrize(
    ("wanted", "cap", "speed"),
    [
        (363, 1800, 360),
        (360, 1800, 360),
        (5000, 1805, 1800),
        (5000, 9000, 2500),
        (40, 1800, 55),
        (40, 55, 55),
        (57, 99, 55),
        (109.999995, 999, 100),
        (110 - 1e-9, 999, 110 - 1e-9),
    ],
)
def test_variable_drive_goes_down_to_a_whole_step(wanted: float, cap: float, speed: float) -> None:
    assert choose_from_range(55, 2500, 10, wanted, cap) == pytest.approx(speed)


_bands = st.tuples(st.floats(5, 200), st.floats(1, 3))


@given(band=_bands, diameter=st.floats(2, 200), factor=st.floats(0.2, 1.5))
def test_a_band_holds_its_middle_and_turns_at_its_surface_speeds(
    band: tuple[float, float], diameter: float, factor: float
) -> None:
    low, high = band[0], band[0] * band[1]
    slow, middle, fast = speed_band(low, high, diameter, factor)
    assert slow <= middle <= fast
    assert surface_speed(slow, diameter) == pytest.approx(low * factor)
    assert surface_speed(fast, diameter) == pytest.approx(high * factor)
    assert surface_speed(middle, diameter) == pytest.approx((low + high) / 2 * factor)


def test_the_lower_step_of_the_middle_is_chosen() -> None:
    # 24 to 33 m/min on 25 mm: 363 wanted, 300 set, which gives 23.6 m/min.
    speed = choose_speed(_STEPS, speed_band(24, 33, 25).middle_per_min, 1800)
    assert speed == 300
    assert surface_speed(speed, 25) == pytest.approx(23.56, rel=1e-3)


@given(surface=st.floats(5, 400), diameter=st.floats(2, 300))
def test_rules_by_head_are_a_little_fast(surface: float, diameter: float) -> None:
    true = spindle_speed(surface, diameter)
    assert speed_by_head(surface, diameter) / true == pytest.approx(pi / 3)
    assert speed_by_head_metric(surface, diameter) / true == pytest.approx(0.32 * pi)
    # Four times the feet per minute over the inches.
    assert speed_by_head(surface, diameter) == pytest.approx(4 * (surface / 0.3048) / (diameter / 25.4))


@pytest.mark.parametrize(
    ("chosen", "cap", "high", "overrun", "speed"),
    [
        (300, 1800, 33, 1.1, 460),
        (300, 460, 33, 1.1, 460),
        (300, 459, 33, 1.1, 300),
        (300, 1800, 33, 1.09, 300),
        (300, 1800, 36.2, 1, 460),
        (300, 1800, 36.1, 1, 300),
        (2000, 2000, 400, 1.1, 2000),
        (70, 1800, 400, 1.1, 115),
    ],
)
def test_a_step_up_stays_below_cap_and_surface_speed(
    chosen: float, cap: float, high: float, overrun: float, speed: float
) -> None:
    assert step_up(_STEPS, chosen, cap, 25, high, overrun) == speed


def test_a_step_up_may_pass_the_band_by_a_tenth() -> None:
    assert step_up(_STEPS, 300, 1800, 25, 32.9, overrun=1.1) == 460
    assert step_up(_STEPS, 300, 1800, 25, 32.8, overrun=1.1) == 300


@given(chosen=st.sampled_from(_STEPS), cap=st.floats(2000, 4000), diameter=st.floats(5, 200), high=st.floats(5, 300))
def test_a_step_up_and_down_are_neighbours(chosen: float, cap: float, diameter: float, high: float) -> None:
    higher = step_up(_STEPS, chosen, cap, diameter, high, overrun=1.1)
    assert higher <= cap
    if higher != chosen:
        assert surface_speed(higher, diameter) <= 1.1 * high
        assert step_down(_STEPS, higher) == chosen


def test_steps_that_cannot_be_taken_are_refused_in_plain_words() -> None:
    with pytest.raises(
        OutOfRange, match=r"^the lathe has no speed below 70 1/min; a lighter cut or better holding is needed$"
    ):
        step_down(_STEPS, 70)
    with pytest.raises(OutOfRange, match=r"^the chosen speed is 301 1/min, and the lathe has no such speed$"):
        step_down(_STEPS, 301)
    with pytest.raises(OutOfRange, match=r"^the chosen speed is 300 1/min, above the limit of 299 1/min$"):
        step_up(_STEPS, 300, 299, 25, 33, overrun=1.1)
    assert step_up(_STEPS, 300, 300, 25, 33, overrun=1.1) == 300
    for diameter in (0, -1):
        with pytest.raises(OutOfRange, match=r"^diameter is "):
            step_up(_STEPS, 300, 300, diameter, 33, overrun=1.1)  # where no step up is looked at
    for low in (0, -1):
        with pytest.raises(OutOfRange, match=r"^lower surface speed is "):
            speed_band(low, 33, 25)
