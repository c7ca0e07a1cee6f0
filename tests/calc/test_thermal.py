"""Growth of what warms, and the thrust of a bar that has no room for it."""

import pytest

from tailtrue.calc.thermal import growth, growth_thrust
from tailtrue.calc.validity import OutOfRange

_STEEL = 11.7e-6
_THRUST = {
    "span_mm": 500.0, "diameter_mm": 25.0, "modulus_mpa": 207e3, "expansion_per_k": _STEEL,
    "temperature_change_k": 10.0, "machine_n_per_mm": 20e3,
}  # fmt: skip


@pytest.mark.parametrize(
    ("spoilt", "message"),
    [
        ({"span_mm": 0}, "length is 0 mm"),
        ({"diameter_mm": 0}, "diameter of the bar is 0 mm"),
        ({"diameter_mm": -25}, "diameter of the bar is -25 mm"),
        ({"modulus_mpa": 0}, "modulus of elasticity is 0 MPa"),
        ({"modulus_mpa": -1}, "modulus of elasticity is -1 MPa"),
        ({"machine_n_per_mm": 0}, "stiffness of the lathe is 0 N/mm"),
        ({"machine_n_per_mm": -1}, "stiffness of the lathe is -1 N/mm"),
        ({"expansion_per_k": 0}, "coefficient of expansion is 0"),
        ({"temperature_change_k": -0.1}, "rise of temperature of the bar is -0.1 K"),
        ({"temperature_change_k": 50.5}, "rise of temperature of the bar is 50.5 K"),
    ],
)
def test_thrust_of_a_warm_bar_refuses_what_cannot_be(spoilt: dict[str, float], message: str) -> None:
    with pytest.raises(OutOfRange, match=f"^{message}"):
        growth_thrust(**_THRUST | spoilt)


def test_a_lathe_that_gives_takes_most_of_the_thrust_of_a_warm_bar() -> None:
    found = growth_thrust(**_THRUST | {"temperature_change_k": 50})
    assert found.rigid_n == pytest.approx(5 * 11888.5, rel=1e-4)
    assert found.yielding_n == pytest.approx(5 * 1065.2, rel=1e-4)
    assert growth_thrust(**_THRUST | {"temperature_change_k": 0}) == (0, 0)
    stiff = growth_thrust(**_THRUST | {"machine_n_per_mm": 1e12})
    assert stiff.yielding_n == pytest.approx(stiff.rigid_n, rel=1e-6)


def test_growth_is_known_up_to_50_kelvin_either_way() -> None:
    assert growth(100, 1e-5, 50) == pytest.approx(0.05) == -growth(100, 1e-5, -50)
    for change in (50.2, -50.2):
        with pytest.raises(OutOfRange, match=rf"^change of temperature is {change} K"):
            growth(100, 1e-5, change)
    for length in (0, -100):
        with pytest.raises(OutOfRange, match=rf"^length is {length} mm"):
            growth(length, 1e-5, 10)
    for expansion in (0, -1e-5):
        with pytest.raises(OutOfRange, match=r"^coefficient of expansion is "):
            growth(100, expansion, 10)
