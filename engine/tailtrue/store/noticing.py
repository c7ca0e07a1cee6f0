"""Whether the examples beside a rule notice small faults in its condition."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any

from tailtrue.conditions import Condition
from tailtrue.decisions import Decision, decide
from tailtrue.errors import Problem
from tailtrue.facts import Fact
from tailtrue.store.condition_faults import faults
from tailtrue.store.examples import example_case
from tailtrue.store.knowledge import Caution, Knowledge, Note, Remark, Stop
from tailtrue.store.models import ExampleFile

# Kinds of rule whose examples notice every fault; one that does not is refused.
COMPLETE = frozenset({"notes", "remarks"})
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
    """Every fault of every rule that has a condition, but those that cannot change what comes of it."""
    equal = {(row.text("rule"), row.text("fault")) for row in knowledge.tables[EQUAL]}
    return (one for one in _tried(knowledge) if (one.rule, one.fault) not in equal)


def equal_without_need(knowledge: Knowledge) -> Iterator[Problem]:
    """Faults explained as equal that are no faults of a rule any more, or that an example notices."""
    open_ones = {(one.rule, one.fault) for one in _tried(knowledge) if not one.noticed}
    for row in knowledge.tables[EQUAL]:
        if (row.text("rule"), row.text("fault")) not in open_ones:
            where = f"knowledge/{EQUAL}.csv:{row.line}"
            yield Problem(where, row.text("rule"), "is noticed, or no fault of this rule", "take the row out")


def _tried(knowledge: Knowledge) -> Iterator[Noticed]:
    kinds: dict[str, Sequence[Caution | Stop | Note | Remark]] = {
        "cautions": knowledge.cautions, "stops": knowledge.stops, "notes": knowledge.notes, "remarks": knowledge.remarks,
    }  # fmt: skip
    for kind, rules in kinds.items():
        for rule in rules:
            yield from _of_rule(knowledge, kind, rule)
    for decision in knowledge.decisions.values():
        yield from _of_decision(knowledge, decision)


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


def _of_rule(knowledge: Knowledge, kind: str, rule: Caution | Stop | Note | Remark) -> Iterator[Noticed]:
    cases = [example_case(one.facts, knowledge.catalogue, knowledge.limits) for one in rule.file.example]
    right = [rule.when.judge(get).truth for get in cases]
    for changed in faults(rule.when, knowledge.catalogue):
        noticed = any(changed.condition.judge(get).truth is not truth for get, truth in zip(cases, right, strict=True))
        yield Noticed(kind, rule.where, rule.file.id, changed.fault, noticed)


def _of_decision(knowledge: Knowledge, decision: Decision) -> Iterator[Noticed]:
    examples = knowledge.decision_examples[decision.spec.name]
    right = [_came(knowledge, decision, one) for one in examples]

    def told(place: int, when: Condition) -> bool:
        rows = list(decision.rows)
        rows[place] = replace(rows[place], when=when)
        wrong = replace(decision, rows=tuple(rows))
        return any(_came(knowledge, wrong, one) != came for one, came in zip(examples, right, strict=True))

    for place, row in enumerate(decision.rows):
        name = f"{decision.spec.name}: {row.then}"
        for changed in faults(row.when, knowledge.catalogue):
            yield Noticed("decisions", decision.where, name, changed.fault, told(place, changed.condition))


def _came(knowledge: Knowledge, decision: Decision, example: ExampleFile) -> object:
    outcome = decide(decision, example_case(example.facts, knowledge.catalogue, knowledge.limits))
    fact = outcome.fact
    if decision.hit == "unique":
        # Of these one row holds and no other: a second one that holds is a fault, though the first is taken.
        return tuple(row.judged.truth for row in outcome.rows)
    return fact.value if isinstance(fact, Fact) else fact.missing
