"""Tags, as their user makes them: from the log, from what is typed, or empty."""

import json
from pathlib import Path
from typing import Any

from log.sample import check, record
from shops import EXAMPLES, shop, tailtrue
from tailtrue.log.book import Book
from tailtrue.log.record import Record
from tailtrue.log.storage import LOG_FILE

JOB = EXAMPLES / "fernhill" / "job.toml"
TYPED = ("--date", "2026-11-24", "--initials", "FB", "--result", "in-limits")


def tags(*words: object) -> list[dict[str, Any]]:
    done = tailtrue("tag", *words, "--json")
    assert done.returncode == 0, done.stdout
    found: list[dict[str, Any]] = json.loads(done.stdout)["tags"]
    return found


def logged(job: Path, *records: Record) -> None:
    with Book.create(job.parent / LOG_FILE) as book:
        for one in records:
            book.add(one)


def test_what_is_typed_is_printed_with_the_next_check(tmp_path: Path) -> None:
    (found,) = tags(JOB, "--out", tmp_path, *TYPED)
    assert found == {
        "lathe": "Lathe 2", "date": "2026-11-24", "result": "in-limits", "initials": "FB", "next_due": "2026-12-24",
        "mend_before_cutting": 0,
    }  # fmt: skip
    page = (tmp_path / "tags.html").read_text(encoding="utf-8")
    assert "IN LIMITS" in page
    (later,) = tags(JOB, "--out", tmp_path, *TYPED, "--next-due", "2027-01-31")
    assert later["next_due"] == "2027-01-31"


def test_the_last_check_comes_from_the_log(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill")
    logged(
        job,
        check(12.0, 0),
        check(1.0, 3),
        check(-2.0, 1),
        record(date_time="2027-01-01", quill_clamped=False, operator="XX"),
    )
    (found,) = tags(job, "--out", tmp_path / "out")
    assert (found["date"], found["result"], found["initials"]) == ("2026-01-08", "in-limits", "FB")
    assert found["next_due"] > found["date"]
    page = (tmp_path / "out" / "tags.html").read_text(encoding="utf-8").replace("\u00a0", " ")
    # 1 um toward the tool: the tailstock end came out smaller by 2 x 0.001 x 240 / 300
    assert "0.002 mm" in page
    assert "headstock larger" in page


def test_a_check_out_of_limits_is_not_dressed_up(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill")
    logged(job, check(1.0, 0), check(30.0, 5))
    (found,) = tags(job, "--out", tmp_path / "out")
    assert found["result"] == "out-of-limits"
    page = (tmp_path / "out" / "tags.html").read_text(encoding="utf-8")
    assert "OUT OF LIMITS" in page
    assert "IN LIMITS" not in page


def test_another_lathe_in_the_same_log_says_nothing_of_this_one(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill")
    logged(job, check(1.0, 0, lathe="Lathe 9"))
    (found,) = tags(job, "--out", tmp_path / "out")
    assert (found["result"], found["date"]) == (None, "")


def test_a_check_older_than_the_log_is_refused(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill")
    logged(job, check(1.0, 5))
    old = tailtrue(
        "tag", job, "--out", tmp_path / "out", "--date", "2026-01-09", "--initials", "FB", "--result", "in-limits"
    )
    assert old.returncode == 4
    assert "is before the last check in the log, of 2026-01-10" in old.stderr
    assert not (tmp_path / "out").exists()
    (same,) = tags(
        job, "--out", tmp_path / "out", "--date", "2026-01-10", "--initials", "ZZ", "--result", "too-close-to-say"
    )
    assert (same["initials"], same["result"]) == ("ZZ", "too-close-to-say")


def test_several_lathes_on_a_page_and_one_that_must_not_run(tmp_path: Path) -> None:
    bad = shop(tmp_path, "quarry-road", ("lathe", 'stop = "tested"', 'stop = "untested"'))
    done = tailtrue("tag", JOB, bad, "--out", tmp_path / "out")
    assert done.returncode == 0
    assert "Lathe 2: no check known, places to write in" in done.stdout
    assert "The bench lathe: must not run yet" in done.stdout
    page = (tmp_path / "out" / "tags.html").read_text(encoding="utf-8")
    assert page.count("DO NOT RUN") == 1


def test_half_a_check_and_a_check_for_many_are_refused(tmp_path: Path) -> None:
    half = tailtrue("tag", JOB, "--out", tmp_path / "out", "--date", "24.11.2026")
    assert half.returncode == 4
    for part in ("--initials: is not given", "--result: is not given", "--date: 24.11.2026: is no day"):
        assert part in half.stderr
    many = tailtrue("tag", JOB, JOB, "--out", tmp_path / "out", *TYPED)
    assert many.returncode == 2
    ahead = tailtrue("tag", JOB, "--out", tmp_path / "out", "--date", "2096-11-24", *TYPED[2:])
    assert ahead.returncode == 4
    assert "--date: 2096-11-24: is in the future" in ahead.stderr
    due = tailtrue("tag", JOB, "--out", tmp_path / "out", *TYPED, "--next-due", "2026-11-24")
    assert "is not after the check" in due.stderr
    odd = tailtrue("tag", JOB, "--out", tmp_path / "out", "--date", "2026-11-24", "--initials", "FB", "--result", "fine")
    assert "--result: fine: is not one of the results" in odd.stderr
    assert not (tmp_path / "out").exists()
