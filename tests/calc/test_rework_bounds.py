"""Opening a bore in whole divisions: it ends inside its window or is not begun."""

from itertools import accumulate
from math import floor

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tailtrue.calc.rework import landing_divisions, shared_divisions
from tailtrue.calc.validity import OutOfRange

_SLACK = 1e-6
THOU = 0.0254


def test_four_thousandths_under_wants_one_pass_of_two_thousandths_a_side() -> None:
    wanted, around = 1.002 * 25.4, 0.001 * 25.4
    found = wanted - 4 * THOU
    total = landing_divisions(found, found, wanted - around, wanted + around, THOU)
    assert total == 2
    assert shared_divisions(total, 2) == (2,)


@given(
    st.floats(5, 80), st.floats(-1.5, 0.2), st.floats(0, 0.03), st.floats(0.004, 0.2), st.sampled_from([0.005, 0.01, 0.025, 0.0127, 0.0254]),
    st.integers(1, 6),
)  # fmt: skip
def test_cuts_end_inside_the_window_and_never_past_it(
    low: float, under: float, uneven: float, band: float, division: float, most: int
) -> None:
    high, least = low + band, low + under
    total = landing_divisions(least, least + uneven, low, high, division)
    assume(total is not None)
    assert total is not None
    cuts = shared_divisions(total, most)
    assert all(isinstance(one, int) and 1 <= one <= most for one in cuts)
    assert sum(cuts) == total
    assert list(cuts) == sorted(cuts, reverse=True)
    for done in accumulate(cuts):
        assert least + uneven + 2 * done * division <= high + _SLACK
    assert least + 2 * total * division >= low - _SLACK


@given(
    st.floats(5, 80), st.floats(-0.5, 0.1), st.floats(0, 0.03), st.floats(0.004, 0.2), st.sampled_from([0.01, 0.025, 0.0254])
)
def test_no_number_of_divisions_is_overlooked(low: float, under: float, uneven: float, band: float, division: float) -> None:
    high, least = low + band, low + under
    tried = [
        n
        for n in range(1, floor(1 / division))
        if least + 2 * n * division >= low + _SLACK and least + uneven + 2 * n * division <= high - _SLACK
    ]
    found = landing_divisions(least, least + uneven, low, high, division)
    if tried:
        assert found is not None
        middle = low + band / 2
        off = [abs(least + uneven / 2 + 2 * n * division - middle) for n in (*tried, found)]
        assert off[-1] <= min(off[:-1]) + _SLACK


def test_a_bore_too_large_is_not_cut() -> None:
    assert landing_divisions(25.2, 25.2, 25.0, 25.1, 0.01) is None


def test_a_dial_too_coarse_for_the_window_does_not_begin() -> None:
    assert landing_divisions(24.97, 24.97, 25.0, 25.004, 0.025) is None


@pytest.mark.parametrize(
    "wrong",
    [
        (0.0, 1.0, 2.0, 3.0, 0.1),
        (1.0, 1.0, 2.0, 3.0, 0.0),
        (1.0, 0.9, 2.0, 3.0, 0.1),
        (1.0, 1.0, 3.0, 3.0, 0.1),
        (1, 1, 0, 3, 0.1),
    ],
)
def test_sizes_out_of_order_are_refused(wrong: tuple[float, float, float, float, float]) -> None:
    with pytest.raises(OutOfRange):
        landing_divisions(*wrong)


@pytest.mark.parametrize("wrong", [(0, 1), (1, 0)])
def test_nothing_cannot_be_shared_out(wrong: tuple[int, int]) -> None:
    with pytest.raises(OutOfRange):
        shared_divisions(*wrong)


def test_a_bore_that_ends_on_the_edge_of_its_window_is_not_lost_to_its_binary_form() -> None:
    # Two divisions of 0.025 mm end on the smallest bore, three on the largest: both count.
    assert landing_divisions(24.9, 24.9, 25.0, 25.001, 0.025) == 2
    assert landing_divisions(1.0, 1.0, 1.14, 1.15, 0.025) == 3
    # A ten-millionth of a step beyond the edge is no dust.
    assert landing_divisions(1.0, 1.0, 1.1 + 5e-9, 1.1001, 0.025) is None


@pytest.mark.parametrize(
    ("place", "says"), [(0, "least reading is 0 mm"), (2, "smallest bore is 0 mm"), (4, "division is 0 mm")]
)
def test_what_is_nought_is_named(place: int, says: str) -> None:
    given_here = [24.9, 24.9, 25.0, 25.02, 0.025]
    given_here[place] = 0
    with pytest.raises(OutOfRange, match=f"^{says}; "):
        landing_divisions(*given_here)
