"""A stop that lacks a fact because another choice found no way is no reason of its own: it is counted, or names that choice."""

from pathlib import Path

import pytest

from shops import shop
from tailtrue.advise import advise, make_procedure
from tailtrue.errors import Problem, Refused, report

NO_JOINT = (
    ("crib", 'compound_gap = "0.15 mm"', 'press_force = "5 kN"'),
    ("crib", 'compound_cure = "24 h"', 'press_opening = "500 mm"'),
    ("crib", 'spacer = "12 mm"', ""),
)


def problems_of(job: Path) -> tuple[Problem, ...]:
    with pytest.raises(Refused) as wrong:
        make_procedure(job)
    assert report(wrong.value)
    return tuple(wrong.value.problems)


def test_what_only_follows_from_reasons_above_is_counted_and_named_in_one_line(tmp_path: Path) -> None:
    # A press is there and too weak; without compound no way fixes the collars, so that no bore is known.
    job = shop(tmp_path, "fernhill", *NO_JOINT)
    *firm, last = problems_of(job)
    follow = [one for one in advise(job).refused if one.follows]
    assert len(follow) >= 2
    assert last.where == ", ".join(one.id for one in follow)
    assert last.said == f"{len(follow)} more cannot be judged yet"
    assert "Mend those first" in last.do
    assert {one.where for one in firm} == {one.id for one in advise(job).refused if not one.follows}
    assert "press-does-not-serve" in {one.where for one in firm}
    for one in (*firm, last):
        assert "Not known" not in one.wrong
        assert "Mend what keeps" not in one.do


def test_what_keeps_the_joint_from_being_known_stands_first(tmp_path: Path) -> None:
    # No compound, press or screws: one reason is firm; the size of the bore, and all that asks for it, hangs on it.
    job = shop(
        tmp_path, "fernhill",
        ("stock", 'diameter = "25 mm"', 'diameter = "15 mm"'), ("lathe", "jaw_depth = .32 mm.", 'jaw_depth = "12 mm"'),
    )  # fmt: skip
    problems = problems_of(job)
    assert problems[0].where == "bar-outside-the-fits"
    judged = ["cannot be judged yet" not in one.said for one in problems]
    assert judged == [True] * (len(problems) - 1) + [False]


def test_a_stop_that_lacks_more_than_the_joint_names_the_joint_and_what_it_lacks(tmp_path: Path) -> None:
    # Nobody measured the hole through the chuck: that is no matter of the joint, and is told.
    job = shop(tmp_path, "fernhill", *NO_JOINT, ("lathe", 'through_bore = "40 mm"\n', ""))
    (hanging,) = [one for one in problems_of(job) if one.where == "bore-runs-into-the-chuck"]
    assert hanging.said.startswith("Cannot be judged yet: ")
    assert "How are the collars fixed to the bar? No way fits" in hanging.wrong
    assert "press-does-not-serve" in hanging.do
    assert "thinner bar" not in hanging.do
