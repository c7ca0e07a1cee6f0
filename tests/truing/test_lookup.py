"""The paper of a bar: what its table says is what readings with that difference would be told."""

from pathlib import Path

import pytest

from simulated_lathe import SimulatedLathe
from tailtrue.advise import advise
from tailtrue.case import Case
from tailtrue.errors import FactsWrong, report
from tailtrue.facts import Fact
from tailtrue.log.fields import record_catalogue
from tailtrue.record_sheet import RecordSheet
from tailtrue.render.words import directions, say
from tailtrue.truing.lookup import record_sheet
from tailtrue.truing.typed import read_lists
from tailtrue.truing.visit import judge_visit

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"
FIELDS = {fact.key: fact.spec for fact in record_catalogue().facts.values()}
METRIC = advise(EXAMPLES / "fernhill" / "job.toml").case
INCH = advise(EXAMPLES / "quarry-road" / "job.toml").case


def changed(case: Case, **facts: object) -> Case:
    named = {name.replace("__", "."): value for name, value in facts.items()}
    return case.with_said({name: Fact(case.knowledge.catalogue[name], value) for name, value in named.items()})


def without(*names: str, **facts: object) -> Case:
    """A crib of its own given facts, in which nobody said some of them, and others are changed."""
    said = {name: fact for name, fact in METRIC.known().items() if fact.spec.comes == "given" and name not in names}
    return changed(Case(METRIC.knowledge, said), **facts)


def sheet(case: Case) -> RecordSheet:
    return record_sheet(case, FIELDS)


def told(texts: object) -> str:
    return " ".join(say(text, "metric") for text in texts)  # type: ignore[attr-defined]


@pytest.mark.parametrize("case", [METRIC, INCH], ids=["metric", "inch"])
def test_the_table_never_tells_more_than_readings_would(case: Case) -> None:
    """The table goes by the doubt that is planned for; a visit by its own, which is never less."""
    middle = 65.0 if case is METRIC else 45.0
    for row in sheet(case).rows:
        readings = f"{middle + row.difference.value:.5f} mm, {middle + row.difference.value:.5f} mm"
        found = judge_visit(
            case,
            read_lists(f"{middle:.5f} mm, {middle:.5f} mm", readings),
            also={"visit.read_twice": True},
            kind="micrometer",
        )
        if row.do == "leave":
            assert found.advice != "move"
        if row.do != "move":
            assert row.move is None
        else:
            assert row.move is not None
            assert row.move.value == pytest.approx(found.case.value("visit.toward_tool"), rel=1e-9)
        if found.advice.startswith("leave"):
            assert row.do != "move"  # the table rounds to the safe side


@pytest.mark.parametrize("case", [METRIC, INCH], ids=["metric", "inch"])
def test_leave_comes_before_read_again_and_that_before_move(case: Case) -> None:
    acts = [row.do for row in sheet(case).rows]
    assert acts == sorted(acts, key=["leave", "again", "move"].index)
    assert set(acts) == {"leave", "again", "move"}


def test_the_bar_as_it_was_made_counts() -> None:
    made = changed(METRIC, job__bar_between_points=300.0, job__head_from_point=30.0, job__tail_from_point=270.0)
    found = sheet(made)
    # alignment by first order: 0.04 / 2 x 300 / 240
    by_difference = {round(row.difference.value, 3): row.move for row in found.rows}
    move = by_difference[0.04]
    assert move is not None
    assert move.value == pytest.approx(0.025, abs=1e-9)
    assert found.scales.factor.value == pytest.approx(0.625, abs=1e-9)
    assert "0.625" in told(found.scales_read)


def test_a_tool_behind_turns_both_directions_round() -> None:
    front, rear = directions(sheet(METRIC)), directions(sheet(changed(METRIC, lathe__tool_side="rear")))
    assert [way for _, way in front] == ["move the tailstock toward you.", "move the tailstock away from you."]
    assert [way for _, way in rear] == ["move the tailstock away from you.", "move the tailstock toward you."]


def test_a_tailstock_without_screws_is_told_to_stay() -> None:
    assert "Move nothing, force nothing" in told(sheet(changed(METRIC, lathe__set_over="none")).safety)
    assert "Move nothing" not in told(sheet(METRIC).safety)


def test_steps_are_those_of_the_instrument() -> None:
    fine = [row.difference.value for row in sheet(METRIC).rows]
    assert fine[:3] == pytest.approx([0.002, 0.004, 0.006])
    coarse = sheet(without("crib.indicator_division", crib__outside_micrometers=(), crib__caliper_resolution=0.02))
    assert [row.difference.value for row in coarse.rows[:3]] == pytest.approx([0.02, 0.04, 0.06])
    inch = [row.difference.value / 25.4 for row in sheet(INCH).rows]
    assert inch[:2] == pytest.approx([0.0001, 0.0002])


def test_a_caliper_leaves_alone_what_it_cannot_tell_and_claims_nothing() -> None:
    found = sheet(without("crib.indicator_division", crib__outside_micrometers=(), crib__caliper_resolution=0.02))
    assert found.scales.again is None
    assert {row.do for row in found.rows} == {"leave", "move"}
    unsure = METRIC.with_said({}).value("align.uncertainty")
    assert found.scales.leave.value > unsure
    assert all(row.difference.value <= found.scales.leave.value for row in found.rows if row.do == "leave")
    assert "claim nothing" in told(found.read)
    assert "in limits" not in told(found.read)


def test_without_any_instrument_there_is_no_table() -> None:
    bare = without("crib.caliper_resolution", "crib.indicator_division", crib__outside_micrometers=())
    with pytest.raises(FactsWrong) as wrong:
        sheet(bare)
    assert "in fine steps" in report(wrong.value)


def test_every_field_on_the_sheet_is_one_of_the_log() -> None:
    rows = METRIC.knowledge.tables["record/fields"].rows
    assert {row.text("name") for row in rows} <= set(FIELDS)
    for row in rows:
        assert not row.text("designation") or row.text("designation") in METRIC.knowledge.catalogue
    found = sheet(METRIC)
    assert set(found.places) == {"set-up", "skim", "measuring", "visit", "moves", "end"}
    assert dict(found.known)["lathe"] == ("Lathe 2",)
    quill = next(place for place in found.places["set-up"] if place.label == "how far the quill stands out")
    assert say(quill.planned, "metric").startswith("30.0")


def test_the_move_has_the_doubt_of_the_difference_times_the_factor() -> None:
    made = changed(METRIC, job__bar_between_points=300.0, job__head_from_point=30.0, job__tail_from_point=270.0)
    assert made.value("lookup.move_uncertainty") == pytest.approx(0.625 * made.value("align.uncertainty"))


def test_collars_so_close_that_the_limit_drowns_in_the_doubt_get_no_verdict() -> None:
    # The limit over 20 mm is 0.0013 mm, less than what the micrometer can tell.
    close = changed(METRIC, job__bar_between_points=300.0, job__head_from_point=140.0, job__tail_from_point=160.0)
    found = sheet(close)
    assert {row.do for row in found.rows} == {"leave", "move"}
    assert max(row.difference.value for row in found.rows if row.do == "leave") <= close.value("align.uncertainty")
    assert "claim nothing" in told(found.read)


@pytest.mark.parametrize(("tool_side", "larger", "smaller"), [("front", "away from you", "toward you"),
                                                             ("rear", "toward you", "away from you")])  # fmt: skip
def test_a_lathe_without_screws_is_told_where_its_centre_stands_and_no_move(
    tool_side: str, larger: str, smaller: str
) -> None:
    """The centre stands on the side that a move would have to leave."""
    fixed = sheet(changed(METRIC, lathe__set_over="none", lathe__tool_side=tool_side))
    usual = sheet(changed(METRIC, lathe__tool_side=tool_side))
    assert [text for _, text in directions(fixed)] == [
        f"its centre stands off the line {larger}.", f"its centre stands off the line {smaller}."
    ]  # fmt: skip
    assert smaller in directions(usual)[0][1]
    sideways = 1 if larger == "toward you" else -1
    lathe = SimulatedLathe(tool_in_front=tool_side == "front").moved(0.02 * sideways)
    near, far = lathe.diameters_between_centres(300, [30, 270])
    assert far > near
    assert "moves" not in fixed.places
    assert not any(
        place.kind in ("way", "moves") or "move" in place.label for part in fixed.places.values() for place in part
    )
    said = told((*fixed.read, *fixed.scales_read, *fixed.fill, *fixed.verify))
    for word in ("The move", "you move", "leave the tailstock alone", "bring the tailstock", "screws", "the last move"):
        assert word not in said
    assert "how far the centre itself stands off the line" in said
    assert len(fixed.read) == len(usual.read)
    assert [row.move for row in fixed.rows] == [row.move for row in usual.rows]


def test_by_indicator_the_table_has_the_steps_and_the_factor_of_diameters() -> None:
    found = sheet(changed(METRIC, crib__outside_micrometers=(), crib__indicator_division=0.002))
    by_micrometer = sheet(METRIC)
    assert [row.difference.value for row in found.rows[:3]] == pytest.approx([0.002, 0.004, 0.006])
    moves = {row.difference.value: row.move.value for row in by_micrometer.rows if row.move is not None}
    same = [row for row in found.rows if row.move is not None and row.difference.value in moves]
    assert same
    assert all(row.move is not None and row.move.value == pytest.approx(moves[row.difference.value]) for row in same)
