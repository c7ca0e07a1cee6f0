"""The card at the headstock: the numbers of the sheet, each on a line, one under the other."""

import re
from decimal import Decimal

import pytest

from tailtrue.parts import Dials, Figure
from tailtrue.places import templates_folder
from tailtrue.procedure import CardGroup, CardLine, CardPlace, Procedure, StartLine, StartList
from tailtrue.render.card import MORE_SIDES, messages, to_card_html, to_card_markdown
from tailtrue.render.card_rows import LAYOUTS, blocks, laid_out, room_below, side_by_side, with_key
from tailtrue.render.numbers import read
from tailtrue.render.words import say
from tailtrue.review import ReviewLine

from .reading import Element, read_page
from .sample import MACHINE, NUMBER, procedure
from .sample_pieces import mm

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


def cells(row: Element) -> list[str]:
    return [plain(cell.words) for kind in ("th", "td") for cell in row.all(kind)]


def number_rows(page: Element) -> list[Element]:
    return [row for table in page.all("table", "numbers") for row in table.all("tr") if list(row.all("td", "number"))]


def set_rows(page: Element) -> list[Element]:
    """Those of the steps: the look-up table has a number for its label."""
    return [row for row in number_rows(page) if not list(row.all("th", "by"))]


def move_rows(page: Element) -> list[tuple[str, str]]:
    """The look-up table: what is read, and what is done."""
    (table,) = page.all("table", "moves")
    (body,) = table.all("tbody")
    return [(plain(next(row.all("th")).words), plain(next(row.all("td")).words)) for row in body.all("tr")]


def due_rows(tree: Procedure, dials: Dials) -> list[tuple[str, str, str]]:
    """Label, number and unit of each line; a size at the end of a label follows its speed."""
    due = []
    for line in (line for group in tree.card.groups for line in group.lines):
        *name, size = line.label
        one = read(line.value, dials)
        if name and isinstance(size, Figure):
            number, _, unit = plain(read(size, dials).whole).partition(" ")
            due += [("speed", one.number, one.unit), (plain("".join(map(str, name))), number, unit)]
        else:
            due.append((plain(say(line.label, dials)), plain(one.number), plain(one.unit)))
    return due


def test_each_number_of_the_card_has_its_own_line_with_its_unit(tree: Procedure, page: Element, dials: Dials) -> None:
    found = [(plain(next(row.all("th")).words), *(plain(cell.words) for cell in row.all("td"))) for row in set_rows(page)]
    assert found == due_rows(tree, dials)
    assert len(found) > 10


def test_an_operation_stands_over_its_lines_with_the_numbers_of_its_steps(tree: Procedure, page: Element) -> None:
    heads = [plain(head.words) for table in page.all("table", "numbers") for head in table.all("thead")]
    heads = [head for head in heads if not head.startswith("Collars differ by")]
    due = [f"{group.title} {', '.join(dict.fromkeys(line.step for line in group.lines))}" for group in tree.card.groups]
    assert list(dict.fromkeys(heads)) == due


def test_decimal_points_stand_under_each_other(page: Element) -> None:
    rights = set()
    for row in set_rows(page):
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
    made = blocks(sample.card.model_copy(update={"groups": tuple(one for one in speeds if one.lines)}), "metric")
    assert made
    assert {row.width for block in made for row in block.rows} == {"0ch"}


def test_figures_are_at_least_seventeen_points_high_in_every_layout() -> None:
    sizes = {
        float(size)
        for rule in re.findall(r"td\.number[^{]*{([^}]*)}", STYLE)
        for size in re.findall(r"font-size: ([\d.]+)pt", rule)
    }
    assert sizes == {layout.number for layout in LAYOUTS}
    assert min(sizes) >= 17
    for selector in (".numbers td.number", ".numbers tbody th.by", ".card .figure"):
        found = re.search(rf"^{re.escape(selector)} {{([^}}]*)}}", STYLE, flags=re.MULTILINE)
        assert found
        assert "font-size: 17pt" in found[1]
    found = re.search(r"^\.numbers td\.number {([^}]*)}", STYLE, flags=re.MULTILINE)
    assert found
    assert all(word in found[1] for word in ("text-align: right", "white-space: nowrap", "tabular-nums"))


def test_the_style_is_black_and_white_without_a_grid_and_readable() -> None:
    assert set(re.findall(r"#[0-9a-fA-F]{3,6}\b", STYLE)) <= {"#000", "#fff", "#666"}
    assert not re.search(r"\b(grid|flex|rgb|hsl|var\(|url\(|@import|@font-face)", STYLE)
    assert min(float(size) for size in re.findall(r"font-size: ([\d.]+)pt", STYLE)) >= 8.5


def test_the_messages_of_the_card_stand_in_full_and_no_others(tree: Procedure, page: Element) -> None:
    words = plain(next(page.all("table", "dangers")).words)
    told = {caution.id: caution for caution in messages(tree)}
    assert tuple(told) == tree.card.messages
    assert told
    for caution in told.values():
        assert words.count(caution.hazard) == 1
        assert plain(say(caution.avoid[0], tree.title.dials)) in words
    assert words.count("DANGER") == 1
    assert len(list(next(page.all("table", "dangers")).all("tr"))) == len(told)


def test_a_message_stands_before_the_first_line_to_do(page: Element) -> None:
    text = page.words
    assert text.index("DANGER") < text.index("Before each start") < text.index("Do, then tick")


def test_each_line_of_the_list_has_its_state_a_value_its_blank_and_none_a_way_round(tree: Procedure, page: Element) -> None:
    rows = list(next(page.all("table", "called")).all("tr"))
    assert len(rows) == len(tree.card.start.lines)
    for line, row in zip(tree.card.start.lines, rows, strict=True):
        assert cells(row) == ([f"{line.item} {line.state}, rev/min", ""] if line.unit else [line.item, line.state])
        # The list is called at every start: only what is a value is written, and nothing is ticked.
        assert len(list(row.all("span", "line"))) == bool(line.unit)
        assert not list(row.all("span", "box"))
    assert [line.item for line in tree.card.start.lines if line.unit] == ["speed"]
    assert not re.search(r"\bn/?a\b|not applicable", page.words, flags=re.IGNORECASE)


def test_each_line_to_do_has_a_box_its_step_and_a_mark_where_the_spindle_starts(tree: Procedure, page: Element) -> None:
    rows = list(next(page.all("table", "ticks")).all("tr"))
    found = [plain(row.words) for row in rows]
    assert found == [f"{chr(0x25BA) + ' ' if line.starts else ''}{line.text} {line.step}" for line in tree.card.steps]
    assert any(line.starts for line in tree.card.steps)
    assert all(len(list(row.all("span", "box"))) == 1 for row in rows)


def test_the_card_says_how_to_go_on_after_a_call_and_where_each_list_ends(tree: Procedure, page: Element) -> None:
    words = plain(page.words)
    assert tree.card.interrupted in words
    assert words.count("List complete") == 2
    assert [plain(one.words) for one in page.all("p", "ends")] == [tree.card.start.ends_with, tree.card.ends_with]


def test_the_look_up_table_has_every_move_and_says_the_direction_in_words(
    tree: Procedure, page: Element, dials: Dials
) -> None:
    inside, outside = tree.look_up.inside, tree.look_up.outside
    found = [row for row in move_rows(page) if not row[0].startswith(("up to", "below"))]
    assert found == [
        (read(row.difference, dials).number, read(row.move, dials).number)
        for row in tree.look_up.rows
        if row.move is not None and not (inside and outside and inside.value < row.difference.value <= outside.value)
    ]
    assert len(found) > 3
    unit = "mm" if dials == "metric" else "in"
    (heads,) = page.all("tr", "heads")
    assert [plain(head.words) for head in heads.all("th")] == [f"Collars differ by, {unit}", f"move, {unit}"]
    which = [plain(head.words) for head in page.all("th", "direction")]
    assert f"Tailstock end LARGER: {tree.look_up.larger_at_tailstock}" in which
    assert f"Tailstock end SMALLER: {tree.look_up.smaller_at_tailstock}" in which


def test_whoever_reads_a_difference_that_moves_nothing_finds_what_to_do(tree: Procedure, dials: Dials) -> None:
    outside = mm("align.outside", 0.0245, "difference", "least")
    told = tree.look_up
    rows = tuple(row for row in told.rows if row.move is None or row.difference.value > told.inside.value)
    look_up = told.model_copy(update={"outside": outside, "rows": rows})
    first, second, third, *_ = move_rows(read_page(to_card_html(tree.model_copy(update={"look_up": look_up}))))
    inside = read(look_up.inside, dials).number
    assert first == (f"up to {inside}", "leave it")
    assert second == (f"below {read(outside, dials).number}", "read again")
    assert Decimal(third[0]) >= Decimal(read(outside, dials).number)


def test_a_band_of_a_tailstock_that_cannot_be_moved_asks_for_no_move(tree: Procedure) -> None:
    fixed = tree.look_up.model_copy(update={"can_move": False})
    assert move_rows(read_page(to_card_html(tree.model_copy(update={"look_up": fixed}))))[0][1] == "in limits"
    blind = fixed.model_copy(update={"inside": None, "verdict_possible": False})
    assert move_rows(read_page(to_card_html(tree.model_copy(update={"look_up": blind}))))[0][1] == "not told"


def test_a_reading_that_is_carried_has_a_place_with_its_unit(tree: Procedure, dials: Dials) -> None:
    place = CardPlace(label="droop", unit="mm", at="droop", step="2.2")
    group = CardGroup(title="Droop of the arm", lines=(), places=(place,))
    job = tree.model_copy(update={"card": tree.card.model_copy(update={"groups": (group,)})})
    unit = "mm" if dials == "metric" else "in"
    table = next(read_page(to_card_html(job)).all("table", "numbers"))
    assert [cells(row) for row in table.all("tr")] == [["Droop of the arm 2.2"], [f"droop, {unit}", ""]]
    assert len(list(table.all("span", "line"))) == 1
    assert f"| Droop of the arm (2.2) | droop | ____ | {unit} |" in to_card_markdown(job)


def test_a_machine_that_starts_besides_has_its_own_list(tree: Procedure) -> None:
    press = StartList(
        title="Before the drill press starts", lines=(StartLine(item="guard", state="shut"),), ends_with="Done"
    )
    job = tree.model_copy(update={"card": tree.card.model_copy(update={"besides": (press,)})})
    _, found = read_page(to_card_html(job)).all("section", "start")
    assert plain(next(found.all("h2")).words) == "Before the drill press starts"
    assert [cells(row) for row in found.all("tr")] == [["guard", "shut"]]
    assert plain(next(found.all("p", "ends")).words) == "Done"
    assert "## Before the drill press starts\n\n- guard **shut**\n\nDone." in to_card_markdown(job)


def test_the_mark_of_a_start_is_explained_only_where_a_line_has_it(tree: Procedure) -> None:
    still = tuple(line.model_copy(update={"starts": False}) for line in tree.card.steps)
    job = tree.model_copy(update={"card": tree.card.model_copy(update={"steps": still})})
    assert tree.card.list_first in to_card_markdown(tree)
    for text in (to_card_html(job), to_card_markdown(job)):
        assert tree.card.list_first not in text
        assert chr(0x25BA) not in text


def test_a_tool_is_a_number_of_its_own_and_tools_at_one_speed_stand_under_it() -> None:
    def drill(name: str, marked: str, value: float) -> CardLine:
        size = Figure(fact="hole.ladder.size", value=1.0, unit="mm", rounding="tool", marked=marked)
        speed = Figure(fact="hole.ladder.speed", value=value, unit="1/min", rounding="speed")
        return CardLine(label=(f"{name} ", size), value=speed, step="5.1")

    group = CardGroup(
        title="Drill",
        lines=(drill("straight", "4 mm", 700), drill("straight", "9.5 mm", 700), drill("taper", "13/64 in", 450)),
    )
    (block,) = blocks(
        procedure().card.model_copy(update={"groups": (group,)}), "metric", {("hole.ladder.speed", 700.0): "B3"}
    )
    assert [(row.number, row.unit, row.lever) for row in block.rows] == [
        ("700", "rev/min", "B3"), ("4", "mm", ""), ("9.5", "mm", ""), ("450", "rev/min", ""), ("13/64", "in", ""),
    ]  # fmt: skip


def test_the_fewer_the_numbers_the_larger_they_are(tree: Procedure, dials: Dials) -> None:
    made = blocks(tree.card, dials)
    few, _ = laid_out(made[:1], dials)
    many, columns = laid_out(made * 3, dials)
    assert few.number > many.number >= 17
    assert few.columns == 1
    assert room_below(few, laid_out(made[:1], dials)[1]) >= 0
    assert sum(len(block.rows) for column in columns for block in column) == 3 * sum(len(block.rows) for block in made)


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
    for note in tree.card.notes:
        assert plain(f"{say(note.label, dials)}:") in text
        for piece in note.value:
            assert plain(piece if isinstance(piece, str) else read(piece, dials).whole) in text


def test_the_card_says_which_sheet_it_goes_with_and_what_to_do_in_an_emergency(page: Element) -> None:
    text = plain(page.words)
    assert f"Goes with sheet {NUMBER} rev 3, checksum 7c1e-93af. Not approved. It does not stand in for the sheet." in text
    assert "EMERGENCY Press the stop. Isolate the lathe. Then help. Call" in text
    (line,) = next(page.all("p", "emergency")).all("span", "line")
    assert line.attributes["aria-label"] == "write the number here"
    assert plain(next(page.all("h1")).words) == f"{MACHINE}: bench card"


def test_an_emergency_number_that_the_files_give_is_printed(tree: Procedure) -> None:
    review = tree.safety_review
    told = ReviewLine(id="phone", text=("Emergency number",), answer=("112",), must=True)
    job = tree.model_copy(update={"safety_review": review.model_copy(update={"emergency": (told,)})})
    (line,) = read_page(to_card_html(job)).all("p", "emergency")
    assert plain(line.words).endswith("Call 112")
    assert not list(line.all("span", "line"))
    assert to_card_markdown(job).endswith("Call: **112**\n")


def test_a_card_of_an_approved_sheet_does_not_say_that_nobody_approved_it(tree: Procedure) -> None:
    job = tree.model_copy(
        update={"title": tree.title.model_copy(update={"approver": "lead", "walked_through": "2026-11-25"})}
    )
    for text in (to_card_html(job), to_card_markdown(job)):
        assert "Not approved" not in text
    assert "Not approved" in to_card_markdown(tree)


def test_a_long_name_of_a_setting_stands_once_beside_its_speed_when_the_rows_have_no_room(tree: Procedure) -> None:
    dials = tree.title.dials
    values = [line.value for group in tree.card.groups for line in group.lines if line.value.rounding == "speed"]
    speeds = {(value.fact, value.value): f"back gear, small cone {value.value:g}" for value in values}
    named = blocks(tree.card, dials, speeds)
    key, rest = with_key(named)
    assert {row.label for row in key} == {(row.lever,) for one in named for row in one.rows if row.lever}
    assert [row.number for row in key] == sorted({row.number for row in key}, key=float)
    assert not any(row.lever for one in rest for row in one.rows)
    short = blocks(tree.card, dials, dict.fromkeys(speeds, "A2"))
    assert with_key(short) == ((), short)


def test_a_card_that_one_side_does_not_hold_says_so(tree: Procedure) -> None:
    many = tree.model_copy(update={"card": tree.card.model_copy(update={"groups": tree.card.groups * 6})})
    assert MORE_SIDES in to_card_html(many)
    assert MORE_SIDES not in to_card_html(tree)


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


def test_columns_keep_the_order_and_lose_nothing(tree: Procedure, dials: Dials) -> None:
    made = blocks(tree.card, dials)
    columns = side_by_side(made, 3)
    assert len(columns) == 3
    assert [row for column in columns for one in column for row in one.rows] == [row for one in made for row in one.rows]


def test_a_card_without_numbers_is_still_a_page(tree: Procedure) -> None:
    bare = tree.model_copy(update={"card": tree.card.model_copy(update={"notes": (), "groups": ()})})
    page = read_page(to_card_html(bare))
    assert set_rows(page) == []
    assert list(page.all("table", "dangers"))


def test_markdown_holds_the_same_numbers_in_the_same_order(tree: Procedure, dials: Dials) -> None:
    text = to_card_markdown(tree)
    rows = [line.split(" | ") for line in text.splitlines() if line.startswith("| ")]
    numbers = [(cells[2], cells[3].removesuffix(" |").strip()) for cells in rows if len(cells) == 4][2:]
    assert [(plain(number), plain(unit)) for number, unit in numbers] == [row[1:] for row in due_rows(tree, dials)]
    for caution in messages(tree):
        assert f"- **DANGER** **{caution.hazard}.**" in text
    assert f"Tailstock end LARGER: **{tree.look_up.larger_at_tailstock}**" in text
    assert "**Emergency** Press the stop." in text
    for line in tree.stop_at_once:
        assert f"- {say(line, dials)}" in text
