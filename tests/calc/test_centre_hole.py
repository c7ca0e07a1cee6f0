"""Centre holes: cone, depth, bearing, and where the centre drill cuts."""

from math import radians, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from tailtrue.calc.centre_hole import (
    bearing_area,
    bearing_pressure,
    cone_depth,
    cone_diameter,
    cone_within_drill,
    largest_cone,
    mean_cutting_diameter,
)
from tailtrue.calc.spindle_band import speed_band
from tailtrue.calc.validity import OutOfRange

_pilots = st.floats(0.5, 10)
_wider = st.floats(1.05, 3)
_angles = st.floats(30, 140)


@given(pilot=_pilots, wider=_wider, angle=_angles)
def test_depth_and_diameter_of_a_cone_are_each_others_way_back(pilot: float, wider: float, angle: float) -> None:
    depth = cone_depth(pilot * wider, pilot, angle)
    assert cone_diameter(depth, pilot, angle) == pytest.approx(pilot * wider)


@given(pilot=_pilots, wider=_wider)
def test_a_lathe_centre_goes_0866_of_the_difference_deep(pilot: float, wider: float) -> None:
    # A rule with 0.289 goes round; it is a third of this and leaves the centre on the edge of the pilot.
    assert cone_depth(pilot * wider, pilot, cone_deg=60) == pytest.approx(0.866 * pilot * (wider - 1), rel=1e-3)


@given(pilot=_pilots, wider=_wider)
def test_the_guarding_chamfer_is_a_third_as_deep(pilot: float, wider: float) -> None:
    assert cone_depth(pilot * wider, pilot, 120) == pytest.approx(cone_depth(pilot * wider, pilot, cone_deg=60) / 3)


@given(pilot=_pilots, wider=_wider, angle=_angles)
def test_bearing_area_is_the_outline_of_the_cone_from_the_side(pilot: float, wider: float, angle: float) -> None:
    depth = cone_depth(pilot * wider, pilot, angle)
    outline = quad(lambda z: pilot + 2 * z * tan(radians(angle / 2)), 0, depth)[0]
    assert bearing_area(pilot * wider, pilot, angle) == pytest.approx(outline)


@given(pilot=_pilots, wider=_wider, force=st.floats(1, 5000), more=st.floats(1.01, 2))
def test_pressure_rises_with_the_force_and_falls_with_the_cone(
    pilot: float, wider: float, force: float, more: float
) -> None:
    pressure = bearing_pressure(force, pilot * wider, pilot, cone_deg=60)
    assert bearing_pressure(force * more, pilot * wider, pilot, cone_deg=60) == pytest.approx(more * pressure)
    assert bearing_pressure(force, pilot * wider * more, pilot, cone_deg=60) < pressure
    assert pressure * bearing_area(pilot * wider, pilot, cone_deg=60) == pytest.approx(force)


def test_angle_counts_in_area_and_pressure() -> None:
    assert bearing_area(5, 3, 90) == pytest.approx(1 * 4)
    assert bearing_pressure(8, 5, 3, 90) == pytest.approx(2)


def test_a_share_of_the_cone_lies_between_pilot_and_largest() -> None:
    assert cone_within_drill(2.5, 5.3, 1) == pytest.approx(5.3)
    assert cone_within_drill(2.5, 5.3, 0.5) == pytest.approx(3.9)


def test_recommended_cones_stay_below_a_third_of_their_bars() -> None:
    # Common practice: smallest bar of each band and the cone advised for it.
    for bar, cone in ((16, 5.3), (25, 6.7), (40, 8.5), (60, 10.6)):
        assert cone <= largest_cone(bar, 1 / 3)


def test_speed_of_a_centre_drill_in_mild_steel_agrees_with_practice() -> None:
    # Common practice: A2.5 and A3.15 in mild steel at half the drilling speed to 0.8 of it: 870 to 1700 turns a minute.
    small = speed_band(12, 24, mean_cutting_diameter(2.5, 6.3))
    large = speed_band(12, 24, mean_cutting_diameter(3.15, 8))
    assert small.high_per_min == pytest.approx(1700, rel=0.03)
    assert small.low_per_min == pytest.approx(870, rel=0.03)
    assert large.high_per_min < small.high_per_min


def test_a_cone_whose_ends_are_swapped_is_refused_in_plain_words() -> None:
    expected = r"^the cone goes from 5\.3 mm to 2\.5 mm; its large end must be the larger$"
    for formula in (cone_depth, bearing_area):
        with pytest.raises(OutOfRange, match=expected):
            formula(2.5, 5.3, 60)
    with pytest.raises(OutOfRange, match=expected):
        mean_cutting_diameter(5.3, 2.5)
