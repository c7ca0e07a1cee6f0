"""Tags to hang on lathes, as they print."""

from pathlib import Path

import pytest

from chromium import printed
from tailtrue.papers import Head, MachineTag, SetOverTag
from tailtrue.parts import Figure, Paper
from tailtrue.render.tag_page import set_over_html, tags_html

from .reading import read_page
from .test_print import POINTS, words


def head(paper: Paper = "A4", machine: str = "Lathe 2") -> Head:
    return Head(machine, "Fernhill Makerspace", "FM-1", "FM-L2-004", "1", paper, "metric", "1a2b3c4d")


def tag(paper: Paper = "A4", machine: str = "Lathe 2", **changes: object) -> MachineTag:
    figure = Figure(fact="tag.difference", value=0.004, unit="mm", rounding="difference")
    plain: dict[str, object] = {
        "result": ("IN LIMITS",), "in_limits": True, "difference": (figure, ", tailstock larger"), "date": "2026-11-24",
        "initials": "FB", "next_due": "2026-12-24", "means": (("For turning between centres.",),), "mend": (),
    }  # fmt: skip
    return MachineTag(head(paper, machine), **{**plain, **changes})  # type: ignore[arg-type]


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_six_tags_go_on_a_page_of_either_paper(paper: Paper, tmp_path: Path) -> None:
    (tmp_path / "tags.html").write_text(tags_html([tag(paper, f"Lathe {place}") for place in range(1, 9)]), encoding="utf-8")
    sheets = printed(tmp_path / "tags.html", tmp_path / "tags.pdf")
    assert [words(sheet).count("Tailstock last checked") for sheet in sheets.pages] == [6, 2]
    for sheet in sheets.pages:
        assert (float(sheet.mediabox.width), float(sheet.mediabox.height)) == pytest.approx(POINTS[paper], abs=1)
    assert all(f"Lathe {place}" in words(sheets.pages[0]) for place in range(1, 7))


def test_a_tag_tells_result_difference_day_initials_and_next_check() -> None:
    told = " ".join(read_page(tags_html([tag()])).words.replace("\u00a0", " ").split())
    for one in ("IN LIMITS", "0.004 mm", "tailstock larger", "2026-11-24", "FB", "2026-12-24", "Bar FM-1"):
        assert one in told


def test_what_is_not_known_is_a_place_to_write_in() -> None:
    page = read_page(tags_html([tag(result=(), difference=(), date="", initials="", next_due="")]))
    assert len(list(page.all("span", "write"))) == 4
    assert not list(page.all("p", "bad"))
    assert "IN LIMITS" not in page.words


def test_a_bad_result_is_white_on_black() -> None:
    page = read_page(tags_html([tag(result=("OUT OF LIMITS",), in_limits=False)]))
    assert [one.words for one in page.all("p", "bad")] == ["OUT OF LIMITS"]


def test_a_lathe_that_must_not_run_never_shows_a_good_result() -> None:
    page = read_page(tags_html([tag(mend=(("The stop has not been tried.",),))]))
    assert [one.words for one in page.all("p", "result")] == ["DO NOT RUN"]
    assert "The stop has not been tried." in page.words
    assert "IN LIMITS" not in page.words


def test_words_are_no_markup() -> None:
    page = tags_html([tag(machine="<b>Lathe</b> & co", initials="<i>")])
    assert "<b>Lathe" not in page
    assert "<i>" not in page


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_set_over_tag_fits_one_page(paper: Paper, tmp_path: Path) -> None:
    lines = (
        ("Isolate.",),
        ("Move the tailstock away from you by 4.88 mm.",),
        ("Clamp and tug.",),
        ("Skim and read the bar.",),
    )
    one = SetOverTag(head(paper), (("4.88 mm toward you",),), (("DO NOT DRILL.",), ("DO NOT TURN PARALLEL.",)), lines)
    (tmp_path / "tag.html").write_text(set_over_html(one), encoding="utf-8")
    sheets = printed(tmp_path / "tag.html", tmp_path / "tag.pdf")
    assert len(sheets.pages) == 1
    told = words(sheets.pages[0])
    for part in (
        "TAILSTOCK SET OVER",
        "4.88 mm toward you",
        "DO NOT DRILL.",
        "DO NOT TURN PARALLEL.",
        "away from you by 4.88 mm",
        "Lathe 2",
    ):
        assert part in told
