"""The reader of printed pages sees what is drawn, wherever it stands, and also what no eye sees."""

import pytest

from made_pages import line, written
from printed_pages import Sheet, sheets_of


def _read(marks: str) -> Sheet:
    return next(sheets_of(written(marks)))


def test_each_page_gives_its_size_and_its_words() -> None:
    one, two = sheets_of(written(line("first page", 50, 100), line("second", 50, 100)))
    assert (one.width, one.height) == (300, 200)
    assert (one.words, two.words) == ("firstpage", "second")


@pytest.mark.parametrize(
    "marks",
    [
        f"q 0 0 300 150 re W n {line('cut off', 50, 170)} Q",
        f"q 0 0 300 172 re W n {line('cut off', 50, 170)} Q",
        f"1 g {line('cut off', 50, 170)}",
        f"3 Tr {line('cut off', 50, 170)}",
        line("cut off", 50, 260),
        line("cut off", -200, 170),
    ],
    ids=["clipped away", "clipped through", "white", "not painted", "above the page", "beside the page"],
)
def test_what_no_eye_sees_is_read(marks: str) -> None:
    sheet = _read(line("body", 50, 100) + marks)
    assert "cutoff" in sheet.words
    assert sheet.above(150) == "cutoff"
    assert sheet.below(150) == "body"


def test_a_band_takes_what_reaches_into_it_and_nothing_else() -> None:
    sheet = _read(line("HEAD", 20, 180) + line("body", 20, 100) + line("FOOT", 20, 10))
    assert (sheet.above(170), sheet.above(186)) == ("HEAD", "HEAD")
    assert sheet.above(189) == ""
    assert sheet.between(90, 110) == "body"
    assert (sheet.below(15), sheet.below(9)) == ("FOOT", "")


def test_boxes_are_as_large_as_the_letters() -> None:
    """Widths of the face as its publisher gives them: an H is 722 thousandths of its size wide and 718 high."""
    first, second = _read(line("H", 50, 100) + line("H", -20, 30)).boxes
    assert first == pytest.approx((50.8, 100, 56.5, 107.2), abs=0.3)
    assert second.left < 0
