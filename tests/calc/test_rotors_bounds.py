"""A bar may be without mass, but not less than that."""

from collections.abc import Callable

import pytest

from tailtrue.calc.rotors import critical_speed, critical_speed_high_side, critical_speed_low_side
from tailtrue.calc.validity import OutOfRange


@pytest.mark.parametrize("formula", [critical_speed_low_side, critical_speed_high_side, critical_speed])
def test_a_density_below_0_is_refused_with_what_is_allowed(formula: Callable[..., float]) -> None:
    with pytest.raises(OutOfRange, match=r"^density is -0\.5 kg/m3; the formula holds from 0 kg/m3 upward$"):
        formula(25, 500, 207000, -0.5, [1.0], [250.0])
