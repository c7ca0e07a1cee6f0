"""Large print: no letter under 16 points, nothing over an edge, not a word lost, in a browser and in the PDF of the extra."""

import re
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path
from typing import NamedTuple

import pytest
from playwright.sync_api import Browser, Page
from pypdf import PageObject, PdfReader

from tailtrue.advise import make_procedure
from tailtrue.render import to_html
from tailtrue.render.card import to_card_html
from tailtrue.render.large import LEAST, enlarged
from tailtrue.render.pdf import to_pdf
from tailtrue.render.record_page import to_record_html
from tailtrue.render.safety_page import to_safety_html
from tailtrue.render.sop_page import to_sop_html

from .on_screen import faults, over_the_edge, points, weak
from .reading import read_page

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"
PAPER = {"width": 703, "height": 971}  # 186 x 257 mm, what both papers leave, in pixels of a browser
IN_THE_MARGINS = 60  # points from the edge of the paper: page number, machine, checksum


# The state of the machine, with nothing after it but the boxes of a step: the head of a step without the step.
_ENDS_A_HEAD = re.compile(r"(?:spindlestopped|spindleturning|latheisolated)(?:(?:collar|end)\w)*$")

# Places to write that share their line with the label of another, or have left their own row.
_STRAYED = """() => {
  const found = [];
  for (const line of document.querySelectorAll(".identity .line")) {
    const [at, own] = [line.getBoundingClientRect(), line.closest("td").previousElementSibling];
    for (const label of line.closest("table").querySelectorAll("th")) {
      if (label !== own && [...label.getClientRects()].some((one) => one.top < at.bottom - 2 && one.bottom > at.bottom + 2)) found.push(label.textContent);
    }
  }
  for (const line of document.querySelectorAll(".initials")) {
    if (line.getBoundingClientRect().bottom > line.parentElement.getBoundingClientRect().bottom + 1) found.push(line.ariaLabel);
  }
  return found;
}"""


def made(name: str, *, large: bool) -> dict[str, str]:
    job = EXAMPLES / name / "job.toml"
    tree = make_procedure(job)
    return {
        "procedure": to_html(tree, large=large),
        "card": to_card_html(tree, large=large),
        "sop": to_sop_html(tree, large=large),
        "record": to_record_html(tree, large=large),
        "safety": to_safety_html(tree, large=large),
    }


@pytest.fixture(scope="module", params=["fernhill", "quarry-road"])
def example(request: pytest.FixtureRequest) -> str:
    name: str = request.param
    return name


@pytest.fixture(scope="module")
def pages(example: str) -> dict[str, str]:
    return made(example, large=True)


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    with browser.new_context(viewport=PAPER) as context:  # type: ignore[arg-type]
        yield context.new_page()


def on_paper(page: Page, text: str, tmp_path: Path) -> None:
    (tmp_path / "page.html").write_text(text, encoding="utf-8")
    page.goto((tmp_path / "page.html").as_uri())
    page.emulate_media(media="print")


def test_a_browser_prints_no_letter_under_sixteen_points(pages: dict[str, str], page: Page, tmp_path: Path) -> None:
    for name, text in pages.items():
        on_paper(page, text, tmp_path)
        sizes = points(page)
        assert len(sizes) > 100
        assert [one for one in sizes if one[1] < LEAST - 0.01] == [], name
        assert over_the_edge(page) == [], name
        assert faults(page) == [], name
        assert weak(page) == [], name


def test_a_place_to_write_is_with_its_own_label_and_every_box_has_its_four_sides(
    pages: dict[str, str], page: Page, tmp_path: Path
) -> None:
    sides = "(boxes) => boxes.map((one) => ['Top', 'Right', 'Bottom', 'Left'].map((side) => parseFloat(getComputedStyle(one)[`border${side}Width`])))"
    for name in ("procedure", "sop", "safety"):
        on_paper(page, pages[name], tmp_path)
        assert page.locator(".line").count() > 8, name
        assert page.evaluate(_STRAYED) == [], name
        widths = page.locator(".stop").evaluate_all(sides)
        assert len(widths) >= 2, name
        assert min(map(min, widths)) > 1, name


def test_small_print_has_smaller_letters(page: Page, tmp_path: Path) -> None:
    on_paper(page, made("fernhill", large=False)["procedure"], tmp_path)
    assert min(size for _, size in points(page)) < 8.1


def test_the_measure_sees_what_sticks_out(page: Page, tmp_path: Path) -> None:
    on_paper(
        page,
        "<!doctype html><table style='table-layout:fixed;width:200px'><tr><td>Procedurewithoutanend<td>x</table>",
        tmp_path,
    )
    assert len(over_the_edge(page)) == 1


def test_not_a_word_is_lost_or_added(example: str, pages: dict[str, str]) -> None:
    for name, text in made(example, large=False).items():
        small, large = (next(read_page(one).all("body")).words.split() for one in (text, pages[name]))
        if name == "card":  # the head of an operation that runs on in the next column stands there again
            small, large = sorted(set(small)), sorted(set(large))
        if name == "procedure":  # the drawing of the bar has a side of its own, before the work
            small, large = sorted(small), sorted(large)
        assert small == large, name


def test_the_names_of_the_pages_and_the_papers_stay(example: str, pages: dict[str, str]) -> None:
    small = made(example, large=False)
    for name, text in pages.items():
        names, before = (re.findall(r"<title>.*?</title>|@page { size: \w+", one) for one in (text, small[name]))
        assert names == before
        assert len(names) >= 2


def squeezed(text: str) -> str:
    return re.sub(r"\s", "", text)


class Print(NamedTuple):
    """A page of the PDF: its size, and each piece of text with its place and the size of its letters."""

    width: float
    height: float
    strokes: list[tuple[str, float, float, float]]


@pytest.fixture(scope="module")
def prints(example: str, pages: dict[str, str]) -> dict[str, list[Print]]:
    """The PDF of each page, made and read once."""
    title = make_procedure(EXAMPLES / example / "job.toml").title
    files = {name: PdfReader(BytesIO(to_pdf(text, title))) for name, text in pages.items()}
    return {
        name: [Print(float(one.mediabox.width), float(one.mediabox.height), strokes(one)) for one in file.pages]
        for name, file in files.items()
    }


def strokes(page: PageObject) -> list[tuple[str, float, float, float]]:
    """Pieces of text with their place on the paper and the size of their letters."""
    found: list[tuple[str, float, float, float]] = []

    def note(text: str, where: list[float], letters: list[float], font: object, size: float) -> None:
        del font
        if text.strip():
            x = where[0] * letters[4] + where[2] * letters[5] + where[4]
            y = where[1] * letters[4] + where[3] * letters[5] + where[5]
            # Letters of a drawing that lies along the page are turned: the area that they are drawn into tells their size.
            larger = abs((where[0] * where[3] - where[1] * where[2]) * (letters[0] * letters[3] - letters[1] * letters[2]))
            found.append((text.strip(), x, y, size * larger**0.5))

    page.extract_text(visitor_text=note)
    return found


def test_the_pdf_of_the_extra_is_as_large_and_nothing_is_shrunk_or_cut(
    pages: dict[str, str], prints: dict[str, list[Print]]
) -> None:
    in_drawings = "".join(squeezed(drawing.words) for text in pages.values() for drawing in read_page(text).all("svg"))
    for name, sheets in prints.items():
        for number, sheet in enumerate(sheets, start=1):
            for text, x, y, size in sheet.strokes:
                assert 20 < x < sheet.width - 20, (name, number, text)
                if IN_THE_MARGINS < y < sheet.height - IN_THE_MARGINS:
                    least = (12 if name == "record" else 15.5) if squeezed(text) in in_drawings else LEAST - 0.05
                    assert size >= least, (name, number, text, size)
            assert any(
                text == f"{number} / {len(sheets)}" and size == pytest.approx(14, abs=0.01)
                for text, _, _, size in sheet.strokes
            )


def test_no_page_is_empty_no_heading_alone_and_no_place_to_write_without_its_words(
    pages: dict[str, str], prints: dict[str, list[Print]]
) -> None:
    for name in ("procedure", "safety", "sop", "record"):
        headings = {squeezed(one.words) for one in read_page(pages[name]).all("h2")}
        for number, sheet in enumerate(prints[name], start=1):
            top = sheet.height - IN_THE_MARGINS
            lines: dict[int, list[str]] = {}
            for text, _, y, _ in sheet.strokes:
                if IN_THE_MARGINS < y < top:
                    at = next((one for one in lines if abs(one - y) < 2), round(y))  # letters of two sizes share a line
                    lines.setdefault(at, []).append(text)
            assert lines, (name, number)
            assert name != "record" or min(lines) < 0.6 * top, (name, number, "hardly anything stands on it")
            last = squeezed("".join(lines[min(lines)]))
            assert not any(len(last) > 3 and heading.startswith(last) for heading in headings), (name, number, last)
            assert not _ENDS_A_HEAD.search(last), (name, number, last)
            assert not {"mm", "in", "rev/min"} & set(map("".join, lines.values())) or name != "procedure", (name, number)


def test_the_large_card_is_few_sides_with_the_same_numbers_in_order(
    example: str, pages: dict[str, str], prints: dict[str, list[Print]]
) -> None:
    assert len(prints["card"]) <= 3
    small, large = (
        [squeezed(cell.words) for cell in read_page(text).all("td", "number")]
        for text in (made(example, large=False)["card"], pages["card"])
    )
    assert small == large
    assert len(small) > 30


def test_a_size_that_crosses_the_page_stays() -> None:
    assert enlarged("a { font: 700 92pt Arial; }") == "a { font: 700 92pt Arial; }"
    assert enlarged("a { font: 700 9pt/1.2 Arial; margin: 3pt }") == "a { font: 700 16pt/1.2 Arial; margin: 3pt }"
