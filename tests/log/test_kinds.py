"""Certificates and heights in the log: what is kept, what is refused with its place, and that tests stay by themselves."""

import json
import re
from pathlib import Path

import pytest

from shops import shop, tailtrue
from tailtrue.errors import TailtrueError
from tailtrue.log.book import Book
from tailtrue.log.exchange import bring_in, written
from tailtrue.log.kinds import KINDS, Certificate, Height
from tailtrue.log.other_file import field_of, kind_of_file, labelled, others_catalogue, read_other

from .sample import check

NOW = "2026-11-26T10:00:00"
_BLOCK = re.compile(r"```toml\n(\[(certificate|height)\]\n.*?)```", re.DOTALL)
# The files that the guide shows are those that people copy.
SHOWN = {kind: text for text, kind in _BLOCK.findall((Path(__file__).parents[2] / "docs" / "log.md").read_text("utf-8"))}


def typed(folder: Path, kind: str, **changes: str | None) -> Path:
    """The file of the guide with other values, as they are typed; None takes a line out."""
    text = SHOWN[kind]
    for key, value in changes.items():
        line = "" if value is None else f"{key} = {value}\n"
        text, count = re.subn(rf"^{key} = .*\n", line, text, flags=re.MULTILINE)
        if not count:
            text += line
    path = folder / f"{kind}.toml"
    path.write_text(text, encoding="utf-8")
    return path


def made(folder: Path, kind: str, **changes: str | None) -> Certificate | Height:
    return read_other(typed(folder, kind, **changes), kind, None, NOW)[0]


def wrong(folder: Path, kind: str, **changes: str | None) -> list[str]:
    with pytest.raises(TailtrueError) as caught:
        made(folder, kind, **changes)
    assert all(one.do for one in caught.value.problems)
    return [f"{one.where} {one.said}: {one.wrong}" for one in caught.value.problems]


@pytest.mark.parametrize("kind", KINDS)
def test_the_file_of_the_guide_is_taken_and_comes_back_as_it_went_in(tmp_path: Path, kind: str) -> None:
    path = typed(tmp_path, kind)
    assert kind_of_file(path) == kind
    one, dated = read_other(path, kind, None, NOW)
    assert dated
    with Book.create(tmp_path / "log.sqlite") as book:
        assert book.add(one) == 1
    with Book.open(tmp_path / "log.sqlite") as book:
        assert book.record(1).record == one
        assert [entry.record for entry in book.others(bar=None, lathe=None, struck=False)] == [one]
        assert book.records() == ()


@pytest.mark.parametrize("kind", KINDS)
def test_every_field_of_a_kind_is_typed_by_one_key_and_shown(tmp_path: Path, kind: str) -> None:
    facts = others_catalogue().of_file(kind).values()
    assert sorted(field_of(kind, fact) for fact in facts) == sorted(set(KINDS[kind].model_fields) - {"kind"})
    one = made(tmp_path, kind)
    said = {field_of(kind, fact) for fact in facts if getattr(one, field_of(kind, fact)) is not None}
    assert len(list(labelled(one, "metric"))) == len(said)


# Kind, what is typed otherwise, and words of the one fault.
BAD = [
    ("certificate", {"bar": None}, "bar: not given"),
    ("certificate", {"bar": '" "'}, "is empty"),
    ("certificate", {"end_a": '["69.842 mm", "69.843 mm"]'}, "end_a = .*has fewer than 3 readings"),
    ("certificate", {"end_a": '["69.842", "69.843 mm", "69.843 mm"]'}, "69.842"),
    ("certificate", {"end_a": '["6.9842 mm", "69.843 mm", "69.843 mm"]'}, "6.9842"),
    ("certificate", {"length": '"60 mm"'}, "length = .*is no more than both stations together"),
    ("certificate", {"as_it_lies": None}, "as_it_lies"),
    ("certificate", {"as_it_lies": '"0.0085 mm"'}, "verdict = .*changes by 0.0045 mm with the ends"),
    ("certificate", {"collar_least_diameter": '"69.9 mm"'}, "verdict = .*worn to 69.838 mm"),
    ("certificate", {"centre_holes": '"broken ring"'}, "verdict = .*centre hole is broken"),
    ("certificate", {"witness_lines": '"broken"'}, "verdict = .*has moved on the bar"),
    ("certificate", {"verdict": '"perhaps"'}, "verdict = "),
    ("certificate", {"next_look": '"2026-03-31"'}, "next_look = .*is not after the day"),
    ("certificate", {"next_look": '"soon"'}, "next_look = .*is no date"),
    ("certificate", {"colour": '"red"'}, "colour"),
    ("height", {"lathe": None}, "lathe: not given"),
    ("height", {"rear": '"-0.0130 mm"'}, "front = .*miss top and bottom together by 0.0050 mm"),
    ("height", {"front_again": '"0.005 mm"'}, "front_again = .*does not come back"),
    ("height", {"side": '"-0.004 mm"'}, r"side = .*is not what the readings give: \+0.0040 mm"),
    ("height", {"rise": '"0.017 mm"'}, "verdict = .*does not agree with rise"),
    ("height", {"verdict": '"outside"'}, "verdict = .*height, rise and lean are inside"),
    ("height", {"height_most": '"0.025 mm"'}, "verdict = .*cannot be told within a division"),
    ("height", {"rise_least": '"0.016 mm"'}, "rise_least = .*is not below the other limit"),
    ("height", {"division": '"0 mm"'}, "division = "),
    ("height", {"top": '"30 mm"'}, "top = "),
    ("height", {"state": '"now"'}, "state = "),
]


@pytest.mark.parametrize(("kind", "changes", "says"), BAD)
def test_what_cannot_be_is_refused_at_its_place(
    tmp_path: Path, kind: str, changes: dict[str, str | None], says: str
) -> None:
    found = wrong(tmp_path, kind, **changes)
    assert any(re.search(says, one) for one in found), found
    assert all(one.startswith(f"{kind}.toml") for one in found)


def test_a_height_with_its_sign_turned_is_refused_twice_over(tmp_path: Path) -> None:
    assert len(wrong(tmp_path, "height", height='"-0.024 mm"')) == 2


def test_at_its_bounds_a_line_is_taken(tmp_path: Path) -> None:
    assert made(tmp_path, "certificate", as_it_lies='"0.008 mm"')  # changes by just as much as it may
    assert made(tmp_path, "certificate", collar_least_diameter='"69.838 mm"')
    assert made(tmp_path, "certificate", as_it_lies=None, end_for_end=None, change_most=None)
    assert made(tmp_path, "certificate", centre_holes='"broken ring"', verdict='"out of use"')
    assert made(tmp_path, "height", height_most='"0.026 mm"')  # a whole division below its limit
    assert made(tmp_path, "height", height_most='"0.025 mm"', verdict='"too close to say"')
    assert made(tmp_path, "height", rear='"-0.012 mm"', side='"0.006 mm"')  # closes within just two divisions
    assert made(tmp_path, "height", rise='"0.017 mm"', verdict='"outside"')


def test_the_same_line_is_added_once_and_without_a_date_too(tmp_path: Path) -> None:
    with Book.create(tmp_path / "log.sqlite") as book:
        book.add(made(tmp_path, "height"))
        with pytest.raises(TailtrueError, match="the same record"):
            book.add(made(tmp_path, "height"))
        undated, dated = read_other(typed(tmp_path, "height", date=None, next_look=None), "height", None, NOW)
        assert not dated
        with pytest.raises(TailtrueError, match="was given no date"):
            book.add(undated, dated)
        assert book.add(undated, dated=True) == 2


def test_an_older_log_is_one_until_the_first_such_line(tmp_path: Path) -> None:
    path = tmp_path / "log.sqlite"

    def version(book: Book) -> object:
        return book._storage.run("PRAGMA user_version")[0][0]

    with Book.create(path) as book:
        book.add(check(1, 1))
        assert version(book) == 1
        book.add(made(tmp_path, "certificate"))
        assert version(book) == 3
        assert [len(one.checks) for one in book.series(lathe=None)] == [1]


def test_json_holds_every_kind_and_a_table_the_tests(tmp_path: Path) -> None:
    with Book.create(tmp_path / "log.sqlite") as book:
        book.add(made(tmp_path, "certificate"))
        book.add(check(1, 1))
        book.add(made(tmp_path, "height"))
        book.strike(1, "wrong bar", "KL", "2026-05-01")
        text = written(book, tmp_path / "log.json")
        assert json.loads(text)["alignment_log"] == 3
        table = written(book, tmp_path / "log.csv")
        assert len(table.splitlines()) == 2
    (tmp_path / "log.json").write_text(text, encoding="utf-8")
    with Book.create(tmp_path / "second.sqlite") as second:
        taken, unread = bring_in(second, tmp_path / "log.json", NOW)
        assert (taken.added, taken.struck, unread) == ((1, 2, 3), 1, ())
        assert written(second, tmp_path / "log.json") == text


def test_a_line_changed_by_hand_in_an_export_is_not_taken_in(tmp_path: Path) -> None:
    with Book.create(tmp_path / "log.sqlite") as book:
        book.add(made(tmp_path, "certificate"))
        text = written(book, tmp_path / "log.json").replace('"69.842 mm"', '"70.842 mm"').replace("69.842", "70.842")
    (tmp_path / "log.json").write_text(text, encoding="utf-8")
    with Book.create(tmp_path / "second.sqlite") as second:
        taken, unread = bring_in(second, tmp_path / "log.json", NOW)
        assert taken.added == ()
        assert "something in it was changed" in unread[0].faults[0].wrong


def test_a_text_that_looks_like_a_kind_stays_the_text_of_a_test(tmp_path: Path) -> None:
    with Book.create(tmp_path / "log.sqlite") as book:
        book.add(check(1, 1, remarks='{"kind":"height"}'))
        assert [one.number for one in book.records()] == [1]


def test_they_are_added_listed_shown_and_struck_out_at_the_command(tmp_path: Path) -> None:
    job = shop(tmp_path, "fernhill")
    for number, kind in enumerate(KINDS, start=1):
        done = tailtrue("log", "add", job, "--from", typed(tmp_path, kind))
        assert (done.returncode, done.stdout) == (0, f"Added as record {number}.\n"), done.stderr
    lines = tailtrue("log", "list", job).stdout.splitlines()
    assert "bar TB-1, certificate: smallest collar 69.838 mm; fit for use, next look 2027-03-31 (JD)" in lines[0]
    assert "height, as found: quill 0.024 mm above the spindle; inside, next look 2027-04-02 (JD)" in lines[1]
    assert tailtrue("log", "list", job, "--kind", "height").stdout.splitlines() == lines[1:]
    assert tailtrue("log", "list", job, "--bar", "TB-1").stdout.splitlines() == lines[:1]
    assert tailtrue("log", "list", job, "--kind", "test").stdout == "Nothing in the log fits.\n"
    assert tailtrue("log", "list", job, "--kind", "bar").returncode == 4
    assert "collar at end A, as read: 69.842 mm, 69.843 mm, 69.842 mm" in tailtrue("log", "show", job, 1).stdout
    assert tailtrue("log", "strike", job, 2, "--reason", "arm slipped", "--initials", "KL").returncode == 0
    assert "STRUCK OUT by KL" in tailtrue("log", "list", job, "--struck").stdout
    late = tailtrue("log", "add", job, "--from", typed(tmp_path, "height", date='"2126-01-01"', next_look=None))
    assert (late.returncode, late.stdout) == (4, "")
    assert "is in the future" in late.stderr
