"""The PDF, read back: whole, labelled on every page, nothing split, the same bytes twice."""

import html
import os
import re
import subprocess
import sys
from collections import Counter
from collections.abc import Iterator
from functools import cache
from io import BytesIO
from itertools import pairwise
from pathlib import Path

import pytest
from pypdf import PageObject, PdfReader
from pypdf.generic import DictionaryObject

from tailtrue.advise import make_procedure
from tailtrue.procedure import Procedure, Step
from tailtrue.render import to_html
from tailtrue.render.card import to_card_html
from tailtrue.render.pdf import PdfImpossible, pdf_ready, to_pdf
from tailtrue.render.sign_letters import TRIANGLE
from tailtrue.render.words import HEADINGS, say

from .reading import Element, read_page
from .sample import procedure

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"
POINTS = {"A4": (595.3, 841.9), "Letter": (612.0, 792.0)}
BULLET = "\u2022"
SQUARE = "\u25aa"
# Heads of tables that may run on over a page, on the front and at the back.
LONG_TABLES = ("Hazard, what it does, and how to avoid it", "What you see", "What happens beyond it")


@pytest.fixture(scope="module", params=["fernhill", "quarry-road"])
def example(request: pytest.FixtureRequest) -> Procedure:
    return make_procedure(EXAMPLES / request.param / "job.toml")


@pytest.fixture(scope="module")
def sheet(example: Procedure) -> PdfReader:
    return PdfReader(BytesIO(to_pdf(to_html(example), example.title)))


@pytest.fixture(scope="module", params=["A4", "Letter"])
def card(request: pytest.FixtureRequest, example: Procedure) -> tuple[Procedure, PdfReader]:
    tree = on_paper(example, request.param)
    return tree, PdfReader(BytesIO(to_pdf(to_card_html(tree), tree.title)))


def on_paper(tree: Procedure, paper: str) -> Procedure:
    return tree.model_copy(update={"title": tree.title.model_copy(update={"paper": paper})})


def words(page: PageObject) -> str:
    return " ".join(page.extract_text().split())


def squeezed(text: str) -> str:
    return re.sub(r"\s", "", text)


def labels(tree: Procedure, number: int, count: int) -> tuple[str, ...]:
    title = tree.title
    return (
        f"{title.machine}, {title.shop}",
        f"Sheet {title.number} rev {title.revision} {title.status.upper()}",
        f"Rules {title.knowledge_version}, checksum {title.checksum}, dated {title.date}, {title.standing}",
        f"{number} / {count}",
    )


def test_no_sign_of_the_key_stands_over_another(example: Procedure, sheet: PdfReader) -> None:
    """A sign is 4.6 mm high: so far apart are the lines of the key, less the margin of its drawing."""
    codes = {sign.code for sign in example.signs}
    page = next(page for page in sheet.pages if HEADINGS["signs"] in page.extract_text())
    feet: set[float] = set()

    def note(text: str, where: list[float], letters: list[float], font: object, size: float) -> None:
        del font, size
        if text.split()[:1] and text.split()[0] in codes:
            feet.add(round(where[1] * letters[4] + where[3] * letters[5] + where[5], 1))

    page.extract_text(visitor_text=note)
    assert len(feet) > 5
    assert min(upper - lower for lower, upper in pairwise(sorted(feet))) > 4.3 * 72 / 25.4


def test_every_page_says_machine_sheet_revision_rules_checksum_and_page(example: Procedure, sheet: PdfReader) -> None:
    count = len(sheet.pages)
    # A soft point that is turned where it sits is a phase of its own, and takes a page.
    most = 35 if any(phase.id == "soft-point" for phase in example.phases) else 34
    assert 20 <= count <= most
    for number, page in enumerate(sheet.pages, start=1):
        for label in labels(example, number, count):
            assert label in words(page), (number, label)


def test_the_paper_is_the_one_asked_for(example: Procedure, sheet: PdfReader) -> None:
    for page in sheet.pages:
        size = (float(page.mediabox.width), float(page.mediabox.height))
        assert size == pytest.approx(POINTS[example.title.paper], abs=1)


def steps(tree: Procedure) -> Iterator[Step]:
    for phase in tree.phases:
        yield from phase.steps


@cache
def texts(file: PdfReader) -> tuple[str, ...]:
    """The pages without a space: where a line ends does not matter."""
    return tuple(squeezed(page.extract_text()) for page in file.pages)


def page_of(sheet: PdfReader, text: str) -> list[int]:
    return [number for number, page in enumerate(texts(sheet)) if squeezed(text) in page]


def test_every_step_is_there_and_stands_whole_on_one_page(example: Procedure, sheet: PdfReader) -> None:
    pages = texts(sheet)
    for step in steps(example):
        here = [text for text in pages if squeezed(f"{step.number}{step.title}") in text]
        assert len(here) == 1, step.number
        pieces = [caution.hazard for caution in step.cautions]
        # A step that comes again in short gives its checks, which name every state that its actions ask for.
        given = [check.text for check in step.checks] if step.again else step.text
        pieces += [say(line, example.title.dials) for line in given]
        pieces += [say(step.hold.text, example.title.dials)] if step.hold else []
        for piece in pieces:
            assert squeezed(piece) in here[0], (step.number, piece)


def test_a_heading_never_ends_a_page(example: Procedure, sheet: PdfReader) -> None:
    for phase in example.phases:
        heading = f"{phase.number} {phase.title}"
        first = phase.cautions[0].hazard if phase.cautions else f"{phase.steps[0].number}{phase.steps[0].title}"
        assert set(page_of(sheet, heading)) & set(page_of(sheet, first)), heading
    for page in sheet.pages:
        last = [text for text, _, y, size in sorted(strokes(page), key=lambda one: -one[2]) if y > 60][-1:]
        assert last, "an empty page"
        assert last[0] not in HEADINGS.values()


def test_the_head_of_a_long_table_comes_again(sheet: PdfReader) -> None:
    assert any(again == first + 1 for head in LONG_TABLES for first, again in pairwise(page_of(sheet, head)))


def letters_of_the_page(page: Element) -> Counter[str]:
    """Every letter that is meant for paper."""

    def walk(element: Element) -> Iterator[str]:
        for child in element.children:
            if isinstance(child, str):
                yield child
            elif child.tag not in ("style", "title", "desc", "nav", "footer", "template", "script") and "on-screen" not in (
                child.attributes.get("class", "").split()
            ):
                yield from walk(child)

    return Counter(squeezed(html.unescape("".join(walk(page)))))


def letters_of_the_file(tree: Procedure, file: PdfReader) -> Counter[str]:
    """Every letter on the paper, without what the margins say."""
    found: Counter[str] = Counter()
    for number, page in enumerate(texts(file), start=1):
        found += Counter(page)
        found -= Counter(squeezed("".join(labels(tree, number, len(file.pages)))))
    for mark in (BULLET, SQUARE, TRIANGLE):  # the page draws them
        del found[mark]
    return found


def test_no_letter_of_the_sheet_is_lost(example: Procedure, sheet: PdfReader) -> None:
    due = letters_of_the_page(read_page(to_html(example)))
    found = letters_of_the_file(example, sheet)
    assert sum(due.values()) > 20_000
    # The head of a table that goes over a page is printed once more there.
    assert due - found == Counter()
    assert sum((found - due).values()) < 0.01 * sum(due.values())


def test_no_letter_of_the_card_is_lost(card: tuple[Procedure, PdfReader]) -> None:
    tree, file = card
    assert letters_of_the_file(tree, file) == letters_of_the_page(read_page(to_card_html(tree)))


def test_the_card_is_one_page_on_either_paper(card: tuple[Procedure, PdfReader]) -> None:
    tree, file = card
    assert len(file.pages) == 1
    page = file.pages[0]
    assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(POINTS[tree.title.paper], abs=1)
    for label in labels(tree, 1, 1):
        assert label in words(page)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_card_has_room_for_a_long_name(example: Procedure, paper: str) -> None:
    named = example.title.model_copy(update={"paper": paper, "machine": "The long green lathe beside the window"})
    tree = example.model_copy(update={"title": named})
    assert len(PdfReader(BytesIO(to_pdf(to_card_html(tree), tree.title))).pages) == 1


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_card_has_room_for_two_more_drills(example: Procedure, paper: str) -> None:
    groups = tuple(
        group.model_copy(update={"lines": (*group.lines, *[group.lines[-1]] * 2)}) if group.title == "Drill" else group
        for group in example.card.groups
    )
    assert groups != example.card.groups
    longer = on_paper(example.model_copy(update={"card": example.card.model_copy(update={"groups": groups})}), paper)
    assert len(PdfReader(BytesIO(to_pdf(to_card_html(longer), longer.title))).pages) == 1


# Kept with its page, so that no other page takes the number of one that was read.
_READ: dict[int, tuple[PageObject, list[tuple[str, float, float, float]]]] = {}


def strokes(page: PageObject) -> list[tuple[str, float, float, float]]:
    """Pieces of text with their place on the paper and the height of their letters; a page is read once."""
    if id(page) not in _READ:
        _READ[id(page)] = (page, _strokes(page))
    return _READ[id(page)][1]


def _strokes(page: PageObject) -> list[tuple[str, float, float, float]]:
    found: list[tuple[str, float, float, float]] = []

    def note(text: str, where: list[float], letters: list[float], font: object, size: float) -> None:
        del font
        if text.strip():
            x = where[0] * letters[4] + where[2] * letters[5] + where[4]
            y = where[1] * letters[4] + where[3] * letters[5] + where[5]
            found.append((text.strip(), x, y, size * abs(where[3]) * abs(letters[3])))

    page.extract_text(visitor_text=note)
    return found


def test_no_page_is_shrunk(example: Procedure, sheet: PdfReader, card: tuple[Procedure, PdfReader]) -> None:
    """What does not fit the width would shrink every page: the page number is set in letters of 9.5 points."""
    for file in (sheet, card[1]):
        for number, page in enumerate(file.pages, start=1):
            sizes = [size for text, _, _, size in strokes(page) if text == f"{number} / {len(file.pages)}"]
            assert sizes == [pytest.approx(9.5, abs=0.01)]
    title = [size for text, _, _, size in strokes(sheet.pages[0]) if text.startswith(example.title.title[:20])]
    assert title == [pytest.approx(18, abs=0.01)]


def test_nothing_is_printed_over_the_edge(sheet: PdfReader, card: tuple[Procedure, PdfReader]) -> None:
    for page in (*sheet.pages, *card[1].pages):
        width, height = float(page.mediabox.width), float(page.mediabox.height)
        for text, x, y, _ in strokes(page):
            assert 20 < x < width - 20, text
            assert 12 < y < height - 20, text


def fonts(page: PageObject) -> Iterator[DictionaryObject]:
    resources = page["/Resources"].get_object()
    assert isinstance(resources, DictionaryObject)
    for name in resources["/Font"].get_object():
        font = resources["/Font"][name].get_object()
        below = font.get("/DescendantFonts")
        yield below[0].get_object() if below else font


def test_every_letter_face_is_in_the_file(sheet: PdfReader, card: tuple[Procedure, PdfReader]) -> None:
    for page in (*sheet.pages, *card[1].pages):
        found = list(fonts(page))
        assert found
        for font in found:
            descriptor = font["/FontDescriptor"].get_object()
            assert "/FontFile2" in descriptor or "/FontFile3" in descriptor


def test_the_file_names_its_sheet_and_carries_its_date_and_no_other(example: Procedure, sheet: PdfReader) -> None:
    told = sheet.metadata
    assert told is not None
    assert (
        told.title == f"{example.title.title}, {example.title.machine}, {example.title.number} rev {example.title.revision}"
    )
    assert told.author == example.title.author
    assert told["/CreationDate"] == example.title.date.replace("-", "") + "000000Z"
    assert "/ModDate" not in told


def test_links_lead_to_places_in_the_file(sheet: PdfReader) -> None:
    places = set(sheet.named_destinations)
    links = [note.get_object() for page in sheet.pages for note in page.get("/Annots", ())]
    assert len(links) > 100
    assert not any(str(link["/Dest"]).startswith("source-") for link in links), "citations are numbers, not links"
    assert all("/A" not in link for link in links), "a link leads out of the file"
    assert {str(link["/Dest"]) for link in links} <= places


def python(code: str, **environment: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=False, env={**os.environ, **environment}
    )


PRINT = (
    "import hashlib\nfrom pathlib import Path\nfrom tailtrue.advise import make_procedure\n"
    "from tailtrue.render import to_html\nfrom tailtrue.render.card import to_card_html\nfrom tailtrue.render.pdf import to_pdf\n"
    f"tree = make_procedure(Path({str(EXAMPLES / 'quarry-road' / 'job.toml')!r}))\n"
    "for page in (to_html(tree), to_card_html(tree)):\n    print(hashlib.sha256(to_pdf(page, tree.title)).hexdigest())\n"
)


def test_a_box_to_tick_on_a_screen_takes_no_room_on_paper() -> None:
    title = procedure().title
    ticked = (
        '<p>left<input type="checkbox" aria-label="step 1.1 done"><a href="#source-one" title="one: p. 2">1</a>right</p>'
    )
    assert to_pdf(ticked, title) == to_pdf("<p>left1right</p>", title)


def test_made_twice_it_is_the_same_to_the_byte() -> None:
    first, second = (python(PRINT, PYTHONHASHSEED=seed) for seed in ("1", "2"))
    assert first.returncode == second.returncode == 0, first.stderr + second.stderr
    assert len(first.stdout.split()) == 2
    assert first.stdout == second.stdout
    assert first.stderr == "", "the maker complains"


def test_without_letter_faces_nothing_is_made(tmp_path: Path) -> None:
    (tmp_path / "fonts.conf").write_text(
        '<?xml version="1.0"?><fontconfig><dir>/nowhere</dir></fontconfig>', encoding="utf-8"
    )
    done = python(PRINT, FONTCONFIG_FILE=str(tmp_path / "fonts.conf"), FONTCONFIG_PATH=str(tmp_path))
    assert done.returncode == 1
    assert "PdfImpossible: no letter faces were found, so the pages would be without words" in done.stderr


def test_without_the_maker_it_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    assert pdf_ready()
    monkeypatch.setitem(sys.modules, "plutoprint", None)
    assert not pdf_ready()
    with pytest.raises(PdfImpossible, match="the maker of PDF is not installed") as missing:
        to_pdf("<p>page</p>", procedure().title)
    assert missing.value.do == "install it: pip install 'tailtrue[pdf]'"
