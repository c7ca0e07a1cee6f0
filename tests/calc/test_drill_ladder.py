"""The ladder of drills by size: order of preference, no dead ends, and what the trade drills."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tailtrue.calc.drill_ladder import drill_steps, pilot_choices
from tailtrue.calc.validity import OutOfRange

_RULE = (0.18, 0.5, 2.5, 1.1)
_METRIC = [half / 2 for half in range(2, 27)] + [14, 16, 18, 20, 22, 23, 25]


def test_usual_pilots_come_first_then_wider_then_narrower() -> None:
    # For 20 mm: usual 8 to 10, wider to 18.18, narrower from 3.6.
    sizes = [19, 18.18, 18, 10.01, 10, 9, 8, 7.99, 5, 3.6, 3.59]
    assert pilot_choices(20, sizes, *_RULE) == (8, 9, 10, 10.01, 18, 18.18, 7.99, 5, 3.6)
    assert pilot_choices(20, [], *_RULE) == ()


def test_a_large_least_pilot_bounds_the_usual_ones() -> None:
    # 0.45 of 20 mm is 9 mm, above the 8 mm of the largest step.
    assert pilot_choices(20, [8, 8.9, 9, 9.5], 0.45, *_RULE[1:]) == (9, 9.5)


def test_no_pilot_is_named_twice_when_the_largest_step_is_small() -> None:
    # Step at most 1.5: nothing usual between 13.3 and 10 mm; 12 mm is wider than usual, 9 mm narrower.
    assert pilot_choices(20, [9, 12, 14], 0.18, 0.5, 1.5, 1.1) == (12, 14, 9)


def test_a_pilot_on_a_bound_counts() -> None:
    # A quarter of 20 mm is 5, and half of it 10; a step of at most 1.5 makes both narrower than usual.
    assert pilot_choices(20, [5, 10], 0.25, 0.5, 1.5, 1.1) == (10, 5)
    assert pilot_choices(20, [4.99], 0.25, 0.5, 1.5, 1.1) == ()


@given(
    diameter=st.floats(4, 50),
    sizes=st.lists(st.floats(1, 50), max_size=12, unique=True),
    least=st.floats(0.18, 0.3),
    most=st.floats(0.3, 0.6),
)
def test_every_pilot_clears_the_chisel_edge_and_leaves_the_lips_to_cut(
    diameter: float, sizes: list[float], least: float, most: float
) -> None:
    found = pilot_choices(diameter, sizes, least, most, 2.5, 1.1)
    assert sorted(found) == sorted(
        size for size in sizes if least * diameter <= size <= max(most * diameter, diameter / 1.1)
    )


@given(last=st.sampled_from([size for size in _METRIC if size > 8]))
def test_with_a_full_set_every_drill_is_reached_by_usual_steps(last: float) -> None:
    steps = drill_steps(last, _METRIC, 8, *_RULE)
    assert steps[-1] == last
    assert steps[0] <= 8
    for pilot, drill in pairwise(steps):
        assert 0.4 * drill <= pilot <= 0.5 * drill


@given(sizes=st.lists(st.integers(2, 46), min_size=1, max_size=10, unique=True))
def test_a_ladder_is_made_of_what_there_is_and_each_step_is_allowed(sizes: list[int]) -> None:
    last = max(sizes)
    try:
        steps = drill_steps(last, sizes, 8, *_RULE)
    except OutOfRange:
        return
    assert set(steps) <= set(sizes)
    assert steps[0] <= 8
    for pilot, drill in pairwise(steps):
        assert pilot in pilot_choices(drill, sizes, *_RULE)


def test_a_dead_end_is_left_for_another_way() -> None:
    # 9.5 would be the usual pilot of 23, but 9 is too near to lead to it; the narrower 9 starts from the spot.
    assert drill_steps(23, [9, 9.5, 23], 9, *_RULE) == (9, 23)
    assert drill_steps(20, [6, 14, 20], 8, *_RULE) == (6, 14, 20)


def test_a_small_last_drill_needs_no_pilot() -> None:
    assert drill_steps(8, [3, 8], 8, *_RULE) == (8,)
    assert drill_steps(8.01, [3, 8.01], 8, *_RULE) == (3, 8.01)


def test_no_way_at_all_is_refused_with_what_is_missing() -> None:
    expected = (
        r"^no drill there is leads to one of 30 mm; a drill of at most 8 mm must start, "
        r"and each must be at least 0\.18 of the next$"
    )
    with pytest.raises(OutOfRange, match=expected):
        drill_steps(30, [5, 30], 8, *_RULE)
