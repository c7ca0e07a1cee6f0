"""The fewest comparisons that turn a condition, in a case of three plain facts."""

from typing import Any

import pytest

from shops import EXAMPLES
from tailtrue.advise import advise, knowledge
from tailtrue.case import Case
from tailtrue.conditions import leaves, read_condition
from tailtrue.explaining.turning import distance_of, needed
from tailtrue.explaining.wording import leaf_said
from tailtrue.render.words import say


def case_of(**said: Any) -> Case:
    return Case(knowledge(), {}).with_values({f"job.{name}": value for name, value in said.items()})


def changes(case: Case, written: Any) -> list[str] | None:
    condition = read_condition(written, knowledge().catalogue)
    found = needed(case, condition, case.judge(condition))
    return None if found is None else [leaf.atom.words for leaf in found]


@pytest.mark.parametrize(
    ("written", "expected"),
    [
        (["job.alone is yes"], []),
        (["job.alone is no"], ["job.alone is no"]),
        (["job.alone is no", "job.minor is yes"], ["job.alone is no", "job.minor is yes"]),
        ([{"any": ["job.alone is no", ["job.minor is yes", "job.operator is learner"]]}], ["job.alone is no"]),
        ([{"not": "job.alone is yes"}], ["job.alone is yes"]),
        ([{"not": ["job.alone is yes", "job.minor is no"]}], ["job.alone is yes"]),
        ([{"not": {"any": ["job.alone is yes", "job.minor is no"]}}], ["job.alone is yes", "job.minor is no"]),
        # The nearer of two ways: 18 is two off 20, and twelve off 30.
        ([{"any": ["job.temperature > 30 degC", "job.temperature > 20 degC"]}], ["job.temperature > 20 degC"]),
        ([{"not": []}], None),
    ],
)  # fmt: skip
def test_the_fewest_changes(written: Any, expected: list[str] | None) -> None:
    case = case_of(alone=True, minor=False, operator="trained", temperature=18.0)
    assert changes(case, written) == expected


def test_a_comparison_below_a_not_is_wanted_the_other_way() -> None:
    case = case_of(alone=True, temperature=18.0)
    condition = read_condition(
        [{"not": {"any": ["job.alone is yes", {"not": "job.temperature > 20 degC"}]}}], knowledge().catalogue
    )
    assert [leaf.wanted for leaf in leaves(condition, case.judge(condition))] == [False, True]


@pytest.mark.parametrize(
    ("words", "off"),
    [("job.bar_length >= 400 mm", 0.25), ("job.bar_length < 200 mm", 1 / 3), ("job.bar_length between 330 mm and 900 mm", 1 / 11)],
)  # fmt: skip
def test_how_far_a_size_is_off_is_a_share_of_the_larger(words: str, off: float) -> None:
    case = case_of(bar_length=300.0)
    (leaf,) = leaves(condition := read_condition([words], knowledge().catalogue), case.judge(condition))
    assert distance_of(case, leaf.atom) == pytest.approx(off)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("job.bar_length >= 400 mm", "at least 400.0"),
        ("job.bar_length between 330 mm and 900 mm", "330.0"),
        ("job.alone is no", "no; here yes"),
        ("job.operator is one of learner, experienced", "learner or experienced; here trained"),
        ("job.operator is not trained", "not trained; here trained"),
        ("job.temperature is known", "known; here not known"),
        ("job.temperature > 20 degC", "more than 20"),
    ],
)
def test_a_comparison_is_said_with_what_it_met(words: str, said: str) -> None:
    case = case_of(bar_length=300.0, alone=True, operator="trained")
    (leaf,) = leaves(condition := read_condition([words], knowledge().catalogue), case.judge(condition))
    assert said in say(leaf_said(case, leaf), "metric")


def test_a_difference_that_print_would_round_away_is_told() -> None:
    case = case_of(bar_length=399.99)
    (leaf,) = leaves(condition := read_condition(["job.bar_length >= 400 mm"], knowledge().catalogue), case.judge(condition))
    assert "less than the digits show" in say(leaf_said(case, leaf), "metric")


def test_a_fact_held_against_another_names_both() -> None:
    case = advise(EXAMPLES / "fernhill" / "job.toml").case
    condition = read_condition(["bar.length > bar.length_limit"], knowledge().catalogue)
    (leaf,) = leaves(condition, case.judge(condition))
    text = say(leaf_said(case, leaf), "metric")
    assert knowledge().catalogue["bar.length"].label in text
    assert knowledge().catalogue["bar.length_limit"].label in text
