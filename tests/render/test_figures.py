"""The drawings of the making as they stand on a sheet: at their steps, told in words, at one with the tree."""

import re
from pathlib import Path

import pytest

from shops import EXAMPLES, shop
from tailtrue.advise import make_procedure
from tailtrue.procedure import Drawing, Procedure
from tailtrue.render.drawing import bar_drawing
from tailtrue.render.figures import KINDS, figure_of
from tailtrue.render.html import to_html
from tailtrue.render.markdown import to_markdown
from tailtrue.render.numbers import read, show

from .drawn import faults, text_boxes
from .reading import read_page
from .sample_drawings import PLANS

# Shops that draw what the examples do not: file, pattern, replacement.
OTHERWISE: dict[str, tuple[str, list[tuple[str, str, str]]]] = {
    "blank on the chuck face": ("fernhill", [("lathe", 'jaw_depth = "32 mm"', 'jaw_depth = "18 mm"')]),
    "bar in the steady": (
        "fernhill",
        [("lathe", 'spindle_bore = "38 mm"', 'spindle_bore = "20 mm"\nsteady_from = "8 mm"\nsteady_to = "60 mm"')],
    ),
    "two drills": ("quarry-road", [("crib", 'set = "inch-1/64-1/2"', 'sizes = ["13/64 in", "1/2 in"]')]),
    "deep jaws": (
        "quarry-road",
        [
            ("lathe", 'jaw_depth = "1 in"', 'jaw_depth = "1 3/8 in"'),
            ("crib", 'spacer = "3/8 in"', 'spacer = "13/16 in"'),
        ],
    ),
}


@pytest.fixture(scope="module", params=["fernhill", "quarry-road", *OTHERWISE])
def tree(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Procedure:
    if request.param not in OTHERWISE:
        return make_procedure(EXAMPLES / request.param / "job.toml")
    name, changes = OTHERWISE[request.param]
    return make_procedure(shop(Path(tmp_path_factory.mktemp("shop")), name, *changes))


def drawn(tree: Procedure) -> list[tuple[Drawing, str]]:
    dials = tree.title.dials
    bar = (tree.drawing, bar_drawing(tree.drawing, dials))
    return [bar, *((one, figure_of(one, dials)) for one in tree.drawings)]


def test_a_sheet_draws_blank_bar_hold_ladder_and_reach_at_their_steps(tree: Procedure) -> None:
    steps = {step.number: step.id for phase in tree.phases for step in phase.steps}
    at = {one.kind: steps.get(one.place, one.place) for one in tree.drawings}
    assert at["collar-blank"] == "saw-blanks"
    assert at["blank-held"] in ("hold-blank-jaws", "hold-blank-spacer")
    assert at["drill-ladder"] == "drill-blank"
    assert at["boring-reach"] == "set-boring-bar"
    held = {kind: step for kind, step in at.items() if kind.startswith("bar-in-")}
    assert list(held.values()) in (["hold-bar-bore"], ["hold-bar-steady"])


def test_the_changed_shops_draw_what_the_examples_do_not(tmp_path: Path) -> None:
    kinds = set()
    for place, (name, changes) in enumerate(OTHERWISE.values()):
        folder = tmp_path / str(place)
        folder.mkdir()
        kinds |= {one.id for one in make_procedure(shop(folder, name, *changes)).drawings}
    assert {"blank-in-jaws", "boring-reach", "bar-in-steady"} <= kinds


@pytest.mark.parametrize(
    ("job", "kinds"), [("job", {"bar-in-collet", "jaws-on-plug", "blank-in-soft-jaws"}), ("job-stub", {"collar-on-stub"})]
)
def test_other_ways_to_hold_are_drawn_and_hard_jaws_are_not(job: str, kinds: set[str]) -> None:
    sheet = make_procedure(EXAMPLES / "tannery-lane" / f"{job}.toml")
    held = {one.kind for one in sheet.drawings if one.kind in {*kinds, "bar-in-spindle", "blank-held"}}
    assert held == (kinds if job == "job" else kinds | {"bar-in-spindle", "blank-held"})
    for one, svg in drawn(sheet):
        assert faults(svg) == [], one.id


def test_no_words_touch_and_nothing_leaves_the_drawing_on_a_sheet(tree: Procedure) -> None:
    for one, svg in drawn(tree):
        assert faults(svg) == [], one.id


def test_every_number_drawn_is_a_figure_of_the_drawing(tree: Procedure) -> None:
    dials = tree.title.dials
    for one, svg in drawn(tree):
        numbers = {read(figure, dials).number.replace("\u00a0", " ") for figure in one.dimensions.values()}
        for box in text_boxes(read_page(svg)):
            words = box.words.replace("\u00a0", " ")
            for name in sorted((*numbers, *one.labels.values()), key=len, reverse=True):
                words = words.replace(name, "")
            written = " ".join((*one.labels.values(), *one.said.values()))
            assert not re.search(r"\d", words) or words in written, (one.id, box.words)


def test_every_dimension_stands_on_its_step_on_the_page_and_in_markdown(tree: Procedure) -> None:
    dials = tree.title.dials
    page, text = read_page(to_html(tree)), to_markdown(tree).replace("\\", "")
    sections = {one.attributes["data-step"]: one for one in page.all("section") if "data-step" in one.attributes}
    steps = {step.number: step.id for phase in tree.phases for step in phase.steps}
    for one in tree.drawings:
        inside = page.words if one.place == "front" else sections[steps[one.place]].words
        assert one.caption in inside
        assert one.caption in text
        for figure in one.dimensions.values():
            assert show(figure, dials) in inside
            assert show(figure, dials) in text


def test_a_drawing_has_a_title_and_is_told_in_words(tree: Procedure) -> None:
    for one, svg in drawn(tree):
        image = next(read_page(svg).all("svg"))
        title, told = next(image.all("title")), next(image.all("desc"))
        assert image.attributes["role"] == "img"
        assert image.attributes["aria-labelledby"].split() == [title.attributes["id"], told.attributes["id"]]
        assert title.words == one.title
        for figure in one.dimensions.values():
            assert show(figure, tree.title.dials) in told.words
        for label in one.labels.values():
            assert label in told.words


def test_ids_of_drawings_are_unique_on_a_page(tree: Procedure) -> None:
    ids = re.findall(r'\bid="([^"]+)"', to_html(tree))
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize(
    ("job", "ids"),
    [
        ("job-plate", {"slug-blank", "slug-in-jaws", "blank-on-band", "boring-reach-four-jaws"}),
        ("job-cast", {"cast-blank", "casting-in-jaws", "blank-on-band", "boring-reach-four-jaws"}),
    ],
)
def test_a_raw_blank_is_drawn_from_stock_to_bore(job: str, ids: set[str]) -> None:
    sheet = make_procedure(EXAMPLES / "fernhill" / f"{job}.toml")
    assert ids <= {one.id for one in sheet.drawings}
    for one, svg in drawn(sheet):
        assert faults(svg) == [], one.id


def test_a_set_over_and_its_return_are_drawn_each_with_its_own_arrow_and_screw() -> None:
    sheet = make_procedure(EXAMPLES / "fernhill" / "taper-and-return.toml")
    steps = {step.number: step.id for phase in sheet.phases for step in phase.steps}
    found = {steps[one.place]: one for one in sheet.drawings if one.kind == "tailstock-set-over"}
    assert set(found) == {"set-over", "set-back"}
    for step, way, screw in (("set-over", "toward you", "screw_toward"), ("set-back", "away from you", "screw_away")):
        one = found[step]
        svg = figure_of(one, "metric")
        words = " ".join(box.words for box in text_boxes(read_page(svg)))
        assert faults(svg) == []
        assert way in words
        assert one.said[screw] in words
        assert read(one.dimensions["amount"], "metric").number in words


def test_every_kind_has_a_drawing_in_the_knowledge() -> None:
    assert {plan.file.kind for plan in PLANS.values()} >= set(KINDS) - {"bar"}


def test_the_view_along_the_axis_is_to_the_scale_of_the_bar(tree: Procedure) -> None:
    page = read_page(bar_drawing(tree.drawing, tree.title.dials))
    collar, bar, cone = [float(one.attributes["r"]) for one in page.all("circle")][:3]
    steel = next(one for one in page.all("rect"))
    assert 2 * bar == pytest.approx(float(steel.attributes["height"]), abs=0.02)
    assert collar > bar > cone
