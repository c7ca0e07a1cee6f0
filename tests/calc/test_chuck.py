"""Jaws: what they must grip, what speed takes away, what friction carries."""

import math
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spoilt import each_is_refused, spoilt
from tailtrue.calc.chuck import (
    axial_hold,
    grip_at_rest,
    grip_for_cut,
    grip_for_torque_and_thrust,
    grip_speed_limit,
    jaw_pull,
    residual_grip,
    rim_speed_limit,
    scroll_grip,
    torque_hold,
)
from tailtrue.calc.turning_masses import rim_speed
from tailtrue.calc.validity import OutOfRange

_JAWS = {"jaws": 3, "jaw_mass_kg": 0.35, "jaw_radius_mm": 60}
_GOOD: dict[Callable[..., Any], dict[str, Any]] = {
    grip_for_cut: {
        "cutting_force_n": 400,
        "cut_diameter_mm": 75,
        "grip_diameter_mm": 75,
        "friction": 0.25,
        "safety": 1.5,
    },
    grip_for_torque_and_thrust: {
        "torque_nmm": 15000,
        "axial_force_n": 300,
        "grip_diameter_mm": 75,
        "friction": 0.25,
        "safety": 1.5,
    },
    jaw_pull: {**_JAWS, "spindle_speed_per_min": 1000},
    grip_at_rest: {"grip_needed_n": 2400, "jaw_pull_n": 691, "safety": 1.5},
    residual_grip: {"grip_at_rest_n": 9000, "jaw_pull_n": 691},
    grip_speed_limit: {"grip_at_rest_n": 9000, "grip_needed_n": 2400, **_JAWS, "safety": 1.5},
    axial_hold: {"grip_n": 9000, "friction": 0.2, "safety": 2},
    torque_hold: {"grip_n": 9000, "grip_diameter_mm": 75, "friction": 0.2, "safety": 2},
    scroll_grip: {"key_torque_nmm": 60000, "key_turns": 3, "scroll_pitch_mm": 8, "efficiency": 0.15},
    rim_speed_limit: {"diameter_mm": 160, "rim_speed_m_s": 25},
}


@pytest.mark.parametrize(("formula", "calls"), spoilt(_GOOD))
def test_what_is_no_number_is_refused(formula: Callable[..., Any], calls: list[dict[str, Any]]) -> None:
    each_is_refused(formula, calls)


@pytest.mark.parametrize(
    ("formula", "change", "expected"),
    [
        (grip_for_cut, {"cutting_force_n": 0}, 0),
        (grip_for_cut, {"friction": 1}, 600),
        (grip_for_cut, {"cut_diameter_mm": 150}, 4800),
        (grip_for_cut, {"grip_diameter_mm": 150}, 1200),
        (grip_for_torque_and_thrust, {"torque_nmm": 0}, 1800),
        (grip_for_torque_and_thrust, {"axial_force_n": 0}, 2400),
        (grip_for_torque_and_thrust, {"friction": 1}, 750),
        (jaw_pull, {"spindle_speed_per_min": 0}, 0),
        (jaw_pull, {"jaws": 2}, 460.6),
        (grip_at_rest, {"grip_needed_n": 0, "jaw_pull_n": 0}, 0),
        (residual_grip, {"grip_at_rest_n": 0, "jaw_pull_n": 0}, 0),
        (residual_grip, {"jaw_pull_n": 0}, 9000),
        (residual_grip, {"jaw_pull_n": 8999}, 1),
        (residual_grip, {"jaw_pull_n": 9001}, 0),
        (grip_speed_limit, {"grip_needed_n": 6000}, 0),
        (grip_speed_limit, {"grip_needed_n": 0}, 2947.0),
        (axial_hold, {"grip_n": 0}, 0),
        (axial_hold, {"friction": 1, "safety": 1}, 9000),
        (scroll_grip, {"efficiency": 1}, 141372),
    ],
)
def test_bounds_themselves_are_allowed(formula: Callable[..., float], change: dict[str, Any], expected: float) -> None:
    assert formula(**(_GOOD[formula] | change)) == pytest.approx(expected, rel=1e-4)


@pytest.mark.parametrize(
    ("formula", "change", "says"),
    [
        (grip_for_cut, {"cutting_force_n": -0.1}, "cutting force is -0.1 N"),
        (grip_for_cut, {"cut_diameter_mm": 0}, "diameter that is cut is 0 mm"),
        (grip_for_cut, {"grip_diameter_mm": 0}, "diameter that is gripped is 0 mm"),
        (grip_for_cut, {"friction": 0}, "friction is 0"),
        (grip_for_cut, {"friction": 1.004}, "friction is 1.004"),
        (grip_for_cut, {"safety": 1.49}, "safety factor is 1.49; the formula holds from 1.5 upward"),
        (grip_for_torque_and_thrust, {"torque_nmm": -0.1}, "torque is -0.1 N mm"),
        (grip_for_torque_and_thrust, {"axial_force_n": -0.1}, "axial force is -0.1 N"),
        (grip_for_torque_and_thrust, {"grip_diameter_mm": 0}, "diameter that is gripped is 0 mm"),
        (grip_for_torque_and_thrust, {"friction": 0}, "friction is 0"),
        (grip_for_torque_and_thrust, {"safety": 1.49}, "safety factor is 1.49"),
        (jaw_pull, {"jaws": 1}, "number of jaws is 1"),
        (jaw_pull, {"jaw_mass_kg": 0}, "mass of a jaw is 0 kg"),
        (jaw_pull, {"jaw_radius_mm": 0}, "distance of the jaw from the axis is 0 mm"),
        (jaw_pull, {"spindle_speed_per_min": -1}, "spindle speed is -1 1/min"),
        (grip_at_rest, {"grip_needed_n": -1}, "grip needed is -1 N"),
        (grip_at_rest, {"jaw_pull_n": -1}, "outward force of the jaws is -1 N"),
        (grip_at_rest, {"safety": 1.49}, "safety factor is 1.49"),
        (residual_grip, {"grip_at_rest_n": -1}, "grip at a standstill is -1 N"),
        (residual_grip, {"jaw_pull_n": -1}, "outward force of the jaws is -1 N"),
        (grip_speed_limit, {"grip_at_rest_n": 0}, "grip at a standstill is 0 N"),
        (grip_speed_limit, {"grip_needed_n": -1}, "grip needed is -1 N"),
        (grip_speed_limit, {"safety": 1.49}, "safety factor is 1.49"),
        (grip_speed_limit, {"jaws": 0}, "number of jaws is 0"),
        (
            grip_speed_limit,
            {"grip_needed_n": 6001},
            "the chuck grips with 9000 N and the cut needs 9001.5 N even at a standstill",
        ),
        (axial_hold, {"grip_n": -1}, "grip is -1 N"),
        (axial_hold, {"friction": 0}, "friction is 0"),
        (axial_hold, {"safety": 0.99}, "safety factor is 0.99"),
        (torque_hold, {"grip_diameter_mm": 0}, "diameter that is gripped is 0 mm"),
        (torque_hold, {"safety": 0.99}, "safety factor is 0.99"),
        (scroll_grip, {"key_torque_nmm": 0}, "torque on the key is 0 N mm"),
        (scroll_grip, {"key_turns": 0}, "turns of the key for one of the scroll is 0"),
        (scroll_grip, {"scroll_pitch_mm": 0}, "pitch of the scroll is 0 mm"),
        (scroll_grip, {"efficiency": 0}, "efficiency is 0"),
        (scroll_grip, {"efficiency": 1.004}, "efficiency is 1.004"),
        (rim_speed_limit, {"diameter_mm": 0}, "diameter is 0 mm"),
        (rim_speed_limit, {"rim_speed_m_s": 0}, "rim speed is 0 m/s"),
    ],
)
def test_beyond_its_bounds_it_refuses_and_says_what_was_read(
    formula: Callable[..., Any], change: dict[str, Any], says: str
) -> None:
    with pytest.raises(OutOfRange) as refused:
        formula(**(_GOOD[formula] | change))
    assert says in str(refused.value)


def test_looser_printed_form_of_the_speed_limit_is_not_used() -> None:
    """Without the safety under the root the same chuck would be let turn at 3091 1/min."""
    looser = 30 / math.pi * math.sqrt((9000 - 2400) / (3 * 0.35 * 0.060))
    assert looser == pytest.approx(3091, abs=1)
    assert grip_speed_limit(9000, 2400, 3, 0.35, 60, 1.5) == pytest.approx(2283, abs=1)


@given(
    force=st.floats(10, 500),
    friction=st.floats(0.1, 0.3),
    speed=st.floats(50, 3000),
    safety=st.floats(1.5, 3),
    diameter=st.floats(20, 200),
)
def test_grip_set_for_a_speed_is_enough_up_to_just_that_speed(
    force: float, friction: float, speed: float, safety: float, diameter: float
) -> None:
    needed = grip_for_cut(force, diameter, diameter, friction, safety)
    pull = jaw_pull(3, 0.35, 60, speed)
    at_rest = grip_at_rest(needed, pull, safety)
    assert grip_speed_limit(at_rest, needed, 3, 0.35, 60, safety) == pytest.approx(speed)
    assert residual_grip(at_rest, pull) >= needed
    assert jaw_pull(3, 0.35, 60, 2 * speed) == pytest.approx(4 * pull)
    # What is needed for the cut is what holds its torque.
    assert torque_hold(needed, diameter, friction, safety) == pytest.approx(force * diameter / 2)


@given(torque=st.floats(100, 50000), push=st.floats(1, 2000), diameter=st.floats(20, 200), friction=st.floats(0.1, 0.3))
def test_torque_and_push_together_need_more_than_either_and_less_than_both_apart(
    torque: float, push: float, diameter: float, friction: float
) -> None:
    rest = {"grip_diameter_mm": diameter, "friction": friction, "safety": 2.0}
    both = grip_for_torque_and_thrust(torque, push, **rest)
    alone = grip_for_torque_and_thrust(torque, 0, **rest), grip_for_torque_and_thrust(0, push, **rest)
    assert max(alone) <= both <= sum(alone)
    assert axial_hold(alone[1], friction, 2) == pytest.approx(push)
    assert alone[0] == pytest.approx(grip_for_cut(2 * torque / diameter, 75, 75, friction, 2))


@given(diameter=st.floats(50, 400), speed=st.floats(5, 40))
def test_rim_speed_limit_is_the_rim_speed_turned_round(diameter: float, speed: float) -> None:
    assert rim_speed(diameter, rim_speed_limit(diameter, speed)) == pytest.approx(speed)


def test_inches_and_pounds_need_the_same_grip() -> None:
    # 90 lbf on 3 in, gripped on 2 in, in pounds force
    pounds = 1.5 * 90 * 3 / (0.25 * 2)
    assert grip_for_cut(90 * 4.4482216, 76.2, 50.8, 0.25, 1.5) / 4.4482216 == pytest.approx(pounds)
