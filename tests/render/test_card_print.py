"""The card as a browser prints it: one side of one sheet, numbers at their full height."""

import re
import tomllib
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path

import pypdfium2
import pytest
from pypdf import PdfReader

from chromium import printed
from documents.made import SHIPPED
from tailtrue.advise import advise, make_procedure, procedure_of
from tailtrue.procedure import Procedure
from tailtrue.render.card import MORE_SIDES, goes_with, to_card_html
from tailtrue.render.pdf import to_pdf

from .reading import read_page
from .test_pdf import EXAMPLES, labels, on_paper, words
from .test_print import POINTS

DIGIT = 0.688  # height of the lowest digits (1, 4, 7) as they are drawn, in the size of their letters


def small_figures(tree: Procedure, pdf: bytes) -> list[tuple[str, float]]:
    """The words with digits below seventeen points that do not tell which sheet, page or step this is.

    Digits are measured as they are drawn: they are nearly seven tenths of the size of their letters.
    """
    title, card = tree.title, tree.card
    assert card is not None
    told = {line.step for group in card.groups for line in group.lines} | {line.step for line in card.steps}
    told |= set(" ".join([*labels(tree, 1, 1), *goes_with(tree), f"{title.machine}: bench card"]).split())
    return [(word, size) for word, size in _words(pdf) if size < 16.9 and word not in told and word.rstrip(",") not in told]


def _words(pdf: bytes) -> Iterator[tuple[str, float]]:
    page = pypdfium2.PdfDocument(pdf)[0].get_textpage()
    word, least = "", 1000.0
    for at in range(page.count_chars()):
        letter = page.get_text_range(at, 1)
        if not letter.strip():
            if re.search(r"\d", word):
                yield word, least
            word, least = "", 1000.0
            continue
        word += letter
        if letter.isdigit():
            _, low, _, high = page.get_charbox(at)
            least = min(least, (high - low) / DIGIT)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("name", SHIPPED)
def test_every_figure_is_printed_seventeen_points_high_or_more(name: str, paper: str) -> None:
    tree = on_paper(make_procedure(EXAMPLES / f"{name}.toml"), paper)
    html = to_card_html(tree)
    pdf = to_pdf(html, tree.title)
    assert len(PdfReader(BytesIO(pdf)).pages) == 1
    assert MORE_SIDES not in html
    assert small_figures(tree, pdf) == []
    numbers = {cell.words.strip() for cell in read_page(to_card_html(tree)).all("td", "number")}
    # A unit that stands close to its number is read as one word with it; a label or a lever never is.
    large = {word for word, size in _words(pdf) if size >= 16.9}
    assert numbers <= large | {re.sub(r"(?<=\d)(?:mm|in|rev)[a-z/]*$", "", word) for word in large}


# As plates of real lathes have them; the digit of a name is no number that is set.
PLATES = (
    ("low A1", "low A2", "low B1"),
    ("direct, big", "direct, small", "back, big"),
    ("back gear 1", "back gear 2", "direct 1"),
)


@pytest.mark.parametrize("names", PLATES)
def test_names_of_settings_as_plates_have_them_leave_one_side_and_stand_apart_from_numbers(names: tuple[str, ...]) -> None:
    tree = make_procedure(EXAMPLES / "fernhill" / "job.toml")
    drawings = tuple(
        one.model_copy(
            update={
                "said": {k: names[at % 3] if k.startswith("setting.") else v for at, (k, v) in enumerate(one.said.items())}
            }
        )
        for one in tree.drawings
    )
    job = tree.model_copy(update={"drawings": drawings})
    html = to_card_html(job)
    pdf = to_pdf(html, job.title)
    assert len(PdfReader(BytesIO(pdf)).pages) == 1
    assert any(name in html for name in names)
    numbers = {cell.words.strip() for cell in read_page(html).all("td", "number")}
    large = {word for word, size in _words(pdf) if size >= 16.9}
    assert numbers <= large | {re.sub(r"(?<=\d)(?:mm|in|rev)[a-z/]*$", "", word) for word in large}


LONG = tuple(
    f"back gear {gear}, belt on the {pulley} pulley" for gear in ("in", "out") for pulley in ("small", "middle", "large")
)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("name", ["fernhill/job-plate", "weir-cottage/job"])
def test_long_names_of_settings_stand_once_and_leave_one_side(name: str, paper: str) -> None:
    tree = on_paper(procedure_of(advise(EXAMPLES / f"{name}.toml", instead={"lathe.speed_settings": settings(name)})), paper)
    html = to_card_html(tree)
    pdf = to_pdf(html, tree.title)
    assert len(PdfReader(BytesIO(pdf)).pages) == 1
    assert MORE_SIDES not in html
    assert small_figures(tree, pdf) == []
    (table,) = read_page(html).all("section", "settings")
    told = [one.words.strip() for one in table.all("th") if one.attributes["scope"] == "row"]
    assert len(told) == len(set(told)) >= 4
    assert set(told) <= set(settings(name))


def settings(name: str) -> list[str]:
    """A long name for each speed of the lathe."""
    lathe = tomllib.loads((EXAMPLES / name).with_name("lathe.toml").read_text(encoding="utf-8"))["lathe"]
    return [f"{LONG[at % len(LONG)]}{' again' * (at // len(LONG))}" for at in range(len(lathe["speeds"]))]


def test_a_figure_that_is_printed_smaller_is_found() -> None:
    tree = make_procedure(EXAMPLES / "fernhill" / "job.toml")
    html = to_card_html(tree).replace('class="figure"', 'class="lettering"').replace("td.number", "td.lettering")
    assert "280" in [word for word, size in small_figures(tree, to_pdf(html, tree.title)) if size < 12]


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("name", ["fernhill", "quarry-road"])
def test_a_browser_prints_the_card_on_one_page_without_shrinking_it(tmp_path: Path, name: str, paper: str) -> None:
    tree = on_paper(make_procedure(EXAMPLES / name / "job.toml"), paper)
    (tmp_path / "card.html").write_text(to_card_html(tree), encoding="utf-8")
    file = printed(tmp_path / "card.html", tmp_path / "card.pdf")
    assert len(file.pages) == 1
    page = file.pages[0]
    assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(POINTS[paper], abs=1)
    for label in labels(tree, 1, 1):
        assert label in words(page)
    assert small_figures(tree, (tmp_path / "card.pdf").read_bytes()) == []


@pytest.mark.parametrize(
    "number", ["WC-2026-1177-ALIGNMENT-OF-TAILSTOCK-SHED", "shed lathe bar of the winter of 2026, second"]
)
def test_a_long_sheet_number_stays_on_the_paper_with_its_revision(number: str) -> None:
    tree = make_procedure(EXAMPLES / "fernhill" / "use-bar.toml")
    title = tree.title.model_copy(update={"number": number})
    page = pypdfium2.PdfDocument(to_pdf(to_card_html(tree.model_copy(update={"title": title})), title))[0]
    text = page.get_textpage()
    boxes = [text.get_charbox(at) for at in range(text.count_chars()) if text.get_text_range(at, 1).strip()]
    assert all(left > 0 and right < page.get_width() - 15 for left, _, right, _ in boxes)
