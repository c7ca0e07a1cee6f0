"""What collars and bar are made of: plastics weighed and left out, bars of the rack told apart."""

from pathlib import Path

import pytest

from shops import shop, tailtrue
from tailtrue.advise import advise, make_procedure
from tailtrue.errors import Refused

NYLON = '\n[[stock.collar_bars]]\nlabel = "nylon rod"\nmaterial = "{}"\ndiameter = "70 mm"\nlength = "110 mm"\n'
ROD = '\n[[stock.collar_bars]]\nlabel = "{}"\nmaterial = "{}"\ndiameter = "{}"\nlength = "110 mm"\n'
RACK = '\n[[stock.bars]]\nlabel = "{}"\nmaterial = "steel-low-carbon-cold-drawn"\ndiameter = "{}"\nlength = "600 mm"\nfinish = "{}"\n'


@pytest.mark.parametrize(
    ("plastic", "said"), [("nylon", "takes up water"), ("acetal", "nine times"), ("pvc-rigid", "creeps")]
)
def test_a_plastic_in_the_rack_is_left_out_with_the_reason(tmp_path: Path, plastic: str, said: str) -> None:
    job = shop(tmp_path, "fernhill", ("stock", r"\Z", NYLON.format(plastic)))
    make_procedure(job)
    case = advise(job).case
    judged = {one["label"]: (one["verdict"], one["reason"]) for one in case.value("collar.offers")}
    assert judged["nylon rod"][0] == "does not serve"
    assert said in judged["nylon rod"][1]
    assert case.value("collar.material") == "aluminium-6082-t6"


def test_a_rack_with_plastic_alone_is_refused_for_that(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("stock", '"aluminium-6082-t6"\ndiameter', '"nylon"\ndiameter'))
    with pytest.raises(Refused):
        make_procedure(job)
    assert [one.id for one in advise(job).refused] == ["no-metal-for-the-collars"]


@pytest.mark.parametrize("listed", [False, True])
def test_why_not_nylon_answers(tmp_path: Path, listed: bool) -> None:
    job = shop(tmp_path, "fernhill", *([("stock", r"\Z", NYLON.format("nylon"))] if listed else []))
    answer = tailtrue("why-not", job, "collar.material=nylon")
    assert answer.returncode == 0, answer.stderr
    said = " ".join(answer.stdout.split())
    assert "It does not serve: takes up water and grows: no use as a collar to measure." in said
    assert ("nylon rod: does not serve" in said) is listed


def test_a_metal_of_shorter_chips_comes_before_a_thicker_piece(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("stock", r"\Z", ROD.format("brass end", "brass-free-cutting", "65 mm")))
    case = advise(job).case
    assert case.value("collar.metal") == "short-chip"
    assert case.value("collar.material") == "brass-free-cutting"
    judged = {one["label"]: (one["verdict"], one["reason"]) for one in case.value("collar.choices")}
    assert judged["brass end"][0] == "chosen"
    verdict, reason = judged["70 mm aluminium round, rack D"]
    assert verdict == "left"
    assert reason.startswith("aluminium 6082-T6: another metal comes first")


def test_of_one_metal_the_thickest_is_taken_and_the_other_is_told_so(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("stock", r"\Z", ROD.format("thin end", "aluminium-6061-t6", "65 mm")))
    judged = {one["label"]: (one["verdict"], one["reason"]) for one in advise(job).case.value("collar.choices")}
    assert judged["thin end"] == ("left", "thinner than the other: fewer skims are in it")


def test_the_job_may_name_the_other_metal(tmp_path: Path) -> None:
    rod = ("stock", r"\Z", ROD.format("brass end", "brass-free-cutting", "65 mm"))
    named = ("job", r"\Z", '\ncollar_bar = "70 mm aluminium round, rack D"\n')
    case = advise(shop(tmp_path, "fernhill", rod, named)).case
    assert (case.value("collar.metal"), case.value("collar.material")) == ("named", "aluminium-6082-t6")
    judged = {one["label"]: one["reason"] for one in case.value("collar.choices")}
    assert judged["brass end"] == "the job names the other"


@pytest.mark.parametrize(
    ("material", "row", "said"),
    [
        ("nylon", "nylon", "swells"),
        ("pvc-rigid", "rigid-pvc", "creeps"),
        ("steel-medium-carbon", "steel", "springs the bar"),
        ("stainless-304", "stainless", "hardens where a tool rubs"),
        ("tool-steel-o1", "hard-steel", "hard place"),
    ],
)
def test_what_never_becomes_a_collar_is_judged_on_paper_with_its_reason(
    tmp_path: Path, material: str, row: str, said: str
) -> None:
    job = shop(tmp_path, "fernhill", ("stock", r"\Z", ROD.format("other", material, "70 mm")))
    sheet = make_procedure(job)
    choice = next(one for one in sheet.choices if one.id == "collar.metal")
    assert choice.chosen == "wrought aluminium"
    names = {one.then: one.name for one in advise(job).case.knowledge.decisions["collar.metal"].rows}
    way = next(one for one in choice.alternatives if one.name == names[row])
    assert (way.verdict, said in way.reason) == ("no", True)


def test_each_material_that_serves_has_a_row_that_may_win_and_each_other_one_that_never_does(tmp_path: Path) -> None:
    known = advise(shop(tmp_path, "fernhill")).case.knowledge
    never = {row.then: bool(row.never_taken) for row in known.decisions["collar.metal"].rows}
    metals = known.tables["materials/collar_metals"]
    for material in known.tables["materials/materials"].rows:
        metal = metals.one(material=material.text("material"))
        serves = material.text("roles") == "collar"
        assert never[metal.text("group")] is not serves
        assert bool(metal.cells["against"]) is not serves


def test_why_not_answers_for_the_metal_that_was_taken_and_for_one_that_would_serve(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill")
    assert "It is what was taken here." in tailtrue("why-not", job, "collar.material=aluminium-6082-t6").stdout
    assert "It would serve" in tailtrue("why-not", job, "collar.material=brass-free-cutting").stdout
    wrong = tailtrue("why-not", job, "collar.material=cheese")
    assert wrong.returncode == 2
    assert "'cheese' is no material here" in wrong.stderr


def test_each_bar_that_is_left_has_a_reason_of_its_own(tmp_path: Path) -> None:
    more = RACK.format("thin", "20 mm", "cold-drawn") + RACK.format("like", "25 mm", "cold-drawn")
    job = shop(tmp_path, "fernhill", ("stock", r"\Z", more + RACK.format("black", "32 mm", "hot-rolled")))
    judged = {one["label"]: one for one in advise(job).case.value("bar.offers")}
    assert [one["verdict"] for one in judged.values()] == ["chosen", "left", "left", "left"]
    assert judged["thin"]["reason"] == "thinner than the one chosen: it bends more"
    assert judged["like"]["reason"] == "alike in thickness and surface: the first on the list is taken"
    assert len({one["reason"] for one in judged.values()}) == 4
