"""Which speed is set: never above the cap, never a speed the lathe does not have."""

import pytest

from tailtrue.calc.spindle import choose_from_range, choose_speed
from tailtrue.calc.validity import OutOfRange

_STEPS = [755, 70, 2000, 190, 115, 460, 300, 1255]


@pytest.mark.parametrize(
    ("wanted", "cap", "speed"),
    [
        (363, 1800, 300),
        (300, 1800, 300),
        (299.9, 1800, 190),
        (5000, 1800, 1255),
        (5000, 9000, 2000),
        (40, 1800, 70),
        (40, 70, 70),
        (363, 200, 190),
    ],
)
def test_step_at_or_below_wanted_and_cap(wanted: float, cap: float, speed: float) -> None:
    assert choose_speed(_STEPS, wanted, cap) == speed


def test_no_step_below_the_cap_names_the_slowest() -> None:
    expected = (
        r"^the slowest speed of the lathe is 70 1/min, and the limit is 60 1/min; "
        r"another way of holding or another machine is needed$"
    )
    with pytest.raises(OutOfRange, match=expected):
        choose_speed(_STEPS, 363, 60)
    with pytest.raises(OutOfRange, match=expected):
        choose_from_range(70, 2000, 10, 363, 60)


def test_no_speeds_at_all() -> None:
    with pytest.raises(OutOfRange, match=r"^the lathe has no speeds to choose from$"):
        choose_speed([], 363, 60)


@pytest.mark.parametrize(
    ("wanted", "cap", "speed"),
    [
        (363, 1800, 360),
        (360, 1800, 360),
        (5000, 1805, 1800),
        (5000, 9000, 2500),
        (40, 1800, 55),
        (40, 55, 55),
        (57, 99, 55),
    ],
)
def test_variable_drive_goes_down_to_a_whole_step(wanted: float, cap: float, speed: float) -> None:
    assert choose_from_range(55, 2500, 10, wanted, cap) == pytest.approx(speed)
