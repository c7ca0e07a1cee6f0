"""What a shop laid over the rules stands on each paper that somebody may hold alone."""

import shutil
from pathlib import Path

import pytest
from pypdf import PdfReader

from shops import EXAMPLES, tailtrue

FERNHILL = EXAMPLES / "fernhill"
REASONS = (
    "a blank came out of the worn jaws of the old chuck",
    "the shop is cold from October to March",
    "the insurer asks for it",
    "the door of the spray booth beside the lathe opens toward it",
    "two bores were spoilt with the telescoping set",
)


@pytest.fixture(scope="module")
def papers(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The papers of the example with rules of the shop."""
    out = tmp_path_factory.mktemp("papers")
    done = tailtrue("make", FERNHILL / "job-with-shop-rules.toml", "--out", out, "--format", "html,md,pdf")
    assert done.returncode == 0, done.stderr
    return out


def read(papers: Path, name: str) -> str:
    return (papers / name).read_text(encoding="utf-8")


@pytest.mark.parametrize("name", ["sop.md", "sop.html"])
def test_the_standing_procedure_tells_every_rule_with_its_reason(papers: Path, name: str) -> None:
    text = read(papers, name)
    assert "Rules of this shop" in text
    assert [reason for reason in REASONS if reason[1:] not in text] == []
    assert "700 rev/min" in text.replace("\u00a0", " ").replace("</b>", "")
    assert "Nobody else is in the shop" in text


def row_of(text: str, words: str) -> str:
    return next(line for line in text.splitlines() if words in line and "Shop rule" in line)


@pytest.mark.parametrize("name", ["sop.md", "sop.html", "safety.md", "safety.html"])
def test_a_hazard_of_the_shop_is_marked_where_it_stands_and_says_what_to_do(papers: Path, name: str) -> None:
    assert "chain across the booth door" in row_of(read(papers, name), "Door of the spray booth opens into your back")
    assert row_of(read(papers, name), "Long stringy chips")


@pytest.mark.parametrize("name", ["card.md", "card.html"])
def test_the_card_names_the_rules_it_was_made_under(papers: Path, name: str) -> None:
    sheet = read(papers, "procedure.md")
    version = sheet[sheet.index(" + shop ") - 8 :][:24]
    assert f"Rules {version}." in read(papers, name)


def test_the_card_is_one_page_and_the_review_seven_at_most(papers: Path) -> None:
    assert len(PdfReader(papers / "card.pdf").pages) == 1
    assert len(PdfReader(papers / "safety.pdf").pages) <= 8


def test_without_rules_of_a_shop_no_paper_speaks_of_them(tmp_path: Path) -> None:
    shutil.copytree(FERNHILL, tmp_path / "shop")
    done = tailtrue("make", tmp_path / "shop" / "job.toml", "--out", tmp_path / "out", "--format", "md")
    assert done.returncode == 0, done.stderr
    for name in ("card", "safety", "sop"):
        text = (tmp_path / "out" / f"{name}.md").read_text(encoding="utf-8")
        assert "Shop rule" not in text
        assert "+ shop" not in text
