"""Set-over for a wanted taper, and back: what must hold between the ways of saying it."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.calc import (
    alignment,
    lathe_geometry,
    setover,
)


@given(taper=st.floats(1e-4, 0.13), span=st.floats(100, 1000))
def test_taper_and_set_over_are_each_others_way_back(taper: float, span: float) -> None:
    exact = setover.setover_exact(taper, span)
    assert setover.taper_from_setover(exact, span) == pytest.approx(taper)
    by_rule = setover.setover_by_rule(taper, span)
    # The rule gives too much, at most 0.25 %.
    assert exact < by_rule <= exact * 1.0025
    assert setover.taper_from_half_angle(setover.half_angle_of_taper(taper)) == pytest.approx(taper)


@given(per_foot=st.floats(0.01, 1.5), span=st.floats(100, 1000))
def test_set_over_is_the_same_in_inches_and_millimetres(per_foot: float, span: float) -> None:
    taper = setover.taper_per_foot(per_foot)
    assert setover.setover_by_rule(taper, span) == pytest.approx(25.4 * setover.setover_by_rule(taper, span / 25.4))
    assert setover.setover_by_rule(taper, span) == pytest.approx(per_foot * span / 24)


@given(large=st.floats(20, 80), drop=st.floats(0.01, 3), length=st.floats(50, 300), span=st.floats(300, 600))
def test_set_over_from_taper_and_from_diameters_agree(large: float, drop: float, length: float, span: float) -> None:
    taper = setover.taper_from_diameters(large, large - drop, length)
    by_rule = setover.setover_by_rule(taper, span)
    assert by_rule == pytest.approx(alignment.setover_for_taper(large, large - drop, length, span))


@given(taper=st.floats(1e-3, 0.13), span=st.floats(150, 600))
def test_set_over_toward_the_tool_makes_the_tailstock_end_small(taper: float, span: float) -> None:
    amount = setover.setover_exact(taper, span)
    along_bed = math.sqrt(span**2 - amount**2)
    for small_end, sign in (("tailstock", -1), ("headstock", 1)):
        toward_tool = setover.setover_toward_tool(amount, small_end)
        radii = [lathe_geometry.radius_cut(60, toward_tool, 0, 0, station, along_bed) for station in (0, span / 2)]
        assert 2 * (radii[1] - radii[0]) == pytest.approx(sign * taper * span / 2)


def test_centre_holes_make_the_taper_steeper() -> None:
    worked = setover.working_span(609.6, 3.175, 3.175)
    ratio = setover.taper_from_setover(10, worked) / setover.taper_from_setover(10, 609.6)
    assert ratio == pytest.approx(1.0105, abs=5e-5)  # Turning and Boring Tapers (1902): 24 in works as 23 3/4
    assert setover.working_span(100, 2, 5) == 93


def test_halving_the_length_doubles_the_taper_of_a_small_set_over() -> None:
    assert setover.taper_from_setover(1, 150) == pytest.approx(2 * setover.taper_from_setover(1, 300), rel=1e-4)


def test_the_lesser_of_travel_and_share_limits_the_taper() -> None:
    assert setover.steepest_taper(300, 6.0001, 0.02) == pytest.approx(0.04)
    assert setover.steepest_taper(300, 5.9, 0.02) == pytest.approx(2 * 5.9 / 300)
