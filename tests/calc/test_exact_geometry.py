"""The first-order alignment formulas against the exact distance of a tool point from a slanting axis."""

from math import hypot, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.calc.alignment import (
    diameter_difference,
    height_error_difference,
    tailstock_move,
    tailstock_move_exact,
    tool_height_difference,
)

Vector = tuple[float, float, float]


def _diameter(axis_end: Vector, tool: Vector) -> float:
    """Twice the distance of the tool from the line through the headstock centre and the tailstock centre."""
    (ax, ay, az), (tx, ty, tz) = axis_end, tool
    cross = (ay * tz - az * ty, az * tx - ax * tz, ax * ty - ay * tx)
    return 2 * sqrt(sum(part**2 for part in cross)) / sqrt(ax**2 + ay**2 + az**2)


def _difference(
    toward_tool: float,
    high: float,
    tool_high: float,
    radius: float,
    span: float,
    a: float,
    b: float,
    side: int = 1,
) -> float:
    """Exact difference of the collars; `side` is +1 for a tool in front and -1 for one behind."""
    end = (side * toward_tool, high, span)
    tool_x = side * sqrt(radius**2 - tool_high**2)
    return _diameter(end, (tool_x, tool_high, b)) - _diameter(end, (tool_x, tool_high, a))


@pytest.mark.parametrize("side", [1, -1])
@pytest.mark.parametrize("offset", [-1.0, -0.05, 0.05, 0.3])
def test_move_undoes_the_offset_on_either_side(offset: float, side: int) -> None:
    # Twice the offset at the ends, less in proportion where the collars stand nearer.
    difference = _difference(offset, 0, 0, 35, 300, 30, 270, side)
    assert tailstock_move(difference, 300, 30, 270) == pytest.approx(-offset, rel=1e-4)


@given(
    offset=st.floats(-3, 3).filter(lambda value: abs(value) > 1e-3),
    span=st.floats(200, 600),
    share=st.floats(0.02, 0.3),
)
def test_exact_move_undoes_an_offset_of_any_size(offset: float, span: float, share: float) -> None:
    first, second = share * span, (1 - share) * span
    difference = _difference(offset, 0, 0, 35, span, first, second)
    bar_span = hypot(span, offset)
    slant = span / bar_span  # a length along the bed, seen along the bar
    exact = tailstock_move_exact(difference, bar_span, first * slant, second * slant)
    assert exact == pytest.approx(-offset, rel=1e-7)


def test_height_error_alone() -> None:
    exact = _difference(0, 0.5, 0, 35, 300, 30, 270)
    assert height_error_difference(0.5, 70, 300, 30, 270) == pytest.approx(exact, rel=1e-3)
    assert height_error_difference(-0.5, 70, 300, 30, 270) == height_error_difference(0.5, 70, 300, 30, 270)


@pytest.mark.parametrize(("tool", "height"), [(0.2, 0.1), (-0.2, 0.1), (0.5, 0.05), (1.0, 0.1)])
def test_tool_off_height_meets_tailstock_off_height(tool: float, height: float) -> None:
    exact = _difference(0, height, tool, 35, 300, 30, 270)
    both = tool_height_difference(tool, height, 70, 300, 30, 270) + height_error_difference(height, 70, 300, 30, 270)
    assert both == pytest.approx(exact, rel=5e-3)


def test_only_collars_at_the_very_ends_make_the_move_half_the_difference() -> None:
    assert tailstock_move(0.02, 300, 0, 300) == pytest.approx(0.01)
    assert tailstock_move(0.02, 300, 30, 270) == pytest.approx(0.0125)
    assert diameter_difference(0.01, 300, 0, 300) == pytest.approx(0.02)
