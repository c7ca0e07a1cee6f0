"""Entries of small print in rows of three columns, each row short enough to find room on a page, its columns level.

The maker of PDF lets no column run over a page, so the rows are cut here, by reckoning how many lines an entry takes.
"""

import re
from collections.abc import Callable, Iterable, Sequence
from html import unescape
from typing import TypeVar

from markupsafe import Markup

from tailtrue.render.letters import width

_Thing = TypeVar("_Thing")
_COLUMNS = 3
# Lines in the longest column of a row: fewer are never level, more are read far down the page and up again.
_MOST = 26
# Width of a column in ems of the small print.
_WIDTH = 22.6
# Bold stands in headings and figures; a block begins a line of its own.
_TAG = re.compile(r"<(/?)(\w+)([^>]*)>")
_BLOCKS = frozenset({"li", "p", "h3", "ul", "section", "div"})
_STRONG = frozenset({"b", "h3"})
_FIGURE = 'class="figure"'
_SPACE = width(" ")
# A line breaks at a space, and after a hyphen or a stroke between words.
_WORDS = re.compile(r" |(?<=\w[-/])(?=[A-Za-z])")


def abreast(things: Iterable[_Thing], written: Callable[[_Thing], Markup]) -> list[list[Sequence[Markup]]]:
    """Things in rows of three columns, each as it is written, in order down the columns and then on to the next row."""
    entries = [written(thing) for thing in things]
    lines = [lines_of(entry) for entry in entries]
    starts = _starts_of_rows(lines) if lines else []
    return [
        _split(entries[start:end], lines[start:end]) for start, end in zip(starts, [*starts[1:], len(lines)], strict=True)
    ] if lines else []


def _starts_of_rows(lines: Sequence[int]) -> list[int]:
    """Where each row begins when all rows together are as short as they can be."""
    # By where a row begins: the lines from there to the end, and where the next row begins.
    best: list[tuple[int, int]] = [(0, len(lines))] * (len(lines) + 1)
    for start in reversed(range(len(lines))):
        ways = []
        for end in range(start + 1, len(lines) + 1):
            high = least_height(lines[start:end])
            if high > _MOST and ways:
                break
            ways.append((high + best[end][0], end))
        # Of ways as short as each other, that of the fewest rows.
        best[start] = min(ways, key=lambda way: (way[0], -way[1]))
    starts = [0]
    while best[starts[-1]][1] < len(lines):
        starts.append(best[starts[-1]][1])
    return starts


def least_height(lines: Sequence[int]) -> int:
    """The lines of the longest of three columns when the entries are cut where it is shortest.

    >>> least_height([6, 1, 2, 4])
    6
    """
    high = max(*lines, -(-sum(lines) // _COLUMNS)) if len(lines) > 1 else sum(lines)
    while len(_cuts(lines, high)) > _COLUMNS:
        high += 1
    return high


def _cuts(lines: Sequence[int], high: int) -> list[int]:
    """Where each column begins when each takes as much as its height lets it."""
    starts, filled = [0], 0
    for at, one in enumerate(lines):
        if filled + one > high and at:
            starts.append(at)
            filled = 0
        filled += one
    return starts


def _split(entries: Sequence[Markup], lines: Sequence[int]) -> list[Sequence[Markup]]:
    starts = _cuts(lines, least_height(lines))
    ends = [*starts[1:], len(entries)]
    columns: list[Sequence[Markup]] = [entries[start:end] for start, end in zip(starts, ends, strict=True)]
    return columns + [[]] * (_COLUMNS - len(columns))


def lines_of(entry: Markup) -> int:
    """How many lines an entry takes in a column.

    >>> lines_of(Markup("<li><b>speed</b> 450</li>"))
    1
    """
    lines = _Lines()
    strong: list[bool] = []
    text, at = str(entry), 0
    for tag in _TAG.finditer(text):
        lines.run_on(text[at : tag.start()], bold=any(strong))
        at = tag.end()
        if tag[2] in _BLOCKS:
            lines.end()
        if tag[1]:
            strong.pop()
        else:
            strong.append(tag[2] in _STRONG or _FIGURE in tag[3])
    lines.run_on(text[at:], bold=False)
    lines.end()
    return lines.count


class _Lines:
    """Lines that are filled word by word; a word may be of plain and of bold letters."""

    def __init__(self) -> None:
        self.count = 0
        self._filled = 0.0  # of the line, with its last space
        self._word = 0.0

    def run_on(self, text: str, *, bold: bool) -> None:
        """More words, the first of which may go on with the last that was told."""
        pieces = _WORDS.split(" ".join(unescape(f"|{text}|").split())[1:-1]) if text.strip() else [""] * (2 if text else 1)
        for at, piece in enumerate(pieces):
            if at:
                self._place()
            self._word += width(piece, bold=bold)

    def end(self) -> None:
        """The end of a block."""
        self._place()
        self.count += self._filled > 0
        self._filled = 0.0

    def _place(self) -> None:
        if self._word and self._filled and self._filled + self._word > _WIDTH:
            self.count, self._filled = self.count + 1, 0.0
        if self._word:
            self._filled += self._word + _SPACE
        self._word = 0.0
