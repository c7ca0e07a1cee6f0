"""The measures of a printed paper see what they are there for: each finds a fault that is planted in a small file."""

import pytest

from made_pages import A4, line, written
from printed_pages import sheets_of

from .test_paper import MM, _ends, _lies_within, _strays

HEAD, FOOT = 797, 41


def _page(number: int, count: int, more: str = "") -> str:
    own = line("Lathe 2", 46, HEAD) + line("Rules 1", 46, FOOT) + line(f"{number} / {count}", 540, FOOT)
    return own + line("first line", 46, 770) + line("last line", 46, 62) + more


@pytest.mark.parametrize(
    "stray",
    [
        line("again", 46, 787),
        line("again", 46, HEAD),
        line("again", 300, FOOT),
        line("again", 46, 52),
        f"q 0 0 595 785 re W n {line('again', 46, 786)} Q",
    ],
    ids=["above the text", "beside the head", "beside the foot", "below the text", "cut off"],
)
@pytest.mark.parametrize("number", [1, 2, 12])
def test_a_line_in_the_margin_of_one_page_is_seen(stray: str, number: int) -> None:
    sound = [_page(one, 12) for one in range(1, 13)]
    assert _strays(written(*sound, size=A4)) == []
    found = _strays(written(*sound[: number - 1], _page(number, 12, stray), *sound[number:], size=A4))
    assert [place for place, _ in found] == [number]
    assert "again" in found[0][1]


def test_a_page_without_its_foot_is_seen() -> None:
    assert [place for place, _ in _strays(written(_page(1, 3), line("body", 46, 400), _page(3, 3), size=A4))] == [2]


@pytest.mark.parametrize("size", [A4, (612, 792)])
def test_the_line_that_ends_a_page_is_read_whole(size: tuple[int, int]) -> None:
    """A number and its heading are of two sizes, and stand on one line; the lines above reach down to it."""
    heading = line("7", 46, 70, size=18) + line("After the work", 80, 70, size=18) + line("above", 46, 82)
    assert _ends(written(heading + line("Rules 1", 46, 20), size=size)) == ["7Afterthework"]


@pytest.mark.parametrize(
    ("x", "y"),
    [(10, 400), (575, 400), (100, 5), (100, 838), (700, 400), (100, -20)],
    ids=["left", "right", "bottom", "top", "beside the page", "below the page"],
)
def test_words_outside_of_the_live_area_are_seen(x: int, y: int) -> None:
    (sound,) = sheets_of(written(_page(1, 1), size=A4))
    assert _lies_within(sound)
    (faulty,) = sheets_of(written(_page(1, 1, line("words", x, y)), size=A4))
    assert not _lies_within(faulty)


def test_what_is_wider_than_the_live_area_is_seen_where_each_edge_is_kept() -> None:
    left, right = round(7 * MM), round(215 * MM - 7 * MM) - 30
    (faulty,) = sheets_of(written(line("left", left, 400) + line("right", right, 400), size=(612, 792)))
    assert not _lies_within(faulty)
