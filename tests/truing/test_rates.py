"""Simulated visits: how often the verdict is wrong, and whether the traps of the trade are caught."""

from functools import cache
from pathlib import Path
from random import Random

import pytest

from tailtrue.truing.typed import read_lists
from tailtrue.truing.visit import judge_visit

from .rates import (
    VISITS,
    Ends,
    Rates,
    Visit,
    against,
    bar,
    before_of,
    case,
    judged,
    lathe_with,
    measure,
    out_of_limits,
    read,
    sessions,
    slipped,
    table,
    two_rounds,
    visits,
)  # fmt: skip

PAGE = Path(__file__).parents[2] / "docs" / "at-the-lathe.md"
_TRAPS = 300


@cache
def rates() -> Rates:
    return measure()


@cache
def ends() -> Ends:
    return sessions()


def test_hardly_a_session_ends_in_limits_while_it_is_out() -> None:
    found = ends()
    assert found.sessions == VISITS
    assert found.ended_in > 0.9 * found.sessions
    assert found.wrongly <= 0.05 * found.ended_in


def test_at_least_ten_thousand_visits_are_judged_on_both_sides_of_the_limit() -> None:
    found = rates()
    assert found.outside + found.inside == VISITS >= 10_000
    assert min(found.outside, found.inside) > VISITS // 3


def test_hardly_a_visit_out_of_limits_passes_and_hardly_one_within_fails() -> None:
    found = rates()
    assert found.wrong_pass_share <= 0.05
    assert found.wrong_fail_share <= 0.05


def test_right_at_the_limit_no_more_than_one_in_twenty_is_judged_to_the_wrong_side() -> None:
    assert rates().wrong_at_limit_share <= 0.05


def test_the_verdict_is_not_kept_safe_by_saying_nothing() -> None:
    found = rates()
    assert found.unclear < 0.4 * VISITS


def test_the_rates_in_the_how_to_are_those_measured() -> None:
    text = PAGE.read_text(encoding="utf-8")
    found = "\n".join(table(rates(), ends()))
    assert found in text, found


def typed(visit: Visit) -> tuple[str, str]:
    return ", ".join(f"{one:.3f} mm" for one in visit.at_head), ", ".join(f"{one:.3f} mm" for one in visit.at_tail)


def test_a_whole_visit_says_the_same_as_the_facts_by_themselves() -> None:
    for one in visits(300, seed=7):
        found, alone = judge_visit(case(), read_lists(*typed(one)), kind="micrometer", also=None), judged(one)
        for name in ("visit.difference", "visit.uncertainty", "visit.toward_tool"):
            assert found.case.value(name) == pytest.approx(alone[name], abs=1e-12)
        assert found.case.value("visit.verdict") == alone["visit.verdict"]


def test_the_move_that_is_said_brings_the_simulated_lathe_into_limits() -> None:
    hand = Random(3)
    for _ in range(200):
        lathe = lathe_with(out_of_limits(hand))
        there = lathe.moved_toward_tool(judged(read(lathe, hand))["visit.toward_tool"])
        head, tail = there.diameters_between_centres(bar().span, (bar().head, bar().tail), 34.7)
        assert abs(tail - head) < bar().limit


def bars(first: Visit, second: Visit, **also: object) -> list[str]:
    said = {f"visit.{name}": value for name, value in also.items()}
    found = judge_visit(
        case(), read_lists(*typed(second)), also={**before_of(first).facts(as_found=False), **said}, kind="micrometer"
    )
    return [one.id for one in found.remarks if one.bars_move]


def test_every_move_the_wrong_way_is_caught() -> None:
    hand = Random(11)
    pairs = [two_rounds(hand, lambda _: -1.0) for _ in range(_TRAPS)]
    assert all(against(*pair)["worse"] for pair in pairs)
    assert all("wrong-way" in bars(*pair, state="as-left") for pair in pairs[:60])


def test_every_half_hearted_move_the_wrong_way_is_caught() -> None:
    hand = Random(12)
    assert all(against(*two_rounds(hand, lambda h: -h.uniform(0.6, 1)))["worse"] for _ in range(_TRAPS))


def turned(visit: Visit) -> Visit:
    return Visit(visit.truth, visit.at_tail, visit.at_head)


def test_every_pair_of_readings_at_the_wrong_ends_is_caught() -> None:
    hand = Random(13)
    for place in range(_TRAPS):
        lathe = lathe_with(out_of_limits(hand))
        first = read(lathe, hand)
        # The same skim read again, each reading with its own scatter.
        again = turned(
            Visit(
                first.truth,
                tuple(round(hand.gauss(first.at_head[0], 0.0015), 3) for _ in range(2)),
                tuple(round(hand.gauss(first.at_tail[0], 0.0015), 3) for _ in range(2)),
            )
        )
        assert against(first, again)["swapped"]
        if place < 60:
            assert "ends-swapped" in bars(first, again)


def test_every_pair_at_the_wrong_ends_after_a_fresh_skim_is_caught() -> None:
    hand = Random(14)
    for place in range(_TRAPS):
        first, second = two_rounds(hand, lambda _: 0.0)
        found = against(first, turned(second))
        assert found["turned_round"] or found["swapped"] or found["grown"]
        if place < 60:
            for state in ("as-found", "as-left"):
                assert set(bars(first, turned(second), state=state)) & {
                    "went-past", "turned-round-unmoved", "ends-swapped", "collar-grown",
                }  # fmt: skip


def test_every_slip_of_the_thimble_is_caught() -> None:
    """On lathes in line and far out alike: near a turn it is known as one, else it is too much to be moved unread."""
    hand = Random(15)
    far = case().value("limit.far_out")
    for place in range(_TRAPS):
        visit = read(lathe_with(hand.uniform(-6, 6) * bar().limit), hand)
        slip = hand.choice((-0.5, -0.25, 0.25, 0.5, 1.0))
        one = Visit(visit.truth, visit.at_head, (visit.at_tail[0] + slip, visit.at_tail[1]))
        both = Visit(visit.truth, visit.at_head, tuple(size + slip for size in visit.at_tail))
        assert slipped(one)
        assert slipped(both) or abs(judged(both)["visit.difference"]) > far
        if place < 60:
            alone = [
                judge_visit(case(), read_lists(*typed(trapped)), kind="micrometer", also=None) for trapped in (one, both)
            ]
            assert all(found.barred for found in alone)


def test_a_bar_that_was_not_skimmed_after_the_move_is_caught() -> None:
    hand = Random(16)
    for place in range(_TRAPS):
        first = read(lathe_with(out_of_limits(hand)), hand)
        again = Visit(
            first.truth,
            tuple(round(hand.gauss(first.at_head[0], 0.0015), 3) for _ in range(2)),
            tuple(round(hand.gauss(first.at_tail[0], 0.0015), 3) for _ in range(2)),
        )
        assert not against(first, again)["skimmed"]
        if place < 60:
            assert bars(first, again, state="as-left") == ["not-skimmed"]


def test_honest_rounds_are_left_alone() -> None:
    """Moves that achieve most of their aim are stopped by no remark on the visit before."""
    hand = Random(17)
    stopped = 0
    for place in range(_TRAPS):
        first, second = two_rounds(hand, lambda h: h.uniform(0.7, 1.1))
        found = against(first, second)
        assert not found["worse"]
        assert not found["swapped"]
        assert not found["grown"]
        assert found["skimmed"]
        if place < 100:
            stopped += bool(bars(first, second, state="as-left"))
    assert stopped <= 2
