"""The grammar of conditions, what it refuses, and how it judges."""

from typing import Any

import pytest

from tailtrue.conditions import ConditionError, read_condition
from tailtrue.facts import Fact, FactSpec, NotKnown
from tailtrue.truth import Truth

SPECS = {
    "bar.diameter": FactSpec("bar.diameter", "quantity", "bar", "given", "mm", least=10.0, most=60.0),
    "bar.length": FactSpec("bar.length", "quantity", "length", "given", "mm"),
    "lathe.power": FactSpec("lathe.power", "quantity", "power", "given", "W"),
    "lathe.nose": FactSpec("lathe.nose", "choice", "nose", "given", choices=("threaded", "cam-lock")),
    "lathe.guard": FactSpec("lathe.guard", "yes-no", "guard", "given"),
    "bar.label": FactSpec("bar.label", "text", "label", "given"),
}


def judge(written: Any, **known: Any) -> Truth:
    facts = {name.replace("__", "."): value for name, value in known.items()}

    def get(name: str) -> Fact | NotKnown:
        return Fact(SPECS[name], facts[name]) if name in facts else NotKnown(SPECS[name], (name,))

    return read_condition(written, SPECS).judge(get).truth


@pytest.mark.parametrize(
    ("written", "value", "truth"),
    [
        ("bar.diameter >= 25 mm", 25.0, Truth.YES),
        ("bar.diameter > 25 mm", 25.0, Truth.NO),
        ("bar.diameter <= 1 in", 25.4, Truth.YES),
        ("bar.diameter < 1 in", 25.4, Truth.NO),
        ("bar.diameter between 20 mm and 1 in", 25.4, Truth.YES),
        ("bar.diameter between 20 mm and 1 in", 25.5, Truth.NO),
        ("bar.diameter is known", 20.0, Truth.YES),
        ("bar.diameter is unknown", 20.0, Truth.NO),
        ({"not": "bar.diameter >= 25 mm"}, 20.0, Truth.YES),
    ],
)
def test_a_comparison_reads_its_quantity(written: Any, value: float, truth: Truth) -> None:
    assert judge(written, bar__diameter=value) is truth


def test_choices_and_yes_no() -> None:
    assert judge("lathe.nose is threaded", lathe__nose="threaded") is Truth.YES
    assert judge("lathe.nose is not threaded", lathe__nose="threaded") is Truth.NO
    assert judge("lathe.nose is one of threaded, cam-lock", lathe__nose="cam-lock") is Truth.YES
    assert judge("lathe.guard is no", lathe__guard=False) is Truth.YES
    assert judge("lathe.guard is not no", lathe__guard=False) is Truth.NO


def test_two_facts_of_one_dimension_are_compared() -> None:
    assert judge("bar.length > bar.diameter", bar__length=300.0, bar__diameter=25.0) is Truth.YES


def test_what_is_not_said_is_not_known() -> None:
    assert judge("bar.diameter >= 25 mm") is Truth.UNKNOWN
    assert judge(["bar.diameter >= 25 mm", "lathe.guard is yes"], lathe__guard=False) is Truth.NO
    assert judge({"any": ["bar.diameter >= 25 mm", "lathe.guard is yes"]}, lathe__guard=True) is Truth.YES
    assert judge("bar.diameter is unknown") is Truth.YES


@pytest.mark.parametrize(
    ("written", "message"),
    [
        ("bar.diametre >= 25 mm", "no fact is named 'bar.diametre'; a fact named 'bar.diameter' exists"),
        ("bar.diameter >= 25", "'bar.diameter >= 25'"),
        ("bar.diameter >= 25 N", "'bar.diameter >= 25 N'"),
        ("bar.diameter >= 5 mm", "always holds for a plausible 'bar.diameter'"),
        ("bar.diameter > 60 mm", "always fails for a plausible 'bar.diameter'"),
        ("bar.diameter > lathe.power", "'bar.diameter' is in mm, 'lathe.power' is not"),
        ("bar.diameter between 30 mm and 20 mm", "the smaller first"),
        ("lathe.nose is bolted", "is one of threaded, cam-lock; 'bolted' is none"),
        ("lathe.nose > 3 mm", "has no size to compare"),
        ("lathe.guard is maybe", "'lathe.guard' is yes or no"),
        ("bar.label is long", "'is' fits a choice or yes-no"),
        ("bar.diameter * 2 > 25 mm", "cannot be read as a condition"),
        ({"all": ["bar.diameter >= 25 mm"]}, "'any' with a list, or 'not'"),
        (3, "is not a condition"),
    ],
)
def test_what_the_grammar_refuses(written: Any, message: str) -> None:
    with pytest.raises(ConditionError) as refused:
        read_condition(written, SPECS)
    assert message in str(refused.value)


def test_a_judged_condition_shows_what_it_met() -> None:
    condition = read_condition(["bar.diameter >= 25 mm"], SPECS)
    judged = condition.judge(lambda name: Fact(SPECS[name], 20.0))
    (leaf,) = judged.parts
    assert (leaf.words, leaf.met) == ("bar.diameter >= 25 mm", "20 mm")
