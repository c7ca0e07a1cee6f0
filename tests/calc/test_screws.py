"""Set screws: what they hold, how they add up, where they must end."""

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from tailtrue.calc.screws import screw_depth, screw_holding, screw_preload, screws_hold, screws_ratio, thread_shear
from tailtrue.calc.validity import OutOfRange


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ((0, 6, 0.2), "tightening torque is 0 N mm"),
        ((-1, 6, 0.2), "tightening torque is -1 N mm"),
        ((7200, 2.98, 0.2), "diameter of the thread is 2.98 mm"),
        ((7200, 10.05, 0.2), "diameter of the thread is 10.05 mm"),
    ],
)
def test_one_screw_refuses_what_no_chart_holds(arguments: tuple[float, float, float], message: str) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        screw_holding(*arguments)


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ((0, 6, 0.2), "tightening torque is 0 N mm"),
        ((-1, 6, 0.2), "tightening torque is -1 N mm"),
        ((7200, 2.98, 0.2), "diameter of the thread is 2.98 mm"),
        ((7200, 16.05, 0.2), "diameter of the thread is 16.05 mm"),
    ],
)
def test_the_rule_for_tightening_ends_beyond_the_screws_of_straps(
    arguments: tuple[float, float, float], message: str
) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        screw_preload(*arguments)
    assert screw_preload(48000, 16, 0.2) == pytest.approx(15000)


@pytest.mark.parametrize("factor", [0, -0.1, 1.01])
def test_share_of_friction_is_above_nought_and_at_most_one(factor: float) -> None:
    with pytest.raises(OutOfRange, match=rf"^share of friction is {factor}"):
        screw_preload(7200, 6, factor)
    assert screw_preload(7200, 6, 1) == 1200


@pytest.mark.parametrize("ratio", [0, -2.6])
def test_ratio_of_holding_force_is_above_nought(ratio: float) -> None:
    with pytest.raises(OutOfRange, match=rf"^ratio of holding force is {ratio}"):
        screw_holding(7200, 6, ratio)


def test_smallest_and_largest_thread_are_taken() -> None:
    assert screw_holding(920, 3, 2.6) == pytest.approx(797, rel=1e-3)
    assert screw_holding(33000, 10, 2.6) == pytest.approx(8580)
    assert thread_shear(0, 3, 1.5) == 0
    assert thread_shear(1000, 10, 5) == pytest.approx(12.732, rel=1e-4)


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ((-1, 6, 8), "force along the screw is -1 N"),
        ((6000, 2.98, 8), "diameter of the thread is 2.98 mm"),
        ((6000, 10.05, 8), "diameter of the thread is 10.05 mm"),
        ((6000, 6, 2.99), "length of thread that carries is 2.99 mm; the formula holds from 3 mm"),
    ],
)
def test_thread_refuses_what_cannot_be(arguments: tuple[float, float, float], message: str) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        thread_shear(*arguments)


def test_a_collar_needs_a_screw_with_a_place() -> None:
    with pytest.raises(OutOfRange, match=r"^number of screws is 0; the formula holds from 1"):
        screws_ratio([])
    for angle in (math.nan, math.inf):
        with pytest.raises(OutOfRange, match=rf"^angle of a screw is {angle} degrees"):
            screws_ratio([0, angle])
    assert screws_ratio([77]) == pytest.approx(1)


_HOLD: dict[str, Any] = {
    "holding_n": 1248.0,
    "angles_deg": [0, 90],
    "factors": [0.92],
    "safety": 2.0,
    "joint_diameter_mm": 25.0,
}


@pytest.mark.parametrize(
    ("spoilt", "message"),
    [
        ({"holding_n": 0}, "holding force of one screw is 0 N"),
        ({"holding_n": -1}, "holding force of one screw is -1 N"),
        ({"factors": [1, 0]}, "factor is 0;"),
        ({"factors": [-0.1]}, "factor is -0.1"),
        ({"factors": [1.105]}, "factor is 1.105"),
        ({"factors": [math.nan]}, "factor is nan"),
        ({"safety": 1.49}, "safety factor is 1.49; the formula holds from 1.5"),
        ({"joint_diameter_mm": 0}, "diameter of the bar is 0"),
        ({"joint_diameter_mm": -25}, "diameter of the bar is -25"),
        ({"angles_deg": []}, "number of screws is 0"),
    ],
)
def test_screws_refuse_what_cannot_be(spoilt: dict[str, Any], message: str) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        screws_hold(**_HOLD | spoilt)


def test_bounds_of_screws_are_taken() -> None:
    found = screws_hold(1000, [0, 0], [1.1, 0.5], 1.5, 20)
    assert (found.axial_n, found.torque_nmm) == pytest.approx((733.333, 7333.33))


@given(first=st.floats(0, 360), apart=st.floats(0, 180))
def test_two_screws_hold_between_one_and_two(first: float, apart: float) -> None:
    found = screws_ratio([first, first + apart])
    assert 1 - 1e-9 <= found <= 2 + 1e-9
    assert found == pytest.approx((2 + 2 * math.cos(math.radians(apart) / 2)) / 2)
    assert found == pytest.approx(screws_ratio([first + apart, first]))


@given(angles=st.lists(st.floats(0, 360), min_size=1, max_size=5), turn=st.floats(-360, 360), more=st.floats(0, 360))
def test_one_more_screw_never_holds_less(angles: list[float], turn: float, more: float) -> None:
    alone = screws_ratio(angles)
    assert screws_ratio([angle + turn for angle in angles]) == pytest.approx(alone)
    # Its own point adds half a screw; at worst it takes as much from the push on the bore.
    assert alone - 1e-9 <= screws_ratio([*angles, more]) <= alone + 1 + 1e-9


@given(torque=st.floats(500, 33000), thread=st.floats(3, 10), ratio=st.floats(0.5, 3), safety=st.floats(1.5, 8))
def test_a_tighter_screw_holds_more(torque: float, thread: float, ratio: float, safety: float) -> None:
    loose, tight = (screw_holding(way, thread, ratio) for way in (torque, 1.1 * torque))
    assert tight == pytest.approx(1.1 * loose)
    assert screws_hold(loose, [0], [], safety, 25).axial_n == pytest.approx(loose / safety)
    # Half the force along the screw is held: a friction of a quarter, at the point and at the bore behind it.
    assert screw_holding(torque, thread, 2.6) / screw_preload(torque, thread, 0.2) == pytest.approx(0.52)


def test_one_screw_in_inches_is_one_in_millimetres() -> None:
    # 1/4 in, 87 pound-inches, ratio 2.6: 2.6 * 87 / 0.25 = 905 pounds.
    pound, inch = 4.4482216152605, 25.4
    found = screw_holding(87 * pound * inch, 0.25 * inch, 2.6)
    assert found == pytest.approx(2.6 * 87 / 0.25 * pound)
    assert screws_hold(found, [0], [], 2, 1 * inch).torque_nmm == pytest.approx(2.6 * 87 / 0.25 / 2 * 0.5 * pound * inch)


_DEPTH: dict[str, float] = {
    "end_diameter_mm": 65, "joint_diameter_mm": 25, "thread_diameter_mm": 6, "screw_length_mm": 16, "spot_mm": 0,
    "least_depth_mm": 1,
}  # fmt: skip


@pytest.mark.parametrize(
    ("spoilt", "message"),
    [
        ({"joint_diameter_mm": 0}, "diameter of the bar is 0 mm"),
        ({"joint_diameter_mm": -25}, "diameter of the bar is -25 mm"),
        ({"end_diameter_mm": 25}, "last diameter of the collar over that of the bar is 0 mm"),
        ({"end_diameter_mm": 24}, "last diameter of the collar over that of the bar is -1 mm"),
        ({"thread_diameter_mm": 2.98}, "diameter of the thread is 2.98 mm"),
        ({"thread_diameter_mm": 10.05}, "diameter of the thread is 10.05 mm"),
        ({"screw_length_mm": 0}, "length of the screw is 0 mm"),
        ({"screw_length_mm": -16}, "length of the screw is -16 mm"),
        ({"spot_mm": -0.1}, "depth of the spot in the bar is -0.1 mm"),
        ({"spot_mm": 2.52}, "depth of the spot in the bar is 2.52 mm"),
        ({"least_depth_mm": 0}, "least depth of the screw below the surface is 0 mm"),
        ({"least_depth_mm": -1}, "least depth of the screw below the surface is -1 mm"),
    ],
)
def test_depth_of_a_screw_refuses_what_cannot_be(spoilt: dict[str, float], message: str) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        screw_depth(**_DEPTH | spoilt)


def test_a_screw_that_would_meet_the_tool_is_refused() -> None:
    with pytest.raises(OutOfRange, match=r"^the set screw would end 0\.138 mm above .* at least 1 mm below it: .* helps$"):
        screw_depth(**_DEPTH | {"screw_length_mm": 20})
    assert screw_depth(**_DEPTH | {"screw_length_mm": 20, "spot_mm": 2.5}) == pytest.approx(2.35, abs=0.01)
    # 40 and 9 make 41: a thread of 9 mm whose end lies 20 mm from the axis leaves just 1 mm under 43 mm.
    just = {"end_diameter_mm": 43, "thread_diameter_mm": 9, "screw_length_mm": 7.5}
    assert screw_depth(**_DEPTH | just) == pytest.approx(1)
    with pytest.raises(OutOfRange, match=r"^the set screw would end 0\.995 mm below"):
        screw_depth(**_DEPTH | just | {"end_diameter_mm": 42.99})
    with pytest.raises(OutOfRange, match=r"^the set screw would end 1 mm below"):
        screw_depth(**_DEPTH | just | {"end_diameter_mm": 43 - 2e-7})
    with pytest.raises(OutOfRange, match=r"^the set screw would end 0 mm below"):
        screw_depth(**_DEPTH | just | {"end_diameter_mm": 41})


def test_depth_that_rounding_alone_takes_away_is_not_refused() -> None:
    rounded = {"end_diameter_mm": 48.3, "thread_diameter_mm": 3.1, "screw_length_mm": 11.5, "least_depth_mm": 0.1}
    assert screw_depth(**_DEPTH | rounded) == pytest.approx(0.1)
    assert 48.3 / 2 - math.hypot(24, 1.55) < 0.1


def test_longest_screw_is_found_by_search() -> None:
    longest = brentq(lambda length: screw_depth(**_DEPTH | {"screw_length_mm": length}) - 2, 10, 18)
    assert math.hypot(12.5 + longest, 3) == pytest.approx(32.5 - 2)
