"""A top slide that is set over: what it moves across, the last ratio that is taken and the first that is refused."""

from math import cos, hypot, radians, sin

import pytest

from tailtrue.calc.fine_feed import slide_angle, slide_step
from tailtrue.calc.validity import OutOfRange


@pytest.mark.parametrize("ratio", [1, 2.5, 10, 40])
def test_the_slide_moves_across_by_its_share(ratio: float) -> None:
    angle = radians(slide_angle(ratio))
    across, along = 0.05 * sin(angle), 0.05 * cos(angle)
    assert slide_step(0.05, ratio) == pytest.approx(2 * across)
    assert hypot(across, along) == pytest.approx(0.05)


def test_a_ratio_below_one_and_a_dial_without_divisions_are_refused() -> None:
    assert slide_angle(1) == pytest.approx(90)
    with pytest.raises(OutOfRange, match="ratio of the slide"):
        slide_angle(0.99)
    with pytest.raises(OutOfRange, match="ratio of the slide"):
        slide_step(0.05, 0.99)
    with pytest.raises(OutOfRange, match="division of the dial"):
        slide_step(0, 10)
