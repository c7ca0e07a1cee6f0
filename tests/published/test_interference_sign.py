"""The pressure of a press fit is not that of a formula often copied with one sign wrong."""

import pytest

from tailtrue.calc.interference import contact_pressure

# Steel bar of 25 mm in a collar of 6061 of 75 mm, 0.020 mm on diameter.
_BAR = {"joint_diameter_mm": 25.0, "bar_modulus_mpa": 207_000.0, "bar_poisson": 0.29}
_COLLAR = {"collar_diameter_mm": 75.0, "collar_modulus_mpa": 69_000.0, "collar_poisson": 0.33}
_INTERFERENCE_MM = 0.020


def test_poisson_of_the_collar_widens_and_that_of_the_bar_narrows() -> None:
    ring = (75.0**2 + 25.0**2) / (75.0**2 - 25.0**2)
    # As a widely copied list of answers on press fits prints it (text seen): both Poisson terms taken away.
    wrong = _INTERFERENCE_MM / (25.0 * ((ring - 0.33) / 69_000 + (1 - 0.29) / 207_000))
    assert wrong > 1.5 * 30.39
    found = contact_pressure(diametral_interference_mm=_INTERFERENCE_MM, **_BAR, **_COLLAR)
    # Thick-wall theory as in Shigley's Mechanical Engineering Design, worked with these sizes.
    assert found == pytest.approx(30.39, rel=0.001)
    assert found < wrong / 1.5
