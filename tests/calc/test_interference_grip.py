"""What an interference fit surely holds and what it may have to bear, from its least to its greatest."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat

from tailtrue.calc.interference import collar_stress, contact_pressure
from tailtrue.calc.interference_grip import axial_grip, grip, grip_torque, pressure_for_torque
from tailtrue.calc.validity import OutOfRange

_FIT: dict[str, float] = {
    "least_interference_mm": 0.014,
    "greatest_interference_mm": 0.048,
    "roughness_loss_mm": 0.010,
    "joint_diameter_mm": 25,
    "length_mm": 35,
    "collar_diameter_mm": 75,
    "end_diameter_mm": 65,
    "bar_modulus_mpa": 207e3,
    "bar_poisson": 0.29,
    "collar_modulus_mpa": 69e3,
    "collar_poisson": 0.33,
    "low_friction": 0.1,
    "high_friction": 0.2,
    "elastic_limit_mpa": 193,
}


def _pressure(interference_mm: float, outside_mm: float) -> float:
    return contact_pressure(
        diametral_interference_mm=interference_mm,
        joint_diameter_mm=25,
        collar_diameter_mm=outside_mm,
        bar_modulus_mpa=207e3,
        bar_poisson=0.29,
        collar_modulus_mpa=69e3,
        collar_poisson=0.33,
    )


def test_least_grip_is_that_of_the_worn_collar_with_all_losses() -> None:
    found = grip(**_FIT)
    least = _pressure(0.004, 65)
    assert found.least_pressure_mpa == pytest.approx(least)
    assert found.least_axial_n == pytest.approx(axial_grip(least, 0.1, 25, 35))
    assert found.least_torque_nmm == pytest.approx(grip_torque(least, 0.1, 25, 35))


def test_greatest_stress_and_press_force_know_no_loss() -> None:
    found = grip(**_FIT)
    new, worn = _pressure(0.048, 75), _pressure(0.048, 65)
    assert found.greatest_pressure_mpa == pytest.approx(new)
    assert found.greatest_hoop_mpa == pytest.approx(collar_stress(worn, 25, 65).hoop_mpa)
    assert found.greatest_von_mises_mpa == pytest.approx(collar_stress(new, 25, 75).von_mises_mpa)
    assert found.greatest_press_force_n == pytest.approx(axial_grip(new, 0.2, 25, 35))
    assert found.greatest_growth_mm == pytest.approx(0.0198, rel=0.005)


def test_stress_is_taken_from_the_worse_of_the_new_and_the_worn_collar() -> None:
    # A wall worn to a shell presses less, pulls harder round the bore, and comes to less together.
    found = grip(**_FIT | {"collar_diameter_mm": 60, "end_diameter_mm": 30})
    assert found.greatest_hoop_mpa == pytest.approx(collar_stress(_pressure(0.048, 30), 25, 30).hoop_mpa)
    assert found.greatest_von_mises_mpa == pytest.approx(
        max(collar_stress(_pressure(0.048, size), 25, size).von_mises_mpa for size in (30, 60))
    )
    # In a hard, stiff collar on a soft bar it is the other way round for the equivalent stress.
    soft_bar = _FIT | {"bar_modulus_mpa": 20e3, "collar_diameter_mm": 75, "end_diameter_mm": 28, "elastic_limit_mpa": 500}
    pressures = {
        size: contact_pressure(
            diametral_interference_mm=0.048, joint_diameter_mm=25, collar_diameter_mm=size, bar_modulus_mpa=20e3,
            bar_poisson=0.29, collar_modulus_mpa=69e3, collar_poisson=0.33,
        )
        for size in (28, 75)
    }  # fmt: skip
    worn, new = (collar_stress(pressures[size], 25, size).von_mises_mpa for size in (28, 75))
    assert worn > new
    assert grip(**soft_bar).greatest_von_mises_mpa == pytest.approx(worn)


def test_a_fit_that_may_be_loose_has_no_grip() -> None:
    for least in (-0.006, 0.0, 0.010):
        found = grip(**_FIT | {"least_interference_mm": least})
        assert found[:3] == (0, 0, 0)
        assert found.greatest_press_force_n > 0
    assert grip(**_FIT | {"least_interference_mm": 0.0101}).least_torque_nmm > 0
    assert grip(**_FIT | {"least_interference_mm": -0.02, "greatest_interference_mm": -0.01}) == (0,) * 8


@pytest.mark.parametrize(
    ("spoilt", "message"),
    [
        ({"least_interference_mm": math.nan}, "least interference on diameter is nan mm"),
        ({"least_interference_mm": -math.inf}, "least interference on diameter is -inf mm"),
        ({"greatest_interference_mm": 0.0139}, "greatest interference on diameter is 0.0139 mm"),
        ({"roughness_loss_mm": -0.001}, "loss of interference from roughness"),
        ({"end_diameter_mm": 75.1}, "outside diameter of the collar is 75 mm; the formula holds from 75.1 mm"),
        ({"high_friction": 0.099}, "high coefficient of friction is 0.099"),
        ({"elastic_limit_mpa": 0}, "stress that the collar may reach is 0 MPa"),
        ({"elastic_limit_mpa": -1}, "stress that the collar may reach is -1 MPa"),
        (
            {"elastic_limit_mpa": 142},
            "the bore of the collar may come to a stress of 142.4 MPa, .* may bear 142 MPa: a larger bore",
        ),
    ],
)
def test_fits_that_cannot_be_or_would_yield_are_refused(spoilt: dict[str, float], message: str) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        grip(**_FIT | spoilt)


def test_bounds_of_a_fit_are_taken() -> None:
    stress = grip(**_FIT).greatest_von_mises_mpa
    assert grip(**_FIT | {"elastic_limit_mpa": stress}).greatest_von_mises_mpa == stress
    same = {"least_interference_mm": 0.02, "greatest_interference_mm": 0.02, "roughness_loss_mm": 0.0}
    found = grip(**_FIT | same | {"end_diameter_mm": 75, "high_friction": 0.1, "elastic_limit_mpa": 59.4})
    assert found.least_pressure_mpa == found.greatest_pressure_mpa == pytest.approx(30.39, rel=1e-3)
    assert found.least_axial_n == found.greatest_press_force_n == pytest.approx(8354, rel=1e-3)


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ((-1, 0.1, 25, 35), "pressure is -1 MPa"),
        ((1, 0, 25, 35), "coefficient of friction is 0;"),
        ((1, -0.1, 25, 35), "coefficient of friction is -0.1"),
        ((1, 1.01, 25, 35), "coefficient of friction is 1.01"),
        ((1, 0.1, 0, 35), "diameter of the joint is 0 mm"),
        ((1, 0.1, -25, 35), "diameter of the joint is -25 mm"),
        ((1, 0.1, 25, 0), "length of the joint is 0 mm"),
        ((1, 0.1, 25, -35), "length of the joint is -35 mm"),
    ],
)
def test_grip_refuses_what_cannot_be(arguments: tuple[float, float, float, float], message: str) -> None:
    for formula in (axial_grip, grip_torque):
        with pytest.raises(OutOfRange, match=f"^{message}"):
            formula(*arguments)
    if arguments[0] == 1:
        with pytest.raises(OutOfRange, match=f"^{message}"):
            pressure_for_torque(1000, *arguments[1:])


def test_a_torque_asked_for_may_be_none_but_not_less() -> None:
    assert pressure_for_torque(0, 0.1, 25, 35) == 0
    assert axial_grip(0, 1, 25, 35) == 0
    with pytest.raises(OutOfRange, match=r"^torque is -1 N mm"):
        pressure_for_torque(-1, 0.1, 25, 35)


_interferences = st.floats(-0.02, 0.05)


@given(
    one=_interferences, other=_interferences, loss=st.floats(0, 0.02), worn=st.floats(30, 75), friction=st.floats(0.05, 0.2)
)
def test_least_is_never_above_greatest(one: float, other: float, loss: float, worn: float, friction: float) -> None:
    low, high = sorted((one, other))
    found = grip(
        **_FIT
        | {
            "least_interference_mm": low,
            "greatest_interference_mm": high,
            "roughness_loss_mm": loss,
            "end_diameter_mm": worn,
            "low_friction": friction,
        }
    )
    assert found.least_pressure_mpa <= found.greatest_pressure_mpa
    assert found.least_axial_n <= found.greatest_press_force_n
    wider = grip(**_FIT | {"least_interference_mm": low - 0.001, "greatest_interference_mm": high, "end_diameter_mm": worn})
    assert wider.least_torque_nmm <= grip(
        **_FIT | {"least_interference_mm": low, "greatest_interference_mm": high, "end_diameter_mm": worn}
    ).least_torque_nmm  # fmt: skip


@given(pressure=st.floats(0.1, 150), friction=st.floats(0.05, 0.3), joint=st.floats(10, 60), length=st.floats(5, 80))
def test_grip_rises_with_length_and_finds_its_way_back(
    pressure: float, friction: float, joint: float, length: float
) -> None:
    torque = grip_torque(pressure, friction, joint, length)
    assert grip_torque(pressure, friction, joint, 2 * length) == pytest.approx(2 * torque)
    assert pressure_for_torque(torque, friction, joint, length) == pytest.approx(pressure)
    assert axial_grip(pressure, friction, joint, length) * joint / 2 == pytest.approx(torque)


def test_spread_of_the_grip_is_that_of_the_measured_diameters() -> None:
    """Bar and bore each measured to 0.002 mm: pressure is linear in interference, so both ends stand off by its spread."""
    interference = ufloat(25.030, 0.002) - ufloat(25.000, 0.002)
    slope = _pressure(0.030, 75) / 0.030
    pressure = slope * interference
    low, high = (interference.n + sign * interference.s for sign in (-1, 1))
    found = grip(
        **_FIT
        | {
            "least_interference_mm": low,
            "greatest_interference_mm": high,
            "roughness_loss_mm": 0,
            "end_diameter_mm": 75,
        }
    )
    assert found.least_pressure_mpa == pytest.approx(pressure.n - pressure.s)
    assert found.greatest_pressure_mpa == pytest.approx(pressure.n + pressure.s)
