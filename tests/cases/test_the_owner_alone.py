"""At home the owner walks the sheet through and approves it; where anybody is supervised or staff are, it is as in a shop."""

from pathlib import Path

import pytest

from shops import shop, tailtrue

OWNER = "The owner, who knows this lathe and its manual."
RELEASED = "released for it by whoever runs the shop"


def page(tmp_path: Path, *changes: tuple[str, str, str]) -> str:
    done = tailtrue("make", shop(tmp_path, "quarry-road", *changes), "--out", tmp_path / "out")
    assert done.returncode == 0, done.stderr
    html = (tmp_path / "out" / "procedure.html").read_text(encoding="utf-8")
    return " ".join(html.split())


def test_a_sheet_for_home_speaks_to_the_owner(tmp_path: Path) -> None:
    words = page(tmp_path)
    assert OWNER in words
    assert RELEASED not in words
    assert "Walked through at the lathe by its owner" in words
    assert "Approved by owner" in words


@pytest.mark.parametrize(
    "change",
    [
        ("job", 'place = "home"', 'place = "shared"'),
        ("job", 'operator = "experienced"', 'operator = "learner"\nsupervised = true'),
    ],
)
def test_a_shared_shop_and_a_learner_keep_the_words_of_a_shop(tmp_path: Path, change: tuple[str, str, str]) -> None:
    words = page(tmp_path, change, ("job", "alone = true", "alone = false"))
    assert OWNER not in words
    assert RELEASED in words
    assert "Approved by owner" not in words
