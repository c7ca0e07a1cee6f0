"""Pins across a bar and along its joint: what gives way first, what is left of the bar, how deep they lie."""

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from tailtrue.calc import pins
from tailtrue.calc.validity import OutOfRange

_CROSS: dict[str, float] = {
    "shear_force_n": 11240, "pin_diameter_mm": 4, "pin_length_mm": 50, "joint_diameter_mm": 25,
    "collar_bearing_mpa": 50, "bar_bearing_mpa": 100, "safety": 1,
}  # fmt: skip
_AXIAL: dict[str, Any] = {
    "count": 1, "pin_diameter_mm": 6.0, "pin_length_mm": 12.0, "joint_diameter_mm": 25.0, "shear_mpa": 60.0,
    "bearing_mpa": 50.0, "safety": 1.0,
}  # fmt: skip


def test_pressure_of_a_pin_adds_up_along_its_length() -> None:
    found = pins.cross_pin(**_CROSS)
    collar, _ = quad(lambda radius: 2 * 50 * 4 * radius, 12.5, 25)
    assert found.collar_nmm == pytest.approx(collar)
    bar, _ = quad(lambda radius: 2 * 100 * (radius / 12.5) * 4 * radius, 0, 12.5)
    assert found.bar_nmm == pytest.approx(bar)


def test_section_beside_a_hole_is_near_the_integral_over_what_is_left() -> None:
    """The share counts the hole as a flat slot, so it lies a little below what is truly left."""
    hole, bar = 6.0, 25.0
    solid, _ = quad(lambda y: y**2 * 2 * math.sqrt((bar / 2) ** 2 - y**2), -bar / 2, bar / 2)
    # The hole runs along y, the direction in which the bar bends: a strip of its width is missing all the way.
    gone, _ = quad(lambda x: 2 * math.sqrt((bar / 2) ** 2 - x**2) ** 3 / 3, -hole / 2, hole / 2)
    share = pins.bar_section_left(hole, bar)
    assert share <= 1 - gone / solid < share + 0.02


@pytest.mark.parametrize(
    ("spoilt", "least"),
    [
        ({}, "bar_nmm"),
        ({"bar_bearing_mpa": 500}, "collar_nmm"),
        ({"bar_bearing_mpa": 500, "collar_bearing_mpa": 100}, "pin_nmm"),
    ],
)
def test_the_weakest_part_of_a_cross_pin_governs(spoilt: dict[str, float], least: str) -> None:
    found = pins.cross_pin(**_CROSS | spoilt | {"safety": 2.5})
    assert found.carried_nmm == pytest.approx(getattr(found, least) / 2.5)
    assert found.carried_nmm * 2.5 == pytest.approx(min(found[:3]))


def test_a_soft_pin_along_the_joint_shears_before_it_crushes() -> None:
    found = pins.axial_pins(**_AXIAL | {"shear_mpa": 20.0, "safety": 1.5})
    assert found == pytest.approx((18000, 22500, 12000))


@pytest.mark.parametrize(
    ("spoilt", "message"),
    [
        ({"shear_force_n": 0}, "force that shears the pin is 0 N"),
        ({"shear_force_n": -1}, "force that shears the pin is -1 N"),
        ({"pin_diameter_mm": 0}, "diameter of the pin is 0 mm"),
        ({"pin_diameter_mm": -4}, "diameter of the pin is -4 mm"),
        ({"pin_diameter_mm": 8.4}, "pin as a share of the bar is 0.336"),
        ({"joint_diameter_mm": 0}, "diameter of the bar is 0 mm"),
        ({"joint_diameter_mm": -25}, "diameter of the bar is -25 mm"),
        ({"pin_length_mm": 25}, "length of the pin over the diameter of the bar is 0 mm"),
        ({"pin_length_mm": 24}, "length of the pin over the diameter of the bar is -1 mm"),
        ({"pin_length_mm": math.inf}, "length of the pin is inf mm"),
        ({"collar_bearing_mpa": 0}, "pressure that the collar stands is 0 MPa"),
        ({"collar_bearing_mpa": -1}, "pressure that the collar stands is -1 MPa"),
        ({"bar_bearing_mpa": 0}, "pressure that the bar stands is 0 MPa"),
        ({"bar_bearing_mpa": -1}, "pressure that the bar stands is -1 MPa"),
        ({"safety": 0.99}, "safety factor is 0.99"),
    ],
)
def test_a_cross_pin_refuses_what_cannot_be(spoilt: dict[str, float], message: str) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        pins.cross_pin(**_CROSS | spoilt)


@pytest.mark.parametrize(
    ("spoilt", "message"),
    [
        ({"count": 0}, "number of pins is 0"),
        ({"count": 3}, "number of pins is 3"),
        ({"pin_diameter_mm": 0}, "diameter of the pin is 0 mm"),
        ({"pin_diameter_mm": 8.4}, "pin as a share of the bar is 0.336"),
        ({"joint_diameter_mm": 0}, "diameter of the bar is 0 mm"),
        ({"pin_length_mm": 0}, "length of the pin is 0 mm"),
        ({"pin_length_mm": -12}, "length of the pin is -12 mm"),
        ({"shear_mpa": 0}, "shear that the pin stands is 0 MPa"),
        ({"shear_mpa": -1}, "shear that the pin stands is -1 MPa"),
        ({"bearing_mpa": 0}, "pressure that the softer metal stands is 0 MPa"),
        ({"bearing_mpa": -1}, "pressure that the softer metal stands is -1 MPa"),
        ({"safety": 0.99}, "safety factor is 0.99"),
    ],
)
def test_pins_along_the_joint_refuse_what_cannot_be(spoilt: dict[str, Any], message: str) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        pins.axial_pins(**_AXIAL | spoilt)


def test_a_pin_may_be_a_third_of_the_bar() -> None:
    assert pins.bar_section_left(8, 24) == pytest.approx(1 - 16 / (9 * math.pi))
    with pytest.raises(OutOfRange, match=r"^pin as a share of the bar is 0\.335"):
        pins.bar_section_left(8.04, 24)


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ((0, 4), "shear strength of the pin is 0 MPa"),
        ((-1, 4), "shear strength of the pin is -1 MPa"),
        ((1050, 0), "diameter of the pin is 0 mm"),
        ((1050, -4), "diameter of the pin is -4 mm"),
    ],
)
def test_shear_of_a_pin_refuses_what_cannot_be(arguments: tuple[float, float], message: str) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        pins.pin_shear_force(*arguments)


def test_a_hard_pin_stays_below_the_surface_or_is_refused() -> None:
    # 40 and 9 make 41.
    assert pins.cross_pin_depth(43, 40, 9, 1) == pytest.approx(1)
    with pytest.raises(OutOfRange, match=r"^the pin would lie 0\.995 mm below .* at least 1 mm below it: a shorter pin or"):
        pins.cross_pin_depth(42.99, 40, 9, 1)
    assert pins.axial_pin_depth(33, 25, 6, 1) == 1
    with pytest.raises(OutOfRange, match=r"^the pin would lie 0\.995 mm below .* at least 1 mm below it: a thinner pin or"):
        pins.axial_pin_depth(32.99, 25, 6, 1)
    with pytest.raises(OutOfRange, match=r"^the pin would lie 0\.5 mm above .* a thinner pin or"):
        pins.axial_pin_depth(30, 25, 6, 1)
    with pytest.raises(OutOfRange, match=r"^the pin would lie 0 mm below"):
        pins.axial_pin_depth(31, 25, 6, 1)
    with pytest.raises(OutOfRange, match=r"^the pin would lie 1 mm below"):
        pins.axial_pin_depth(33 - 2e-7, 25, 6, 1)


def test_depth_that_rounding_alone_takes_away_is_not_refused() -> None:
    assert pins.axial_pin_depth(31.4, 25.1, 6.1, 0.1) == pytest.approx(0.1)
    assert (31.4 - 25.1 - 6.1) / 2 < 0.1


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ((0, 40, 9, 1), "last diameter of the collar is 0 mm"),
        ((-43, 40, 9, 1), "last diameter of the collar is -43 mm"),
        ((43, 0, 9, 1), "length of the pin is 0 mm"),
        ((43, -40, 9, 1), "length of the pin is -40 mm"),
        ((43, 40, 0, 1), "diameter of the pin is 0 mm"),
        ((43, 40, -9, 1), "diameter of the pin is -9 mm"),
        ((43, 40, 9, 0), "least depth of the pin below the surface is 0 mm"),
        ((43, 40, 9, -1), "least depth of the pin below the surface is -1 mm"),
    ],
)
def test_depth_of_a_cross_pin_refuses_what_cannot_be(arguments: tuple[float, float, float, float], message: str) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        pins.cross_pin_depth(*arguments)


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ((0, 25, 6, 1), "last diameter of the collar is 0 mm"),
        ((-65, 25, 6, 1), "last diameter of the collar is -65 mm"),
        ((65, 25, 0, 1), "diameter of the pin is 0 mm"),
        ((65, 0, 6, 1), "diameter of the bar is 0 mm"),
        ((65, 25, 8.4, 1), "pin as a share of the bar is 0.336"),
        ((65, 25, 6, 0), "least depth of the pin below the surface is 0 mm"),
    ],
)
def test_depth_of_a_pin_along_the_joint_refuses_what_cannot_be(
    arguments: tuple[float, float, float, float], message: str
) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        pins.axial_pin_depth(*arguments)


@given(length=st.floats(26, 70), pin=st.floats(2, 8), more=st.floats(1.01, 2), safety=st.floats(1, 5))
def test_a_longer_pin_carries_no_less_and_lies_less_deep(length: float, pin: float, more: float, safety: float) -> None:
    short, long = (
        pins.cross_pin(**_CROSS | {"pin_length_mm": way, "pin_diameter_mm": pin, "safety": safety})
        for way in (length, length * more)
    )
    assert long.collar_nmm > short.collar_nmm
    assert long.carried_nmm >= short.carried_nmm
    assert pins.cross_pin_depth(200, length * more, pin, 1) < pins.cross_pin_depth(200, length, pin, 1)
    # The corner of a pin comes nearer to the surface than its middle.
    assert pins.cross_pin_depth(200, length, pin, 1) < (200 - length) / 2


@given(length=st.floats(5, 40), pin=st.floats(2, 8))
def test_capacity_along_the_joint_grows_with_length_and_number(length: float, pin: float) -> None:
    one = pins.axial_pins(**_AXIAL | {"pin_length_mm": length, "pin_diameter_mm": pin})
    two = pins.axial_pins(**_AXIAL | {"pin_length_mm": length, "pin_diameter_mm": pin, "count": 2})
    twice = pins.axial_pins(**_AXIAL | {"pin_length_mm": 2 * length, "pin_diameter_mm": pin})
    assert two == pytest.approx(twice)
    assert two.carried_nmm == pytest.approx(2 * one.carried_nmm)


def test_a_pin_in_inches_is_a_pin_in_millimetres() -> None:
    # 1/8 in pin of 60000 psi on a 1 in bar: 2 * 60000 * pi / 4 / 64 pounds.
    pound, inch = 4.4482216152605, 25.4
    pounds = 2 * 60000 * math.pi / 4 / 64
    assert pins.pin_shear_force(60000 * pound / inch**2, inch / 8) == pytest.approx(pounds * pound)
