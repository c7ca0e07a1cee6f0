"""Faults in the conditions of rules are noticed by the examples beside them."""

import pytest

from tailtrue.advise import knowledge
from tailtrue.conditions import Block, read_condition
from tailtrue.facts import FactSpec
from tailtrue.store.condition_faults import faults
from tailtrue.store.noticing import COMPLETE, EQUAL, Noticed, but_equal, counts, equal_without_need, noticing, unnoticed
from tailtrue.tables import Row, Table

CATALOGUE = {
    "a.yes": FactSpec("a.yes", "yes-no", "a", "given"),
    "a.way": FactSpec("a.way", "choice", "b", "given", choices=("one", "two", "three")),
    "a.size": FactSpec("a.size", "quantity", "c", "given", unit="mm"),
    "a.count": FactSpec("a.count", "count", "d", "given"),
}


def told(written: list[object]) -> list[str]:
    return [changed.fault for changed in faults(read_condition(written, CATALOGUE), CATALOGUE)]


def test_a_part_is_left_out_and_all_is_made_any() -> None:
    found = told(["a.yes is yes", "a.way is one"])
    assert "left out: a.yes is yes" in found
    assert any(fault.startswith("'all' made 'any'") for fault in found)


def test_any_is_made_all_and_not_is_left_out() -> None:
    found = told([{"any": ["a.yes is yes", {"not": "a.way is one"}]}])
    assert any(fault.startswith("'any' made 'all'") for fault in found)
    assert "'not' left out before: a.way is one" in found


@pytest.mark.parametrize("words", ["a.yes is yes", "a.way is not one", "a.size >= 3 mm", "a.size is known", "a.count < 2"])
def test_every_comparison_is_turned_round(words: str) -> None:
    assert f"turned round: {words}" in told([words])


def test_a_bound_is_moved_both_ways_a_count_by_one() -> None:
    condition = read_condition(["a.count < 2"], CATALOGUE)
    moved = [
        part.operands for changed in faults(condition, CATALOGUE) if "bound" in changed.fault
        for part in (changed.condition.parts if isinstance(changed.condition, Block) else ())
    ]  # fmt: skip
    assert moved == [(3.0,), (1.0,)]


def test_each_word_of_a_list_is_left_out() -> None:
    found = told(["a.way is one of one, two"])
    assert [fault for fault in found if "left out of" in fault] == [
        "'one' left out of: a.way is one of one, two",
        "'two' left out of: a.way is one of one, two",
    ]


@pytest.fixture(scope="module")
def tried() -> tuple[Noticed, ...]:
    """Every fault of the rule base."""
    return tuple(noticing(knowledge()))


def test_the_examples_of_complete_kinds_notice_every_fault(tried: tuple[Noticed, ...]) -> None:
    explained = knowledge().tables[EQUAL]
    assert list(unnoticed(tuple(but_equal(tried, explained)))) == []
    assert {one.kind for one in tried} >= COMPLETE
    assert list(equal_without_need(tried, explained)) == []


def test_a_fault_explained_as_equal_is_not_asked_for_again() -> None:
    one = Noticed("stops", "knowledge/stops/x.toml:3", "x", "left out: a.yes is yes", noticed=False)
    other = Noticed("stops", "knowledge/stops/x.toml:9", "y", "left out: a.yes is yes", noticed=False)
    explained = Table(EQUAL, (Row(EQUAL, 2, {"rule": "x", "fault": "left out: a.yes is yes"}),))
    assert list(but_equal([one, other], explained)) == [other]
    assert list(equal_without_need([one, other], explained)) == []


def test_an_unnoticed_fault_is_told_with_file_rule_and_fault() -> None:
    lost = Noticed("stops", "knowledge/stops/x.toml:3", "x", "left out: a.yes is yes", noticed=False)
    (problem,) = unnoticed([lost, Noticed("cautions", "w", "y", "f", noticed=False)], frozenset({"stops"}))
    assert (problem.where, problem.said) == ("knowledge/stops/x.toml:3", "x")
    assert "left out: a.yes is yes" in problem.wrong
    assert counts([lost])["condition_faults_open_in_stops"] == 1


def test_a_fault_of_an_alternative_that_is_never_taken_is_noticed_too(tried: tuple[Noticed, ...]) -> None:
    found = {(one.rule, one.fault): one.noticed for one in tried}
    assert found["hole.way: trepanned", "left out: hole.there is no"]
    assert found["bore.make: reamed", "turned round: job.tailstock_proved is yes"]


def test_a_fault_called_equal_that_an_example_notices_is_told(tried: tuple[Noticed, ...]) -> None:
    row = Row(EQUAL, 2, {"rule": "bore.gauge: bore-gauge", "fault": "turned round: crib.has_bore_gauge is yes"})
    (problem,) = equal_without_need(tried, Table(EQUAL, (row,)))
    assert problem.where == "knowledge/equal_faults.csv:2"
