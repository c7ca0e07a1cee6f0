"""Entries of small print in rows of three columns, each row short enough to find room on a page, its columns level.

The maker of PDF lets no column run over a page, so the rows are cut here, by reckoning how many lines an entry takes.
"""

import re
from collections.abc import Callable, Iterable, Sequence
from functools import lru_cache
from html import unescape
from itertools import accumulate, pairwise
from typing import TypeVar

from markupsafe import Markup

from tailtrue.render.letters import lines_filled, width

_Thing = TypeVar("_Thing")
_COLUMNS = 3
# Lines in the longest column of a row: fewer are never level, more are read far down the page and up again.
_MOST = 36
# Width of a column in ems of the small print.
_WIDTH = 20.1
# Bold stands in headings and figures; a block begins a line of its own.
_TAG = re.compile(r"<(/?)(\w+)([^>]*)>")
_BLOCKS = frozenset({"li", "p", "h3", "ul", "section", "div"})
_STRONG = frozenset({"b", "h3"})
_FIGURE = 'class="figure"'
# A line breaks after a hyphen or a stroke between words, as at a space.
_BREAK = re.compile(r"[-/](?<=\w.)(?=[A-Za-z])")


def abreast(things: Iterable[_Thing], written: Callable[[_Thing], Markup]) -> list[list[Sequence[Markup]]]:
    """Things in rows of three columns, each as it is written, in order down the columns and then on to the next row."""
    entries = [written(thing) for thing in things]
    return [[entries[start:end] for start, end in pairwise(row)] for row in rows([lines_of(entry) for entry in entries])]


def rows(lines: Sequence[int]) -> list[list[int]]:
    """Where the three columns of each row begin, and where the last one ends, when all rows together are shortest.

    >>> rows([6, 1, 2, 4])
    [[0, 1, 3, 4]]
    """
    # The entries stand along a ruler of lines. By a line: the entry that stands there, and where it begins.
    begins, count = [*accumulate(lines, initial=0)], len(lines)
    entry = [at for at, high in enumerate(lines) for _ in range(high)] + [count] * (1 + max([_MOST, *lines]))
    reached = [begins[at] for at in entry]
    # By where a row begins: the lines from there to the end, and where the row ends and how high it is.
    rest = [0] * (count + 1)
    best = [(count, 0)] * (count + 1)
    for start in reversed(range(count)):
        begin, last = begins[start], start
        # What is higher than a row may be stands in one alone.
        shortest, best[start] = lines[start] + rest[start + 1], (start + 1, lines[start])
        for high in range(lines[start], _MOST + 1):
            # Each column takes as much as its height lets it.
            end = entry[reached[reached[begin + high] + high] + high]
            if end > last:
                last = end
                # Of ways as short as each other, that of the fewest rows.
                if high + rest[end] <= shortest:
                    shortest, best[start] = high + rest[end], (end, high)
                if end == count:
                    break
        rest[start] = shortest
    return _cuts(best, lambda start, high: entry[begins[start] + high])


def _cuts(best: Sequence[tuple[int, int]], filled: Callable[[int, int], int]) -> list[list[int]]:
    """The columns of each row from the first on; a column that begins at an entry is `filled` up to another."""
    found, start = [], 0
    while start < len(best) - 1:
        end, high = best[start]
        row = [start]
        for _ in range(_COLUMNS):
            row.append(min(filled(row[-1], high), end))
        found.append(row)
        start = end
    return found


@lru_cache(maxsize=2048)  # the same entries stand on several papers of a lathe
def lines_of(entry: Markup) -> int:
    """How many lines an entry takes in a column.

    >>> lines_of(Markup("<li><b>speed</b> 450</li>"))
    1
    """
    lines, words = 0, [0.0]
    bold, outside = False, list[bool]()
    # In fours, a text and the parts of the tag behind it; one more block ends the last.
    pieces = iter(_TAG.split(f"{entry}<p>"))
    for text, closes, name, further in zip(pieces, pieces, pieces, pieces, strict=False):
        if text:
            # A word may be of plain and of bold letters: the first goes on with the last that was told.
            first, *more = _widths(text, bold)
            words[-1] += first
            words += more
        if name in _BLOCKS:
            lines += lines_filled(words, _WIDTH)
            words = [0.0]
        if closes:
            bold = outside.pop()
        else:
            outside.append(bold)
            bold = bold or name in _STRONG or _FIGURE in further
    return lines


@lru_cache(maxsize=4096)  # the same texts stand on every sheet
def _widths(text: str, bold: bool) -> tuple[float, ...]:
    """How wide the words of a text are, nothing where it begins or ends with a space."""
    if text.isspace():
        return (0.0, 0.0)
    words = _BREAK.sub(r"\g<0> ", " ".join(unescape(f"|{text}|").split())[1:-1]).split(" ")
    return tuple([width(word, bold=bold) for word in words])
