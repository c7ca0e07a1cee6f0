"""What one cause does to a reading, where a formula begins and ends."""

import pytest

from tailtrue.calc.causes import LOCAL_WEAR, PATH_LEAN, TAILSTOCK_OFFSET, TAILSTOCK_ON_BED, bed_bow_term, riding_the_bed
from tailtrue.calc.validity import OutOfRange


@pytest.mark.parametrize("station", [-1.0, 0.0, 300.0, 301.0])
def test_a_bowed_stretch_adds_nothing_outside_itself(station: float) -> None:
    assert bed_bow_term(station, 0, 300, "front") == {LOCAL_WEAR: 0}


def test_a_bowed_stretch_may_begin_before_the_first_collar() -> None:
    assert bed_bow_term(-200, -300, -100, "rear") == {LOCAL_WEAR: -2}


@pytest.mark.parametrize("end", [300, 100])
def test_a_bowed_stretch_ends_after_it_begins(end: float) -> None:
    with pytest.raises(OutOfRange, match=rf"^length of the bowed stretch is {end - 300} mm; it must be more than 0 mm$"):
        bed_bow_term(200, 300, end, "front")


def test_a_row_that_sees_no_lean_sees_it_through_the_tailstock() -> None:
    assert riding_the_bed({TAILSTOCK_OFFSET: -2.0}, 300, 80) == {TAILSTOCK_ON_BED: -2.0, PATH_LEAN: -760.0}
