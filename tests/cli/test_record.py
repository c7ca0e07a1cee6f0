"""The paper of a bar, as its user makes it."""

import json
import re
from collections.abc import Mapping
from pathlib import Path

import pytest
from typer.testing import CliRunner

from shops import EXAMPLES, shop, tailtrue
from tailtrue import advise as advising
from tailtrue.case import Case
from tailtrue.cli.main import app
from tailtrue.errors import ExitCode
from tailtrue.facts import FactSpec
from tailtrue.record_sheet import RecordSheet
from tailtrue.truing.lookup import record_sheet

JOB = EXAMPLES / "fernhill" / "job.toml"


CHECKSUM = re.compile(r", checksum [0-9a-f]{4}-[0-9a-f]{4}")


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


def test_it_comes_in_the_formats_asked_for_and_no_other(tmp_path: Path) -> None:
    done = tailtrue("record", JOB, "--out", tmp_path / "out", "--format", "pdf,md")
    assert done.returncode == 0, done.stderr
    assert sorted(path.name for path in (tmp_path / "out").iterdir()) == ["record.md", "record.pdf"]
    assert (tmp_path / "out" / "record.pdf").read_bytes().startswith(b"%PDF")
    refused = tailtrue("record", JOB, "--out", tmp_path / "none", "--format", "json")
    assert refused.returncode == 2
    assert "html, pdf, md" in refused.stderr
    assert not (tmp_path / "none").exists()


def test_it_is_the_record_that_make_makes(tmp_path: Path) -> None:
    alone = tailtrue("record", JOB, "--out", tmp_path / "alone")
    made = tailtrue("make", JOB, "--only", "record", "--out", tmp_path / "made")
    assert (alone.returncode, made.returncode) == (0, 0)
    for name in ("record.html", "record.md"):
        texts = [(tmp_path / way / name).read_text(encoding="utf-8") for way in ("alone", "made")]
        # One names its own fingerprint, the other that of the sheet it goes with.
        assert all(len(set(CHECKSUM.findall(text))) == 1 for text in texts)
        assert len({CHECKSUM.sub("", text) for text in texts}) == 1


def test_a_record_that_is_wrong_is_not_written(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def wrong(case: Case, fields: Mapping[str, FactSpec]) -> RecordSheet:
        sheet = record_sheet(case, fields)
        *rows, last = sheet.rows
        assert last.move is not None
        move = last.move.model_copy(update={"value": 2 * last.move.value})
        return sheet.model_copy(update={"rows": (*rows, last.model_copy(update={"move": move}))})

    monkeypatch.setattr(advising, "record_sheet", wrong)
    done = CliRunner().invoke(app, ["record", str(JOB), "--out", str(tmp_path / "out")])
    assert done.exit_code == int(ExitCode.FAILED_INSPECTION)
    assert "V110" in done.output
    assert not (tmp_path / "out").exists()
