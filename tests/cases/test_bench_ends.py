"""Ends of a bar centred at the bench where nothing on the lathe holds them, from the files to the sheet."""

from pathlib import Path

import pytest

from shops import EXAMPLES, shop, tailtrue
from tailtrue.advise import advise, make_procedure
from tailtrue.procedure import Procedure

Change = tuple[str, str, str]
SMALL: tuple[Change, ...] = (
    ("job", '"lathe.toml"', '"lathe-small.toml"'),
    ("job", '"crib.toml"', '"crib-bench.toml"'),
)
BENCH = ["square-end-bench", "mark-centre", "drill-centre-bench", "check-centre-bench"]


def names(sheet: Procedure) -> list[str]:
    return [step.id for phase in sheet.phases for step in phase.steps]


def test_a_bar_that_nothing_on_the_lathe_holds_is_centred_at_the_bench() -> None:
    sheet = make_procedure(EXAMPLES / "weir-cottage" / "job-bench.toml")
    order = names(sheet)
    assert [one for one in order if one in BENCH] == BENCH
    assert not {"face-bar", "centre-bar", "hold-bar-bore", "hold-bar-steady", "hold-bar-four-jaw"} & set(order)
    assert order.index("check-centre-bench") < order.index("hold-blank-spacer")
    assert any("centred at the bench" in "".join(map(str, note.text)) for note in sheet.findings)


def test_its_collars_come_out_smaller_by_what_the_bar_runs_out(tmp_path: Path) -> None:
    case = advise(EXAMPLES / "weir-cottage" / "job-bench.toml").case
    wide = advise(shop(tmp_path, "weir-cottage", *SMALL, ("lathe-small", '"20 mm"', '"28 mm"'))).case
    assert (case.value("bar.hold"), wide.value("bar.hold")) == ("bench", "spindle-bore")
    assert case.value("collar.diameter") == 58.0  # 60 mm less 1 mm and 0.75 mm, down to whole millimetres
    assert wide.value("collar.diameter") == 59.0


@pytest.mark.parametrize(
    "change",
    [
        ("crib-bench", "drill_press = true\n", ""),
        ("crib-bench", 'upright_to = "40 mm"', 'upright_to = "21 mm"'),
        ("crib-bench", 'upright_height = "700 mm"', 'upright_height = "340 mm"'),
        ("crib-bench", 'caliper_resolution = "0.01 mm"\n', ""),
    ],
    ids=["no press", "plate too small", "press too low", "no caliper"],
)
def test_what_the_bench_cannot_do_is_refused_and_the_bench_is_named_as_a_way(tmp_path: Path, change: Change) -> None:
    answer = tailtrue("check", shop(tmp_path, "weir-cottage", *SMALL, change))
    assert answer.returncode == 5
    said = answer.stdout + answer.stderr
    assert "bar-end-not-held" in said
    assert "Centre its ends at the bench" in said


def test_plate_and_height_are_asked_for_together(tmp_path: Path) -> None:
    answer = tailtrue("check", shop(tmp_path, "weir-cottage", *SMALL, ("crib-bench", 'upright_to = "40 mm"\n', "")))
    assert answer.returncode == 4
    assert "upright_to" in answer.stdout + answer.stderr


def test_each_end_is_judged_by_itself_and_more_run_out_is_reckoned_with_than_four_places_show() -> None:
    """What four places find lies between the whole and seven tenths of the largest: 0.02 in over 0.707 is less than 0.03."""
    sheet = make_procedure(EXAMPLES / "weir-cottage" / "job-bench.toml")
    look = next(step for phase in sheet.phases for step in phase.steps if step.id == "check-centre-bench")
    told = {figure.fact: figure.value for line in look.settings for text in (line.value, line.reason)
            for figure in text if not isinstance(figure, str)}  # fmt: skip
    judged = next(check for check in look.checks if check.limits is not None)
    assert judged.limits is not None
    assert judged.limits.high is not None
    assert judged.limits.high.value == told["limit.bench_wall"] == pytest.approx(0.02 * 25.4)
    assert told["limit.bench_run_out"] == pytest.approx(0.03 * 25.4)
    assert told["limit.bench_run_out"] > told["limit.bench_wall"] / 0.5**0.5
    assert [(blank.label, blank.unit) for blank in judged.blanks] == [
        ("difference at end A", "mm"), ("difference at end B", "mm"),
    ]  # fmt: skip
    assert look.boxes == ("end A", "end B")
