"""A bar set true in four independent jaws: a lathe with no scroll chuck, and one whose scroll chuck does not pass the bar."""

import re
from pathlib import Path

import pytest

from shops import EXAMPLES, shop, tailtrue
from tailtrue.advise import advise, make_procedure
from tailtrue.procedure import Procedure, Step

Change = tuple[str, str, str]
SMALL_HOLE: Change = ("lathe", 'through_bore = "40 mm"', 'through_bore = "20 mm"')
FOUR_JAW = (
    '\n[[lathe.chucks]]\nlabel = "125 mm four-jaw chuck"\njaws = 4\nkind = "independent"\nbody = "125 mm"\n'
    'marked_speed = "900 1/min"\ngrips_to = "80 mm"\nthrough_bore = "32 mm"\njaw_depth = "25 mm"\ncondition = "good"\n'
)
BESIDE: Change = ("lathe", r"\Z", FOUR_JAW)
TURNS_WITH_THE_BAR = ("face-bar", "centre-bar")


def names(sheet: Procedure) -> list[str]:
    return [step.id for phase in sheet.phases for step in phase.steps]


def step_of(sheet: Procedure, name: str) -> Step:
    return next(step for phase in sheet.phases for step in phase.steps if step.id == name)


def refused(job: Path) -> list[str]:
    return [one.id for one in advise(job).refused]


def test_a_lathe_with_a_four_jaw_alone_gets_a_sheet_on_one_chuck() -> None:
    sheet = make_procedure(EXAMPLES / "weir-cottage" / "job.toml")
    order = names(sheet)
    marks = ["close-four-jaw", "hold-bar-four-jaw", "face-bar", "centre-bar", "keep-four-jaw", "hold-uneven", "turn-band"]
    assert [one for one in order if one in marks] == marks
    assert not {"close-chuck", "change-to-bar-four-jaw", "change-to-four-jaw", "change-from-four-jaw"} & set(order)
    told = " ".join(str(check.text) for check in step_of(sheet, "hold-bar-four-jaw").checks)
    assert "Run-out beside the jaws and at the free end" in told


def test_no_step_of_that_sheet_speaks_of_a_scroll_chuck_or_of_three_key_positions() -> None:
    sheet = make_procedure(EXAMPLES / "weir-cottage" / "job.toml")
    steps = " ".join(phase.model_dump_json() for phase in sheet.phases)
    assert not re.search("all three key|three-jaw|scroll chuck|all three meet", steps)


def test_a_scroll_chuck_that_does_not_pass_the_bar_gives_way_to_a_four_jaw_that_does(tmp_path: Path) -> None:
    sheet = make_procedure(shop(tmp_path, "ropewalk", SMALL_HOLE, BESIDE))
    order = names(sheet)
    marks = [
        "close-chuck",
        "change-to-bar-four-jaw",
        "hold-bar-four-jaw",
        "centre-bar",
        "change-from-four-jaw",
        "hold-blank-spacer",
    ]
    assert [one for one in order if one in marks] == marks
    for name in TURNS_WITH_THE_BAR:
        speeds = [piece.value for line in step_of(sheet, name).settings for piece in line.value
                  if not isinstance(piece, str) and piece.rounding == "speed"]  # fmt: skip
        assert speeds
        assert max(speeds) <= 900
    assert "125 mm four-jaw chuck, for the bar" in ["".join(map(str, need.name)) for need in sheet.needs]


@pytest.mark.parametrize(
    ("changes", "stop"),
    [
        ([("lathe", 'through_bore = "32 mm"\n', "")], "four-jaw-does-not-take-the-bar"),
        ([("lathe", 'through_bore = "32 mm"', 'through_bore = "22 mm"')], "bar-end-not-held"),
        ([("crib", 'indicator_division = "0.01 mm"', 'indicator_division = "0.05 mm"')], "no-indicator-for-four-jaws"),
        ([("lathe", 'spindle_length = "330 mm"', 'spindle_length = "150 mm"')], "bar-stands-out-behind"),
        ([("lathe", 'spindle_bore = "28 mm"', 'spindle_bore = "20 mm"\nsteady_from = "8 mm"\nsteady_to = "60 mm"')],
         "four-jaws-and-no-room-inside"),
    ],
    ids=["hole not measured", "hole too small", "coarse indicator", "stands out behind", "thick, with a steady"],
)  # fmt: skip
def test_what_four_jaws_cannot_hold_is_refused_in_its_own_words(tmp_path: Path, changes: list[Change], stop: str) -> None:
    job = shop(tmp_path, "weir-cottage", *changes)
    assert stop in refused(job)
    answer = tailtrue("check", job)
    assert answer.returncode == 5
    said = answer.stdout + answer.stderr
    assert "bore-runs-into-the-chuck" not in said
    assert "crib.toml:15 drive" not in said


def test_no_chuck_at_all_is_asked_for() -> None:
    tree = advise(EXAMPLES / "weir-cottage" / "job.toml").case
    assert tree.value("chuck.kind") == "independent"
    assert tree.value("collar.banded") is True
