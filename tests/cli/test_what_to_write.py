"""A command that lacks something says what it is and gives a line to copy, which then lacks nothing."""

import shlex
from pathlib import Path

import pytest

from shops import shop, tailtrue

WRITE = "Write, for example: "


def line(*words: object) -> list[str]:
    done = tailtrue(*words)
    assert (done.returncode, done.stdout) == (2, "")
    words_to_type = shlex.split(done.stderr.split(WRITE, 1)[1])
    return words_to_type[words_to_type.index("tailtrue") + 1 :]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["make"], ["make", "job.toml", "--out", "papers"]),
        (["make", "my job.toml"], ["make", "my job.toml", "--out", "papers"]),
        (["make", "job.toml", "--only", "card"], ["make", "job.toml", "--only", "card", "--out", "papers"]),
        (["tag"], ["tag", "job.toml", "--out", "papers"]),
        (["log", "export", "job.toml"], ["log", "export", "job.toml", "--out", "log.csv"]),
        (["log", "add", "job.toml"], ["log", "add", "job.toml", "--from", "visit.toml"]),
        (["log", "strike", "job.toml", "3", "--initials", "RK"],
         ["log", "strike", "job.toml", "3", "--initials", "RK", "--reason", "another bar was on"]),
    ],
)  # fmt: skip
def test_the_line_keeps_what_was_typed_and_adds_what_is_missing(words: list[str], told: list[str]) -> None:
    assert line(*words) == told


def test_the_meaning_of_what_is_missing_is_said() -> None:
    assert "Missing option '--out'. It is: folder for the documents." in tailtrue("make", "job.toml").stderr


def test_the_line_works_as_it_stands(tmp_path: Path) -> None:
    job = shop(tmp_path, "quarry-road")
    words = line("make", job, "--only", "card", "--format", "md")
    words[words.index("papers")] = str(tmp_path / "papers")
    assert tailtrue(*words).returncode == 0
    assert (tmp_path / "papers" / "card.md").exists()


def test_a_word_that_is_no_option_is_told_as_ever() -> None:
    said = tailtrue("make", "job.toml", "--outt", "papers").stderr
    assert "No such option" in said
    assert WRITE not in said
