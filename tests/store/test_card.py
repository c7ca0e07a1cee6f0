"""The card of the shipped knowledge: what is wrong in it is found when it is loaded, and what it takes is the sheet's own."""

import shutil
from itertools import pairwise
from pathlib import Path

import pytest

from shops import EXAMPLES
from tailtrue.advise import make_procedure
from tailtrue.errors import KnowledgeInvalid, report
from tailtrue.inspection.sheet import figures_in
from tailtrue.places import knowledge_folder
from tailtrue.procedure import CardLine, Procedure
from tailtrue.store.load import load_knowledge

BROKEN = [
    # what stands there, what is written instead, what the report must say
    ('steps = ["face-bar"]', 'steps = ["face-the-bar"]', "the group 'Face the bar' of the card names a step that is not there"),
    ('fact = "bar.facing.speed"', 'fact = "bar.centring.speed"', "bar.centring.speed: no step of the group 'Face the bar' sets this"),
    ('{ fact = "bore.add_least", label = "bore at least: largest reading of its seat +" }', '{ fact = "bore.add_least" }', "its value has words that the card would lose"),
    ('beside = "skim.depth_divisions"', 'beside = "skim.depth"', "skim.depth: no step of the group 'True, then skim' tells this beside it"),
    ('steps = ["mount-work"]', 'steps = ["mount-works"]', "mount-works: a line of the card is of a step that is not there"),
    ('steps = ["mount-work"]', 'steps = ["restore"]', "restore: this step stands in two lines of the card"),
    ('answers = ["loose-clothing", "loose-hair"] },\n    { item = "guard, covers"', 'answers = ["chips-fly"] },\n    { item = "guard, covers"', "chips-fly: the card tells it as a danger"),
    ('"cover-off-under-power", "rescue-under-power"', '"cover-off", "rescue-under-power"', "cover-off: the card tells it as a danger"),
    ('{ fact = "bore.head_low", label = "end A, at least" }', '{ fact = "bore.head_low" }', "its value has words that the card would lose"),
    ('{ of = "droop", label', '{ of = "drop", label', "drop: no step of the group 'Droop of the arm' has a blank of this label"),
    ('activities = ["centre-on-press", "drill-press"]', 'activities = ["centre-on-pres", "drill-press"]', "centre-on-pres: brings a line of a page, and no step does it"),
    ("{{ joint.shrink_fit.holds_a_catch_to }} at most, bar", "{{ joint.shrink_fit.hold_a_catch_to }} at most, bar", "no fact is named 'joint.shrink_fit.hold_a_catch_to'"),
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
            assert line.value in [figure for setting in steps[line.step].settings for figure in figures_in(setting)]


def test_each_number_of_an_operation_stands_once(example: Procedure) -> None:
    for group in example.card.groups:
        told = [(line.label, line.value) for line in group.lines if line.label != ("divisions",)]
        assert len(told) == len(set(told)), group.title


def test_every_drill_stands_on_the_card_with_its_speed_and_is_called_a_drill_alone(example: Procedure) -> None:
    step = next(step for phase in example.phases for step in phase.steps if step.id == "drill-blank")
    drills = [(("drill ", setting.label[-1]), *setting.value) for setting in step.settings if len(setting.label) > 1]
    assert drills
    assert [(line.label, line.value) for line in lines(example, "Drill")[1:]] == drills


def test_the_bore_of_a_measured_bar_is_a_size_and_of_an_unmeasured_one_a_rule(example: Procedure) -> None:
    told = {line.value.fact: line.label for line in lines(example, "Bore, finish")}
    if example.title.dials == "metric":
        assert told["bore.head_low"] == ("end A, at least",)
        assert told["bore.tail_high"] == ("end B, at most",)
        assert "bore.add_least" not in told
    else:
        assert told["bore.add_least"] == ("bore at least: largest reading of its seat +",)
        assert told["bore.add_most"] == ("bore at most: least reading of its seat +",)
        assert "bore.head_low" not in told


def test_a_depth_says_per_side_and_how_many_divisions_of_the_dial_on_the_next_line(example: Procedure) -> None:
    told = lines(example, "True, then skim")
    (place,) = [at for at, line in enumerate(told) if line.value.fact == "skim.depth"]
    assert told[place].label == ("skim: per side",)
    assert told[place + 1].value.fact == "skim.depth_divisions"
    assert told[place + 1].label == ("divisions",)
    reads = {"metric": "reads diameter and goes on by twice", "inch": "reads radius and goes on by just"}
    (note,) = [note for note in example.card.notes if note.label == ("Depth is per side",)]
    assert reads[example.title.dials] in str(note.value[0])


def test_the_step_that_is_told_is_the_one_that_sets_the_number(example: Procedure) -> None:
    (speed,) = [line for line in lines(example, "True, then skim") if line.value.fact == "skim.speed"]
    step = next(step for phase in example.phases for step in phase.steps if step.number == speed.step)
    assert step.id == "true-collars"


ROUTES = {
    "job": "Before each start", "use-bar": "Before each start", "make-bar": "Before each start", "re-certify": "Before each start",
    "taper-and-return": "Before each start", "chucked-bar-test": "Before each start", "rework": "Before each start",
    "height-and-droop": "Before hands go in",
}  # fmt: skip


@pytest.mark.parametrize("name", ROUTES)
def test_every_route_has_a_card_with_short_lines_few_messages_and_its_list(name: str) -> None:
    tree = make_procedure(EXAMPLES / "fernhill" / f"{name}.toml")
    assert tree.card is not None
    assert 1 <= len(tree.card.steps) <= 15
    # A lathe that is isolated from the first line to the last asks for none; each that turns does.
    turns = any(step.machine == "turning" for phase in tree.phases for step in phase.steps)
    assert bool(tree.card.messages) == turns
    assert len(tree.card.messages) <= 3
    assert len(tree.card.start.lines) == 8
    assert tree.card.start.title == ROUTES[name]


def test_a_rework_in_which_nothing_turns_has_the_list_of_a_lathe_that_stands() -> None:
    tree = make_procedure(EXAMPLES / "quarry-road" / "rework.toml")
    assert tree.card is not None
    assert tree.card.start.title == "Before hands go in"
    assert not any(line.starts for line in tree.card.steps)


def test_lines_of_one_text_that_follow_each_other_are_told_once() -> None:
    tree = make_procedure(EXAMPLES / "fernhill" / "re-certify.toml")
    assert tree.card is not None
    told = [line.text for line in tree.card.steps]
    assert told.count("Skim all at one setting.") == 2  # once either way round
    assert all(one != after for one, after in pairwise(told))


def test_a_danger_of_the_sheet_is_told_or_kept_off(example: Procedure) -> None:
    assert example.card is not None
    kept_off = {name for line in example.card.start.lines for name in line.answers}
    assert kept_off == {
        "gloves-at-the-spindle",
        "loose-clothing",
        "loose-hair",
        "bar-out-behind-the-spindle",
        "stub-behind-the-spindle",
    }
    assert example.card.messages == ("cover-off-under-power", "rescue-under-power", "abrasive-cloth-by-hand")


def test_a_height_has_its_accepted_band_on_the_card() -> None:
    tree = make_procedure(EXAMPLES / "fernhill" / "height-and-droop.toml")
    told = {line.value.fact: line for group in tree.card.groups for line in group.lines}
    assert {"height.rise_least", "height.rise_most", "height.lean_least", "height.lean_most"} <= told.keys()


@pytest.mark.parametrize("shop", ["fernhill", "quarry-road"])
def test_a_taper_can_be_finished_and_the_tailstock_brought_back_from_the_card(shop: str) -> None:
    tree = make_procedure(EXAMPLES / shop / "taper-and-return.toml")
    finished = {line.value.fact: line for line in lines(tree, "The finished taper")}
    assert list(finished) == ["setover.large", "setover.small", "setover.length"]
    cut = {line.value.fact: line.value.value for line in lines(tree, "Turn the taper")}
    thick, thin = finished["setover.large"].value.value, finished["setover.small"].value.value
    passes = cut["setover.passes"]
    # One pass more than this many would take off more than stands there, one fewer would leave some.
    assert (passes - 1) * 2 * cut["setover.turning.depth"] < thick - thin <= passes * 2 * cut["setover.turning.depth"] + 1e-9
    (there,), (home,) = lines(tree, "Set over"), lines(tree, "Set back")
    assert {there.label, home.label} == {("toward you",), ("away from you",)}
    assert there.value == home.value
    (group,) = [group for group in tree.card.groups if group.title == "Set back"]
    assert [(place.label, place.unit) for place in group.places] == [
        ("with corrections", "mm" if shop == "fernhill" else "in")
    ]


def test_a_bar_centred_on_the_press_has_its_numbers_and_the_list_of_the_press() -> None:
    tree = make_procedure(EXAMPLES / "weir-cottage" / "job-bench.toml")
    told = [line.value.fact for line in lines(tree, "Centre the bar on the press")]
    assert told == ["bench.press_speed", "bar.centre_cone_depth"]
    (press,) = tree.card.besides
    assert press.title == "Before the drill press starts"
    assert {"guard of the press", "gloves", "key of its chuck"} <= {line.item for line in press.lines}


def test_a_job_that_makes_a_bar_tells_both_sides_of_a_blank_and_the_change_to_the_driver(example: Procedure) -> None:
    told = [line.text for line in example.card.steps]
    first, second = told.index("Face one side of each collar."), told.index("Face the second side.")
    change, fit = (
        told.index("Take the chuck off. Fit the driver."),
        told.index("Fit both centres. Mount the bar. Turn it by hand."),
    )
    assert first < second < told.index("Fix the collars.") < change < fit


@pytest.mark.parametrize("name", ["fernhill/height-and-droop", "quarry-road/rework"])
def test_a_card_on_which_nothing_turns_has_neither_chuck_limit_nor_a_centre_that_runs_dry(name: str) -> None:
    tree = make_procedure(EXAMPLES / f"{name}.toml")
    assert not lines(tree, "Chuck and stop")
    assert "chuck.speed_limit" not in {line.value.fact for group in tree.card.groups for line in group.lines}
    stops = [line[0] for line in tree.stop_at_once]
    assert not [stop for stop in stops if "centre" in stop or "chips" in stop.lower()]
    assert "The spindle moves, and no hand turns it." in stops


def test_a_blank_is_spotted_for_the_drill_and_not_for_the_bar(example: Procedure) -> None:
    (step,) = [step for phase in example.phases for step in phase.steps if step.id == "fit-spotting-drill"]
    reasons = "".join(str(piece) for setting in step.settings for piece in setting.reason)
    assert "first drill" in reasons
    assert "bar" not in reasons


def test_the_droop_of_the_arm_is_carried_on_the_card() -> None:
    tree = make_procedure(EXAMPLES / "fernhill" / "height-and-droop.toml")
    (group,) = [group for group in tree.card.groups if group.title == "Droop of the arm"]
    (place,) = group.places
    (step,) = [step for phase in tree.phases for step in phase.steps if step.number == place.step]
    assert (step.id, place.at, place.unit) == ("find-droop", "droop", "mm")
