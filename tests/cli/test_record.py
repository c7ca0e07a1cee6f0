"""The paper of a bar, as its user makes it."""

import json
from pathlib import Path

from shops import EXAMPLES, shop, tailtrue

JOB = EXAMPLES / "fernhill" / "job.toml"


def test_it_writes_both_documents_and_says_where(tmp_path: Path) -> None:
    done = tailtrue("record", JOB, "--out", tmp_path / "out")
    assert done.returncode == 0, done.stderr
    assert sorted(path.name for path in (tmp_path / "out").iterdir()) == ["record.html", "record.md"]
    assert "record.html" in done.stdout
    again = tailtrue("record", JOB, "--out", tmp_path / "again", "--json")
    assert [Path(path).name for path in json.loads(again.stdout)["documents"]] == ["record.html", "record.md"]
    for name in ("record.html", "record.md"):
        assert (tmp_path / "out" / name).read_bytes() == (tmp_path / "again" / name).read_bytes()


def test_a_lathe_that_must_not_run_still_gets_its_paper_and_a_word(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill", ("lathe", 'stop = "tested"', 'stop = "untested"'))
    done = tailtrue("record", job, "--out", tmp_path / "out")
    assert done.returncode == 0
    assert "The lathe must not run yet" in done.stdout
    assert "must not run" not in tailtrue("record", JOB, "--out", tmp_path / "good").stdout


def test_without_an_instrument_there_is_no_paper(tmp_path: Path) -> None:
    job = shop(
        tmp_path,
        "fernhill",
        ("crib", r"\[\[crib.outside_micrometers\]\].*?(?=\[\[crib.bore)", ""),
        ("crib", 'caliper_resolution = "0.01 mm"\n', ""),
    )
    done = tailtrue("record", job, "--out", tmp_path / "out")
    assert done.returncode == 4
    assert not (tmp_path / "out").exists()
    assert "Traceback" not in done.stderr


def test_a_folder_that_cannot_be_written_is_said() -> None:
    done = tailtrue("record", JOB, "--out", "/proc/none")
    assert done.returncode == 2
    assert "cannot be written" in done.stderr
