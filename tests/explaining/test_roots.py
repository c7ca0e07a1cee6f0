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
        assert "thinner bar" not in one.do
    assert "collar pressed on: the press is too weak" in hanging[0].do
    assert "tailtrue why JOB joint.method" in hanging[0].do
    # The way out is told once; what hangs on the same choice points to it.
    assert all(hanging[0].where in one.do for one in hanging[1:])
    assert "press-does-not-serve" in report(wrong.value)
    assert advise(job).refused


def test_what_keeps_the_joint_from_being_known_stands_first_and_its_ways_out_are_told_once(tmp_path: Path) -> None:
    # No compound, press or screws: one reason is firm; the size of the bore, and all that asks for it, hangs on it.
    job = shop(
        tmp_path, "fernhill",
        ("stock", 'diameter = "25 mm"', 'diameter = "15 mm"'), ("lathe", "jaw_depth = .32 mm.", 'jaw_depth = "12 mm"'),
    )  # fmt: skip
    with pytest.raises(Refused) as wrong:
        make_procedure(job)
    problems = wrong.value.problems
    assert problems[0].where == "bar-outside-the-fits"
    judged = ["Cannot be judged yet" not in one.said for one in problems]
    assert judged == sorted(judged, reverse=True)
    assert not all(judged)
    for one in problems:
        if "Cannot be judged yet" in one.said:
            assert "Not known" in one.wrong
            assert "or: Mend what keeps" not in one.do
    assert any(one.do == "First mend what stands above: bar-outside-the-fits" for one in problems)
