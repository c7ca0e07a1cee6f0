"""Which of two holes a bar has to pass: that of the chuck or that of the spindle."""

from typing import Any

import pytest

from tailtrue.computed.registry import register


@pytest.mark.parametrize(
    ("spindle", "chuck", "hole", "by"),
    [
        (30.0, {"through_bore": 26.0}, 26.0, "the hole through the chuck"),
        (25.9, {"through_bore": 26.0}, 25.9, "the bore of the spindle"),
        (26.0, {"through_bore": 26.0}, 26.0, "the bore of the spindle"),
        (25.9, {}, 25.9, "the bore of the spindle"),
        (25.9, {"through_bore": None}, 25.9, "the bore of the spindle"),
    ],
)
def test_the_smaller_hole_counts_and_is_named(spindle: float, chuck: dict[str, Any], hole: float, by: str) -> None:
    found = register()["bar.hole_through"].function(spindle, chuck)
    assert (found.value, found.by) == (hole, by)
