"""What is chosen changes the steps: oil, dial, centres, screws of the tailstock, who stands by; from whole jobs."""

from pathlib import Path

import pytest

from shops import EXAMPLES, shop
from tailtrue.advise import advise, make_procedure
from tailtrue.parts import Figure, Text
from tailtrue.plan import make_plan
from tailtrue.procedure import Procedure

Change = tuple[str, str, str]


def made(folder: Path, name: str, *changes: Change, job: str = "job.toml") -> Procedure:
    return make_procedure(shop(folder, name, *changes).with_name(job))


def names(sheet: Procedure) -> set[str]:
    return {step.id for phase in sheet.phases for step in phase.steps}


def plain(text: Text) -> str:
    return "".join(piece.fact if isinstance(piece, Figure) else piece for piece in text)


def setting(sheet: Procedure, step: str, label: str) -> str | None:
    found = next(one for phase in sheet.phases for one in phase.steps if one.id == step)
    return next((plain(line.value) for line in found.settings if plain(line.label) == label), None)


@pytest.mark.parametrize(
    ("name", "fluid"), [("fernhill", "oil, brushed on before the cut"), ("quarry-road", "dry")], ids=["aluminium", "brass"]
)
def test_aluminium_is_oiled_and_brass_is_cut_dry(name: str, fluid: str) -> None:
    # Common practice: aluminium builds up on a dry edge; free-cutting brass needs nothing.
    sheet = make_procedure(EXAMPLES / name / "job.toml")
    for step in ("drill-blank", "bore-rough", "rough-collars", "true-collars"):
        assert setting(sheet, step, "cutting fluid") == fluid
    assert setting(sheet, "centre-bar", "cutting fluid") == "oil, brushed on before the cut"


@pytest.mark.parametrize(("reads", "dialled"), [("radius", "half of it"), ("diameter", "all of it")])
def test_a_dial_that_reads_the_radius_is_turned_by_half_of_what_comes_off(reads: str, dialled: str, tmp_path: Path) -> None:
    sheet = made(tmp_path, "fernhill", ("lathe", r'dial_reads = "\w+"', f'dial_reads = "{reads}"'))
    assert setting(sheet, "set-tool", "to take an amount off the diameter, dial") == dialled


def test_a_tailstock_with_one_screw_is_not_told_of_two(tmp_path: Path) -> None:
    one = made(tmp_path / "one", "fernhill", ("lathe", 'set_over = "two-screws"', 'set_over = "one-screw"'))
    two = made(tmp_path / "two", "fernhill")
    assert "move-tailstock-one-screw" in names(one)
    assert "move-tailstock" not in names(one)
    assert "move-tailstock" in names(two)
    assert "move-tailstock-one-screw" not in names(two)


def test_a_taper_is_set_over_and_back_with_one_screw_as_well(tmp_path: Path) -> None:
    change = ("lathe", 'set_over = "two-screws"', 'set_over = "one-screw"')
    sheet = made(tmp_path, "fernhill", change, job="taper-and-return.toml")
    assert {"set-over-one-screw", "set-back-one-screw", "move-tailstock-one-screw"} <= names(sheet)
    assert not names(sheet) & {"set-over", "set-back", "move-tailstock"}


def test_an_adult_saws_for_somebody_under_age(tmp_path: Path) -> None:
    young = made(tmp_path / "young", "fernhill", ("job", "minor = false", "minor = true"))
    assert setting(young, "saw-bar", "who saws") == "an adult of the shop"
    assert setting(young, "check-person", "stands by") == "the trainer, with a hand at the stop"
    grown = made(tmp_path / "grown", "fernhill")
    assert setting(grown, "saw-bar", "who saws") is None
    assert setting(grown, "check-person", "stands by") == "somebody within call"


def test_who_works_alone_agrees_a_call_beforehand() -> None:
    sheet = make_procedure(EXAMPLES / "quarry-road" / "job.toml")
    assert setting(sheet, "check-person", "stands by") == "a call agreed beforehand"


def test_a_stout_bar_asks_for_one_spring_pass_and_no_steady() -> None:
    sheet = make_procedure(EXAMPLES / "fernhill" / "use-bar.toml")
    assert setting(sheet, "skim-collars", "spring passes over both, cross slide untouched") == "one"
    assert setting(sheet, "set-tool", "steady between the centres") == "none"


@pytest.mark.parametrize(("name", "again"), [("fernhill", "in a quarter of a year"), ("quarry-road", "in a year")])
def test_a_shared_lathe_is_tested_sooner_again(name: str, again: str) -> None:
    sheet = make_procedure(EXAMPLES / name / "use-bar.toml")
    assert setting(sheet, "put-away", "next test, if nothing happens before") == again


def test_a_sheet_tells_only_the_choices_it_asked_for() -> None:
    sheet = make_procedure(EXAMPLES / "fernhill" / "chucked-bar-test.toml")
    asked = {choice.id for choice in sheet.choices}
    assert {"chucked.raise_when_larger", "bar.cut_wet"} <= asked
    assert not asked & {"centre.head", "drive.way", "skim.springs", "saw.who", "hole.way"}
    whole = {choice.id for choice in make_procedure(EXAMPLES / "fernhill" / "job.toml").choices}
    assert not whole & {"chucked.raise_when_larger", "chucked.raise_when_smaller"}


BOTH = ("crib", 'tool_material = "HSS"', 'tool_material = "both"')


@pytest.mark.parametrize(
    ("job", "tool"), [("job", "HSS"), ("job-cast", "HSS"), ("chucked-bar-test", "HSS"), ("iron", "carbide")]
)
def test_where_both_kinds_of_tool_lie_ready_the_sheet_says_which(job: str, tool: str, tmp_path: Path) -> None:
    # Common practice: a honed edge for a thin skim of soft metal, a tip for the skin of iron.
    iron = [("stock", 'material = "aluminium-6082-t6"', 'material = "iron-grey"')] if job == "iron" else []
    path = shop(tmp_path, "fernhill", BOTH, *iron).with_name("job.toml" if job == "iron" else f"{job}.toml")
    case = advise(path).case
    assert case.value("tool.material") == tool
    sharpened = {step.file.id for phase in make_plan(case, advise(path).route).phases for step in phase.steps}
    assert ("stone-tool" in sharpened) is (tool == "HSS" and job != "chucked-bar-test")
