"""What a rule does where something is not known is told by its examples: turned round, it is noticed."""

from dataclasses import replace

import pytest

from tailtrue.advise import knowledge
from tailtrue.conditions import may_be_open, read_condition
from tailtrue.facts import FactSpec
from tailtrue.store.examples import example_problems
from tailtrue.store.knowledge import Knowledge
from tailtrue.store.noticing import NOT_KNOWN_TURNED, noticing

CATALOGUE = {
    "a.yes": FactSpec("a.yes", "yes-no", "a", "given"),
    "a.size": FactSpec("a.size", "quantity", "b", "given", unit="mm"),
    "limit.size": FactSpec("limit.size", "quantity", "c", "limit", unit="mm"),
}


def nothing_else(known: Knowledge) -> Knowledge:
    """The rule base without most rules, so that no faults of theirs are tried."""
    sop = replace(known.sop, lines=(), limits=())
    return replace(known, cautions=(), stops=(), notes=(), remarks=(), decisions={}, sop=sop)


@pytest.mark.parametrize(
    ("written", "open_"),
    [
        (["a.yes is yes"], True),
        (["a.yes is known"], False),
        (["a.size is known", "a.size > 3 mm"], False),
        ([{"any": ["a.size is unknown", "a.size > limit.size"]}], False),
        (["a.size is known", "a.yes is yes"], True),
    ],
)
def test_a_condition_is_open_only_where_it_does_not_ask_whether_a_fact_is_known(written: list[object], open_: bool) -> None:
    assert may_be_open(read_condition(written, CATALOGUE), {"limit.size"}) is open_


def test_every_stop_that_would_do_the_other_thing_is_told_by_an_example() -> None:
    known = knowledge()
    other = {"refuse": "pass-over", "pass-over": "refuse"}
    turned = tuple(
        replace(stop, file=stop.file.model_copy(update={"if_unknown": other[stop.file.if_unknown]})) for stop in known.stops
    )
    told = {problem.said.partition(":")[0] for problem in example_problems(replace(known, stops=turned))}
    assert told == {stop.file.id for stop in known.stops if may_be_open(stop.when, known.limits)}


def test_every_standing_line_that_would_do_the_other_thing_is_told_by_an_example() -> None:
    known = knowledge()
    other = {"show": "leave-out", "leave-out": "show"}
    turned = tuple(
        replace(line, file=line.file.model_copy(update={"if_unknown": other[line.file.if_unknown]}))
        for line in known.sop.lines
    )
    problems = example_problems(replace(known, sop=replace(known.sop, lines=turned)))
    told = {problem.said.partition(":")[0] for problem in problems}
    assert told == {line.file.id for line in known.sop.lines if may_be_open(line.when, known.limits)}
    assert {"never-reverse", "banner-compound"} <= told


def test_a_standing_line_whose_examples_do_not_say_what_comes_is_noticed_by_none() -> None:
    known = knowledge()
    silent = tuple(
        replace(
            line,
            file=line.file.model_copy(update={"example": [e.model_copy(update={"then": ""}) for e in line.file.example]}),
        )
        for line in known.sop.lines
    )
    lost = replace(nothing_else(known), sop=replace(known.sop, lines=silent))
    open_ones = {one.rule for one in noticing(lost) if one.fault == NOT_KNOWN_TURNED and not one.noticed}
    assert open_ones == {line.file.id for line in known.sop.lines if may_be_open(line.when, known.limits)}


def test_a_control_whose_examples_are_gone_is_told() -> None:
    known = knowledge()
    bare = tuple(replace(one, file=one.file.model_copy(update={"example": []})) for one in known.sop.controls)
    problems = list(example_problems(replace(known, sop=replace(known.sop, controls=bare))))
    assert {"guard-none", "run-down-unknown"} <= {problem.said for problem in problems}
    assert all("has no example that is" in problem.wrong for problem in problems)


def test_a_stop_whose_examples_do_not_say_what_comes_is_noticed_by_none() -> None:
    known = knowledge()
    (stop,) = [one for one in known.stops if one.file.id == "dog-does-not-fit"]
    silent = [one.model_copy(update={"then": ""}) for one in stop.file.example]
    lost = replace(stop, file=stop.file.model_copy(update={"example": silent}))
    (found,) = [
        one
        for one in noticing(replace(nothing_else(known), stops=(lost,)))
        if one.rule == "dog-does-not-fit" and one.fault == NOT_KNOWN_TURNED
    ]
    assert not found.noticed


def test_a_choice_without_an_example_that_asks_is_noticed_by_none() -> None:
    known = knowledge()
    examples = tuple(one for one in known.decision_examples["centre.tail"] if one.expect != "unknown")
    choice = {"centre.tail": known.decisions["centre.tail"]}
    lost = replace(nothing_else(known), decisions=choice, decision_examples={"centre.tail": examples})
    open_ones = [one.rule for one in noticing(lost) if one.fault == NOT_KNOWN_TURNED and not one.noticed]
    assert open_ones == ["centre.tail: live", "centre.tail: dead"]


def test_a_rule_that_asks_whether_a_fact_is_known_has_examples_with_it_and_without_it() -> None:
    known = knowledge()
    key = next(one for one in known.notes if one.file.id == "plain-chuck-key")
    for kept, lacks in ((True, "leaves out"), (False, "gives")):
        examples = [one for one in key.file.example if bool(one.facts) is kept]
        bare = key._replace(file=key.file.model_copy(update={"example": examples}))
        told = {problem.wrong for problem in example_problems(replace(known, notes=(bare,))) if problem.said == key.file.id}
        assert f"asks whether lathe.chuck_key is known, and no example {lacks} it" in told
