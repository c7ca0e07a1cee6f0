"""The card as a browser prints it: one side of one sheet, numbers at their full height."""

from pathlib import Path

import pytest

from tailtrue.advise import make_procedure
from tailtrue.render.card import to_card_html

from .reading import read_page
from .test_pdf import EXAMPLES, labels, on_paper, strokes, words
from .test_print import POINTS, printed


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
    numbers = {cell.words.strip() for cell in read_page(to_card_html(tree)).all("td", "number")}
    heights = {text: size for text, _, _, size in strokes(page) if text in numbers}
    assert len(heights) > 10
    assert min(heights.values()) >= 16.9
