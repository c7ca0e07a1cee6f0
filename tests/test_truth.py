"""Kleene's tables."""

from itertools import product

from hypothesis import given
from hypothesis import strategies as st

from tailtrue.truth import Truth, all_of, any_of, negated

truths = st.sampled_from(list(Truth))


def test_tables_of_two_parts() -> None:
    order = [Truth.NO, Truth.UNKNOWN, Truth.YES]
    for a, b in product(order, order):
        assert all_of([a, b]) is order[min(order.index(a), order.index(b))]
        assert any_of([a, b]) is order[max(order.index(a), order.index(b))]


def test_empty_blocks_are_the_neutral_ones() -> None:
    assert all_of([]) is Truth.YES
    assert any_of([]) is Truth.NO


@given(st.lists(truths, max_size=5))
def test_de_morgan(parts: list[Truth]) -> None:
    assert negated(all_of(parts)) is any_of([negated(part) for part in parts])


@given(st.lists(truths, max_size=4), truths)
def test_learning_never_turns_a_settled_truth(parts: list[Truth], learnt: Truth) -> None:
    before = all_of([*parts, Truth.UNKNOWN])
    after = all_of([*parts, learnt])
    assert before is Truth.UNKNOWN or after is before
