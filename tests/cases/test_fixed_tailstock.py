"""A tailstock that cannot be set over: every paper tells how far its centre stands off the line, and none tells a move."""

import re
from pathlib import Path

import pytest

from shops import shop, tailtrue

TOLD = ("move the tailstock toward", "move the tailstock away", "Move the tailstock, ", "and the move", ">move<", "move ______",
        "move \\_", "the move that goes", "which way to move", "after a move", "move-drawing", "move of the tailstock")  # fmt: skip
PAPERS = ("procedure.md", "procedure.html", "card.md", "card.html", "record.md", "record.html", "safety.md", "safety.html")
NONE = ("lathe", r"^set_over = [^\n]*$", 'set_over = "none"')


def _made(folder: Path, name: str, job: str, *changes: tuple[str, str, str]) -> dict[str, str]:
    """Every paper of a job, without its style and with one blank between words."""
    file = shop(folder, name, *changes).with_name(f"{job}.toml")
    done = tailtrue("make", file, "--out", folder / "out", "--format", "md,html")
    assert done.returncode == 0, done.stderr
    made = {path.name: path.read_text(encoding="utf-8") for path in (folder / "out").iterdir()}
    return {
        name: " ".join(re.sub(r"<(style|script)>.*?</\1>", "", text, flags=re.DOTALL).split()) for name, text in made.items()
    }


@pytest.mark.parametrize(("name", "job"), [("fernhill", "job"), ("fernhill", "use-bar"), ("quarry-road", "use-bar")])
def test_no_paper_tells_a_move(tmp_path: Path, name: str, job: str) -> None:
    made = _made(tmp_path, name, job, NONE)
    assert set(PAPERS) <= set(made)
    for paper, text in made.items():
        for words in TOLD:
            assert text.count(words) == 0, f"{paper}: {words}"
    for paper in ("procedure.md", "procedure.html", "card.md", "card.html", "record.md"):
        assert "its centre stands off the line away from you" in made[paper], paper
    for paper in ("procedure.md", "card.md"):
        assert "Centre off the line," in made[paper], paper
    assert "Judge from the table" in made["procedure.md"]
    assert "Adjust nothing" in made["procedure.md"]


def test_a_tailstock_with_screws_has_its_move_on_sheet_and_card(tmp_path: Path) -> None:
    made = _made(tmp_path, "fernhill", "use-bar")
    for paper in ("procedure.md", "card.md"):
        assert "Move the tailstock, mm" in made[paper], paper
        assert "its centre stands off the line" not in made[paper], paper
    assert "move-drawing" in made["procedure.html"]
