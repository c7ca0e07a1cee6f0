"""From the collars to the tailstock, at the edges of validity."""

import math
from typing import Any

import pytest

from limits import (
    Formula,
    Limit,
    Table,
    above_zero,
    holds_at_its_edges,
    is_refused,
    is_whole,
    rows,
    within,
)
from tailtrue.calc import alignment

_LAYOUT = {"span_mm": 300, "first_station_mm": 30, "second_station_mm": 270}
_SPAN = Limit("", (0, -1, 269.9), (270,))  # refused by name of the span, or of the station that no longer lies on it
_FIRST = Limit("", (-0.5, 270, 300.5), (0, 269.5))
_SECOND = Limit("", (-0.5, 30, 300.5), (30.5, 300))
_STATIONS = {"span_mm": _SPAN, "first_station_mm": _FIRST, "second_station_mm": _SECOND}
_HEIGHT = within("height error of the tailstock as a share of the radius", -3.5, 3.5)

_TABLE: Table = {
    alignment.tailstock_move: (
        {"difference_mm": 0.02, **_LAYOUT},
        {"difference_mm": within("move as a share of the span", -9.6, 9.6), **_STATIONS},
    ),
    alignment.diameter_difference: (
        {"move_mm": 0.02, **_LAYOUT},
        {"move_mm": within("move as a share of the span", -6, 6), **_STATIONS},
    ),
    alignment.tailstock_move_exact: (
        {"difference_mm": 0.02, "bar_span_mm": 300, "first_station_mm": 30, "second_station_mm": 270},
        {
            "difference_mm": Limit("difference of the collars is ", (), (-100, 100)),
            "bar_span_mm": _SPAN,
            "first_station_mm": _FIRST,
            "second_station_mm": _SECOND,
        },
    ),
    alignment.scaled_tolerance: (
        {"tolerance_mm": 0.02, "tolerance_length_mm": 300, "spacing_mm": 240},
        {
            "tolerance_mm": above_zero("tolerance"),
            "tolerance_length_mm": above_zero("length of the tolerance"),
            "spacing_mm": above_zero("distance between the collars"),
        },
    ),
    alignment.height_error_difference: (
        {"height_error_mm": 0.5, "collar_diameter_mm": 70, **_LAYOUT},
        {"height_error_mm": _HEIGHT, "collar_diameter_mm": above_zero("diameter of the collars"), **_STATIONS},
    ),
    alignment.tool_height_difference: (
        {"tool_height_mm": 1, "height_error_mm": 0.1, "collar_diameter_mm": 70, **_LAYOUT},
        {
            "tool_height_mm": within("height of the tool as a share of the radius", -3.5, 3.5),
            "height_error_mm": _HEIGHT,
            "collar_diameter_mm": above_zero("diameter of the collars"),
            **_STATIONS,
        },
    ),
    alignment.uses_left: (
        {"diameter_mm": 70, "least_diameter_mm": 55, "diameter_per_use_mm": 0.15},
        {
            "diameter_mm": above_zero("diameter"),
            "least_diameter_mm": above_zero("least diameter"),
            "diameter_per_use_mm": above_zero("diameter per use"),
        },
    ),
    alignment.setover_for_taper: (
        {"large_diameter_mm": 20, "small_diameter_mm": 15, "taper_length_mm": 100, "span_mm": 200},
        {
            "large_diameter_mm": Limit("", (0, -1, 14.9, 29.1), (15, 28.9)),
            "small_diameter_mm": Limit("", (-0.5, 20.1), (6.1, 20)),
            "taper_length_mm": Limit("", (0, -1, 35.5, 201), (36, 200)),
            "span_mm": Limit("span is ", (0, 99.9), (100,)),
        },
    ),
}


def test_every_formula_and_every_argument_has_its_limits() -> None:
    is_whole(_TABLE, alignment)


@pytest.mark.parametrize(("formula", "sound", "limits"), rows(_TABLE))
def test_a_formula_answers_on_its_edges_and_refuses_past_them(
    formula: Formula, sound: dict[str, Any], limits: dict[str, Limit]
) -> None:
    holds_at_its_edges(formula, sound, limits)


@pytest.mark.parametrize(
    ("formula", "changed", "begins"),
    [
        (alignment.tailstock_move, {"span_mm": 0}, "span is 0 mm"),
        (alignment.tailstock_move, {"first_station_mm": -0.5}, "station of the headstock collar is -0.5 mm"),
        (alignment.tailstock_move, {"first_station_mm": 300.5}, "station of the headstock collar is 300.5 mm"),
        (alignment.tailstock_move, {"second_station_mm": -0.5}, "station of the tailstock collar is -0.5 mm"),
        (alignment.tailstock_move, {"difference_mm": math.nan}, "difference of the collars is nan mm"),
        (alignment.setover_for_taper, {"large_diameter_mm": 0, "small_diameter_mm": 0}, "large diameter is 0 mm"),
        (alignment.setover_for_taper, {"large_diameter_mm": 10, "small_diameter_mm": -0.5}, "small diameter is -0.5 mm"),
        (alignment.setover_for_taper, {"small_diameter_mm": 20.1}, "small diameter is 20.1 mm"),
        (alignment.setover_for_taper, {"taper_length_mm": 0}, "length of the taper is 0 mm"),
    ],
)
def test_the_argument_at_fault_is_the_one_named(formula: Formula, changed: dict[str, Any], begins: str) -> None:
    is_refused(formula, {**_TABLE[formula][0], **changed}, begins)


def test_stations_may_lie_at_the_points_of_the_centres() -> None:
    assert alignment.tailstock_move(0.02, 300, 0, 300) == pytest.approx(0.01, rel=1e-12)
    assert alignment.tailstock_move(0.02, 300, 0, 0.5) == pytest.approx(6, rel=1e-12)


def test_a_full_cone_has_no_small_diameter() -> None:
    assert alignment.setover_for_taper(10, 0, 100, 200) == pytest.approx(10, rel=1e-12)


def test_a_use_that_fits_but_for_rounding_counts_and_a_real_lack_does_not() -> None:
    assert alignment.uses_left(55.3, 55, 0.1) == 3  # 2.9999999999999716 in floating point
    assert alignment.uses_left(55.3 - 1e-8, 55, 0.1) == 2
    assert alignment.uses_left(54, 55, 0.1) == 0
