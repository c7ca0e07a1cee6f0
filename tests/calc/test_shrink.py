"""How hot a collar must be, when it lets go, and how warmth changes a fit."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.calc.interference import contact_pressure
from tailtrue.calc.shrink import handling_clearance, interference_change, release_change, shrink_rise, shrink_temperature
from tailtrue.calc.thermal import growth
from tailtrue.calc.validity import OutOfRange

_STEEL, _ALUMINIUM = 11.7e-6, 23.6e-6


def test_rise_may_reach_250_kelvin_and_no_more() -> None:
    assert shrink_rise(0.1225, 0.025, 25, _ALUMINIUM) == pytest.approx(250)
    with pytest.raises(OutOfRange, match=r"^rise of temperature is 250\.\d+ K"):
        shrink_rise(0.123, 0.025, 25, _ALUMINIUM)
    assert shrink_rise(0, 0.00005, 25, _ALUMINIUM) == pytest.approx(0.085, abs=0.001)
    assert shrink_rise(0, 0.025, 25, _ALUMINIUM) == pytest.approx(42.37, abs=0.005)


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ((-0.001, 0.025, 25, _ALUMINIUM), "interference on diameter is -0.001 mm"),
        ((0.03, 0, 25, _ALUMINIUM), "clearance for handling is 0 mm"),
        ((0.03, -0.01, 25, _ALUMINIUM), "clearance for handling is -0.01 mm"),
        ((0.03, 0.025, 0, _ALUMINIUM), "diameter of the joint is 0 mm"),
        ((0.03, 0.025, -25, _ALUMINIUM), "diameter of the joint is -25 mm"),
        ((0.03, 0.025, 25, 0), "coefficient of expansion of the collar is 0 1/K"),
        ((0.03, 0.025, 25, -_ALUMINIUM), "coefficient of expansion of the collar is -"),
    ],
)
def test_rise_refuses_what_cannot_be(arguments: tuple[float, float, float, float], message: str) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        shrink_rise(*arguments)


def test_a_metal_that_would_suffer_is_not_heated() -> None:
    assert shrink_temperature(130, 20, 150) == 150
    with pytest.raises(OutOfRange, match=r"^the collar would have to be 151 degC hot, .* stands 150 degC: .* helps$"):
        shrink_temperature(131, 20, 150)


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ((0, 20, 150), "rise of temperature is 0 K; it must be more"),
        ((-1, 20, 150), "rise of temperature is -1 K; it must be more"),
        ((251, 20, 300), "rise of temperature is 251 K"),
        ((50, -0.1, 150), "temperature of the shop is -0.1 degC"),
        ((50, 50.1, 150), "temperature of the shop is 50.1 degC"),
        ((50, 20, math.nan), "hottest that the metal of the collar stands is nan"),
        ((50, 20, math.inf), "hottest that the metal of the collar stands is inf"),
    ],
)
def test_heating_refuses_what_cannot_be(arguments: tuple[float, float, float], message: str) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        shrink_temperature(*arguments)


def test_bounds_of_heating_are_taken() -> None:
    assert shrink_temperature(250, 0, 300) == 250
    assert shrink_temperature(250, 50, 300) == 300
    assert shrink_temperature(0.001, 20, 150) == pytest.approx(20.001)


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ((0, 0.001, 0.02), "diameter of the joint is 0 mm"),
        ((-25, 0.001, 0.02), "diameter of the joint is -25 mm"),
        ((25, 0, 0.02), "clearance as a share of the diameter is 0"),
        ((25, -0.001, 0.02), "clearance as a share of the diameter is -0.001"),
        ((25, 0.001, 0), "least clearance is 0 mm"),
        ((25, 0.001, -0.02), "least clearance is -0.02 mm"),
    ],
)
def test_clearance_for_handling_refuses_what_cannot_be(arguments: tuple[float, float, float], message: str) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        handling_clearance(*arguments)


_CHANGE = {
    "joint_diameter_mm": 25.0, "bar_expansion_per_k": _STEEL, "bar_change_k": 10.0,
    "collar_expansion_per_k": _ALUMINIUM, "collar_change_k": 10.0,
}  # fmt: skip


@pytest.mark.parametrize(
    ("spoilt", "message"),
    [
        ({"joint_diameter_mm": 0}, "diameter of the joint is 0"),
        ({"joint_diameter_mm": -1}, "diameter of the joint is -1"),
        ({"bar_expansion_per_k": 0}, "coefficient of expansion of the bar is 0"),
        ({"bar_expansion_per_k": -1e-6}, "coefficient of expansion of the bar is -"),
        ({"collar_expansion_per_k": 0}, "coefficient of expansion of the collar is 0"),
        ({"collar_expansion_per_k": -1e-6}, "coefficient of expansion of the collar is -"),
        ({"bar_change_k": 250.5}, "change of temperature of the bar is 250.5 K"),
        ({"bar_change_k": -250.5}, "change of temperature of the bar is -250.5 K"),
        ({"collar_change_k": 250.5}, "change of temperature of the collar is 250.5 K"),
        ({"collar_change_k": -250.5}, "change of temperature of the collar is -250.5 K"),
        ({"collar_change_k": math.nan}, "change of temperature of the collar is nan"),
    ],
)
def test_change_of_a_fit_refuses_what_cannot_be(spoilt: dict[str, float], message: str) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        interference_change(**_CHANGE | spoilt)


def test_change_of_a_fit_has_the_right_sign() -> None:
    assert interference_change(**_CHANGE | {"bar_change_k": 250, "collar_change_k": 0}) == pytest.approx(0.073125)
    assert interference_change(**_CHANGE | {"bar_change_k": -250, "collar_change_k": 0}) == pytest.approx(-0.073125)
    assert interference_change(**_CHANGE | {"bar_change_k": 0, "collar_change_k": 250}) == pytest.approx(-0.1475)
    assert interference_change(**_CHANGE | {"bar_change_k": 0, "collar_change_k": -250}) == pytest.approx(0.1475)


def test_a_collar_that_grows_less_than_its_bar_lets_go_in_the_cold() -> None:
    assert release_change(0.001, 25, 17.2e-6, 11.4e-6) == pytest.approx(-6.9, abs=0.01)
    assert release_change(0, 25, _STEEL, _ALUMINIUM) == 0
    with pytest.raises(OutOfRange, match=r"^bar and collar both grow by 1\.17e-05 1/K"):
        release_change(0.02, 25, _STEEL, _STEEL)


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ((-0.001, 25, _STEEL, _ALUMINIUM), "interference on diameter is -0.001"),
        ((0.02, 0, _STEEL, _ALUMINIUM), "diameter of the joint is 0"),
        ((0.02, -25, _STEEL, _ALUMINIUM), "diameter of the joint is -25"),
        ((0.02, 25, 0, _ALUMINIUM), "coefficient of expansion of the bar is 0"),
        ((0.02, 25, -_STEEL, _ALUMINIUM), "coefficient of expansion of the bar is -"),
        ((0.02, 25, _STEEL, 0), "coefficient of expansion of the collar is 0"),
        ((0.02, 25, _STEEL, -_ALUMINIUM), "coefficient of expansion of the collar is -"),
        ((0.0747, 25, _STEEL, _ALUMINIUM), "change of temperature is 251"),
        ((0.0747, 25, _ALUMINIUM, _STEEL), "change of temperature is -251"),
    ],
)
def test_letting_go_refuses_what_cannot_be(arguments: tuple[float, float, float, float], message: str) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        release_change(*arguments)


def test_letting_go_is_known_up_to_250_kelvin_either_way() -> None:
    assert release_change(0.0743, 25, _STEEL, _ALUMINIUM) == pytest.approx(249.7, abs=0.1)
    assert release_change(0.0743, 25, _ALUMINIUM, _STEEL) == pytest.approx(-249.7, abs=0.1)


_interference = st.floats(0.002, 0.05)
_joint = st.floats(15, 60)
_expansion = st.floats(9e-6, 25e-6)


@given(interference=_interference, joint=_joint, expansion=st.floats(20e-6, 25e-6))
def test_a_collar_heated_by_its_rise_has_just_its_clearance(interference: float, joint: float, expansion: float) -> None:
    clearance = handling_clearance(joint, 0.001, 0.02)
    rise = shrink_rise(interference, clearance, joint, expansion)
    assert interference + interference_change(joint, _STEEL, 0, expansion, rise) == pytest.approx(-clearance)
    assert shrink_rise(interference * 1.1, clearance, joint, expansion) > rise


@given(interference=_interference, joint=_joint, bar=_expansion, collar=_expansion)
def test_a_fit_lets_go_just_where_its_interference_is_gone(
    interference: float, joint: float, bar: float, collar: float
) -> None:
    try:
        change = release_change(interference, joint, bar, collar)
    except OutOfRange:
        # Alike enough to hold over the whole range.
        assert abs(interference_change(joint, bar, 250, collar, 250)) <= interference * (1 + 1e-9)
        return
    assert (change > 0) == (collar > bar)
    assert interference + interference_change(joint, bar, change, collar, change) == pytest.approx(0, abs=1e-12)


@given(joint=_joint, bar=_expansion, collar=_expansion, change=st.floats(-50, 50))
def test_change_of_a_fit_is_the_growth_of_the_bar_less_that_of_the_bore(
    joint: float, bar: float, collar: float, change: float
) -> None:
    expected = growth(joint, bar, change) - growth(joint, collar, change)
    assert interference_change(joint, bar, change, collar, change) == pytest.approx(expected, abs=1e-12)


def test_a_fit_in_inches_asks_for_the_same_heat() -> None:
    inches = (0.0012 + 0.0010) / (13.1e-6 * 1.0)  # 0.0012 in interference on 1 in, 13.1 millionths per degree F
    assert shrink_rise(0.0012 * 25.4, 0.0010 * 25.4, 25.4, 13.1e-6 * 1.8) == pytest.approx(inches / 1.8)


def test_a_warm_collar_presses_less() -> None:
    """10 K in use take 0.003 mm off a fit of 0.020 mm on 25 mm, and with it a seventh of its pressure."""
    metals = {"bar_modulus_mpa": 207e3, "bar_poisson": 0.29, "collar_modulus_mpa": 69e3, "collar_poisson": 0.33,
              "joint_diameter_mm": 25.0, "collar_diameter_mm": 75.0}  # fmt: skip
    cold = contact_pressure(diametral_interference_mm=0.020, **metals)
    warm = contact_pressure(diametral_interference_mm=0.020 + interference_change(**_CHANGE), **metals)
    assert warm / cold == pytest.approx(1 - 0.002975 / 0.020)
