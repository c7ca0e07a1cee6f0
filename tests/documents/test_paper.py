"""The papers as they are printed: what stands on every page, the live area, letters, lines, contrast, headings."""

import re
from collections import Counter
from collections.abc import Iterable
from functools import cache
from io import BytesIO
from itertools import pairwise
from pathlib import Path

import pytest
from pypdf import PdfReader

from chromium import printed
from printed_pages import Sheet, pages_of, sheets_of
from shops import ROOT
from tailtrue.procedure import Procedure
from tailtrue.render.pdf import to_pdf

from .made import MAKERS, SHIPPED, Job, job

PRINTED = ("fernhill/job", "quarry-road/job")
KINDS = ("procedure", "card", "safety", "sop", "record")
MM = 72 / 25.4
# Of what a desk printer reaches on both papers. The margins hold the head and the foot of the page.
LIVE_WIDTH = 186 * MM
A4_LEAST = 800  # points; Letter is 792 high
EDGE = 4.2 * MM  # a sixth of an inch, which desk printers cannot reach
MOST_BEFORE_THE_WORK = 3
LEAST_LINE_PT, LEAST_BOX_MM = 0.35, 5.0
# NUREG-0700 rev. 3: fifteen minutes of arc at the distance told, capitals are about seven tenths of the size of a letter.
READ_FROM_MM, MINUTES, CAPITALS = 800.0, 15.0, 0.70
STYLES = sorted((ROOT / "templates").glob("*.css"))


@cache
def _pdf(name: str, kind: str) -> bytes:
    """A paper as it is printed, made once for all that is read of it."""
    made = job(name)
    return to_pdf(made.html(kind), made.tree.title)


@cache
def _texts(name: str, kind: str) -> tuple[str, ...]:
    """What stands on each page, without the gaps between words."""
    return pages_of(_pdf(name, kind))


# The tests of one example follow each other, so that a worker seldom makes a paper that another has made.
of_each_shipped = pytest.mark.parametrize("shipped", SHIPPED, scope="session")


@pytest.fixture(params=PRINTED, scope="module")
def name(request: pytest.FixtureRequest) -> str:
    return str(request.param)


def test_v01_a_message_is_on_the_page_of_its_step(name: str) -> None:
    """DITA 1.3 and ASD-STE100 issue 9: what warns stands with what it warns of."""
    pages = _texts(name, "procedure")
    for _, step in job(name).steps:
        here = [page for page in pages if re.sub(r"\s", "", f"{step.number}{step.title}") in page]
        assert len(here) == 1, step.number
        for caution in step.cautions:
            assert re.sub(r"\s", "", caution.hazard) in here[0], (step.number, caution.id)


def test_few_pages_come_before_the_work(name: str) -> None:
    """House rule: nobody reads a book before the first step."""
    pages = _texts(name, "procedure")
    first = job(name).tree.phases[0].steps[0]
    title = re.sub(r"\s", "", f"{first.number}{first.title}")
    assert next(place for place, page in enumerate(pages) if title in page) <= MOST_BEFORE_THE_WORK


def _all_on(page: str, parts: list[str]) -> bool:
    return all(re.sub(r"\s", "", part) in page for part in parts)


def test_a_phase_opens_with_its_first_step_and_a_start_check_stands_with_its_cut(name: str) -> None:
    """Common practice of print: what is read together is on one page. A step with a drawing may be too high for that.

    The cautions of a phase may begin on the page before its first step: its name stands with the first of them.
    """
    tree = job(name).tree
    pages = _texts(name, "procedure")
    drawn = {drawing.place for drawing in tree.drawings}
    on = {
        step.number: next(page for page in pages if re.sub(r"\s", "", f"{step.number}{step.title}") in page)
        for _, step in job(name).steps
    }
    pairs = 0
    for phase in tree.phases:
        heading = f"{phase.number}{phase.title}"
        hazards = [caution.hazard for caution in phase.cautions]
        last = pages.index(on[phase.steps[0].number])
        assert _all_on(pages[last], [heading, *hazards[:1]]) or (hazards and _all_on(pages[last - 1], [heading, hazards[0]]))
        assert _all_on("".join(pages[last - 1 : last + 1]), hazards), phase.number
        for ready, starts in pairwise(phase.steps):
            if ready.machine != "turning" and starts.machine == "turning" and starts.number not in drawn:
                assert on[ready.number] == on[starts.number], starts.number
                pairs += 1
    assert pairs > 5


@pytest.mark.parametrize("kind", KINDS)
def test_v35_every_page_says_machine_number_revision_and_page(name: str, kind: str) -> None:
    """ISO 9001:2015, 7.5.2: identification, on every page that can come loose."""
    title, pages = job(name).tree.title, _texts(name, kind)
    said = [title.machine, title.number, f"rev {title.revision}"]
    if kind in {"procedure", "card", "safety", "record"}:
        said.append(f"dated {title.date}, not approved")
    for count, text in enumerate(pages, start=1):
        for one in (*said, f"{count} / {len(pages)}"):
            assert re.sub(r"\s", "", one) in text, (kind, count)


def _margins(sheet: Sheet) -> tuple[float, float]:
    """The lines in points below and above which no text of a page stands, but its foot and its head."""
    top, foot = (20 * MM, 20 * MM) if sheet.height > A4_LEAST else (12.2 * MM, 10.2 * MM)
    return foot - 2, sheet.height - top + 1


def _strays(pdf: bytes) -> list[tuple[int, str]]:
    """Pages on which more or less stands above and below the text than on the others, and what."""
    said = []
    sheets = list(sheets_of(pdf))
    for number, sheet in enumerate(sheets, start=1):
        foot, head = _margins(sheet)
        own = f"{number}/{len(sheets)}"
        said.append(" ".join(part.replace(own, "", 1) for part in (sheet.above(head), sheet.below(foot))))
    ((everywhere, _),) = Counter(said).most_common(1)
    return [(number, one) for number, one in enumerate(said, start=1) if one != everywhere]


@of_each_shipped
def test_no_line_is_written_again_in_the_margin_of_the_next_page(shipped: str) -> None:
    """Whoever copies a sheet, searches it or has it read aloud meets each line once."""
    kinds = [kind for kind in job(shipped).kinds if kind != "card"]  # one page: nothing stands on every other
    assert {kind: found for kind in kinds if (found := _strays(_pdf(shipped, kind)))} == {}


def _ends(pdf: bytes) -> list[str]:
    """The last line of each page above its foot."""
    last = []
    for sheet in sheets_of(pdf):
        foot, _ = _margins(sheet)
        lowest = min((box for box in sheet.boxes if box.bottom > foot), key=lambda box: box.bottom)
        # All that stands on the line, and nothing of the lines that touch it.
        quarter = (lowest.top - lowest.bottom) / 4
        last.append(sheet.between(lowest.bottom + quarter, lowest.top - quarter))
    return last


@of_each_shipped
def test_no_heading_ends_a_page(shipped: str) -> None:
    """Common practice of print: a heading stands over what it is the head of."""
    for kind in set(job(shipped).kinds) - {"card"}:
        headings = [re.sub(r"\s", "", one.words) for one in job(shipped).page(kind).all("h2")]
        for number, last in enumerate(_ends(_pdf(shipped, kind)), start=1):
            assert not [one for one in headings if one.startswith(last) and len(last) > 3], (kind, number)


def test_nor_is_one_wherever_the_page_ends() -> None:
    made = job(PRINTED[0])
    mark = '<section class="back glossary"'
    assert made.html("procedure").count(mark) == 1
    for room in range(6):
        moved = made.html("procedure").replace(mark, f'<div style="height: {room * 0.37}pt"></div>{mark}')
        assert _strays(to_pdf(moved, made.tree.title)) == [], room


def test_v45_the_card_is_one_side(made: Job) -> None:
    """NUREG-0700 rev. 3; house rule: one side of one sheet, on either paper."""
    if made.tree.card:
        for paper in ("A4", "Letter"):
            title = made.tree.title.model_copy(update={"paper": paper})
            html = MAKERS["card"][0](made.tree.model_copy(update={"title": title}))
            assert len(list(sheets_of(to_pdf(html, title)))) == 1, paper


def test_v45_its_numbers_are_read_from_where_it_hangs() -> None:
    """NUREG-0700 rev. 3: character height as an angle."""
    least = READ_FROM_MM * MINUTES / 60 * 3.14159265 / 180
    css = (ROOT / "templates" / "card.css").read_text(encoding="utf-8")
    found = re.search(r"td\.number \{ font-size: ([\d.]+)pt", css)
    assert found
    assert float(found[1]) / 72 * 25.4 * CAPITALS >= least


def _light(colour: str) -> float:
    digits = "".join(one * 2 for one in colour) if len(colour) == 3 else colour
    parts = [int(digits[at : at + 2], 16) / 255 for at in (0, 2, 4)]
    linear = [one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4 for one in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def _contrast(one: str, two: str) -> float:
    high, low = sorted((_light(one), _light(two)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def test_the_contrast_formula_gives_the_published_ends() -> None:
    """WCAG 2.2, contrast ratio: black on white is 21, #767676 just passes and #777777 does not."""
    assert _contrast("000", "fff") == pytest.approx(21.0)
    assert _contrast("767676", "ffffff") >= 4.5 > _contrast("777777", "ffffff")


@pytest.mark.parametrize("path", STYLES, ids=lambda path: path.name)
def test_v46_letters_stand_out_and_no_colour_carries_a_meaning(path: Path) -> None:
    """WCAG 2.2, 1.4.3 and 1.4.1: four and a half to one; everything is black, white or grey."""
    css = re.sub(r"/\*.*?\*/", "", path.read_text(encoding="utf-8"), flags=re.DOTALL)
    for colour in re.findall(r"#([0-9a-fA-F]{3}(?:[0-9a-fA-F]{3})?)\b", css):
        parts = {colour} if len(colour) == 3 else {colour[:2], colour[2:4], colour[4:]}
        assert len(set("".join(parts))) == 1 or len(parts) == 1, colour
    for rule in re.findall(r"\{([^}]*)\}", css):
        ink = re.search(r"(?<![-\w])color: #([0-9a-fA-F]+)", rule)
        ground = re.search(r"background: #([0-9a-fA-F]+)", rule)
        if ink and "opacity" not in rule:
            mark = re.search(r"font-size: (\d+)pt", rule)
            large = mark is not None and int(mark[1]) >= 18
            paper = ground[1] if ground else ("000" if _light(ink[1]) > 0.5 else "fff")
            # A mark across the page is grey on purpose, so that the words upon it can be read.
            assert _contrast(ink[1], paper) >= (3.0 if large else 4.5) or "z-index: -1" in rule, rule


@pytest.mark.parametrize("path", STYLES, ids=lambda path: path.name)
def test_v49_no_line_is_thinner_than_a_printer_can_draw(path: Path) -> None:
    """Common practice of desk printers: a third of a point."""
    css = path.read_text(encoding="utf-8")
    for width in re.findall(r"border(?:-\w+)*: ([\d.]+)pt (?:solid|dashed|double)", css):
        assert float(width) >= LEAST_LINE_PT, width


LEAST_PLACE_MM = (30.0, 8.0)
PLACE = re.compile(r"(?:\.line|\.write|\.initials|\.write-in|td\.blank)$")


@pytest.mark.parametrize("path", STYLES, ids=lambda path: path.name)
def test_places_to_write_and_to_tick_are_large_enough_for_a_hand(path: Path) -> None:
    """Common practice: a box of five millimetres, a place of thirty by eight wherever something is written by hand."""
    css = re.sub(r"/\*.*?\*/", "", path.read_text(encoding="utf-8").split("@media screen")[0], flags=re.DOTALL)
    for selectors, body in re.findall(r"([^{}]+)\{([^{}]*)\}", css):
        names = [one.strip() for one in selectors.split(",")]
        sizes = {side: float(found) for side, found in re.findall(r"(?<![\w-])(?:min-)?(width|height): ([\d.]+)mm", body)}
        if any(name.endswith(".box") for name in names):
            assert min(sizes.values(), default=LEAST_BOX_MM) >= LEAST_BOX_MM, names
        if any(PLACE.search(name) for name in names):
            for side, least in zip(("width", "height"), LEAST_PLACE_MM, strict=True):
                assert sizes.get(side, least) >= least, (names, side)


def test_every_kind_of_place_to_write_has_its_size() -> None:
    """Common practice: what is not sized anew elsewhere has the size that the sheet and the papers for the lathe give it."""
    sheet, bench = ((ROOT / "templates" / f"{one}.css").read_text(encoding="utf-8") for one in ("sheet", "bench"))
    assert re.search(r"^\.line \{[^}]*width: 30mm; height: 8mm", sheet, flags=re.MULTILINE)
    assert re.search(r"^\.write \{[^}]*min-width: 32mm; height: 9mm", bench, flags=re.MULTILINE)
    assert re.search(r"^\.sheet td\.blank \{[^}]*height: 9.4mm; min-width: 32mm", bench, flags=re.MULTILINE)


def _lies_within(sheet: Sheet) -> bool:
    boxes = sheet.boxes
    left, right = min(box.left for box in boxes), max(box.right for box in boxes)
    beside = left < 6 * MM or right > sheet.width - 6 * MM or right - left > LIVE_WIDTH + 1
    return not beside and min(box.bottom for box in boxes) >= EDGE and max(box.top for box in boxes) <= sheet.height - EDGE


@pytest.mark.parametrize("kind", KINDS)
@of_each_shipped
def test_v49_what_is_printed_lies_within_the_live_area_of_both_papers(shipped: str, kind: str) -> None:
    """Computed from the two papers: A4 and Letter with the margins of a desk printer."""
    if kind not in job(shipped).kinds:
        assert kind in {"card", "sop", "record"}
        return
    for number, sheet in enumerate(sheets_of(_pdf(shipped, kind)), start=1):
        assert _lies_within(sheet), (kind, number)


def test_v47_headings_go_down_one_level_at_a_time_and_tables_have_heads(made: Job) -> None:
    """ISO 14289-1 (PDF/UA), from memory: title, language, headings without a jump, heads of tables."""
    for kind in made.kinds:
        page = made.page(kind)
        assert next(page.all("html")).attributes["lang"] == "en", kind
        assert next(page.all("title")).words.strip(), kind
        level = 0
        for element in page.all():
            if re.fullmatch(r"h[1-6]", element.tag):
                assert int(element.tag[1]) <= level + 1, (kind, element.words)
                level = int(element.tag[1])
        assert level, kind
        for table in page.all("table"):
            # A key whose cells are read one by one is laid out, it has no columns.
            laid_out = table.attributes.get("role") == "presentation"
            assert laid_out or any(True for _ in table.all("th")), (kind, table.words[:80])
            assert all(head.attributes.get("scope") in {"col", "row", "rowgroup", "colgroup"} for head in table.all("th")), (
                kind,
                table.words[:80],
            )


def test_v47_the_file_that_a_browser_prints_is_tagged_and_has_title_and_language(tmp_path: Path) -> None:
    """ISO 14289-1 (PDF/UA), from memory. The file of our own maker carries a title and no tags: see the documents page."""
    made = job(PRINTED[0])
    (tmp_path / "card.html").write_text(made.html("card"), encoding="utf-8")
    file = printed(tmp_path / "card.html", tmp_path / "card.pdf")
    root = file.trailer["/Root"].get_object()
    assert root["/MarkInfo"]["/Marked"]  # type: ignore[index]
    assert str(root["/Lang"]).lower().startswith("en")  # type: ignore[index]
    assert file.metadata is not None
    assert file.metadata.title


@of_each_shipped
def test_v47_the_file_of_our_own_maker_has_title_language_and_bookmarks(shipped: str) -> None:
    """ISO 14289-1, from memory: what it has; the tags that it lacks are told in the table of invariants."""
    file, tree = PdfReader(BytesIO(_pdf(shipped, "procedure"))), job(shipped).tree
    assert file.trailer["/Root"].get_object()["/Lang"] == "en"  # type: ignore[index]
    assert file.metadata is not None
    assert tree.title.title in str(file.metadata.title)
    marked = [str(one.title) for one in file.outline if not isinstance(one, list)]
    for phase in tree.phases:
        assert any(one.startswith(f"{phase.number} {phase.title}") for one in marked), phase.number


def _alone_at_a_foot(pages: Iterable[str], tree: Procedure) -> list[str]:
    """The phases whose heading has nothing below it on its page but the foot of the page."""
    found = []
    for words in pages:
        for phase in tree.phases:
            # No step whose number ends so, and no number that does.
            title = "".join(f"{phase.number}{phase.title}".split())
            heading = r"(?<![\d.])" + re.escape(title)
            places = [one.end() for one in re.finditer(heading, words)]
            first = phase.cautions[0].hazard if phase.cautions else f"{phase.steps[0].number}{phase.steps[0].title}"
            # The list of times names the phases too, in a table of its own.
            if places and re.sub(r"\s", "", first) not in words[places[-1] :] and "Howlongittakes" not in words:
                found.append(f"{phase.number} {phase.title}")
    return found


@of_each_shipped
def test_no_heading_stands_alone_at_the_foot_of_a_page(shipped: str) -> None:
    """DITA 1.3 and common practice of print: a heading stands with its first message, its first step, its first line."""
    pages = _texts(shipped, "procedure")
    assert _alone_at_a_foot(pages, job(shipped).tree) == []
    kinds = list(job(shipped).page("procedure").all("section", "kind"))
    assert kinds
    for kind in kinds:
        first = "".join(next(kind.all("li", "need")).words.split())
        heading = "".join(next(kind.all("h3")).words.split())
        assert any(f"{heading}{first}" in page for page in pages), heading


@pytest.mark.parametrize("name", [*PRINTED, "tannery-lane/job"])
def test_nor_does_it_when_a_browser_prints(name: str, tmp_path: Path) -> None:
    """The same, by the other way to paper."""
    (tmp_path / "sheet.html").write_text(job(name).html("procedure"), encoding="utf-8")
    printed(tmp_path / "sheet.html", tmp_path / "sheet.pdf")
    assert _alone_at_a_foot(pages_of((tmp_path / "sheet.pdf").read_bytes()), job(name).tree) == []
