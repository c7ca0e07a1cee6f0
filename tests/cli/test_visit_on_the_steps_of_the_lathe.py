"""Speed and feed of a visit file are what the lathe can be set to; the nearest step is taken only where the file says so."""

import json
import subprocess
from pathlib import Path
from typing import Any

import pytest

from shops import shop, tailtrue
from truing.rounds import SET_UP

READ = 'head = ["69.612 mm", "69.613 mm"]\ntail = ["69.655 mm", "69.654 mm"]\norder = "HTTH"\nstate = "as found"\n'
SPEED = 'speed = "450 1/min"'
FEED = 'feed = "0.1 mm/rev"'
LINE = (SET_UP + READ).splitlines().index(SPEED) + 1


@pytest.fixture
def job(tmp_path: Path) -> Path:
    return shop(tmp_path, "fernhill")


def keep(job: Path, *changes: tuple[str, str], command: tuple[str, ...] = ("correct",)) -> subprocess.CompletedProcess[str]:
    text = SET_UP + READ
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    path = job.parent / "visit.toml"
    path.write_text(text, encoding="utf-8")
    return tailtrue(*command, job, "--from", path, *(("--keep",) if command == ("correct",) else ()))


def record(job: Path) -> dict[str, Any]:
    (found,) = json.loads(tailtrue("log", "list", job, "--json").stdout)["records"]
    content: dict[str, Any] = found["record"]
    return content


@pytest.mark.parametrize("command", [("correct",), ("log", "add")])
def test_a_speed_that_the_lathe_does_not_have_is_told_with_its_line(job: Path, command: tuple[str, ...]) -> None:
    done = keep(job, (SPEED, 'speed = "500 1/min"'), command=command)
    assert (done.returncode, done.stdout) == (4, "")
    assert f'visit.toml:{LINE}: speed = "500 1/min": is no speed of this lathe, which has 65, 110, 180, 280' in done.stderr
    assert "if it was the nearest one, 450 1/min, write nearest_step = true" in done.stderr
    assert not (job.parent / "alignment-log.sqlite").exists()


def test_speed_and_feed_are_both_told_at_once(job: Path) -> None:
    done = keep(job, (SPEED, 'speed = "500 1/min"'), (FEED, 'feed = "0.12 mm/rev"'))
    assert f"visit.toml:{LINE}: speed" in done.stderr
    assert (
        f'visit.toml:{LINE + 1}: feed = "0.12 mm/rev": is no feed of this lathe, which has 0.05, 0.07, 0.1,' in done.stderr
    )


def test_the_nearest_step_is_kept_where_the_file_says_so_and_the_record_tells(job: Path) -> None:
    done = keep(job, (SPEED, 'speed = "500 1/min"\nnearest_step = true'))
    assert done.returncode == 0, done.stderr
    found = record(job)
    assert (found["speed_per_min"], found["feed_mm_per_rev"], found["nearest_step"]) == (450.0, 0.1, True)
    assert "stand here as the nearest step of the lathe: yes" in tailtrue("log", "show", job, 1).stdout


def test_a_no_is_no_confirmation(job: Path) -> None:
    assert keep(job, (SPEED, 'speed = "500 1/min"\nnearest_step = false')).returncode == 4


def test_beyond_all_steps_there_is_no_nearest_one(job: Path) -> None:
    done = keep(job, (SPEED, 'speed = "4500 1/min"\nnearest_step = true'))
    assert done.returncode == 4
    assert 'speed = "4500 1/min": is no speed of this lathe' in done.stderr
    assert "write the speed that was set, or mend speeds in the file of the lathe" in done.stderr


@pytest.mark.parametrize(("old", "new"), [(SPEED, 'speed = "450 rpm"'), (FEED, 'feed = "0.0039 in/rev"')])
def test_another_unit_is_the_same_step(job: Path, old: str, new: str) -> None:
    done = keep(job, (old, new))
    assert done.returncode == 0, done.stderr
    assert "nearest_step" not in record(job)


def test_the_feeds_of_an_inch_lathe_are_told_in_inches(tmp_path: Path) -> None:
    done = keep(shop(tmp_path, "quarry-road"), (FEED, 'feed = "0.1 mm/rev"'))
    assert done.returncode == 4
    assert "is no feed of this lathe, which has 0.0" in done.stderr
    assert "in/rev" in done.stderr


def test_a_variable_drive_has_every_speed_between_its_ends(tmp_path: Path) -> None:
    variable = (
        ("lathe", r"speeds = \[.*?\]", 'speed_from = "100 1/min"\nspeed_to = "1800 1/min"'),
        ("lathe", r"speed_settings = \[.*?\]\n", ""),
    )
    job = shop(tmp_path, "fernhill", *variable)
    assert keep(job, (SPEED, 'speed = "512 1/min"')).returncode == 0
    done = keep(job, (SPEED, 'speed = "2500 1/min"'))
    assert done.returncode == 4
    assert "is no speed of this lathe, which goes from 100 to 1800 1/min" in done.stderr


def test_a_record_of_another_lathe_is_not_held_against_this_one(job: Path) -> None:
    whole = (Path(__file__).parents[1] / "log" / "typed.toml").read_text(encoding="utf-8")
    path = job.parent / "record.toml"
    path.write_text(whole.replace('"Lathe 2"', '"Lathe 9"').replace('"450 1/min"', '"500 1/min"'), encoding="utf-8")
    assert tailtrue("log", "add", job, "--from", path).returncode == 0
    path.write_text(whole.replace('"450 1/min"', '"500 1/min"'), encoding="utf-8")
    done = tailtrue("log", "add", job, "--from", path)
    assert done.returncode == 4
    assert "is no speed of this lathe" in done.stderr
