"""Taper shanks: what they hold, when they spin, which number a drill has."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.calc.drilling import thrust_shaw_oxford, torque_shaw_oxford
from tailtrue.calc.morse_taper import (
    friction_at_slip,
    half_angle,
    mean_diameter,
    shank_number,
    sleeve_steps,
    slip_margin,
)
from tailtrue.calc.validity import OutOfRange

_SERIES = [14, 23, 31.75, 50.5]


@given(thrust=st.floats(10, 5000), torque=st.floats(100, 60000), mean=st.floats(9, 40), angle=st.floats(1, 5))
def test_at_the_friction_of_slip_the_margin_is_one(thrust: float, torque: float, mean: float, angle: float) -> None:
    friction = friction_at_slip(thrust, torque, mean, angle)
    if friction < 0.5:
        assert slip_margin(thrust, torque, friction, mean, angle) == pytest.approx(1)
        assert slip_margin(thrust, torque, 2 * friction, mean, angle) == pytest.approx(2)
    assert friction_at_slip(thrust, 2 * torque, mean, angle) == pytest.approx(2 * friction)


@given(feed=st.floats(0.05, 0.3))
def test_a_pilot_halves_the_margin_of_a_large_drill(feed: float) -> None:
    def margin(pilot: float) -> float:
        thrust = thrust_shaw_oxford(
            18000, feed, 23, pilot, chisel_ratio=0.18, thrust_factor=1.355, chisel_thrust_factor=0.03
        )
        torque = torque_shaw_oxford(18000, feed, 23, pilot, chisel_ratio=0.18, torque_factor=1.085)
        return slip_margin(thrust, torque, 0.12, 16.1544, 1.4307)

    assert 0.3 < margin(0.2) / margin(0) < 0.65


def test_margin_of_a_lip_is_the_same_at_every_feed() -> None:
    margins = {
        round(
            slip_margin(
                thrust_shaw_oxford(18000, feed, 23, 0.2, chisel_ratio=0.18, thrust_factor=1.355, chisel_thrust_factor=0.03),
                torque_shaw_oxford(18000, feed, 23, 0.2, chisel_ratio=0.18, torque_factor=1.085),
                0.12,
                16,
                1.43,
            ),
            9,
        )
        for feed in (0.05, 0.1, 0.2, 0.4)
    }
    assert len(margins) == 1


@given(small=st.floats(5, 40), length=st.floats(40, 150), taper=st.floats(0.5, 0.7))
def test_angle_from_taper_per_foot_agrees_with_the_ends(small: float, length: float, taper: float) -> None:
    from math import radians, tan

    large = small + 2 * length * tan(radians(half_angle(taper)))
    assert (large - small) / length * 12 == pytest.approx(taper)
    assert small < mean_diameter(large, small) < large


def test_ends_of_a_taper_in_the_wrong_order_are_refused() -> None:
    with pytest.raises(OutOfRange, match=r"^the ends of the taper are 14 mm and 17 mm; name the large end first$"):
        mean_diameter(14, 17)


@pytest.mark.parametrize(("diameter", "number"), [(3, 1), (14, 1), (14.01, 2), (23, 2), (23.01, 3), (31.75, 3), (50.5, 4)])
def test_a_drill_has_the_smallest_taper_that_takes_it(diameter: float, number: int) -> None:
    assert shank_number(diameter, _SERIES) == number


def test_a_series_that_is_none_is_refused() -> None:
    with pytest.raises(OutOfRange, match=r"^the drill is 51 mm, and the series of tapers ends at 50\.5 mm$"):
        shank_number(51, _SERIES)
    with pytest.raises(OutOfRange, match=r"^the series of tapers has no limits$"):
        shank_number(10, [])
    with pytest.raises(OutOfRange, match=r"^the limits of the series go from 23 mm to 14 mm; each must be larger$"):
        shank_number(10, [23, 14])


def test_a_shank_is_sleeved_up_to_a_larger_quill_never_down() -> None:
    assert [sleeve_steps(2, quill) for quill in (2, 3, 4)] == [0, 1, 2]
    assert sleeve_steps(0, 0) == 0
    with pytest.raises(OutOfRange, match=r"^taper of the quill is -1"):
        sleeve_steps(0, -1)
    with pytest.raises(OutOfRange, match=r"^a shank no\. 3 does not go into a quill no\. 2, with any sleeve$"):
        sleeve_steps(3, 2)
