"""The point of a centre in its hole, against the mechanics of a cone."""

import math
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from spoilt import each_is_refused, spoilt
from tailtrue.calc.centre_points import dead_centre_heat, seat_area, seat_load, separating_force
from tailtrue.calc.validity import OutOfRange

_GOOD: dict[Callable[..., Any], dict[str, Any]] = {
    separating_force: {"radial_force_n": 64.7, "point_angle_deg": 60},
    seat_area: {"seat_diameter_mm": 6.7, "pilot_diameter_mm": 3.15, "point_angle_deg": 60},
    seat_load: {"area_mm2": 15, "pressure_mpa": 5},
    dead_centre_heat: {
        "axial_force_n": 300,
        "friction": 0.1,
        "mean_diameter_mm": 5,
        "point_angle_deg": 60,
        "spindle_speed_per_min": 300,
    },
}


@pytest.mark.parametrize(("formula", "calls"), spoilt(_GOOD))
def test_what_is_no_number_is_refused(formula: Callable[..., Any], calls: list[dict[str, Any]]) -> None:
    each_is_refused(formula, calls)


@pytest.mark.parametrize(
    ("formula", "change", "expected"),
    [
        (separating_force, {"radial_force_n": 0}, 0),
        (separating_force, {"point_angle_deg": 30}, 17.336),
        (separating_force, {"point_angle_deg": 120}, 112.064),
        (seat_area, {"point_angle_deg": 30}, 32.6252),
        (seat_area, {"point_angle_deg": 120}, 5.0471),
        (dead_centre_heat, {"axial_force_n": 0}, 0),
        (dead_centre_heat, {"spindle_speed_per_min": 0}, 0),
        (dead_centre_heat, {"friction": 1}, 47.124),
    ],
)
def test_bounds_themselves_are_allowed(formula: Callable[..., float], change: dict[str, Any], expected: float) -> None:
    assert formula(**(_GOOD[formula] | change)) == pytest.approx(expected, rel=1e-4)


@pytest.mark.parametrize(
    ("formula", "change", "says"),
    [
        (separating_force, {"radial_force_n": -1}, "load on the centre is -1 N"),
        (separating_force, {"point_angle_deg": 29.9}, "angle of the point is 29.9 degrees"),
        (separating_force, {"point_angle_deg": 120.5}, "angle of the point is 120.5 degrees"),
        (seat_area, {"pilot_diameter_mm": 0}, "small diameter of the cone is 0 mm"),
        (seat_area, {"seat_diameter_mm": 3.15}, "the cone goes from 3.15 mm to 3.15 mm"),
        (seat_area, {"point_angle_deg": 29.9}, "angle of the point is 29.9 degrees"),
        (seat_load, {"area_mm2": 0}, "area of the seat is 0 mm2"),
        (seat_load, {"pressure_mpa": 0}, "pressure is 0 MPa"),
        (dead_centre_heat, {"axial_force_n": -1}, "thrust of the tailstock is -1 N"),
        (dead_centre_heat, {"friction": 0}, "friction is 0"),
        (dead_centre_heat, {"friction": 1.004}, "friction is 1.004"),
        (dead_centre_heat, {"mean_diameter_mm": 0}, "mean diameter is 0 mm"),
        (dead_centre_heat, {"spindle_speed_per_min": -1}, "spindle speed is -1 1/min"),
    ],
)
def test_beyond_its_bounds_it_refuses_and_says_what_was_read(
    formula: Callable[..., Any], change: dict[str, Any], says: str
) -> None:
    with pytest.raises(OutOfRange) as refused:
        formula(**(_GOOD[formula] | change))
    assert says in str(refused.value)


@given(pilot=st.floats(0.5, 5), wall=st.floats(0.1, 10), angle=st.floats(30, 120))
def test_seat_is_the_cone_seen_from_the_side(pilot: float, wall: float, angle: float) -> None:
    """Its diameter grows with depth from the pilot: the strip at each depth is as wide as the cone there."""
    depth = wall / 2 / math.tan(math.radians(angle / 2))
    seen, _ = quad(lambda z: pilot + 2 * z * math.tan(math.radians(angle / 2)), 0, depth)
    assert seat_area(pilot + wall, pilot, angle) == pytest.approx(seen, rel=1e-6)


@given(load=st.floats(1, 500), angle=st.floats(30, 120), more=st.floats(1.01, 2))
def test_blunter_points_part_sooner_and_faster_ones_run_hotter(load: float, angle: float, more: float) -> None:
    assert separating_force(load, angle) == pytest.approx(load * math.tan(math.radians(angle) / 2))
    assert dead_centre_heat(load, 0.1, 5, angle, 300 * more) == pytest.approx(
        more * dead_centre_heat(load, 0.1, 5, angle, 300)
    )
    # Heat is friction torque times angular speed.
    torque = 0.1 * load / math.sin(math.radians(angle) / 2) * 0.0025
    assert dead_centre_heat(load, 0.1, 5, angle, 300) == pytest.approx(torque * 10 * math.pi)
