"""What a pilot changes, where the models of drilling part, and what is planned for."""

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from standard_point import (
    chisel_share_of_thrust,
    drill_demand,
    feed_for_thrust,
    largest_solid_drill,
    thrust_shaw_oxford,
    torque_shaw_oxford,
)
from tailtrue.calc.drill_demand import lips_left_by_pilot
from tailtrue.calc.drill_models import (
    power_tool_maker,
    specific_force_drilling,
    thrust_kienzle,
    torque_kienzle,
    torque_power_law,
)
from tailtrue.calc.drilling import (
    drill_power,
    hand_thrust,
    least_pilot,
    point_length,
    taper_friction_torque,
    thrust_tool_maker,
    tool_maker_holds,
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


def test_the_feeds_of_the_tool_maker_end_on_a_tenth_and_a_half() -> None:
    assert [tool_maker_holds(feed) for feed in (0.0996, 0.1, 0.1004, 0.498, 0.5, 0.502)] == [
        False,
        True,
        True,
        True,
        True,
        False,
    ]


def test_the_standard_point_is_taken_for_granted() -> None:
    # Chisel edge 0.18, and the factors of that row of the table.
    for formula in (thrust_shaw_oxford, torque_shaw_oxford):
        assert formula(18000, 0.1, 10, 0.18) < formula(18000, 0.1, 10)
        with pytest.raises(OutOfRange, match=r"^the pilot is 0\.179 of the drill"):
            formula(18000, 0.1, 10, 0.179)
        # A rounding below the ratio is the ratio, a hundred thousandth is not.
        assert formula(18000, 0.1, 10, 0.18 - 5e-10) == pytest.approx(formula(18000, 0.1, 10, 0.18))
        with pytest.raises(OutOfRange, match=r"^the pilot is "):
            formula(18000, 0.1, 10, 0.18 - 1e-7)
        assert formula(18000, 0.1, 10, 0.6, chisel_ratio=0.5) > 0
        with pytest.raises(OutOfRange, match=r"^chisel edge as a share of the diameter is 0\.502"):
            formula(18000, 0.1, 10, 0.6, chisel_ratio=0.502)


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


_kds = st.floats(5000, 40000)
_factors = st.floats(0.5, 3.5)
_feeds = st.floats(0.02, 0.5)
_drills = st.floats(2, 45)
_UNITS = pint.UnitRegistry()


@given(kd=_kds, k=_factors, feed=_feeds, diameter=_drills, pilot=st.sampled_from([0, 0.2, 0.5]), wear=st.floats(1, 2))
def test_what_is_planned_is_no_less_than_either_model(
    kd: float, k: float, feed: float, diameter: float, pilot: float, wear: float
) -> None:
    thrust, torque = drill_demand(kd, kd, k, feed, diameter, pilot, wear)
    assert thrust >= thrust_shaw_oxford(kd, feed, diameter, pilot, wear)
    assert torque >= torque_shaw_oxford(kd, feed, diameter, pilot, wear)
    if feed > 0.5:
        assert torque >= torque_tool_maker(k, 0.5, diameter) * wear * (1 - pilot**2)
        assert pilot or thrust >= thrust_tool_maker(k, 0.5, diameter) * wear
    elif tool_maker_holds(feed):
        assert torque >= torque_tool_maker(k, feed, diameter) * wear * (1 - pilot**2)
        assert pilot or thrust >= thrust_tool_maker(k, feed, diameter) * wear
    else:
        assert (thrust, torque) == (
            thrust_shaw_oxford(kd, feed, diameter, pilot, wear),
            torque_shaw_oxford(kd, feed, diameter, pilot, wear),
        )


@given(
    kd=_kds, k=_factors, feed=st.floats(0.01, 0.96), diameter=st.floats(1.6, 38.4), pilot=st.sampled_from([0, 0.2, 0.5]),
    more=st.floats(1.01, 1.3),
)  # fmt: skip
def test_what_is_planned_rises_with_metal_feed_diameter_and_wear(
    kd: float, k: float, feed: float, diameter: float, pilot: float, more: float
) -> None:
    planned = drill_demand(kd, kd, k, feed, diameter, pilot, wear_factor=1.3)
    for worse in (
        drill_demand(kd * more, kd * more, k * more, feed, diameter, pilot, wear_factor=1.3),
        drill_demand(kd, kd, k, feed, diameter * more, pilot, wear_factor=1.3),
        drill_demand(kd, kd, k, feed, diameter, pilot, 1.3 * more),
    ):
        assert worse.thrust_n > planned.thrust_n
        assert worse.torque_nmm > planned.torque_nmm
    # At a feed past the coarsest of the tool maker's model that model may still lead, and then it stands still.
    coarser = drill_demand(kd, kd, k, feed * more, diameter, pilot, wear_factor=1.3)
    assert coarser.thrust_n >= planned.thrust_n
    assert coarser.torque_nmm >= planned.torque_nmm
    if feed * more <= 0.5:
        assert coarser.thrust_n > planned.thrust_n
        assert coarser.torque_nmm > planned.torque_nmm


def test_the_tool_makers_model_counts_from_its_finest_feed_on() -> None:
    finest = drill_demand(100, 100, 2.22, 0.1, 10, pilot_ratio=0, wear_factor=1.3)
    assert finest.thrust_n == pytest.approx(1.3 * thrust_tool_maker(2.22, 0.1, 10))
    assert finest.torque_nmm == pytest.approx(1.3 * torque_tool_maker(2.22, 0.1, 10))
    assert drill_demand(100, 100, 2.22, 0.0999, 10, pilot_ratio=0, wear_factor=1.3).thrust_n == thrust_shaw_oxford(
        100, 0.0999, 10, wear_factor=1.3
    )


def test_a_feed_past_the_range_of_the_leading_model_asks_for_no_less() -> None:
    # 1020 steel, 10 mm: by the tool maker's page 7021 N from solid at 0.5 mm/rev, by the other model 6490 N at 0.51.
    last, past = (drill_demand(24000, 24000, 2.22, feed, 10, wear_factor=1, pilot_ratio=0) for feed in (0.5, 0.51))
    assert thrust_shaw_oxford(24000, 0.51, 10) < last.thrust_n
    assert past.thrust_n == last.thrust_n == pytest.approx(7021, rel=1e-3)
    opening, coarser = (drill_demand(100, 100, 2.22, feed, 10, 0.5, 1) for feed in (0.5, 0.6))
    assert coarser.torque_nmm == opening.torque_nmm == pytest.approx(0.75 * torque_tool_maker(2.22, 0.5, 10))


def test_thrust_and_torque_have_each_their_own_constant() -> None:
    # Austenitic stainless steel: 35000 for the thrust, 24000 for the torque (memory).
    thrust, torque = drill_demand(35000, 24000, 0.1, 0.05, 10, wear_factor=1, pilot_ratio=0)
    assert thrust == thrust_shaw_oxford(35000, 0.05, 10)
    assert torque == torque_shaw_oxford(24000, 0.05, 10)


def test_each_model_leads_somewhere() -> None:
    soft, tough = (
        drill_demand(24000, 24000, 0.1, 0.3, 10, pilot_ratio=0, wear_factor=1.3),
        drill_demand(100, 100, 2.22, 0.3, 10, pilot_ratio=0, wear_factor=1.3),
    )
    assert soft.thrust_n == thrust_shaw_oxford(24000, 0.3, 10, wear_factor=1.3)
    assert soft.torque_nmm == torque_shaw_oxford(24000, 0.3, 10, wear_factor=1.3)
    assert tough.thrust_n == pytest.approx(1.3 * thrust_tool_maker(2.22, 0.3, 10))
    assert tough.torque_nmm == pytest.approx(1.3 * torque_tool_maker(2.22, 0.3, 10))
    opening = drill_demand(100, 100, 2.22, 0.3, 10, 0.5, wear_factor=1.3)
    assert opening.thrust_n == thrust_shaw_oxford(100, 0.3, 10, 0.5, 1.3)
    assert opening.torque_nmm == pytest.approx(1.3 * 0.75 * torque_tool_maker(2.22, 0.3, 10))


def test_the_point_of_the_drill_counts() -> None:
    split = drill_demand(
        18000, 18000, 0.1, 0.05, 10, 0, 1, chisel_ratio=0.03, torque_factor=1, thrust_factor=1.1, chisel_thrust_factor=0.001
    )
    assert split.thrust_n == thrust_shaw_oxford(18000, 0.05, 10, thrust_factor=1.1, chisel_thrust_factor=0.001)
    assert split.torque_nmm == torque_shaw_oxford(18000, 0.05, 10, torque_factor=1)
    assert drill_demand(18000, 18000, 0.1, 0.05, 10, 0.1, chisel_ratio=0.03, wear_factor=1.3).thrust_n > 0
    standard = drill_demand(18000, 18000, 0.1, 0.05, 10, 0, 1)
    assert standard == (thrust_shaw_oxford(18000, 0.05, 10), torque_shaw_oxford(18000, 0.05, 10))
    assert drill_demand(18000, 18000, 0.1, 0.05, 10, 0.18, wear_factor=1.3).thrust_n > 0
    for pilot in (0.1, 0.179):
        with pytest.raises(OutOfRange, match=rf"^the pilot is {pilot} of the drill"):
            drill_demand(18000, 18000, 0.1, 0.05, 10, pilot, wear_factor=1.3)


def test_a_factor_of_the_metal_is_needed_even_where_its_model_is_left_out() -> None:
    for factor in (0, -1):
        with pytest.raises(OutOfRange, match=r"^material factor K is "):
            drill_demand(18000, 18000, factor, 0.05, 10, pilot_ratio=0, wear_factor=1.3)


def test_the_plan_is_on_the_safe_side_of_every_other_model() -> None:
    # Mild steel, 10 mm at 0.3 mm/rev. A tool maker's training page measures 2500 N and 15 N m.
    planned = drill_demand(18000, 18000, 2.22, 0.3, 10, pilot_ratio=0, wear_factor=1.3)
    for kc11, mc in ((1500, 0.22), (1990, 0.26)):
        lips = specific_force_drilling(kc11, mc, 0.3, point_angle_deg=118)
        assert planned.thrust_n > thrust_kienzle(lips, 0.3, 10, thrust_share=0.7)
        assert planned.torque_nmm > torque_kienzle(lips, 0.3, 10)
    assert planned.torque_nmm > torque_power_law(0.36, 0.3, 10)
    assert planned.thrust_n > 2500
    assert planned.torque_nmm > 15000


def test_lips_alone_agree_with_the_comparison_of_models() -> None:
    # 10 mm at 0.3 mm/rev: thrust 2473 and 3562 N, torque 8.8 and 12.7 N m (worked from the two constants).
    for kc11, mc, thrust, torque in ((1500, 0.22, 2473, 8800), (1990, 0.26, 3562, 12700)):
        lips = specific_force_drilling(kc11, mc, 0.3, point_angle_deg=118)
        assert thrust_kienzle(lips, 0.3, 10, thrust_share=0.7) == pytest.approx(thrust, rel=1e-3)
        assert torque_kienzle(lips, 0.3, 10) == pytest.approx(torque, rel=5e-3)
        assert thrust_kienzle(lips, 0.3, 10, 0.35) == pytest.approx(thrust / 2, rel=1e-3)


def test_a_flat_bottomed_drill_has_half_its_feed_as_chip() -> None:
    assert specific_force_drilling(1500, 0.22, 0.2, 180) == pytest.approx(1500 * 0.1**-0.22)


@given(k=_factors, feed=st.floats(0.1, 0.5), diameter=_drills, speed=st.floats(50, 2000))
def test_power_of_the_tool_maker_agrees_with_its_torque(k: float, feed: float, diameter: float, speed: float) -> None:
    from_torque = drill_power(torque_tool_maker(k, feed, diameter), speed)
    assert power_tool_maker(k, feed, diameter, speed) == pytest.approx(from_torque, rel=0.03)


@given(torque=st.floats(100, 60000), speed=st.floats(50, 2000))
def test_power_is_torque_times_speed_by_independent_arithmetic(torque: float, speed: float) -> None:
    by_hand = (torque * _UNITS("N*mm") * speed * _UNITS("turn/min")).to("W").magnitude
    assert drill_power(torque, speed) == pytest.approx(by_hand)
    # The handbook's inch rule: horsepower = inch pounds times revolutions over 63025.
    inch_pounds = (torque * _UNITS("N*mm")).to("inch*force_pound").magnitude
    assert (drill_power(torque, speed) * _UNITS("W")).to("hp").magnitude == pytest.approx(
        inch_pounds * speed / 63025, rel=1e-5
    )


@given(kd=_kds, thousandths=st.integers(2, 20), sixteenths=st.integers(2, 28), wear=st.floats(1, 2))
def test_inch_and_metric_drills_ask_the_same(kd: float, thousandths: int, sixteenths: int, wear: float) -> None:
    feed, diameter = thousandths / 1000, sixteenths / 16
    # The handbook's inch equations: T = 2 Kd Ff FT B W + Kd D^2 J W, M = Kd Ff FM A W.
    pounds = 2 * kd * feed**0.8 * diameter**0.8 * 1.355 * wear + kd * diameter**2 * 0.030 * wear
    inch_pounds = kd * feed**0.8 * diameter**1.8 * 1.085 * wear
    metric = (kd, feed * 25.4, diameter * 25.4, 0.0, wear)
    # The SI equations are printed with rounded factors: 1.2 % off, 1.5 % for the chisel edge.
    assert thrust_shaw_oxford(*metric) == pytest.approx((pounds * _UNITS("force_pound")).to("N").magnitude, rel=0.02)
    assert torque_shaw_oxford(*metric) == pytest.approx(
        (inch_pounds * _UNITS("inch*force_pound")).to("N*mm").magnitude, rel=0.02
    )


@given(kd=_kds, feed=_feeds, diameter=_drills, wear=st.floats(1, 2))
def test_feed_and_thrust_are_each_others_way_back(kd: float, feed: float, diameter: float, wear: float) -> None:
    thrust = thrust_shaw_oxford(kd, feed, diameter, wear_factor=wear)
    assert feed_for_thrust(thrust, kd, diameter, wear) == pytest.approx(feed)
    lips = thrust_shaw_oxford(kd, feed, diameter, 0.3, wear)
    assert feed_for_thrust(lips, kd, diameter, wear, thrust_factor=1, chisel_thrust_factor=0) == pytest.approx(feed)
    share = chisel_share_of_thrust(feed, diameter)
    assert lips / thrust == pytest.approx(1 - share)


def test_a_thrust_too_small_or_too_large_for_any_feed_is_refused() -> None:
    least, most = thrust_shaw_oxford(18000, 0.01, 10, wear_factor=1.3), thrust_shaw_oxford(18000, 1.25, 10, wear_factor=1.3)
    assert feed_for_thrust(least, 18000, 10, wear_factor=1.3) == pytest.approx(0.01)
    assert feed_for_thrust(most, 18000, 10, wear_factor=1.3) == pytest.approx(1.25)
    # By the equation: 1.3 * 18000 * (0.05 * f^0.8 * 10^0.8 * 1.355 + 0.007 * 100 * 0.03) N.
    words = r"^the thrust is .* N; a drill of 10 mm asks for 743 N at a feed of 0\.01 mm/rev and 12\d+ N at 1\.25"
    for thrust in (least * 0.999, most * 1.001):
        with pytest.raises(OutOfRange, match=words):
            feed_for_thrust(thrust, 18000, 10, wear_factor=1.3)


@given(kd=_kds, feed=st.floats(0.02, 0.3), thrust=st.floats(2500, 6000))
def test_the_largest_solid_drill_asks_for_just_the_thrust(kd: float, feed: float, thrust: float) -> None:
    diameter = largest_solid_drill(thrust, kd, feed, wear_factor=1.3)
    asked = thrust_shaw_oxford(kd, feed, diameter, wear_factor=1.3)
    assert asked <= thrust
    assert diameter == 50 or asked == pytest.approx(thrust, rel=1e-6)


def test_the_largest_solid_drill_ends_where_the_model_ends() -> None:
    assert largest_solid_drill(1e6, 18000, 0.1, wear_factor=1.3) == 50
    assert largest_solid_drill(thrust_shaw_oxford(18000, 0.1, 50, wear_factor=1.3), 18000, 0.1, wear_factor=1.3) == 50
    # Tabled for a hand of 1.5 kN: 7 mm in steel.
    assert largest_solid_drill(1500, 24000, 0.1, 1) == pytest.approx(7, abs=0.5)
    assert largest_solid_drill(1500, 24000, 0.1, 1, thrust_factor=1, chisel_thrust_factor=0) > largest_solid_drill(
        1500, 24000, 0.1, 1
    )
    least = thrust_shaw_oxford(18000, 0.1, 1.6, wear_factor=1.3)
    assert largest_solid_drill(least, 18000, 0.1, wear_factor=1.3) == pytest.approx(1.6)
    with pytest.raises(OutOfRange, match=r"^the thrust is .* N; a drill of 1\.6 mm already asks for 3\d\d N at this feed$"):
        largest_solid_drill(0.999 * least, 18000, 0.1, wear_factor=1.3)


@given(rake=st.floats(0, 3), pilot=st.floats(0.18, 0.99))
def test_a_lip_that_cuts_freer_outward_leaves_no_more_than_its_share_of_length(rake: float, pilot: float) -> None:
    # Another way: the thrust of each piece of lip falls as a power of its distance from the axis; summed in small pieces.
    places = [0.18 + 0.82 * (place + 0.5) / 2000 for place in range(2000)]
    whole = sum(place**-rake for place in places)
    left = sum(place**-rake for place in places if place > pilot)
    assert left / whole <= lips_left_by_pilot(pilot, chisel_ratio=0.18) + 0.001


def test_a_wide_pilot_lets_a_hand_widen_a_hole_that_it_could_not_drill() -> None:
    # Grey iron, 28 mm after 20 mm, worn: a third of the lips; from solid the same drill is far beyond 2000 N.
    solid = thrust_shaw_oxford(24000, 0.15, 28, 0, 1.3)
    lips = thrust_shaw_oxford(24000, 0.15, 28, 20 / 28, 1.3)
    assert lips_left_by_pilot(20 / 28, chisel_ratio=0.18) * lips < 2000 < lips < solid


def test_chisel_share_agrees_with_tests_in_print() -> None:
    # 50 to 60 % on a 29.5 mm drill (Davim, Modern Machining Technology, p. 145); 40 to 60 % in trade articles.
    assert 0.5 <= chisel_share_of_thrust(0.2, 29.5) <= 0.6
    assert chisel_share_of_thrust(0.2, 10, thrust_factor=1, chisel_thrust_factor=0) == 0


@given(kd=_kds, feed=st.floats(0.01, 1.25), diameter=st.floats(1.6, 50), k=_factors)
def test_everything_is_finite_over_the_whole_range(kd: float, feed: float, diameter: float, k: float) -> None:
    thrust, torque = drill_demand(kd, kd, k, feed, diameter, pilot_ratio=0, wear_factor=1.3)
    assert 0 < thrust < 1e7
    assert 0 < torque < 1e8


def test_a_hand_on_a_coarser_screw_pushes_less_and_a_flat_point_has_no_length() -> None:
    assert hand_thrust(100, 75, 10, 0.25) == pytest.approx(hand_thrust(100, 75, 5, 0.25) / 2)
    assert point_length(10, 180) == pytest.approx(0, abs=1e-12)
    assert point_length(10, 90) == pytest.approx(5)
