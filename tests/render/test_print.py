"""The page on paper, as a browser prints it."""

from pathlib import Path

import pytest
from pypdf import PageObject, PdfReader

from chromium import printed
from printed_pages import pages_of
from tailtrue.advise import make_procedure
from tailtrue.procedure import Procedure
from tailtrue.render import to_html

from .sample import MACHINE, NUMBER, SHOP, procedure

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"
MOST_SHEETS = 35  # in letters of the size that the style sheet says, not shrunk by the browser
TITLE_POINTS = 18.0
POINTS = {"A4": (595.3, 841.9), "Letter": (612.0, 792.0)}


@pytest.fixture(scope="module", params=["A4", "Letter"])
def paper(request: pytest.FixtureRequest) -> str:
    name: str = request.param
    return name


@pytest.fixture(scope="module")
def sheets(paper: str, tmp_path_factory: pytest.TempPathFactory) -> PdfReader:
    folder = tmp_path_factory.mktemp(paper)
    tree = procedure("metric", "A4") if paper == "A4" else procedure("inch", "Letter")
    (folder / "page.html").write_text(to_html(tree), encoding="utf-8")
    return printed(folder / "page.html", folder / "page.pdf")


def words(sheet: object) -> str:
    return " ".join(str(sheet.extract_text()).split())  # type: ignore[attr-defined]


def test_every_sheet_says_which_machine_which_sheet_and_which_page(sheets: PdfReader) -> None:
    count = len(sheets.pages)
    assert 4 <= count <= 12
    for number, sheet in enumerate(sheets.pages, start=1):
        text = words(sheet)
        assert f"{MACHINE}, {SHOP}" in text
        assert f"Sheet {NUMBER} rev 3" in text
        assert "Rules 0.4.0, checksum 7c1e-93af" in text
        assert f"{number} / {count}" in text


def test_the_paper_is_the_one_asked_for(sheets: PdfReader, paper: str) -> None:
    for sheet in sheets.pages:
        size = (float(sheet.mediabox.width), float(sheet.mediabox.height))
        assert size == pytest.approx(POINTS[paper], abs=1)


def test_a_step_and_its_cautions_share_a_sheet(sheets: PdfReader) -> None:
    texts = [words(sheet) for sheet in sheets.pages]
    for phase in procedure().phases:
        for step in phase.steps:
            ends = [f"{step.number}{step.title}", f"{step.number} {step.title}"]
            here = [text for text in texts if any(end in text for end in ends)]
            assert len(here) == 1, step.number
            for piece in [caution.hazard for caution in step.cautions] + ([step.hold.text[0]] if step.hold else []):
                assert isinstance(piece, str)
                assert piece in here[0]


def test_the_file_can_be_read_aloud(sheets: PdfReader) -> None:
    root = sheets.trailer["/Root"].get_object()
    assert root["/MarkInfo"]["/Marked"]  # type: ignore[index]
    assert str(root["/Lang"]).lower().startswith("en")  # type: ignore[index]
    assert sheets.metadata is not None
    assert str(sheets.metadata.title).startswith("Make and use a line-up bar")


def letter_sizes(sheet: PageObject) -> dict[str, float]:
    """The size in points of each piece of text on a sheet as it is laid on the paper."""
    sizes: dict[str, float] = {}

    def note(text: str, where: list[float], letters: list[float], font: object, size: float) -> None:
        del font
        scale = abs(where[3]) * abs(letters[3])
        sizes.setdefault(text.strip(), size * scale)

    sheet.extract_text(visitor_text=note)
    return sizes


def size_of(sheet: PageObject, words: str) -> float:
    return next(size for text, size in letter_sizes(sheet).items() if text.startswith(words))


def test_a_browser_shrinks_nothing(sheets: PdfReader) -> None:
    assert size_of(sheets.pages[0], procedure().title.title[:20]) == pytest.approx(TITLE_POINTS, abs=0.2)


@pytest.fixture(scope="module", params=["fernhill", "quarry-road"])
def example(request: pytest.FixtureRequest) -> Procedure:
    return make_procedure(EXAMPLES / request.param / "job.toml")


@pytest.fixture(scope="module")
def example_sheets(example: Procedure, tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("example")
    (folder / "page.html").write_text(to_html(example), encoding="utf-8")
    printed(folder / "page.html", folder / "page.pdf")
    return folder / "page.pdf"


def test_an_example_is_no_thicker_than_can_be_read(example: Procedure, example_sheets: Path) -> None:
    texts = pages_of(example_sheets.read_bytes())
    assert len(texts) <= MOST_SHEETS
    first = PdfReader(example_sheets).pages[0]
    assert size_of(first, example.title.title[:20]) == pytest.approx(TITLE_POINTS, abs=0.2)
    for number, text in enumerate(texts, start=1):
        assert f"{number}/{len(texts)}" in text


def test_a_step_of_an_example_shares_its_sheet_with_its_cautions(example: Procedure, example_sheets: Path) -> None:
    texts = pages_of(example_sheets.read_bytes())
    for step in (step for phase in example.phases for step in phase.steps):
        here = [text for text in texts if f"{step.number}{step.title}".replace(" ", "") in text]
        assert len(here) == 1, step.number
        for caution in step.cautions:
            assert caution.hazard.replace(" ", "") in here[0], (step.number, caution.id)
