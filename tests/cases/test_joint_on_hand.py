"""How the collars of a bar on hand are fixed is told of that bar; the crib of today says nothing of it."""

from pathlib import Path

import pytest

from shops import shop
from tailtrue.advise import advise, make_procedure
from tailtrue.errors import Refused
from tailtrue.procedure import Procedure

TOLD = r'^fixed_by = "retaining-compound"\n'
COOLING, FEELING = "cool-for-pass", "feel-rims"
ROUTES = ["use-bar", "re-certify", "taper-and-return"]


def job(folder: Path, name: str, fixed: str) -> Path:
    """The shop with a bar fixed so, and a thermometer to touch it with."""
    thermometer = ("crib", r"^compressed_air = true\n", "compressed_air = true\ncontact_thermometer = true\n")
    return shop(folder, "fernhill", ("stock", TOLD, fixed), thermometer).with_name(f"{name}.toml")


def steps(sheet: Procedure) -> list[str]:
    return [step.id for phase in sheet.phases for step in phase.steps]


def about_collars(sheet: Procedure) -> str:
    line = next(one for one in sheet.facts if one.label == ("Collars",))
    return "".join(piece if isinstance(piece, str) else "#" for piece in line.value)


@pytest.mark.parametrize("route", ROUTES)
def test_shrunk_on_collars_are_cooled_before_each_cut_and_no_figure_of_the_crib_is_told(tmp_path: Path, route: str) -> None:
    sheet = make_procedure(job(tmp_path, route, 'fixed_by = "shrink-fit"\n'))
    assert COOLING in steps(sheet)
    assert about_collars(sheet).endswith("fixed with shrink fit")
    assert "joint.shrink_fit.lets_go_at" not in sheet.model_dump_json()


@pytest.mark.parametrize("route", ROUTES)
def test_nobody_knowing_counts_as_shrunk_on_and_is_said(tmp_path: Path, route: str) -> None:
    sheet = make_procedure(job(tmp_path, route, ""))
    assert COOLING in steps(sheet)
    assert about_collars(sheet).endswith("fixed nobody knows how")
    assert any("Nobody told how the collars" in str(one.text[0]) for one in sheet.findings)


@pytest.mark.parametrize("told", ["retaining-compound", "set-screws", "axial-pin", "radial-pin", "press-fit", "split-clamp"])
def test_what_was_told_is_printed_and_nothing_is_cooled(tmp_path: Path, told: str) -> None:
    path = job(tmp_path, "use-bar", f'fixed_by = "{told}"\nworn_out_at = "58 mm"\n')
    assert advise(path).case.value("joint.fixed_by") == told
    sheet = make_procedure(path)
    assert COOLING not in steps(sheet)
    assert about_collars(sheet).replace("-", " ").endswith(f"fixed with {told.replace('-', ' ')}")
    trouble = [seen for seen, _, _ in sheet.if_it_goes_wrong]
    in_the_rim = told in {"set-screws", "axial-pin", "radial-pin", "split-clamp"}
    assert ("A set screw or a pin shows at the rim" in trouble) == in_the_rim


@pytest.mark.parametrize("route", ROUTES)
@pytest.mark.parametrize("fixed", ["set-screws", "axial-pin", "radial-pin", "split-clamp"])
def test_collars_with_steel_below_the_rim_are_cut_only_where_its_depth_is_told(
    tmp_path: Path, route: str, fixed: str
) -> None:
    with pytest.raises(Refused) as refused:
        make_procedure(job(tmp_path / "untold", route, f'fixed_by = "{fixed}"\n'))
    assert "worn_out_at in the stock file" in str(refused.value)
    told = job(tmp_path / "told", route, f'fixed_by = "{fixed}"\nworn_out_at = "61 mm"\n')
    assert advise(told).case.value("skim.worn_out_at") == 61.0
    assert FEELING in steps(make_procedure(told))


def test_rims_are_felt_where_nobody_knows_how_the_collars_are_fixed_and_not_where_they_are_bonded(tmp_path: Path) -> None:
    unknown = make_procedure(job(tmp_path / "unknown", "use-bar", ""))
    assert FEELING in steps(unknown)
    (felt,) = (step for phase in unknown.phases for step in phase.steps if step.id == FEELING)
    assert "Screw stands out of a turning collar" in "".join(str(one) for one in felt.cautions)
    assert FEELING not in steps(make_procedure(job(tmp_path / "bonded", "use-bar", 'fixed_by = "retaining-compound"\n')))


@pytest.mark.parametrize("fixed", ["", 'fixed_by = "set-screws"\n', 'fixed_by = "shrink-fit"\n'])
def test_the_height_check_asks_nothing_of_the_collars_of_a_bar_that_is_named(tmp_path: Path, fixed: str) -> None:
    path = job(tmp_path, "height-and-droop", fixed)
    path.write_text(path.read_text(encoding="utf-8") + 'bar_on_hand = "test bar 2, rack A"\n', encoding="utf-8")
    assert make_procedure(path).phases


@pytest.mark.parametrize("fixed", ["", 'fixed_by = "shrink-fit"\n'], ids=["not told", "shrunk on"])
@pytest.mark.parametrize("route", ROUTES)
def test_without_a_thermometer_nothing_is_printed_for_collars_that_warmth_may_loosen(
    tmp_path: Path, route: str, fixed: str
) -> None:
    with pytest.raises(Refused) as refused:
        make_procedure(shop(tmp_path, "fernhill", ("stock", TOLD, fixed)).with_name(f"{route}.toml"))
    assert "fixed_by of that bar in the stock file" in str(refused.value)


def test_where_no_bar_is_named_the_joint_is_that_of_the_bar_the_job_would_make(tmp_path: Path) -> None:
    case = advise(shop(tmp_path, "fernhill")).case
    assert case.value("joint.fixed_by") == case.value("joint.method")
