"""Tapers by set-over: published examples, directions against a simulated lathe, what is refused, the check after a cut."""

from math import atan, sin
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from simulated_lathe import SimulatedLathe
from tailtrue.advise import advise
from tailtrue.case import Case
from tailtrue.errors import FactsWrong, ReadingsWrong, Refused, report
from tailtrue.facts import Fact
from tailtrue.render.tag_page import set_over_html
from tailtrue.render.words import say
from tailtrue.truing.setover import SetOver, judge_setover, read_taper

EXAMPLES = Path(__file__).parents[2] / "docs" / "examples"
METRIC = advise(EXAMPLES / "fernhill" / "job.toml").case
INCH = advise(EXAMPLES / "quarry-road" / "job.toml").case
LONG = INCH.with_said({"lathe.between_centres": Fact(INCH.knowledge.catalogue["lathe.between_centres"], 1200.0)})
PLAIN = {"work_length": "250 mm", "hole_depth": "3 mm", "small_end": "tailstock"}
USUAL = {**PLAIN, "large": "30 mm", "small": "26 mm", "length": "100 mm"}


def changed(case: Case, **facts: object) -> Case:
    named = {name.replace("__", "."): value for name, value in facts.items()}
    return case.with_said({name: Fact(case.knowledge.catalogue[name], value) for name, value in named.items()})


def set_over(case: Case = METRIC, **typed: str) -> SetOver:
    return judge_setover(case, read_taper({**USUAL, **typed}, system="", job={}))


def by(case: Case = METRIC, **typed: str) -> SetOver:
    return judge_setover(case, read_taper({**PLAIN, **typed}, system="", job={}))


def told(found: SetOver) -> str:
    return "\n".join(say(line, "metric").replace("\u00a0", " ") for section in found.sections for line in section.lines)


PUBLISHED = [
    # Turning and Boring (1914), taper chapter
    ("1 in a foot, 9 in", {"per_foot": "1 in", "work_length": "9 in"}, 3 / 8),
    (
        "2 1/2 to 2 in over 6 in, 9 in",
        {"large": "2 1/2 in", "small": "2 in", "length": "6 in", "work_length": "9 in"},
        3 / 8,
    ),
    ("1 1/2 in a foot, 8 in", {"per_foot": "1 1/2 in", "work_length": "8 in"}, 1 / 2),
    # Modern Machine-Shop Practice, vol. I, text to figs. 1218-1219
    ("1 in a foot, 3 ft", {"per_foot": "1 in", "work_length": "36 in"}, 1 + 1 / 2),
    # US Coast Guard engine examination, QMED05 no. 66
    ("1/2 in a foot, 18 in", {"per_foot": "1/2 in", "work_length": "18 in"}, 3 / 8),
    # US Navy training manual, set-over examples
    # (tapered over its whole length there; here as a taper, for under the dog nothing can be cut)
    ("3 to 2 in over 12 in", {"per_foot": "1 in", "work_length": "12 in"}, 1 / 2),
    ("1 in a foot, 6 in", {"per_foot": "1 in", "work_length": "6 in"}, 1 / 4),
]


@pytest.mark.parametrize(("typed", "printed_in"), [one[1:] for one in PUBLISHED], ids=[one[0] for one in PUBLISHED])
def test_published_set_overs_come_out(typed: dict[str, str], printed_in: float) -> None:
    """The rule that is printed gives up to a quarter of a per cent more than the slanting work needs."""
    found = judge_setover(LONG, read_taper({"hole_depth": "0 in", "small_end": "tailstock", **typed}, system="", job={}))
    assert found.case.value("setover.amount") / 25.4 == pytest.approx(printed_in, rel=0.0025)
    assert found.case.value("setover.amount") / 25.4 <= printed_in


def test_centre_holes_shorten_the_work() -> None:
    # Turning and Boring Tapers (1902): 24 in with holes 1/8 in deep works as 23 3/4 in
    found = judge_setover(
        LONG,
        read_taper(
            {"per_foot": "1/2 in", "work_length": "24 in", "hole_depth": "1/8 in", "small_end": "tailstock"},
            system="",
            job={},
        ),
    )
    assert found.case.value("setover.span") / 25.4 == pytest.approx(23.75)
    uneven = by(ratio="1:50", hole_depth="3 mm, 5 mm")
    assert uneven.case.value("setover.span") == pytest.approx(242)


def test_four_ways_to_say_one_taper_agree() -> None:
    found = [
        by(ratio="1:25"), by(large="30 mm", small="26 mm", length="100 mm"), by(per_foot="12.192 mm"),
        by(angle="1.1457628 deg half"), by(angle="2.2915256 deg included"), by(angle="2.2915256° included"),
    ]  # fmt: skip
    for one in found:
        assert one.case.value("setover.amount") == pytest.approx(found[0].case.value("setover.amount"), rel=1e-6)


@pytest.mark.parametrize("tool_side", ["front", "rear"])
@pytest.mark.parametrize("small_end", ["tailstock", "headstock"])
def test_the_way_in_words_cuts_the_small_end_where_it_is_wanted(tool_side: str, small_end: str) -> None:
    found = set_over(changed(METRIC, lathe__tool_side=tool_side), small_end=small_end)
    amount, span = found.case.value("setover.amount"), found.case.value("setover.span")
    sideways = amount if found.case.value("setover.way") == "toward-you" else -amount
    lathe = SimulatedLathe(tool_in_front=tool_side == "front").moved(sideways)
    near, far = lathe.diameters_between_centres((span**2 - amount**2) ** 0.5, [50, 150], radius=15)
    assert abs(near - far) == pytest.approx(100 / 25, rel=1e-6)
    assert ("tailstock" if far < near else "headstock") == small_end
    wanted = amount if small_end == "tailstock" else -amount
    assert found.case.value("setover.toward_tool") == pytest.approx(wanted)


def test_the_words_name_way_amount_end_and_side_and_the_way_back_is_the_other() -> None:
    text = told(set_over())
    assert (
        "SET THE TAILSTOCK OVER toward you by 4.879 mm (0.1921 in). The small end is at the tailstock, the tool at the front."
        in text
    )
    assert "away from you by 4.879 mm" in text
    assert "Over the tapered 100.0 mm (3.94 in) they must differ by 4.000 mm" in text
    for safe in (
        "Isolate the lathe",
        "tug the tailstock",
        "Hang the tag",
        "Stop the spindle before you measure",
        "dog",
        "rocks on its centres",
    ):
        assert safe in text
    assert "Slacken the screw at the front of the base first, then push with the screw at the rear of the base" in text
    other = told(set_over(small_end="headstock"))
    assert "Slacken the screw at the rear of the base first, then push with the screw at the front of the base" in other
    assert "Slacken the screw on the side you are going to" in told(by(INCH, ratio="1:25"))
    one_screw = told(set_over(changed(METRIC, lathe__set_over="one-screw")))
    assert "Turn the screw until the tailstock comes toward you" in one_screw


def test_a_steep_set_over_is_called_steep() -> None:
    # one in fifty of the length lies between these two
    assert set_over(small="26 mm").case.value("setover.steep") is False
    steep = set_over(small="25.99 mm")
    assert steep.case.value("setover.steep") is True
    assert "STEEP FOR A SET-OVER" in told(steep)
    assert "STEEP" not in told(set_over(small="26.1 mm"))


REFUSED = [
    (changed(METRIC, lathe__set_over="none"), {}, "This tailstock cannot be set over"),
    (METRIC, {"small": "10 mm"}, "too steep to be turned by set-over"),
    (METRIC, {"travel": "4.8 mm"}, "does not go over so far"),
    (METRIC, {"length": "300 mm", "small": "29 mm"}, "longer than the work between the centres"),
    (METRIC, {"work_length": "760 mm"}, "does not go between the centres"),
    (METRIC, {"large": "200 mm", "small": "196 mm"}, "does not swing over the cross slide"),
]


@pytest.mark.parametrize(("case", "typed", "says"), REFUSED, ids=[one[2] for one in REFUSED])
def test_what_must_not_be_set_over_is_refused(case: Case, typed: dict[str, str], says: str) -> None:
    with pytest.raises(Refused) as refused:
        set_over(case, **typed)
    assert says in report(refused.value)


def test_travel_that_reaches_is_no_reason_and_travel_not_said_is_asked_for() -> None:
    assert "Look first whether the tailstock goes so far" in told(set_over())
    assert "Look first whether" not in told(set_over(travel="4.9 mm"))


def test_a_correction_that_travel_does_not_reach_is_refused() -> None:
    # 4.879 mm for 4 mm over 100 mm; a cut of 3.9 mm over 100 mm asks for 0.122 mm more: 5.001 mm.
    cut = {"cut_large": "30 mm", "cut_small": "28.05 mm", "cut_apart": "50 mm"}
    assert set_over(travel="5.01 mm", **cut).case.value("setover.corrected") == pytest.approx(
        244 * (sin(atan(0.02)) + sin(atan(0.02)) - sin(atan(0.0195)))
    )
    with pytest.raises(Refused) as refused:
        set_over(travel="5 mm", **cut)
    assert "does not go over so far as the correction asks" in report(refused.value)
    assert "5.001 mm" in report(refused.value).replace("\u00a0", " ")
    # The same cut without a word of the travel, and one that is cut too steep, are no reason.
    set_over(**cut)
    set_over(travel="4.9 mm", cut_large="30 mm", cut_small="27.95 mm", cut_apart="50 mm")


@pytest.mark.parametrize(
    ("cut_small", "far"), [("28.66 mm", False), ("28.67 mm", True), ("27.34 mm", False), ("27.33 mm", True)]
)
def test_a_taper_more_than_a_third_off_the_one_wanted_is_doubted(cut_small: str, far: bool) -> None:
    # 2 mm are wanted over 50 mm; a third of it is 0.667 mm.
    found = set_over(cut_large="30 mm", cut_small=cut_small, cut_apart="50 mm")
    assert ("DOUBT THESE READINGS FIRST" in told(found)) is far
    assert "DOUBT THESE READINGS" not in told(set_over())


WRONG = [
    ({"large": "", "small": "", "length": ""}, "the taper is not said"),
    ({"ratio": "1:50"}, "the taper is said in more than one way"),
    ({"length": ""}, "--length: is not given"),
    ({"small_end": ""}, "--small-end: is not given"),
    ({"hole_depth": ""}, "--hole-depth: is not given"),
    ({"work_length": "250"}, "--work-length: 250: has no unit"),
    ({"small_end": "left"}, "--small-end: left: is no end of the work"),
    ({"small": "30 mm"}, "is not less than the large diameter"),
    ({"length": "0 mm"}, "is not more than nought"),
    ({"hole_depth": "-1 mm"}, "is less than nought"),
    ({"hole_depth": "1 mm, 2 mm, 3 mm"}, "holds more than two depths"),
    ({"cut_large": "29 mm"}, "--cut-small, --cut-apart: is not given"),
]


@pytest.mark.parametrize(("typed", "says"), WRONG, ids=[one[1] for one in WRONG])
def test_what_is_typed_wrong_is_named(typed: dict[str, str], says: str) -> None:
    with pytest.raises(FactsWrong) as wrong:
        set_over(**typed)
    assert says in report(wrong.value)


@pytest.mark.parametrize(("name", "text"), [("ratio", "50"), ("ratio", "1:0"), ("angle", "1.5 deg"), ("angle", "1.5")])
def test_a_taper_that_may_mean_two_things_is_refused(name: str, text: str) -> None:
    with pytest.raises(FactsWrong):
        by(**{name: text})


def test_every_fault_is_told_at_once() -> None:
    with pytest.raises(FactsWrong) as wrong:
        read_taper({"ratio": "x", "work_length": "3", "small_end": "up"}, system="", job={})
    assert len(wrong.value.problems) == 4


def test_a_cut_turned_round_is_no_correction() -> None:
    with pytest.raises(ReadingsWrong) as wrong:
        set_over(cut_large="27 mm", cut_small="28 mm", cut_apart="50 mm")
    assert "wrong side" in report(wrong.value)


@pytest.mark.parametrize(
    ("cut_small", "after", "way"),
    [("27.950 mm", "back", "away-from-you"), ("28.050 mm", "further", "toward-you"), ("28.000 mm", "leave", "nowhere")],
)
def test_the_taper_that_was_cut_tells_which_way_to_correct(cut_small: str, after: str, way: str) -> None:
    found = set_over(cut_large="30 mm", cut_small=cut_small, cut_apart="50 mm")
    assert (found.case.value("setover.after_cut"), found.case.value("setover.correction_way")) == (after, way)
    words = {
        "back": "bring the tailstock BACK, away from you",
        "further": "FURTHER, toward you",
        "leave": "Leave the set-over as it is",
    }
    assert words[after] in told(found)
    assert "After the first cuts" not in told(found)


@settings(max_examples=40, deadline=None)
@given(st.floats(0.2, 6.0), st.floats(0.2, 6.0))
def test_a_correction_ends_at_the_set_over_for_the_taper_wanted(stands: float, wanted: float) -> None:
    """A lathe set over by one amount is cut, read and corrected; it must then stand where the wanted taper needs it."""
    span = 244.0
    lathe = SimulatedLathe().moved_toward_tool(stands)
    first, second = lathe.diameters_between_centres((span**2 - stands**2) ** 0.5, [60, 160], radius=20)
    slope = wanted / (span**2 - wanted**2) ** 0.5
    said = {
        **read_taper(USUAL, system="", job={}), "setover.large": 40.0, "setover.small": 40.0 - 200 * slope, "setover.length": 100.0,
        "setover.cut_large": first, "setover.cut_small": second, "setover.cut_apart": 100.0,
    }  # fmt: skip
    found = judge_setover(METRIC, said)
    assert stands + found.case.value("setover.correction") == pytest.approx(wanted, abs=1e-6)


def test_a_micrometer_is_surer_than_a_caliper_and_without_either_there_is_no_correction() -> None:
    cut = {"cut_large": "30 mm", "cut_small": "28.05 mm", "cut_apart": "50 mm"}
    fine, coarse = set_over(**cut), set_over(changed(METRIC, crib__outside_micrometers=()), **cut)
    # One diameter is sure to 0.006 mm by micrometer and to 0.06 mm by caliper.
    assert coarse.case.value("setover.correction_doubt") == pytest.approx(
        10 * fine.case.value("setover.correction_doubt"), rel=0.01
    )
    said = {name: fact for name, fact in METRIC.known().items() if fact.spec.comes == "given"}
    bare = Case(METRIC.knowledge, {name: fact for name, fact in said.items() if name != "crib.caliper_resolution"})
    with pytest.raises(FactsWrong) as wrong:
        set_over(changed(bare, crib__outside_micrometers=()), **cut)
    assert "no instrument of the crib is known to read 30 mm" in report(wrong.value)


def test_the_tag_says_what_way_never_and_the_way_back() -> None:
    tag = set_over().tag
    words = " ".join(say(line, "metric").replace("\u00a0", " ") for part in (tag.what, tag.never, tag.back) for line in part)
    assert words.startswith("4.879 mm (0.1921 in) toward you")
    for part in (
        "DO NOT DRILL",
        "DO NOT TURN PARALLEL",
        "Move the tailstock away from you by 4.879 mm",
        "Tug",
        "bar FM-L2-004",
    ):
        assert part in words


def test_a_lathe_that_must_not_run_is_said_so() -> None:
    assert set_over().mend == ()
    assert "stop" in say(set_over(changed(METRIC, lathe__stop="untested")).mend[0], "metric")


def test_a_job_without_a_taper_is_not_stopped_by_these_rules() -> None:
    advice = advise(EXAMPLES / "fernhill" / "job.toml")
    assert advice.refused == ()


def test_the_way_of_the_indicator_and_the_difference_over_what_was_read_are_told() -> None:
    text = told(set_over(cut_large="30 mm", cut_small="28.05 mm", cut_apart="50 mm"))
    assert "Stop when the tailstock has gone 4.879 mm" in text
    # Nobody counts 2440 divisions of 0.002 mm.
    assert "divisions" not in text
    assert "They differ by 1.950 mm (0.0768 in); wanted over this distance 2.000 mm" in text


def test_the_doubt_of_a_correction_is_that_of_two_readings_carried_to_the_centre() -> None:
    def doubt(apart: str, division: float | None) -> float:
        said = {name: fact for name, fact in METRIC.known().items() if fact.spec.comes == "given"}
        said.pop("crib.indicator_division", None)
        case = Case(METRIC.knowledge, said)
        if division is not None:
            case = changed(case, crib__indicator_division=division)
        found = set_over(case, cut_large="30 mm", cut_small="28.05 mm", cut_apart=apart)
        return float(found.case.value("setover.correction_doubt"))

    # Two diameters, each sure to 0.006 mm with k = 2, over 50 mm on a length of 244 mm.
    assert doubt("50 mm", None) == pytest.approx(0.006 * 2**0.5 * 244 / (2 * 50), rel=1e-6)
    assert doubt("100 mm", None) == pytest.approx(doubt("50 mm", None) / 2)
    assert doubt("50 mm", 0.02) == pytest.approx((doubt("50 mm", None) ** 2 + 0.01**2) ** 0.5)


def test_a_tag_stands_as_its_sheet_does() -> None:
    for status, mark in (("superseded", "SUPERSEDED"), ("draft", "DRAFT"), ("approved", "")):
        case = changed(METRIC, job__status=status, job__approver="shop manager", job__walked_through="second trainer")
        tag = set_over(case).tag
        assert tag.head.mark.strip() == mark
        assert (mark or "approved") in set_over_html(tag)
        assert f"dated {tag.head.dated}, {'not approved' if status == 'draft' else status}" in set_over_html(tag)
