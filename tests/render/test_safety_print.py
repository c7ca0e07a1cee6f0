"""The safety review on paper, read back: whole, labelled on every page, no row split."""

from collections import Counter
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from chromium import printed
from tailtrue.advise import make_procedure
from tailtrue.procedure import Procedure
from tailtrue.render import safety_words
from tailtrue.render.pdf import to_pdf
from tailtrue.render.safety_page import to_safety_html
from tailtrue.render.sign_letters import TRIANGLE
from tailtrue.render.words import say
from tailtrue.review import ReviewedHazard

from .reading import read_page
from .test_pdf import (
    EXAMPLES,
    POINTS,
    labels,
    letters_of_the_file,
    letters_of_the_page,
    on_paper,
    page_of,
    strokes,
    texts,
    words,
)

MOST_PAGES = 8
# Words of the trade and what explains the tables at eight and a half points; what is read at the machine at ten.
LEAST_POINTS, MACHINE_POINTS = 8.5, 10.0
# Letters of a line that no other table has too.
OWN = 20


@pytest.fixture(scope="module", params=["fernhill", "quarry-road"])
def example(request: pytest.FixtureRequest) -> Procedure:
    return make_procedure(EXAMPLES / request.param / "job.toml")


@pytest.fixture(scope="module", params=["A4", "Letter"])
def review(request: pytest.FixtureRequest, example: Procedure) -> tuple[Procedure, PdfReader]:
    tree = on_paper(example, request.param)
    return tree, PdfReader(BytesIO(to_pdf(to_safety_html(tree), tree.title)))


def test_every_page_says_machine_sheet_revision_checksum_and_page(review: tuple[Procedure, PdfReader]) -> None:
    tree, file = review
    assert 4 <= len(file.pages) <= MOST_PAGES
    for number, page in enumerate(file.pages, start=1):
        size = (float(page.mediabox.width), float(page.mediabox.height))
        assert size == pytest.approx(POINTS[tree.title.paper], abs=1)
        for label in labels(tree, number, len(file.pages)):
            assert label in words(page), (number, label)


def test_no_letter_is_lost(review: tuple[Procedure, PdfReader]) -> None:
    tree, file = review
    due = letters_of_the_page(read_page(to_safety_html(tree)))
    found = letters_of_the_file(tree, file)
    assert sum(due.values()) > 10_000
    assert due - found == Counter()
    # Heads of tables come again on the pages that a table goes on to.
    assert sum((found - due).values()) < 0.05 * sum(due.values())


def opening(hazard: ReviewedHazard) -> str:
    """How the row of a hazard begins."""
    alert = "" if hazard.signal == "notice" else TRIANGLE
    return f"{hazard.number}{''.join(hazard.parts[1:])}{alert}{hazard.signal.upper()}{hazard.hazard}"


def test_a_hazard_stands_whole_on_one_page(review: tuple[Procedure, PdfReader]) -> None:
    tree, file = review
    for hazard in tree.safety_review.hazards:
        pieces = [hazard.harm, *(control.text for control in hazard.controls if control.state == "counted")]
        pages = set(page_of(file, opening(hazard)))
        for piece in pieces:
            pages &= set(page_of(file, piece))
        assert pages, hazard.number


def test_an_activity_never_ends_a_page_and_a_heading_neither(review: tuple[Procedure, PdfReader]) -> None:
    tree, file = review
    for part in tree.safety_review.work:
        first = next((one for one in tree.safety_review.hazards if one.parts[0] == part.id), None)
        heads = set(page_of(file, f"{part.id} {part.title}Steps"))
        assert heads, part.title
        if first:
            # The head comes again on each page that an activity goes on to, and stands on no page without a hazard.
            here = [one for one in tree.safety_review.hazards if one.parts[0] == part.id]
            assert heads == {page for one in here for page in page_of(file, opening(one))}, part.title
    for page in file.pages:
        last = [text for text, _, y, _ in sorted(strokes(page), key=lambda one: -one[2]) if y > 60][-1:]
        assert last, "an empty page"
        assert last[0] not in safety_words.HEADINGS.values()


def test_no_list_of_the_check_ends_a_page_with_its_head(review: tuple[Procedure, PdfReader]) -> None:
    tree, file = review
    for checks in tree.safety_review.checks:
        first = say(checks.lines[0].item, tree.title.dials)
        assert set(page_of(file, f"{checks.title}{safety_words.CHECKED[0]}")) & set(page_of(file, first)), checks.title


def test_letters_are_of_eight_and_a_half_points_or_more_and_of_ten_at_the_machine(
    review: tuple[Procedure, PdfReader],
) -> None:
    tree, file = review
    sizes: dict[str, float] = {}
    for page in file.pages:
        for text, _, _, size in strokes(page):
            for word in text.split():
                sizes[word] = min(size, sizes.get(word, size))
    assert min(sizes.values()) >= LEAST_POINTS - 0.05
    at_the_machine = [line.passes for checks in tree.safety_review.checks for line in checks.lines]
    at_the_machine += [*tree.do_not_start, *tree.stop_at_once, *(line.text for line in tree.safety_review.isolation)]
    for line in at_the_machine:
        said = say(line, tree.title.dials)
        for page in file.pages:
            here = [size for text, _, _, size in strokes(page) if len(text) > OWN and text.strip() in said]
            assert all(size >= MACHINE_POINTS - 0.05 for size in here), said


def test_nothing_is_printed_over_the_edge_and_no_page_is_shrunk(review: tuple[Procedure, PdfReader]) -> None:
    _, file = review
    for number, page in enumerate(file.pages, start=1):
        width, height = float(page.mediabox.width), float(page.mediabox.height)
        for text, x, y, _ in strokes(page):
            assert 20 < x < width - 20, text
            assert 12 < y < height - 20, text
        sizes = [size for text, _, _, size in strokes(page) if text == f"{number} / {len(file.pages)}"]
        assert sizes == [pytest.approx(9.5, abs=0.01)]


def test_who_signs_stands_on_the_last_page(review: tuple[Procedure, PdfReader]) -> None:
    tree, file = review
    for one in tree.safety_review.signatures:
        assert "".join(one.role.capitalize().split()) in texts(file)[-1]


def test_a_browser_prints_it_on_its_paper_without_shrinking_it(tmp_path: Path, example: Procedure) -> None:
    (tmp_path / "safety.html").write_text(to_safety_html(example), encoding="utf-8")
    file = printed(tmp_path / "safety.html", tmp_path / "safety.pdf")
    assert 4 <= len(file.pages) <= MOST_PAGES
    for page in file.pages:
        size = (float(page.mediabox.width), float(page.mediabox.height))
        assert size == pytest.approx(POINTS[example.title.paper], abs=1)
    title = [size for text, _, _, size in strokes(file.pages[0]) if text.startswith(example.safety_review.title)]
    assert title == [pytest.approx(18, abs=0.05)]
