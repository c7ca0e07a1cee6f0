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


LENGTHS = {
    name: FactSpec(name, "quantity", name, "computed", "mm") for name in ("bar.stock_gives", "bar.room", "job.wish")
}  # fmt: skip


def weighing(hit: Literal["least", "greatest"], *rows: tuple[str, str, str]) -> Decision:
    """Rows of: then, the size that it gives, the fact that must be known for it to settle the question."""
    made = tuple(
        DecisionRow(
            then, then, read_condition([f"{asks} is known"] if asks else [], LENGTHS), "why", ("common-practice",), "ask",
            gives=gives, settles=bool(asks),
        )
        for then, gives, asks in rows
    )  # fmt: skip
    return Decision(HOLD, "What binds?", hit, made, "here")


WISH, STOCK, ROOM = ("wish", "job.wish", "job.wish"), ("stock", "bar.stock_gives", ""), ("room", "bar.room", "")


def sizes(**known: float) -> Any:
    facts = {name.replace("_", ".", 1): value for name, value in known.items()}
    return lambda name: Fact(LENGTHS[name], facts[name]) if name in facts else NotKnown(LENGTHS[name], (name,))


def chosen(hit: Literal["least", "greatest"], **known: float) -> Any:
    fact = decide(weighing(hit, WISH, STOCK, ROOM), sizes(**known)).fact
    return fact.value if isinstance(fact, Fact) else fact.missing


def test_of_sizes_the_least_or_the_greatest_binds_and_of_equal_ones_the_first() -> None:
    assert chosen("least", bar_stock_gives=300.0, bar_room=200.0) == "room"
    assert chosen("greatest", bar_stock_gives=300.0, bar_room=200.0) == "stock"
    assert chosen("least", bar_stock_gives=200.0, bar_room=200.0) == chosen("greatest", bar_stock_gives=2.0, bar_room=2.0)


def test_what_settles_the_question_is_taken_before_any_size() -> None:
    outcome = decide(weighing("least", WISH, STOCK, ROOM), sizes(job_wish=900.0, bar_stock_gives=300.0, bar_room=200.0))
    assert outcome.won is not None
    assert outcome.won.row.then == "wish"
    assert outcome.weighed == ()


def test_a_size_that_is_not_known_stops_the_choice() -> None:
    assert chosen("least", bar_stock_gives=300.0) == ("bar.room",)


def test_each_size_that_was_weighed_is_kept_with_its_name() -> None:
    outcome = decide(weighing("least", WISH, STOCK, ROOM), sizes(bar_stock_gives=300.0, bar_room=200.0))
    assert sorted(outcome.weighed) == [(200.0, "room"), (300.0, "stock")]
