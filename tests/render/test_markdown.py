"""The Markdown sheet: everything the page has, and the user's words letter by letter."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st
from markdown_it import MarkdownIt
from markdown_it.token import Token

from tailtrue.parts import Dials
from tailtrue.render import to_markdown
from tailtrue.render.numbers import read
from tailtrue.render.plain import literal
from tailtrue.render.words import HEADINGS, STATES

from .reading import figures
from .sample import MACHINE, NUMBER, procedure
from .sample_drawings import drawing
from .sample_pieces import LITERAL_LABEL
from .test_html import ORDER

PARSER = MarkdownIt("commonmark").enable("table")


def parsed(text: str) -> list[Token]:
    return PARSER.parse(text)


def words(tokens: list[Token]) -> str:
    """The words as they are shown, line by line."""
    lines = []
    for token in tokens:
        if token.type == "inline":
            pieces = token.children or []
            lines.append("".join("\n" if one.type == "hardbreak" else one.content for one in pieces))
    return "\n".join(lines)


def headings(tokens: list[Token]) -> list[tuple[int, str]]:
    return [(int(token.tag[1]), words([tokens[at + 1]])) for at, token in enumerate(tokens) if token.type == "heading_open"]


@pytest.fixture(params=["metric", "inch"])
def dials(request: pytest.FixtureRequest) -> Dials:
    system: Dials = request.param
    return system


def test_the_sections_stand_in_the_order_of_the_page(dials: Dials) -> None:
    tree = procedure(dials)
    found = headings(parsed(to_markdown(tree)))
    second = [text for level, text in found if level == 2]
    # Markdown names the sources of a caution beside it, so it has no list of them at the back.
    order = [HEADINGS[key] for key in ORDER if key != "cautions"]
    assert [text for text in second if text in HEADINGS.values()] == order
    assert [text for text in second if text not in HEADINGS.values()] == [f"{p.number} {p.title}" for p in tree.phases]
    levels = [level for level, _ in found]
    assert all(after <= before + 1 for before, after in itertools.pairwise(levels))


def test_every_figure_is_there_with_its_unit(dials: Dials) -> None:
    tree = procedure(dials)
    text = words(parsed(to_markdown(tree)))
    for figure in figures(tree):
        shown = read(figure, dials)
        assert (shown.number if figure.fact == "align.table" else shown.whole) in text, figure
    assert f"Collars differ by, {'mm' if dials == 'metric' else 'in'}" in text


def test_words_of_the_user_stay_literal() -> None:
    text = words(parsed(to_markdown(procedure(machine="bar *2* _x_ `y` | # <b> &amp; [z](w) $1$"))))
    assert "bar *2* _x_ `y` | # <b> &amp; [z](w) $1$" in text
    assert text.count(LITERAL_LABEL) >= 2
    kinds = {one.type for token in parsed(to_markdown(procedure())) for one in token.children or []}
    assert kinds <= {"text", "text_special", "strong_open", "strong_close", "softbreak", "hardbreak"}


@given(st.text(alphabet=st.characters(codec="utf-8", exclude_categories=["Cc", "Cs", "Zs", "Zl", "Zp"]), min_size=1))
def test_any_text_is_shown_letter_by_letter(text: str) -> None:
    assert words(parsed(literal(text))) == text
    assert words(parsed(f"| a |\n| --- |\n| {literal(text)} |")) == f"a\n{text}"


def test_line_ends_do_not_break_a_table() -> None:
    assert literal("one\n  two\r\nthree") == "one two three"


def test_a_caution_is_a_quote_above_what_is_done() -> None:
    tree = procedure()
    text = to_markdown(tree)
    for step in (step for phase in tree.phases for step in phase.steps):
        start = text.index(f"### {literal(f'{step.number} {step.title}')}")
        first = step.text[0][0]
        assert isinstance(first, str)
        for caution in step.cautions:
            quote = text.index(f"> **{caution.signal.upper()}** **{literal(caution.hazard)}", start)
            assert start < quote < text.index(literal(first).strip(), start)
        assert f"({STATES[step.machine]}" in text[start : start + 200]


def test_there_is_a_box_for_every_piece_and_need() -> None:
    tree = procedure()
    wanted = sum(len(step.boxes) for phase in tree.phases for step in phase.steps) + len(tree.needs)
    assert to_markdown(tree).count("\n- [ ] ") == wanted


def test_identity_and_holds() -> None:
    text = words(parsed(to_markdown(procedure())))
    assert MACHINE in text
    assert NUMBER in text
    assert "7c1e-93af" in text
    assert "Not released: go back to step 3.1." in text
    assert "Released by lathe keeper ____________ at" in text


def test_tables_are_tables() -> None:
    tokens = parsed(to_markdown(procedure()))
    assert len([token for token in tokens if token.type == "table_open"]) >= 12
    assert not [token for token in tokens if token.type == "inline" and token.content.startswith("|")]


def test_the_same_procedure_gives_the_same_bytes() -> None:
    assert to_markdown(procedure()) == to_markdown(procedure())


def test_the_speed_plate_is_one_table_with_the_work_of_this_job_alone() -> None:
    plate = drawing("speed-plate", {"setting.1": "A1"}, speed__1=65.0, speed__2=280.0, boring=280.0)
    tree = procedure("metric").model_copy(update={"drawings": (plate.model_copy(update={"place": "front"}),)})
    text = to_markdown(tree).replace("\N{NO-BREAK SPACE}", " ")
    assert "| **65 rev/min** | A1 |  |" in text
    assert f"| **280 rev/min** |  | {plate.labels['boring']} |" in text
    assert plate.labels["taper"] not in text


def test_a_speed_plate_without_levers_has_no_column_for_them() -> None:
    plate = drawing("speed-plate", speed__1=65.0, boring=65.0)
    tree = procedure("metric").model_copy(update={"drawings": (plate.model_copy(update={"place": "front"}),)})
    text = to_markdown(tree).replace("\N{NO-BREAK SPACE}", " ")
    assert f"| **65 rev/min** | {plate.labels['boring']} |" in text
