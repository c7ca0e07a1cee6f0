"""Files to and from other programs: exact round trip, bad rows named and kept, nothing added twice."""

import csv
import io
import json
import re
import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tailtrue.errors import UsageError
from tailtrue.log.book import Book
from tailtrue.log.exchange import bring_in, written
from tailtrue.log.record import Record
from tailtrue.log.unread import UnreadRow

from .sample import CONTENT, EVERYTHING, by_indicator, check, record

FORMS = ("csv", "json")
every_form = pytest.mark.parametrize("form", FORMS)


def book_of(path: Path, *records: Record) -> Book:
    book = Book.create(path)
    for one in records:
        book.add(one)
    return book


def exported(folder: Path, form: str, *records: Record, strike: str = "") -> Path:
    with book_of(folder / "first.sqlite", *records) as book:
        if strike:
            book.strike(1, strike, "FB", "2026-02-01")
        path = folder / f"export.{form}"
        path.write_bytes(written(book, path).encode())
    return path


def again(folder: Path, path: Path) -> bytes:
    """What an empty book writes after taking the file in."""
    with Book.create(folder / "second.sqlite") as book:
        taken, unread = bring_in(book, path)
        assert (taken.known, unread) == (0, ())
        return written(book, path).encode()


@every_form
def test_a_log_reads_back_to_the_same_bytes(tmp_path: Path, form: str) -> None:
    path = exported(
        tmp_path,
        form,
        record(),
        Record.model_validate(EVERYTHING),
        check(1, 3, quill_clamped=False),
        by_indicator(-3, 9),
        strike='=burr, "T"',
    )
    assert again(tmp_path, path) == path.read_bytes()
    with Book.open(tmp_path / "second.sqlite") as book:
        first, second, _, fourth = book.records(struck=True)
        assert fourth.record == by_indicator(-3, 9)
        assert second.record == Record.model_validate(EVERYTHING)
        assert first.strike is not None
        assert first.strike.reason == '=burr, "T"'


@every_form
def test_an_empty_log_reads_back_to_the_same_bytes(tmp_path: Path, form: str) -> None:
    path = exported(tmp_path, form)
    assert again(tmp_path, path) == path.read_bytes()


NO_STEERING = st.characters(exclude_categories=("Cc", "Cs"))
odd_line = st.one_of(
    st.sampled_from(
        ["=1+1", "+5", "-5", "@x", "'", "''", '"', '""', "a,b", "a;b", "yes", "1.0", "null", "日本", "=cmd|' /C'!A0"]
    ),
    st.text(NO_STEERING, max_size=40),
).filter(lambda text: text.strip() != "")
odd_remark = st.one_of(odd_line, st.text(st.one_of(NO_STEERING, st.sampled_from("\n\t")), max_size=60)).filter(
    lambda text: text.strip() != ""
)


@settings(max_examples=60, deadline=None)
@given(odd_line, odd_line, odd_remark, odd_line, st.floats(-19.9, 49.9), st.sampled_from(FORMS))
def test_odd_text_comes_back_as_it_was(lathe: str, tool: str, remark: str, reason: str, room: float, form: str) -> None:
    rejected = [{**CONTENT["readings"][0], "rejected": reason}, *CONTENT["readings"]]
    made = record(lathe=lathe, tool=tool, remarks=remark, readings=rejected, room_degc=room)
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        path = exported(folder, form, made, strike=reason)
        assert again(folder, path) == path.read_bytes()
        with Book.open(folder / "second.sqlite") as book:
            (entry,) = book.records(struck=True)
            assert entry.record == made
            assert entry.record.remarks == remark


def rows_of(path: Path) -> list[list[str]]:
    return list(csv.reader(io.StringIO(path.read_text(encoding="utf-8-sig"), newline="")))


@pytest.mark.parametrize("start", ["=", "+", "-", "@"])
def test_no_cell_of_text_runs_as_a_formula(tmp_path: Path, start: str) -> None:
    made = record(
        remarks=f"{start}1+1",
        operator=f"{start}A",
        readings=[{**CONTENT["readings"][0], "rejected": f"{start}x"}, *CONTENT["readings"]],
    )
    path = exported(tmp_path, "csv", made, strike=f"{start}2")
    head, row = rows_of(path)
    risky = [cell for cell in row if cell.startswith(("=", "+", "-", "@", "\t", "\r"))]
    assert all(re.fullmatch(r"-?[0-9.e-]+", cell) for cell in risky), risky
    assert row[head.index("remarks")] == f"'{start}1+1"


def test_a_spreadsheet_sees_the_text_for_what_it_is(tmp_path: Path) -> None:
    path = exported(tmp_path, "csv", record(operator="Ü"))
    assert path.read_bytes().startswith(b"\xef\xbb\xbf")
    head, row = rows_of(path)
    assert row[head.index("operator")] == "Ü"
    assert row[head.index("readings.1.said")] == "69.842 mm"
    assert row[head.index("readings.1.mm")] == "69.842"
    assert row[head.index("quill_clamped")] == "yes"


def test_json_is_plain_json(tmp_path: Path) -> None:
    path = exported(tmp_path, "json", record(), check(1, 3))
    found = json.loads(path.read_text(encoding="utf-8"))
    assert found["alignment_log"] == 2
    assert [one["number"] for one in found["records"]] == [1, 2]
    assert Record.model_validate(found["records"][0]["record"]) == record()


@every_form
def test_the_same_file_twice_adds_nothing_twice(tmp_path: Path, form: str) -> None:
    path = exported(tmp_path, form, record(), check(1, 3), strike="burr")
    path.write_text(path.read_text(encoding="utf-8").replace("2026-01-08", "2026-13-08"), encoding="utf-8", newline="")
    with Book.create(tmp_path / "second.sqlite") as book:
        first, _ = bring_in(book, path)
        second, _ = bring_in(book, path)
        assert (first.added, first.struck, first.unread) == ((1,), 1, (1,))
        assert second == ((), 1, 0, (), 1)
        assert len(book.records(struck=True)) == len(book.unread()) == 1


@every_form
def test_a_bad_row_is_named_and_kept_and_the_good_ones_go_in(tmp_path: Path, form: str) -> None:
    path = exported(tmp_path, form, check(0, 0), check(1, 3), check(2, 6))
    text = path.read_text(encoding="utf-8").replace("2026-01-08", "8.1.2026")
    path.write_text(text, encoding="utf-8", newline="")
    line = next(number for number, one in enumerate(text.split("\n"), start=1) if "8.1.2026" in one)
    with Book.create(tmp_path / "second.sqlite") as book:
        taken, (row,) = bring_in(book, path)
        assert taken.added == (1, 2)
        ((number, kept, _),) = book.unread()
    assert (number, kept) == (1, row)
    assert (kept.file, kept.line) == (f"export.{form}", line)
    assert "8.1.2026" in kept.text
    (fault,) = kept.faults
    assert (fault.column, fault.said) == ("date_time", "8.1.2026")
    assert "no date" in fault.wrong
    assert fault.do == "write 2026-01-08"


def csv_with(folder: Path, **cells: str) -> UnreadRow:
    """The only row of a table with other cells, as it was refused."""
    head, row = rows_of(exported(folder, "csv", Record.model_validate(EVERYTHING), strike="burr"))
    changed = dict(zip(head, row, strict=True)) | cells
    path = folder / "changed.csv"
    with path.open("w", encoding="utf-8", newline="") as opened:
        writer = csv.DictWriter(opened, list(changed))
        writer.writeheader()
        writer.writerow(changed)
    with Book.create(folder / "second.sqlite") as book:
        _, (refused,) = bring_in(book, path)
    return refused


@pytest.mark.parametrize(
    ("cells", "column", "says"),
    [
        ({"readings.2.mm": "69.9"}, "readings.2.mm", "does not agree with what was typed"),
        ({"readings.2.said": "69,866 mm"}, "readings.2.said", "the decimal mark must be a point"),
        ({"readings.2.collar": "X"}, "readings.2.collar", "is not one of the choices"),
        ({"moves.2.before.said": "5"}, "moves.2.before.said", "has no unit"),
        ({"judgement.move_mm": "-0.015"}, "judgement.move_mm", "not what the difference gives"),
        ({"judgement.limit_mm": ""}, "judgement.limit_mm", "not given"),
        ({"room_degc": "75.0"}, "room_degc", "is not plausible here: -20 degC to 50 degC"),
        ({"level.1.rise_mm": "20"}, "level.1.rise_mm", "is not plausible here"),
        ({"moves.1.before.said": "50 mm", "moves.1.before.mm": "50"}, "moves.1.before", "is not plausible here"),
        ({"chuck_test.date": "soon"}, "chuck_test.date", "no date"),
        ({"operator": "KL"}, "log_id", "something in it was changed"),
        ({"struck.initials": ""}, "struck.initials", "not given"),
        ({"struck.date_time": "1"}, "struck.date_time", "no date"),
        ({"quill": "5"}, "quill", "there is no 'quill'"),
        ({"readings.1.sead": "5"}, "readings.1.sead", "there is no 'sead'"),
        ({"bar.1": "5"}, "bar.1", "there is no 'bar.1'"),
    ],
)  # fmt: skip
def test_a_cell_that_does_not_fit_is_named_by_its_column(
    tmp_path: Path, cells: dict[str, str], column: str, says: str
) -> None:
    refused = csv_with(tmp_path, **cells)
    faults = {one.column: one for one in refused.faults}
    assert says in faults[column].wrong
    # A record that was changed no longer fits its id; nothing else may be found wrong with it.
    assert set(faults) <= {column, "log_id"}


def test_a_misspelt_column_is_shown_the_right_one(tmp_path: Path) -> None:
    (fault,) = [one for one in csv_with(tmp_path, spring_pases="2").faults if one.column == "spring_pases"]
    assert fault.do == "a column named 'spring_passes' exists"


def test_a_row_typed_by_hand_needs_neither_id_nor_size_in_mm(tmp_path: Path) -> None:
    head, row = rows_of(exported(tmp_path, "csv", record()))
    typed = {
        name: cell
        for name, cell in zip(head, row, strict=True)
        if name not in ("number", "log_id") and not name.endswith(".mm")
    }
    path = tmp_path / "typed.csv"
    path.write_text(",".join(typed) + "\n" + ",".join(f'"{cell}"' for cell in typed.values()) + "\n", encoding="utf-8")
    with Book.create(tmp_path / "second.sqlite") as book:
        bring_in(book, path)
        assert book.record(1).record == record()


@pytest.mark.parametrize("text", ["1,r0,2026-01-05", "a" * 10 + ",b" * 500])
def test_a_row_of_another_length_is_kept(tmp_path: Path, text: str) -> None:
    path = exported(tmp_path, "csv", record())
    path.write_text(path.read_text(encoding="utf-8") + text + "\n\n", encoding="utf-8", newline="")
    with Book.create(tmp_path / "second.sqlite") as book:
        taken, (row,) = bring_in(book, path)
        assert taken.added == (1,)
    assert (row.line, row.text) == (3, text)
    assert "cells where the table has" in row.faults[0].wrong


def test_what_stands_behind_a_quote_that_never_closes_is_kept(tmp_path: Path) -> None:
    path = exported(tmp_path, "csv", record())
    path.write_text(path.read_text(encoding="utf-8") + '2,"open\n3,x\n', encoding="utf-8", newline="")
    with Book.create(tmp_path / "second.sqlite") as book:
        taken, (row,) = bring_in(book, path)
        assert taken.added == (1,)
    assert row.text == '2,"open\n3,x'
    assert row.line == 3


def test_lines_are_counted_past_a_cell_with_line_breaks(tmp_path: Path) -> None:
    path = exported(tmp_path, "csv", record(remarks="one\ntwo\nthree"), check(1, 3))
    path.write_text(path.read_text(encoding="utf-8").replace("2026-01-08", "x"), encoding="utf-8", newline="")
    with Book.create(tmp_path / "second.sqlite") as book:
        _, (row,) = bring_in(book, path)
    assert row.line == 5


@pytest.mark.parametrize(
    ("name", "text", "says"),
    [
        ("a.csv", "", "is empty"),
        ("a.csv", "name,age\nx,1\n", "none of the columns of a log"),
        ("a.csv", "lathe;bar\nx;1\n", "none of the columns of a log"),
        ("a.csv", "lathe,lathe\nx,1\n", "stands twice"),
        ("a.json", "{", "cannot be read as JSON"),
        ("a.json", "[" * 100_000, "cannot be read as JSON"),
        ("a.json", "[]", "is no exported alignment log"),
        ("a.json", '{"records": []}', "is no exported alignment log"),
        ("a.json", '{"alignment_log": 4, "records": []}', "is of version 4"),
        ("a.txt", "", "is no kind of file for a log"),
    ],
)
def test_a_file_that_is_no_log_is_refused_whole(tmp_path: Path, name: str, text: str, says: str) -> None:
    path = tmp_path / name
    path.write_text(text, encoding="utf-8")
    with Book.create(tmp_path / "second.sqlite") as book:
        with pytest.raises(UsageError) as caught:
            bring_in(book, path)
        assert says in caught.value.problems[0].wrong
        assert caught.value.problems[0].do
        assert (book.records(), book.unread()) == ((), ())


def test_semicolons_are_told_as_such(tmp_path: Path) -> None:
    (tmp_path / "a.csv").write_text("lathe;bar\nx;1\n", encoding="utf-8")
    with Book.create(tmp_path / "second.sqlite") as book, pytest.raises(UsageError, match="separate the columns by commas"):
        bring_in(book, tmp_path / "a.csv")


@pytest.mark.parametrize(
    ("element", "column", "says"),
    [
        ("3", "record", "not given"),
        ('{"log_id": "r"}', "record", "not given"),
        ('{"record": {}, "colour": 1}', "colour", "there is no 'colour'"),
        ('{"record": {}, "log_id": 3}', "log_id", "is not text"),
        ('{"record": {}, "struck": 3}', "struck", "is not a group of values"),
        ('{"record": {"operator": "\\ud800"}}', "operator", "cannot be printed"),
        ('{"record": {"\\ud800": 1}}', "", "is not text"),
    ],
)
def test_an_element_that_is_no_record_is_kept_with_its_line(tmp_path: Path, element: str, column: str, says: str) -> None:
    path = tmp_path / "a.json"
    path.write_text('{"alignment_log": 1,\n "records": [\n\n' + element + '], "note": {}}', encoding="utf-8")
    with Book.create(tmp_path / "second.sqlite") as book:
        _, (row,) = bring_in(book, path)
        ((_, kept, _),) = book.unread()
    assert kept == row
    assert (row.line, row.text) == (4, element)
    assert says in next(one.wrong for one in row.faults if one.column == column)


def test_a_file_that_cannot_be_read_is_told(tmp_path: Path) -> None:
    (tmp_path / "latin.csv").write_bytes(b"lathe\n\xfc\n")
    (tmp_path / "folder.csv").mkdir()
    with Book.create(tmp_path / "second.sqlite") as book:
        for name, says in (
            ("none.csv", "no such file"),
            ("latin.csv", "not text in UTF-8"),
            ("folder.csv", "cannot be read"),
        ):
            with pytest.raises(UsageError, match=says):
                bring_in(book, tmp_path / name)


@every_form
def test_a_date_that_is_still_to_come_is_named_with_its_line_and_kept_aside(tmp_path: Path, form: str) -> None:
    tested = {"difference_mm": 0.008, "near_station_mm": 20.0, "far_station_mm": 170.0, "date": "2026-01-05"}
    path = exported(tmp_path, form, check(1, 0), check(2, 2), check(3, 0, chuck_test={**tested, "date": "2031-01-01"}))
    with Book.create(tmp_path / "second.sqlite") as book:
        taken, unread = bring_in(book, path, now="2026-01-05T12:00:00")
        assert len(taken.added) == 1
        assert [one.line for one in unread] == [3, 4]
        first, second = (one.faults[0] for one in unread)
        assert (first.column, first.said) == ("date_time", "2026-01-07")
        assert first.wrong == "is in the future: the clock here says 2026-01-05"
        assert first.do == "mend the date, or set the clock of this machine"
        assert (second.column, second.said) == ("chuck_test.date", "2031-01-01")
        assert len(book.unread()) == 2


@every_form
def test_a_strike_of_the_future_is_named(tmp_path: Path, form: str) -> None:
    path = exported(tmp_path, form, check(1, 0), strike="wrong bar")
    with Book.create(tmp_path / "second.sqlite") as book:
        taken, (row,) = bring_in(book, path, now="2026-01-20T12:00:00")
    assert taken.added == ()
    assert [(one.column, one.said) for one in row.faults] == [("struck.date_time", "2026-02-01")]
