"""Small print in rows of three columns: whole, in order, and as short as can be."""

from collections.abc import Iterator, Sequence
from itertools import combinations_with_replacement, pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from markupsafe import Markup

from tailtrue.render.columns import abreast, lines_of, rows

MOST = 36


def every_row(start: int, count: int) -> Iterator[list[int]]:
    """Every way to begin with a row of three columns."""
    for cuts in combinations_with_replacement(range(start, count + 1), 3):
        if cuts[-1] > start:
            yield [start, *cuts]


def height(row: Sequence[int], lines: Sequence[int]) -> int:
    return max(sum(lines[start:end]) for start, end in pairwise(row))


def shortest(lines: Sequence[int], start: int = 0) -> int:
    """The least lines that all rows can take, tried one by one."""
    if start == len(lines):
        return 0
    return min(
        high + shortest(lines, row[-1])
        for row in every_row(start, len(lines))
        if (high := height(row, lines)) <= MOST or row[-1] == start + 1
    )


@given(st.lists(st.integers(min_value=1, max_value=30), max_size=6))
def test_no_other_rows_are_shorter(lines: list[int]) -> None:
    assert sum(height(row, lines) for row in rows(lines)) == shortest(lines)


@given(st.lists(st.integers(min_value=0, max_value=40), max_size=60))
def test_every_entry_stands_once_and_in_order(lines: list[int]) -> None:
    placed = [at for row in rows(lines) for start, end in pairwise(row) for at in range(start, end)]
    assert placed == list(range(len(lines)))


@given(st.lists(st.integers(min_value=1, max_value=40), max_size=60))
def test_a_row_is_higher_than_a_page_bears_only_for_one_entry(lines: list[int]) -> None:
    for row in rows(lines):
        assert len(row) == 4
        assert height(row, lines) <= MOST or row[-1] == row[0] + 1


@pytest.mark.parametrize(
    ("entry", "lines"),
    [
        ("<li></li>", 0),
        ("<li><b>speed</b> 450</li>", 1),
        ("<section><h3>Which bar?</h3><p>This one.</p></section>", 2),
        ("<li>" + "word " * 12 + "</li>", 2),
        ('<li title="' + "word " * 40 + '">word</li>', 1),
        ("<li>" + "&amp; " * 20 + "</li>", 1),
    ],
)
def test_lines_are_those_of_the_words(entry: str, lines: int) -> None:
    assert lines_of(Markup(entry)) == lines


def test_bold_words_need_more_room_than_plain_ones() -> None:
    words = "the number that was found " * 20
    assert lines_of(Markup(f"<li><b>{words}</b></li>")) > lines_of(Markup(f"<li>{words}</li>"))


def test_a_long_word_breaks_behind_its_hyphen() -> None:
    parts = Markup("<li>{}</li>").format("-".join(["lathe"] * 20))
    assert lines_of(parts) > 1


def test_entries_are_written_once_each() -> None:
    told = abreast([1, 2, 3, 4], lambda one: Markup("<li>{}</li>").format(one))
    assert [entry for row in told for column in row for entry in column] == [f"<li>{one}</li>" for one in (1, 2, 3, 4)]
    assert all(len(row) == 3 for row in told)
