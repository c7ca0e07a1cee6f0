"""Set-over of the tailstock, where the rule ends."""

import pytest

from tailtrue.calc.setover import taper_from_setover
from tailtrue.calc.validity import OutOfRange


@pytest.mark.parametrize("setover", [78, 120, 150])
def test_a_set_over_within_half_the_span_is_refused_for_its_angle(setover: float) -> None:
    with pytest.raises(OutOfRange, match=r"^half angle of the taper is "):
        taper_from_setover(setover, 300)
