"""A square with its corners sawn off, against its own geometry, and at the edges of validity."""

from math import cos, hypot, radians, sqrt, tan
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from limits import (
    Formula,
    Limit,
    Table,
    above_zero,
    from_zero,
    holds_at_its_edges,
    is_whole,
    rows,
)
from tailtrue.calc import octagon
from tailtrue.calc.octagon import corner_leg, corners_area, octagon_circle, sawing_time

_FLATS = above_zero("square, flat to flat")
_TABLE: Table = {
    corner_leg: ({"flats_mm": 80}, {"flats_mm": _FLATS}),
    octagon_circle: (
        {"flats_mm": 80, "outside_mm": 1},
        {"flats_mm": Limit("square, flat to flat", (0, -1), (5,)),
         "outside_mm": Limit("how far outside its line a corner is sawn off", (-0.01, 16.57), (0, 16.56))},
    ),
    corners_area: (
        {"flats_mm": 80, "thickness_mm": 40, "pieces": 2},
        {"flats_mm": _FLATS, "thickness_mm": above_zero("thickness"),
         "pieces": Limit("number of slugs", (0, 0.99, -1), (1,))},
    ),
    sawing_time: (
        {"area_mm2": 10000, "rate_mm2_min": 250, "cuts": 8, "clamp_s": 90},
        {"area_mm2": above_zero("area"), "rate_mm2_min": above_zero("cutting rate"), "cuts": from_zero("number of cuts"),
         "clamp_s": from_zero("time to clamp")},
    ),
}  # fmt: skip


def test_every_formula_and_every_argument_has_its_limits() -> None:
    is_whole(_TABLE, octagon)


@pytest.mark.parametrize(("formula", "sound", "limits"), rows(_TABLE))
def test_a_formula_answers_on_its_edges_and_refuses_past_them(
    formula: Formula, sound: dict[str, Any], limits: dict[str, Limit]
) -> None:
    holds_at_its_edges(formula, sound, limits)


@given(flats=st.floats(1, 500))
def test_the_octagon_has_eight_equal_sides_and_angles(flats: float) -> None:
    leg = corner_leg(flats)
    side = flats - 2 * leg
    assert side == pytest.approx(hypot(leg, leg))
    assert side == pytest.approx(flats * tan(radians(22.5)))
    assert octagon_circle(flats) == pytest.approx(flats / cos(radians(22.5)))
    assert corners_area(flats, 1, 1) == pytest.approx(4 * side)


@given(flats=st.floats(10, 500), share=st.floats(0, 1))
def test_a_cut_outside_its_line_leaves_a_corner_that_lies_on_it_and_on_the_flat(flats: float, share: float) -> None:
    outside = share * (sqrt(2) - 1) * flats / 2
    across = sqrt((octagon_circle(flats, outside) / 2) ** 2 - (flats / 2) ** 2)
    # The cut lies at 45 degrees, half the square and what is outside from the middle.
    assert (flats / 2 + across) / sqrt(2) == pytest.approx(flats / 2 + outside)


def test_a_cut_at_the_very_corner_leaves_the_square() -> None:
    assert octagon_circle(80, 40 * (sqrt(2) - 1)) == pytest.approx(80 * sqrt(2))


def test_sawing_is_area_over_rate_and_the_clamping() -> None:
    assert sawing_time(600, 60, 0, 90) == 600
    assert sawing_time(600, 60, 4, 90) == 960
