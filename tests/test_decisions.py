"""Choices: every alternative judged, the first that holds chosen, and what is not known never passed over in silence."""

from dataclasses import replace
from typing import Any, Literal

from tailtrue.conditions import read_condition
from tailtrue.decisions import Decision, DecisionRow, decide
from tailtrue.facts import Fact, FactSpec, NotKnown
from tailtrue.truth import Truth

SPECS = {
    "bar.long": FactSpec("bar.long", "yes-no", "the bar is long", "given"),
    "shop.steady": FactSpec("shop.steady", "yes-no", "there is a steady", "given"),
}
HOLD = FactSpec("bar.hold", "choice", "how it is held", "decided", choices=("short", "steady"))


def row(then: str, when: str, if_unknown: Literal["ask", "pass-over"] = "ask") -> DecisionRow:
    return DecisionRow(then, then, read_condition([when], SPECS), f"why {then}", ("common-practice",), if_unknown)


def decision(*rows: DecisionRow) -> Decision:
    return Decision(HOLD, "How is it held?", "priority", rows, "here")


def given(**known: bool) -> Any:
    facts = {name.replace("_", ".", 1): value for name, value in known.items()}
    return lambda name: Fact(SPECS[name], facts[name]) if name in facts else NotKnown(SPECS[name], (name,))


BOTH = decision(row("short", "bar.long is no"), row("steady", "shop.steady is yes"))


def test_the_first_that_holds_is_chosen_and_the_others_are_still_judged() -> None:
    outcome = decide(BOTH, given(bar_long=False, shop_steady=True))
    assert isinstance(outcome.fact, Fact)
    assert outcome.fact.value == "short"
    assert outcome.fact.limited_by == "why short"
    assert [(one.row.then, one.judged.truth, one.chosen) for one in outcome.rows] == [
        ("short", Truth.YES, True),
        ("steady", Truth.YES, False),
    ]


def test_an_earlier_row_that_cannot_be_judged_stops_the_choice() -> None:
    outcome = decide(BOTH, given(shop_steady=True))
    assert isinstance(outcome.fact, NotKnown)
    assert outcome.fact.missing == ("bar.long",)


def test_unless_it_may_be_passed_over() -> None:
    rows = decision(row("short", "bar.long is no", "pass-over"), row("steady", "shop.steady is yes"))
    fact = decide(rows, given(shop_steady=True)).fact
    assert isinstance(fact, Fact)
    assert fact.value == "steady"


def test_no_way_that_fits_is_said_in_the_words_of_the_question() -> None:
    fact = decide(BOTH, given(bar_long=True, shop_steady=False)).fact
    assert isinstance(fact, NotKnown)
    assert fact.trouble == "How is it held? No way fits."


NEVER = replace(row("short", "bar.long is no"), never_taken="nothing is written for it")


def test_what_is_never_taken_is_judged_and_shown_beside_the_choice() -> None:
    outcome = decide(decision(NEVER, row("steady", "shop.steady is yes")), given(bar_long=False, shop_steady=True))
    assert isinstance(outcome.fact, Fact)
    assert outcome.fact.value == "steady"
    assert outcome.beside == ("short",)


def test_what_is_never_taken_is_no_way_out_where_nothing_else_fits() -> None:
    outcome = decide(decision(row("steady", "shop.steady is yes"), NEVER), given(bar_long=False, shop_steady=False))
    assert isinstance(outcome.fact, NotKnown)
    assert outcome.fact.trouble == "How is it held? No way fits."


def test_what_is_never_taken_asks_for_nothing() -> None:
    outcome = decide(decision(NEVER, row("steady", "shop.steady is yes")), given(shop_steady=True))
    assert isinstance(outcome.fact, Fact)
    assert outcome.fact.value == "steady"
    assert outcome.beside == ()
