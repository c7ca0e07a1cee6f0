"""What is advised at an inch lathe is in inches, in figures that inch things have."""

from pathlib import Path

import pytest

from shops import shop, tailtrue

SET_UP = '[record]\nquill_extension = "1.5"\nroom = "66"\n'


@pytest.fixture
def job(tmp_path: Path) -> Path:
    return shop(tmp_path, "quarry-road")


def told(*words: object) -> str:
    done = tailtrue(*words)
    assert done.returncode in (2, 4, 5), done.stdout
    return " ".join(done.stderr.split())


def test_a_visit_file_without_units_is_advised_in_those_of_the_lathe(job: Path) -> None:
    visit = job.parent / "visit.toml"
    visit.write_text(SET_UP, encoding="utf-8")
    words = told("correct", job, "--from", visit, "--head", "1.841 in", "--tail", "1.842 in")
    assert "write 1.5 in" in words
    assert "degF" in words
    assert " mm" not in words
    assert "degC" not in words


@pytest.mark.parametrize(
    "words",
    [
        ("correct", "--head", "1 3/4", "--tail", "1 3/4"),
        ("taper", "--work-length", "12", "--hole-depth", "1/8 in", "--ratio", "1:50", "--small-end", "tailstock"),
    ],
)
def test_a_size_without_unit_is_offered_in_inches_alone(job: Path, words: tuple[str, ...]) -> None:
    said = told(words[0], job, *words[1:])
    assert " in" in said.split("write", 1)[1]
    assert " mm" not in said


def test_a_metric_lathe_is_offered_millimetres_alone(tmp_path: Path) -> None:
    said = told("correct", shop(tmp_path, "fernhill"), "--head", "69.6", "--tail", "69.6")
    assert "69.6 mm" in said
    assert " in " not in said.split("write", 1)[1]


def test_a_dial_is_offered_a_division_that_inch_dials_have(tmp_path: Path) -> None:
    unsaid = shop(tmp_path, "quarry-road", ("lathe", r'\ndial_division = "0.001 in"', "\ndial_division = 0.001"))
    words = told("make", unsaid, "--out", tmp_path / "out")
    assert "typical: 0.001 in" in words
    assert "0.0008 in" not in words


def test_unmarked_is_offered_only_to_who_has_looked(tmp_path: Path) -> None:
    unsaid = shop(tmp_path, "quarry-road", ("lathe", 'marked_speed = "unmarked"', 'marked_speed = "none"'))
    assert "or, only after you have looked at its face and rim, write unmarked" in told(
        "make", unsaid, "--out", tmp_path / "out"
    )


def test_what_is_read_on_a_bottle_is_offered_without_a_number(tmp_path: Path) -> None:
    unsaid = shop(tmp_path, "quarry-road", ("crib", 'compound_gap = "0.006 in"\n', ""))
    words = told("make", unsaid, "--out", tmp_path / "out")
    assert 'compound_gap = "..." with the figure of the data sheet or the bottle' in words
    assert "0.006 in" not in words
