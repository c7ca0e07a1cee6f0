"""A case: the named facts of one job, each made once, when it is asked for, and keeping what it was made from."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from tailtrue.calc.validity import OutOfRange
from tailtrue.computed.registry import Computed, Limited
from tailtrue.conditions import Condition, Judged
from tailtrue.decisions import Outcome, decide
from tailtrue.facts import Fact, FactSpec, NotKnown, SetByHand
from tailtrue.tables import NoRow, Uses

if TYPE_CHECKING:
    from tailtrue.store.knowledge import Knowledge


class Gap(LookupError):
    """The plan or a text asks for a fact that this case does not have."""

    def __init__(self, name: str, found: NotKnown) -> None:
        self.name, self.found = name, found
        super().__init__(name)


class Case:
    """Facts of one job over one knowledge.

    `said` holds the facts that the user gave, already validated and in canonical units. `by_hand` are numbers that stand
    where a computed one would; what is made from that fact is made from them.
    """

    def __init__(self, knowledge: "Knowledge", said: Mapping[str, Fact], by_hand: Iterable[SetByHand] = ()) -> None:
        self.knowledge = knowledge
        self.by_hand = {one.fact: one for one in by_hand}
        self._said = dict(said)
        self._facts: dict[str, Fact | NotKnown] = dict(said)
        self._outcomes: dict[str, Outcome] = {}
        self._judged: dict[int, Judged] = {}
        # Held fast, so that no other condition takes the number of one that was judged.
        self._conditions: list[Condition] = []

    def with_said(self, more: Mapping[str, Fact]) -> "Case":
        """The case of the same job with more said: what was made is made anew where it is asked for."""
        return Case(self.knowledge, {**self._said, **more}, self.by_hand.values())

    def with_other(self, more: Mapping[str, Fact]) -> "Case":
        """The same as with `with_said`, keeping what was made and does not hang on them: for trying many values."""
        other = self.with_said(more)
        hanging = frozenset[str]().union(*(self.knowledge.hanging_on(name) for name in more))
        other._facts.update({name: found for name, found in self._facts.items() if name not in hanging})
        other._outcomes.update({name: found for name, found in self._outcomes.items() if name not in hanging})
        return other

    def aside(self) -> "Case":
        """The same case for asking about: what is asked of it is not asked of this one."""
        other = self.with_said({})
        other._facts, other._outcomes = dict(self._facts), dict(self._outcomes)
        other._judged, other._conditions = dict(self._judged), list(self._conditions)
        return other

    def with_values(self, more: Mapping[str, Any]) -> "Case":
        """The same from plain values of facts of the catalogue."""
        return self.with_said({name: Fact(self.knowledge.catalogue[name], value) for name, value in more.items()})

    def get(self, name: str) -> Fact | NotKnown:
        """The fact of this name, made now if it was not asked for before."""
        if name not in self._facts:
            self._facts[name] = self._make(name)
        return self._facts[name]

    def value(self, name: str) -> Any:
        """The value of a fact, or None when it is not known."""
        found = self.get(name)
        return found.value if isinstance(found, Fact) else None

    def judge(self, condition: Condition) -> Judged:
        """The truth of a condition in this case."""
        # What a fact is does not change in a case, so neither does what was judged by it.
        judged = self._judged.get(id(condition))
        if judged is None:
            judged = self._judged[id(condition)] = condition.judge(self.get)
            self._conditions.append(condition)
        return judged

    def outcome(self, name: str) -> Outcome:
        """How a decision came out, with every alternative."""
        self.get(name)
        return self._outcomes[name]

    def known(self) -> Mapping[str, Fact]:
        """Every fact made so far that has a value."""
        return {name: found for name, found in self._facts.items() if isinstance(found, Fact)}

    def _make(self, name: str) -> Fact | NotKnown:
        knowledge = self.knowledge
        if name in knowledge.limits:
            return knowledge.limits[name]
        if name in knowledge.decisions:
            outcome = decide(knowledge.decisions[name], self.get)
            self._outcomes[name] = outcome
            return outcome.fact
        if name in knowledge.computed:
            return self._by_hand(name, self._compute(knowledge.computed[name]))
        return NotKnown(knowledge.catalogue[name], (name,))

    def _by_hand(self, name: str, made: Fact | NotKnown) -> Fact | NotKnown:
        """The number set by hand where there is one; what cannot be worked out cannot be set either."""
        one = self.by_hand.get(name)
        if one is None or isinstance(made, NotKnown):
            return made
        said = f"set by {one.initials}: {one.reason}"
        return replace(made, value=one.value, limited_by=said, where=one.where, by_hand=one, worked_out=made.value)

    def _settled(self, name: str) -> Limited | NotKnown:
        """The size that a decision came to, by which row, and the sizes that were weighed for it."""
        outcome = self.outcome(name)
        if isinstance(outcome.fact, NotKnown):
            return outcome.fact
        won = outcome.won
        size = won.size if won else None
        if won is None or not isinstance(size, Fact):
            return size if isinstance(size, NotKnown) else NotKnown(outcome.fact.spec)
        return Limited(size.value, won.row.name, outcome.weighed, as_said=size.as_said or size.spec.comes == "given")

    def _hangs_on_unsaid(self, found: NotKnown) -> bool:
        """Whether something is missing that could be said. What could not be worked out is there, and is none."""
        for name in found.missing:
            below = self.get(name)
            if name in self.knowledge.given.facts or isinstance(below, Fact) or not below.trouble:
                return True
            if self._hangs_on_unsaid(below):
                return True
        return False

    def _compute(self, way: Computed) -> Fact | NotKnown:
        given: list[Any] = []
        missing: list[str] = []
        trouble, unlisted = "", ""
        for need in way.needs:
            found = self._settled(need) if need == way.settled_by else self.get(need)
            if isinstance(found, Limited):
                given.append(found)
            elif isinstance(found, Fact):
                given.append(found.value)
            elif need in way.optional and (found.spec.comes == "given" or not self._hangs_on_unsaid(found)):
                # "There is none" may be worked with; "it hangs on something that was not said" may not.
                given.append(None)
            else:
                missing.extend(found.missing)
                if not trouble:
                    trouble, unlisted = found.trouble, found.unlisted
        if missing or trouble:
            return NotKnown(way.spec, tuple(dict.fromkeys(missing)), trouble, way.needs, unlisted)
        uses = Uses()
        tables = [self.knowledge.tables[name].noting(uses) for name in way.tables]
        try:
            made = way.function(*given, *tables)
        except (OutOfRange, NoRow) as beyond:
            unlisted = beyond.told if isinstance(beyond, NoRow) else ""
            return NotKnown(way.spec, trouble=f"{way.spec.label}: {beyond}", read=way.needs, unlisted=unlisted)
        return _fact(way.spec, made, way.needs, uses.sources())


def _fact(spec: FactSpec, made: Any, needs: tuple[str, ...], used: tuple[str, ...]) -> Fact | NotKnown:
    limited = made if isinstance(made, Limited) else Limited(made, "")
    if limited.value is None:
        return NotKnown(spec, trouble=limited.by or f"{spec.label}: nothing fits", read=needs)
    sources = dict.fromkeys((*spec.sources, *used))
    return Fact(
        spec,
        limited.value,
        needs,
        tuple(sources),
        limited.by,
        limited.weighed,
        how=limited.how,
        as_said=limited.as_said or spec.as_said,
    )
