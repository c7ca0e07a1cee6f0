"""The drawings of set-up, readings, move and speeds: they turn round with the tool, and say what the user said."""

from pathlib import Path

import pytest

from shops import EXAMPLES, shop
from tailtrue.advise import make_procedure
from tailtrue.procedure import Drawing
from tailtrue.render import to_html, to_markdown
from tailtrue.render.card import to_card_html
from tailtrue.render.figures import figure_of

from .drawn import text_boxes
from .reading import Element, read_page
from .sample_drawings import drawing

SIDES = [("front", 1), ("rear", -1)]
REAR = ("lathe", 'tool_side = "front"', 'tool_side = "rear"')


def drawn(one: Drawing) -> Element:
    return read_page(figure_of(one, "metric"))


def feet(page: Element) -> dict[str, float]:
    return {box.words: box.bottom for box in text_boxes(page)}


@pytest.mark.parametrize(("side", "sign"), SIDES)
def test_the_tool_stands_on_its_side_of_the_bar_and_the_operator_below(side: str, sign: int) -> None:
    sizes = {"dog": 25.0, "gap": 12.5, "to_collar": 37.5, "length": 375.0, "quill": 30.0, "tool_clear": 22.0}
    at = feet(drawn(drawing("between-centres", {"tool_side": side}, **sizes)))
    assert (at["tool"] - at["22.00"]) * sign > 0
    assert at["you stand on this side"] > max(at["tool"], at["22.00"])


@pytest.mark.parametrize(("side", "sign"), SIDES)
def test_an_indicator_on_the_side_of_the_tool_is_said_to_tell_nothing(side: str, sign: int) -> None:
    at = feet(drawn(drawing("indicator-on-collars", {"tool_side": side})))
    tool = next(foot for words, foot in at.items() if words.startswith("TOOL SIDE"))
    across = next(foot for words, foot in at.items() if words.startswith("AWAY"))
    assert (tool - across) * sign > 0


@pytest.mark.parametrize(("side", "sign"), SIDES)
def test_the_arrow_of_the_move_points_toward_the_tool_for_a_larger_collar_here(side: str, sign: int) -> None:
    said = {"tool_side": side, "screw_toward": "the long screw", "screw_away": "the short screw"}
    at = feet(drawn(drawing("tailstock-move", said)))
    assert (at["LARGER:"] - at["SMALLER:"]) * sign > 0
    assert at["toward you"] > at["away from you"]
    toward = next(foot for words, foot in at.items() if "long" in words)
    away = next(foot for words, foot in at.items() if "short" in words)
    assert away < at["toward you"] < toward


def test_a_screw_without_a_name_leaves_a_line_to_write_on() -> None:
    named = drawn(drawing("tailstock-move", {"tool_side": "front", "screw_toward": "one", "screw_away": "other"}))
    bare = drawn(drawing("tailstock-move", {"tool_side": "front"}))

    def lines(page: Element) -> int:
        return len([path for path in page.all("path", "thin") if path.attributes["d"].endswith(tuple("0123456789"))])

    assert lines(bare) == lines(named) + 2
    assert "find the screw" in bare.words


def test_no_view_is_drawn_without_the_side_of_the_tool() -> None:
    for name in ("between-centres", "indicator-on-collars", "tailstock-move"):
        with pytest.raises(ValueError, match="side"):
            figure_of(drawing(name, {}, **({"tool_clear": 1.0} if name == "between-centres" else {})), "metric")


def test_the_plate_marks_the_speeds_that_are_used_and_names_their_setting() -> None:
    one = drawing(
        "speed-plate", {"setting.1": "B1", "setting.2": "large pulley"}, speed__1=60, speed__2=100, skim=100, drill__1=100
    )
    page = drawn(one)
    strong = [text.words for text in page.all("text", "size")]
    assert strong == ["100", "large pulley"]
    assert len(list(page.all("path", "solid"))) == 1
    at = feet(page)
    lines = [words for words in at if at[words] >= at["100"] and words not in strong]
    assert at[lines[0]] == at["100"] > at["60"]
    uses = " ".join(lines)
    assert "skim" in uses
    assert uses.endswith("; drill") or uses.startswith("drill; ")


def test_a_plate_without_speeds_is_refused() -> None:
    with pytest.raises(ValueError, match=r"lacks its dimension speed\.1"):
        figure_of(drawing("speed-plate", {}, skim=100), "metric")


def kinds(job: Path) -> dict[str, Drawing]:
    return {one.kind: one for one in make_procedure(job).drawings}


def test_a_lathe_with_the_tool_at_the_rear_turns_every_view_round(tmp_path: Path) -> None:
    found = kinds(shop(tmp_path, "fernhill", REAR))
    turned = {one.said["tool_side"] for one in found.values() if "tool_side" in one.said}
    assert turned == {"rear"}
    assert found["tailstock-move"].labels["larger"] == "away from you"


def test_a_lathe_without_set_over_has_no_drawing_of_a_move(tmp_path: Path) -> None:
    found = kinds(shop(tmp_path, "fernhill", ("lathe", '"two-screws"', '"none"')))
    assert {"tailstock-move", "indicator-on-quill"}.isdisjoint(found)
    assert "between-centres" in found


def test_a_lathe_with_one_screw_says_so(tmp_path: Path) -> None:
    found = kinds(shop(tmp_path, "quarry-road", ("lathe", '"two-screws"', '"one-screw"')))
    assert found["tailstock-move"].id == "tailstock-move-one-screw"


def test_each_screw_of_the_tailstock_is_drawn_and_named_once() -> None:
    for name, screws in (("tailstock-move", 2), ("tailstock-move-one-screw", 1), ("tailstock-set-over-one-screw", 1)):
        sizes = {"amount": 2.5} if "set-over" in name else {}
        page = drawn(drawing(name, {"tool_side": "front"}, **sizes))
        assert sum(box.words == "screw" for box in text_boxes(page)) == screws
        assert sum(one.attributes["width"] == "3" for one in page.all("rect")) == screws


def test_a_variable_drive_has_no_plate(tmp_path: Path) -> None:
    change = ("lathe", r"^speeds = [^\n]*", 'speed_from = "60 1/min"\nspeed_to = "2000 1/min"')
    assert "speed-plate" not in kinds(shop(tmp_path, "quarry-road", change))


def test_the_example_names_the_lever_of_every_speed() -> None:
    plate = kinds(EXAMPLES / "fernhill" / "job.toml")["speed-plate"]
    assert plate.said["setting.5"] == "B2"
    assert plate.dimensions["speed.5"].value == 450


def test_the_card_names_the_lever_beside_each_speed() -> None:
    tree = make_procedure(EXAMPLES / "fernhill" / "job.toml")
    levers = dict(
        zip((65, 110, 180, 280, 450, 700, 1100, 1800), ("C1", "C2", "C3", "B1", "B2", "B3", "A2", "A3"), strict=True)
    )
    rows = [
        row for row in read_page(to_card_html(tree)).all("tr") if "rev/min" in row.words and list(row.all("td", "number"))
    ]
    assert rows
    for row in rows:
        label, number = next(row.all("th")).words, next(row.all("td", "number")).words
        if int(number) in levers:
            assert label.split()[-1] == levers[int(number)]
        else:
            assert label == "chuck limit"


def test_a_step_names_the_lever_of_the_speed_that_it_sets_and_of_no_limit() -> None:
    tree = make_procedure(EXAMPLES / "fernhill" / "job.toml")
    page = read_page(to_html(tree))
    rows = {
        " ".join(head.words.split()): next(row.all("td", "value")).words
        for row in page.all("tr")
        for head in row.all("th")
        if "rev/min" in row.words and list(row.all("td", "value"))
    }
    assert rows["speed, set at A2"] == "1100"
    assert rows["drill, taper shank 23\u00a0mm, set at B2".replace("\u00a0", " ")] == "450"
    assert "speed with this chuck, at most" in rows
    markdown = to_markdown(tree).replace("\u00a0", " ")
    assert "| speed, set at **A2** | **1100 rev/min** |" in markdown
    assert "| speed with this chuck, at most | **2500 rev/min** |" in markdown


def test_the_speed_plate_has_its_title_on_paper() -> None:
    page = read_page(to_html(make_procedure(EXAMPLES / "fernhill" / "job.toml")))
    (title,) = page.all("p", "figure-title")
    assert title.words.strip() == "The speeds of this lathe, and what each is for"


def test_a_phase_tells_how_many_of_its_first_cautions_hold_for_all_of_it() -> None:
    tree = make_procedure(EXAMPLES / "weir-cottage" / "job.toml")
    (phase,) = (one for one in tree.phases if one.number == "4")
    told = [line.words for line in read_page(to_html(tree)).all("span", "holds")]
    assert f"{len(phase.cautions)} cautions for the whole phase, then {len(phase.steps[0].cautions)} for step 4.1:" in told
    assert len(told) == sum(bool(one.cautions) for one in tree.phases)
