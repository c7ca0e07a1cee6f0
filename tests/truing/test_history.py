"""A visit held against the one before: what the bar cannot have done, and what the last move achieved."""

from dataclasses import replace
from math import hypot

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tailtrue.log.record import Record
from tailtrue.render.words import say
from tailtrue.truing.history import before_in, before_of, last_record

from .rounds import FIRST, METRIC, barring, beside, next_visit

SPAN, HEAD_AT, TAIL_AT = (METRIC.value(f"truing.{name}") for name in ("span", "head_station", "tail_station"))


def record(**changes: object) -> Record:
    """A record of this lathe and bar: headstock end 69.612, tailstock end 69.654."""
    content: dict[str, object] = {
        "date_time": "2026-03-02T09:00", "operator": "AB", "lathe": "Lathe 2", "bar": "FM-L2-004", "state": "as found",
        "bar_orientation": "A at headstock", "span_mm": SPAN, "first_station_mm": HEAD_AT, "second_station_mm": TAIL_AT,
        "tool_side": "front", "tool_height_error_mm": 0, "tool": "HSS", "speed_per_min": 450, "feed_mm_per_rev": 0.1,
        "depth_per_side_mm": 0.05, "spring_passes": 2, "cut_order": "T then H", "feed_direction": "toward headstock",
        "headstock_centre": "soft turned in place", "tailstock_centre": "live", "tailstock_centre_id": "3",
        "quill_extension_mm": 40, "quill_clamped": True, "tailstock_position_mm": 520, "room_degc": 20,
        "spindle_warm_s": 900, "instrument": "4", "instrument_zero_error_mm": 0, "instrument_resolution_mm": 0.001,
        "readings": [{"collar": collar, "said": said} for collar, said in
                     (("H", "69.612 mm"), ("T", "69.654 mm"), ("T", "69.654 mm"), ("H", "69.612 mm"))],
        "judgement": {"difference_mm": 0.042, "difference_uncertainty_mm": 0.004, "move_uncertainty_mm": 0.0028,
                      "move_mm": 0.042 / 2 * SPAN / (TAIL_AT - HEAD_AT), "limit_mm": 0.0183,
                      "limit_over_mm": TAIL_AT - HEAD_AT, "verdict": "outside", "rule": "r"},
        "collar_diameter_after_mm": 69.612, "knowledge_version": "1",
    }  # fmt: skip
    return Record.model_validate({**content, **changes})


@pytest.mark.parametrize("state", [{"state": "as-left"}, {"moved": 0.028}, {}])
def test_further_out_on_the_same_side_bars_the_move(state: dict[str, object]) -> None:
    found = next_visit(69.512, 69.596, **state)
    assert barring(found) == ["wrong-way"]
    assert found.advice == "read-again"
    assert found.part("do") == ()


def test_further_out_as_found_is_drift_and_no_slip_of_the_hand() -> None:
    assert barring(next_visit(69.512, 69.596, state="as-found")) == []


def test_further_out_with_nothing_said_after_a_visit_in_limits_is_no_slip() -> None:
    inside = replace(FIRST, tail_mm=69.617, verdict="inside")
    assert barring(next_visit(69.512, 69.596, inside)) == []
    assert barring(next_visit(69.512, 69.596, inside, state="as-left")) == ["wrong-way"]


def test_a_wrong_way_that_was_read_twice_goes_on_with_a_warning() -> None:
    found = next_visit(69.512, 69.596, state="as-left", read_twice=True)
    assert barring(found) == []
    assert "wrong-way-stands" in beside(found)
    assert found.advice == "move"
    text = next(say(one.text, "metric") for one in found.remarks if one.id == "wrong-way-stands")
    assert "it must go toward you" in text


def test_larger_by_less_than_the_doubt_of_both_is_not_called_a_wrong_way() -> None:
    # Doubt of the change: root of the sum of the squares of both.
    doubt = hypot(FIRST.uncertainty_mm, next_visit(69.512, 69.554).case.value("visit.uncertainty"))
    assert next_visit(69.512, 69.554).case.value("visit.change_doubt") == pytest.approx(doubt)
    assert barring(next_visit(69.512, 69.554 + int(doubt * 1000) / 1000, state="as-left")) == []
    assert barring(next_visit(69.512, 69.554 + int(doubt * 1000 + 1) / 1000, state="as-left")) == ["wrong-way"]


@pytest.mark.parametrize("state", [{"state": "as-left"}, {"state": "as-found"}, {}])
@pytest.mark.parametrize("twice", [False, True])
def test_readings_at_the_wrong_ends_bar_the_move_whatever_is_said(state: dict[str, object], twice: bool) -> None:
    found = next_visit(69.654, 69.612, **state, read_twice=twice)
    assert "ends-swapped" in barring(found)


def test_both_alike_before_and_now_is_not_called_swapped() -> None:
    alike = replace(FIRST, tail_mm=69.613, verdict="inside")
    assert "ends-swapped" not in barring(next_visit(69.613, 69.612, alike, state="as-found"))


def test_as_far_out_on_the_other_side_bars_the_move() -> None:
    assert barring(next_visit(69.554, 69.512, state="as-left")) == ["went-past"]
    assert barring(next_visit(69.554, 69.512, state="as-found")) == ["turned-round-unmoved"]
    assert barring(next_visit(69.554, 69.512)) == ["turned-round-unmoved"]
    for state in ("as-left", "as-found"):
        assert barring(next_visit(69.554, 69.512, state=state, read_twice=True)) == []


@pytest.mark.parametrize(("share", "past"), [(1.45, False), (1.55, True)])
def test_more_than_half_again_of_the_correction_is_past_the_mark(share: float, past: bool) -> None:
    # Share: 1 less difference now over difference before.
    found = next_visit(69.512, 69.512 + 0.042 * (1 - share), state="as-left")
    assert ("went-past" in barring(found)) is past


def test_a_collar_cannot_grow() -> None:
    found = next_visit(69.662, 69.704, state="as-found")
    assert barring(found) == ["collar-grown"]
    text = next(say(one.text, "metric") for one in found.remarks if one.id == "collar-grown")
    assert "collar reads 0.050\u00a0mm" in text
    assert "2026-03-02" in text
    again = next_visit(69.662, 69.704, state="as-found", read_twice=True)
    assert (barring(again), beside(again)) == ([], ["collar-grown-stands"])


def test_one_collar_that_grew_is_named() -> None:
    assert next_visit(69.612, 69.704).case.value("visit.grown_end") == "tailstock"
    assert next_visit(69.662, 69.650).case.value("visit.grown_end") == "headstock"


def test_warmth_of_another_day_is_no_growth() -> None:
    # 5 K of 6082 aluminium, 70 mm: 8 um (Callister, table of linear expansion, 23.6e-6 for the like alloy 6061).
    doubt = next_visit(69.512, 69.554).case.value("visit.size_doubt")
    assert 0.0085 < doubt < 0.013
    assert "collar-grown" not in barring(next_visit(69.620, 69.662, state="as-found"))


def test_moved_but_not_skimmed_bars_the_move() -> None:
    found = next_visit(69.612, 69.653, state="as-left")
    assert barring(found) == ["not-skimmed"]
    assert barring(next_visit(69.612, 69.653, state="as-left", read_twice=True)) == ["not-skimmed"]
    assert barring(next_visit(69.612, 69.653)) == []
    assert barring(next_visit(69.612, 69.653, state="as-found")) == []


def test_one_collar_not_skimmed_is_seen() -> None:
    assert "not-skimmed" in barring(next_visit(69.512, 69.653, state="as-left", read_twice=True))
    assert next_visit(69.512, 69.554).case.value("visit.skimmed") is True


def test_what_the_last_move_achieved_is_said_with_what_to_expect() -> None:
    found = next_visit(69.512, 69.541, state="as-left")
    # 42 to 29: less than half.
    assert beside(found) == ["move-did-little"]
    found = next_visit(69.512, 69.532, state="as-left")
    # 42 to 20: 52 % achieved, and 48 % of 20 is to be expected.
    assert found.case.value("visit.share") == pytest.approx(100 * 22 / 42)
    assert found.case.value("visit.left_after") == pytest.approx(0.020 * 20 / 42)
    said = {one.id: say(one.text, "metric").replace("\u00a0", " ") for one in found.lines}
    assert "brought 52 % of the correction" in said["last-move"]


def test_a_move_that_goes_past_a_little_is_expected_to_do_so_again() -> None:
    found = next_visit(69.540, 69.512, state="as-left", read_twice=True)
    assert found.case.value("visit.share") == pytest.approx(100 * 70 / 42)
    assert found.case.value("visit.left_end") == "tailstock"


def test_no_share_is_reckoned_from_a_difference_within_the_doubt() -> None:
    alike = replace(FIRST, tail_mm=69.615)
    assert next_visit(69.512, 69.513, alike, state="as-left").case.value("visit.share") is None


def test_an_indicator_that_moved_while_the_collars_did_not_is_told() -> None:
    assert "indicator-and-collars-differ" in beside(next_visit(69.512, 69.550, state="as-left", moved=0.028))
    assert "indicator-and-collars-differ" not in beside(next_visit(69.512, 69.520, state="as-left", moved=0.028))


@pytest.mark.parametrize(("rounds", "told"), [(3, False), (4, True)])
def test_more_than_four_rounds_are_told(rounds: int, told: bool) -> None:
    found = next_visit(69.512, 69.544, replace(FIRST, rounds=rounds), state="as-left")
    assert ("many-rounds" in beside(found)) is told
    assert "many-rounds" not in beside(next_visit(69.512, 69.544, replace(FIRST, rounds=rounds), state="as-found"))


def test_the_log_gives_the_latest_test_of_this_lathe_and_bar() -> None:
    other = record(lathe="Lathe 3", date_time="2026-05-01")
    first, last = record(), record(date_time="2026-03-02T10:00", state="as left")
    found = before_in([last, other, first], METRIC)
    assert found is not None
    assert (found.head_mm, found.tail_mm, found.date, found.rounds) == (69.612, 69.654, "2026-03-02", 2)
    assert found.uncertainty_mm == 0.004
    assert last_record([last, other, first], METRIC, date="") == last
    assert before_in([record(bar="TB-9")], METRIC) is None
    assert before_in([], METRIC) is None


def test_a_test_typed_in_later_is_held_against_what_was_before_it() -> None:
    early, late = record(), record(date_time="2026-06-01", state="as left")
    assert last_record([early, late], METRIC, "2026-04-01") == early
    assert last_record([early, late], METRIC, "2026-06-01T08:00") == late
    assert last_record([early], METRIC, "2026-03-02") == early
    assert last_record([early], METRIC, "2026-03-01") is None


def test_a_test_from_the_other_side_or_other_stations_is_not_compared() -> None:
    assert before_in([record(tool_side="rear")], METRIC) is None
    assert before_in([record(second_station_mm=TAIL_AT - 0.4)], METRIC) is not None
    assert before_in([record(second_station_mm=TAIL_AT - 0.6)], METRIC) is None


def test_a_doubt_that_was_not_kept_follows_from_that_of_the_move() -> None:
    judged = record().judgement.model_dump(exclude={"difference_uncertainty_mm"})
    found = before_in([record(judgement=judged)], METRIC)
    assert found is not None
    # U(m) = U(dD) / 2 x L / (b - a), turned round.
    assert found.uncertainty_mm == pytest.approx(2 * 0.0028 * (TAIL_AT - HEAD_AT) / SPAN)


def test_rounds_begin_at_the_last_test_as_found() -> None:
    states = ["as found", "as left", "as left", "as found", "as left"]
    row = [record(date_time=f"2026-03-0{day}", state=state) for day, state in enumerate(states, 1)]
    found = before_in(row, METRIC)
    assert found is not None
    assert found.rounds == 2
    assert found.facts(as_found=True)["visit.rounds_before"] == 0


def test_a_round_just_judged_serves_the_next_one() -> None:
    visit = next_visit(69.512, 69.532, state="as-left")
    found = before_of(visit, "2026-03-02", 2)
    assert (found.head_mm, found.tail_mm, found.verdict, found.rounds) == (69.512, 69.532, "too-close", 2)
    assert found.move_mm == visit.case.value("visit.toward_tool")


@settings(max_examples=80, deadline=None)
@given(st.integers(-60, 60), st.integers(-60, 60))
def test_the_same_is_remarked_whichever_end_is_the_larger(before: int, now: int) -> None:
    def ids(mirrored: bool) -> list[str]:
        sizes = [(69.6, 69.6 + before / 1000), (69.5, 69.5 + now / 1000)]
        (first, second), (head, tail) = (size[::-1] if mirrored else size for size in sizes)
        found = next_visit(head, tail, replace(FIRST, head_mm=first, tail_mm=second), state="as-left")
        return [one.id for one in found.remarks]

    assert ids(False) == ids(True)
