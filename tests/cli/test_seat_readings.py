"""Readings of the bar that cannot have been read, or among which one slipped, are named before anything else."""

import shutil
from pathlib import Path

import pytest

from shops import EXAMPLES, tailtrue

GOOD = ["0.7495 in", "0.7496 in", "0.7495 in", "0.7495 in", "0.7496 in", "0.7495 in"]
WORDS = ("compound", "finish", "hangs on")


def judged(tmp_path: Path, *lines: str) -> str:
    """What is said of the inch example with readings of its bar; it is taken to be refused for its facts."""
    shutil.copytree(EXAMPLES / "quarry-road", tmp_path / "shop")
    job = tmp_path / "shop" / "job.toml"
    job.write_text(job.read_text(encoding="utf-8") + "\n".join(lines) + "\n", encoding="utf-8")
    done = tailtrue("check", job)
    assert done.returncode == 4, done.stdout + done.stderr
    return done.stderr


def line(key: str, readings: list[str]) -> str:
    return f"{key} = [{', '.join(f'{one!r}' for one in readings)}]"


def test_a_size_from_the_label_is_no_reading(tmp_path: Path) -> None:
    said = judged(tmp_path, line("measured_head", ["0.75 in"] * 6), line("measured_tail", ["0.75 in"] * 6))
    for key in ("measured_head", "measured_tail"):
        assert f'{key}: "0.75 in": is too coarse: it is written to 0.01 in' in said
    assert "shows 0.0001 in" in said


@pytest.mark.parametrize("nominal", ["3/4 in", "0.750 in"])
def test_fractions_and_too_few_digits_are_too_coarse_too(tmp_path: Path, nominal: str) -> None:
    said = judged(tmp_path, line("measured_head", GOOD), line("measured_tail", [*GOOD[:5], nominal]))
    assert "is too coarse" in said
    assert "measured_tail" in said


def test_readings_of_one_bar_are_in_one_system(tmp_path: Path) -> None:
    said = judged(tmp_path, line("measured_head", GOOD), line("measured_tail", ["19.040 mm"] * 6))
    assert "measured_tail" in said
    assert "is in millimetres, the readings before it are in inches" in said


def test_the_reading_that_stands_apart_is_named_and_no_other_line_is_blamed(tmp_path: Path) -> None:
    said = judged(tmp_path, line("measured_head", GOOD), line("measured_tail", [*GOOD[:5], "0.7396 in"]))
    assert 'measured_tail, sixth: "0.7396 in": stands 0.0099 in from the others' in said
    assert [word for word in WORDS if word in said] == []


def test_all_that_is_wrong_with_bare_readings_is_told_at_once(tmp_path: Path) -> None:
    said = judged(tmp_path, 'measured_head = "0,7495 in"')
    assert 'measured_head = ["0.7495 in", "...", "...", "...", "...", "..."]' in said
    assert "stands without measured_tail" in said
    assert said.count('"..."') == 10


def test_readings_with_commas_come_back_as_a_line_that_is_taken(tmp_path: Path) -> None:
    commas = [one.replace(".", ",") for one in GOOD]
    said = judged(tmp_path / "first", line("measured_head", commas), line("measured_tail", GOOD))
    advised = next(one for one in said.splitlines() if one.strip().startswith("write measured_head = ["))
    shutil.copytree(EXAMPLES / "quarry-road", tmp_path / "again")
    job = tmp_path / "again" / "job.toml"
    lines = (advised.strip().removeprefix("write "), line("measured_tail", GOOD))
    job.write_text(job.read_text(encoding="utf-8") + "\n".join(lines) + "\n", encoding="utf-8")
    assert tailtrue("check", job).returncode != 4


def test_digits_to_the_division_are_taken(tmp_path: Path) -> None:
    shutil.copytree(EXAMPLES / "quarry-road", tmp_path / "shop")
    job = tmp_path / "shop" / "job.toml"
    said = "\n".join((line("measured_head", GOOD), line("measured_tail", ["0.7500 in"] * 6)))
    job.write_text(job.read_text(encoding="utf-8") + said + "\n", encoding="utf-8")
    assert "too coarse" not in tailtrue("check", job).stderr
