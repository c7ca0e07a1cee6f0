"""The ladder of drills against what the trade does."""

from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from shops import shop
from tailtrue.advise import advise
from tailtrue.calc.drilling import least_pilot

INCH_CRIB = (
    '[[crib.drills]]\nsizes = ["1/4 in", "1/2 in"]\nshank = "straight"\n\n'
    '[[crib.drills]]\nsizes = ["3/4 in", "7/8 in", "15/16 in"]\nshank = "MT3"\n\n'
)


def ladder(tmp_path: Path, *changes: tuple[str, str, str]) -> list[tuple[float, str]]:
    case = advise(shop(tmp_path, "fernhill", *changes)).case
    return [row["size"] for row in case.value("hole.ladder")]


def test_the_usual_inch_drills_make_a_ladder_an_instructor_would_sign(tmp_path: Path) -> None:
    """Common practice: 1/4, 1/2, 3/4 and 7/8 or 15/16 in soft aluminium before boring to 1 in is a good ladder."""
    sizes = ladder(
        tmp_path, ("crib", r"\[\[crib.drills\]\].*?(?=\[\[crib.boring)", INCH_CRIB), ("stock", '"25 mm"', '"1 in"'),
        ("job", r"^measured_(head|tail) = .*?\n", ""),
    )  # fmt: skip
    marked = [label.replace("\u00a0", " ") for _, label in sizes]
    good = {"1/4 in": 0.25, "1/2 in": 0.5, "3/4 in": 0.75, "7/8 in": 0.875, "15/16 in": 0.9375}
    assert marked[0] == "1/4 in"
    assert marked[-1] in ("7/8 in", "15/16 in")
    assert set(marked) <= set(good)
    # A rung may be left out; no step may be bolder than the boldest of the ladder that an instructor signs.
    rungs = [good[label] for label in marked]
    boldest = max(above / below for below, above in pairwise((0.25, 0.5, 0.75, 0.9375)))
    assert all(1 < above / below <= boldest for below, above in pairwise(rungs))
    # As much is left to bore as the trade leaves: a sixteenth to an eighth of an inch on diameter.
    assert 1 / 16 <= 1 - rungs[-1] <= 1 / 8


def test_a_ladder_with_its_middle_rung_missing_is_not_climbed_in_one_step(tmp_path: Path) -> None:
    """Common practice: from a quarter of an inch nobody goes to seven eighths."""
    crib = INCH_CRIB.replace('"1/4 in", "1/2 in"', '"1/4 in"').replace('"3/4 in", "7/8 in"', '"7/8 in"')
    changes = (
        ("crib", r"\[\[crib.drills\]\].*?(?=\[\[crib.boring)", crib), ("stock", '"25 mm"', '"1 in"'),
        ("job", r"^measured_(head|tail) = .*?\n", ""),
    )  # fmt: skip
    assert [label.replace("\u00a0", " ") for _, label in ladder(tmp_path, *changes)] == ["1/4 in"]


def test_each_pilot_clears_the_chisel_edge_of_the_next(tmp_path: Path) -> None:
    """Machinery's Handbook, 31st ed., p. 1152: the chisel edge of a standard point is 0.18 of the diameter."""
    sizes = [size for size, _ in ladder(tmp_path)]
    assert sizes == sorted(sizes)
    for pilot, drill in pairwise(sizes):
        assert pilot >= least_pilot(drill, 0.18)


def test_a_small_tailstock_takes_no_drill_of_a_larger_taper(tmp_path: Path) -> None:
    sizes = [
        size for size, _ in ladder(
            tmp_path, ("lathe", 'tailstock_taper = "MT3"', 'tailstock_taper = "MT1"'),
            ("crib", 'shank = "12 mm"\nreach = "45 mm"\nleast_bore = "14 mm"', 'shank = "10 mm"\nreach = "45 mm"\nleast_bore = "12 mm"'),
        )
    ]  # fmt: skip
    assert max(sizes) <= 13.0


def test_a_drill_too_large_for_the_chuck_is_left_in_its_drawer(tmp_path: Path) -> None:
    sizes = [size for size, _ in ladder(tmp_path, ("crib", 'drill_chuck_to = "13 mm"', 'drill_chuck_to = "8 mm"'))]
    assert not [size for size in sizes if 8.0 < size <= 13.0]


@pytest.mark.parametrize("row", ["hand_feed", "thrust", "speed", "surface_speed"])
def test_every_drill_says_speed_feed_and_push(tmp_path: Path, row: str) -> None:
    case = advise(shop(tmp_path, "fernhill")).case
    assert all(one[row] > 0 for one in case.value("hole.ladder"))
    assert all(one["thrust"] <= case.value("hole.hand_thrust") for one in case.value("hole.ladder"))


def _iron(tmp_path: Path, pitch: str, *changes: tuple[str, str, str]) -> tuple[list[dict[str, Any]], float]:
    """Drills for iron with a quill screw of that pitch, and what a hand gives on it: the steeper, the less."""
    given = ("lathe", 'quill_screw_pitch = "5 mm"', f'quill_screw_pitch = "{pitch}"')
    case = advise(shop(tmp_path, "fernhill", given, ("stock", "aluminium-6082-t6", "iron-grey"), *changes)).case
    return list(case.value("hole.ladder")), case.value("hole.hand_thrust")


def test_a_ladder_that_asks_nearly_all_of_the_hand_gives_way_to_one_of_as_many_drills(tmp_path: Path) -> None:
    """Four fifths of what a hand gives, where as many drills can do with it; no pilot wider than half the drill."""
    with_ease, strong = _iron(tmp_path / "easy", "5 mm")
    chosen, hand = _iron(tmp_path / "hard", "7.5 mm")
    most = max(one["thrust"] for one in with_ease)
    assert most <= 0.8 * strong
    assert 0.8 * hand < most <= hand
    assert max(one["thrust"] for one in chosen) <= 0.8 * hand
    assert len(chosen) == len(with_ease)
    sizes = [one["size"][0] for one in chosen]
    assert sizes[-1] == with_ease[-1]["size"][0]
    assert all(pilot <= 0.5 * drill for pilot, drill in pairwise(sizes))


def test_where_no_ladder_leaves_a_margin_the_one_that_asks_least_is_drilled(tmp_path: Path) -> None:
    drills = ("crib", r'sizes = \["16 mm", "20 mm", "23 mm"\]', 'sizes = ["23 mm"]')
    chosen, hand = _iron(tmp_path, "8 mm", drills)
    # Of the half millimetres up to 13 the usual pilots of 23 are 9.5 to 11.5; the widest leaves the least to push.
    assert [one["size"][0] for one in chosen][1:] == [11.5, 23]
    assert 0.8 * hand < chosen[-1]["thrust"] <= hand
