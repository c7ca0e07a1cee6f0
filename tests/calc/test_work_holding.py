"""How work sits in the jaws: tilting, length of grip, overhang."""

from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spoilt import each_is_refused, spoilt
from tailtrue.calc.validity import OutOfRange
from tailtrue.calc.work_holding import (
    least_grip_length,
    overhang_verdict,
    tilt_moment_held,
    tilt_safety,
)

_GRIP = {"grip_n": 9000, "grip_length_mm": 15, "grip_diameter_mm": 75, "friction": 0.2}
_GOOD: dict[Callable[..., Any], dict[str, Any]] = {
    tilt_moment_held: _GRIP,
    tilt_safety: {"cutting_force_n": 400, "overhang_mm": 50, **_GRIP},
    least_grip_length: {
        "diameter_mm": 25,
        "jaw_length_mm": 30,
        "share_of_diameter": 1,
        "share_of_jaw": 0.5,
        "least_mm": 10,
    },
    overhang_verdict: {"overhang_mm": 75, "diameter_mm": 25, "free_ratio": 2.5, "most_ratio": 4},
}


@pytest.mark.parametrize(("formula", "calls"), spoilt(_GOOD))
def test_what_is_no_number_is_refused(formula: Callable[..., Any], calls: list[dict[str, Any]]) -> None:
    each_is_refused(formula, calls)


@pytest.mark.parametrize(
    ("formula", "change", "expected"),
    [
        (tilt_moment_held, {"grip_n": 0}, 0),
        (tilt_moment_held, {"friction": 1}, 240000),
        (tilt_safety, {"overhang_mm": 0}, 20),
        (least_grip_length, {"share_of_jaw": 1}, 30),
        (least_grip_length, {"diameter_mm": 30}, 30),
        (least_grip_length, {"diameter_mm": 12}, 15),
        (least_grip_length, {"diameter_mm": 12, "share_of_jaw": 0.2}, 12),
        (least_grip_length, {"diameter_mm": 8, "share_of_jaw": 0.2}, 10),
    ],
)
def test_bounds_themselves_are_allowed(formula: Callable[..., float], change: dict[str, Any], expected: float) -> None:
    assert formula(**(_GOOD[formula] | change)) == pytest.approx(expected, rel=1e-4)


@pytest.mark.parametrize(
    ("formula", "change", "says"),
    [
        (tilt_moment_held, {"grip_n": -1}, "grip is -1 N"),
        (tilt_moment_held, {"grip_length_mm": 0}, "length in the jaws is 0 mm"),
        (tilt_moment_held, {"grip_diameter_mm": 0}, "diameter that is gripped is 0 mm"),
        (tilt_moment_held, {"friction": 0}, "friction is 0"),
        (tilt_moment_held, {"friction": 1.004}, "friction is 1.004"),
        (tilt_safety, {"cutting_force_n": 0}, "cutting force is 0 N"),
        (tilt_safety, {"overhang_mm": -1}, "overhang is -1 mm"),
        (tilt_safety, {"grip_length_mm": 0}, "length in the jaws is 0 mm"),
        (least_grip_length, {"diameter_mm": 0}, "diameter is 0 mm"),
        (least_grip_length, {"jaw_length_mm": 0}, "length of the jaws is 0 mm"),
        (least_grip_length, {"share_of_diameter": 0}, "share of the diameter is 0"),
        (least_grip_length, {"share_of_jaw": 0}, "share of the jaw is 0"),
        (least_grip_length, {"share_of_jaw": 1.004}, "share of the jaw is 1.004"),
        (least_grip_length, {"least_mm": 0}, "least length is 0 mm"),
        (least_grip_length, {"diameter_mm": 31}, "the work needs 31 mm in the jaws, and they are 30 mm long"),
        (overhang_verdict, {"overhang_mm": -1}, "overhang is -1 mm"),
        (overhang_verdict, {"diameter_mm": 0}, "diameter is 0 mm"),
        (overhang_verdict, {"free_ratio": 0}, "diameters that may stand free is 0"),
        (overhang_verdict, {"most_ratio": 2.4}, "diameters beyond which support is needed is 2.4"),
    ],
)
def test_beyond_its_bounds_it_refuses_and_says_what_was_read(
    formula: Callable[..., Any], change: dict[str, Any], says: str
) -> None:
    with pytest.raises(OutOfRange) as refused:
        formula(**(_GOOD[formula] | change))
    assert says in str(refused.value)


@pytest.mark.parametrize(
    ("overhang", "verdict"),
    [(0, "free"), (62.5, "free"), (62.6, "caution"), (100, "caution"), (100.1, "support"), (500, "support")],
)
def test_verdict_on_overhang(overhang: float, verdict: str) -> None:
    assert overhang_verdict(overhang, 25, 2.5, 4) == verdict
    # The same in inches.
    assert overhang_verdict(overhang / 25.4, 25 / 25.4, 2.5, 4) == verdict


def test_one_bound_for_both_leaves_no_caution() -> None:
    assert overhang_verdict(100, 25, 4, 4) == "free"
    assert overhang_verdict(100.1, 25, 4, 4) == "support"


@given(more=st.floats(1.01, 3), overhang=st.floats(0, 100), length=st.floats(5, 30))
def test_longer_reach_tips_sooner_and_longer_grip_holds_better(more: float, overhang: float, length: float) -> None:
    grip = {"grip_n": 9000.0, "grip_diameter_mm": 75.0, "friction": 0.2}
    here = tilt_safety(400, overhang + 1, grip_length_mm=length, **grip)
    assert tilt_safety(400, more * (overhang + 1), grip_length_mm=length, **grip) < here
    assert tilt_safety(400 * more, overhang + 1, grip_length_mm=length, **grip) == pytest.approx(here / more)
    held = tilt_moment_held(grip_length_mm=length, **grip)
    assert tilt_moment_held(grip_length_mm=length * more, **grip) > held
    assert here * 400 * (overhang + 1 + length / 2) == pytest.approx(held)
