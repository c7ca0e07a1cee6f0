"""The word across each page of a paper that is not in force: there, pale, behind what stands on the page, and inside it."""

import ctypes
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import NamedTuple

import pypdfium2
import pypdfium2.raw as raw
import pytest
from playwright.sync_api import Browser

from chromium import printed
from printed_pages import pages_of
from tailtrue.advise import make_procedure
from tailtrue.parts import Status
from tailtrue.procedure import Procedure
from tailtrue.render import to_html
from tailtrue.render.card import to_card_html
from tailtrue.render.pdf import to_pdf
from tailtrue.render.record_page import to_record_html
from tailtrue.render.safety_page import to_safety_html
from tailtrue.render.sop_page import sop_of, to_sop_html

JOB = Path(__file__).parents[2] / "docs" / "examples" / "fernhill" / "job.toml"
PAPERS: dict[str, Callable[[Procedure], str]] = {
    "procedure": to_html,
    "card": to_card_html,
    "safety": to_safety_html,
    "record": to_record_html,
    "sop": to_sop_html,
}
LEAST_CONTRAST = 7.0  # of black letters over the word: WCAG 2.2, 1.4.6
EDGE = 12.0  # points that no printer reaches


class Across(NamedTuple):
    """A word that stands askew: its place among all that is drawn on the page, its box, its tone from 0 to 255."""

    word: str
    place: int
    box: tuple[float, float, float, float]
    tone: int


@pytest.fixture(scope="module")
def tree() -> Procedure:
    return make_procedure(JOB)


def standing(tree: Procedure, status: Status) -> Procedure:
    sop = sop_of(tree)
    control = sop.control.model_copy(update={"status": status})
    said = {"approver": "shop lead", "walked_through": "shop lead"} if status == "approved" else {"stated": status}
    title = tree.title.model_copy(update=said)
    assert title.status == status
    return tree.model_copy(update={"title": title, "sop": sop.model_copy(update={"control": control})})


def file_of(tree: Procedure, paper: str) -> pypdfium2.PdfDocument:
    return pypdfium2.PdfDocument(to_pdf(PAPERS[paper](tree), tree.title))


def texts(page: pypdfium2.PdfPage) -> list[pypdfium2.PdfObject]:
    return list(page.get_objects(filter=[raw.FPDF_PAGEOBJ_TEXT]))


def across(page: pypdfium2.PdfPage) -> Iterator[Across]:
    read = page.get_textpage()
    for place, one in enumerate(texts(page)):
        if abs(one.get_matrix().b) > 0.1:
            length = raw.FPDFTextObj_GetText(one, read, None, 0)
            letters = (ctypes.c_ushort * length)()
            raw.FPDFTextObj_GetText(one, read, letters, length)
            tones = [ctypes.c_uint() for _ in range(4)]
            assert raw.FPDFPageObj_GetFillColor(one, *map(ctypes.byref, tones))
            assert tones[0].value == tones[1].value == tones[2].value, "no grey"
            yield Across("".join(map(chr, letters[:-1])).strip("\0 "), place, one.get_bounds(), tones[0].value)


def contrast_of_black(tone: int) -> float:
    """WCAG 2.2: relative luminance of a grey, against that of black."""
    share = tone / 255
    light = share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4
    return (light + 0.05) / 0.05


@pytest.mark.parametrize(("status", "paper"), [*(("draft", paper) for paper in PAPERS), ("superseded", "card")])
def test_the_word_stands_once_across_every_page(tree: Procedure, paper: str, status: Status) -> None:
    file = file_of(standing(tree, status), paper)
    assert len(file) == len(file_of(standing(tree, "approved"), paper))
    for page in file:
        width, height = page.get_size()
        found = list(across(page))
        assert "".join(one.word for one in found) == status.upper()
        for one in found:
            assert contrast_of_black(one.tone) > LEAST_CONTRAST
            assert one.tone <= 0xE4, "a printer would leave it out"
            left, bottom, right, top = one.box
            assert EDGE < left < right < width - EDGE
            assert EDGE < bottom < top < height - EDGE
        # What comes later is drawn over it: of the page itself nothing comes before.
        body = [place for place, one in enumerate(texts(page)) if 60 < one.get_bounds()[1] < height - 60]
        assert {one.place for one in found} == set(body[: len(found)])


@pytest.mark.parametrize("paper", PAPERS)
def test_an_approved_paper_has_no_such_word(tree: Procedure, paper: str) -> None:
    approved = standing(tree, "approved")
    assert 'class="standing' not in PAPERS[paper](approved)
    assert not any(list(across(page)) for page in file_of(approved, paper))


@pytest.mark.parametrize("paper", ["procedure", "card"])  # each paper has it from the same part of a template
def test_a_browser_prints_it_on_every_page(tree: Procedure, paper: str, tmp_path: Path) -> None:
    (tmp_path / "page.html").write_text(PAPERS[paper](tree), encoding="utf-8")
    printed(tmp_path / "page.html", tmp_path / "page.pdf")
    for words in pages_of((tmp_path / "page.pdf").read_bytes()):
        # Once in the head and once across the page.
        assert words.count("DRAFT") == 2


@pytest.mark.parametrize(
    ("paper", "width", "seen"), [("procedure", 1000, False), ("safety", 1000, True), ("safety", 390, False)]
)
def test_on_a_screen_it_keeps_clear_of_the_steps_and_of_what_is_narrow(
    tree: Procedure, browser: Browser, tmp_path: Path, paper: str, width: int, seen: bool
) -> None:
    (tmp_path / "page.html").write_text(PAPERS[paper](tree), encoding="utf-8")
    page = browser.new_page(viewport={"width": width, "height": 900})
    page.goto((tmp_path / "page.html").as_uri())
    assert page.locator(".standing").is_visible() is seen
    page.close()
