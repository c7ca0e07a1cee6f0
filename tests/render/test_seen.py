"""What is in the PDF is also seen on it: each letter leaves ink, none lies white on white or under something."""

import re
from collections.abc import Iterator
from itertools import product
from pathlib import Path

import pypdfium2 as pdfium
import pytest

from tailtrue.advise import make_procedure
from tailtrue.render import to_html
from tailtrue.render.card import to_card_html
from tailtrue.render.pdf import to_pdf

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"
_PIXELS_A_POINT = 3
_CELL = 12.0  # points; about the height of a line
_SHARED = 0.1  # of the smaller letter: what no letter takes from another by its slant alone
_LEAST_CONTRAST = 90  # of 255; thin strokes of small letters are grey at this size


def plain(html: str) -> str:
    """A page without the pale word that lies behind all else on it."""
    return re.sub(r'<div class="standing .*?</div>', "", html)


def unseen(pdf: bytes) -> Iterator[tuple[int, str]]:
    """Page and letter of everything that was printed and leaves no ink."""
    for number, page in enumerate(pdfium.PdfDocument(pdf), start=1):
        bitmap = page.render(scale=_PIXELS_A_POINT, grayscale=True)
        seen, stride = bytes(bitmap.buffer), bitmap.stride
        text = page.get_textpage()
        letters = text.get_text_range()
        for at in range(text.count_chars()):
            letter = letters[at : at + 1]
            left, bottom, right, top = (edge * _PIXELS_A_POINT for edge in text.get_charbox(at))
            if letter.isspace() or right - left < 1 or top - bottom < 1:
                continue
            # One pixel more on each side: a full stop fills its own box.
            rows = range(max(0, int(bitmap.height - top) - 1), min(bitmap.height, int(bitmap.height - bottom) + 2))
            parts = [seen[row * stride + int(left) - 1 : row * stride + int(right) + 2] for row in rows]
            if max(map(max, parts)) - min(map(min, parts)) < _LEAST_CONTRAST:
                yield number, letter


def overlaid(pdf: bytes) -> Iterator[tuple[int, str]]:
    """Page and letters of different lines that stand on each other."""
    for number, page in enumerate(pdfium.PdfDocument(pdf), start=1):
        text = page.get_textpage()
        letters = text.get_text_range()
        near: dict[tuple[int, int], list[tuple[str, float, tuple[float, ...]]]] = {}
        for at in range(text.count_chars()):
            letter, box, foot = letters[at : at + 1], text.get_charbox(at), text.get_charbox(at, loose=True)[1]
            if letter.isspace() or _area(box) < 1:
                continue
            across, down = int(box[0] // _CELL), int(box[1] // _CELL)
            for cell in product((across - 1, across, across + 1), (down - 1, down, down + 1)):
                for other, its_foot, its in near.get(cell, ()):
                    shared = (max(box[0], its[0]), max(box[1], its[1]), min(box[2], its[2]), min(box[3], its[3]))
                    if abs(foot - its_foot) > 1 and _area(shared) > _SHARED * min(_area(box), _area(its)):
                        yield number, other + letter
            near.setdefault((across, down), []).append((letter, foot, box))


def _area(box: tuple[float, ...]) -> float:
    left, bottom, right, top = box
    return max(0.0, right - left) * max(0.0, top - bottom)


@pytest.mark.parametrize("job", ["fernhill/job-three", "quarry-road/job"])
def test_each_letter_of_a_procedure_leaves_ink(job: str) -> None:
    tree = make_procedure(EXAMPLES / f"{job}.toml")
    assert list(unseen(to_pdf(plain(to_html(tree)), tree.title))) == []


@pytest.mark.parametrize("job", ["fernhill/job", "quarry-road/job"])
def test_each_letter_of_a_card_leaves_ink(job: str) -> None:
    tree = make_procedure(EXAMPLES / f"{job}.toml")
    pdf = to_pdf(plain(to_card_html(tree)), tree.title)
    assert list(unseen(pdf)) == []
    assert list(overlaid(pdf)) == []


def test_white_on_white_is_found() -> None:
    tree = make_procedure(EXAMPLES / "quarry-road" / "job.toml")
    hidden = to_card_html(tree).replace("<body", '<body><p style="color:#fff;background:#fff">7Q</p></body><body', 1)
    assert {letter for _, letter in unseen(to_pdf(hidden, tree.title))} >= {"7", "Q"}


def test_lines_over_each_other_are_found() -> None:
    tree = make_procedure(EXAMPLES / "fernhill" / "job.toml")
    close = to_card_html(tree).replace("</head>", "<style>.stops ul { line-height: 0 }</style></head>")
    assert len(list(overlaid(to_pdf(close, tree.title)))) > 20
