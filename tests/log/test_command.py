"""`tailtrue log` as its user meets it."""

import json
import subprocess
from datetime import datetime
from pathlib import Path

import pytest

from shops import shop, tailtrue
from tailtrue.log.book import Book
from tailtrue.log.dates import wrong_date
from tailtrue.log.exchange import written

from .sample import check

TYPED = Path(__file__).with_name("typed.toml")
COMMANDS = ("add", "list", "show", "strike", "export", "import", "chart")


@pytest.fixture
def job(tmp_path: Path) -> Path:
    return shop(tmp_path, "fernhill")


def typed(folder: Path, *changes: tuple[str, str]) -> Path:
    text = TYPED.read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    path = folder / "typed.toml"
    path.write_text(text, encoding="utf-8")
    return path


AS_FOUND = (
    ('state = "as left"', 'state = "as found"'),
    ("[[record.moves]]\n", ""),
    ('before = "0 mm"\nunclamped = "0.016 mm"\nclamped = "0.015 mm"\n', ""),
    ('before = "-1/2 thou"\nunclamped = "0.016 mm"\nclamped = "0.015 mm"\n', ""),
)


def said(done: subprocess.CompletedProcess[str]) -> str:
    assert done.returncode == 0, done.stderr
    return done.stdout


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_explains_itself(command: str) -> None:
    words = said(tailtrue("log", command, "--help"))
    assert "JOB" in words
    assert "job file" in words


def test_a_test_is_added_listed_shown_and_struck_out(job: Path) -> None:
    assert said(tailtrue("log", "add", job, "--from", TYPED)) == "Added as record 1.\n"
    assert (job.parent / "alignment-log.sqlite").is_file()
    listed = said(tailtrue("log", "list", job))
    assert "2026-01-05T09:40  Lathe 2, bar FM-1, as left: centre 0.015 mm away from the tool; outside (FB)" in listed
    shown = said(tailtrue("log", "show", job, 1))
    assert "reading of collar T: 70.366 mm, rejected: half a millimetre misread" in shown
    struck = tailtrue("log", "strike", job, 1, "--reason", "wrong bar", "--initials", "KL", "--date", "2026-02-01")
    assert said(struck) == "Struck out: record 1. It stays in the log.\n"
    assert said(tailtrue("log", "list", job)) == "Nothing in the log fits.\n"
    assert "STRUCK OUT by KL on 2026-02-01: wrong bar" in said(tailtrue("log", "list", job, "--struck"))
    assert "STRUCK OUT by KL on 2026-02-01: wrong bar" in said(tailtrue("log", "show", job, 1))
    again = tailtrue("log", "strike", job, 1, "--reason", "r", "--initials", "KL")
    assert (again.returncode, again.stdout) == (4, "")
    assert "was struck out by KL" in again.stderr


def test_without_a_date_it_is_now(job: Path, tmp_path: Path) -> None:
    dateless = typed(tmp_path, ('date = "2026-01-05 09:40"\n', ""))
    before = datetime.now().replace(microsecond=0)
    added = json.loads(said(tailtrue("log", "add", job, "--from", dateless, "--json")))
    after = datetime.now()
    assert added["number"] == 1
    shown = json.loads(said(tailtrue("log", "show", job, 1, "--json")))
    assert before <= datetime.fromisoformat(shown["record"]["date_time"]) <= after
    said(tailtrue("log", "add", job, "--from", dateless, "--date", "2026-03-01"))
    assert json.loads(said(tailtrue("log", "show", job, 2, "--json")))["record"]["date_time"] == "2026-03-01"


def test_a_date_to_come_is_refused(job: Path, tmp_path: Path) -> None:
    said_in_file = typed(tmp_path, ("2026-01-05 09:40", "2096-01-05 09:40"))
    done = tailtrue("log", "add", job, "--from", said_in_file)
    assert (done.returncode, done.stdout) == (4, "")
    assert "is in the future" in done.stderr
    dateless = typed(tmp_path, ('date = "2026-01-05 09:40"\n', ""))
    done = tailtrue("log", "add", job, "--from", dateless, "--date", "2096-01-05")
    assert (done.returncode, done.stdout) == (4, "")
    assert "--date: 2096-01-05: is in the future" in done.stderr
    assert not (job.parent / "alignment-log.sqlite").exists()


def test_a_day_is_left_for_clocks_that_disagree() -> None:
    assert wrong_date("2026-11-25T10:00", "2026-11-24T10:00:00") is None
    assert wrong_date("2026-11-25T10:01", "2026-11-24T10:00:00") is not None


def test_a_new_name_is_noticed(job: Path, tmp_path: Path) -> None:
    said(tailtrue("log", "add", job, "--from", TYPED))
    words = said(tailtrue("log", "add", job, "--from", typed(tmp_path, ('"FM-1"', '"FM-l"'), ("true", "false"))))
    assert "first record of bar FM-l; the log knows FM-1" in words
    assert "kept but not charted" in words
    assert "lathe" not in words


def test_a_faulty_file_adds_nothing_and_makes_no_log(job: Path, tmp_path: Path) -> None:
    done = tailtrue("log", "add", job, "--from", typed(tmp_path, ('"450 1/min"', '"450"')))
    assert (done.returncode, done.stdout) == (4, "")
    assert 'typed.toml:18: speed = "450": has no unit' in done.stderr
    assert not (job.parent / "alignment-log.sqlite").exists()
    as_json = json.loads(tailtrue("log", "add", job, "--from", tmp_path / "typed.toml", "--json").stdout)
    assert (as_json["ok"], as_json["errors"][0]["where"]) == (False, "typed.toml:18")


@pytest.mark.parametrize("words", [("list",), ("show", 1), ("chart",), ("export", "--out", "x.csv")])
def test_a_log_that_is_not_there_is_said(job: Path, words: tuple[object, ...]) -> None:
    done = tailtrue("log", words[0], job, *words[1:])
    assert done.returncode == 4
    assert "there is no alignment log here yet" in done.stderr
    assert not (job.parent / "alignment-log.sqlite").exists()


def test_a_job_that_is_not_there_makes_no_log(tmp_path: Path) -> None:
    for words in (("add", tmp_path / "jbo.toml", "--from", TYPED), ("import", tmp_path / "jbo.toml", tmp_path / "x.csv")):
        done = tailtrue("log", *words)
        assert done.returncode == 4
        assert "mend the name of the job file" in done.stderr
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("form", ["csv", "json"])
def test_a_log_moves_to_another_shop(job: Path, tmp_path: Path, form: str) -> None:
    said(tailtrue("log", "add", job, "--from", TYPED))
    out = tmp_path / f"copy.{form}"
    assert said(tailtrue("log", "export", job, "--out", out)).strip() == str(out)
    other = shop(tmp_path, "quarry-road")
    assert said(tailtrue("log", "import", other, out)) == "Added 1; known already 0; struck out 0; not read 0.\n"
    assert said(tailtrue("log", "import", other, out)) == "Added 0; known already 1; struck out 0; not read 0.\n"
    assert "0.0006 in away from the tool" in said(tailtrue("log", "list", other))
    second = tmp_path / f"second.{form}"
    said(tailtrue("log", "export", other, "--out", second))
    assert second.read_bytes() == out.read_bytes()


def test_rows_that_cannot_be_read_are_named_kept_and_dealt_with(job: Path, tmp_path: Path) -> None:
    said(tailtrue("log", "add", job, "--from", TYPED))
    out = tmp_path / "copy.csv"
    said(tailtrue("log", "export", job, "--out", out))
    out.write_text(out.read_text(encoding="utf-8").replace("as left", "as lift"), encoding="utf-8", newline="")
    done = tailtrue("log", "import", job, out)
    assert done.returncode == 4
    assert done.stdout == "Added 0; known already 0; struck out 0; not read 1.\n"
    assert "copy.csv:2, state: as lift: is not one of the choices\n  write as found or as left" in done.stderr
    listed = said(tailtrue("log", "list", job, "--unread"))
    assert "unread row 1" in listed
    assert "as lift" in listed
    kept = json.loads(said(tailtrue("log", "list", job, "--unread", "--json")))["unread"]
    assert kept[0]["faults"][0]["column"] == "state"
    said(tailtrue("log", "strike", job, 1, "--unread", "--reason", "typed in", "--initials", "KL"))
    assert said(tailtrue("log", "list", job, "--unread")) == "Nothing in the log fits.\n"
    assert "STRUCK OUT by KL" in said(tailtrue("log", "list", job, "--unread", "--struck"))
    assert "Lathe 2" in said(tailtrue("log", "list", job))


def test_a_chart_is_printed_and_drawn(job: Path, tmp_path: Path) -> None:
    for bar in ("FM-1", "FM 1"):
        said(tailtrue("log", "add", job, "--from", typed(tmp_path, *AS_FOUND, ('"FM-1"', f'"{bar}"'))))
    words = said(tailtrue("log", "chart", job, "--out", tmp_path / "charts"))
    assert "Lathe 2, bar FM-1: tailstock centre as found" in words
    assert "bring the tailstock into line" in words
    assert "Bar FM-1: collar 69.842 mm" in words
    names = sorted(path.name for path in (tmp_path / "charts").iterdir())
    assert names == ["chart-lathe-2-fm-1-2.svg", "chart-lathe-2-fm-1.svg"]
    found = json.loads(said(tailtrue("log", "chart", job, "--bar", "FM 1", "--json")))
    assert [one["bar"] for one in found["series"]] == ["FM 1"]
    assert found["series"][0]["check_again"]["days"] == 15
    assert [one["bar"] for one in found["wear"]] == ["FM 1"]
    assert said(tailtrue("log", "chart", job, "--lathe", "none")) == "Nothing in the log fits.\n"


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("list", "--state", "found"), "write as found or as left"),
        (("chart", "--least", "55"), "has no unit"),
        (("export", "--out", "log.txt"), "end the name in .csv or .json"),
        (("show", "7"), "there is no record of this number"),
    ],
)
def test_what_cannot_be_done_is_said_without_a_traceback(job: Path, words: tuple[str, ...], says: str) -> None:
    said(tailtrue("log", "add", job, "--from", TYPED))
    done = tailtrue("log", words[0], job, *words[1:])
    assert done.returncode in (2, 4)
    assert says in done.stderr
    assert "Traceback" not in done.stderr


def test_an_import_takes_no_date_of_the_future(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill")
    path = tmp_path / "late.csv"
    with Book.create(tmp_path / "other.sqlite") as book:
        book.add(check(1, 0))
        book.add(check(2, 0, date_time="2096-11-24T10:00"))
        path.write_bytes(written(book, path).encode())
    done = tailtrue("log", "import", job, path)
    assert done.returncode == 4
    assert "Added 1;" in done.stdout
    assert "late.csv:3, date_time: 2096-11-24T10:00: is in the future" in done.stderr
