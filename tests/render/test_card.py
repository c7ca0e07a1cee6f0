"""The card at the headstock: the numbers of the sheet, each on a line, one under the other."""

import re
from decimal import Decimal

import pytest

from tailtrue.parts import Dials
from tailtrue.places import templates_folder
from tailtrue.procedure import Procedure
from tailtrue.render.card import Block, Row, blocks, dangers, side_by_side, to_card_html, to_card_markdown
from tailtrue.render.numbers import read
from tailtrue.render.words import say

from .reading import Element, read_page
from .sample import MACHINE, NUMBER, procedure

STYLE = (templates_folder() / "card.css").read_text(encoding="utf-8")


@pytest.fixture(params=["metric", "inch"])
def dials(request: pytest.FixtureRequest) -> Dials:
    system: Dials = request.param
    return system


@pytest.fixture
def tree(dials: Dials) -> Procedure:
    return procedure(dials)


@pytest.fixture
def page(tree: Procedure) -> Element:
    return read_page(to_card_html(tree))


def plain(text: str) -> str:
    return " ".join(text.split())


def number_rows(page: Element) -> list[Element]:
    return [row for table in page.all("table", "numbers") for row in table.all("tr") if list(row.all("td"))]


def test_each_number_of_the_card_has_its_own_line_with_its_unit(tree: Procedure, page: Element, dials: Dials) -> None:
    found = [(plain(next(row.all("th")).words), *(plain(cell.words) for cell in row.all("td"))) for row in number_rows(page)]
    lines = [line for group in tree.card.groups for line in group.lines]
    shown = [read(line.value, dials) for line in lines]
    assert found == [
        (plain(say(line.label, dials)), plain(one.number), plain(one.unit)) for line, one in zip(lines, shown, strict=True)
    ]
    assert len(found) > 10


def test_an_operation_stands_over_its_lines_with_the_numbers_of_its_steps(tree: Procedure, page: Element) -> None:
    heads = [plain(next(table.all("thead")).words) for table in page.all("table", "numbers")]
    due = [f"{group.title} {', '.join(dict.fromkeys(line.step for line in group.lines))}" for group in tree.card.groups]
    assert list(dict.fromkeys(heads)) == due


def test_decimal_points_stand_under_each_other(page: Element) -> None:
    rights = set()
    for row in number_rows(page):
        cell = next(row.all("td", "number"))
        room = re.fullmatch(r"padding-right: ([\d.]+)ch", cell.attributes["style"])
        assert room
        _, point, decimals = plain(cell.words).partition(".")
        # a digit is one wide, a decimal point a half
        rights.add(Decimal(room[1]) + len(decimals) + (Decimal("0.5") if point else 0))
    assert len(rights) == 1
    assert rights != {0}


def test_numbers_without_decimals_need_no_room_beside_them() -> None:
    sample = procedure()
    speeds = tuple(
        group.model_copy(update={"lines": tuple(line for line in group.lines if line.value.rounding == "speed")})
        for group in sample.card.groups
    )
    made = blocks(sample.card.model_copy(update={"groups": speeds}), "metric")
    assert {row.width for block in made for row in block.rows} == {"0ch"}


@pytest.mark.parametrize("selector", [".numbers td.number", ".moves .part th, .moves .part td"])
def test_figures_are_at_least_seventeen_points_high(selector: str) -> None:
    found = re.search(rf"^{re.escape(selector)} {{([^}}]*)}}", STYLE, flags=re.MULTILINE)
    assert found
    size = re.search(r"font-size: ([\d.]+)pt", found[1])
    assert size
    assert float(size[1]) >= 17
    assert "text-align: right" in found[1]
    assert "white-space: nowrap" in found[1]
    assert "tabular-nums" in found[1]


def test_the_style_is_black_and_white_without_a_grid_and_readable() -> None:
    assert set(re.findall(r"#[0-9a-fA-F]{3,6}\b", STYLE)) <= {"#000", "#fff", "#666"}
    assert not re.search(r"\b(grid|flex|rgb|hsl|var\(|url\(|@import|@font-face)", STYLE)
    assert min(float(size) for size in re.findall(r"font-size: ([\d.]+)pt", STYLE)) >= 8.5


def test_every_danger_of_the_sheet_stands_on_the_card_and_nothing_less(tree: Procedure, page: Element) -> None:
    every = [*tree.job_cautions]
    for phase in tree.phases:
        every += [*phase.cautions, *(caution for step in phase.steps for caution in step.cautions)]
    words = plain(next(page.all("table", "dangers")).words)
    for caution in every:
        assert (caution.hazard in words) == (caution.signal == "danger"), caution.id
    told = {caution.id: caution for caution in every if caution.signal == "danger"}
    assert told
    assert [caution.id for caution in dangers(tree)] == list(told)
    for caution in told.values():
        assert words.count(caution.hazard) == 1
        assert plain(say(caution.avoid[0], tree.title.dials)) in words
    assert words.count("DANGER") == 1


def test_the_look_up_table_is_whole_and_says_the_direction_in_words(tree: Procedure, page: Element, dials: Dials) -> None:
    rows = [row for part in page.all("div", "part") for row in next(part.all("tbody")).all("tr")]
    found = [tuple(plain(cell.words) for cell in row.all() if cell.tag in ("th", "td")) for row in rows]
    assert found == [
        (read(row.difference, dials).number, "leave it" if row.move is None else read(row.move, dials).number)
        for row in tree.look_up.rows
    ]
    unit = "mm" if dials == "metric" else "in"
    heads = {plain(head.words) for part in page.all("div", "part") for head in next(part.all("thead")).all("th")}
    assert heads == {f"differ by, {unit}", f"move, {unit}"}
    which = plain(next(page.all("div", "which")).words)
    assert f"Tailstock end LARGER: {tree.look_up.larger_at_tailstock}" in which
    assert f"Tailstock end SMALLER: {tree.look_up.smaller_at_tailstock}" in which
    assert "or less: leave it alone." in which


def test_no_verdict_is_claimed_when_none_is_possible(tree: Procedure) -> None:
    blind = tree.look_up.model_copy(update={"verdict_possible": False, "inside": None})
    text = plain(read_page(to_card_html(tree.model_copy(update={"look_up": blind}))).words)
    assert "cannot tell whether the tailstock is within its limit" in text
    assert "Within limits" not in text


def test_stop_conditions_and_notes_are_all_there(tree: Procedure, page: Element) -> None:
    text = plain(page.words)
    dials = tree.title.dials
    for line in tree.stop_at_once:
        assert plain(say(line, dials)) in text
    called = ", ".join(f"{line.item} {line.state}" for line in tree.card.start.lines)
    assert f"{tree.card.start.title}: {called}. {tree.card.start.ends_with}." in text
    for note in tree.card.notes:
        assert plain(f"{say(note.label, dials)}: {say(note.value, dials)}") in text


def test_the_card_says_which_sheet_it_goes_with_and_what_to_do_in_an_emergency(page: Element) -> None:
    text = plain(page.words)
    assert f"Goes with sheet {NUMBER} rev 3, checksum 7c1e-93af. It does not stand in for the sheet." in text
    assert "EMERGENCY Press the stop. Isolate the lathe. Then help. Call" in text
    assert [line.attributes["aria-label"] for line in page.all("span", "line")] == ["write the number here"]
    assert plain(next(page.all("h1")).words) == f"{MACHINE}: bench card"


def test_words_of_the_user_are_never_markup() -> None:
    name = 'Lathe <b>"2"</b> </style><script>'
    text = to_card_html(procedure(machine=name))
    assert "<script" not in text
    assert plain(next(read_page(text).all("h1")).words) == f"{name}: bench card"


def test_nothing_is_fetched(tree: Procedure) -> None:
    text = to_card_html(tree)
    assert not re.search(r"https?:|//[a-z]|@import|url\(|<script|<link|<img|<iframe|<object|\bon[a-z]+=", text)


def test_the_same_procedure_gives_the_same_bytes(dials: Dials) -> None:
    assert to_card_html(procedure(dials)) == to_card_html(procedure(dials))
    assert to_card_markdown(procedure(dials)) == to_card_markdown(procedure(dials))


def block(title: str, rows: int, label: str = "speed") -> Block:
    return Block(title, "1.1", tuple(Row(f"{label} {place}", "1", "mm", 0.0, 1.0) for place in range(rows)))


def sizes(columns: tuple[tuple[Block, ...], ...]) -> list[list[tuple[str, int]]]:
    return [[(one.title, len(one.rows)) for one in column] for column in columns]


def test_columns_keep_the_order_and_lose_nothing(tree: Procedure, dials: Dials) -> None:
    made = blocks(tree.card, dials)
    columns = side_by_side(made)
    assert len(columns) == 3
    assert [row for column in columns for one in column for row in one.rows] == [row for one in made for row in one.rows]


def test_blocks_that_share_out_evenly_stay_whole() -> None:
    made = tuple(block(title, 4) for title in "abcdef")
    assert sizes(side_by_side(made)) == [[("a", 4), ("b", 4)], [("c", 4), ("d", 4)], [("e", 4), ("f", 4)]]


def test_a_block_is_split_only_when_that_saves_more_than_a_row() -> None:
    assert sizes(side_by_side((block("a", 3), block("b", 4), block("c", 3)))) == [[("a", 3)], [("b", 4)], [("c", 3)]]
    long = sizes(side_by_side((block("a", 2), block("b", 20), block("c", 2))))
    assert [title for column in long for title, _ in column] == ["a", "b", "b", "b", "c"]
    assert sum(rows for column in long for title, rows in column if title == "b") == 20


def test_a_card_without_numbers_is_still_a_page(tree: Procedure) -> None:
    bare = tree.model_copy(update={"card": tree.card.model_copy(update={"notes": (), "groups": ()})})
    page = read_page(to_card_html(bare))
    assert number_rows(page) == []
    assert list(page.all("table", "dangers"))


def test_markdown_holds_the_same_numbers_in_the_same_order(tree: Procedure, dials: Dials) -> None:
    text = to_card_markdown(tree)
    rows = [line.split(" | ") for line in text.splitlines() if line.startswith("| ")]
    numbers = [(cells[2], cells[3].removesuffix(" |").strip()) for cells in rows if len(cells) == 4][2:]
    lines = [line for group in tree.card.groups for line in group.lines]
    assert numbers == [(read(line.value, dials).number, read(line.value, dials).unit) for line in lines]
    for caution in dangers(tree):
        assert f"- **DANGER** **{caution.hazard}.**" in text
    assert f"Tailstock end LARGER: **{tree.look_up.larger_at_tailstock}**" in text
    assert "**Emergency** Press the stop." in text
    for line in tree.stop_at_once:
        assert f"- {say(line, dials)}" in text
