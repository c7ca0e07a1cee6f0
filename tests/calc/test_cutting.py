"""Forces, power, times, finish and wear of a cut: what holds for every cut, and against independent arithmetic."""

from math import pi, sqrt

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from tailtrue.calc.chip import (
    chip_thickness,
    chip_width,
    corrected_force,
    force_at_approach,
    force_band,
    passive_force,
    rake_factor,
)
from tailtrue.calc.cut_power import depth_for_power, motor_power, power_at_tool, power_from_constant
from tailtrue.calc.cut_time import (
    drill_removal_rate,
    drill_travel,
    drilling_time,
    facing_pass_time,
    feed_for_time,
    pass_time,
    passes_time,
)
from tailtrue.calc.cutting import (
    cut_time,
    cutting_force,
    cutting_power,
    removal_rate,
    specific_force,
    spindle_speed,
    surface_speed,
    theoretical_peak_height,
)
from tailtrue.calc.finish import expected_roughness, feed_for_peak_height, roughness_average
from tailtrue.calc.tool_wear import cutting_path, edge_wear, life_ratio, speed_for_life, taper_from_wear, tool_life
from tailtrue.calc.validity import OutOfRange

_UNITS = pint.UnitRegistry()
_kc11 = st.floats(150, 3000)
_mc = st.floats(0.1, 0.3)
_feeds = st.floats(0.06, 0.6)
_depths = st.floats(0.05, 5)
_angles = st.floats(30, 90)


def _in(value: float, unit: str, wanted: str) -> float:
    return float((value * _UNITS(unit)).to(wanted).magnitude)


# Forces


@given(feed=_feeds, depth=_depths, angle=_angles)
def test_the_area_of_the_chip_is_depth_times_feed_at_any_approach(feed: float, depth: float, angle: float) -> None:
    assert chip_thickness(feed, angle) * chip_width(depth, angle) == pytest.approx(feed * depth)
    assert chip_thickness(feed, 90) == pytest.approx(feed)


@given(kc11=_kc11, mc=_mc, depth=_depths, feed=_feeds, angle=_angles)
def test_a_slanting_edge_makes_a_thinner_chip_and_never_less_force(
    kc11: float, mc: float, depth: float, feed: float, angle: float
) -> None:
    square = force_at_approach(kc11, mc, depth, feed, 90)
    assert square == pytest.approx(cutting_force(kc11, mc, depth, feed))
    assert force_at_approach(kc11, mc, depth, feed, angle) >= square * (1 - 1e-12)


@given(kc11=_kc11, mc=_mc, depth=_depths, feed=_feeds, speed=st.floats(10, 300))
def test_power_is_force_times_speed_by_independent_arithmetic(
    kc11: float, mc: float, depth: float, feed: float, speed: float
) -> None:
    force = cutting_force(kc11, mc, depth, feed)
    pressure = specific_force(kc11, mc, feed) * _UNITS("MPa")
    assert force == pytest.approx((pressure * (depth * feed * _UNITS("mm**2"))).to("N").magnitude)
    by_hand = (force * _UNITS("N") * speed * _UNITS("m/min")).to("W").magnitude
    assert cutting_power(force, speed) == pytest.approx(by_hand)


@given(kp=st.floats(300, 3000), speed=st.floats(10, 300), depth=_depths, feed=_feeds)
def test_power_constant_times_volume_is_power_by_independent_arithmetic(
    kp: float, speed: float, depth: float, feed: float
) -> None:
    volume = removal_rate(speed, depth, feed) * _UNITS("cm**3/min")
    by_hand = (kp / 1000 * _UNITS("kW/(cm**3/s)") * volume).to("W").magnitude
    assert power_from_constant(kp, speed, depth, feed) == pytest.approx(by_hand)
    # A constant that equals the specific force gives the power of the force.
    assert power_from_constant(kp, speed, depth, feed) == pytest.approx(cutting_power(kp * depth * feed, speed))
    assert power_from_constant(kp, speed, depth, feed, 1.2, 1.3) == pytest.approx(1.56 * by_hand)


@given(thousandths=st.integers(3, 20), hundredths=st.integers(1, 15), feet=st.integers(40, 400), kp=st.floats(0.2, 1.2))
def test_inch_and_metric_cuts_take_the_same_power(thousandths: int, hundredths: int, feet: int, kp: float) -> None:
    feed, depth = thousandths / 1000, hundredths / 100
    horsepower = kp * 12 * feet * feed * depth  # Q = 12 V f d in3/min
    metric = power_from_constant(
        _in(kp, "hp/(in**3/min)", "MPa"), _in(feet, "ft/min", "m/min"), _in(depth, "in", "mm"), _in(feed, "in", "mm")
    )
    assert metric == pytest.approx(_in(horsepower, "hp", "W"))


def test_the_upper_constants_give_the_limit_whichever_is_greater() -> None:
    usual = force_band(1350, 0.21, 1990, 0.26, 1, 0.15, factors=(), ploughing_below_mm=0.05, ploughing_factor=1.5)
    assert force_band(1990, 0.26, 1350, 0.21, 1, 0.15, factors=(), ploughing_below_mm=0.05, ploughing_factor=1.5) == usual
    assert usual.typical_n == cutting_force(1350, 0.21, 1, 0.15)
    assert usual.limit_n == cutting_force(1990, 0.26, 1, 0.15)
    corrected = force_band(1350, 0.21, 1990, 0.26, 1, 0.15, [1.2, 1.3], ploughing_below_mm=0.05, ploughing_factor=1.5)
    assert corrected.typical_n == usual.typical_n
    assert corrected.limit_n == pytest.approx(1.56 * usual.limit_n)


@pytest.mark.parametrize(("feed", "ploughs"), [(0.0499, True), (0.05, False), (0.2, False)])
def test_a_chip_too_thin_is_an_estimate_and_half_as_much_again(feed: float, ploughs: bool) -> None:
    band = force_band(800, 0.25, 800, 0.25, 0.1, feed, factors=(), ploughing_below_mm=0.05, ploughing_factor=1.5)
    assert band.estimated is ploughs
    assert band.typical_n == cutting_force(800, 0.25, 0.1, feed)
    assert band.limit_n == pytest.approx((1.5 if ploughs else 1) * band.typical_n)
    assert force_band(800, 0.25, 800, 0.25, 0.1, feed, (), 1.2, 0.3).limit_n == pytest.approx(1.2 * band.typical_n)


@given(kc11=_kc11, mc=_mc, depth=_depths, feed=st.floats(0.02, 0.6), more=st.floats(1.001, 2))
def test_the_limit_never_falls_when_the_cut_grows_deeper_or_the_tool_duller(
    kc11: float, mc: float, depth: float, feed: float, more: float
) -> None:
    band = force_band(kc11, mc, 1.3 * kc11, mc, depth, feed, factors=(), ploughing_below_mm=0.05, ploughing_factor=1.5)
    assert band.typical_n < band.limit_n
    assert (
        force_band(
            kc11, mc, 1.3 * kc11, mc, depth * more, feed, factors=(), ploughing_below_mm=0.05, ploughing_factor=1.5
        ).limit_n
        > band.limit_n
    )
    assert (
        force_band(kc11, mc, 1.3 * kc11, mc, depth, feed, [more], ploughing_below_mm=0.05, ploughing_factor=1.5).limit_n
        > band.limit_n
    )


def test_corrections_multiply_and_none_changes_nothing() -> None:
    assert corrected_force(300, []) == 300
    assert corrected_force(300, [1.2, 0.9]) == pytest.approx(324)


def test_a_keener_rake_lowers_the_force_and_a_blunter_one_raises_it() -> None:
    assert rake_factor(6, 6, 0.015) == 1
    assert rake_factor(12, 2, 0.01) == pytest.approx(0.9)
    assert rake_factor(0, 6, 0.015) == pytest.approx(1.09)


@pytest.mark.parametrize(("depth", "push"), [(0.1, 270), (0.4, 270), (0.401, 150), (2, 150)])
def test_a_cut_within_the_nose_pushes_more(depth: float, push: float) -> None:
    assert passive_force(300, depth, 0.4, 0.9, 0.5) == pytest.approx(push)


# Power


@given(power=st.floats(10, 5000), efficiency=st.floats(0.3, 1))
def test_motor_and_tool_power_are_each_others_way_back(power: float, efficiency: float) -> None:
    assert power_at_tool(motor_power(power, efficiency), efficiency, 1) == pytest.approx(power)
    assert motor_power(power, efficiency) >= power


@given(kc11=_kc11, mc=_mc, feed=_feeds, speed=st.floats(10, 300), power=st.floats(50, 5000))
def test_the_depth_for_a_power_takes_just_that_power(
    kc11: float, mc: float, feed: float, speed: float, power: float
) -> None:
    depth = depth_for_power(kc11, mc, feed, speed, power)
    assert cutting_power(cutting_force(kc11, mc, depth, feed), speed) == pytest.approx(power)


# Time


@given(length=st.floats(1, 500), feed=_feeds, speed=st.floats(50, 2000), extra=st.floats(0.1, 10))
def test_approach_and_run_out_take_time_like_any_travel(length: float, feed: float, speed: float, extra: float) -> None:
    bare = pass_time(length, 0, 0, feed, speed)
    assert bare == pytest.approx(cut_time(length, feed, speed))
    assert pass_time(length, extra, 0, feed, speed) == pytest.approx(pass_time(length, 0, extra, feed, speed))
    assert pass_time(length, extra, extra, feed, speed) == pytest.approx(cut_time(length + 2 * extra, feed, speed))
    assert feed_for_time(length, bare, speed) == pytest.approx(feed)


def test_each_pass_brings_its_way_back_and_its_setting() -> None:
    assert passes_time(60, 100, 20, 1) == pytest.approx(65)
    assert passes_time(60, 100, 20, 4) == pytest.approx(260)
    assert passes_time(60, 100, 20, 4, 30) == pytest.approx(380)


def test_a_ring_is_faced_over_its_wall_only() -> None:
    assert facing_pass_time(50, 0, 0, 0, 0.1, 300) == cut_time(25, 0.1, 300)
    assert facing_pass_time(75, 25, 0, 0, 0.1, 300) == pytest.approx(cut_time(25, 0.1, 300))
    assert facing_pass_time(75, 25, 2, 3, 0.1, 300) == pytest.approx(cut_time(30, 0.1, 300))
    with pytest.raises(OutOfRange, match=r"^the hole is 75 mm and the face 75 mm; the hole must be smaller$"):
        facing_pass_time(75, 75, 0, 0, 0.1, 300)


def test_a_hole_takes_its_depth_the_point_and_the_run_out() -> None:
    # At 90 degrees the point is as long as the drill's radius.
    assert drill_travel(60, 10, 2, 90) == pytest.approx(67)
    assert drill_travel(60, 10, 0, point_angle_deg=118) == pytest.approx(60 + 0.3 * 10, abs=0.005)
    assert drilling_time(60, 10, 0.2, 600, 3, 90) == pytest.approx(60 * 68 / (0.2 * 600))
    assert drilling_time(60, 10, 0.2, 600, overrun_mm=0, point_angle_deg=118) == pytest.approx(
        60 * drill_travel(60, 10, 0, 118) / (0.2 * 600)
    )


@given(diameter=st.floats(2, 50), feed=_feeds, speed=st.floats(50, 2000), share=st.floats(0, 0.95), depth=st.floats(1, 200))
def test_the_chips_of_a_hole_fill_the_hole(diameter: float, feed: float, speed: float, share: float, depth: float) -> None:
    minutes = cut_time(depth, feed, speed) / 60
    hole = _in(pi / 4 * (diameter**2 - (share * diameter) ** 2) * depth, "mm**3", "cm**3")
    assert drill_removal_rate(diameter, feed, speed, share * diameter) * minutes == pytest.approx(hole)
    assert drill_removal_rate(diameter, feed, speed) >= drill_removal_rate(diameter, feed, speed, share * diameter)


def test_a_pilot_as_wide_as_the_drill_is_refused() -> None:
    with pytest.raises(OutOfRange, match=r"^the pilot is 10 mm; it must be smaller than the drill of 10 mm$"):
        drill_removal_rate(10, 0.1, 300, 10)


@given(feet=st.integers(20, 500), sixteenths=st.integers(1, 64))
def test_inch_and_metric_work_turn_at_the_same_speed(feet: int, sixteenths: int) -> None:
    inches = sixteenths / 16
    speed = spindle_speed(_in(feet, "ft/min", "m/min"), _in(inches, "in", "mm"))
    assert speed == pytest.approx(12 * feet / (pi * inches))
    turning = _in(surface_speed(speed, _in(inches, "in", "mm")), "m/min", "ft/min")
    assert turning == pytest.approx(feet)


# Finish


@given(feed=st.floats(0.02, 0.2), radius=st.floats(0.4, 1.6))
def test_mean_roughness_agrees_with_the_area_between_surface_and_mean_line(feed: float, radius: float) -> None:
    def height(x: float) -> float:
        return radius - sqrt(radius**2 - x**2)

    mean = quad(height, -feed / 2, feed / 2)[0] / feed
    crossing = sqrt(radius**2 - (radius - mean) ** 2)
    below = quad(lambda x: mean - height(x), -crossing, crossing)[0]
    exact = 2 * below / feed  # as much above the mean line as below it
    assert roughness_average(feed, radius) == pytest.approx(exact, rel=0.06)
    assert roughness_average(feed, radius) < exact


@given(feed=st.floats(0.02, 0.2), radius=st.floats(0.4, 1.6))
def test_feed_and_height_of_the_ridges_are_each_others_way_back(feed: float, radius: float) -> None:
    assert feed_for_peak_height(theoretical_peak_height(feed, radius), radius) == pytest.approx(feed)


def test_a_real_surface_lies_between_its_factors() -> None:
    low, high = expected_roughness(0.1, 0.4, 1.5, 3)
    assert low == pytest.approx(1.5 * roughness_average(0.1, 0.4))
    assert high == pytest.approx(3 * roughness_average(0.1, 0.4))


# Wear


@given(diameter=st.floats(10, 100), length=st.floats(5, 100), feed=_feeds, wear=st.floats(1, 100))
def test_the_edge_runs_once_round_each_turn_and_the_taper_is_twice_its_wear(
    diameter: float, length: float, feed: float, wear: float
) -> None:
    path = cutting_path(diameter, length, feed)
    assert path == pytest.approx(_in(pi * diameter * (length / feed), "mm", "km"))
    assert taper_from_wear(diameter, length, feed, wear) == pytest.approx(2 * edge_wear(path, wear))
    assert edge_wear(path, wear) == pytest.approx(_in(path * wear, "um", "mm"))
    assert taper_from_wear(diameter, length, feed * 1.5, wear) < taper_from_wear(diameter, length, feed, wear)


@given(minutes=st.floats(1.01, 9_900), constant=st.floats(20, 800), exponent=st.floats(0.05, 0.6))
def test_life_and_speed_are_each_others_way_back(minutes: float, constant: float, exponent: float) -> None:
    speed = speed_for_life(minutes, constant, exponent)
    assert tool_life(speed, constant, exponent) == pytest.approx(minutes, rel=1e-6)
    half = life_ratio(0.5, exponent) * minutes
    if half < 10_000:
        assert tool_life(speed / 2, constant, exponent) == pytest.approx(half, rel=1e-6)
    assert life_ratio(1, exponent) == 1


def test_life_is_told_from_one_minute_to_ten_thousand() -> None:
    assert tool_life(70, 70, 0.125) == 1
    assert tool_life(speed_for_life(10_000, 70, 0.5), 70, 0.5) == pytest.approx(10_000)
    for speed in (70.3, 70 / 10_040**0.5):
        with pytest.raises(OutOfRange, match=r"^at .* the law of tool life leaves its range of 1 to 10000 min$"):
            tool_life(speed, 70, 0.5)
