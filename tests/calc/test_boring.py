"""Boring: hollow and carbide bars, passes, what spring passes leave, the taper a soft bar copies."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from tailtrue.calc.boring import boring_bar_deflection, overhang_ratio
from tailtrue.calc.boring_passes import (
    bore_error,
    bored_bar_deflection,
    boring_passes,
    copied_taper,
    cut_stiffness,
    equal_stiffness_overhang,
    error_after_passes,
    share_left,
    spring_passes_for,
)
from tailtrue.calc.cutting import cutting_force, specific_force
from tailtrue.calc.validity import OutOfRange

_ratios = st.floats(0.01, 5)
_depths = st.floats(0.02, 1)
_INCH = 25.4


def _left_by_balance(set_depth: float, cut: float, tool: float, passes: int) -> float:
    """What is left when in each pass the tool gives way until its spring holds the force of the depth it really cuts."""
    standing = set_depth
    for _ in range(passes + 1):
        standing = brentq(lambda left, there=standing: tool * left - cut * (there - left), 0, standing, xtol=1e-15)
    return float(standing)


@given(depth=_depths, ratio=_ratios, passes=st.integers(0, 6))
def test_what_is_left_agrees_with_the_balance_of_force_and_spring(depth: float, ratio: float, passes: int) -> None:
    left = error_after_passes(depth, 400 * ratio, 400, passes)
    assert left == pytest.approx(_left_by_balance(depth, 400 * ratio, 400, passes), rel=1e-6, abs=1e-12)


@given(depth=_depths, ratio=_ratios, passes=st.integers(0, 20), more=st.floats(1.01, 2))
def test_less_is_left_after_more_passes_with_a_stiffer_tool_or_a_lighter_cut(
    depth: float, ratio: float, passes: int, more: float
) -> None:
    left = error_after_passes(depth, 400 * ratio, 400, passes)
    assert 0 < left < depth
    assert error_after_passes(depth, 400 * ratio, 400, passes + 1) < left
    assert error_after_passes(depth, 400 * ratio, 400 * more, passes) < left
    assert error_after_passes(depth * more, 400 * ratio, 400, passes) > left


def test_an_edge_that_rubs_takes_no_more() -> None:
    # 0.2 leaves 0.04, that leaves 0.008, and below 0.01 the edge rubs.
    assert [error_after_passes(0.2, 100, 400, count, 0.01) for count in (0, 1, 2, 10)] == pytest.approx(
        [0.04, 0.008, 0.008, 0.008]
    )
    assert error_after_passes(0.01, 100, 400, 3, 0.01) == 0.01
    assert error_after_passes(0.0101, 100, 400, 0, 0.01) == pytest.approx(0.00202)


@given(depth=_depths, ratio=_ratios, share=st.floats(0.001, 0.9))
def test_the_spring_passes_asked_for_are_enough_and_one_less_is_not(depth: float, ratio: float, share: float) -> None:
    wanted = share * depth
    try:
        count = spring_passes_for(depth, 400 * ratio, 400, wanted)
    except OutOfRange:
        assert error_after_passes(depth, 400 * ratio, 400, 50) > wanted
        return
    assert error_after_passes(depth, 400 * ratio, 400, count) <= wanted * (1 + 1e-6)
    if count:
        assert error_after_passes(depth, 400 * ratio, 400, count - 1) > wanted * (1 - 1e-6)


@pytest.mark.parametrize("passes", range(8))
def test_an_error_just_as_wanted_asks_for_no_more_passes(passes: int) -> None:
    left = 0.2
    for _ in range(passes + 1):
        left *= 0.2
    assert spring_passes_for(0.2, 100, 400, left) == passes
    assert spring_passes_for(0.2, 100, 400, left * (1 - 1e-7)) == passes + 1


def test_spring_passes_that_cannot_do_are_refused() -> None:
    words = r"^spring passes do not bring what is left standing to 0\.0\d+ mm; a keener edge, a stiffer tool or "
    assert spring_passes_for(0.2, 100, 400, 0.008) == 1
    assert spring_passes_for(0.2, 100, 400, 0.008, 0.039) == 1
    with pytest.raises(OutOfRange, match=words):
        spring_passes_for(0.2, 100, 400, 0.008, 0.0401)
    with pytest.raises(OutOfRange, match=words):
        spring_passes_for(0.2, 100, 400, 0.04, 0.2)
    # q = 10 / 11: the fiftieth spring pass leaves 0.2 q^51.
    assert spring_passes_for(0.2, 4000, 400, 0.2 * (10 / 11) ** 51) == 50
    with pytest.raises(OutOfRange, match=words):
        spring_passes_for(0.2, 4000, 400, 0.2 * (10 / 11) ** 51.5)


def test_a_wanted_error_above_the_set_depth_needs_no_spring_pass() -> None:
    assert spring_passes_for(0.2, 100, 400, 0.3) == 0


@given(mouth=_depths, bottom=_depths, ratio=_ratios, passes=st.integers(0, 5))
def test_the_copied_taper_is_the_difference_of_what_is_left_at_the_ends(
    mouth: float, bottom: float, ratio: float, passes: int
) -> None:
    stiff = (400 * ratio, 400)
    left = error_after_passes(bottom, *stiff, passes) - error_after_passes(mouth, *stiff, passes)
    assert copied_taper(mouth, bottom, *stiff, passes) == pytest.approx(2 * left, abs=1e-12)
    assert copied_taper(bottom, mouth, *stiff, passes) == -copied_taper(mouth, bottom, *stiff, passes)


def test_more_stock_at_the_bottom_leaves_a_bell_mouth() -> None:
    assert copied_taper(0.3, 0.5, 100, 400) == pytest.approx(0.08)
    assert copied_taper(0.3, 0.5, 100, 400, 1) == pytest.approx(0.016)
    assert copied_taper(0.4, 0.4, 100, 400) == 0


def test_the_bore_is_short_by_twice_what_is_left_and_worn() -> None:
    assert bore_error(0.03) == pytest.approx(0.06)
    assert bore_error(0.03, 0.01) == pytest.approx(0.08)


@given(kc11=st.floats(500, 3000), mc=st.floats(0.1, 0.3), feed=st.floats(0.03, 0.3), depth=_depths, share=st.floats(0.3, 1))
def test_stiffness_of_the_cut_times_depth_is_the_radial_force(
    kc11: float, mc: float, feed: float, depth: float, share: float
) -> None:
    stiff = cut_stiffness(specific_force(kc11, mc, feed), feed, share)
    assert stiff * depth == pytest.approx(share * cutting_force(kc11, mc, depth, feed))


@given(tenths=st.integers(1, 200), depth=st.sampled_from([0.05, 0.1, 0.125, 0.2, 0.25, 0.4, 0.5]))
def test_passes_reach_the_bore_and_one_less_does_not(tenths: int, depth: float) -> None:
    start, end = 20.0, 20 + tenths / 10
    count = boring_passes(start, end, depth)
    assert start + 2 * count * depth >= end - 1e-6
    assert count == 1 or start + 2 * (count - 1) * depth < end - 1e-9


def test_a_bore_already_there_still_takes_one_pass() -> None:
    assert boring_passes(25, 25, 0.4) == 1
    assert boring_passes(25, 25.01, 0.4) == 1
    assert boring_passes(25, 25.8, 0.4) == 1
    assert boring_passes(25, 25.81, 0.4) == 2
    assert boring_passes(22, 24.4 + 1e-7, 0.4) == 4
    with pytest.raises(OutOfRange, match=r"^bore to make is 24\.9 mm; the formula holds from 25 mm upward$"):
        boring_passes(25, 24.9, 0.4)


@given(force=st.floats(1, 100), shank=st.floats(8, 32), ratio=st.floats(2.6, 6), hole=st.floats(0.05, 0.799))
def test_a_hollow_bar_gives_way_more_and_a_carbide_one_a_third(
    force: float, shank: float, ratio: float, hole: float
) -> None:
    solid = boring_bar_deflection(force, ratio * shank, shank, 206000)
    hollow = bored_bar_deflection(force, ratio * shank, shank, hole * shank, 206000)
    assert hollow > solid
    # The ring stands for what the full section bears less what the bore would.
    assert 1 / hollow == pytest.approx(1 / solid * (1 - hole**4))
    assert bored_bar_deflection(force, ratio * shank, shank, 0, 620000) == pytest.approx(solid * 206 / 620)


def test_a_hollow_bar_that_bends_too_far_is_refused() -> None:
    # Solid it bends 4.9 mm over 60, which the beam theory still bears; hollow it would bend 8.2 mm.
    solid = boring_bar_deflection(858, 60, 6, 206000)
    assert solid < 6
    with pytest.raises(OutOfRange, match=r"^the bar would bend by .* over 60 mm; the formula holds below a tenth"):
        bored_bar_deflection(858, 60, 6, 4.8, 206000)
    reach = (1 - solid / 5.97) ** 0.25 * 6
    assert bored_bar_deflection(858, 60, 6, reach, 206000) == pytest.approx(5.97)
    with pytest.raises(OutOfRange, match="would bend"):
        bored_bar_deflection(858, 60, 6, (1 - solid / 6.03) ** 0.25 * 6, 206000)


@given(overhang=st.floats(40, 60), modulus=st.floats(190e3, 210e3), other=st.floats(300e3, 640e3))
def test_bars_of_equal_stiffness_bend_alike(overhang: float, modulus: float, other: float) -> None:
    longer = equal_stiffness_overhang(overhang, modulus, other)
    assert longer > overhang
    assert boring_bar_deflection(50, longer, 12, other) == pytest.approx(boring_bar_deflection(50, overhang, 12, modulus))
    assert equal_stiffness_overhang(longer, other, modulus) == pytest.approx(overhang)


def test_from_four_to_six_diameters_a_bar_gives_way_3_4_times_as_much() -> None:
    short, long = (boring_bar_deflection(100, count * 12, 12, 206000) for count in (4, 6))
    assert long / short == pytest.approx(3.375)
    assert overhang_ratio(72, 12) == 6


@given(eighths=st.integers(2, 10), count=st.floats(3, 8), pounds=st.floats(1, 50))
def test_inch_and_metric_bars_bend_alike(eighths: int, count: float, pounds: float) -> None:
    shank = eighths / 8
    inches = pounds * (count * shank) ** 3 / (3 * 29.9e6 * 3.141592653589793 * shank**4 / 64)
    metric = boring_bar_deflection(
        pounds * 4.4482216152605, count * shank * _INCH, shank * _INCH, 29.9e6 * 4.4482216152605 / _INCH**2
    )
    assert metric / _INCH == pytest.approx(inches)


@pytest.mark.parametrize("wrong", [0, -1])
def test_stiffness_is_named_where_there_is_none(wrong: float) -> None:
    with pytest.raises(OutOfRange, match=rf"^stiffness of the cut is {wrong} N/mm"):
        share_left(wrong, 400)
    with pytest.raises(OutOfRange, match=rf"^stiffness of the machine is {wrong} N/mm"):
        share_left(100, wrong)
