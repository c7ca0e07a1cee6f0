"""How large the letters of each kind of text are, read from the printed file letter by letter."""

import re
from collections.abc import Callable, Iterator
from functools import cache

import pypdfium2 as pdfium
import pypdfium2.raw as pdf
import pytest

from render.reading import Element
from tailtrue.render.pdf import to_pdf

from .made import job
from .test_paper import PRINTED

# Sight: fifteen minutes of arc at 400 mm are 7.1 points, twenty are 9.4 (NUREG-0700 rev. 3). What is done is printed in ten
# points and more, so is what warns at the step; tables of safety in nine and a half; what stands at the back in eight and a half.
DONE, BOXES, SAFETY_TABLES, BACK, LEAST = 10.0, 10.0, 9.5, 8.5, 8.0
EXACTLY = 0.02
HYPHEN = "\x02"
OWN = 20  # letters of a text that stands nowhere else

Letters = tuple[str, tuple[float, ...]]


def letters_of(file: bytes) -> tuple[Letters, ...]:
    """The letters of each page in their order, without spaces, and the size of each in points."""
    document = pdfium.PdfDocument(file)
    return tuple(_letters(page.get_textpage()) for page in document)


def _letters(written: pdfium.PdfTextPage) -> Letters:
    page = written.raw
    found: list[str] = []
    sizes: list[float] = []
    matrix = pdf.FS_MATRIX()
    for place in range(pdf.FPDFText_CountChars(page)):
        letter = chr(pdf.FPDFText_GetUnicode(page, place))
        # A hyphen at the end of a line is told as a sign of its own.
        letter = "-" if letter == HYPHEN else letter
        if letter.isspace() or letter < " ":
            continue
        pdf.FPDFText_GetMatrix(page, place, matrix)
        found.append(letter)
        sizes.append(pdf.FPDFText_GetFontSize(page, place) * abs(matrix.d))
    return "".join(found), tuple(sizes)


@cache
def printed_letters(name: str, kind: str) -> tuple[Letters, ...]:
    made = job(name)
    return letters_of(to_pdf(made.html(kind), made.tree.title))


def squeezed(text: str) -> str:
    return re.sub(r"\s", "", text)


def least_of(pages: tuple[Letters, ...], said: str) -> float:
    """The smallest letter of a text wherever it stands whole, or of the longer part where it runs on over a page."""
    words = [squeezed(word) for word in said.split()]
    whole = "".join(words)
    parts = ["".join(part) for cut in range(1, len(words)) for part in (words[:cut], words[cut:])]
    for part in [whole, *sorted((one for one in parts if 2 * len(one) >= len(whole)), key=len, reverse=True)]:
        sizes = [
            min(letters[at : at + len(part)])
            for text, letters in pages
            for at in (found.start() for found in re.finditer(re.escape(part), text))
        ]
        if sizes:
            return min(sizes)
    raise AssertionError(f"not printed: {said}")


def _boxes(page: Element) -> Iterator[str]:
    """What a box says without the small print of its signs and of where it stood before: the text up to that."""
    for message in page.all("div", "message"):
        (says,) = message.all("div", "says")
        yield _before_the_trace(next(says.all("p")))


def _before_the_trace(line: Element) -> str:
    said = ""
    for child in line.children:
        if isinstance(child, Element) and {"trace", "shapes"} & set(child.attributes.get("class", "").split()):
            break
        said += child if isinstance(child, str) else child.words
    return said


def _front(page: Element) -> Iterator[str]:
    for table in page.all("table", "cautions"):
        yield from (_before_the_trace(line) for line in table.all("p"))
    yield from (line.words for line in page.all("p", "also"))
    for box in page.all("section", "stop"):
        yield from (line.words for line in box.all("li"))


def _done(page: Element) -> Iterator[str]:
    yield from (step.words for step in page.all("div", "doing") if step.words.strip())


def _back(page: Element) -> Iterator[str]:
    for section in page.all("section", "back"):
        yield from (line.words for tag in ("p", "li") for line in section.all(tag) if line.words.strip())


def _tables_of_safety(page: Element) -> Iterator[str]:
    kinds = ("hazards", "matrix", "wear", "checks", "chemicals")
    for kind in kinds:
        for table in page.all("table", kind):
            yield from (cell.words for body in table.all("tbody") for cell in body.all("td") if cell.words.strip())
    for cells in page.all("div", "cells"):
        yield from (line.words for line in cells.all("div") if line.words.strip() and not any(True for _ in line.all("div")))


def _at_the_machine(page: Element) -> Iterator[str]:
    for table in page.all("table", "checks"):
        yield from (next(row.all("td")).words for body in table.all("tbody") for row in body.all("tr"))
    for box in page.all("section", "stop"):
        yield from (line.words for line in box.all("li"))


KINDS: list[tuple[str, Callable[[Element], Iterator[str]], float]] = [
    ("procedure", _boxes, BOXES),
    ("procedure", _front, SAFETY_TABLES),
    ("procedure", _done, DONE),
    ("procedure", _back, BACK),
    ("safety", _tables_of_safety, SAFETY_TABLES),
    ("safety", _at_the_machine, DONE),
]


@pytest.mark.parametrize("name", PRINTED)
@pytest.mark.parametrize(("kind", "texts", "least"), KINDS, ids=lambda one: getattr(one, "__name__", str(one)))
def test_letters_are_as_large_as_what_they_are_for(
    name: str, kind: str, texts: Callable[[Element], Iterator[str]], least: float
) -> None:
    pages = printed_letters(name, kind)
    read = [said for said in texts(job(name).page(kind)) if len(squeezed(said)) >= OWN]
    assert len(read) > 20
    small = {said: size for said in read if (size := least_of(pages, said)) < least - EXACTLY}
    assert small == {}


@pytest.mark.parametrize("name", PRINTED)
@pytest.mark.parametrize(("kind", "least"), [("procedure", LEAST), ("safety", BACK)])
def test_no_letter_is_smaller_than_sight_allows(name: str, kind: str, least: float) -> None:
    """NUREG-0700 rev. 3, fifteen minutes of arc at 400 mm: 7.1 points. Labels of drawings are letters too."""
    sizes = [size for _, letters in printed_letters(name, kind) for size in letters]
    assert len(sizes) > 10_000
    assert min(sizes) >= least - EXACTLY


def test_the_measure_sees_a_box_that_is_set_smaller() -> None:
    made = job(PRINTED[0])
    smaller = made.html("procedure").replace("</style>", ".message .says { font-size: 9.5pt; }</style>", 1)
    pages = letters_of(to_pdf(smaller, made.tree.title))
    said = next(_boxes(made.page("procedure")))
    assert least_of(pages, said) == pytest.approx(9.5, abs=EXACTLY)
    assert least_of(printed_letters(PRINTED[0], "procedure"), said) == pytest.approx(BOXES, abs=EXACTLY)
