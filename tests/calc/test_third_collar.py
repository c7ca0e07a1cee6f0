"""A collar half-way: the same as the bow of three collars at equal distances, and refused outside its range."""

from collections.abc import Callable
from typing import Any

import pytest

from tailtrue.calc.lathe_geometry import third_collar_bow
from tailtrue.calc.third_collar import middle_allowance, middle_from_mean
from tailtrue.calc.validity import OutOfRange

_SIZES = {"headstock_diameter_mm": 70, "middle_diameter_mm": 70, "tailstock_diameter_mm": 70}
_PARTS = {"doubt_mm": 0.003, "bending_mm": 0.002}


@pytest.mark.parametrize("station", [20.0, 48.4, 150.0])
def test_half_way_it_is_the_bow_of_three_collars(station: float) -> None:
    bow = third_collar_bow(69.842, 69.858, 69.866, station, 186.0, 372.0 - station)
    assert middle_from_mean(69.842, 69.858, 69.866) == pytest.approx(bow, abs=1e-12)


def test_a_bar_turned_end_for_end_keeps_its_middle() -> None:
    assert middle_from_mean(69.842, 69.858, 69.866) == middle_from_mean(69.866, 69.858, 69.842)


@pytest.mark.parametrize(
    ("formula", "given", "name", "inside", "beyond", "said"),
    [
        (middle_from_mean, _SIZES, "headstock_diameter_mm", 0.001, 0, "diameter of the headstock collar is 0 mm"),
        (middle_from_mean, _SIZES, "middle_diameter_mm", 0.001, 0, "diameter of the collar in the middle is 0 mm"),
        (middle_from_mean, _SIZES, "tailstock_diameter_mm", 0.001, 0, "diameter of the tailstock collar is 0 mm"),
        (middle_allowance, _PARTS, "doubt_mm", 0, -0.001, "doubt of the deviation is -0.001 mm"),
        (middle_allowance, _PARTS, "bending_mm", 0, -0.001, "bow from bending is -0.001 mm"),
    ],
)
def test_each_argument_has_a_bound(
    formula: Callable[..., float], given: dict[str, Any], name: str, inside: float, beyond: float, said: str
) -> None:
    formula(**given | {name: inside})
    with pytest.raises(OutOfRange, match=said):
        formula(**given | {name: beyond})
