"""What must hold for any sound input: which way a result goes, its sign, its symmetry, its way back."""

from math import isfinite, sqrt

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from standard_point import thrust_shaw_oxford, torque_shaw_oxford
from tailtrue.calc import (
    alignment,
    beams,
    boring,
    cut_time,
    cutting,
    drilling,
    joints,
    spindle,
    thermal,
    turning_masses,
    uncertainty,
)
from tailtrue.calc.validity import OutOfRange

_diameters = st.floats(5, 200)
_feeds = st.floats(0.02, 0.5)
_speeds = st.floats(20, 3000)
_growth = st.floats(1.01, 3)


@given(surface=st.floats(5, 400), diameter=_diameters)
def test_speed_and_surface_speed_are_each_others_way_back(surface: float, diameter: float) -> None:
    assert cutting.surface_speed(cutting.spindle_speed(surface, diameter), diameter) == pytest.approx(surface)


@given(surface=st.floats(5, 400), diameter=_diameters, more=_growth)
def test_larger_work_turns_slower(surface: float, diameter: float, more: float) -> None:
    assert cutting.spindle_speed(surface, diameter * more) < cutting.spindle_speed(surface, diameter)


@given(
    kc11=st.floats(150, 3000),
    mc=st.floats(0.1, 0.3),
    feed=st.floats(0.02, 0.8),
    depth=st.floats(0.01, 5),
    more=_growth,
)
def test_thicker_chip_costs_more_force_but_less_per_area(
    kc11: float, mc: float, feed: float, depth: float, more: float
) -> None:
    assert cutting.specific_force(kc11, mc, feed * more) < cutting.specific_force(kc11, mc, feed)
    assert cutting.cutting_force(kc11, mc, depth, feed * more) > cutting.cutting_force(kc11, mc, depth, feed)
    twice = cutting.cutting_force(kc11, mc, 2 * depth, feed)
    assert twice == pytest.approx(2 * cutting.cutting_force(kc11, mc, depth, feed))


@given(force=st.floats(1, 5000), diameter=_diameters, speed=_speeds)
def test_power_is_the_same_from_force_and_from_torque(force: float, diameter: float, speed: float) -> None:
    from_force = cutting.cutting_power(force, cutting.surface_speed(speed, diameter))
    from_torque = drilling.drill_power(joints.skim_torque(force, diameter), speed)
    assert from_force == pytest.approx(from_torque)


@given(diameter=_diameters, feed=_feeds, speed=_speeds)
def test_facing_travels_the_radius(diameter: float, feed: float, speed: float) -> None:
    radius = cutting.cut_time(diameter, feed, speed) / 2
    assert cut_time.facing_pass_time(diameter, 0, 0, 0, feed, speed) == pytest.approx(radius)


@given(depth=st.floats(0.05, 2), feed=_feeds, diameter=_diameters, speed=_speeds, length=st.floats(1, 500))
def test_removal_rate_times_time_is_the_shell_cut_off(
    depth: float, feed: float, diameter: float, speed: float, length: float
) -> None:
    rate = cutting.removal_rate(cutting.surface_speed(speed, diameter), depth, feed)
    volume = rate * cutting.cut_time(length, feed, speed) / 60  # cm3
    assert volume == pytest.approx(joints.bond_area(diameter, length) * depth / 1000)


@given(feed=st.floats(0.02, 0.1), radius=st.floats(0.2, 1.6), more=st.floats(1.01, 1.9))
def test_finer_feed_or_larger_nose_gives_lower_ridges(feed: float, radius: float, more: float) -> None:
    assume(feed <= radius / 4)
    height = cutting.theoretical_peak_height(feed, radius)
    assert cutting.theoretical_peak_height(feed * more, radius) > height
    assert cutting.theoretical_peak_height(feed, radius * more) < height
    # The exact arc is close to the parabola.
    assert radius - sqrt(radius**2 - feed**2 / 4) == pytest.approx(height, rel=0.02)


@given(
    kd=st.floats(5000, 40000),
    feed=st.floats(0.02, 0.4),
    diameter=st.floats(2, 24),
    pilot=st.floats(0.2, 0.6),
    more=st.floats(1.01, 2),
)
def test_drilling_grows_with_metal_feed_diameter_and_wear_and_falls_with_a_pilot(
    kd: float, feed: float, diameter: float, pilot: float, more: float
) -> None:
    for demand in (thrust_shaw_oxford, torque_shaw_oxford):
        solid = demand(kd, feed, diameter)
        assert isfinite(solid)
        assert demand(kd, feed, diameter, pilot) < solid
        assert demand(kd * more, feed, diameter) > solid
        assert demand(kd, feed * more, diameter) > solid
        assert demand(kd, feed, diameter * more) > solid
        assert demand(kd, feed, diameter, wear_factor=more) == pytest.approx(more * solid)
    deeper = torque_shaw_oxford(kd, feed, diameter, min(0.95, pilot * more))
    assert deeper < torque_shaw_oxford(kd, feed, diameter, pilot)


@given(diameter=_diameters, angle=st.floats(60, 175))
def test_a_flatter_point_is_shorter(diameter: float, angle: float) -> None:
    assert drilling.point_length(diameter, angle + 5) < drilling.point_length(diameter, angle)


@given(force=st.floats(10, 200), radius=st.floats(40, 150), pitch=st.floats(2, 10), efficiency=st.floats(0.1, 1))
def test_screw_gives_back_no_more_work_than_the_hand_puts_in(
    force: float, radius: float, pitch: float, efficiency: float
) -> None:
    work_of_hand = 2 * 3.141592653589793 * force * radius
    assert drilling.hand_thrust(force, radius, pitch, efficiency) * pitch <= work_of_hand * (1 + 1e-12)


@given(thrust=st.floats(10, 5000), friction=st.floats(0.03, 0.3), mean=st.floats(9, 40), angle=st.floats(1, 5))
def test_a_slimmer_taper_holds_more(thrust: float, friction: float, mean: float, angle: float) -> None:
    held = drilling.taper_friction_torque(thrust, friction, mean, angle)
    assert drilling.taper_friction_torque(thrust, friction, mean, angle + 1) < held
    assert drilling.taper_friction_torque(2 * thrust, friction, mean, angle) == pytest.approx(2 * held)


@given(force=st.floats(0, 200), span=st.floats(200, 600), share=st.floats(0, 1), diameter=st.floats(15, 40))
def test_symmetric_stations_bend_alike_and_the_middle_bends_most(
    force: float, span: float, share: float, diameter: float
) -> None:
    here = beams.deflection_between_centres(force, span, share * span, 205000, diameter)
    there = beams.deflection_between_centres(force, span, span - share * span, 205000, diameter)
    assert here == pytest.approx(there, abs=1e-15)
    assert 0 <= here <= beams.deflection_midspan(force, span, 205000, diameter) * (1 + 1e-12)


@given(force=st.floats(1, 100), length=st.floats(60, 300), diameter=st.floats(10, 24), more=st.floats(1.01, 1.5))
def test_a_free_end_bends_by_the_cube_of_its_length(force: float, length: float, diameter: float, more: float) -> None:
    bend = beams.deflection_cantilever(force, length, 205000, diameter)
    assert beams.deflection_cantilever(force, length * more, 205000, diameter) == pytest.approx(bend * more**3)
    # Half of a bar on two supports is a bar held in the middle, under half the force.
    assert beams.deflection_midspan(2 * force, 2 * length, 205000, diameter) == pytest.approx(bend)
    assert boring.boring_bar_deflection(force, length, diameter, 205000) == bend


@given(diameter=st.floats(15, 40), span=st.floats(200, 1000), more=st.floats(1.01, 2))
def test_long_bars_sag_more_and_whirl_sooner(diameter: float, span: float, more: float) -> None:
    steel = {"modulus_mpa": 205000.0, "density_kg_m3": 7850.0}
    sag, longer = (beams.self_weight_sag(diameter, length, **steel) for length in (span, span * more))
    assert longer == pytest.approx(sag * more**4)
    pinned, pinned_longer = (beams.whirl_speed_between_centres(diameter, length, **steel) for length in (span, span * more))
    assert pinned_longer == pytest.approx(pinned / more**2)
    # A free end of the same length whirls at 0.356 of the speed between centres.
    assert beams.whirl_speed_cantilever(diameter, span, **steel) == pytest.approx(0.3562 * pinned, rel=1e-3)


@given(diameter=_diameters, length=st.floats(1, 500), density=st.floats(1000, 9000), share=st.floats(0, 1))
def test_ring_and_core_weigh_as_much_as_the_disc(diameter: float, length: float, density: float, share: float) -> None:
    disc = beams.mass_cylinder(diameter, length, density)
    ring = beams.mass_cylinder(diameter, length, density, share * diameter)
    assert 0 <= ring <= disc
    assume(share > 0.01)
    assert ring + beams.mass_cylinder(share * diameter, length, density) == pytest.approx(disc)


@given(mass=st.floats(0.1, 20), eccentricity=st.floats(0.01, 20), share=st.floats(0.05, 1))
def test_at_the_speed_limit_the_force_is_the_chosen_share_of_the_weight(
    mass: float, eccentricity: float, share: float
) -> None:
    speed = turning_masses.unbalance_speed_limit(eccentricity, share)
    assert turning_masses.unbalance_force(mass, eccentricity, speed) == pytest.approx(share * mass * 9.80665)


@given(mass=st.floats(0.1, 20), diameter=_diameters, speed=_speeds)
def test_half_the_speed_is_a_quarter_of_the_energy(mass: float, diameter: float, speed: float) -> None:
    fast, slow = (
        turning_masses.kinetic_energy(mass, turning_masses.rim_speed(diameter, turns)) for turns in (speed, speed / 2)
    )
    assert slow == pytest.approx(fast / 4)
    assert turning_masses.rim_speed(diameter, speed) * 60 == pytest.approx(cutting.surface_speed(speed, diameter))


@given(shear=st.floats(0.1, 30), diameter=st.floats(15, 40), length=st.floats(5, 20), gap=st.floats(0.01, 0.2))
def test_bond_torque_is_force_times_radius(shear: float, diameter: float, length: float, gap: float) -> None:
    force = shear * joints.bond_area(diameter, length)
    assert joints.bond_torque(shear, diameter, length) == pytest.approx(force * diameter / 2)
    # The film is half the diametral clearance thick.
    film = joints.bond_volume(diameter, length, gap) / joints.bond_area(diameter, length)
    assert film == pytest.approx(gap / 2, rel=0.01)


@given(
    nominal=st.floats(1, 40),
    factors=st.lists(st.floats(0.1, 1), max_size=6),
    factor=st.floats(0.1, 1),
    safety=st.floats(1, 8),
)
def test_every_factor_and_safety_only_lowers(nominal: float, factors: list[float], factor: float, safety: float) -> None:
    strength = joints.derated_shear(nominal, factors, safety)
    assert 0 < strength <= nominal * (1 + 1e-12)
    assert joints.derated_shear(nominal, [*factors, factor], safety) == pytest.approx(strength * factor)


@given(difference=st.floats(-2, 2), span=st.floats(150, 600), share=st.floats(0, 0.3))
def test_move_and_difference_are_each_others_way_back(difference: float, span: float, share: float) -> None:
    first, second = share * span, (1 - share) * span
    move = alignment.tailstock_move(difference, span, first, second)
    assert move * difference >= 0
    assert abs(move) >= abs(difference) / 2 - 1e-12  # half the difference is never too much
    assert alignment.diameter_difference(move, span, first, second) == pytest.approx(difference, abs=1e-12)
    assert alignment.tailstock_move(-difference, span, first, second) == -move


@given(difference=st.floats(-0.5, 0.5), span=st.floats(150, 600), share=st.floats(0.02, 0.3))
def test_exact_move_agrees_with_the_rule_for_small_offsets(difference: float, span: float, share: float) -> None:
    stations = (span, share * span, (1 - share) * span)
    exact = alignment.tailstock_move_exact(difference, *stations)
    rule = alignment.tailstock_move(difference, *stations)
    assert exact == pytest.approx(rule, rel=2e-4, abs=1e-15)
    assert abs(exact) <= abs(rule) * (1 + 1e-12) + 1e-15


@given(
    height=st.floats(-0.5, 0.5),
    diameter=st.floats(40, 100),
    span=st.floats(150, 600),
    share=st.floats(0.02, 0.3),
)
def test_height_of_the_tailstock_always_fattens_its_own_end(
    height: float, diameter: float, span: float, share: float
) -> None:
    found = alignment.height_error_difference(height, diameter, span, share * span, (1 - share) * span)
    assert found >= 0


@given(difference=st.floats(0.1, 2), length=st.floats(50, 300), span=st.floats(300, 600))
def test_set_over_is_the_move_that_makes_that_difference(difference: float, length: float, span: float) -> None:
    set_over = alignment.setover_for_taper(40, 40 - difference, length, span)
    assert set_over == pytest.approx(difference / (2 * length) * span)
    assume(set_over <= 0.02 * span)
    assert alignment.diameter_difference(set_over, span, 0, length) == pytest.approx(difference)


@given(least=st.floats(30, 60), use=st.floats(0.05, 0.5), uses=st.integers(0, 200))
def test_uses_are_counted_whole(least: float, use: float, uses: int) -> None:
    assert alignment.uses_left(least + uses * use, least, use) == uses
    assert alignment.uses_left(least + (uses + 0.5) * use, least, use) == uses
    assert alignment.uses_left(least - use, least, use) == 0


_parts = st.floats(0, 0.02)


@given(
    parts=st.lists(_parts, min_size=7, max_size=7),
    readings=st.integers(1, 20),
    which=st.integers(0, 6),
    more=_parts,
)
def test_uncertainty_grows_with_every_part_and_falls_with_readings(
    parts: list[float], readings: int, which: int, more: float
) -> None:
    def of(values: list[float], count: int) -> float:
        return uncertainty.difference_uncertainty(values[0], count, *values[1:])

    now = of(parts, readings)
    worse = [part + more if index == which else part for index, part in enumerate(parts)]
    assert of(worse, readings) >= now
    assert of(parts, readings + 1) <= now
    assert of([2 * part for part in parts], readings) == pytest.approx(2 * now)


@given(difference=st.floats(-0.1, 0.1), unsure=st.floats(0, 0.05), limit=st.floats(0.001, 0.05))
def test_a_verdict_holds_for_every_true_value_it_covers(difference: float, unsure: float, limit: float) -> None:
    said = uncertainty.verdict(difference, unsure, limit)
    assert said == uncertainty.verdict(-difference, unsure, limit)
    farthest, nearest = abs(difference) + unsure, max(0.0, abs(difference) - unsure)
    if said == "inside":
        assert farthest <= limit
    elif said == "outside":
        assert nearest > limit
    else:
        assert nearest <= limit < farthest


@given(length=_diameters, alpha=st.floats(1e-6, 1.2e-4), change=st.floats(-50, 50))
def test_cooling_undoes_warming(length: float, alpha: float, change: float) -> None:
    assert thermal.growth(length, alpha, change) == -thermal.growth(length, alpha, -change)


@given(
    speeds=st.lists(st.floats(20, 3000), min_size=1, max_size=12),
    wanted=st.floats(1, 5000),
    cap=st.floats(1, 5000),
)
def test_chosen_step_is_owned_allowed_and_the_largest_that_fits(speeds: list[float], wanted: float, cap: float) -> None:
    if min(speeds) > cap:
        with pytest.raises(OutOfRange):
            spindle.choose_speed(speeds, wanted, cap)
        return
    chosen = spindle.choose_speed(speeds, wanted, cap)
    assert chosen in speeds
    assert chosen <= cap
    assert chosen <= wanted or chosen == min(speeds)
    assert not any(chosen < other <= min(wanted, cap) for other in speeds)


@given(
    low=st.floats(20, 200), width=st.floats(0, 3000), step=st.sampled_from([1.0, 5.0, 10.0, 50.0]),
    wanted=st.floats(1, 5000), cap=st.floats(1, 5000),
)  # fmt: skip
def test_speed_of_a_variable_drive_is_in_its_range_and_allowed(
    low: float, width: float, step: float, wanted: float, cap: float
) -> None:
    if low > cap:
        with pytest.raises(OutOfRange):
            spindle.choose_from_range(low, low + width, step, wanted, cap)
        return
    chosen = spindle.choose_from_range(low, low + width, step, wanted, cap)
    assert low <= chosen <= min(cap, low + width)
    assert chosen <= wanted or chosen == low
    assert min(wanted, cap, low + width) - chosen <= step or chosen == low
