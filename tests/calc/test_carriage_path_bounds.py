"""Refusals of the path of the tool, each in full: what was read, and what it was."""

from collections.abc import Callable
from math import nan

import pytest

from tailtrue.calc import carriage_path as path
from tailtrue.calc.validity import OutOfRange


@pytest.mark.parametrize(
    ("refused", "says"),
    [
        (lambda: path.wear_shift(2, 0, 150, 100), "difference of the wear as a share of the distance of the ways is 0.02"),
        (lambda: path.chucked_difference(0.02, 0, 20, 170, "front"), "lean of the path is 0.02"),
        (lambda: path.chucked_difference(0, 0.02, 20, 170, "front"), "yaw of the headstock is 0.02"),
        (
            lambda: path.chucked_difference(0, 0, 170, 20, "front"),
            "distance from the collar at the chuck to the free collar is -150 mm",
        ),
        (lambda: path.offset_from_path(0, 0.02, 300), "lean of the path is 0.02"),
        (lambda: path.offset_from_spindle_axis(0, 0.02, 300), "yaw of the headstock is 0.02"),
        (lambda: path.collars_less_sweep(6, 20, 170, 300, "front"), "slope that the chucked bar shows is 0.02"),
        (lambda: path.collars_less_sweep(nan, 20, 170, 300, "front"), "difference of the collars is nan mm"),
        (
            lambda: path.collars_less_sweep(0, 170, 20, 300, "front"),
            "distance from the collar at the chuck to the free collar is -150 mm",
        ),
        (lambda: path.offset_after_untwisting(0, 0.02, 300, 80), "lean of the path is 0.02"),
    ],
)
def test_a_refusal_names_what_was_read(refused: Callable[[], float], says: str) -> None:
    with pytest.raises(OutOfRange) as refusal:
        refused()
    assert str(refusal.value).startswith(f"{says}; ")
