"""One visit judged on the shipped examples: the move, its way, the verdict, and what keeps the tailstock where it is."""

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tailtrue.advise import advise
from tailtrue.case import Case
from tailtrue.errors import ReadingsWrong, report
from tailtrue.facts import Fact
from tailtrue.render.words import say
from tailtrue.truing.typed import read_lists
from tailtrue.truing.visit import Visit, judge_visit

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"
METRIC = advise(EXAMPLES / "fernhill" / "job.toml").case
INCH = advise(EXAMPLES / "quarry-road" / "job.toml").case


def visit(head: str, tail: str, order: str = "", case: Case = METRIC, **also: object) -> Visit:
    more = {f"visit.{name}": value for name, value in also.items()}
    kind = str(more.pop("visit.kind", "micrometer"))
    return judge_visit(case, read_lists(head, tail, order), kind, more)


def changed(case: Case, **facts: object) -> Case:
    return case.with_said(
        {
            name.replace("__", "."): Fact(case.knowledge.catalogue[name.replace("__", ".")], value)
            for name, value in facts.items()
        }
    )


def told(found: Visit) -> str:
    return "\n".join(
        [*(say(one.text, "metric") for one in found.remarks), *(say(one.text, "metric") for one in found.lines)]
    )


def test_the_move_is_the_difference_over_two_times_the_span_over_the_spacing() -> None:
    found = visit("69.612 mm, 69.613 mm", "69.655 mm, 69.654 mm", "HTTH")
    span, head, tail = (found.case.value(f"truing.{name}") for name in ("span", "head_station", "tail_station"))
    assert found.case.value("visit.toward_tool") == pytest.approx(0.042 / 2 * span / (tail - head), rel=1e-9)
    assert found.case.value("visit.verdict") == "outside"
    assert found.advice == "move"
    assert found.remarks == ()


# Directions: Jones, Turning and Boring (1914), alignment of centres by trial cuts; US Coast Guard question no. 642.
@pytest.mark.parametrize(
    ("side", "head", "tail", "way"),
    [("front", "69.61", "69.65", "toward-you"), ("front", "69.65", "69.61", "away-from-you"),
     ("rear", "69.61", "69.65", "away-from-you"), ("rear", "69.65", "69.61", "toward-you")],
)  # fmt: skip
def test_the_tailstock_goes_toward_the_tool_when_its_end_is_larger(side: str, head: str, tail: str, way: str) -> None:
    found = visit(f"{head}0 mm, {head}0 mm", f"{tail}0 mm, {tail}0 mm", case=changed(METRIC, lathe__tool_side=side))
    assert found.case.value("visit.way") == way
    assert way.replace("-", " ") in told(found)


def test_the_screw_that_must_give_way_comes_first() -> None:
    toward = told(visit("69.612 mm, 69.613 mm", "69.655 mm, 69.654 mm"))
    assert "Slacken the screw at the front of the base first, then push with the screw at the rear of the base" in toward
    away = told(visit("69.655 mm, 69.654 mm", "69.612 mm, 69.613 mm"))
    assert "Slacken the screw at the rear of the base first, then push with the screw at the front of the base" in away


def test_what_is_in_limits_is_left_alone() -> None:
    found = visit("69.612 mm, 69.613 mm", "69.615 mm, 69.616 mm")
    assert (found.case.value("visit.verdict"), found.advice) == ("inside", "leave-in-limits")
    assert "MOVE" not in told(found)


def test_what_is_near_the_limit_is_read_again_and_it_is_said_how_often() -> None:
    found = visit("69.6120 mm, 69.6130 mm", "69.6272 mm, 69.6282 mm")
    assert (found.case.value("visit.verdict"), found.advice) == ("too-close", "read-more")
    more = found.case.value("visit.more_readings")
    assert more >= 1
    again = 2 + int(more)
    settled = visit(", ".join(["69.6125 mm"] * again), ", ".join(["69.6277 mm"] * again))
    assert settled.case.value("visit.verdict") != "too-close"


def test_on_the_limit_itself_no_number_of_readings_helps() -> None:
    limit = visit("69.612 mm", "69.613 mm").case.value("truing.limit")
    found = visit("60.0000 mm, 60.0000 mm", f"{60 + limit:.4f} mm, {60 + limit:.4f} mm")
    assert found.advice == "read-more"
    assert found.case.value("visit.more_readings") is None
    assert "More readings with this instrument cannot settle it" in told(found)


def test_a_tailstock_without_screws_is_not_told_to_move() -> None:
    found = visit("69.612 mm, 69.613 mm", "69.655 mm, 69.654 mm", case=changed(METRIC, lathe__set_over="none"))
    assert found.advice == "no-way"
    assert "MOVE THE TAILSTOCK" not in told(found)


@pytest.mark.parametrize("turns", [-2, -1, 1, 2])
def test_a_turn_of_the_thimble_bars_the_move(turns: int) -> None:
    tail = 65.012 + 0.5 * turns
    found = visit("65.010 mm, 65.011 mm", f"{tail:.3f} mm, {tail:.3f} mm")
    assert [one.id for one in found.remarks if one.bars_move] == ["thimble-turn-between-collars", "far-out"]
    assert found.advice == "read-again"
    assert found.part("do") == ()
    assert visit("65.010 mm, 65.011 mm", f"{tail:.3f} mm, {tail:.3f} mm", read_twice=True).advice == "move"


def test_a_turn_of_an_inch_thimble_bars_the_move() -> None:
    found = visit("1.9012 in, 1.9013 in", "1.8763 in, 1.8762 in", case=INCH)
    assert "thimble-turn-between-collars" in [one.id for one in found.remarks]
    found = visit("1.9012 in, 1.9263 in", "1.8999 in, 1.8998 in", case=INCH)
    assert "thimble-turn-on-a-collar" in [one.id for one in found.remarks]


@pytest.mark.parametrize("place", range(4))
def test_whichever_reading_is_a_turn_off_is_found(place: int) -> None:
    read = ["65.010 mm", "65.011 mm", "65.010 mm", "65.012 mm"]
    read[place] = "65.511 mm"
    found = visit(", ".join(read), "65.022 mm, 65.023 mm, 65.022 mm, 65.023 mm")
    assert "thimble-turn-on-a-collar" in [one.id for one in found.remarks]


def test_a_wild_first_reading_hides_no_turn_among_the_others() -> None:
    # The first stands neither half turns nor whole ones from any other; two of the others stand one apart.
    found = visit("65.170 mm, 65.010 mm, 65.011 mm, 65.010 mm, 65.511 mm", "65.022 mm, 65.023 mm")
    assert "thimble-turn-on-a-collar" in [one.id for one in found.remarks]


def test_what_is_far_out_is_read_twice_before_it_is_moved() -> None:
    # One collar a turn low on a lathe that is out by itself: no longer near a turn.
    readings = "69.110 mm, 69.112 mm", "69.655 mm, 69.654 mm"
    found = visit(*readings)
    assert [one.id for one in found.remarks if one.bars_move] == ["far-out"]
    assert found.part("do") == ()
    stands = visit(*readings, read_twice=True)
    assert stands.advice == "move"
    assert "Bring it near first" in told(stands)


def test_a_slip_on_one_collar_is_not_excused_by_reading_twice() -> None:
    found = visit("65.010 mm, 65.511 mm", "65.022 mm, 65.023 mm", read_twice=True)
    assert [one.id for one in found.remarks if one.bars_move] == ["thimble-turn-on-a-collar"]


def test_wide_scatter_bars_the_move() -> None:
    found = visit("65.010 mm, 65.030 mm", "65.080 mm, 65.082 mm")
    assert "readings-scatter" in [one.id for one in found.remarks if one.bars_move]


def test_a_warm_collar_bars_the_move() -> None:
    found = visit("65.010 mm, 65.011 mm", "65.080 mm, 65.082 mm", head_temperature=20.0, tail_temperature=26.0)
    assert "collar-warm" in [one.id for one in found.remarks if one.bars_move]
    same = visit("65.010 mm, 65.011 mm", "65.080 mm, 65.082 mm", head_temperature=20.0, tail_temperature=20.5)
    assert "collar-warm" not in [one.id for one in same.remarks]


def test_collars_that_still_shrink_bar_the_move() -> None:
    cooling = "65.020 mm, 65.011 mm, 65.008 mm, 64.999 mm", "65.077 mm, 65.074 mm, 65.065 mm, 65.062 mm"
    found = visit(*cooling, "HTTHHTTH")
    assert "collars-cooling" in [one.id for one in found.remarks if one.bars_move]
    assert "read less from one reading to the next" in told(found)


def test_an_order_that_lets_drift_in_is_remarked() -> None:
    assert "order-lets-drift-in" in [one.id for one in visit("65.01 mm, 65.01 mm", "65.08 mm, 65.08 mm", "HHTT").remarks]
    assert "order-lets-drift-in" not in [one.id for one in visit("65.01 mm, 65.01 mm", "65.08 mm, 65.08 mm", "HTTH").remarks]


def test_a_caliper_gives_no_verdict() -> None:
    found = visit("65.01 mm, 65.02 mm", "65.12 mm, 65.13 mm", kind="caliper")
    assert found.case.value("visit.verdict") == "none"
    assert "never says that the tailstock is in line" in told(found)
    assert visit("65.01 mm, 65.02 mm", "65.03 mm, 65.02 mm", kind="caliper").advice == "leave-in-doubt"


def test_digits_of_a_caliper_from_a_micrometer_are_remarked() -> None:
    found = visit("65.01 mm, 65.01 mm", "65.08 mm, 65.08 mm")
    assert "coarse-digits" in [one.id for one in found.remarks]
    assert found.case.value("visit.uncertainty") > visit("65.010 mm, 65.010 mm", "65.080 mm, 65.080 mm").case.value(
        "visit.uncertainty"
    )


def test_readings_that_no_micrometer_reads_are_refused() -> None:
    with pytest.raises(ReadingsWrong) as wrong:
        visit("51.010 mm, 51.012 mm", "76.2 mm", case=changed(METRIC, job__collar_diameter=80.0))
    assert "65.01" not in report(wrong.value)


def test_collars_larger_than_their_stock_or_worn_out_are_refused() -> None:
    with pytest.raises(ReadingsWrong) as wrong:
        visit("75.010 mm", "49.010 mm")
    said = report(wrong.value)
    assert "head: 75.010 mm: is more than a collar of this bar can be" in said
    assert "tail: 49.010 mm: is less than" in said
    assert "nothing was recorded" in said


def test_the_bar_as_it_was_made_counts_when_it_was_measured() -> None:
    made = changed(METRIC, job__bar_between_points=300.0, job__head_from_point=30.0, job__tail_from_point=270.0)
    found = visit("69.842 mm, 69.842 mm", "69.866 mm, 69.866 mm", case=made)
    # alignment by first order: half of 0.024 x 300 / 240
    assert found.case.value("visit.toward_tool") == pytest.approx(0.015, abs=1e-9)


def test_a_lathe_that_must_not_run_is_said_so() -> None:
    found = visit("69.612 mm, 69.613 mm", "69.655 mm, 69.654 mm", case=changed(METRIC, lathe__stop="untested"))
    (one,) = (say(text, "metric") for text in found.mend)
    assert "stop" in one
    assert visit("69.612 mm, 69.613 mm", "69.655 mm, 69.654 mm").mend == ()


@settings(max_examples=60, deadline=None)
@given(st.integers(-150, 150), st.integers(0, 60))
def test_more_doubt_never_makes_a_pass(difference: int, wider: int) -> None:
    """Readings that scatter more never come out inside where closer ones with the same means did not."""

    def typed(middle: float, half: float) -> str:
        return f"{middle - half:.4f} mm, {middle + half:.4f} mm"

    close = visit(typed(65, 0), typed(65 + difference / 5000, 0), read_twice=True)
    wide = visit(typed(65, wider / 10000), typed(65 + difference / 5000, wider / 10000), read_twice=True)
    assert not (wide.case.value("visit.verdict") == "inside" and close.case.value("visit.verdict") != "inside")
    assert wide.case.value("visit.uncertainty") >= close.case.value("visit.uncertainty") - 1e-12


@settings(max_examples=60, deadline=None)
@given(st.integers(-100, 100))
def test_turning_the_bar_round_turns_the_move_round(difference: int) -> None:
    there = visit("65.000 mm, 65.000 mm", f"{65 + difference / 1000:.3f} mm, {65 + difference / 1000:.3f} mm")
    back = visit(f"{65 + difference / 1000:.3f} mm, {65 + difference / 1000:.3f} mm", "65.000 mm, 65.000 mm")
    assert there.case.value("visit.toward_tool") == pytest.approx(-back.case.value("visit.toward_tool"), abs=1e-12)
    assert there.case.value("visit.verdict") == back.case.value("visit.verdict")
