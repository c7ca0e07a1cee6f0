"""Which way the tailstock goes, against printed answers; more than 0 is toward the tool."""

import pytest

from tailtrue.calc.alignment import tailstock_move


@pytest.mark.parametrize(
    ("difference_mm", "toward_tool", "source"),
    [
        (
            -0.02,
            False,
            "US Coast Guard General Subjects question 642: cut deeper at the tail end, move it away",
        ),
        (
            -0.01,
            False,
            "Turning and Boring (1914): work grows toward the headstock, shift the centre to the rear",
        ),
        (0.08, True, "derived: tail collar fat, tool in front or behind, the centre goes toward the tool"),
    ],
    ids=["E03", "E04", "E06b"],
)
def test_direction(difference_mm: float, toward_tool: bool, source: str) -> None:
    assert (tailstock_move(difference_mm, 300, 30, 270) > 0) is toward_tool, source
