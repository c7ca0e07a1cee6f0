"""Which way the tailstock goes in words of a person who stands in front, against printed answers."""

import pytest

from tailtrue.calc.alignment import tailstock_move
from tailtrue.calc.sides import toward_operator


@pytest.mark.parametrize(
    ("difference_mm", "tool_side", "to_the_front", "source"),
    [
        (
            -0.02,
            "front",
            False,
            "US Coast Guard General Subjects question 642: cut deeper at the tail end, move it away from you",
        ),
        (-0.01, "front", False, "Turning and Boring (1914): work grows toward the headstock, shift the centre to the rear"),
        (0.08, "rear", False, "derived: tool at the rear, tail collar fat, the centre goes toward the tool, to the rear"),
        (0.08, "front", True, "derived: tool in front, tail collar fat, the centre goes toward the operator"),
        (-0.08, "rear", True, "derived: tool at the rear, tail collar thin, the centre goes toward the operator"),
    ],
    ids=["E03", "E04", "E06b", "front tool, tail fat", "rear tool, tail thin"],
)
def test_direction(difference_mm: float, tool_side: str, to_the_front: bool, source: str) -> None:
    assert (toward_operator(tailstock_move(difference_mm, 300, 30, 270), tool_side) > 0) is to_the_front, source
