"""A record file beside the job of an inch lathe is answered in inches, as the same file of a visit is."""

from pathlib import Path

import pytest

from shops import shop, tailtrue

RECORD = '[record]\nquill_extension = "2 1/2"\ndepth_per_side = "0.002"\n'


def told(folder: Path, example: str, *command: str) -> str:
    job = shop(folder, example)
    path = job.parent / "visit.toml"
    path.write_text(RECORD, encoding="utf-8")
    done = tailtrue(*command, job, "--from", path)
    assert done.returncode == 4, done.stdout
    lines = done.stderr.splitlines()
    faults = [place for place, line in enumerate(lines) if line.strip().startswith(("visit.toml:2", "visit.toml:3"))]
    return "\n".join(line for place in faults for line in lines[place : place + 2])


@pytest.mark.parametrize(("example", "unit"), [("quarry-road", "in"), ("fernhill", "mm")])
def test_a_size_without_a_unit_is_asked_for_in_that_of_the_dials(tmp_path: Path, example: str, unit: str) -> None:
    words = told(tmp_path, example, "log", "add")
    assert f"0.002 {unit}" in words


@pytest.mark.parametrize("example", ["quarry-road", "fernhill"])
def test_the_log_answers_as_the_visit_does(tmp_path: Path, example: str) -> None:
    added = told(tmp_path / "log", example, "log", "add")
    assert added
    assert added == told(tmp_path / "visit", example, "correct")
