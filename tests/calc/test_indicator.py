"""Readings of an indicator: sweep, factor of each place, sides."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.calc import (
    alignment,
    indicator,
    sides,
)
from tailtrue.calc.validity import OutOfRange


@given(front=st.floats(-0.1, 0.1), top=st.floats(-0.1, 0.1), rear=st.floats(-0.1, 0.1), bottom=st.floats(-0.1, 0.1))
def test_zero_of_the_indicator_and_place_of_reading_do_not_matter(
    front: float, top: float, rear: float, bottom: float
) -> None:
    found = indicator.sweep(front, top, rear, bottom)
    again = indicator.sweep(*(reading + 0.5 for reading in (front, top, rear, bottom)))
    assert again == pytest.approx(found, abs=1e-12)
    bore = indicator.sweep(-front, -top, -rear, -bottom, in_bore=True)
    assert bore == pytest.approx(found, abs=1e-12)
    assert found.apparent_height_mm == found.height_mm


@pytest.mark.parametrize(
    ("place", "factor"),
    [
        ("quill", 1),
        ("bar at the tailstock collar", 300 / 270),
        ("traverse on the tool side", -1.25),
        ("traverse of fresh skims on the far side", 0.625),
        ("difference of diameters", 0.625),
        ("diameter dial", 0.5),
        ("radius dial", 1),
    ],
)
def test_factor_of_each_place(place: str, factor: float) -> None:
    assert indicator.move_factor(place, 300, 30, 270) == pytest.approx(factor)


@given(difference=st.floats(-0.1, 0.1), span=st.floats(200, 600), share=st.floats(0, 0.3))
def test_factor_of_the_difference_is_that_of_the_move(difference: float, span: float, share: float) -> None:
    layout = (span, share * span, (1 - share) * span)
    found = indicator.move_factor("difference of diameters", *layout) * difference
    assert found == pytest.approx(alignment.tailstock_move(difference, *layout), abs=1e-12)


def test_unknown_place_names_the_known_ones() -> None:
    with pytest.raises(OutOfRange, match=r"it must be one of: quill, bar at the tailstock collar, traverse"):
        indicator.move_factor("spindle", 300, 30, 270)


@given(distance=st.floats(-1, 1), side=st.sampled_from(["front", "rear"]))
def test_toward_tool_and_toward_operator_are_each_others_way_back(distance: float, side: str) -> None:
    assert sides.toward_tool(sides.toward_operator(distance, side), side) == distance
