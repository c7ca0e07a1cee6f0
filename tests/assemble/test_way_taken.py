"""How a number came about: the way that was taken is printed, and not the others."""

from pathlib import Path

import pytest

from shops import EXAMPLES, shop
from tailtrue.advise import make_procedure
from tailtrue.computed.registry import Limited, taken
from tailtrue.procedure import Derivation, Procedure

UNMARKED = ("lathe", r'marked_speed = "2500 1/min"', 'marked_speed = "unmarked"')


def line_of(tree: Procedure, fact: str) -> Derivation:
    return next(one for one in tree.derivations if one.fact == fact)


def test_a_way_that_tells_all_stands_alone() -> None:
    marked = line_of(make_procedure(EXAMPLES / "fernhill" / "job.toml"), "chuck.speed_limit")
    assert (marked.how, marked.limited_by) == ("the speed marked on the chuck", ())
    assert marked.weakest == "said", "what the user read off the chuck needs no book"


def test_another_job_takes_another_way(tmp_path: Path) -> None:
    unmarked = line_of(make_procedure(shop(tmp_path, "fernhill", UNMARKED)), "chuck.speed_limit")
    assert unmarked.how.startswith("a cautious figure for its size")
    assert "marked on the chuck" not in unmarked.how
    assert unmarked.weakest == "memory"


def test_sizes_that_were_weighed_tell_which_of_them_binds() -> None:
    tree = make_procedure(EXAMPLES / "fernhill" / "job.toml")
    length = line_of(tree, "bar.length")
    assert length.how == "the least of the lengths that were weighed, down to a whole step of the rule"
    assert length.limited_by == ("stiffness: a longer bar bends and chatters",)
    on_hand = line_of(make_procedure(EXAMPLES / "fernhill" / "re-certify.toml"), "collar.diameter")
    assert (on_hand.how, on_hand.limited_by) == ("as measured on the bar on hand", ())


@pytest.mark.parametrize(
    "job", ["fernhill/job", "quarry-road/job-tube", "fernhill/job-plate", "tannery-lane/job", "fernhill/use-bar"]
)
def test_no_line_tells_of_a_way_that_was_not_taken(job: str) -> None:
    """A sheet prints the branch, not the tree: no more of `else`, `where it was not given`, `until it has been measured`."""
    for one in make_procedure(EXAMPLES / f"{job}.toml").derivations:
        for untaken in (
            "; else ",
            "not given, a ",
            "where it was not",
            "until it has been measured",
            "; when it was not given",
        ):
            assert untaken not in one.how, (one.fact, one.how)


def test_what_chose_the_way_tells_it_where_nothing_else_is_said() -> None:
    assert taken(2.5, "as sawn") == Limited(2.5, "as sawn", how="as sawn")
    assert taken(2.5, "the bottle", "what the bottle says").how == "what the bottle says"
