"""The card of the shipped knowledge: what is wrong in it is found when it is loaded, and what it takes is the sheet's own."""

import shutil
from pathlib import Path

import pytest

from shops import EXAMPLES
from tailtrue.advise import make_procedure
from tailtrue.errors import KnowledgeInvalid, report
from tailtrue.inspection.sheet import figures_in
from tailtrue.parts import Figure
from tailtrue.places import knowledge_folder
from tailtrue.procedure import CardLine, Procedure
from tailtrue.store.load import load_knowledge

BROKEN = [
    # what stands there, what is written instead, what the report must say
    ('steps = ["face-bar"]', 'steps = ["face-the-bar"]', "the group 'Face the bar' of the card names a step that is not there"),
    ('fact = "bar.facing.speed"', 'fact = "bar.centring.speed"', "bar.centring.speed: no step of the group 'Face the bar' sets this"),
    ('{ fact = "bore.add_least", label = "least: largest bar plus" }', '{ fact = "bore.add_least" }', "its value has words that the card would lose"),
    ('{ fact = "bore.head_low", label = "collar 1, A, at least" }', '{ fact = "bore.head_low" }', "its value has words that the card would lose"),
    ("{{ skim.depth_divisions }}\u00a0div.", "{{ skim.depth_divisons }}\u00a0div.", "no fact is named 'skim.depth_divisons'"),
    ("{{ lathe.dial_division }} a division.", "{{ lathe.dail_division }} a division.", "no fact is named 'lathe.dail_division'"),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "says"), BROKEN, ids=[row[2] for row in BROKEN])
def test_a_fault_of_the_card_is_reported(tmp_path: Path, old: str, new: str, says: str) -> None:
    folder = tmp_path / "knowledge"
    shutil.copytree(knowledge_folder(), folder)
    text = (folder / "page.toml").read_text(encoding="utf-8")
    assert old in text
    (folder / "page.toml").write_text(text.replace(old, new), encoding="utf-8")
    with pytest.raises(KnowledgeInvalid) as wrong:
        load_knowledge(folder)
    assert says in report(wrong.value)
    assert "knowledge/page.toml" in report(wrong.value)


@pytest.fixture(scope="module", params=["fernhill", "quarry-road"])
def example(request: pytest.FixtureRequest) -> Procedure:
    return make_procedure(EXAMPLES / request.param / "job.toml")


def lines(tree: Procedure, title: str) -> list[CardLine]:
    return [line for group in tree.card.groups if group.title == title for line in group.lines]


def test_every_line_is_a_setting_of_its_step(example: Procedure) -> None:
    steps = {step.number: step for phase in example.phases for step in phase.steps}
    for group in example.card.groups:
        assert group.lines
        for line in group.lines:
            assert line.value in [figure for setting in steps[line.step].settings for figure in figures_in(setting.value)]


def test_each_number_of_an_operation_stands_once(example: Procedure) -> None:
    for group in example.card.groups:
        told = [(line.label, line.value) for line in group.lines]
        assert len(told) == len(set(told)), group.title


def test_every_drill_stands_on_the_card_with_its_speed_under_the_name_of_the_step(example: Procedure) -> None:
    step = next(step for phase in example.phases for step in phase.steps if step.id == "drill-blank")
    drills = [(setting.label, *setting.value) for setting in step.settings if len(setting.label) > 1]
    assert drills
    assert [(line.label, line.value) for line in lines(example, "Drill")[1:]] == drills


def test_the_bore_of_a_measured_bar_is_a_size_and_of_an_unmeasured_one_a_rule(example: Procedure) -> None:
    told = {line.value.fact: line.label for line in lines(example, "Bore, finish")}
    if example.title.dials == "metric":
        assert told["bore.head_low"] == ("collar 1, A, at least",)
        assert told["bore.tail_high"] == ("collar 2, B, at most",)
        assert "bore.add_least" not in told
    else:
        assert told["bore.add_least"] == ("least: largest bar plus",)
        assert told["bore.add_most"] == ("most: least bar plus",)
        assert "bore.head_low" not in told


def test_a_depth_says_per_side_and_how_many_divisions_of_the_dial(example: Procedure) -> None:
    (line,) = [line for line in lines(example, "True, then skim") if line.value.fact == "skim.depth"]
    words, divisions, _ = line.label
    assert "per side" in str(words)
    assert isinstance(divisions, Figure)
    assert divisions.fact == "skim.depth_divisions"
    reads = {"metric": "reads diameter and goes on by twice", "inch": "reads radius and goes on by just"}
    (note,) = [note for note in example.card.notes if note.label == ("Depth is per side",)]
    assert reads[example.title.dials] in str(note.value[0])


def test_the_step_that_is_told_is_the_one_that_sets_the_number(example: Procedure) -> None:
    (speed,) = [line for line in lines(example, "True, then skim") if line.value.fact == "skim.speed"]
    step = next(step for phase in example.phases for step in phase.steps if step.number == speed.step)
    assert step.id == "true-collars"
