"""A record says what was read, what was judged, and nothing that was not said."""

from typing import Any

import pytest
from pydantic import ValidationError

from tailtrue.log.faults import Fault, faults_of
from tailtrue.log.record import Record, Strike, moment

from .sample import CONTENT, EVERYTHING, MOVE, record


def faults(content: dict[str, Any]) -> tuple[Fault, ...]:
    with pytest.raises(ValidationError) as caught:
        Record.model_validate(content)
    return faults_of(caught.value)


def fault(**changes: Any) -> Fault:
    """The only fault of a record with these changes."""
    judged = {key: changes.pop(key) for key in list(changes) if key in CONTENT["judgement"]}
    (found,) = faults({**CONTENT, **changes, "judgement": {**CONTENT["judgement"], **judged}})
    return found


# What a record of an alignment test holds, by what the trade asks for (common practice), and where it stands here.
ASKED = {
    "log id": "log_id", "date and time": "date_time", "operator": "operator", "lathe": "lathe", "bar": "bar",
    "way round of the bar": "bar_orientation", "centre distance": "span_mm", "collar H": "first_station_mm",
    "collar T": "second_station_mm", "middle collar": "mid_station_mm", "tool side": "tool_side",
    "tool height": "tool_height_error_mm", "tool material and edge": "tool", "speed": "speed_per_min",
    "feed": "feed_mm_per_rev", "depth": "depth_per_side_mm", "spring passes": "spring_passes", "cut order": "cut_order",
    "feed direction": "feed_direction", "headstock centre": "headstock_centre", "its run-out": "headstock_centre_runout_mm",
    "tailstock centre": "tailstock_centre", "which": "tailstock_centre_id", "its mark": "tailstock_centre_mark",
    "quill extension": "quill_extension_mm", "quill clamped": "quill_clamped", "place on the bed": "tailstock_position_mm",
    "room temperature": "room_degc", "bar temperature": "bar_degc", "spindle warm": "spindle_warm_s",
    "micrometer": "instrument", "its zero": "instrument_zero_error_mm", "its resolution": "instrument_resolution_mm",
    "raw readings in their order": "readings", "difference, move, U, limit, verdict": "judgement",
    "state": "state", "moves": "moves", "chuck test": "chuck_test", "level": "level",
    "collar after": "collar_diameter_after_mm", "remarks": "remarks", "rules": "knowledge_version",
}  # fmt: skip


def test_everything_that_is_asked_of_a_test_has_its_place() -> None:
    whole = Record.model_validate(EVERYTHING)
    for place in ASKED.values():
        assert getattr(whole, place) is not None, place
    assert set(Record.model_fields) - set(ASKED.values()) == {"collar_least_diameter_mm", "read_by", "nearest_step"}


def test_what_was_not_said_stays_unsaid() -> None:
    bare = record()
    unsaid = {"mid_station_mm", "headstock_centre_runout_mm", "tailstock_centre_mark", "bar_degc", "chuck_test", "remarks",
              "collar_least_diameter_mm", "nearest_step"}  # fmt: skip
    assert {name for name in Record.model_fields if getattr(bare, name) is None} == unsaid
    assert bare.judgement.difference_uncertainty_mm is None
    assert (bare.moves, bare.level) == ((), ())
    assert "null" not in bare.body()


@pytest.mark.parametrize("name", [name for name in CONTENT if name != "judgement"])
def test_what_must_be_said_is_missed(name: str) -> None:
    content = {key: value for key, value in CONTENT.items() if key != name}
    assert Fault((name,), "not given", "add it") in faults(content)


@pytest.mark.parametrize("name", CONTENT["judgement"])
def test_what_must_be_judged_is_missed(name: str) -> None:
    judged = {key: value for key, value in CONTENT["judgement"].items() if key != name}
    assert faults({**CONTENT, "judgement": judged}) == (Fault(("judgement", name), "not given", "add it"),)


def test_readings_are_kept_as_typed_beside_their_size() -> None:
    readings = [
        {"collar": "H", "said": "2.7497 in"},
        {"collar": "T", "said": "2.7506 in"},
        {"collar": "H", "said": "2.7497 in"},
    ]
    made = record(readings=readings, difference_mm=0.02286, move_mm=0.0142875)
    assert [one.said for one in made.readings] == ["2.7497 in", "2.7506 in", "2.7497 in"]
    assert [one.mm for one in made.readings] == pytest.approx([69.84238, 69.86524, 69.84238])
    assert [one.collar for one in made.readings] == ["H", "T", "H"]


def test_a_rejected_reading_is_kept_and_not_counted() -> None:
    made = record()
    assert made.readings[2].mm == 70.366
    assert made.kept("T") == (69.866, 69.866)


def test_typed_text_and_size_must_agree() -> None:
    readings = [{"collar": "H", "said": "69.842 mm", "mm": 69.824}, *CONTENT["readings"][1:]]
    found = fault(readings=readings)
    assert found.path == ("readings", 0, "mm")
    assert "which is 69.842 mm" in found.wrong
    assert fault(readings=[{**readings[0], "mm": 69.9}, *readings[1:]]).path == ("readings", 0, "mm")


def test_a_reading_that_is_no_length_says_what_to_write() -> None:
    readings = [{"collar": "H", "said": "69,8 mm"}, {"collar": "T", "said": "69.9"}]
    found = faults({**CONTENT, "readings": readings})
    assert [one.path for one in found] == [("readings", 0, "said"), ("readings", 1, "said")]
    assert [one.wrong for one in found] == ["the decimal mark must be a point", "has no unit"]


def test_offset_is_the_opposite_of_the_move_and_its_limit_is_scaled() -> None:
    # 0.016 mm on collars 240 mm apart of 300 mm is 0.010 mm at the tailstock: T L / (2 (b - a)), derived.
    assert record().offset_mm == -0.015
    assert record().offset_limit_mm == pytest.approx(0.010)


@pytest.mark.parametrize(
    ("changes", "path", "says"),
    [
        ({"difference_mm": -0.024, "move_mm": -0.015}, ("judgement", "difference_mm"), "+0.0240 mm"),
        ({"difference_mm": 0.0261, "move_mm": 0.0163}, ("judgement", "difference_mm"), "tailstock collar less headstock"),
        ({"move_mm": -0.015}, ("judgement", "move_mm"), "+0.0150 mm, more than 0 toward the tool"),
        ({"move_mm": 0.0201}, ("judgement", "move_mm"), "not what the difference gives"),
        ({"verdict": "inside"}, ("judgement", "verdict"), "does not agree"),
        ({"limit_mm": 0.024}, ("judgement", "verdict"), "does not agree"),
        ({"second_station_mm": 301.0, "move_mm": 0.0133}, ("second_station_mm",), "beyond the tailstock centre"),
        ({"mid_station_mm": 30.0}, ("mid_station_mm",), "between the two collars"),
        ({"mid_station_mm": 270.0}, ("mid_station_mm",), "between the two collars"),
        ({"moves": [MOVE]}, ("moves",), "belong to no test as found"),
        ({"headstock_centre": "hard dead"}, ("headstock_centre_runout_mm",), "never runs quite true"),
        ({"collar_diameter_after_mm": 68.841}, ("collar_diameter_after_mm",), "69.842 mm"),
        ({"operator": "  "}, ("operator",), "is empty"),
        ({"operator": "x" * 121}, ("operator",), "longer than 120"),
        ({"remarks": "x" * 2001}, ("remarks",), "longer than 2000"),
        ({"lathe": "Lathe\n2"}, ("lathe",), "cannot be printed"),
        ({"remarks": "bell \a"}, ("remarks",), "cannot be printed"),
        ({"date_time": "5.1.2026"}, ("date_time",), "no date"),
        ({"date_time": "2026-02-30"}, ("date_time",), "no date"),
        ({"date_time": "20260105"}, ("date_time",), "no date"),
        ({"date_time": "2026-01-05T09:40:00.5"}, ("date_time",), "no date"),
        ({"date_time": "20260105T094000"}, ("date_time",), "no date"),
        ({"remarks": "\ud800"}, ("remarks",), "cannot be printed"),
        ({"quill_extension_mm": -0.5}, ("quill_extension_mm",), "too small"),
        ({"date_time": "2026-01-05T09:40+01:00"}, ("date_time",), "time zone"),
        ({"state": "found"}, ("state",), "not one of the choices"),
        ({"room_degc": float("nan")}, ("room_degc",), "not a finite number"),
        ({"room_degc": "warm"}, ("room_degc",), "not a number"),
        ({"room_degc": True}, ("room_degc",), "not a number"),
        ({"spring_passes": -1}, ("spring_passes",), "too small"),
        ({"spring_passes": 1.5}, ("spring_passes",), "not a whole number"),
        ({"speed_per_min": 0}, ("speed_per_min",), "too small"),
        ({"move_uncertainty_mm": 0}, ("judgement", "move_uncertainty_mm"), "too small"),
        ({"quill_clamped": "maybe"}, ("quill_clamped",), "neither yes nor no"),
        ({"level": 3}, ("level",), "not a list"),
        ({"chuck_test": 3}, ("chuck_test",), "not a group of values"),
        ({"tool": 3}, ("tool",), "is not text"),
        ({"colour": "red"}, ("colour",), "there is no 'colour'"),
    ],
)  # fmt: skip
def test_a_contradiction_or_slip_is_named_at_its_place(changes: dict[str, Any], path: tuple[str, ...], says: str) -> None:
    found = fault(**changes)
    assert found.path == path
    assert says in found.wrong
    assert found.do


def test_values_on_the_edge_are_taken() -> None:
    assert record(difference_mm=0.0259, move_mm=0.0162).judgement.difference_mm == 0.0259
    assert record(move_mm=0.0199).judgement.move_mm == 0.0199
    assert record(collar_diameter_after_mm=68.843).collar_diameter_after_mm == 68.843
    assert record(operator="x" * 120).operator == "x" * 120
    assert len(record(remarks="x" * 2000).remarks or "") == 2000
    assert record(spring_passes=0, quill_extension_mm=0).spring_passes == 0
    assert record(limit_mm=0.0239).judgement.verdict == "outside"
    assert record(limit_mm=0.024, verdict="inside").judgement.verdict == "inside"
    assert record(second_station_mm=300.0, move_mm=0.0133).second_station_mm == 300.0
    assert record(remarks="two\nlines\tand a tab").remarks == "two\nlines\tand a tab"


def test_too_close_to_say_goes_with_any_difference() -> None:
    assert record(verdict="too close to say").judgement.verdict == "too close to say"


def test_stations_the_wrong_way_round_are_one_fault() -> None:
    assert fault(first_station_mm=270.0, second_station_mm=30.0).path == ("first_station_mm",)
    assert fault(first_station_mm=270.0).path == ("first_station_mm",)


def test_a_difference_far_too_large_for_the_formula_is_no_record() -> None:
    readings = [{"collar": "H", "said": "60 mm"}, {"collar": "T", "said": "70 mm"}]
    found = fault(readings=readings, difference_mm=10.0, move_mm=6.25, collar_diameter_after_mm=60.0)
    assert "cannot be judged" in found.wrong


@pytest.mark.parametrize("collar", ["H", "T"])
def test_a_test_needs_a_kept_reading_of_both_collars(collar: str) -> None:
    readings = [{**one, "rejected": "burr"} if one["collar"] == collar else one for one in CONTENT["readings"]]
    assert fault(readings=readings).wrong == f"hold none of collar {collar} that was kept"


def test_a_middle_reading_needs_its_station() -> None:
    assert fault(readings=[*CONTENT["readings"], {"collar": "M", "said": "69.85 mm"}]).path == ("mid_station_mm",)


def test_stations_of_the_chuck_test_stand_in_order() -> None:
    test = {**EVERYTHING["chuck_test"], "near_station_mm": 170.0}
    assert fault(chuck_test=test).path == ("chuck_test", "near_station_mm")


def test_the_level_is_told_over_a_metre() -> None:
    assert Record.model_validate({**EVERYTHING}).level[0].mm_per_m == pytest.approx(0.02)


def test_the_id_follows_from_the_content_alone() -> None:
    assert record().log_id == record().log_id
    assert record().log_id != record(operator="KL").log_id
    assert Record.model_validate_json(record().body()) == record()
    assert record().log_id[0] == "r"
    assert len(record().log_id) == 17


def test_moments_have_one_form() -> None:
    assert moment("2026-01-05 09:40") == moment("2026-01-05T09:40:00") == "2026-01-05T09:40"
    assert moment(" 2026-01-05 ") == "2026-01-05"
    assert moment("2026-01-05T09:40:30") == "2026-01-05T09:40:30"


def test_a_record_cannot_be_changed() -> None:
    with pytest.raises(ValidationError):
        record().lathe = "another"  # type: ignore[misc]


def test_a_strike_needs_its_reason() -> None:
    with pytest.raises(ValidationError):
        Strike(number=1, reason="", initials="FB", date_time="2026-01-05")
