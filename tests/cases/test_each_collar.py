"""Two collars on two seats: sizes and places for each, one verdict on a tight bore, and nothing listed that is not there."""

from functools import cache
from pathlib import Path

import pytest

from shops import EXAMPLES, shop
from tailtrue.advise import make_procedure
from tailtrue.assemble.filling import pieces
from tailtrue.assemble.reasons import figures
from tailtrue.facts import FactSpec
from tailtrue.procedure import Procedure, Step
from tailtrue.render import to_html, to_markdown

THOU = 0.0254
COLLARS = ("collar 1", "collar 2")


@cache
def sheet(name: str) -> Procedure:
    return make_procedure(EXAMPLES / f"{name}.toml")


def step(name: str, wanted: str) -> Step:
    return next(one for phase in sheet(name).phases for one in phase.steps if one.id == wanted)


def test_an_unmeasured_bar_has_a_pair_of_sizes_for_each_seat() -> None:
    (sizes,) = [
        check for check in step("quarry-road/job", "measure-bar").checks if len(check.blanks) == 2 and not check.instrument
    ]
    assert [(blank.label, blank.each) for blank in sizes.blanks] == [("smallest bore", COLLARS), ("largest bore", COLLARS)]
    for written in (to_html, to_markdown):
        page = written(sheet("quarry-road/job"))
        for collar in COLLARS:
            for size in ("smallest bore", "largest bore"):
                assert f"{collar}, {size}" in page


@pytest.mark.parametrize("wanted", ["gauge-bore", "take-collar-off"])
def test_half_to_one_thou_over_the_measured_bar_is_accepted_wherever_the_bore_is_judged(wanted: str) -> None:
    """Trade check value: half to one thousandth of an inch over the measured bar slides on by hand and may be bonded."""
    seats = (24.965, 24.968)  # the largest readings of the job file
    for seat, check in zip(seats, step("fernhill/job", wanted).checks, strict=True):
        assert check.limits is not None
        assert check.limits.low is not None
        assert check.limits.high is not None
        assert check.limits.low.value <= seat + 0.5 * THOU
        assert seat + THOU <= check.limits.high.value


def test_four_thou_under_wants_one_more_pass_of_two_thou_a_side() -> None:
    """Trade check value; two thousandths are a whole number of divisions of this lathe."""
    lines = ["".join(map(str, line)) for line in step("quarry-road/job", "gauge-bore").text]
    assert any("Half of what is missing is the depth per side." in line for line in lines)
    (depth,) = {
        one.value for one in figures(step("quarry-road/job", "bore-finish-unmeasured")) if one.fact == "bore.finish_depth"
    }
    assert depth + 1e-9 >= 4 * THOU / 2


def test_a_bar_that_is_made_here_is_not_laid_ready() -> None:
    assert "finished-bar" not in {need.id for need in sheet("fernhill/job").needs}
    assert "finished-bar" in {need.id for need in sheet("fernhill/use-bar").needs}


def worn_at_the_saw(tree: Procedure) -> set[str]:
    return {state.id for state in tree.safety_review.wear if "saw" in state.id}


def test_a_hacksaw_is_no_power_saw() -> None:
    tree = sheet("quarry-road/job")
    assert worn_at_the_saw(tree) == {"hand-saw"}
    told = {caution.id for phase in tree.phases for one in phase.steps for caution in (*phase.cautions, *one.cautions)}
    assert "round-bar-rolls-by-hand" in told
    assert "round-bar-rolls" not in told
    assert worn_at_the_saw(sheet("fernhill/job")) == {"saw"}


def test_a_bolted_nose_has_bolts_and_no_cams(tmp_path: Path) -> None:
    tree = make_procedure(shop(tmp_path, "fernhill", ("lathe", r'spindle_nose = "[a-z0-9-]+"', 'spindle_nose = "bolted"')))
    told = {caution.id for phase in tree.phases for one in phase.steps for caution in (*phase.cautions, *one.cautions)}
    assert "nose-bolts-not-home" in told
    assert "nose-not-home" not in told


@pytest.mark.parametrize(("names", "said"), [({"a-b-c": "a, b and c"}, "a, b and c"), ({}, "a b c")])
def test_a_choice_keeps_the_commas_of_its_name(names: dict[str, str], said: str) -> None:
    spec = FactSpec("some.choice", "choice", "some choice", "decided", choices=("a-b-c",), names=names)
    assert pieces(spec, "some.choice", "a-b-c") == (said,)
