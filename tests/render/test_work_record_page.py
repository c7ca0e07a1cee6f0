"""The records of work that is no test of the tailstock, as printed: on either paper, whose they are on every page."""

import re
from pathlib import Path

import pytest
from pypdf import PdfReader

from chromium import printed
from shops import shop
from tailtrue.advise import make_procedure
from tailtrue.procedure import Procedure
from tailtrue.render.record_page import to_record_html, to_record_markdown

from .reading import read_page
from .test_print import POINTS, words

# The most pages that each record takes.
ROUTES = {"make-bar": 3, "re-certify": 5, "chucked-bar-test": 5, "height-and-droop": 4, "rework": 4}


@pytest.fixture(scope="module", params=[(name, paper) for name in ROUTES for paper in ("A4", "Letter")], ids="-".join)
def job(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> tuple[str, str, Procedure]:
    name, paper = request.param
    change = (name, "accuracy = ", f'paper = "{paper}"\naccuracy = ')
    folder = shop(tmp_path_factory.mktemp("work"), "fernhill", change).parent
    return name, paper, make_procedure(folder / f"{name}.toml")


def test_it_prints_on_its_paper_and_every_page_says_whose_it_is(job: tuple[str, str, Procedure], tmp_path: Path) -> None:
    name, paper, tree = job
    (tmp_path / "record.html").write_text(to_record_html(tree), encoding="utf-8")
    pages: PdfReader = printed(tmp_path / "record.html", tmp_path / "record.pdf")
    assert len(pages.pages) <= ROUTES[name]
    record, title = tree.work_record, tree.title
    assert record is not None
    for number, page in enumerate(pages.pages, start=1):
        assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(POINTS[paper], abs=1)
        told = words(page)
        assert f"{title.machine}, {title.shop}" in told
        assert f"{record.of} {record.subject}" in told
        assert f"Sheet {title.number} rev {title.revision}" in told
        assert f"checksum {title.checksum}" in told
        assert re.search(rf"{number} / {len(pages.pages)}", told)


def test_every_place_is_on_the_page_as_often_as_its_columns(job: tuple[str, str, Procedure]) -> None:
    _, _, tree = job
    assert tree.work_record is not None
    blocks = list(read_page(to_record_html(tree)).all("div", "block"))
    assert len(blocks) == len(tree.work_record.blocks)
    for block, made in zip(tree.work_record.blocks, blocks, strict=True):
        rows = [row for row in made.all("tr") if list(row.all("td"))]
        assert len(rows) == len(block.entries)
        for entry, row in zip(block.entries, rows, strict=True):
            cells = list(row.all("td", "blank"))
            assert len(cells) == len(block.columns)
            assert entry.label in next(row.all("th", "name")).words
            assert ("accept" in next(row.all("th", "name")).words) == (entry.limits is not None)
            for cell in cells:
                assert len(list(cell.all("span", "box"))) == len(entry.choices)


def test_it_is_the_same_to_the_byte_and_markdown_has_every_block(job: tuple[str, str, Procedure]) -> None:
    _, _, tree = job
    assert to_record_html(tree) == to_record_html(tree)
    text = to_record_markdown(tree)
    assert tree.work_record is not None
    for block in tree.work_record.blocks:
        assert f"### {block.title}" in text


def test_it_says_the_large_print_in_letters_of_that_size(job: tuple[str, str, Procedure]) -> None:
    _, _, tree = job
    assert 'class="large"' in to_record_html(tree, large=True)
    assert 'class="large"' not in to_record_html(tree)
