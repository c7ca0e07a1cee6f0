"""A typed record file: read whole, or every fault at once with its line."""

import re
import tomllib
from pathlib import Path

import pytest

from tailtrue.errors import Problem
from tailtrue.log.faults import RecordWrong
from tailtrue.log.fields import implausible, labelled, place_of, record_catalogue
from tailtrue.log.record import ChuckTest, Judgement, Record
from tailtrue.log.record_file import whole
from tailtrue.log.typed import read_typed
from tailtrue.places import knowledge_folder

from .sample import EVERYTHING, check, record

TYPED = Path(__file__).with_name("typed.toml")


def read_record(path: Path, date_time: str | None) -> Record:
    """The record in a file, as it is read where `--date` may be given beside it."""
    return whole(read_typed(path, system=""), {} if date_time is None else {"date": date_time})


def changed(folder: Path, *changes: tuple[str, str]) -> Path:
    """The typed file with changes (pattern, replacement)."""
    text = TYPED.read_text(encoding="utf-8")
    for pattern, replacement in changes:
        text, count = re.subn(pattern, replacement, text, flags=re.MULTILINE | re.DOTALL)
        assert count, pattern
    path = folder / "record.toml"
    path.write_text(text, encoding="utf-8")
    return path


def problems(folder: Path, *changes: tuple[str, str], date: str | None = None) -> tuple[Problem, ...]:
    with pytest.raises(RecordWrong) as caught:
        read_record(changed(folder, *changes), date)
    return caught.value.problems


def line_of(folder: Path, text: str) -> int:
    lines = (folder / "record.toml").read_text(encoding="utf-8").splitlines()
    return next(number for number, line in enumerate(lines, start=1) if text in line)


def test_everything_a_record_holds_can_be_typed() -> None:
    expected = {**EVERYTHING, "date_time": "2026-01-05T09:40", "bar_degc": 190 / 9, "remarks": "chatter on collar T"}
    made = read_record(TYPED, None)
    assert made.bar_degc == pytest.approx(190 / 9)  # 70 degF
    assert made == Record.model_validate({**expected, "bar_degc": made.bar_degc})


def test_every_field_of_a_record_is_in_the_catalogue_and_the_other_way_round() -> None:
    found = {place_of(fact) for fact in record_catalogue().facts.values()}
    nested = {"judgement": Judgement, "chuck_test": ChuckTest}
    wanted = {(name,) for name in Record.model_fields if name not in nested}
    wanted |= {(group, name) for group, model in nested.items() for name in model.model_fields}
    assert found == wanted


def test_every_entry_of_the_catalogue_names_its_source_and_how_to_find_it() -> None:
    with (knowledge_folder() / "sources.toml").open("rb") as opened:
        sources = tomllib.load(opened)
    for fact in record_catalogue().facts.values():
        for one in (fact, *fact.fields.values()):
            assert set(one.spec.sources) <= set(sources), one.spec.name
            assert one.spec.sources
            assert one.spec.how
            if one.spec.kind == "quantity":
                assert one.spec.least is not None
                assert one.spec.most is not None
                assert one.spec.least < one.spec.most


def test_the_date_may_come_from_outside(tmp_path: Path) -> None:
    path = changed(tmp_path, (r"^date = .*?\n", ""))
    assert not read_typed(path, system="").says("date")
    assert read_typed(TYPED, system="").says("date")
    assert read_record(path, "2026-02-01").date_time == "2026-02-01"
    (problem,) = problems(tmp_path, (r"^date = .*?\n", ""))
    assert (problem.said, problem.wrong) == ("date", "not given")


def test_a_date_said_twice_is_refused(tmp_path: Path) -> None:
    (problem,) = problems(tmp_path, ("FB", "KL"), date="2026-02-01")
    assert problem.where == "record.toml:3"
    assert "given in the file and with --date" in problem.wrong


@pytest.mark.parametrize("date", ["2026-01-05T09:40:00", "2026-01-05 09:40:00", '"2026-01-05T09:40"'])
def test_a_date_is_read_with_and_without_quotes(tmp_path: Path, date: str) -> None:
    assert read_record(changed(tmp_path, (r"^date = .*?$", f"date = {date}")), None).date_time == "2026-01-05T09:40"


@pytest.mark.parametrize(
    ("pattern", "replacement", "said", "says"),
    [
        ('"450 1/min"', '"450"', 'speed = "450"', "has no unit"),
        ('"300 mm"', '"300 N"', 'span = "300 N"', "is a force"),
        ('"300 mm"', '"30000 mm"', 'span = "30000 mm"', "is not plausible here: 50 mm to 3000 mm"),
        ('"as left"', '"left"', 'state = "left"', "is not one of the choices"),
        ("true", '"perhaps"', 'quill_clamped = "perhaps"', "is neither yes nor no"),
        ("spring_passes = 2", "spring_passes = 2.5", "spring_passes = 2.5", "is not a whole number"),
        ('"H 69.842 mm",', '"H69.842 mm",', '"H69.842 mm"', "is no reading of a collar"),
        ('"M 69.854 mm"', '"M 69,854 mm"', '"M 69,854 mm"', "the decimal mark must be a point"),
        ('move = "0.015 mm"', 'move = "-0.015 mm"', 'move = "-0.015 mm"', "not what the difference gives"),
        ('mid_station = "150 mm"', 'mid_station = "20 mm"', 'mid_station = "20 mm"', "between the two collars"),
        ('unclamped = "0.016 mm"', 'unclamped = "0.016"', 'unclamped = "0.016"', "has no unit"),
        ("chuck_test_date = 2026-01-04", 'chuck_test_date = "soon"', 'chuck_test_date = "soon"', "is no date"),
        ('rise = "0.02 mm"', 'ris = "0.02 mm"', 'ris = "0.02 mm"', "unknown key 'ris'"),
        ('date = "2026-01-05 09:40"', 'date = "5.1.26"', 'date = "5.1.26"', "is no date"),
    ],
)
def test_a_fault_has_its_line_and_what_to_do(tmp_path: Path, pattern: str, replacement: str, said: str, says: str) -> None:
    problem = problems(tmp_path, (pattern, replacement))[0]
    assert says in problem.wrong
    assert problem.where == f"record.toml:{line_of(tmp_path, said)}"
    assert problem.do


def test_every_fault_is_told_at_once(tmp_path: Path) -> None:
    found = problems(
        tmp_path, ('"450 1/min"', '"450"'), ("^operator = .*?\n", ""), ("lathe = ", "lath = "), ('"T 69.866 mm",', '"X",')
    )
    assert [one.wrong for one in found] == [
        "unknown key 'lath'",
        "has no unit",
        "is no reading of a collar",
        "is no reading of a collar",
        "not given",
    ]
    assert "who" in found[-1].do or "initials" in found[-1].do


def test_half_a_chuck_test_is_refused(tmp_path: Path) -> None:
    (problem,) = problems(tmp_path, ("^chuck_test_near_station.*?\n", ""))
    assert "stand without chuck_test_near_station" in problem.wrong


@pytest.mark.parametrize("text", ["", "record = 3", "[recrod]", "x"])
def test_a_file_that_holds_no_record_is_told(tmp_path: Path, text: str) -> None:
    path = tmp_path / "record.toml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(RecordWrong) as caught:
        read_record(path, "2026-01-05")
    assert caught.value.problems


def test_a_file_that_is_not_there_is_told(tmp_path: Path) -> None:
    with pytest.raises(RecordWrong, match="there is no such file"):
        read_record(tmp_path / "none.toml", None)


def test_plausible_records_are_left_alone_and_others_named() -> None:
    assert list(implausible(Record.model_validate(EVERYTHING))) == []
    assert list(implausible(record(room_degc=-20.0))) == []
    assert [one.path for one in implausible(record(room_degc=-20.1))] == [("room_degc",)]
    assert [one.path for one in implausible(record(room_degc=50.1))] == [("room_degc",)]
    (fault,) = implausible(check(0, 0, spindle_warm_s=86401.0))
    assert "0 min to 24 h" in fault.wrong


def test_a_record_is_told_with_labels_units_and_what_was_typed() -> None:
    told = list(labelled(Record.model_validate(EVERYTHING), "metric"))
    assert ("temperature of the room", "20.0 °C") in told
    assert ("how long the spindle had run", "15 min") in told
    assert ("whether the quill was clamped", "yes") in told
    assert ("reading of collar T", "70.366 mm, rejected: half a millimetre misread") in told
    assert any(label == "moves of the tailstock, 2" and "before the move -1/2 thou;" in value for label, value in told)
    assert any(
        label == "level across the ways, 1" and "rise across the ways 0.020 mm (0.0008 in)" in value for label, value in told
    )
    assert ("day of the chuck test", "2026-01-04") in told
    assert len(list(labelled(record(), "metric"))) < len(told)


def test_a_record_is_told_in_the_units_of_the_dials_and_rounded_by_kind() -> None:
    made = record(first_station_mm=30.0 + 1 / 3, tool_height_error_mm=-0.123456)
    inch, metric = dict(labelled(made, "inch")), dict(labelled(made, "metric"))
    station, height = (
        "headstock centre to the middle of the headstock collar",
        "height of the point of the tool over centre height",
    )
    assert (inch[station], metric[station]) == ("1.19 in (30.3 mm)", "30.3 mm (1.19 in)")
    assert (inch[height], metric[height]) == ("-0.005 in (-0.12 mm)", "-0.12 mm (-0.005 in)")
    assert inch["temperature of the room"] == "68.0 °F"
    # 0.0036 mm is 0.00014 in: a doubt is never told smaller than it is.
    doubtful = dict(labelled(Record.model_validate(EVERYTHING), "inch"))
    assert doubtful["doubt of the difference, give or take"] == "0.0002 in (0.004 mm)"
    assert [value for label, value in labelled(made, "inch") if label.startswith("reading of")] == [
        f"{one.said}, rejected: {one.rejected}" if one.rejected else one.said for one in made.readings
    ]


def test_the_example_of_the_how_to_can_be_added(tmp_path: Path) -> None:
    page = (Path(__file__).parents[2] / "docs" / "log.md").read_text(encoding="utf-8")
    example, moves = re.findall(r"```toml\n(\[+record.*?)```", page, re.DOTALL)
    path = tmp_path / "record.toml"
    path.write_text(example, encoding="utf-8")
    assert read_record(path, "2026-03-31").readings[2].rejected == "misread"
    path.write_text(example.replace('"as found"', '"as left"') + moves, encoding="utf-8")
    assert len(read_record(path, "2026-03-31").moves) == 1
    typed = {fact.key for fact in record_catalogue().facts.values()}
    assert {key for key in typed if key not in page} == set()
