"""Keeping visits and going on from round to round: nothing invented, nothing lost."""

from pathlib import Path

import pytest

from tailtrue.errors import ReadingsWrong, TailtrueError, report
from tailtrue.log.faults import LogUnusable, RecordWrong
from tailtrue.log.record import Record
from tailtrue.log.typed import Typed, read_typed, typed_options
from tailtrue.truing.keep import check_keepable, judged_record, make_record
from tailtrue.truing.said import facts_of, readings_of
from tailtrue.truing.session import Keeping, Session
from tailtrue.truing.typed import read_lists
from tailtrue.truing.visit import judge_visit

from .rounds import METRIC, SET_UP

READ = """state = "as found"
head = ["69.612 mm", "69.613 mm"]
tail = ["69.655 mm", "69.654 mm"]
order = "HTTH"
"""
DATE = "2026-03-02T09:00"


def typed(folder: Path, text: str = SET_UP + READ) -> Typed:
    path = folder / "visit.toml"
    path.write_text(text, encoding="utf-8")
    return read_typed(path, system="")


def said(error: TailtrueError) -> str:
    return report(error)


def record_of(found: Typed, date: str | None = DATE, before: Record | None = None) -> Record:
    visit = judge_visit(METRIC, readings_of(found, from_zero=False), also=facts_of(found), kind="micrometer")
    return make_record(visit, found, date, before)


def test_a_record_holds_what_was_said_what_the_job_knows_and_what_was_judged(tmp_path: Path) -> None:
    found = record_of(typed(tmp_path))
    assert (found.date_time, found.operator, found.state) == (DATE, "AB", "as found")
    assert (found.lathe, found.bar, found.tool_side) == ("Lathe 2", "FM-L2-004", "front")
    assert [one.collar for one in found.readings] == ["H", "T", "T", "H"]
    assert [one.said for one in found.readings] == ["69.612 mm", "69.655 mm", "69.654 mm", "69.613 mm"]
    assert found.judgement.difference_mm == pytest.approx(0.042)
    assert found.judgement.verdict == "outside"
    # The move is half the difference times span over spacing, + toward the tool.
    apart = found.second_station_mm - found.first_station_mm
    assert found.judgement.move_mm == pytest.approx(0.021 * found.span_mm / apart)
    assert found.judgement.limit_over_mm == pytest.approx(apart)
    assert found.judgement.difference_uncertainty_mm == pytest.approx(0.0042, abs=0.0005)
    assert found.instrument_resolution_mm == 0.001
    assert found.collar_diameter_after_mm == pytest.approx(69.6125)
    assert found.collar_least_diameter_mm == METRIC.value("skim.worn_out_at")
    assert found.knowledge_version == METRIC.knowledge.version
    assert found.judgement.rule.startswith("inside: difference and doubt within the limit")


def test_what_was_not_said_stays_unsaid(tmp_path: Path) -> None:
    found = record_of(typed(tmp_path))
    for name in (
        "bar_degc",
        "mid_station_mm",
        "tailstock_centre_mark",
        "headstock_centre_runout_mm",
        "chuck_test",
        "remarks",
    ):
        assert getattr(found, name) is None
    assert found.moves == ()
    assert found.level == ()


def test_everything_that_is_missing_is_named_in_one_sentence(tmp_path: Path) -> None:
    short = typed(tmp_path, '[record]\nquill_clamped = true\nroom = "20"\n')
    with pytest.raises(RecordWrong) as wrong:
        check_keepable(METRIC, short)
    units, missing = wrong.value.problems
    assert units.where == "visit.toml:3"
    assert "has no unit" in units.wrong
    for key in ("operator", "state", "quill_extension", "tailstock_centre", "spindle_warm", "instrument_zero_error"):
        assert key in missing.said
    for key in ("quill_clamped", "room", "readings", "lathe", "span", "difference", "verdict", "date"):
        assert key not in missing.said.split(", ")
    assert "--from" in missing.do


def test_readings_without_their_order_are_not_kept(tmp_path: Path) -> None:
    with pytest.raises(RecordWrong, match="stand without their order"):
        record_of(typed(tmp_path, SET_UP + READ.replace('order = "HTTH"\n', "")))
    visit = judge_visit(METRIC, read_lists("69.612 mm", "69.655 mm"), kind="micrometer", also=None)
    with pytest.raises(RecordWrong, match="stand without their order"):
        make_record(visit, typed(tmp_path, SET_UP + 'state = "as found"\n'), DATE)


def test_readings_of_a_caliper_are_not_kept(tmp_path: Path) -> None:
    found = typed(tmp_path)
    visit = judge_visit(METRIC, readings_of(found, from_zero=False), "caliper", also=None)
    with pytest.raises(RecordWrong, match="cannot judge the limit"):
        make_record(visit, found, DATE)


@pytest.mark.parametrize(
    ("line", "shows"),
    [
        ('lathe = "Lathe 3"', "Lathe 2"),
        ('bar = "TB-1"', "FM-L2-004"),
        ('tool_side = "rear"', "front"),
        ('verdict = "inside"', "outside"),
        ('span = "300 mm"', "371.8 mm"),
        ('difference = "0.044 mm"', "0.042 mm"),
        ('move = "-0.0284 mm"', "0.02839 mm"),
        ('limit = "0.02 mm"', "0.01833 mm"),
    ],
)
def test_what_contradicts_the_job_or_the_readings_is_refused_with_its_line(tmp_path: Path, line: str, shows: str) -> None:
    with pytest.raises(RecordWrong) as wrong:
        record_of(typed(tmp_path, f"{SET_UP}{READ}{line}\n"))
    (problem,) = wrong.value.problems
    assert problem.where == f"visit.toml:{len((SET_UP + READ).splitlines()) + 1}"
    assert shows in problem.wrong


def test_what_agrees_with_the_job_may_stand_in_the_file_too(tmp_path: Path) -> None:
    more = 'lathe = "Lathe 2"\nspan = "371.5 mm"\ndifference = "0.042 mm"\nverdict = "outside"\ncollar_diameter_after = "69.61 mm"\n'
    found = record_of(typed(tmp_path, SET_UP + READ + more))
    assert (found.span_mm, found.collar_diameter_after_mm) == (371.5, 69.61)


def test_the_set_up_of_the_last_record_is_taken_over_only_when_that_is_said(tmp_path: Path) -> None:
    before = record_of(typed(tmp_path))
    short = '[record]\ninitials = "CD"\nroom = "22 degC"\nspindle_warm = "5 min"\ninstrument_zero_error = "0 mm"\n'
    again = typed(tmp_path, short + 'quill_extension = "55 mm"\n' + READ)
    with pytest.raises(RecordWrong, match="the log guesses nothing"):
        record_of(again)
    found = record_of(again, "2026-03-03", before)
    assert (found.operator, found.quill_extension_mm, found.room_degc) == ("CD", 55.0, 22.0)
    assert (found.tool, found.tailstock_centre_id, found.spring_passes) == (before.tool, "centre 3", 2)


def test_temperatures_and_the_zero_of_the_day_are_never_taken_over(tmp_path: Path) -> None:
    before = record_of(typed(tmp_path))
    with pytest.raises(RecordWrong) as wrong:
        record_of(typed(tmp_path, "[record]\n" + READ), DATE, before)
    assert wrong.value.problems[0].said == "operator, room, spindle_warm, instrument_zero_error"


def test_head_and_tail_are_read_as_text_or_as_lists(tmp_path: Path) -> None:
    text = READ.replace('["69.612 mm", "69.613 mm"]', '"69.612 mm, 69.613 mm"')
    assert record_of(typed(tmp_path, SET_UP + text)) == record_of(typed(tmp_path))
    plain = 'state = "as found"\nreadings = ["H 69.612 mm", "T 69.655 mm", "T 69.654 mm", "H 69.613 mm"]\n'
    assert record_of(typed(tmp_path, SET_UP + plain)) == record_of(typed(tmp_path))


@pytest.mark.parametrize(
    ("old", "new", "line", "says"),
    [
        ('order = "HTTH"', 'order = "HTT"', 4, "does not fit the readings"),
        ('order = "HTTH"', 'order = "HTXH"', 4, "does not fit the readings"),
        ('order = "HTTH"', "order = 4", 4, "does not fit the readings"),
        ('tail = ["69.655 mm", "69.654 mm"]', "tail = 69.655", 3, "is not a list of readings in quotes"),
        ('tail = ["69.655 mm", "69.654 mm"]', "tail = [69.655, 69.654]", 3, "is not a list of readings in quotes"),
        ('"69.655 mm"', '"69,655 mm"', 3, "the decimal mark must be a point"),
        ('"69.655 mm"', '"69.655"', 3, "has no unit"),
        ('state = "as found"', 'state = "left"', 1, "is not one of the choices"),
        ('order = "HTTH"', 'order = "HTTH"\nreadings = ["H 1 mm"]', 2, "say the same thing in two ways"),
    ],
)
def test_a_fault_in_a_visit_file_has_its_line(tmp_path: Path, old: str, new: str, line: int, says: str) -> None:
    assert old in READ
    found = typed(tmp_path, SET_UP + READ.replace(old, new))
    with pytest.raises(TailtrueError) as wrong:
        readings_of(found.sound(), from_zero=False)
    assert says in said(wrong.value)
    assert f"visit.toml:{len(SET_UP.splitlines()) + line}" in said(wrong.value)


def test_every_fault_of_a_visit_file_is_told_at_once(tmp_path: Path) -> None:
    found = typed(tmp_path, SET_UP.replace('"20 degC"', '"20"') + READ.replace("HTTH", "HT") + 'sate = "x"\n')
    assert [one.wrong for one in found.problems] == ["has no unit", "does not fit the readings", "unknown key 'sate'"]


def test_a_rejected_reading_stays_in_the_record_and_out_of_the_mean(tmp_path: Path) -> None:
    text = READ.replace('tail = ["69.655 mm",', 'tail = ["70.155 mm rejected: turn missed", "69.655 mm",').replace(
        "HTTH", "HTTTH"
    )
    found = record_of(typed(tmp_path, SET_UP + text))
    assert found.judgement.difference_mm == pytest.approx(0.042)
    assert found.readings[1].rejected == "turn missed"


def test_a_third_collar_is_judged_and_kept(tmp_path: Path) -> None:
    middle = 'middle = ["69.634 mm", "69.635 mm"]\nmid_station = "190 mm"\n'
    text = SET_UP + READ.replace("HTTH", "HMTTMH") + middle
    found = record_of(typed(tmp_path, text))
    assert [one.collar for one in found.readings] == ["H", "M", "T", "T", "M", "H"]
    assert (found.mid_station_mm, found.kept("M")) == (190.0, (69.634, 69.635))
    lost = typed(tmp_path, text.replace('mid_station = "190 mm"\n', ""))
    with pytest.raises(ReadingsWrong, match="not where it sits"):
        facts_of(lost)


def test_moves_are_counted_with_their_sum_and_kept(tmp_path: Path) -> None:
    moves = "".join(
        f'[[record.moves]]\nbefore = "0 mm"\nunclamped = "{one} mm"\nclamped = "{one} mm"\n' for one in ("0.03", "-0.01")
    )
    found = typed(tmp_path, SET_UP + READ.replace("as found", "as left") + moves)
    assert facts_of(found)["visit.moved"] == pytest.approx(0.02)
    assert len(record_of(found).moves) == 2


def test_readings_that_do_not_hang_together_make_no_record_by_themselves(tmp_path: Path) -> None:
    slip = typed(tmp_path, SET_UP + READ.replace("69.655", "69.155"))
    with pytest.raises(RecordWrong, match="do not hang together"):
        judged_record(METRIC, slip, DATE)
    assert judged_record(METRIC, typed(tmp_path), DATE) == record_of(typed(tmp_path))


class Drawer:
    """A place for records that can be shut."""

    def __init__(self) -> None:
        self.records: list[Record] = []
        self.shut = False

    def add(self, record: Record) -> int:
        if self.shut:
            raise LogUnusable(())
        self.records.append(record)
        return len(self.records)


def session(drawer: Drawer) -> Session:
    return Session(METRIC, keeping=Keeping(drawer.add))


def step(at: Session, base: Typed, head: str, tail: str, state: str, twice: bool = False) -> int | None:
    now = base.with_more(typed_options({"state": state}, system=""))
    visit = at.judge(now, read_lists(head, tail, "HTTH"), {"visit.read_twice": twice})
    return at.settle(visit, now, DATE)


def test_rounds_are_judged_against_each_other_and_kept(tmp_path: Path) -> None:
    drawer = Drawer()
    at, base = session(drawer), typed(tmp_path, SET_UP)
    assert step(at, base, "69.612 mm, 69.613 mm", "69.655 mm, 69.654 mm", "as found") == 1
    assert step(at, base, "69.512 mm, 69.513 mm", "69.521 mm, 69.520 mm", "as left") == 2
    assert [one.state for one in drawer.records] == ["as found", "as left"]
    assert at.kept == [1, 2]
    assert at.before is not None
    assert (at.before.rounds, at.before.verdict, at.before.date) == (2, "inside", "2026-03-02")


def test_a_barred_round_is_neither_kept_nor_held_against_the_next(tmp_path: Path) -> None:
    drawer = Drawer()
    at, base = session(drawer), typed(tmp_path, SET_UP)
    step(at, base, "69.612 mm, 69.613 mm", "69.655 mm, 69.654 mm", "as found")
    before = at.before
    assert step(at, base, "69.512 mm, 69.513 mm", "69.597 mm, 69.596 mm", "as left") is None
    assert (at.before, len(drawer.records)) == (before, 1)
    assert step(at, base, "69.512 mm, 69.513 mm", "69.597 mm, 69.596 mm", "as left", twice=True) == 2


def test_a_log_that_cannot_be_written_leaves_the_session_as_it_was(tmp_path: Path) -> None:
    drawer = Drawer()
    at, base = session(drawer), typed(tmp_path, SET_UP)
    step(at, base, "69.612 mm, 69.613 mm", "69.655 mm, 69.654 mm", "as found")
    before, drawer.shut = at.before, True
    with pytest.raises(LogUnusable):
        step(at, base, "69.512 mm, 69.513 mm", "69.521 mm, 69.520 mm", "as left")
    assert (at.before, at.kept) == (before, [1])


def test_without_keeping_rounds_go_on_all_the_same() -> None:
    at = Session(METRIC)
    assert step(at, typed_options({}, system=""), "69.612 mm, 69.613 mm", "69.655 mm, 69.654 mm", "as found") is None
    now = typed_options({"state": "as left"}, system="")
    visit = at.judge(now, read_lists("69.512 mm, 69.513 mm", "69.597 mm, 69.596 mm", "HTTH"), {"visit.read_twice": False})
    assert [one.id for one in visit.remarks if one.bars_move] == ["wrong-way"]
