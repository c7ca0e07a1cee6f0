"""The pressure of a press fit is not that of a formula often copied with one sign wrong."""

import pytest

from tailtrue.calc.interference import contact_pressure

# Steel bar of 25 mm in a collar of 6061 of 75 mm, 0.020 mm on diameter.
_BAR = {"joint_diameter_mm": 25.0, "bar_modulus_mpa": 207_000.0, "bar_poisson": 0.29}
_COLLAR = {"collar_diameter_mm": 75.0, "collar_modulus_mpa": 69_000.0, "collar_poisson": 0.33}
_INTERFERENCE_MM = 0.020


_RING = (75.0**2 + 25.0**2) / (75.0**2 - 25.0**2)


def _wrong(bar_poisson: float, collar_poisson: float) -> float:
    """As a widely copied list of answers on press fits prints it (text seen): both Poisson terms taken away."""
    return _INTERFERENCE_MM / (25.0 * ((_RING - collar_poisson) / 69_000 + (1 - bar_poisson) / 207_000))


@pytest.mark.parametrize(
    ("collar_poisson", "printed"),
    [
        pytest.param(0.29, 46.13, id="FIT5: one Poisson's ratio, that of the bar, for both parts"),
        pytest.param(0.33, 47.72, id="each part with its own"),
    ],
)
def test_pressure_of_the_wrong_sign_is_not_returned(collar_poisson: float, printed: float) -> None:
    assert _wrong(0.29, collar_poisson) == pytest.approx(printed, abs=0.005)
    found = contact_pressure(
        diametral_interference_mm=_INTERFERENCE_MM, **_BAR, **_COLLAR | {"collar_poisson": collar_poisson}
    )
    assert found < printed / 1.48


def test_poisson_of_the_collar_widens_and_that_of_the_bar_narrows() -> None:
    # Thick-wall theory as in Shigley's Mechanical Engineering Design, worked with these sizes.
    found = contact_pressure(diametral_interference_mm=_INTERFERENCE_MM, **_BAR, **_COLLAR)
    assert found == pytest.approx(30.39, rel=0.001)
    right = _INTERFERENCE_MM / (25.0 * ((_RING + 0.33) / 69_000 + (1 - 0.29) / 207_000))
    assert found == pytest.approx(right, rel=1e-12)


def test_an_interference_of_radii_taken_for_one_of_diameters_gives_twice_the_pressure() -> None:
    # A textbook problem on a gear of aluminium, 30 in 55 mm, 0.10 mm: its formula (from memory: Groover, fundamentals of
    # manufacturing) E i (D^2 - d^2) / (d D^2) gives 161.6 N/mm2; thick-wall theory gives half, the 0.10 being on diameter.
    printed = 69_000 * 0.10 * (55.0**2 - 30.0**2) / (30.0 * 55.0**2)
    assert printed == pytest.approx(161.6, abs=0.05)
    metal = {"bar_modulus_mpa": 69e3, "bar_poisson": 0.33, "collar_modulus_mpa": 69e3, "collar_poisson": 0.33}
    found = contact_pressure(diametral_interference_mm=0.10, joint_diameter_mm=30.0, collar_diameter_mm=55.0, **metal)
    assert found == pytest.approx(80.8, abs=0.05)
    assert found == pytest.approx(printed / 2, rel=1e-9)
