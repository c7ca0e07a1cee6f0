"""The safety review on the page: nothing of it missing, nothing told by colour, places to write where they are due."""

import re
from typing import Literal

import pytest

from tailtrue.parts import Dials
from tailtrue.places import templates_folder
from tailtrue.procedure import Procedure
from tailtrue.render import safety_words
from tailtrue.render.safety_markdown import to_safety_markdown
from tailtrue.render.safety_page import ReviewPage, to_safety_html
from tailtrue.review import Control, Held

from .reading import Element, read_page
from .sample import procedure

STYLE = (templates_folder() / "safety.css").read_text(encoding="utf-8")


@pytest.fixture(params=["metric", "inch"])
def tree(request: pytest.FixtureRequest) -> Procedure:
    dials: Dials = request.param
    return procedure(dials)


@pytest.fixture
def page(tree: Procedure) -> Element:
    return read_page(to_safety_html(tree))


def plain(text: str) -> str:
    return " ".join(text.split())


def test_every_hazard_has_a_row_with_its_rating_before_and_after(tree: Procedure, page: Element) -> None:
    rows = [row for table in page.all("table", "hazards") for row in table.all("tr") if list(row.all("td", "rated"))]
    assert len(rows) == len(tree.safety_review.hazards)
    in_order = [hazard for _, hazards in ReviewPage(tree).groups() for hazard in hazards]
    for row, one in zip(rows, in_order, strict=True):
        words = plain(row.words)
        assert words.startswith(one.number)
        assert plain(next(row.all("th")).words) == plain(f"{one.number}{' '.join(one.parts[1:])}")
        assert plain(one.hazard) in words
        before, after = (plain(cell.words) for cell in row.all("td", "rated"))
        assert before.startswith(f"{one.before.severity}×{one.before.likelihood} = {one.before.score}")
        assert after.lower().endswith(one.after.band)
        assert plain(next(row.all("span", "signal")).words) == one.signal.upper()


def test_the_matrix_prints_every_cell_with_score_and_class_in_words(page: Element) -> None:
    (matrix,) = page.all("table", "matrix")
    cells = [plain(cell.words) for cell in matrix.all("td")]
    assert len(cells) == 25
    assert cells[0].startswith("5 ")
    assert cells[4] == "25 EXTREME"
    assert cells[20] == "1 low"


def test_a_killer_line_has_a_black_bar_and_no_box_to_skip_it(tree: Procedure) -> None:
    first, *rest = tree.safety_review.checks[0].lines
    skipped = first.model_copy(update={"id": "lead-screw", "killer": False, "not_applicable": True})
    checks = tree.safety_review.checks[0].model_copy(update={"lines": (skipped, *rest)})
    review = tree.safety_review.model_copy(update={"checks": (checks,)})
    page = read_page(to_safety_html(tree.model_copy(update={"safety_review": review})))
    rows = {plain(next(row.all("th")).words): row for table in page.all("table", "checks") for row in table.all("tr")}
    offered = [row for row in rows.values() if safety_words.NOT_APPLICABLE in row.words]
    assert len(offered) == 1
    assert "killer" not in offered[0].attributes.get("class", "")
    assert sum("killer" in row.attributes.get("class", "") for row in rows.values()) == len(rest)
    assert [row for row in rows.values() if "List complete" in row.words]


def test_a_blank_stands_for_each_thing_to_be_written(tree: Procedure, page: Element) -> None:
    review = tree.safety_review
    lines = (*review.people, *review.alone, *review.isolation, *review.emergency)
    due = sum(blank.count for line in lines for blank in line.blanks) + len(review.head)
    due += sum(blank.count for checks in review.checks for line in checks.lines for blank in line.blanks)
    due += 3 * (len(review.signatures) + (1 if ReviewPage(tree).high() else 0))
    assert len(list(page.all("span", "line"))) == due


def test_what_was_given_for_an_emergency_is_printed_and_what_was_not_is_boxed(tree: Procedure) -> None:
    phone, *rest = tree.safety_review.emergency
    given = phone.model_copy(update={"answer": ("0 112",)})
    review = tree.safety_review.model_copy(update={"emergency": (given, *rest)})
    changed = tree.model_copy(update={"safety_review": review})
    (section,) = read_page(to_safety_html(changed)).all("section", "emergency")
    places = [plain(cell.words) for cell in section.all("td")]
    assert places[0] == "0 112"
    assert all(safety_words.MISSING in place for place in places[1:])
    assert safety_words.BOXED in plain(section.words)
    markdown = to_safety_markdown(changed)
    assert "0 112" in markdown
    # Once more in the line that says what the word means.
    assert markdown.count(safety_words.MISSING) == len(rest) + 1


ACCEPTED = Held(by="acceptance")


def with_high(tree: Procedure, held: Held = ACCEPTED) -> Procedure:
    first, *rest = tree.safety_review.hazards
    controls = (
        Control(level="guard", text="the <big> guard", state="not-here"),
        Control(level="guard", text="a screen", state="to-see"),
        Control(level="instruct", text="stand aside", state="counted"),
    )
    high = first.model_copy(
        update={
            "controls": controls, "held": held,
            "after": first.after.model_copy(update={"severity": 5, "likelihood": 2, "score": 10, "band": "high"}),
        }
    )  # fmt: skip
    return tree.model_copy(update={"safety_review": tree.safety_review.model_copy(update={"hazards": (high, *rest)})})


def test_what_stays_high_has_a_place_for_initials_and_its_row_says_what_would_bring_it_down(tree: Procedure) -> None:
    changed = with_high(tree)
    page = read_page(to_safety_html(changed))
    (table,) = page.all("div", "high-list")
    first = tree.safety_review.hazards[0]
    assert plain(table.words).startswith(f"{first.number} {first.hazard}, 10")
    assert len(list(table.all("span", "initials"))) == len(ReviewPage(changed).high())
    assert safety_words.ACCEPTED in plain(page.words)
    row = next(row for one in page.all("table", "hazards") for row in one.all("tr") if first.hazard in row.words)
    assert "G: not here: the <big> guard. G: a screen. I: stand aside." in plain(row.words)
    markdown = to_safety_markdown(changed)
    assert "\\<big\\>" in markdown
    assert safety_words.HELD["acceptance"].capitalize() in markdown


@pytest.mark.parametrize("by", ["control", "hold"])
def test_what_a_hold_or_a_control_holds_names_it(tree: Procedure, by: Literal["control", "hold"]) -> None:
    changed = with_high(tree, Held(by=by, hold_step="9.9" if by == "hold" else None))
    (table,) = read_page(to_safety_html(changed)).all("div", "high-list")
    assert safety_words.BRIEFLY[by] + (" 9.9" if by == "hold" else "") in plain(table.words)


def test_each_kind_of_control_has_its_letter_and_the_page_says_what_the_letters_mean(page: Element) -> None:
    key = plain(next(page.all("p", "key")).words)
    assert len(set(safety_words.LETTERS.values())) == len(safety_words.LEVELS) == len(safety_words.LETTERS)
    for level, letter in safety_words.LETTERS.items():
        assert f"{letter} {level}" in key


def test_a_control_that_nobody_told_of_has_a_box_and_one_that_is_away_says_so(tree: Procedure) -> None:
    page = read_page(to_safety_html(with_high(tree)))
    row = next(row for table in page.all("table", "hazards") for row in table.all("tr") if "a screen" in row.words)
    assert len(list(row.all("span", "small-box"))) == 1
    assert "not here: the <big> guard" in plain(row.words)


def test_the_markdown_says_what_the_page_says(tree: Procedure) -> None:
    text = to_safety_markdown(tree).replace("\\", "")
    review = tree.safety_review
    for name, heading in safety_words.HEADINGS.items():
        assert (f"# {heading}" in text) == (name != "chemicals" or bool(review.chemicals))
    said = [one.hazard for one in review.hazards] + [way.way for way in review.eliminations]
    said += [state.title for state in review.wear] + [one.role.capitalize() for one in review.signatures]
    said += [near.title for near in review.near_misses]
    for words in said:
        assert words in text
    for line in text.splitlines():
        if line.startswith("|"):
            assert line.count("|") >= 3


def test_runs_of_steps_are_drawn_together(tree: Procedure) -> None:
    view = ReviewPage(tree)
    assert view.runs(("1.1", "1.2", "1.3", "2.1", "2.2", "4.9")) == "1.1 to 1.3, 2.1, 2.2, 4.9"


def test_the_page_is_black_white_and_grey_and_no_letter_is_under_eight_points(page: Element) -> None:
    for colour in re.findall(r"#([0-9a-fA-F]{3,6})\b", STYLE):
        assert len(set(colour)) == 1, colour
    assert min(float(size) for size in re.findall(r"font-size: ([\d.]+)pt", STYLE)) >= 8
    assert page.all("h1")
