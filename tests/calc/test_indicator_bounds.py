"""A sweep names the place at which a reading is no number."""

from math import nan

import pytest

from tailtrue.calc.indicator import sweep
from tailtrue.calc.validity import OutOfRange


@pytest.mark.parametrize("place", ["front", "top", "rear", "bottom"])
def test_the_place_of_a_reading_that_is_no_number_is_named(place: str) -> None:
    readings = {"front_mm": 0.0, "top_mm": 0.0, "rear_mm": 0.0, "bottom_mm": 0.0, f"{place}_mm": nan}
    with pytest.raises(OutOfRange, match=rf"^reading at the {place} is nan mm; it must be a finite number$"):
        sweep(**readings)
