"""The next step at the very end of the band of surface speeds."""

from math import pi

from tailtrue.calc.spindle_band import step_up


def test_a_step_that_just_reaches_the_upper_surface_speed_is_taken() -> None:
    reached = pi * 25 * 460 / 1000
    assert step_up([300, 460], 300, 1800, 25, reached, overrun=1) == 460
    assert step_up([300, 460], 300, 1800, 25, reached * (1 - 1e-9), overrun=1) == 300
