"""The clamp test, the bar turned end for end, and the third collar."""

from math import sqrt

import pytest
from scipy.stats import t as student

from simulated_lathe import SimulatedLathe
from tailtrue.case import Case
from tailtrue.errors import ReadingsWrong, TailtrueError, UsageError, report
from tailtrue.facts import Fact
from tailtrue.render.words import say
from tailtrue.truing.trials import Trial, judge_clamping, judge_reversal

from .rounds import FIRST, METRIC, barring, beside, next_visit

NO_COLLARS = {"head": "", "tail": "", "turned_head": "", "turned_tail": ""}
NO_INDICATOR = {"first": "", "turned": ""}


def changed(**facts: object) -> Case:
    names = {name.replace("__", "."): value for name, value in facts.items()}
    return METRIC.with_said({name: Fact(METRIC.knowledge.catalogue[name], value) for name, value in names.items()})


# Span 300, collars at 30 and 270: the bar of the worked example on the swap test.
BAR = changed(job__bar_between_points=300.0, job__head_from_point=30.0, job__tail_from_point=270.0)


def told(found: Trial) -> str:
    return "\n".join(say(line, "metric") for part in found.sections for line in part.lines).replace("\u00a0", " ")


def test_shift_and_scatter_of_clamping_follow_from_the_readings() -> None:
    found = judge_clamping(BAR, "0 mm, 0.010 mm, 0.002 mm, 0.012 mm, 0 mm, 0.012 mm, 0.001 mm, 0.010 mm", "released")
    # Shifts 10, 10, 12, 9 um: mean 10.25, standard deviation 1.258 (JCGM 100:2008, experimental standard deviation).
    assert found.case.value("clamp.shift") == pytest.approx(0.01025)
    step = 0.001 / sqrt(3) if METRIC.value("crib.indicator_division") == 0.002 else None
    assert step is not None
    factor = student.ppf(0.975, 3)
    shift = factor * sqrt(0.0012583**2 + 2 * step**2) / 2
    assert found.case.value("clamp.shift_doubt") == pytest.approx(shift, rel=1e-3)
    # Clamped 10, 12, 12, 10: standard deviation 1.155.
    assert found.case.value("clamp.scatter") == pytest.approx(factor * sqrt(0.0011547**2 + step**2), rel=1e-3)
    assert "into the indicator by 0.010 mm" in told(found)
    assert "0.010 mm (0.0004 in) lower than the reading wanted" in told(found)


def test_a_shift_away_from_the_indicator_is_aimed_off_the_other_way() -> None:
    found = judge_clamping(BAR, "0 mm, -0.010 mm, 0 mm, -0.010 mm, 0 mm, -0.010 mm, 0 mm, -0.010 mm", "released")
    assert "away from the indicator by 0.010 mm" in told(found)
    assert "higher than the reading wanted" in told(found)


@pytest.mark.parametrize(
    ("clamped", "verdict"),
    [((0, 0, 0, 0, 0), "good"), ((0, 3, 0, 1, 2), "fair"), ((0, 8, -6, 5, -3), "poor")],
)
def test_clamping_is_held_against_what_the_limit_allows_the_centre(clamped: tuple[int, ...], verdict: str) -> None:
    rows = ", ".join(f"0 mm, {one / 1000:.3f} mm" for one in clamped)
    found = judge_clamping(BAR, rows, "released")
    # Limit of 0.020 over 300 on 240: 0.016; on the centre 0.016 / 2 x 300 / 240 = 0.010.
    assert found.case.value("lookup.limit_move") == pytest.approx(0.010)
    assert found.case.value("clamp.verdict") == verdict
    assert ("STOP ADJUSTING" in told(found)) is (verdict == "poor")


def test_a_coarse_indicator_is_not_taken_for_a_loose_clamp() -> None:
    coarse = BAR.with_said({"crib.indicator_division": Fact(BAR.knowledge.catalogue["crib.indicator_division"], 0.01)})
    steady = ", ".join(["0 mm, 0 mm"] * 5)
    found = judge_clamping(coarse, steady, "released")
    assert found.case.value("clamp.verdict") == "cannot-say"
    # Half a division, flat: 0.005 / root 3, times t for four degrees of freedom.
    assert found.case.value("clamp.least_shown") == pytest.approx(student.ppf(0.975, 4) * 0.005 / sqrt(3))
    assert "CANNOT SAY" in told(found)
    assert "STOP ADJUSTING" not in told(found)
    assert judge_clamping(BAR, steady, "released").case.value("clamp.verdict") == "good"
    loose = ", ".join(f"0 mm, {one / 1000:.3f} mm" for one in (0, 20, -20, 20, -20))
    assert judge_clamping(coarse, loose, "released").case.value("clamp.verdict") == "poor"


def test_readings_of_nought_alone_do_not_tell_the_division() -> None:
    case = BAR.with_said({"crib.indicator_division": Fact(BAR.knowledge.catalogue["crib.indicator_division"], None)})
    with pytest.raises(TailtrueError, match="is not said"):
        judge_clamping(case, "0 mm, 0 mm, 0 mm, 0 mm", "released")
    # Written to a hundredth, whatever the division.
    assert judge_clamping(BAR, "0 mm, 0.01 mm, 0 mm, 0.01 mm", "released").case.value("clamp.step") == 0.01


def test_what_is_read_clamped_before_the_first_release_belongs_to_no_cycle() -> None:
    begun = judge_clamping(BAR, "0.5 mm, 0 mm, 0.010 mm, 0.001 mm, 0.011 mm", "clamped")
    plain = judge_clamping(BAR, "0 mm, 0.010 mm, 0.001 mm, 0.011 mm", "released")
    for name in ("clamp.shift", "clamp.scatter", "clamp.cycles"):
        assert begun.case.value(name) == plain.case.value(name)
    assert "Five cycles tell much more than 2" in told(plain)


@pytest.mark.parametrize(
    ("text", "begins", "says"),
    [
        ("0 mm, 0.004 mm", "released", "does not hold whole cycles"),
        ("0 mm, 0.004 mm, 0 mm", "released", "does not hold whole cycles"),
        ("0 mm, 0.004 mm, 0 mm, 0.004 mm", "clamped", "does not hold whole cycles"),
        ("", "released", "has no reading"),
        ("0 mm, 0.004, 0 mm, 0.004 mm", "released", "has no unit"),
        ("0 mm, 0,004 mm, 0 mm, 0.004 mm", "released", "the decimal mark must be a point"),
        ("0 mm, 0.004 mm, 0 mm, 0.004 mm", "loose", "is no state of the tailstock"),
    ],
)
def test_a_clamp_test_that_cannot_be_used_is_told(text: str, begins: str, says: str) -> None:
    with pytest.raises(TailtrueError) as wrong:
        judge_clamping(BAR, text, begins)
    assert says in report(wrong.value)


@pytest.mark.parametrize(
    "text",
    [
        "0 mm, 5 mm, 0 mm, 900 mm",
        "0 mm, 3.01 mm, 0 mm, 0.01 mm",
        "-2 mm, 0 mm, 1.01 mm, 0 mm",
        "0 in, 0.119 in, 0 in, 0 in",
    ],
)
def test_readings_farther_apart_than_a_clamp_can_move_a_quill_are_refused(text: str) -> None:
    with pytest.raises(ReadingsWrong) as wrong:
        judge_clamping(BAR, text, "released")
    assert "lie more than 3.0 mm (0.11 in) apart" in report(wrong.value).replace("\u00a0", " ")


def test_readings_that_lie_just_so_far_apart_are_judged() -> None:
    assert judge_clamping(BAR, "0 mm, 3 mm, 0 mm, 0.01 mm", "released").case.value("clamp.verdict") == "poor"


def by_indicator(first: str, turned: str, side: str = "front", case: Case = BAR) -> Trial:
    return judge_reversal(case, NO_COLLARS, {"first": first, "turned": turned}, side)


def test_the_indicator_parts_lathe_from_bar() -> None:
    # Worked example, derived: +18 and +6 um are 12 of the lathe and 6 of the bar; 12 x 300 / 240 = 15 um at the centre.
    found = by_indicator("0 mm, 0.018 mm", "0 mm, 0.006 mm")
    value = found.case.value
    assert value("reverse.lathe") == pytest.approx(0.012)
    assert value("reverse.bar") == pytest.approx(0.006)
    assert value("reverse.move") == pytest.approx(0.015)
    # One division of 0.002 as half width of one reading, flat: 2 x 0.002 / root 3.
    assert value("reverse.indicator_doubt") == pytest.approx(0.004 / sqrt(3))
    assert value("reverse.move_doubt") == pytest.approx(0.005 / sqrt(3))
    assert "move of the tailstock away from you by 0.015 mm" in told(found)


@pytest.mark.parametrize("tool", ["front", "rear"])
@pytest.mark.parametrize(("side", "sign", "way"), [("front", 1, "away-from-you"), ("front", -1, "toward-you"),
                                                   ("rear", 1, "toward-you"), ("rear", -1, "away-from-you")])  # fmt: skip
def test_the_way_hangs_on_the_side_of_the_indicator_not_on_that_of_the_tool(
    tool: str, side: str, sign: int, way: str
) -> None:
    case = BAR.with_said({"lathe.tool_side": Fact(BAR.knowledge.catalogue["lathe.tool_side"], tool)})
    found = by_indicator(f"0 mm, {sign * 0.018} mm", f"0 mm, {sign * 0.006} mm", side, case)
    assert found.case.value("reverse.way") == way


def test_a_part_of_the_lathe_within_its_doubt_moves_nothing() -> None:
    found = by_indicator("0 mm, 0.004 mm", "0 mm, -0.002 mm")
    assert "there is nothing to move" in told(found)
    assert "asks for a move" not in told(found)
    assert by_indicator("0 mm, 0.004 mm", "0 mm, -0.004 mm").case.value("reverse.way") == "nowhere"


def by_collars(turned_tail: str) -> Trial:
    collars = {"head": "69.512 mm, 69.513 mm", "tail": "69.536 mm, 69.537 mm",
               "turned_head": "69.412 mm, 69.413 mm", "turned_tail": turned_tail}  # fmt: skip
    return judge_reversal(BAR, collars, NO_INDICATOR, "")


def test_collars_that_show_the_same_both_ways_round_clear_the_bar() -> None:
    found = by_collars("69.438 mm, 69.439 mm")
    assert found.case.value("reverse.collars") == "agree"
    # 24 and 26 um by position.
    assert found.case.value("reverse.mean_difference") == pytest.approx(0.025)
    assert "THE BAR CAN BE TRUSTED" in told(found)


def test_collars_that_show_another_difference_turned_round_put_the_bar_in_doubt() -> None:
    found = by_collars("69.425 mm, 69.426 mm")
    assert found.case.value("reverse.collars") == "differ"
    assert found.case.value("reverse.change") == pytest.approx(0.011)
    assert "THE BAR IS IN DOUBT" in told(found)
    assert "THE BAR CAN BE TRUSTED" not in told(found)


def test_a_slip_of_the_thimble_in_one_of_them_is_refused() -> None:
    with pytest.raises(ReadingsWrong) as wrong:
        by_collars("69.938 mm, 69.438 mm")
    assert "the bar turned" in report(wrong.value)
    assert "turns of the thimble" in report(wrong.value)


@pytest.mark.parametrize(
    ("collars", "indicator", "side", "says"),
    [
        (NO_COLLARS, NO_INDICATOR, "", "there are no readings"),
        ({**NO_COLLARS, "head": "69.5 mm"}, NO_INDICATOR, "", "only one way round"),
        (NO_COLLARS, {"first": "0 mm, 0.01 mm", "turned": ""}, "front", "only one way round"),
        (NO_COLLARS, {"first": "0 mm, 0.01 mm", "turned": "0 mm, 0.01 mm"}, "", "only one way round"),
        (NO_COLLARS, {"first": "0 mm, 0.01 mm", "turned": "0 mm, 0.01 mm"}, "top", "is no side of the bar"),
    ],
)
def test_half_a_reversal_is_refused(
    collars: dict[str, str], indicator: dict[str, str], side: str, says: str
) -> None:  # fmt: skip
    with pytest.raises(UsageError) as wrong:
        judge_reversal(BAR, collars, indicator, side)
    assert says in report(wrong.value)


def test_an_indicator_needs_a_reading_at_each_end() -> None:
    with pytest.raises(ReadingsWrong, match="is not two readings"):
        by_indicator("0 mm, 0.01 mm, 0.02 mm", "0 mm, 0.01 mm")


@pytest.mark.parametrize(("middle", "said"), [(69.533, []), (69.545, ["bow"]), (69.522, ["bow"])])
def test_a_third_collar_off_the_line_of_the_others_bars_the_move(middle: float, said: list[str]) -> None:
    station = (METRIC.value("truing.head_station") + METRIC.value("truing.tail_station")) / 2
    found = next_visit(69.512, 69.554, state="as-found", middle_readings=(middle, middle), middle_station=station)
    # In the middle a plain taper gives the mean of both ends, 69.533.
    assert found.case.value("visit.bow_signed") == pytest.approx(middle - 69.533)
    assert barring(found) == said
    # Doubt: that of one collar times root (1 + 1/4 + 1/4).
    one = found.case.value("visit.uncertainty") / sqrt(2)
    assert found.case.value("visit.bow_uncertainty") == pytest.approx(one * sqrt(1.5))
    twice = next_visit(69.512, 69.554, FIRST, state="as-found", read_twice=True, middle_readings=(middle, middle),
                       middle_station=station)  # fmt: skip
    assert barring(twice) == []
    assert ("bow-stands" in beside(twice)) is bool(said)


def test_the_bow_is_said_to_be_beyond_the_tailstock() -> None:
    found = next_visit(69.512, 69.554, state="as-found", middle_readings=(69.545,), middle_station=185.9)
    text = next(say(one.text, "metric") for one in found.remarks if one.id == "bow")
    assert "No setting of the tailstock cures that" in text
    assert "is larger by" in text


@pytest.mark.parametrize("far", [False, True])
@pytest.mark.parametrize("tool_in_front", [True, False])
@pytest.mark.parametrize("offset", [0.03, -0.02])
def test_the_indicator_finds_the_tailstock_of_a_simulated_lathe(offset: float, tool_in_front: bool, far: bool) -> None:
    lathe = SimulatedLathe(offset=offset, tool_in_front=tool_in_front)

    def run(turned: bool) -> str:
        # A bar that is 0.02 thicker on the radius at its end B.
        def radius(z: float) -> float:
            return 20 + 0.02 * ((300 - z) if turned else z) / 300

        first, second = lathe.traverse(300, (30, 270), radius, far)
        return f"0 mm, {second - first:.6f} mm"

    side = "front" if tool_in_front is not far else "rear"
    case = BAR.with_said(
        {"lathe.tool_side": Fact(BAR.knowledge.catalogue["lathe.tool_side"], "front" if tool_in_front else "rear")}
    )
    found = by_indicator(run(False), run(True), side, case)
    assert found.case.value("reverse.move") == pytest.approx(abs(offset), abs=1e-5)
    assert found.case.value("reverse.bar") == pytest.approx(0.016, abs=1e-5)
    assert found.case.value("reverse.way") == ("away-from-you" if offset > 0 else "toward-you")


def test_worn_ways_of_a_simulated_lathe_show_in_the_third_collar_and_not_in_the_others() -> None:
    def worn(z: float) -> float:
        return 0.01 if 100 < z < 250 else 0.0

    stations = tuple(METRIC.value(f"truing.{name}") for name in ("head_station", "tail_station"))
    lathe = SimulatedLathe(front_wear=worn)
    span = METRIC.value("truing.span")
    head, middle, tail = lathe.diameters_between_centres(span, (stations[0], sum(stations) / 2, stations[1]), 34)
    # A front tool stands back where the front way is worn, so the middle is fat: by 2 x 0.01 x 150 / 150.
    found = next_visit(head, tail, state="as-found", middle_readings=(middle,), middle_station=sum(stations) / 2)
    assert found.case.value("visit.bow_signed") == pytest.approx(0.02, abs=2e-4)
    assert found.case.value("visit.verdict") == "inside"
    assert barring(found) == ["bow"]
