"""A speed below what the cutter could do says what keeps it there."""

import pytest

from shops import EXAMPLES
from tailtrue.advise import advise
from tailtrue.calc.spindle_band import speed_band
from tailtrue.computed.operation import SHORT_GRIP, limited_speed

FERNHILL = advise(EXAMPLES / "fernhill" / "job.toml").case


def test_a_small_drill_in_a_blank_is_kept_slow_by_the_grip_and_a_large_one_by_its_surface_speed() -> None:
    """Common practice: what is held by little is capped at the spindle, however small the drill."""
    cap = FERNHILL.value("limit.blank_speed")
    ladder = FERNHILL.value("hole.ladder")
    said = {row["size"]: (row["speed"], row["reason"]) for row in ladder}
    speed, why = said[min(said)]
    assert why == SHORT_GRIP == "cap for a short grip"
    assert speed <= cap
    assert said[max(said)][1] == "surface speed"


@pytest.mark.parametrize("fact", ["collar.spotting.speed", "collar.boring.speed"])
def test_what_else_is_cut_in_the_blank_names_the_same_cap(fact: str) -> None:
    assert FERNHILL.get(fact).limited_by == SHORT_GRIP
    assert FERNHILL.get("bar.centring.speed").limited_by != SHORT_GRIP


def test_a_lathe_too_fast_for_what_holds_the_work_is_told_what_that_is() -> None:
    found = limited_speed(speed_band(30, 40, 4, 1), [(200, SHORT_GRIP)], (300, 600), None, None, 1, 1.2)
    assert (found.value, found.by) == (None, "the slowest speed of this lathe is above its limit: cap for a short grip")
