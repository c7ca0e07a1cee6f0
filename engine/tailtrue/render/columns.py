"""Entries of small print in rows of three columns, each row short enough to find room on a page, its columns level.

The maker of PDF lets no column run over a page, so the rows are cut here, by reckoning how many lines an entry takes.
"""

import re
from collections import defaultdict
from collections.abc import Callable, Iterable, Sequence
from html import unescape
from typing import TypeVar

from markupsafe import Markup

_Thing = TypeVar("_Thing")
_COLUMNS = 3
# Lines in the longest column of a row: fewer are never level, more are read far down the page and up again.
_MOST = 26
# Width of a column in ems of the small print, less what is lost where a line breaks before a long word.
_WIDTH = 21.7
_BOLD = 1.07
# What begins a line of its own, and what is set in bold.
_TAG = re.compile(r"<(/?)(\w+)[^>]*>")
_BLOCKS = frozenset({"li", "p", "h3", "ul", "section", "div"})
_STRONG = frozenset({"b", "h3"})
# Widths in thousandths of an em, as sans serif faces share them; what is not named is as wide as a digit.
_DIGIT = 556
_WIDTHS = defaultdict(
    lambda: _DIGIT,
    {
        **dict.fromkeys("'ijl", 210),
        **dict.fromkeys(" !,./:;I[]ft", 278),
        **dict.fromkeys("()-r\u00a0", 325),
        **dict.fromkeys("ckszvxyJ", 500),
        **dict.fromkeys("ABEKPSVXY&", 667),
        **dict.fromkeys("CDHNRUw", 722),
        **dict.fromkeys("GOQ", 778),
        **dict.fromkeys("mMW%@", 870),
    },
)


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
    """About how many lines an entry takes in a column.

    >>> lines_of(Markup("<li><b>speed</b> 450</li>"))
    1
    """
    found, width, strong, at = 0, 0.0, 0, 0
    text = str(entry)
    for tag in _TAG.finditer(text):
        width += _width(text[at : tag.start()], bold=strong > 0)
        at = tag.end()
        if tag[2] in _BLOCKS:
            found, width = found + _whole(width), 0.0
        if tag[2] in _STRONG:
            strong += -1 if tag[1] else 1
    return found + _whole(width + _width(text[at:], bold=False))


def _width(text: str, *, bold: bool) -> float:
    if not text:
        return 0.0
    words = " ".join(unescape(text).split()) + (" " if text[-1:].isspace() else "")
    return sum(map(_WIDTHS.__getitem__, words)) * (_BOLD if bold else 1.0) / 1000


def _whole(width: float) -> int:
    return -int(-width // _WIDTH) if width > 0.5 else 0
