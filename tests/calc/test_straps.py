"""Straps on a faceplate: what they press with, what slips, and how they stand evenly."""

from math import cos, pi, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.calc.straps import even_straps, slip_margin, strap_force
from tailtrue.calc.validity import OutOfRange


@given(st.floats(1, 50000), st.floats(1, 200), st.floats(1, 200))
def test_nose_and_heel_carry_the_screw_between_them(force: float, work: float, heel: float) -> None:
    on_work, on_heel = strap_force(force, work, heel), strap_force(force, heel, work)
    assert on_work + on_heel == pytest.approx(force)
    assert on_work * work == pytest.approx(on_heel * heel)


def test_slip_is_the_same_at_each_strap_as_for_all_together() -> None:
    """Strap by strap: each carries its share of the torque and of the side force, at the worst place both one way."""
    straps, force, friction, torque, radius, side = 3, 4000.0, 0.12, 9000.0, 30.0, 150.0
    tangential, sideways = torque / (straps * radius), side / straps
    worst = max(
        abs(complex(-tangential * sin(turn) + sideways, tangential * cos(turn)))
        for turn in (step * pi / 180 for step in range(360))
    )
    assert slip_margin(force, straps, friction, 0, torque, radius, side) == pytest.approx(friction * force / worst)


def test_a_pull_takes_off_what_the_straps_press_with() -> None:
    held = slip_margin(1000, 3, 0.1, 0, 3000, 30, 0)
    assert held == pytest.approx(3)
    assert slip_margin(1000, 3, 0.1, 1500, 3000, 30, 0) == pytest.approx(held / 2)
    assert slip_margin(1000, 3, 0.1, 3000, 3000, 30, 0) == slip_margin(1000, 3, 0.1, 3001, 3000, 30, 0) == 0


@pytest.mark.parametrize(
    ("slots", "straps", "least", "stand"),
    [(6, 3, 3, 3), (6, 5, 3, 3), (6, 6, 3, 6), (4, 4, 3, 4), (4, 3, 3, 0), (4, 6, 3, 4), (3, 8, 3, 3), (8, 3, 3, 0), (2, 6, 3, 0),
     (5, 5, 3, 5), (6, 0, 3, 0), (4, 2, 2, 2)],
)  # fmt: skip
def test_straps_stand_in_slots_that_divide_the_circle(slots: int, straps: int, least: int, stand: int) -> None:
    assert even_straps(slots, straps, least) == stand
    if stand:
        places = [2 * pi * place * (slots // stand) / slots for place in range(stand)]
        assert abs(sum(complex(cos(place), sin(place)) for place in places)) < 1e-9


@pytest.mark.parametrize(
    ("formula", "arguments", "words"),
    [
        (strap_force, (0, 20, 40), "force along the screw"),
        (strap_force, (6000, 0, 40), "distance from screw to work"),
        (strap_force, (6000, 20, 0), "distance from screw to heel"),
        (slip_margin, (0, 3, 0.1, 0, 1, 30, 0), "force of a strap"),
        (slip_margin, (1000, 1, 0.1, 0, 1, 30, 0), "number of straps"),
        (slip_margin, (1000, 3, 0, 0, 1, 30, 0), "coefficient of friction"),
        (slip_margin, (1000, 3, 1.01, 0, 1, 30, 0), "coefficient of friction"),
        (slip_margin, (1000, 3, 0.1, -1, 1, 30, 0), "pull along the axis"),
        (slip_margin, (1000, 3, 0.1, 0, 0, 30, 0), "torque of the cut"),
        (slip_margin, (1000, 3, 0.1, 0, 1, 0, 0), "distance of the straps"),
        (slip_margin, (1000, 3, 0.1, 0, 1, 30, -1), "force across the axis"),
        (even_straps, (0, 3, 3), "number of slots"),
        (even_straps, (4, -1, 3), "number of straps"),
        (even_straps, (4, 3, 1), "fewest straps"),
    ],
)
def test_what_lies_outside_is_refused(formula: object, arguments: tuple[float, ...], words: str) -> None:
    assert callable(formula)
    with pytest.raises(OutOfRange, match=f"^{words}"):
        formula(*arguments)


def test_bounds_are_taken_in() -> None:
    assert slip_margin(1000, 2, 1, 0, 30000, 30, 0) == pytest.approx(2)
    assert even_straps(1, 3, 3) == 0
