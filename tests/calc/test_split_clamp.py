"""A split collar: what its screw holds, and how long a screw it hides."""

from math import hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.calc.split_clamp import longest_clamp_screw, split_clamp_torque
from tailtrue.calc.validity import OutOfRange


def test_two_screws_hold_twice_and_safety_takes_off() -> None:
    one = split_clamp_torque(6000, 1, 0.1, 25, 1)
    assert split_clamp_torque(6000, 2, 0.1, 25, 1) == pytest.approx(2 * one)
    assert split_clamp_torque(6000, 1, 0.1, 25, 3) == pytest.approx(one / 3)


@pytest.mark.parametrize(
    ("preload", "count", "friction", "diameter", "safety"),
    [(0, 1, 0.1, 25, 2), (6000, 0, 0.1, 25, 2), (6000, 3, 0.1, 25, 2), (6000, 1, 0, 25, 2), (6000, 1, 1.01, 25, 2),
     (6000, 1, 0.1, 0, 2), (6000, 1, 0.1, 25, 0.99), (float("nan"), 1, 0.1, 25, 2)],
)  # fmt: skip
def test_torque_is_refused_outside(preload: float, count: int, friction: float, diameter: float, safety: float) -> None:
    with pytest.raises(OutOfRange):
        split_clamp_torque(preload, count, friction, diameter, safety)


def test_bounds_of_the_torque_are_taken_in() -> None:
    assert split_clamp_torque(6000, 1, 1, 25, 1) == pytest.approx(150_000)
    assert split_clamp_torque(6000, 2, 0.1, 25, 2) == pytest.approx(15_000)


@given(st.floats(15, 30), st.floats(8, 40), st.floats(0.1, 0.9), st.floats(0.2, 2))
def test_the_rim_of_the_head_lies_just_so_deep(bar: float, wall: float, share: float, depth: float) -> None:
    worn, head = bar + 2 * wall, wall * share
    try:
        length = longest_clamp_screw(worn, bar, head, depth)
    except OutOfRange:
        return
    rim = (worn + bar) / 4 + head / 2
    assert hypot(rim, length / 2 + depth) == pytest.approx(worn / 2)


@pytest.mark.parametrize(
    ("worn", "bar", "head", "depth", "words"),
    [
        (50, 25, 12.6, 1, "a smaller screw or larger collars"),
        (50, 25, 20, 0.05, "a smaller screw or larger collars"),
        (50, 25, 12.4, 4, "a smaller screw or larger collars"),
        (50, 10, 10, 15, "a smaller screw or larger collars"),
        (0, 25, 6, 1, "last diameter"),
        (50, 0, 6, 1, "diameter of the bar"),
        (50, 25, 0, 1, "diameter of the head"),
        (50, 25, 6, 0, "least depth"),
    ],
)
def test_a_screw_that_cannot_be_hidden_is_refused(worn: float, bar: float, head: float, depth: float, words: str) -> None:
    with pytest.raises(OutOfRange, match=words):
        longest_clamp_screw(worn, bar, head, depth)


@pytest.mark.parametrize("depth", [14.5, 14.999])
def test_a_screw_just_hidden_is_taken(depth: float) -> None:
    """Rim of the head 20 mm out in a collar of 50 mm: half the chord is 15 mm."""
    assert longest_clamp_screw(50, 10, 10, depth) == pytest.approx(2 * (15 - depth))
