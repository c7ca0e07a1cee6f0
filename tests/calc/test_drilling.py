"""What a pilot changes, and where the two models of drilling part."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.calc.drilling import (
    least_pilot,
    taper_friction_torque,
    thrust_shaw_oxford,
    thrust_tool_maker,
    tool_maker_holds,
    torque_shaw_oxford,
    torque_tool_maker,
)
from tailtrue.calc.validity import OutOfRange


@given(hundredths=st.integers(160, 5000), ratio=st.sampled_from([0.13, 0.15, 0.18, 0.2, 0.25]))
def test_a_pilot_of_exactly_the_chisel_edge_counts(hundredths: int, ratio: float) -> None:
    # pilot / diameter may fall a rounding below the ratio it was made with
    diameter = hundredths / 100
    pilot = least_pilot(diameter, ratio)
    assert thrust_shaw_oxford(18000, 0.1, diameter, pilot / diameter, chisel_ratio=ratio) > 0


@pytest.mark.parametrize("ratio", [0.05, 0.17, 1.0, 1.2, -0.1])
def test_a_pilot_narrower_than_the_chisel_edge_or_as_wide_as_the_drill_is_refused(ratio: float) -> None:
    with pytest.raises(OutOfRange, match=r"^the pilot is .* of the drill; .* from 0\.18 to below 1$"):
        thrust_shaw_oxford(18000, 0.1, 10, ratio)
    with pytest.raises(OutOfRange, match=r"^the pilot is "):
        torque_shaw_oxford(18000, 0.1, 10, ratio)


def test_a_pilot_halves_the_thrust_of_a_large_drill_and_little_of_its_torque() -> None:
    solid, piloted = (thrust_shaw_oxford(18000, 0.15, 23, ratio) for ratio in (0, 0.18))
    assert 1 - piloted / solid == pytest.approx(0.5413, abs=1e-3)
    solid, piloted = (torque_shaw_oxford(18000, 0.15, 23, ratio) for ratio in (0, 0.18))
    assert 0.05 < 1 - piloted / solid < 0.15


def test_margin_of_a_taper_against_spinning() -> None:
    # 23 mm in taper no. 2: the pilot takes the thrust that seats the taper and leaves the torque.
    def margin(pilot: float, friction: float) -> float:
        thrust = thrust_shaw_oxford(18000, 0.15, 23, pilot)
        torque = torque_shaw_oxford(18000, 0.15, 23, pilot, torque_factor=1.085) / (1 - pilot**2)
        return taper_friction_torque(thrust, friction, 16.1544, 1.4307) / torque

    assert margin(0, 0.12) == pytest.approx(6.782, rel=2e-3)
    assert margin(0.2, 0.12) == pytest.approx(3.376, rel=2e-3)
    assert margin(0.2, 0.035) == pytest.approx(0.985, rel=2e-3)


@given(feed=st.floats(0.001, 2))
def test_tool_maker_says_where_it_holds(feed: float) -> None:
    if tool_maker_holds(feed):
        assert thrust_tool_maker(2, feed, 10) > 0
        assert torque_tool_maker(2, feed, 10) > 0
    else:
        with pytest.raises(OutOfRange):
            thrust_tool_maker(2, feed, 10)
        with pytest.raises(OutOfRange):
            torque_tool_maker(2, feed, 10)


def test_models_agree_within_their_known_spread() -> None:
    # Mild steel, 10 mm at 0.3 mm/rev: about a third apart on thrust and torque at most.
    assert thrust_shaw_oxford(24000, 0.3, 10) == pytest.approx(thrust_tool_maker(2.22, 0.3, 10), rel=0.35)
    assert torque_shaw_oxford(24000, 0.3, 10) == pytest.approx(torque_tool_maker(2.22, 0.3, 10), rel=0.35)
