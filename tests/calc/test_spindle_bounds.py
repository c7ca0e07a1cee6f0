"""A speed limit that is none is refused as such, before any step is chosen."""

import pytest

from tailtrue.calc.spindle import choose_from_range, choose_speed
from tailtrue.calc.validity import OutOfRange


@pytest.mark.parametrize("cap", [0, -5])
def test_a_speed_limit_is_more_than_0(cap: float) -> None:
    with pytest.raises(OutOfRange, match=rf"^speed limit is {cap} 1/min; it must be more than 0 1/min$"):
        choose_speed([70, 115], 100, cap)
    with pytest.raises(OutOfRange, match=rf"^speed limit is {cap} 1/min; it must be more than 0 1/min$"):
        choose_from_range(50, 2500, 10, 100, cap)
