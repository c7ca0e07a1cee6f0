"""Conditions as data, in a small closed grammar, judged in three truths.

A block is a list (every part must hold), ``{any = [...]}``, ``{not = ...}`` or one comparison in words::

    "fact is word"   "fact is not word"   "fact is one of a, b"   "fact is known"   "fact is unknown"
    "fact >= 3 mm"   "fact > other.fact"  "fact between 0.01 mm and 0.12 mm"

There is no arithmetic and no function: what must be computed is a computed fact with a name and a test.
"""

import re
from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass
from typing import Any, NamedTuple

from tailtrue.errors import FactsWrong
from tailtrue.facts import Fact, FactSpec, NotKnown, nearest
from tailtrue.quantities import read_quantity
from tailtrue.truth import Truth, all_of, any_of, negated

Get = Callable[[str], Fact | NotKnown]

_NAME = r"[a-z][a-z0-9_]*(?:\.[a-z][a-z0-9_]*)+"
_COMPARE = re.compile(rf"^({_NAME}) (>=|<=|>|<) (.+)$")
_BETWEEN = re.compile(rf"^({_NAME}) between (.+) and (.+)$")
_IS = re.compile(rf"^({_NAME}) is (not |one of )?(.+)$")


class ConditionError(ValueError):
    """A condition that the grammar or the catalogue of facts does not allow."""


class Judged(NamedTuple):
    """A judged condition: its truth, its own words, what it met, and its parts."""

    truth: Truth
    words: str
    met: str = ""
    parts: tuple["Judged", ...] = ()
    missing: tuple[str, ...] = ()


@dataclass(frozen=True)
class Atom:
    """One comparison."""

    words: str
    fact: str
    operator: str
    operands: tuple[Any, ...]
    other: str | None = None

    def judge(self, get: Get) -> Judged:
        """The truth of this comparison for what is known."""
        found = get(self.fact)
        if self.operator in ("known", "unknown"):
            known = isinstance(found, Fact)
            return Judged(Truth.of(known == (self.operator == "known")), self.words, "known" if known else "not known")
        if isinstance(found, NotKnown):
            return Judged(Truth.UNKNOWN, self.words, "not known", missing=found.missing or (self.fact,))
        operands = self.operands
        if self.other is not None:
            against = get(self.other)
            if isinstance(against, NotKnown):
                return Judged(Truth.UNKNOWN, self.words, "not known", missing=against.missing or (self.other,))
            operands = (against.value,)
        met = _met(found)
        return Judged(Truth.of(_HOLDS[self.operator](found.value, operands)), self.words, met)

    def names(self) -> frozenset[str]:
        """The facts this reads."""
        return frozenset({self.fact} | ({self.other} if self.other else set()))


def _met(found: Fact) -> str:
    if found.said:
        return found.said
    if isinstance(found.value, bool):
        return "yes" if found.value else "no"
    if isinstance(found.value, float):
        unit = "" if found.spec.unit == "1" else found.spec.unit
        return f"{found.value:.4g} {unit}".strip()
    return str(found.value)


_HOLDS: Mapping[str, Callable[[Any, tuple[Any, ...]], bool]] = {
    "is": lambda value, operands: value == operands[0],
    "is not": lambda value, operands: value != operands[0],
    "one of": lambda value, operands: value in operands,
    ">=": lambda value, operands: value >= operands[0],
    "<=": lambda value, operands: value <= operands[0],
    ">": lambda value, operands: value > operands[0],
    "<": lambda value, operands: value < operands[0],
    "between": lambda value, operands: operands[0] <= value <= operands[1],
}


_JOINED = {"all": all_of, "any": any_of}


@dataclass(frozen=True)
class Block:
    """Parts joined by all, any or not."""

    join: str
    parts: tuple["Condition", ...]

    def judge(self, get: Get) -> Judged:
        """The truth of the whole, with every part judged so that it can be shown."""
        judged = tuple([part.judge(get) for part in self.parts])
        truths = [part.truth for part in judged]
        truth = _JOINED[self.join](truths) if self.join != "not" else negated(truths[0])
        missing: tuple[str, ...] = ()
        if Truth.UNKNOWN in truths:
            missing = tuple(dict.fromkeys(n for part in judged if part.truth is Truth.UNKNOWN for n in part.missing))
        return Judged(truth, self.join, parts=judged, missing=missing)

    def names(self) -> frozenset[str]:
        """The facts this reads."""
        return frozenset().union(*(part.names() for part in self.parts))


Condition = Atom | Block


def atoms(condition: Condition) -> Iterator[Atom]:
    """Every single comparison in a condition."""
    if isinstance(condition, Atom):
        yield condition
    else:
        for part in condition.parts:
            yield from atoms(part)


class Leaf(NamedTuple):
    """One comparison, what it met, and whether it is to hold."""

    atom: Atom
    judged: Judged
    wanted: bool

    @property
    def met(self) -> bool:
        """Whether it is as it is wanted."""
        return self.judged.truth is Truth.of(self.wanted)


def leaves(condition: Condition, judged: Judged, wanted: bool = True) -> Iterator[Leaf]:
    """Every comparison of a condition; below a `not` it is wanted not to hold."""
    if isinstance(condition, Block):
        below = wanted if condition.join != "not" else not wanted
        for part, result in zip(condition.parts, judged.parts, strict=True):
            yield from leaves(part, result, below)
    else:
        yield Leaf(condition, judged, wanted)


def may_be_open(condition: Condition, always: Collection[str]) -> bool:
    """Whether something that is not known can leave a condition open.

    It cannot where the condition asks of every fact whether it is known, but those that `always` are.

    >>> may_be_open(Atom("a.b is known", "a.b", "known", ()), always=())
    False
    """
    every = tuple(atoms(condition))
    asked = {atom.fact for atom in every if atom.operator in ("known", "unknown")}
    return any(not atom.names() <= asked | set(always) for atom in every)


def read_condition(written: Any, catalogue: Mapping[str, FactSpec]) -> Condition:
    """Read a condition as it stands in a knowledge file, and hold it against the catalogue of facts.

    Raises ConditionError for a fact that does not exist, an operator that does not fit the fact, a choice that does
    not exist, a missing or wrong unit, or a comparison that can only ever come out one way.
    """
    if isinstance(written, list):
        return Block("all", tuple(read_condition(part, catalogue) for part in written))
    if isinstance(written, dict):
        if set(written) == {"any"} and isinstance(written["any"], list) and written["any"]:
            return Block("any", tuple(read_condition(part, catalogue) for part in written["any"]))
        if set(written) == {"not"}:
            return Block("not", (read_condition(written["not"], catalogue),))
        raise ConditionError(f"{written!r} is not a condition: a table may hold 'any' with a list, or 'not'")
    if isinstance(written, str):
        return _read_atom(written, catalogue)
    raise ConditionError(f"{written!r} is not a condition")


def _spec(name: str, words: str, catalogue: Mapping[str, FactSpec]) -> FactSpec:
    if name in catalogue:
        return catalogue[name]
    close = nearest(name, catalogue)
    hint = f"; a fact named '{close}' exists" if close else ""
    raise ConditionError(f"'{words}': no fact is named '{name}'{hint}")


def _read_atom(words: str, catalogue: Mapping[str, FactSpec]) -> Atom:
    if match := _BETWEEN.match(words):
        spec = _spec(match[1], words, catalogue)
        low, high = (_number(part, spec, words, catalogue) for part in (match[2], match[3]))
        if not isinstance(low, float) or not isinstance(high, float) or low >= high:
            raise ConditionError(f"'{words}': 'between' takes two quantities, the smaller first")
        _both_ways(spec, ">=", low, words)
        _both_ways(spec, "<=", high, words)
        return Atom(words, spec.name, "between", (low, high))
    if match := _COMPARE.match(words):
        spec = _spec(match[1], words, catalogue)
        against = _number(match[3], spec, words, catalogue)
        if isinstance(against, str):
            return Atom(words, spec.name, match[2], (), other=against)
        _both_ways(spec, match[2], against, words)
        return Atom(words, spec.name, match[2], (against,))
    if match := _IS.match(words):
        spec = _spec(match[1], words, catalogue)
        return _read_is(words, spec, (match[2] or "").strip(), match[3].strip())
    raise ConditionError(f"'{words}' cannot be read as a condition")


def _read_is(words: str, spec: FactSpec, how: str, rest: str) -> Atom:
    if rest in ("known", "unknown") and not how:
        return Atom(words, spec.name, rest, ())
    wanted = [part.strip() for part in rest.split(",")] if how == "one of" else [rest]
    if spec.kind == "yes-no":
        if not set(wanted) <= {"yes", "no"}:
            raise ConditionError(f"'{words}': '{spec.name}' is yes or no")
        return Atom(words, spec.name, "is not" if how == "not" else "one of", tuple(w == "yes" for w in wanted))
    if spec.kind == "choice":
        for word in wanted:
            if word not in spec.choices:
                raise ConditionError(f"'{words}': '{spec.name}' is one of {', '.join(spec.choices)}; '{word}' is none")
        return Atom(words, spec.name, {"not": "is not", "": "is"}.get(how, "one of"), tuple(wanted))
    raise ConditionError(f"'{words}': '{spec.name}' is a {spec.kind}; 'is' fits a choice or yes-no")


def _number(text: str, spec: FactSpec, words: str, catalogue: Mapping[str, FactSpec]) -> float | str:
    if not spec.is_number:
        raise ConditionError(f"'{words}': '{spec.name}' is a {spec.kind} and has no size to compare")
    if re.fullmatch(_NAME, text):
        other = _spec(text, words, catalogue)
        if other.unit != spec.unit or not other.is_number:
            raise ConditionError(f"'{words}': '{spec.name}' is in {spec.unit or 'no unit'}, '{text}' is not")
        return text
    if spec.unit in ("", "1"):
        try:
            return float(text)
        except ValueError as wrong:
            raise ConditionError(f"'{words}': '{text}' is not a number") from wrong
    try:
        return read_quantity(text, spec.unit)
    except (FactsWrong, ValueError) as wrong:
        raise ConditionError(f"'{words}': '{text}': {wrong}") from wrong


def _both_ways(spec: FactSpec, operator: str, against: float, words: str) -> None:
    """A comparison that the plausible range decides alone is a slip of the pen."""
    if spec.least is None or spec.most is None:
        return
    outcomes = {_HOLDS[operator](value, (against,)) for value in (spec.least, spec.most)}
    if len(outcomes) == 1:
        raise ConditionError(f"'{words}': always {'holds' if True in outcomes else 'fails'} for a plausible '{spec.name}'")
