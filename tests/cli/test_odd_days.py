"""A day that nobody can mean is told; the papers themselves do not know what day it is."""

import re
import shutil
from datetime import date, timedelta
from pathlib import Path

import pytest

from shops import EXAMPLES, tailtrue


def dated(tmp_path: Path, day: str) -> Path:
    shutil.copytree(EXAMPLES / "quarry-road", tmp_path / day)
    job = tmp_path / day / "job.toml"
    text, count = re.subn(r"(?m)^date = .*$", f"date = {day}", job.read_text(encoding="utf-8"))
    assert count == 1
    job.write_text(text, encoding="utf-8")
    return job


@pytest.mark.parametrize(
    ("day", "wrong"), [("2062-11-24", "more than a year ahead"), ("1926-11-24", "before the year 2000")]
)
def test_check_and_make_tell_a_day_that_nobody_can_mean(tmp_path: Path, day: str, wrong: str) -> None:
    job = dated(tmp_path, day)
    checked = tailtrue("check", job)
    assert checked.returncode == 0
    assert re.search(rf"attention: job\.toml:\d+: date = {day} is {wrong}", checked.stdout)
    made = tailtrue("make", job, "--out", tmp_path / "out", "--format", "md,json")
    assert made.returncode == 0
    assert f"date = {day} is {wrong}" in made.stdout
    papers = "".join(path.read_text(encoding="utf-8") for path in (tmp_path / "out").iterdir())
    assert wrong not in papers
    assert "look at the year" not in papers


def test_a_day_of_this_year_is_not_odd(tmp_path: Path) -> None:
    soon = (date.today() + timedelta(days=20)).isoformat()
    assert "look at the year" not in tailtrue("check", dated(tmp_path, soon)).stdout
