"""What a bond carries along and round the bar, and any joint against the skim and the catch."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.calc import joints
from tailtrue.calc.validity import OutOfRange

_POUND_FORCE_N = 4.4482216152605
_INCH_MM = 25.4


def test_a_bond_may_be_one_and_a_half_diameters_long_and_no_more() -> None:
    assert joints.bond_force(1, 20, 30) == pytest.approx(1884.956, rel=1e-6)
    assert joints.bond_torque(1, 20, 30) == pytest.approx(18849.56, rel=1e-6)
    for formula in (joints.bond_force, joints.bond_torque):
        with pytest.raises(OutOfRange, match=r"^length of the joint in diameters is 1\.505; .* to 1\.5$"):
            formula(1, 20, 30.1)


def test_a_longest_bond_is_found_and_a_longer_one_refused() -> None:
    most = joints.bond_torque(1, 20, 30)
    assert joints.bond_length(most * 0.9999, 1, 20) == pytest.approx(29.997)
    with pytest.raises(OutOfRange, match=r"^length of the joint in diameters is 1\.503"):
        joints.bond_length(most * 1.002, 1, 20)


def test_sizes_and_strength_of_a_bond_are_above_nought() -> None:
    for wrong in (0, -1):
        for formula in (joints.bond_area, lambda diameter, length: joints.bond_volume(diameter, length, 0.1)):
            with pytest.raises(OutOfRange, match=rf"^diameter of the joint is {wrong} mm; it must be more"):
                formula(wrong, 35)
            with pytest.raises(OutOfRange, match=rf"^length of the joint is {wrong} mm; it must be more"):
                formula(25, wrong)
        for formula in (joints.bond_torque, joints.bond_force):
            with pytest.raises(OutOfRange, match=rf"^shear strength is {wrong} MPa; it must be more"):
                formula(wrong, 25, 35)
        with pytest.raises(OutOfRange, match=rf"^shear strength of the data sheet is {wrong} MPa; it must be more"):
            joints.derated_shear(wrong, [0.5], 3)
        with pytest.raises(OutOfRange, match=rf"^derating factor is {wrong}; it must be more"):
            joints.derated_shear(20, [0.5, wrong], 3)


def test_a_derating_factor_may_be_one_and_the_safety_too() -> None:
    assert joints.derated_shear(20, [1, 0.5], 1) == 10
    with pytest.raises(OutOfRange, match=r"^derating factor is 1\.005"):
        joints.derated_shear(20, [1.005], 1)
    with pytest.raises(OutOfRange, match=r"^safety factor is 0\.995"):
        joints.derated_shear(20, [1], 0.995)


def test_a_metal_that_slows_the_cure_makes_the_wait_longer_never_shorter() -> None:
    assert joints.slowed_cure(3600, 1) == 3600
    assert joints.slowed_cure(3600, 2) == 7200
    for wrong in (0, -1):
        with pytest.raises(OutOfRange, match=rf"^time to full cure is {wrong} s; it must be more"):
            joints.slowed_cure(wrong, 2)
    with pytest.raises(OutOfRange, match=r"^times that the metal slows the cure is 0\.995"):
        joints.slowed_cure(3600, 0.995)


def test_compound_fills_the_ring_between_bore_and_bar() -> None:
    assert joints.bond_volume(2, 1, 2) == pytest.approx(3.141592653589793 / 4 * (4**2 - 2**2))
    assert joints.bond_volume(25, 35, 0) == 0
    with pytest.raises(OutOfRange, match=r"^diametral clearance is -0\.001 mm"):
        joints.bond_volume(25, 35, -0.001)


def test_a_cut_without_force_has_no_torque() -> None:
    assert joints.skim_torque(0, 75) == 0
    with pytest.raises(OutOfRange, match=r"^cutting force is -0\.001 N"):
        joints.skim_torque(-0.001, 75)


@pytest.mark.parametrize(
    ("spoilt", "name"),
    [
        ({"torque_nmm": 0}, "torque"),
        ({"torque_nmm": -1}, "torque"),
        ({"shear_mpa": 0}, "shear strength"),
        ({"diameter_mm": 0}, "diameter of the joint"),
        ({"shear_mpa": -1, "diameter_mm": 25}, "shear strength"),
        ({"diameter_mm": -25}, "diameter of the joint"),
    ],
)
def test_bond_length_refuses_nothing_and_less(spoilt: dict[str, float], name: str) -> None:
    with pytest.raises(OutOfRange, match=rf"^{name} is "):
        joints.bond_length(**{"torque_nmm": 10000, "shear_mpa": 1, "diameter_mm": 25} | spoilt)


def test_torque_of_a_joint_refuses_a_negative_force_and_takes_none() -> None:
    assert joints.joint_torque(0, 25) == 0
    with pytest.raises(OutOfRange, match=r"^holding force is -1 N"):
        joints.joint_torque(-1, 25)
    for diameter in (0, -25):
        with pytest.raises(OutOfRange, match=r"^diameter of the joint is "):
            joints.joint_torque(1, diameter)


_SOUND = {"carried_torque_nmm": 1000.0, "cutting_force_n": 10.0, "catch_force_n": 100.0, "diameter_mm": 50.0}


@pytest.mark.parametrize(
    ("spoilt", "message"),
    [
        ({"carried_torque_nmm": -0.001}, r"^torque that the joint carries is -0\.001 N mm"),
        ({"cutting_force_n": 0}, r"^cutting force is 0 N; it must be more"),
        ({"cutting_force_n": -1}, r"^cutting force is -1 N; it must be more"),
        ({"catch_force_n": 9.99}, r"^cutting force of a catch is 9\.99 N; the formula holds from 10 N upward"),
        ({"diameter_mm": 0}, r"^diameter is 0 mm"),
    ],
)
def test_safety_refuses_what_cannot_be(spoilt: dict[str, float], message: str) -> None:
    with pytest.raises(OutOfRange, match=message):
        joints.joint_safety(**_SOUND | spoilt)


def test_safety_names_skim_and_catch() -> None:
    found = joints.joint_safety(**_SOUND)
    assert (found.skim, found.catch) == pytest.approx((4, 0.4))
    assert joints.joint_safety(**_SOUND | {"catch_force_n": 10}).catch == pytest.approx(4)


def test_a_joint_that_carries_nothing_has_no_safety() -> None:
    assert joints.joint_safety(**_SOUND | {"carried_torque_nmm": 0}) == (0, 0)


@given(shear=st.floats(0.1, 30), diameter=st.floats(10, 60), share=st.floats(0.1, 1.4))
def test_bond_length_and_torque_are_each_others_way_back(shear: float, diameter: float, share: float) -> None:
    torque = joints.bond_torque(shear, diameter, share * diameter)
    assert joints.bond_length(torque, shear, diameter) == pytest.approx(share * diameter)
    assert joints.joint_torque(joints.bond_force(shear, diameter, share * diameter), diameter) == pytest.approx(torque)


@given(
    torque=st.floats(100, 1e6),
    force=st.floats(1, 200),
    more=st.floats(1, 50),
    diameter=st.floats(20, 100),
    by=st.floats(1.01, 3),
)
def test_a_catch_is_never_safer_than_the_skim(torque: float, force: float, more: float, diameter: float, by: float) -> None:
    found = joints.joint_safety(torque, force, force * more, diameter)
    assert found.catch <= found.skim * (1 + 1e-12)
    stronger = joints.joint_safety(torque * by, force, force * more, diameter)
    assert stronger == pytest.approx((found.skim * by, found.catch * by))
    assert joints.joint_safety(torque, force, force * more, diameter * by).catch < found.catch


def test_a_bond_in_inches_is_a_bond_in_millimetres() -> None:
    # 1 in bar, 1.5 in collar, 1450 psi: 1450 * pi * 1 * 1.5 pounds, half an inch off the axis.
    pounds = 1450 * 3.141592653589793 * 1.5
    mpa = 1450 * _POUND_FORCE_N / _INCH_MM**2
    assert joints.bond_force(mpa, _INCH_MM, 1.5 * _INCH_MM) == pytest.approx(pounds * _POUND_FORCE_N)
    assert joints.bond_torque(mpa, _INCH_MM, 1.5 * _INCH_MM) == pytest.approx(pounds / 2 * _POUND_FORCE_N * _INCH_MM)


def test_safety_of_a_bond_with_every_loss_still_stands_a_catch() -> None:
    """A 25 mm bar and a 75 by 35 mm collar of aluminium, wiped clean, 0.15 mm clearance; the losses are memory."""
    strength = joints.derated_shear(20, [0.6, 0.5, 0.6, 0.9, 0.9], 3)
    found: Any = joints.joint_safety(joints.bond_torque(strength, 25, 35), 31.12, 3 * 209.4, 75)
    assert found.skim == pytest.approx(28.6, rel=0.005)
    assert found.catch == pytest.approx(1.4, rel=0.02)
