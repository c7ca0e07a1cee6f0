"""A sign that is printed as a letter looks like its drawing, on white paper and on a black ground."""

from io import BytesIO

import numpy as np
import pypdfium2 as pdfium
import pytest
from numpy.typing import NDArray
from pypdf import PdfReader

from shops import EXAMPLES
from tailtrue.advise import knowledge, make_procedure
from tailtrue.procedure import Procedure, TitleBlock
from tailtrue.render import pdf
from tailtrue.render.html import to_html
from tailtrue.render.pictograms import pictogram
from tailtrue.render.sign_letters import TRIANGLE, letter
from tailtrue.render.symbols import SYMBOLS
from tailtrue.render.templates import style
from tailtrue.shop_sheet import Sign

ROWS = {row.text("code"): row for row in knowledge().tables["safety/signs"]}
MARK = (
    '<svg class="triangle" viewBox="0 0 24 22" aria-hidden="true"><path class="sign" d="M12 1 L23.2 21 H0.8 Z"/>'
    '<path class="mark" d="M12 7.5 V14.2 M12 16.2 V18.6"/></svg>'
)
SIZE = 48  # points of a sign on the page that is compared
ABREAST = 8
SCALE = 2
# A shade is a part of 255. Edges may be rounded apart; two figures of one shape differ in more than that.
SHADE, EDGES = 128, 0.008


@pytest.fixture(scope="module")
def tree() -> Procedure:
    return make_procedure(EXAMPLES / "fernhill" / "job.toml")


def drawing(code: str) -> str:
    return pictogram(Sign.model_validate({"code": code, "words": code, "shape": ROWS[code].text("shape")}))


def sheet(on_black: bool, cells: list[str]) -> str:
    ground = "danger" if on_black else "caution"
    look = (
        f"{style('A4')} @page {{ margin: 10pt }} body {{ padding: 0 }} .word {{ width: {ABREAST * SIZE}pt; height: {8 * SIZE}pt }}"
        f".cell {{ float: left; width: {SIZE}pt; height: {SIZE}pt; text-align: left; line-height: 0 }}"
        f".cell .pictogram {{ display: block; width: {SIZE}pt; height: {SIZE}pt }}"
        f".cell .as-letters {{ display: block; font-size: {SIZE}pt !important; line-height: {SIZE}pt !important; margin-left: -{SIZE / 20}pt }}"
    )
    drawn = "".join(f'<div class="cell">{one}</div>' for one in cells)
    return f'<html lang="en"><style>{look}</style><body><div class="word {ground}">{drawn}</div><p>signs</p></body></html>'


def seen(page: str, title: TitleBlock) -> NDArray[np.float64]:
    """The page in shades."""
    (only,) = pdfium.PdfDocument(pdf.to_pdf(page, title))
    return np.asarray(only.render(scale=SCALE, grayscale=True).to_numpy(), dtype=float).squeeze()


@pytest.mark.parametrize("on_black", [False, True])
def test_each_letter_looks_like_the_drawing_of_its_sign(
    tree: Procedure, on_black: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    page = sheet(on_black, [drawing(code) for code in SYMBOLS])
    as_letters = cells(seen(page, tree.title))
    assert pdf._printed(page).count("<svg") == 0
    monkeypatch.setattr(pdf, "_printed", lambda html: html)
    as_drawings = cells(seen(page, tree.title))
    for code in SYMBOLS:
        unlike = {other: float(np.mean(np.abs(as_letters[code] - as_drawings[other]) > SHADE)) for other in SYMBOLS}
        assert unlike.pop(code) < EDGES, code
        assert min(unlike.values()) > EDGES, code


def cells(page: NDArray[np.float64]) -> dict[str, NDArray[np.float64]]:
    corners = {
        code: [round(SCALE * (10 + SIZE * at)) for at in divmod(place, ABREAST)] for place, code in enumerate(SYMBOLS)
    }
    return {code: page[y : y + SCALE * SIZE, x : x + SCALE * SIZE] for code, (y, x) in corners.items()}


def test_every_sign_has_a_letter_of_its_own() -> None:
    assert len({TRIANGLE, *map(letter, SYMBOLS)}) == len(SYMBOLS) + 1


def test_signs_side_by_side_are_one_run_and_a_drawing_without_a_letter_stays() -> None:
    known, strange = drawing("W025"), drawing("W025").replace("Z", "")
    assert pdf._printed(f"<p>{MARK}{known}{known}</p>") == (
        f'<p><span class="triangle">{TRIANGLE}</span><i class="as-letters">{letter("W025") * 2}</i></p>'
    )
    assert pdf._printed(f"<p>{strange}</p>") == f"<p>{strange}</p>"


def test_large_print_keeps_its_drawings(tree: Procedure) -> None:
    page = to_html(tree, large=True)
    assert "pictogram" in page
    assert pdf._printed(page).count("<svg") == page.count("<svg")


def test_a_sheet_prints_its_signs_as_letters(tree: Procedure) -> None:
    page = to_html(tree)
    assert page.count('<svg class="pictogram"') > 200
    assert '<svg class="pictogram"' not in pdf._printed(page)
    file = PdfReader(BytesIO(pdf.to_pdf(page, tree.title)))
    fonts = [font.get_object() for sheet in file.pages for font in sheet["/Resources"]["/Font"].values()]
    assert "signs" in {str(font["/BaseFont"]).rpartition("+")[2] for font in fonts}
