"""Differences of two collars from the exact radius, against worked cases.

All are derived: the distance of a point from a line, with collars at 30 and 270 on a span of 300.
"""

from math import sqrt

import pytest

from tailtrue.calc.lathe_geometry import radius_cut
from tailtrue.calc.sides import toward_tool


@pytest.mark.parametrize(
    ("to_operator_mm", "height_mm", "tool_height_mm", "tool_side", "difference_mm"),
    [
        pytest.param(-1.0, 0.0, 0.0, "front", 1.6, id="E05a: tailstock 1 mm away from a front tool"),
        pytest.param(0.05, 0.0, 0.0, "rear", 0.08, id="E06: tailstock away from a rear tool"),
        pytest.param(0.0, 0.1, 1.0, "front", -0.004343, id="E08b: tool 1 mm high meets tailstock 0.1 mm high"),
        pytest.param(0.0, 0.1, 0.0, "front", 0.000228571, id="E07a: tailstock 0.1 mm high"),
    ],
)
def test_difference(
    to_operator_mm: float, height_mm: float, tool_height_mm: float, tool_side: str, difference_mm: float
) -> None:
    cross_slide = sqrt(35**2 - tool_height_mm**2)
    offset = toward_tool(to_operator_mm, tool_side)
    near, far = (2 * radius_cut(cross_slide, offset, tool_height_mm, height_mm, station, 300) for station in (30, 270))
    assert far - near == pytest.approx(difference_mm, abs=1e-6)


def test_a_tool_off_height_lessens_the_effect_of_an_offset() -> None:
    # Turning and Boring Tapers (1902) and Modern Machine-Shop Practice name the small loss; its size is derived.
    def effect(tool_height_mm: float) -> float:
        cross_slide = sqrt(35**2 - tool_height_mm**2)
        return radius_cut(cross_slide, 0.001, tool_height_mm, 0, 270, 300) - radius_cut(
            cross_slide, 0.001, tool_height_mm, 0, 30, 300
        )

    assert effect(1) / effect(0) == pytest.approx(sqrt(1 - (1 / 35) ** 2), abs=1e-6)
    assert effect(10) / effect(0) == pytest.approx(sqrt(1 - (10 / 35) ** 2), abs=1e-5)
