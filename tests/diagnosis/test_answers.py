"""What is settled, what cannot be told, what is named, which way and in which order."""

from pathlib import Path

import pytest

from diagnosis.files import CLAMPED, THREE, again, centres, chucked, diagnosed, level, sweep, told
from tailtrue.diagnosis.answer import AXIS, NO_FAULT

WORKED = """
[chucked_bar]
stations = ["20 mm", "95 mm", "170 mm"]
diameters = ["32.002 mm", "32.008 mm", "32.015 mm"]
stick_out = "180 mm"
bar_diameter = "32 mm"
give_or_take = "0.003 mm"

[between_centres]
head = ["70.009 mm"]
middle = ["70.044 mm"]
tail = ["70.077 mm"]
middle_station = "150 mm"
give_or_take = "0.003 mm"

[level]
stations = ["0 mm", "500 mm"]
readings = ["0.00 mm/m", "0.20 mm/m"]
plus_is = "front low"
give_or_take = "0.0282843 mm/m"
height_of_centres = "150 mm"
"""


def test_a_twist_is_judged_by_the_change_along_the_bed_wherever_the_level_stood(tmp_path: Path) -> None:
    text = level("0.30").replace("500 mm", "700 mm").replace('"0 mm"', '"200 mm"')
    assert diagnosed(tmp_path, text).judged["bed-twist"].value == pytest.approx(0.30)


def test_a_worked_set_of_readings_gives_its_worked_answer(tmp_path: Path) -> None:
    """Readings and answer are derived: normal equations of chucked bar, bar between centres and level, worked by hand."""
    found = diagnosed(tmp_path, WORKED).estimates
    for name, value, unsure in (
        ("headstock", 16.667e-6, 9.274e-6), ("bed-twist", 60e-6, 6e-6), ("tailstock", -42.5e-3, 1.325825e-3),
        (AXIS, -43.333e-6, 7.071e-6),
    ):  # fmt: skip
        assert found[name].value == pytest.approx(value, rel=1e-3), name
        assert found[name].standard_uncertainty == pytest.approx(unsure, rel=1e-3), name


def test_without_the_level_only_differences_are_settled(tmp_path: Path) -> None:
    found = diagnosed(tmp_path, WORKED.split("[level]")[0])
    assert set(found.estimates) == {"tailstock", AXIS}
    assert found.estimates[AXIS].value == pytest.approx(-43.333e-6, rel=1e-3)
    assert {"bed-twist", "headstock"} <= set(found.not_settled)


def test_nothing_wrong_is_an_answer(tmp_path: Path) -> None:
    found = diagnosed(tmp_path, centres() + chucked() + level() + sweep())
    assert (found.answer, found.named) == ("nothing", ())
    assert "Nothing is wrong beyond the doubt of these tests. Leave the lathe alone." in told(found, "answer")
    assert "Leave the tailstock alone: it is in limits" in told(found, "do")
    assert told(found, "explains") == ""
    assert found.next_test is None
    assert told(found, "next") == ""


def test_every_cause_of_weight_has_its_rank_its_share_and_its_misfit(tmp_path: Path) -> None:
    found = diagnosed(tmp_path, centres(tail="69.612"))
    lines = [line for line in told(found, "ranks").splitlines() if line.startswith("Rank ")]
    heavy = [one for one, weight in found.weights.items() if weight >= 0.1]
    names = [found.knowledge.causes[one].name for one in heavy]
    assert [line.split(": ")[1].split(",")[0] for line in lines if "no fault at all" not in line] == names
    assert [int(line.split(" in a hundred")[0].split()[-1]) for line in lines] == sorted(
        [round(100 * found.weights[one]) for one in heavy]
        + [round(100 * found.alone[NO_FAULT].weight)] * (found.alone[NO_FAULT].weight >= 0.1), reverse=True,
    )  # fmt: skip
    # Two causes that look just the same share a rank, and the next one is counted on.
    ranks = {line.split(": ")[1].split(",")[0]: line.split(":")[0] for line in lines}
    assert ranks[found.knowledge.causes["eccentric-centre"].name] == ranks[found.knowledge.causes["centre-holes"].name]
    assert ranks[found.knowledge.causes[heavy[0]].name] == "Rank 1"
    assert all("over the readings, none of them spare." in line for line in lines if "no fault" not in line)
    assert "shares may add up to more than a hundred" in told(found, "ranks")


def test_the_misfit_of_a_cause_is_what_it_leaves_by_itself(tmp_path: Path) -> None:
    """Bed and tailstock are both off: neither alone explains the level and the collars."""
    found = diagnosed(tmp_path, centres(tail="69.680") + chucked("40.020") + level("0.30"))
    assert set(found.named) == {"bed-twist", "tailstock"}
    said = told(found, "ranks")
    for one in found.named:
        alone = found.alone[one]
        assert alone.chi_squared > 100 * max(found.best.chi_squared, 0.01)
        assert f"a misfit (chi-square) of {alone.chi_squared:.1f} over the readings, {alone.freedom} of them spare" in said


def test_no_fault_at_all_has_its_rank_and_the_unexplained_has_none(tmp_path: Path) -> None:
    sound = told(diagnosed(tmp_path, centres() + chucked() + level() + sweep()), "ranks").splitlines()
    assert sound[0].startswith("Rank 1: no fault at all, ")
    assert "; that leaves a misfit (chi-square) of 0." in sound[0]
    wild = centres(tail="69.640") + again("clamped_anew", "69.570") + again("more_spring_passes", "69.520")
    wild += again("centre_turned", "69.680") + again("bar_turned_end_for_end", "69.450")
    assert told(diagnosed(tmp_path, wild + again("cut_order_reversed", "69.710")), "ranks") == ""


def test_scatter_of_repeats_alone_has_a_rank_without_a_misfit(tmp_path: Path) -> None:
    loose = CLAMPED.format(clamped='"0.020 mm", "-0.010 mm", "0.004 mm", "-0.018 mm", "0.010 mm"')
    said = told(diagnosed(tmp_path, loose), "ranks")
    assert said.startswith("Rank 1: a tailstock that does not come back to its place, 99 in a hundred by weight; only the")
    assert "chi-square" not in said


def test_between_centres_alone_cannot_tell(tmp_path: Path) -> None:
    found = diagnosed(tmp_path, centres(tail="69.612"))
    assert (found.answer, found.named) == ("cannot-tell", ())
    assert {"tailstock", "bed-twist"} <= set(found.rivals)
    assert "along a twisted bed" in told(found, "explains")
    assert "Not ruled out" not in told(found, "answer")
    assert "These readings cannot tell a tailstock out of line from " in told(found, "answer")
    assert "a twisted bed, a headstock out of line" in told(found, "limits")
    assert "These readings cannot tell a twisted bed from a headstock out of line" in told(found, "limits")
    assert "It cannot see the headstock at all" in told(found, "limits")
    assert "Do not move the tailstock yet: " in told(found, "do")


@pytest.mark.parametrize("free", ["40.020", "39.980"])
def test_a_chucked_bar_alone_cannot_tell_bed_from_headstock_and_asks_for_the_level(tmp_path: Path, free: str) -> None:
    found = diagnosed(tmp_path, chucked(free))
    assert found.answer == "cannot-tell"
    assert {"bed-twist", "headstock"} <= set(found.rivals)
    assert found.next_test is not None
    assert found.next_test.id == "level"
    assert "precision level across the ways" in told(found, "next")
    assert "About 20 minutes. Needed: a precision level" in told(found, "next")


def test_the_level_then_tells_them_apart(tmp_path: Path) -> None:
    bed = diagnosed(tmp_path, chucked("40.020") + level("0.30"))
    assert bed.named == ("bed-twist",)
    headstock = diagnosed(tmp_path, chucked("40.020") + level("0.00"))
    assert headstock.named == ("headstock",)


@pytest.mark.parametrize(("far", "plus", "way"), [
    ("0.30", "front low", "front of the bed sinks"), ("-0.30", "front low", "rear of the bed sinks"),
    ("0.30", "rear low", "rear of the bed sinks"), ("-0.30", "rear low", "front of the bed sinks"),
])  # fmt: skip
def test_the_side_of_a_twist_is_said_in_words(tmp_path: Path, far: str, plus: str, way: str) -> None:
    found = diagnosed(tmp_path, level(far, plus))
    assert way in told(found, "found")
    # k = H dpsi / dz, over 300 mm.
    assert found.estimates["bed-twist"].value * 300 == pytest.approx(
        (1 if "front of" in way else -1) * 165 * 0.30e-3 / 500 * 300
    )


# Rules of thumb of the trade: Jones, Turning and Boring (1914), trial cuts; US Coast Guard question no. 642.
@pytest.mark.parametrize(("side", "tail", "stands", "goes"), [
    ("front", "69.680", "away from you", "toward you"), ("front", "69.520", "toward you", "away from you"),
    ("rear", "69.680", "toward you", "away from you"), ("rear", "69.520", "away from you", "toward you"),
])  # fmt: skip
def test_the_tailstock_goes_toward_the_tool_when_its_end_is_larger(
    tmp_path: Path, side: str, tail: str, stands: str, goes: str
) -> None:
    found = diagnosed(tmp_path, centres(tail=tail) + chucked() + level(), side)
    assert found.named == ("tailstock",)
    # Never a hundred: what is not in the list of causes has no weight.
    assert told(found, "answer") == "A tailstock out of line explains these readings: 99 in a hundred by weight."
    assert f"The tailstock centre stands 0.050 mm (0.0020 in) {stands} from the path" in told(found, "found")
    assert f"Move the tailstock {goes} by 0.050 mm (0.0020 in), give or take 0.00" in told(found, "do")
    assert "Isolate the lathe first" in told(found, "do")


def test_a_tailstock_without_screws_is_not_told_to_move(tmp_path: Path) -> None:
    found = diagnosed(tmp_path, centres(tail="69.680") + chucked() + level(), has_screws=False)
    assert "has no screws for it" in told(found, "do")
    assert "Move the tailstock" not in told(found)


def test_the_bed_comes_before_the_tailstock(tmp_path: Path) -> None:
    found = diagnosed(tmp_path, centres(tail="69.680") + chucked("40.020") + level("0.30"))
    assert set(found.named) == {"bed-twist", "tailstock"}
    said = told(found, "do")
    assert "Move the tailstock" not in said
    assert (
        said.index("Take the twist out")
        < said.index("Correct in this order")
        < said.index("Do not move the tailstock yet: a twisted bed comes first.")
    )
    assert "the level of the bed, then the headstock, then the tailstock" in said


def test_a_large_offset_between_centres_is_named_and_bed_and_headstock_left_open(tmp_path: Path) -> None:
    text = THREE.format(tail="69.700", middle="69.650")
    found = diagnosed(tmp_path, text)
    assert found.named == ("tailstock",)
    assert "These readings cannot tell a twisted bed from a headstock out of line" in told(found, "limits")
    assert told(found, "do").index("Correct in this order") < told(found, "do").index("Move the tailstock toward you")
    assert found.next_test is not None
    assert found.next_test.id == "level"


def test_a_chuck_test_beyond_its_limit_warns_that_collars_and_sweep_disagree(tmp_path: Path) -> None:
    found = diagnosed(tmp_path, chucked("40.020") + level("0.00"))
    # (theta - k) L = -s dD / 2 * L / (q - p) = -0.010 * 300 / 100
    assert "put the tailstock centre 0.030 mm (0.0012 in) more away from you than the sweep does" in told(found, "found")
    assert found.judged[AXIS].verdict == "bad"
    assert "spindle axis runs away from you from the path of the tool, by 0.030 mm (0.0012 in)" in told(found, "found")
    assert told(found, "found").count("give or take 0.009 mm (0.0004 in)") == 2
    # Two diameters 100 mm apart, 1.5 um and 1.2 um each and 1 um of rounding, as a slope over 300 mm, k = 2.
    each = (1.5**2 + 1.2**2 + 1 / 12) ** 0.5 / 1000
    assert found.judged[AXIS].doubt == pytest.approx(2 * each * 2**0.5 / 2 / 100 * 300)
    assert "Collars and sweep will disagree" not in told(diagnosed(tmp_path, chucked("39.996")), "found")


@pytest.mark.parametrize(("free", "side", "verdict"), [
    ("39.997", "front", "good"), ("40.014", "front", "bad"), ("39.980", "front", "bad"),
    ("39.997", "rear", "good"), ("40.014", "rear", "bad"),
])  # fmt: skip
def test_the_free_end_may_point_toward_the_tool_only(tmp_path: Path, free: str, side: str, verdict: str) -> None:
    """Large end at the headstock is the good side (customary limit after ISO 1708, from memory): 0.015 mm in 300 mm."""
    assert diagnosed(tmp_path, chucked(free), side).judged[AXIS].verdict == verdict


@pytest.mark.parametrize(("tail", "verdict", "word"), [
    ("0.018", "good", "high"), ("-0.018", "bad", "low"), ("0.060", "bad", "high"), ("0.036", "close", "high"),
])  # fmt: skip
def test_a_high_tailstock_is_good_and_a_low_one_is_not(tmp_path: Path, tail: str, verdict: str, word: str) -> None:
    """One-sided, 0.04 mm (customary limit after ISO 1708, from memory). Read at 30 and 270 mm of 300: h = 300 / 240 of it."""
    found = diagnosed(tmp_path, f'[height]\nhead = "0 mm"\ntail = "{tail} mm"\n')
    assert found.judged["height"].verdict == verdict
    assert found.estimates["height"].value == pytest.approx(float(tail) * 300 / 240)
    assert f" {word}, give or take" in told(found, "found")
    assert "after ISO 1708, height of the centres; the standard itself was not verified" in told(found, "found")


def test_a_finer_job_has_the_finer_limit(tmp_path: Path) -> None:
    text = '[height]\nhead = "0 mm"\ntail = "0.018 mm"\n'
    assert diagnosed(tmp_path, text, grade="precision").judged["height"].verdict == "close"
    assert diagnosed(tmp_path, text, grade="precision").judged["height"].limit == 0.02


def test_a_long_free_end_is_warned_of_at_the_limit_the_engine_has(tmp_path: Path) -> None:
    assert "Do not cut it so again" not in told(diagnosed(tmp_path, chucked(out=150)))
    said = told(diagnosed(tmp_path, chucked(out=160)), "careful")
    assert "stands out 160.0 mm (6.30 in), 2.7 times its diameter; 2.5 times is the most" in said


def test_every_page_says_not_to_touch_a_lathe_that_can_start(tmp_path: Path) -> None:
    assert "while the spindle turns or can start" in told(diagnosed(tmp_path, level()), "careful")


def test_the_next_test_comes_with_its_caution(tmp_path: Path) -> None:
    found = diagnosed(tmp_path, level())
    assert found.next_test is not None
    assert found.next_test.id == "chucked_bar"
    said = told(found, "careful")
    assert "A free end can climb the tool or whip out of the jaws." in said
    assert "no more than 2.5 times its diameter" in said


def test_inches_lead_on_an_inch_lathe(tmp_path: Path) -> None:
    text = '[level]\nstations = ["0 in", "20 in"]\nreadings = ["0 thou/ft", "3.6 thou/ft"]\nplus_is = "front low"\n'
    found = diagnosed(tmp_path, text, dials="inch")
    # 3.6 thou/ft is 0.3 mm/m.
    assert found.estimates["bed-twist"].value == pytest.approx(165 * 0.3e-3 / 508)
    assert "over 12.00 in (304.8 mm)" in told(found, "found")
    assert "customary limit of 0.5 thou/ft (either way)" in told(found, "found")


def test_no_fault_is_a_rival_like_any_other(tmp_path: Path) -> None:
    found = diagnosed(tmp_path, centres(tail="69.6055"))
    assert NO_FAULT in found.rivals
