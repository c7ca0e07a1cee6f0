"""What a drill leaves behind and how it is drawn out."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.calc.drilled_hole import (
    drill_before_reamer,
    expected_oversize,
    largest_hole,
    least_boring_stock,
    peck_depths,
    withdrawal_travel,
)
from tailtrue.calc.validity import OutOfRange

# Machinery's Handbook, 27th ed., p. 885 (figures from memory): size and mean oversize, inches.
_TESTED = {1 / 16: 0.0015, 1 / 8: 0.003, 1 / 4: 0.004, 1 / 2: 0.005, 3 / 4: 0.005, 1: 0.007}
_SIZES = [25.4 * size for size in _TESTED]
_OVERSIZES = [25.4 * oversize for oversize in _TESTED.values()]
# AND10387, drilled holes: up to this size, and the upper deviation with jigs, mm.
_TOLERATED = [(3.2, 0.102), (6.3, 0.127), (12.7, 0.152), (19.0, 0.203), (25.4, 0.254)]


@given(diameter=st.floats(1.5875, 25.4))
def test_mean_oversize_stays_within_the_tolerance_of_drilled_holes(diameter: float) -> None:
    upper = next(most for size, most in _TOLERATED if diameter <= size + 0.051)
    assert 0 < expected_oversize(diameter, _SIZES, _OVERSIZES) <= upper


@given(diameter=st.floats(1.6, 25.2))
def test_oversize_lies_between_its_neighbours_and_never_falls(diameter: float) -> None:
    found = expected_oversize(diameter, _SIZES, _OVERSIZES)
    assert expected_oversize(diameter + 0.1, _SIZES, _OVERSIZES) >= found
    inches = expected_oversize(diameter / 25.4, list(_TESTED), list(_TESTED.values()))
    assert 25.4 * inches == pytest.approx(found)


def test_oversize_between_two_sizes() -> None:
    assert expected_oversize(2, [1, 3, 4], [0.1, 0.3, 0.9]) == pytest.approx(0.2)
    assert expected_oversize(3.5, [1, 3, 4], [0.1, 0.3, 0.9]) == pytest.approx(0.6)
    assert expected_oversize(1, [1, 3, 4], [0.1, 0.3, 0.9]) == 0.1


def test_a_faulty_table_is_refused_in_plain_words() -> None:
    with pytest.raises(OutOfRange, match=r"^the table of oversizes needs at least two sizes and an oversize for each$"):
        expected_oversize(2, [1, 3], [0.1])
    with pytest.raises(OutOfRange, match=r"^the table of oversizes needs"):
        expected_oversize(1, [1], [0.1])
    with pytest.raises(OutOfRange, match=r"^the table of oversizes goes from 3 mm to 2 mm; each must be larger$"):
        expected_oversize(2, [1, 3, 2], [0.1, 0.1, 0.1])
    with pytest.raises(OutOfRange, match=r"^oversize is nan mm"):
        expected_oversize(2, [1, 3], [0.1, float("nan")])


@given(diameter=st.floats(5, 50), oversize=st.floats(0, 0.3), wander=st.floats(0, 0.5), offset=st.floats(0, 1))
def test_a_bore_with_the_least_stock_cleans_up_all_round(
    diameter: float, oversize: float, wander: float, offset: float
) -> None:
    bore = diameter + least_boring_stock(oversize, wander, offset)
    # The hole stands off the axis by wander and offset: its farthest wall must lie inside the bore.
    assert (diameter + oversize) / 2 + wander + offset <= bore / 2 + 1e-9
    assert largest_hole(diameter, oversize, offset) <= bore + 1e-9


def test_without_an_offset_the_hole_is_drill_and_oversize() -> None:
    assert largest_hole(20, 0.13) == pytest.approx(20.13)
    assert least_boring_stock(0.1, 0.2) == pytest.approx(0.6)


def test_a_drill_far_too_small_for_the_reamer_is_refused() -> None:
    assert drill_before_reamer(10, 4.99, 0) == pytest.approx(5.01)
    with pytest.raises(OutOfRange, match=r"^before a reamer of 10 mm the drill would be 5 mm; that is too much to ream$"):
        drill_before_reamer(10, 5, 0)


@given(
    depth=st.floats(1, 200),
    diameter=st.floats(4, 30),
    first=st.floats(1, 3),
    later=st.floats(0.5, 1),
    deep=st.floats(0.1, 0.5),
    deep_from=st.floats(3, 8),
)
def test_pecks_go_ever_deeper_to_the_depth_and_none_is_too_long(
    depth: float, diameter: float, first: float, later: float, deep: float, deep_from: float
) -> None:
    pecks = peck_depths(depth, diameter, first, later, deep, deep_from)
    assert pecks[-1] == depth
    assert pecks[0] <= first * diameter
    for before, after in pairwise(pecks):
        longest = deep if before >= deep_from * diameter else later
        assert 0 < after - before <= longest * diameter + 1e-8
    assert withdrawal_travel(pecks) == pytest.approx(2 * sum(pecks) - depth)


def test_short_pecks_begin_where_the_hole_is_deep() -> None:
    assert peck_depths(9, 1, 3, 2, 0.5, 5) == pytest.approx((3, 5, 5.5, 6, 6.5, 7, 7.5, 8, 8.5, 9))
    assert peck_depths(7, 1, 3, 2, 0.5, 5.01) == pytest.approx((3, 5, 7))
    assert peck_depths(2.5, 1, 3, 1, 0.5, 6) == (2.5,)
    # Eight tenths add up to a rounding less than 0.8, six of them to a rounding more than 0.6: neither makes a peck.
    assert peck_depths(0.8, 0.1, 1, 1, 1, 20) == pytest.approx([0.1 * count for count in range(1, 9)])
    assert peck_depths(0.7, 0.1, 1, 1, 0.5, 6)[-2:] == pytest.approx((0.65, 0.7))
    assert len(peck_depths(2.0000001, 1, 1, 1, 1, 20)) == 3
    assert len(peck_depths(2.0000001, 1, 1, 1, 0.5, 2)) == 3
    assert peck_depths(3, 1, 1, 1, 0.5, 2.0000001) == pytest.approx((1, 2, 3))


def test_one_peck_is_drawn_out_once() -> None:
    assert withdrawal_travel([12]) == 12
    with pytest.raises(OutOfRange, match=r"^there is no peck to count$"):
        withdrawal_travel([])
    with pytest.raises(OutOfRange, match=r"^a peck goes from 12 mm to 10 mm; each must be deeper than the one before$"):
        withdrawal_travel([12, 10])
