"""`tailtrue diagnose` as its user meets it."""

import json
import re
from pathlib import Path

import pytest

from diagnosis.files import centres, chucked, level
from shops import EXAMPLES, ROOT, shop, tailtrue
from tailtrue.diagnosis.knowing import known

JOB = EXAMPLES / "fernhill" / "job.toml"


@pytest.fixture
def tests(tmp_path: Path) -> Path:
    path = tmp_path / "tests.toml"
    path.write_text(centres(tail="69.680") + chucked() + level(), encoding="utf-8")
    return path


def test_a_page_for_the_terminal(tests: Path) -> None:
    done = tailtrue("diagnose", JOB, tests)
    assert done.returncode == 0, done.stderr
    lines = done.stdout.splitlines()
    assert lines[0] == "Lathe 2"
    assert lines[2].startswith("  A tailstock out of line explains these readings")
    titles = [line for line in lines if line and not line.startswith(" ")]
    assert titles == [
        "Lathe 2", "HOW THAT EXPLAINS THE READINGS", "WHAT THE READINGS SETTLE", "WHAT TO DO, IN THIS ORDER",
        "TAKE CARE", "WHAT THIS CANNOT SHOW",
    ]  # fmt: skip
    assert max(map(len, lines)) <= 78


def test_the_same_as_json(tests: Path) -> None:
    found = json.loads(tailtrue("diagnose", JOB, tests, "--json").stdout)
    assert (found["ok"], found["answer"], found["named"]) == (True, "named", ["tailstock"])
    assert found["estimates"]["tailstock"]["value"] < 0 < found["estimates"]["tailstock"]["doubt"]
    assert found["verdicts"]["tailstock"] == "bad"
    assert {line["part"] for line in found["lines"]} >= {"answer", "found", "do", "careful", "limits"}
    assert any(line["text"].startswith("Move the tailstock toward you by ") for line in found["lines"])


def test_the_tool_behind_turns_the_move_round(tests: Path, tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("lathe", 'tool_side = "front"', 'tool_side = "rear"'))
    done = tailtrue("diagnose", job, tests)
    assert "Move the tailstock away from you by" in " ".join(done.stdout.split())


def test_an_inch_lathe_speaks_in_inches(tests: Path) -> None:
    done = tailtrue("diagnose", EXAMPLES / "quarry-road" / "job.toml", tests)
    assert done.returncode == 0, done.stderr
    assert "Move the tailstock toward you by 0.00" in " ".join(done.stdout.split())


def test_faults_of_the_file_are_told_in_words_and_json(tests: Path) -> None:
    tests.write_text('[levle]\nstations = ["0 mm"]\n', encoding="utf-8")
    done = tailtrue("diagnose", JOB, tests)
    assert (done.returncode, done.stdout) == (4, "")
    assert done.stderr.startswith(
        "no diagnosis yet: the tests need mending\ntests.toml:1: [levle]: is no test that is known"
    )
    found = json.loads(tailtrue("diagnose", JOB, tests, "--json").stdout)
    assert found["ok"] is False
    assert found["errors"][0]["kind"] == "TestsWrong"


def test_a_file_that_is_not_there(tmp_path: Path) -> None:
    done = tailtrue("diagnose", JOB, tmp_path / "none.toml")
    assert done.returncode == 4
    assert "there is no such file" in done.stderr


def test_without_the_side_of_the_tool_nothing_is_said(tests: Path, tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("lathe", 'tool_side = "front"\n', ""))
    done = tailtrue("diagnose", job, tests)
    assert (done.returncode, done.stdout) == (4, "")
    assert "tool_side" in done.stderr


def test_nothing_is_written(tests: Path, tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill")
    before = sorted(tmp_path.rglob("*"))
    tailtrue("diagnose", job, tests)
    assert sorted(tmp_path.rglob("*")) == before


def test_what_must_be_mended_before_the_lathe_cuts_stands_last(tests: Path, tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("lathe", 'chuck_guard = "interlocked"', 'chuck_guard = "none"'))
    said = tailtrue("diagnose", job, tests).stdout
    assert "DO NOT RUN THE LATHE before this is mended" in said.splitlines()
    assert "The lathe has no chuck guard." in said
    found = json.loads(tailtrue("diagnose", job, tests, "--json").stdout)
    assert found["mend_before_cutting"][0].startswith("The lathe has no chuck guard.")


def test_the_example_of_the_page_names_what_it_shows(tmp_path: Path) -> None:
    page = (ROOT / "docs" / "diagnosis.md").read_text(encoding="utf-8")
    blocks = re.findall(r"```toml\n(.*?)```", page, re.DOTALL)
    path = tmp_path / "tests.toml"
    path.write_text(blocks[0], encoding="utf-8")
    found = json.loads(tailtrue("diagnose", JOB, path, "--json").stdout)
    assert found["named"] == ["tailstock"]
    said = tailtrue("diagnose", JOB, path).stdout.replace("\u00a0", " ")
    shown = re.findall(r"```text\n(.*?)```", page, re.DOTALL)
    assert len(shown) == 2
    for one in shown:
        assert one.strip() in said


def test_the_page_lists_every_test() -> None:
    page = (ROOT / "docs" / "diagnosis.md").read_text(encoding="utf-8")
    assert re.findall(r"^\| `([a-z_]+)` \|", page, re.MULTILINE) == list(known().tests)
