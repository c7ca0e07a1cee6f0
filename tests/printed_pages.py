"""What is read back from a file of print."""

import re
from collections.abc import Iterator
from typing import NamedTuple

import pypdfium2 as pdfium
import pypdfium2.raw as raw

_FAR = 14400.0  # points: no page is larger


class Box(NamedTuple):
    """Where letters of one line and one face stand, in points from the left and lower edge of the page."""

    left: float
    bottom: float
    right: float
    top: float


class Sheet:
    """A page of print: its size in points, its links, and its letters, also what is cut off or lies beyond the page."""

    def __init__(self, page: pdfium.PdfPage) -> None:
        self.width, self.height = page.get_size()
        self.links = raw.FPDFPage_GetAnnotCount(page)
        self._letters = page.get_textpage()

    @property
    def words(self) -> str:
        """What stands on it, without the gaps between words."""
        return _squeezed(self._letters.get_text_range())

    @property
    def boxes(self) -> list[Box]:
        """Where it stands."""
        return [Box(*self._letters.get_rect(place)) for place in range(self._letters.count_rects())]

    def between(self, bottom: float, top: float) -> str:
        """What reaches into a band from edge to edge, without the gaps between words."""
        return _squeezed(self._letters.get_text_bounded(left=-_FAR, bottom=bottom, right=_FAR, top=top))

    def above(self, line: float) -> str:
        """What reaches over a line."""
        return self.between(line, _FAR)

    def below(self, line: float) -> str:
        """What reaches under a line."""
        return self.between(-_FAR, line)


def sheets_of(pdf: bytes) -> Iterator[Sheet]:
    """Its pages, one after the other."""
    return map(Sheet, pdfium.PdfDocument(pdf))


def pages_of(pdf: bytes) -> tuple[str, ...]:
    """What stands on each page, without the gaps between words."""
    return tuple(sheet.words for sheet in sheets_of(pdf))


def _squeezed(text: str) -> str:
    return re.sub(r"\s", "", text)
