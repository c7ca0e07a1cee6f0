"""The ladder of drills against what the trade does."""

from itertools import pairwise
from pathlib import Path

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
            ("crib", 'least_bore = "14 mm"', 'least_bore = "12 mm"'),
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
