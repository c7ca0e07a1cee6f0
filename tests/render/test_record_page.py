"""The paper of a bar for the lathe: read back from print, wide enough to write on, the same every time."""

import re
import shutil
import subprocess
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_EVEN, Decimal
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from chromium import printed
from tailtrue.advise import advise, make_procedure
from tailtrue.calc.alignment import tailstock_move
from tailtrue.case import Case
from tailtrue.facts import Fact
from tailtrue.log.fields import record_catalogue
from tailtrue.papers import Head
from tailtrue.parts import Dials
from tailtrue.places import templates_folder
from tailtrue.record_sheet import RecordSheet
from tailtrue.render.paper import unit_beside
from tailtrue.render.pdf import to_pdf
from tailtrue.render.plain import literal
from tailtrue.render.record_page import record_html, record_markdown, to_record_html, to_record_markdown
from tailtrue.truing.lookup import record_sheet
from tailtrue.truing.paper import head_of, mend_first

from .reading import read_page
from .test_print import POINTS, words

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"
FIELDS = {fact.key: fact.spec for fact in record_catalogue().facts.values()}
BENCH = (templates_folder() / "bench.css").read_text(encoding="utf-8")


def case_of(name: str) -> Case:
    return advise(EXAMPLES / name / "job.toml").case


def sheet_of(name: str) -> RecordSheet:
    return record_sheet(case_of(name), FIELDS)


def dials_of(name: str) -> Dials:
    return "metric" if name == "fernhill" else "inch"


def html_of(case: Case) -> str:
    return record_html(record_sheet(case, FIELDS), head_of(case), mend_first(case))


def head_with_sheet(name: str, checksum: str) -> Head:
    """A record that goes with a sheet names the checksum of that sheet; one made for the lathe alone has no sheet."""
    return head_of(case_of(name))._replace(checksum=checksum)


def markdown_of(case: Case) -> str:
    return record_markdown(record_sheet(case, FIELDS), head_of(case), mend_first(case))


@pytest.fixture(scope="module", params=["fernhill", "quarry-road"])
def name(request: pytest.FixtureRequest) -> str:
    found: str = request.param
    return found


@pytest.fixture(scope="module")
def paper(name: str, tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("record")
    (folder / "record.html").write_text(html_of(case_of(name)), encoding="utf-8")
    printed(folder / "record.html", folder / "record.pdf")
    return folder / "record.pdf"


def test_every_printed_line_of_the_table_is_what_the_formula_gives(name: str, paper: Path) -> None:
    reader = shutil.which("pdftotext")
    assert reader, "the table is read back with pdftotext: install the PDF tools to run the tests"
    text = subprocess.run([reader, "-layout", "-l", "1", str(paper), "-"], check=True, capture_output=True, text=True).stdout
    case, places = case_of(name), 3 if name == "fernhill" else 4
    size = 1.0 if name == "fernhill" else 25.4
    bar = [case.value(f"truing.{one}") for one in ("span", "head_station", "tail_station")]
    step = Decimal(1).scaleb(-places)
    limit, unsure = (Decimal(repr(case.value(one) / size)) for one in ("truing.limit", "align.uncertainty"))
    # What is surely in limits is reckoned with both figures as they are printed, each rounded to its safe side.
    surely_in = limit.quantize(step, ROUND_FLOOR) - unsure.quantize(step, ROUND_CEILING)
    found = re.findall(rf"(\d\.\d{{{places}}})\s+(leave it|read again|move)\s+(\d\.\d{{{places}}}|–)", text)
    assert len(found) >= 40
    for difference, do, move in found:
        read_mm = float(difference) * size
        read = Decimal(difference)
        wanted = "leave it" if read <= surely_in else "move" if read - unsure > limit else "read again"
        assert do == wanted, difference
        # A number that is printed is used: beside what is too close to say stands none.
        assert (move == "–") == (do != "move"), difference
        if move != "–":
            exact = Decimal(repr(tailstock_move(read_mm, *bar) / size))
            assert Decimal(move) == exact.quantize(Decimal(1).scaleb(-places), ROUND_HALF_EVEN), difference
    assert {do for _, do, _ in found} == {"leave it", "read again", "move"}
    differences = [float(one[0]) for one in found]
    assert len(set(differences)) == len(differences)
    assert max(differences) * size == pytest.approx(0.2, rel=0.02)


def test_it_prints_on_its_paper_and_every_page_names_the_lathe_and_the_bar(name: str, paper: Path) -> None:
    sheets, head = PdfReader(paper), head_of(case_of(name))
    assert len(sheets.pages) == 7
    for page in sheets.pages:
        assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(POINTS[head.paper], abs=1)
        assert f"{head.machine}, {head.shop}" in words(page)
        assert f"Bar {head.bar}" in words(page)


def test_the_maker_of_pdf_breaks_pages_as_a_browser_does(name: str, paper: Path) -> None:
    """It shrinks a page with too wide a content, and then lines are too low to write on and pages too few."""
    tree = make_procedure(EXAMPLES / name / "job.toml")
    made = PdfReader(BytesIO(to_pdf(to_record_html(tree), tree.title)))
    assert len(made.pages) == len(PdfReader(paper).pages)


def test_both_directions_and_the_safety_lines_stand_beside_the_table(name: str, paper: Path) -> None:
    first = words(PdfReader(paper).pages[0])
    assert "Tailstock end LARGER: move the tailstock toward you." in first
    assert "Tailstock end SMALLER: move the tailstock away from you." in first
    for line in ("Isolate the lathe", "clamp base and quill", "tug the tailstock", "never halve it, never double it"):
        assert line in first
    del name


def test_the_readings_stand_in_their_order_and_every_place_of_the_log_is_there(name: str) -> None:
    page = read_page(html_of(case_of(name)))
    names = [" ".join(one.words.split()) for one in page.all("th", "name")]
    order = [one for one in names if one[:2] in ("H ", "T ")]
    assert [one[0] for one in order] == ["H", "T", "T", "H"]
    told = " ".join(page.words.split())
    derived = {"state", "readings", "rule", "knowledge_version", "moves", "level"}
    for fact in record_catalogue().facts.values():
        if fact.ask == "must" and fact.key not in derived:
            assert fact.spec.label in told, fact.key
    for word in ("As found", "As left", "verified by, initials", "next check due", "way of the move", "toward you"):
        assert word in told


def test_hands_find_room_to_write() -> None:
    blank = re.search(r"\.sheet td\.blank {([^}]*)}", BENCH)
    write = re.search(r"^\.write {([^}]*)}", BENCH, flags=re.MULTILINE)
    for found in (blank, write):
        assert found
        size = dict(re.findall(r"(?:^| )((?:min-)?(?:width|height)): ([\d.]+)mm", found[1]))
        assert float(size["min-width"]) >= 30
        assert float(size["height"]) >= 8
    # Two columns on a page of 186 mm, each with its names.
    (names,) = re.findall(r"\.state \.name { width: ([\d.]+)mm", BENCH)
    assert (186 - 4) / 2 - float(names) >= 30
    (names,) = re.findall(r"\.visit \.name { width: ([\d.]+)mm", BENCH)
    assert (186 - float(names)) / 2 >= 30
    # Four columns of passes.
    (names,) = re.findall(r"\.filled \.name { width: ([\d.]+)mm", BENCH)
    assert (186 - float(names)) / 4 >= 30
    assert ".nomogram .ink { width: 170mm" in BENCH


def test_the_same_input_makes_the_same_bytes(name: str) -> None:
    assert html_of(case_of(name)) == html_of(case_of(name))
    assert markdown_of(case_of(name)) == markdown_of(case_of(name))


def test_the_record_of_a_procedure_is_the_paper_of_its_bar(name: str) -> None:
    tree = make_procedure(EXAMPLES / name / "job.toml")
    case, head = case_of(name), head_with_sheet(name, tree.title.checksum)
    assert tree.record == sheet_of(name)
    assert to_record_html(tree) == record_html(sheet_of(name), head, mend_first(case))
    assert to_record_markdown(tree) == record_markdown(sheet_of(name), head, mend_first(case))


def test_every_page_of_the_record_of_a_procedure_tells_the_checksum_of_its_sheet(
    name: str, paper: Path, tmp_path: Path
) -> None:
    tree = make_procedure(EXAMPLES / name / "job.toml")
    (tmp_path / "record.html").write_text(to_record_html(tree), encoding="utf-8")
    told = f"checksum {tree.title.checksum}, rules {tree.title.knowledge_version}"
    assert re.fullmatch(r"[0-9a-f]{4}-[0-9a-f]{4}", tree.title.checksum)
    for page in printed(tmp_path / "record.html", tmp_path / "record.pdf").pages:
        assert told in words(page)
    written = to_record_markdown(tree).replace("Rules", "rules").replace("\\", "")
    assert f"rules {tree.title.knowledge_version}, checksum {tree.title.checksum}" in written
    # The paper of a bar alone goes with no sheet and names none.
    assert all("checksum" not in words(page) for page in PdfReader(paper).pages)


def test_every_place_in_full_is_on_the_page_as_often_as_its_columns(name: str) -> None:
    sheet = sheet_of(name)
    page = read_page(html_of(case_of(name)))
    blocks = list(page.all("div", "block"))
    assert [next(block.all("h2")).words for block in blocks] == [block.title for block in sheet.blocks]
    text = markdown_of(case_of(name))
    for block, made in zip(sheet.blocks, blocks, strict=True):
        rows = [row for row in made.all("tr") if list(row.all("td", "blank"))]
        assert len(rows) == len(block.entries)
        for entry, row in zip(block.entries, rows, strict=True):
            cells = list(row.all("td", "blank"))
            assert len(cells) == len(block.columns)
            assert entry.label in next(row.all("th", "name")).words
            assert literal(entry.label) in text
            for cell in cells:
                assert all(choice in cell.words for choice in entry.choices)
                assert len(list(cell.all("span", "box"))) == len(entry.choices)
                unit = [one.words for one in cell.all("span", "unit")]
                assert unit == ([unit_beside(entry.unit, dials_of(name))] if entry.unit else [])


def test_the_record_holds_what_an_inspection_record_must(name: str) -> None:
    told = " ".join(read_page(html_of(case_of(name))).words.split())
    for word in (
        "shop temperature at the start", "shop temperature at the end", "calibration due", "before the test", "after the test",
        "edge of the tool", "mean", "largest less smallest", "difference, T less H", "accept", "correct", "repeat", "diagnose",
        "screw turned", "verification cut", "Height of the tailstock centre", "Readings rejected", "give or take",
        "done otherwise than the sheet says", "made by", "read over by", "line of the log", "kept where, until",
    ):  # fmt: skip
        assert word in told, word


def test_a_procedure_without_a_record_makes_no_paper(name: str) -> None:
    bare = make_procedure(EXAMPLES / name / "job.toml").model_copy(update={"record": None})
    with pytest.raises(ValueError, match="no record"):
        to_record_html(bare)


def test_markdown_says_the_same_table(name: str) -> None:
    sheet = sheet_of(name)
    text = markdown_of(case_of(name))
    assert text.count("| leave it |") == sum(row.do == "leave" for row in sheet.rows)
    assert text.count("| read again |") == sum(row.do == "again" for row in sheet.rows)
    assert text.count("| move |") == sum(row.do == "move" for row in sheet.rows)
    assert "**Tailstock end LARGER:** move the tailstock toward you." in text
    assert "| What | As found | As left |" in text
    assert "| What | first move | second move |" in text
    assert "verified by, initials" in text


def test_a_lathe_that_must_not_run_is_said_so_at_the_top() -> None:
    case = case_of("fernhill")
    bad = case.with_said({"lathe.stop": Fact(case.knowledge.catalogue["lathe.stop"], "untested")})
    page = html_of(bad)
    assert "DO NOT RUN THE LATHE before this is mended" in page
    assert "has not been tried" in page
    assert "DO NOT RUN" in markdown_of(bad)
    assert "DO NOT RUN" not in html_of(case)


@pytest.mark.parametrize("name", ["fernhill", "quarry-road"])
def test_no_paper_of_a_lathe_without_screws_tells_a_move(name: str) -> None:
    case = case_of(name)
    fixed = case.with_said({"lathe.set_over": Fact(case.knowledge.catalogue["lathe.set_over"], "none")})
    for made in (html_of(fixed), markdown_of(fixed)):
        told = " ".join(re.sub(r"<style>.*?</style>", "", made, flags=re.DOTALL).split())
        for word in ("move the tailstock", "Move by", "Move the tailstock", "way of the move", ">move<", "| move |", "and the move",
                     "move-drawing", "move of the tailstock", "first move", "meets the move"):  # fmt: skip
            assert word not in told, word
        assert "its centre stands off the line away from you" in told
        assert "note it" in told
        assert "Move nothing, force nothing" in told
    assert "Move by" in html_of(case_of(name))
    assert "move-drawing" in html_of(case_of(name))
