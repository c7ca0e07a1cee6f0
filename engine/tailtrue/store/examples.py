"""Examples that stand beside a rule in its file: each must come out as its author says."""

from collections.abc import Iterable, Iterator, Mapping
from types import MappingProxyType
from typing import Any

from tailtrue.conditions import Condition, Get, atoms, may_be_open
from tailtrue.decisions import Decision, decide
from tailtrue.errors import FactsWrong, Problem
from tailtrue.facts import Fact, FactSpec, NotKnown
from tailtrue.quantities import read_quantity
from tailtrue.store.knowledge import Knowledge, Stop
from tailtrue.store.models import DecisionExampleFile, ExampleFile
from tailtrue.store.sop import Rule, conditional
from tailtrue.store.sop_models import SopRuleFile
from tailtrue.truth import Truth

_BOTH_WAYS = ("fires", "silent")
# What a stop or a standing line does that cannot be judged, in the words of its examples.
THEN = {"refuse": "refuses", "pass-over": "passes over", "show": "shows", "leave-out": "leaves out"}
_SAYS = {Truth.YES: "fires", Truth.NO: "silent", Truth.UNKNOWN: "unknown"}


def example_case(
    facts: Mapping[str, Any], catalogue: Mapping[str, FactSpec], limits: Mapping[str, Fact] = MappingProxyType({})
) -> Get:
    """A way to facts that knows those of an example, and the named limits, which every case has."""

    def get(name: str) -> Fact | NotKnown:
        spec = catalogue[name]
        if name not in facts:
            return limits.get(name) or NotKnown(spec, (name,))
        return Fact(spec, _value(facts[name], spec))

    return get


def _value(written: Any, spec: FactSpec) -> Any:
    if spec.kind == "yes-no" and isinstance(written, str):
        return written == "yes"
    if spec.is_number:
        return read_quantity(written, spec.unit) if isinstance(written, str) else float(written)
    return written


def example_problems(knowledge: Knowledge) -> Iterator[Problem]:
    """Every example of the knowledge that does not come out as it says.

    With the rules of a shop laid over it only the shop's own are judged: a limit drawn tighter changes what the others say.
    """
    if knowledge.shop.changes:
        added = {(one.what, one.name) for one in knowledge.shop.changes if one.kind == "add"}
        kinds = (("caution", knowledge.cautions), ("stop", knowledge.stops), ("note", knowledge.notes))
        for what, rules in kinds:
            for rule in (rule for rule in rules if (what, rule.file.id) in added):
                yield from _judge(knowledge, rule.file.id, rule.when, rule.file.example, rule.where)
        return
    for caution in knowledge.cautions:
        yield from _judge(knowledge, caution.file.id, caution.when, caution.file.example, caution.where)
        if caution.file.when:
            yield from _told(caution.file.id, caution.file.example, caution.where, _due(knowledge, caution.when))
            yield from _asked(caution.file.id, caution.when, caution.file.example, caution.where)
    for stop in knowledge.stops:
        yield from _judge(knowledge, stop.file.id, stop.when, stop.file.example, stop.where)
        yield from _told(stop.file.id, stop.file.example, stop.where, _due(knowledge, stop.when))
        yield from _asked(stop.file.id, stop.when, stop.file.example, stop.where)
        yield from _comes_then(stop)
    for remark in knowledge.remarks:
        yield from _judge(knowledge, remark.file.id, remark.when, remark.file.example, remark.where)
        yield from _told(remark.file.id, remark.file.example, remark.where, _due(knowledge, remark.when))
        yield from _asked(remark.file.id, remark.when, remark.file.example, remark.where)
    for note in knowledge.notes:
        yield from _judge(knowledge, note.file.id, note.when, note.file.example, note.where)
        if note.file.example:
            yield from _told(note.file.id, note.file.example, note.where, _due(knowledge, note.when))
            yield from _asked(note.file.id, note.when, note.file.example, note.where)
    for standing in conditional(knowledge.sop):
        yield from _judge(knowledge, standing.file.id, standing.when, standing.file.example, standing.where)
        yield from _told(standing.file.id, standing.file.example, standing.where, _due(knowledge, standing.when))
        yield from _asked(standing.file.id, standing.when, standing.file.example, standing.where)
        yield from _comes_then(standing)


def then_of(rule: Stop | Rule[SopRuleFile]) -> str:
    """What a stop or an entry of the standing procedure does that cannot be judged; nothing where no entry may choose."""
    return THEN.get(getattr(rule.file, "if_unknown", ""), "")


def decision_example_problems(
    knowledge: Knowledge, decision: Decision, examples: Iterable[DecisionExampleFile]
) -> Iterator[Problem]:
    """Examples of a decision: the alternative that must win, or 'none', or 'unknown'; and what holds beside it."""
    for example in examples:
        yield from _unknown_facts(knowledge, decision.spec.name, example, decision.where)
        outcome = decide(decision, example_case(example.facts, knowledge.catalogue, knowledge.limits))
        fact = outcome.fact
        came = str(fact.value) if isinstance(fact, Fact) else ("unknown" if fact.missing else "none")
        if came != example.expect:
            yield Problem(
                decision.where, f"{decision.spec.name}: {example.name}", f"says {example.expect}, came out {came}",
                "mend the rows or the example",
            )  # fmt: skip
        if sorted(outcome.beside) != sorted(example.beside):
            yield Problem(
                decision.where, f"{decision.spec.name}: {example.name}",
                f"says beside it {_listed(example.beside)}, came out {_listed(outcome.beside)}",
                "mend the rows or the example",
            )  # fmt: skip


def _listed(names: Iterable[str]) -> str:
    return ", ".join(sorted(names)) or "nothing"


def _judge(knowledge: Knowledge, name: str, when: Condition, examples: list[ExampleFile], where: str) -> Iterator[Problem]:
    for example in examples:
        yield from (wrong := list(_unknown_facts(knowledge, name, example, where)))
        if wrong:
            continue
        try:
            truth = when.judge(example_case(example.facts, knowledge.catalogue, knowledge.limits)).truth
        except (FactsWrong, ValueError, TypeError) as broken:
            yield Problem(where, f"{name}: {example.name}", f"cannot be judged: {broken}", "mend the facts of the example")
            continue
        if _SAYS[truth] != example.expect:
            yield Problem(
                where, f"{name}: {example.name}", f"says {example.expect}, came out {_SAYS[truth]}",
                "mend the rule or the example",
            )  # fmt: skip


def _unknown_facts(knowledge: Knowledge, name: str, example: ExampleFile, where: str) -> Iterator[Problem]:
    for fact in example.facts:
        if fact not in knowledge.catalogue:
            yield Problem(where, f"{name}: {example.name}", f"no fact is named '{fact}'", "use a fact of the catalogue")


def _comes_then(rule: Stop | Rule[SopRuleFile]) -> Iterator[Problem]:
    """What its examples say of a rule that cannot be judged is what it does."""
    for example in rule.file.example:
        wanted = then_of(rule) if example.expect == "unknown" else ""
        if example.then != wanted:
            yield Problem(
                rule.where, f"{rule.file.id}: {example.name}", f"says then '{example.then}', comes '{wanted}'",
                "decide what comes when this is not known, and mend the rule or the example",
            )  # fmt: skip


def _due(knowledge: Knowledge, when: Condition) -> tuple[str, ...]:
    """Both ways, and unknown too where something that is not known can leave the rule open."""
    return (*_BOTH_WAYS, "unknown") if may_be_open(when, knowledge.limits) else _BOTH_WAYS


def _asked(name: str, when: Condition, examples: list[ExampleFile], where: str) -> Iterator[Problem]:
    """A rule that asks whether a fact is known says what it does without it, and with it."""
    for fact in sorted({atom.fact for atom in atoms(when) if atom.operator in ("known", "unknown")}):
        given = [fact in example.facts for example in examples]
        if given and (all(given) or not any(given)):
            lacks = "leaves out" if all(given) else "gives"
            yield Problem(where, name, f"asks whether {fact} is known, and no example {lacks} it", "add one")


def _told(name: str, examples: list[ExampleFile], where: str, due: tuple[str, ...]) -> Iterator[Problem]:
    for wanted in due:
        if not any(example.expect == wanted for example in examples):
            yield Problem(where, name, f"has no example that is {wanted}", "add one")
