"""A stop that lacks a fact because another choice found no way names that choice and its ways out, not its own."""

from pathlib import Path

import pytest

from shops import shop
from tailtrue.advise import advise, make_procedure
from tailtrue.errors import Refused, report


def test_a_stop_that_hangs_on_the_joint_names_the_joint(tmp_path: Path) -> None:
    # A press is there and too weak; without compound no way fixes the collars, so that no bore is known.
    job = shop(
        tmp_path, "fernhill",
        ("crib", 'compound_gap = "0.15 mm"', 'press_force = "5 kN"'),
        ("crib", 'compound_cure = "24 h"', 'press_opening = "500 mm"'),
        ("crib", 'spacer = "12 mm"', ""),
    )  # fmt: skip
    with pytest.raises(Refused) as wrong:
        make_procedure(job)
    hanging = [one for one in wrong.value.problems if "Not known" in one.wrong]
    assert hanging
    for one in hanging:
        assert "How are the collars fixed to the bar? No way fits" in one.wrong
        assert "collar pressed on: the press is too weak" in one.do
        assert "tailtrue why JOB joint.method" in one.do
        assert "thinner bar" not in one.do
    assert "press-does-not-serve" in report(wrong.value)
    assert advise(job).refused
