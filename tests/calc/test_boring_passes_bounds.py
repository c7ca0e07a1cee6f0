"""Spring passes for an error that is just reached, and for one that is just not."""

import pytest

from tailtrue.calc.boring_passes import error_after_passes, spring_passes_for


@pytest.mark.parametrize("passes", [1, 2, 3, 5, 8])
@pytest.mark.parametrize("stiffness", [150, 200, 300, 400, 900])
def test_what_is_left_after_the_passes_asks_for_so_many(passes: int, stiffness: float) -> None:
    left = error_after_passes(0.2, 100, stiffness, passes)
    assert spring_passes_for(0.2, 100, stiffness, left) == passes
    assert spring_passes_for(0.2, 100, stiffness, left * (1 - 1e-7)) == passes + 1


def test_an_error_that_is_just_as_wanted_asks_for_no_further_pass() -> None:
    # A fifth is left by every pass: 0.5, 0.1, 0.02, 0.004 mm.
    assert spring_passes_for(0.5, 100, 400, 0.004) == 2
    assert spring_passes_for(1.0, 100, 400, 0.008) == 2
