"""Bookmarks of a PDF lead to the page on which their heading stands, and its language is told."""

from io import BytesIO

import pytest
from pypdf import PdfReader

from documents.made import MAKERS, job
from tailtrue.render.outline import Bookmark, bookmarks, outlined
from tailtrue.render.pdf import to_pdf


@pytest.mark.parametrize("kind", sorted(MAKERS))
def test_every_heading_of_a_paper_is_a_bookmark_to_its_page(kind: str) -> None:
    made = job("quarry-road/job")
    marks = bookmarks(made.html(kind))
    file = PdfReader(BytesIO(to_pdf(made.html(kind), made.tree.title)), strict=True)
    found = [one for one in file.outline if not isinstance(one, list)]
    assert marks
    assert [one.title for one in found] == [mark.words for mark in marks]
    for one in found:
        place = file.get_destination_page_number(one)
        assert place is not None
        assert "".join(str(one.title).split()) in "".join(file.pages[place].extract_text().split()), one.title


def test_language_and_title_are_told_and_the_list_is_open() -> None:
    made = job("fernhill/use-bar")
    file = PdfReader(BytesIO(to_pdf(made.html("card"), made.tree.title)), strict=True)
    root = file.trailer["/Root"].get_object()
    assert root["/Lang"] == "en"  # type: ignore[index]
    assert root["/PageMode"] == "/UseOutlines"  # type: ignore[index]
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]  # type: ignore[index]
    assert file.metadata is not None
    assert "Bench card" in str(file.metadata.title)


def test_what_the_maker_wrote_is_not_touched_and_the_same_page_gives_the_same_bytes() -> None:
    made = job("fernhill/use-bar")
    once, twice = (to_pdf(made.html("record"), made.tree.title) for _ in range(2))
    assert once == twice
    bare = to_pdf(made.html("record").replace("<h2 id=", "<h2 data-id="), made.tree.title)
    assert b"/Outlines" not in bare
    assert once.count(b"startxref") == bare.count(b"startxref") + 1


@pytest.mark.parametrize("file", [b"%PDF-1.4\nxref\n0 1\nstartxref\n9\n%%EOF\n", b"%PDF-1.7\nstartxref\n0\n%%EOF\n"])
def test_a_file_written_in_another_way_is_left_as_it_was(file: bytes) -> None:
    assert outlined(file, (Bookmark("one", "One"),)) == file
