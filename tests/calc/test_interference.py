"""Pressure and stress of a collar with interference: against the equation of a ring solved step by step, and at its bounds."""

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from tailtrue.calc.interference import (
    collar_growth,
    collar_stress,
    contact_pressure,
    effective_interference,
    interference_for_pressure,
)
from tailtrue.calc.validity import OutOfRange

_INCH_MM = 25.4
_PSI_MPA = 4.4482216152605 / _INCH_MM**2
_METALS: dict[str, float] = {
    "bar_modulus_mpa": 207e3, "bar_poisson": 0.29, "collar_modulus_mpa": 69e3, "collar_poisson": 0.33,
}  # fmt: skip
_SIZES: dict[str, float] = {"joint_diameter_mm": 25, "collar_diameter_mm": 75}
_FIT: dict[str, float] = {"diametral_interference_mm": 0.020, **_SIZES, **_METALS}


def _ring(modulus: float, poisson: float, start: float, end: float, movement: float, slope: float) -> Any:
    """Movement, radial and hoop stress at the end of a walk along the radius: u'' = u / r^2 - u' / r, plane stress."""
    walked = solve_ivp(lambda r, y: [y[1], y[0] / r**2 - y[1] / r], (start, end), [movement, slope], rtol=1e-10, atol=1e-14)
    u, du = walked.y[:, -1]
    stiff = modulus / (1 - poisson**2)
    return u, stiff * (du + poisson * u / end), stiff * (u / end + poisson * du)


def _solved(fit: dict[str, float]) -> tuple[float, float, float]:
    """Pressure, hoop stress at the bore, growth of the outside diameter, without any formula of thick cylinders."""
    joint, outside = fit["joint_diameter_mm"] / 2, fit["collar_diameter_mm"] / 2
    # The outside of the collar is free: the slope there makes its radial stress nought.
    free_slope = -fit["collar_poisson"] / outside
    bore, bore_radial, bore_hoop = _ring(fit["collar_modulus_mpa"], fit["collar_poisson"], outside, joint, 1, free_slope)
    # In the middle of a solid bar the movement grows with the radius.
    face, face_radial, _ = _ring(fit["bar_modulus_mpa"], fit["bar_poisson"], joint / 1000, joint, joint / 1000, 1)
    # Scale both so that pressures are equal and the movements together make up the interference on radius.
    pressure = fit["diametral_interference_mm"] / 2 / (bore / -bore_radial - face / -face_radial)
    scale = pressure / -bore_radial
    return pressure, bore_hoop * scale, 2 * scale


@pytest.mark.parametrize(
    "other",
    [
        {},
        {"collar_diameter_mm": 26},
        {"collar_diameter_mm": 300},
        {"joint_diameter_mm": 40, "collar_diameter_mm": 60, "diametral_interference_mm": 0.05},
        {"collar_modulus_mpa": 100e3, "collar_poisson": 0.26},
        {"bar_modulus_mpa": 193e3, "collar_modulus_mpa": 97e3, "collar_poisson": 0.34},
        {"bar_poisson": 0, "collar_poisson": 0.5},
        {"bar_poisson": 0.5, "collar_poisson": 0},
    ],
)
def test_pressure_stress_and_growth_solve_the_equation_of_a_ring(other: dict[str, float]) -> None:
    fit = _FIT | other
    pressure, hoop, growth = _solved(fit)
    found = contact_pressure(**fit)
    assert found == pytest.approx(pressure, rel=1e-6)
    sizes = fit["joint_diameter_mm"], fit["collar_diameter_mm"]
    assert collar_stress(found, *sizes).hoop_mpa == pytest.approx(hoop, rel=1e-6)
    assert collar_growth(found, *sizes, fit["collar_modulus_mpa"]) == pytest.approx(growth, rel=1e-6)


@pytest.mark.parametrize(("bar_poisson", "collar_poisson", "printed"), [(0.29, 0.29, 46.13), (0.29, 0.33, 47.72)])
def test_a_printed_form_with_a_turned_sign_is_not_returned(
    bar_poisson: float, collar_poisson: float, printed: float
) -> None:
    """A much copied answer of engineers takes both Poisson terms off; for a collar its own one is to be added."""
    spread = (75**2 + 25**2) / (75**2 - 25**2)
    turned = 0.020 / (25 * ((spread - collar_poisson) / 69e3 + (1 - bar_poisson) / 207e3))
    assert turned == pytest.approx(printed, rel=0.001)
    found = contact_pressure(**_FIT | {"bar_poisson": bar_poisson, "collar_poisson": collar_poisson})
    assert found < printed / 1.45


def test_interference_of_radii_is_half_of_that_of_diameters() -> None:
    """A gear of a textbook problem, 30/55 mm, 0.10 mm: 161.6 MPa by that book, which means radii, 80.8 for diameters."""
    gear = {"joint_diameter_mm": 30.0, "collar_diameter_mm": 55.0, "bar_modulus_mpa": 69e3, "bar_poisson": 0.33,
            "collar_modulus_mpa": 69e3, "collar_poisson": 0.33}  # fmt: skip
    assert contact_pressure(diametral_interference_mm=0.10, **gear) == pytest.approx(80.8, rel=0.001)
    by_the_book = 69e3 * 0.10 * (55**2 - 30**2) / (30 * 55**2)
    assert by_the_book == pytest.approx(161.6, rel=0.001)
    with pytest.raises(OutOfRange, match=r"^interference as a share of the joint diameter is "):
        contact_pressure(diametral_interference_mm=0.20, **gear)


@pytest.mark.parametrize(
    ("spoilt", "message"),
    [
        ({"diametral_interference_mm": -1e-6}, "interference as a share of the joint diameter"),
        ({"diametral_interference_mm": 0.1004}, r"interference as a share of the joint diameter is 0\.004016"),
        ({"joint_diameter_mm": 0}, "diameter of the joint"),
        ({"joint_diameter_mm": -25}, "diameter of the joint"),
        ({"collar_diameter_mm": -75}, "outside diameter of the collar is"),
        ({"collar_diameter_mm": 0}, "outside diameter of the collar is"),
        ({"collar_diameter_mm": 25}, "outside diameter of the collar over that of the joint is 0 mm"),
        ({"collar_diameter_mm": 24}, "outside diameter of the collar over that of the joint is -1 mm"),
        ({"bar_modulus_mpa": 0}, "modulus of elasticity of the bar is "),
        ({"bar_modulus_mpa": -1}, "modulus of elasticity of the bar is "),
        ({"collar_modulus_mpa": 0}, "modulus of elasticity of the collar is "),
        ({"collar_modulus_mpa": -1}, "modulus of elasticity of the collar is "),
        ({"bar_poisson": -0.001}, "Poisson's ratio of the bar is "),
        ({"bar_poisson": 0.501}, "Poisson's ratio of the bar is "),
        ({"collar_poisson": -0.001}, "Poisson's ratio of the collar is "),
        ({"collar_poisson": 0.501}, "Poisson's ratio of the collar is "),
        ({"collar_poisson": math.nan}, "Poisson's ratio of the collar is "),
    ],
)
def test_pressure_and_its_way_back_refuse_what_does_not_fit(spoilt: dict[str, float], message: str) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        contact_pressure(**_FIT | spoilt)
    if "diametral_interference_mm" not in spoilt:
        with pytest.raises(OutOfRange, match=f"^{message}"):
            interference_for_pressure(pressure_mpa=30.0, **_SIZES | _METALS | spoilt)


def test_interference_up_to_0_4_percent_is_taken_and_none_gives_none() -> None:
    assert contact_pressure(**_FIT | {"diametral_interference_mm": 0}) == 0
    assert contact_pressure(**_FIT | {"diametral_interference_mm": 0.1}) == pytest.approx(151.93, rel=1e-4)
    assert interference_for_pressure(pressure_mpa=0, **_SIZES, **_METALS) == 0
    assert interference_for_pressure(pressure_mpa=151.9, **_SIZES, **_METALS) == pytest.approx(0.1, rel=1e-3)
    with pytest.raises(OutOfRange, match=r"^interference as a share"):
        interference_for_pressure(pressure_mpa=152.5, **_SIZES, **_METALS)
    with pytest.raises(OutOfRange, match=r"^pressure is -1 MPa"):
        interference_for_pressure(pressure_mpa=-1, **_SIZES, **_METALS)


def test_roughness_takes_all_of_a_small_interference_and_never_more() -> None:
    assert effective_interference(0.010, 6.3, 6.3, 0.8) == 0
    assert effective_interference(-0.006, 0, 0, 0.4) == 0
    assert effective_interference(0.010, 5, 1, 0.5) == pytest.approx(0.007)
    assert effective_interference(0.010, 0, 0, 0) == pytest.approx(0.010)


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ((math.nan, 1, 1, 0.4), "interference on diameter"),
        ((0.01, -0.1, 1, 0.4), "roughness of the bar is -0.1 um"),
        ((0.01, 1, -0.1, 0.4), "roughness of the bore is -0.1 um"),
        ((0.01, 1, 1, -0.1), "loss for each unit of roughness is -0.1"),
    ],
)
def test_roughness_refuses_what_cannot_be(arguments: tuple[float, float, float, float], message: str) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        effective_interference(*arguments)


def test_stress_and_growth_refuse_what_does_not_fit() -> None:
    assert collar_stress(0, 25, 75) == (0, 0, 0)
    assert collar_growth(0, 25, 75, 69e3) == 0
    with pytest.raises(OutOfRange, match=r"^pressure is -1 MPa"):
        collar_stress(-1, 25, 75)
    with pytest.raises(OutOfRange, match=r"^pressure is -1 MPa"):
        collar_growth(-1, 25, 75, 69e3)
    for modulus in (0, -69e3):
        with pytest.raises(OutOfRange, match=r"^modulus of elasticity of the collar"):
            collar_growth(1, 25, 75, modulus)
    with pytest.raises(OutOfRange, match=r"^outside diameter of the collar over"):
        collar_growth(1, 25, 25, 69e3)


_joints = st.floats(10, 60)
_walls = st.floats(1.1, 5)  # outside diameter over that of the joint
_shares = st.floats(1e-5, 0.0035)  # interference over diameter of the joint
_moduli = st.floats(60e3, 215e3)
_ratios = st.floats(0.2, 0.4)


@given(joint=_joints, wall=_walls, share=_shares, bar=_moduli, collar=_moduli, nu=_ratios, nu_bar=_ratios)
def test_pressure_follows_interference_and_finds_its_way_back(
    joint: float, wall: float, share: float, bar: float, collar: float, nu: float, nu_bar: float
) -> None:
    sizes = {"joint_diameter_mm": joint, "collar_diameter_mm": wall * joint}
    metals = {"bar_modulus_mpa": bar, "bar_poisson": nu_bar, "collar_modulus_mpa": collar, "collar_poisson": nu}
    pressure = contact_pressure(diametral_interference_mm=share * joint, **sizes, **metals)
    assert pressure > 0
    more = contact_pressure(diametral_interference_mm=share * joint * 1.1, **sizes, **metals)
    assert more == pytest.approx(1.1 * pressure)
    assert interference_for_pressure(pressure_mpa=pressure, **sizes, **metals) == pytest.approx(share * joint)
    thicker = sizes | {"collar_diameter_mm": wall * joint * 1.1}
    assert contact_pressure(diametral_interference_mm=share * joint, **thicker, **metals) > pressure


@given(pressure=st.floats(0.1, 200), joint=_joints, wall=_walls)
def test_equivalent_stress_is_above_hoop_and_hoop_above_pressure(pressure: float, joint: float, wall: float) -> None:
    found = collar_stress(pressure, joint, joint * wall)
    assert found.von_mises_mpa > found.hoop_mpa > pressure == -found.radial_mpa
    # Hencky: half the sum of the squared differences of the three principal stresses, the third is nought.
    a, b = found.hoop_mpa, found.radial_mpa
    assert found.von_mises_mpa**2 == pytest.approx(((a - b) ** 2 + a**2 + b**2) / 2)


@given(size=st.floats(0.5, 2), wall=_walls, thou=st.floats(0.05, 1.5))
def test_a_fit_in_inches_is_a_fit_in_millimetres(size: float, wall: float, thou: float) -> None:
    """Inches and pounds per square inch, same metal: p = E i (D^2 - d^2) / (2 d D^2)."""
    modulus_psi = 30e6
    psi = modulus_psi * thou / 1000 * (wall**2 - 1) / (2 * size * wall**2)
    found = contact_pressure(
        diametral_interference_mm=thou / 1000 * _INCH_MM,
        joint_diameter_mm=size * _INCH_MM,
        collar_diameter_mm=size * wall * _INCH_MM,
        bar_modulus_mpa=modulus_psi * _PSI_MPA,
        bar_poisson=0.3,
        collar_modulus_mpa=modulus_psi * _PSI_MPA,
        collar_poisson=0.3,
    )
    assert found == pytest.approx(psi * _PSI_MPA)
