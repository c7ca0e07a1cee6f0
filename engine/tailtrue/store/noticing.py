"""Whether the examples beside a rule notice small faults in its condition."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any

from tailtrue.conditions import may_be_open
from tailtrue.decisions import WEIGHED, Decision, DecisionRow, Hit, Outcome, decide
from tailtrue.errors import Problem
from tailtrue.facts import Fact, NotKnown
from tailtrue.store.condition_faults import faults
from tailtrue.store.examples import example_case, then_of
from tailtrue.store.knowledge import Caution, Knowledge, Note, Remark, Stop
from tailtrue.store.models import DecisionExampleFile
from tailtrue.store.sop import Rule as Standing
from tailtrue.store.sop import conditional
from tailtrue.store.sop_models import SopRuleFile
from tailtrue.tables import Table
from tailtrue.truth import Truth

# Kinds of rule whose examples notice every fault; one that does not is refused.
COMPLETE = frozenset({"cautions", "decisions", "notes", "remarks", "standing", "stops"})
NOT_KNOWN_TURNED = "what is not known turned round"
LEFT_OUT, TURNED = "the row left out", "the least and the greatest turned round"
# Faults that change nothing, each with its reason.
EQUAL = "equal_faults"


@dataclass(frozen=True)
class Noticed:
    """One fault put into one rule, and whether an example told."""

    kind: str
    where: str
    rule: str
    fault: str
    noticed: bool


def noticing(knowledge: Knowledge) -> Iterator[Noticed]:
    """Every fault of every rule that has a condition."""
    kinds: dict[str, Sequence[Caution | Stop | Note | Remark]] = {
        "cautions": knowledge.cautions, "stops": knowledge.stops, "notes": knowledge.notes, "remarks": knowledge.remarks,
    }  # fmt: skip
    for kind, rules in kinds.items():
        for rule in rules:
            yield from _of_rule(knowledge, kind, rule)
    for standing in conditional(knowledge.sop):
        yield from _of_rule(knowledge, "standing", standing)
    for decision in knowledge.decisions.values():
        yield from _of_decision(knowledge, decision)


def but_equal(found: Iterable[Noticed], explained: Table) -> Iterator[Noticed]:
    """The faults without those that cannot change what comes of a rule."""
    equal = {(row.text("rule"), row.text("fault")) for row in explained}
    return (one for one in found if (one.rule, one.fault) not in equal)


def equal_without_need(found: Iterable[Noticed], explained: Table) -> Iterator[Problem]:
    """Faults explained as equal that are no faults of a rule any more, or that an example notices."""
    open_ones = {(one.rule, one.fault) for one in found if not one.noticed}
    for row in explained:
        if (row.text("rule"), row.text("fault")) not in open_ones:
            where = f"knowledge/{EQUAL}.csv:{row.line}"
            yield Problem(where, row.text("rule"), "is noticed, or no fault of this rule", "take the row out")


def unnoticed(found: Sequence[Noticed], kinds: frozenset[str] = COMPLETE) -> Iterator[Problem]:
    """The faults that no example noticed, in kinds of rule whose examples are to be complete."""
    for one in found:
        if one.kind in kinds and not one.noticed:
            yield Problem(
                one.where, one.rule, f"no example notices this fault: {one.fault}", "add an example that tells the two apart"
            )


def counts(found: Sequence[Noticed]) -> dict[str, Any]:
    """How many faults were tried and noticed, and by kind of rule how many are open."""
    open_ones = Counter(one.kind for one in found if not one.noticed)
    return {
        "condition_faults": len(found),
        "condition_faults_noticed": sum(one.noticed for one in found),
        **{f"condition_faults_open_in_{kind}": count for kind, count in sorted(open_ones.items())},
    }


def _of_rule(
    knowledge: Knowledge, kind: str, rule: Caution | Stop | Note | Remark | Standing[SopRuleFile]
) -> Iterator[Noticed]:
    cases = [example_case(one.facts, knowledge.catalogue, knowledge.limits) for one in rule.file.example]
    right = [rule.when.judge(get).truth for get in cases]
    for changed in faults(rule.when, knowledge.catalogue):
        noticed = any(changed.condition.judge(get).truth is not truth for get, truth in zip(cases, right, strict=True))
        yield Noticed(kind, rule.where, rule.file.id, changed.fault, noticed)
    if isinstance(rule, Stop | Standing) and then_of(rule) and may_be_open(rule.when, knowledge.limits):
        # An example says what comes where the rule cannot be judged; the check holds the two together.
        told = any(example.then for example in rule.file.example)
        yield Noticed(kind, rule.where, rule.file.id, NOT_KNOWN_TURNED, told)


def _of_decision(knowledge: Knowledge, decision: Decision) -> Iterator[Noticed]:
    examples = knowledge.decision_examples[decision.spec.name]
    right = [_came(knowledge, decision, one) for one in examples]

    def told(place: int, *instead: DecisionRow, hit: Hit = decision.hit) -> bool:
        rows = (*decision.rows[:place], *instead, *decision.rows[place + 1 :])
        wrong = replace(decision, rows=rows, hit=hit)
        return any(_came(knowledge, wrong, one) != came for one, came in zip(examples, right, strict=True))

    for place, row in enumerate(decision.rows):
        name = f"{decision.spec.name}: {row.then}"
        for changed in faults(row.when, knowledge.catalogue):
            noticed = told(place, replace(row, when=changed.condition))
            yield Noticed("decisions", decision.where, name, changed.fault, noticed)
        if decision.hit in WEIGHED:
            yield Noticed("decisions", decision.where, name, LEFT_OUT, told(place))
            turned: Hit = "greatest" if decision.hit == "least" else "least"
            if not row.settles:
                yield Noticed("decisions", decision.where, name, TURNED, told(place, row, hit=turned))
        if _may_be_open(knowledge, decision, row) and not row.never_taken:
            noticed = any(_asks(knowledge, decision, place, one) for one in examples)
            # Where an earlier row is always open too, nothing of this one can be told.
            if noticed or any(_asks(knowledge, decision, place, one) for one in _thinned(row, examples)):
                yield Noticed("decisions", decision.where, name, NOT_KNOWN_TURNED, noticed)


def _may_be_open(knowledge: Knowledge, decision: Decision, row: DecisionRow) -> bool:
    weighed = decision.hit in WEIGHED and not row.settles and row.gives not in knowledge.limits
    return weighed or may_be_open(row.when, knowledge.limits)


def _thinned(row: DecisionRow, examples: Iterable[DecisionExampleFile]) -> Iterator[DecisionExampleFile]:
    """The examples with one fact less that the row reads."""
    for example in examples:
        for name in {row.gives, *row.when.names()} & set(example.facts):
            less = {fact: value for fact, value in example.facts.items() if fact != name}
            yield example.model_copy(update={"facts": less})


def _asks(knowledge: Knowledge, decision: Decision, place: int, example: DecisionExampleFile) -> bool:
    """Whether an example tells that this row passes over what is not known, or that it asks.

    One that asks is told where it and all behind it pass over instead: several rows often hang on the same fact, and
    then each that is left would still ask.
    """
    asks = decision.rows[place].if_unknown == "ask"
    rows = list(decision.rows)
    for other in range(place, len(rows)) if asks else (place,):
        rows[other] = replace(rows[other], if_unknown="pass-over" if asks else "ask")
    get = example_case(example.facts, knowledge.catalogue, knowledge.limits)
    here = decide(decision, get).rows[place]
    if here.judged.truth is not Truth.UNKNOWN and not isinstance(here.size, NotKnown):
        return False
    return _choice(decide(replace(decision, rows=tuple(rows)), get)) != _choice(decide(decision, get))


def _came(knowledge: Knowledge, decision: Decision, example: DecisionExampleFile) -> object:
    outcome = decide(decision, example_case(example.facts, knowledge.catalogue, knowledge.limits))
    if decision.hit == "unique":
        # Of these one row holds and no other: a second one that holds is a fault, though the first is taken.
        return tuple(row.judged.truth for row in outcome.rows)
    return _choice(outcome), outcome.beside


def _choice(outcome: Outcome) -> object:
    return outcome.fact.value if isinstance(outcome.fact, Fact) else outcome.fact.missing
