"""Tests that an indicator read: kept whole, told apart, never pooled; logs of the first version stay what they were."""

import csv
import io
import json
import shutil
import sqlite3
from collections.abc import Iterable
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest
from pydantic import ValidationError

from tailtrue.log.book import Book
from tailtrue.log.chart_drawing import chart_svg
from tailtrue.log.chart_text import chart_lines, wear_line
from tailtrue.log.exchange import bring_in, written
from tailtrue.log.faults import LogUnusable, faults_of
from tailtrue.log.fields import labelled
from tailtrue.log.recheck import drift_or_noise
from tailtrue.log.record import Record
from tailtrue.log.rules import log_rules
from tailtrue.log.series import Series, gather
from tailtrue.log.storage import VERSION
from tailtrue.log.wear import wear_of

from .sample import CONTENT, EVERYTHING, UNREAD, by_indicator, check, record

# Written by the first version of a log, which knew micrometers only: three records, a strike, an unread row, its exports.
OLDER = Path(__file__).with_name("version_1")
RULES = log_rules()


def version_of(path: Path) -> int:
    with closing(sqlite3.connect(path)) as connection:
        return int(connection.execute("PRAGMA user_version").fetchone()[0])


def older(folder: Path) -> Path:
    return Path(shutil.copy(OLDER / "log.sqlite", folder))


def series_of(records: Iterable[Record]) -> Series:
    (found,) = gather(enumerate(records, start=1))
    return found


def said_of(changes: dict[str, Any]) -> list[tuple[tuple[str | int, ...], str]]:
    with pytest.raises(ValidationError) as error:
        by_indicator(4, 0, **changes)
    return [(one.path, one.wrong) for one in faults_of(error.value)]


def test_a_log_of_the_first_version_reads_as_it_was_written(tmp_path: Path) -> None:
    path = older(tmp_path)
    before = path.read_bytes()
    with Book.open(path) as book:
        found = book.records(struck=True)
        assert [one.record for one in found] == [record(), Record.model_validate(EVERYTHING), check(4, 20)]
        assert {one.record.read_by for one in found} == {"micrometer"}
        assert found[2].strike is not None
        assert [one.row for one in book.unread()] == [UNREAD]
    assert path.read_bytes() == before


@pytest.mark.parametrize("form", ["csv", "json"])
def test_an_export_of_the_first_version_adds_nothing_to_its_own_log(tmp_path: Path, form: str) -> None:
    with Book.open(older(tmp_path)) as book:
        taken, unread = bring_in(book, OLDER / f"log.{form}")
    assert (taken.added, taken.known, unread) == ((), 3, ())
    with Book.create(tmp_path / "new.sqlite") as book:
        taken, unread = bring_in(book, OLDER / f"log.{form}")
        assert (len(taken.added), taken.struck, unread) == (3, 1, ())
        assert {one.record.read_by for one in book.records(struck=True)} == {"micrometer"}


def test_a_log_takes_the_step_of_its_version_with_the_first_record_that_needs_it(tmp_path: Path) -> None:
    path = older(tmp_path)
    with Book.open(path) as book:
        book.add(check(1, 40))
        assert version_of(path) == 1
        book.add(by_indicator(1, 50))
    assert version_of(path) == 2 < VERSION
    with Book.open(path) as book:
        assert [one.record.read_by for one in book.records()] == ["micrometer", "micrometer", "micrometer", "indicator"]
        book.add(check(2, 60))
    assert version_of(path) == 2


def test_an_import_takes_the_step_too(tmp_path: Path) -> None:
    with Book.create(tmp_path / "first.sqlite") as book:
        book.add(by_indicator(1, 50))
        (tmp_path / "log.csv").write_bytes(written(book, tmp_path / "log.csv").encode())
    path = older(tmp_path)
    with Book.open(path) as book:
        taken, _ = bring_in(book, tmp_path / "log.csv")
    assert len(taken.added) == 1
    assert version_of(path) == 2


def test_a_step_that_is_not_finished_leaves_log_and_version_alone(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = older(tmp_path)
    with Book.open(path) as book:
        monkeypatch.setattr(
            book._storage, "add", lambda *_: (_ for _ in ()).throw(sqlite3.OperationalError("disk I/O error"))
        )
        with pytest.raises(LogUnusable):
            book.add(by_indicator(1, 50))
    assert version_of(path) == 1
    assert path.read_bytes() == (OLDER / "log.sqlite").read_bytes()


def test_what_a_micrometer_read_has_the_same_name_in_both_versions() -> None:
    (first, *_) = json.loads((OLDER / "log.json").read_text(encoding="utf-8"))["records"]
    assert record().log_id == first["log_id"] == record(read_by="micrometer").log_id
    assert by_indicator(4, 0).log_id != check(4, 0).log_id


@pytest.mark.parametrize("form", ["csv", "json"])
def test_what_read_the_collars_stands_in_every_row_of_an_export(tmp_path: Path, form: str) -> None:
    with Book.create(tmp_path / "log.sqlite") as book:
        book.add(check(1, 0))
        book.add(by_indicator(1, 30))
        text = written(book, tmp_path / f"log.{form}")
    if form == "json":
        assert [one["record"]["read_by"] for one in json.loads(text)["records"]] == ["micrometer", "indicator"]
    else:
        rows = csv.DictReader(io.StringIO(text.lstrip("\ufeff"), newline=""))
        assert [row["read_by"] for row in rows] == ["micrometer", "indicator"]


@pytest.mark.parametrize("form", ["csv", "json"])
def test_a_word_that_is_neither_is_named_with_its_line(tmp_path: Path, form: str) -> None:
    with Book.create(tmp_path / "log.sqlite") as book:
        book.add(by_indicator(1, 30))
        path = tmp_path / f"log.{form}"
        text = written(book, path)
    for old, new in ((",indicator,", ",caliper,"), ('"read_by": "indicator"', '"read_by": "caliper"')):
        text = text.replace(old, new)
    path.write_text(text, encoding="utf-8")
    with Book.create(tmp_path / "new.sqlite") as book:
        taken, (row,) = bring_in(book, path)
    assert (taken.added, row.line) == ((), 2)
    (fault,) = [one for one in row.faults if one.column.endswith("read_by")]
    assert (fault.said, fault.do) == ("caliper", "write micrometer or indicator")


@pytest.mark.parametrize(
    ("changes", "path", "says"),
    [
        ({"instrument_zero_error_mm": 0.0}, ("instrument_zero_error_mm",), "belongs to a micrometer"),
        ({"collar_least_diameter_mm": 0.001}, ("readings",), "are diameters, which no indicator reads"),
        ({"read_by": "micrometer"}, ("instrument_zero_error_mm",), "not given"),
        ({"read_by": "micrometer"}, ("collar_diameter_after_mm",), "not given"),
    ],
)
def test_what_does_not_go_with_the_way_of_reading_is_named(
    changes: dict[str, Any], path: tuple[str, ...], says: str
) -> None:
    assert any(place == path and says in wrong for place, wrong in said_of(changes))


def test_a_verdict_by_indicator_must_agree_with_its_readings_too() -> None:
    assert any("is not what the kept readings give" in wrong for _, wrong in said_of({"difference_mm": 0.05}))


def test_a_record_says_what_read_it() -> None:
    assert ("what read the collars", "indicator") in list(labelled(by_indicator(4, 0), "metric"))
    assert ("what read the collars", "micrometer") in list(labelled(Record.model_validate(CONTENT), "metric"))


def test_checks_read_in_two_ways_make_no_common_limits() -> None:
    records = [*(check(n % 3, 10 * n) for n in range(5)), *(by_indicator(n % 3, 100 + 10 * n) for n in range(5))]
    found = series_of(records)
    assert [(one.began, len(one.checks), one.chart) for one in found.stretches] == [
        ("first check", 5, None), ("another way of reading the collars", 5, None),
    ]  # fmt: skip
    assert "no limits of scatter yet" in " ".join(drift_or_noise(found, RULES.chart))


def test_a_stretch_read_with_an_indicator_has_limits_of_its_own() -> None:
    by_micrometer = [check(n % 2, 10 * n) for n in range(8)]
    wide = [by_indicator(10 * (n % 2), 100 + 10 * n) for n in range(8)]
    first, second = series_of([*by_micrometer, *wide]).stretches
    assert first.chart is not None
    assert first.chart == series_of(by_micrometer).stretches[0].chart
    assert second.chart is not None
    assert second.chart.mean == pytest.approx(0.005)


def test_each_check_carries_its_own_doubt_onto_the_charts() -> None:
    series = series_of([check(4, 0), by_indicator(4, 30), by_indicator(5, 60, move_uncertainty_mm=0.006)])
    assert [(one.read_by, one.uncertainty_mm) for one in series.checks] == [
        ("micrometer", 0.0023), ("indicator", 0.005), ("indicator", 0.006),
    ]  # fmt: skip
    words = " ".join(" ".join(chart_lines(series, "metric", RULES, None)).split())
    drawing = chart_svg(series, "metric", RULES, None)
    for told in (words, drawing):
        assert "read with a micrometer; each check give or take 0.003 mm" in told
        assert "read with an indicator; each check give or take 0.005 mm to 0.006 mm" in told
    # A line for each check, and one in the key.
    assert drawing.count('class="doubt"') == len(series.checks) + 1


def test_wear_is_reckoned_from_what_was_measured_alone() -> None:
    records = [check(0, 0, 70.0), by_indicator(0, 30), check(0, 60, 69.8), by_indicator(0, 90), by_indicator(0, 120)]
    (wear,) = wear_of(records, 0.2, 60.0)
    assert (wear.tests, wear.since, wear.now_mm) == (5, 2, 69.8)
    assert wear.per_test_mm == pytest.approx(0.1)
    assert wear.left == 96
    assert "after 5 tests in the log, the last 2 of them read with an indicator and not measured" in wear_line(
        wear, "metric"
    )


def test_a_diameter_measured_apart_counts_for_wear() -> None:
    records = [check(0, 0, 70.0), by_indicator(0, 30, collar_diameter_after_mm=69.9)]
    (wear,) = wear_of(records, 0.2)
    assert (wear.now_mm, wear.since) == (69.9, 0)


def test_collars_that_were_never_measured_tell_nothing_of_wear() -> None:
    assert wear_of([by_indicator(0, 0)], 0.2, 60.0) == ()
