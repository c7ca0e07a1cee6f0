"""Where the doubt leaves no room inside the limit, no step asks whether something is in limits: it is recorded only."""

from pathlib import Path

import pytest

from shops import EXAMPLES, shop
from tailtrue.advise import make_procedure
from tailtrue.parts import Dials
from tailtrue.procedure import Procedure, Step
from tailtrue.render.words import say

NO_LARGE_MICROMETER = ("crib", r'\[\[crib.outside_micrometers\]\]\nfrom = "50 mm".*?\n\n', "")
COARSE = ("crib", 'indicator_division = "0.002 mm"', 'indicator_division = "0.01 mm"')
NO_INDICATOR = ("crib", r'indicator_division = "0.002 mm"[^\n]*\n', "")
FIXED = ("lathe", r'set_over = "two-screws"', 'set_over = "none"')
ROUTES = ["use-bar", "taper-and-return"]


def sheet_of(folder: Path, job: str, *changes: tuple[str, str, str]) -> Procedure:
    """Fernhill with what it has to measure by taken away, going on all the same."""
    said = (job, "^number = ", "coarse_use = true\nnumber = ")
    return make_procedure(shop(folder, "fernhill", NO_LARGE_MICROMETER, said, *changes).with_name(f"{job}.toml"))


def told(step: Step, dials: Dials) -> list[str]:
    """What a step asks, in words: its lines and its checks."""
    return [say(text, dials) for text in (*step.text, *(check.text for check in step.checks))]


def lines(sheet: Procedure) -> dict[str, list[str]]:
    return {step.id: told(step, sheet.title.dials) for phase in sheet.phases for step in phase.steps}


@pytest.mark.parametrize("job", ROUTES)
def test_a_doubt_that_fills_the_limit_is_given_no_box_for_a_verdict(job: str, tmp_path: Path) -> None:
    sheet = sheet_of(tmp_path, job, COARSE)
    assert sheet.look_up is not None
    assert not sheet.look_up.verdict_possible
    every = lines(sheet)
    assert not [line for step in every.values() for line in step if "in limits" in line.casefold()]
    assert [line for line in every["decide"] if line.startswith("Record only, no verdict with this instrument")]
    nothing = "IF the difference is inside the doubt, THEN claim nothing about the limit. Go to step "
    assert [line for line in every["decide"] if line.startswith(nothing)]
    assert [line for line in every["restore"] if "until the difference is inside the doubt" in line]


@pytest.mark.parametrize("job", ROUTES)
def test_a_finer_instrument_is_given_one(job: str) -> None:
    sheet = make_procedure(EXAMPLES / "fernhill" / f"{job}.toml")
    assert sheet.look_up is not None
    assert sheet.look_up.verdict_possible
    every = lines(sheet)
    assert [line for line in every["decide"] if line.startswith("In limits: ")]
    assert not [line for step in every.values() for line in step if "no verdict" in line or "claim nothing" in line]


def test_the_tag_of_a_tailstock_that_was_set_over_comes_off_without_a_verdict(tmp_path: Path) -> None:
    every = lines(sheet_of(tmp_path, "taper-and-return", COARSE))
    assert "IF it is inside the doubt, THEN write difference and no verdict on the card." in every["tag-off"]


@pytest.mark.parametrize("changes", [(COARSE,), (NO_INDICATOR,)])
def test_a_tailstock_that_cannot_be_moved_is_judged_no_better(changes: tuple[tuple[str, str, str]], tmp_path: Path) -> None:
    every = lines(sheet_of(tmp_path, "use-bar", FIXED, *changes))
    assert "Write down that this instrument gives no verdict on the limit." in every["decide-fixed"]
    assert not [line for step in every.values() for line in step if "in limits" in line.casefold()]
    assert not [line for line in every["decide-fixed"] if "between in and out" in line]


def test_a_tailstock_that_cannot_be_moved_is_read_by_an_indicator_too(tmp_path: Path) -> None:
    sheet = sheet_of(tmp_path, "use-bar", FIXED)
    assert sheet.look_up is not None
    assert not sheet.look_up.can_move
    labels = [line.label for phase in sheet.phases for step in phase.steps if step.id == "indicate-collars"
              for line in step.settings]  # fmt: skip
    assert ("factor from the difference to how far the centre stands off",) in labels
