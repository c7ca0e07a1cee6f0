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


def standing(tmp_path: Path, *changes: tuple[str, str, str]) -> str:
    done = tailtrue(
        "make", shop(tmp_path, "quarry-road", *changes), "--only", "sop", "--format", "md,html", "--out", tmp_path
    )
    assert done.returncode == 0, done.stderr
    # Both forms say the same: what is looked for must be in both, what must not be there in neither.
    return (tmp_path / "sop.md").read_text(encoding="utf-8") + (tmp_path / "sop.html").read_text(encoding="utf-8")


OTHERS = ("Technical review", "Safety review", "Anybody on the roster", "Trained by", "trainer", "on the roster",
          "procedure for a shared shop", "Nobody runs the lathe alone")  # fmt: skip


def test_the_standing_procedure_of_a_shop_of_one_has_one_line_to_sign_and_no_roster(tmp_path: Path) -> None:
    words = standing(tmp_path)
    assert words.count("Owner, who wrote it, walked it through and approves it") == 2
    assert [word for word in OTHERS if word in words] == []
    assert words.count("Emergency number") >= 2


@pytest.mark.parametrize(
    "change",
    [
        ("job", 'place = "home"', 'place = "shared"'),
        ("job", 'operator = "experienced"', 'operator = "learner"\nsupervised = true'),
    ],
)
def test_the_standing_procedure_for_others_keeps_its_roster_and_who_answers_for_it(
    tmp_path: Path, change: tuple[str, str, str]
) -> None:
    words = standing(tmp_path, change, ("job", "alone = true", "alone = false"))
    assert "Owner, who wrote it" not in words
    assert all(words.count(one) >= 2 for one in ("Technical review", "Safety review", "Trained by"))
