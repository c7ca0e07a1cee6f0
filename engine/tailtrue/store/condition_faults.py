"""Small faults put into a condition, one at a time: each is to be noticed by an example that stands beside the rule."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from tailtrue.conditions import Atom, Block, Condition
from tailtrue.facts import FactSpec

_TURNED = {">=": "<", "<": ">=", ">": "<=", "<=": ">"}
_OPPOSITE = {"is": "is not", "is not": "is", "known": "unknown", "unknown": "known"}
# How far a bound is moved: a count by one, anything else by this share of it.
_STEP = 0.25


@dataclass(frozen=True)
class Changed:
    """A condition with one fault, and the fault in words."""

    condition: Condition
    fault: str


def faults(condition: Condition, catalogue: Mapping[str, FactSpec]) -> Iterator[Changed]:
    """Every condition that differs from this one by one small fault."""
    if isinstance(condition, Atom):
        yield from _of_atom(condition, catalogue)
        return
    if condition.join in ("all", "any") and len(condition.parts) > 1:
        other = "any" if condition.join == "all" else "all"
        yield Changed(replace(condition, join=other), f"'{condition.join}' made '{other}' of: {said(condition)}")
        for place, part in enumerate(condition.parts):
            rest = condition.parts[:place] + condition.parts[place + 1 :]
            yield Changed(replace(condition, parts=rest), f"left out: {said(part)}")
    if condition.join == "not":
        yield Changed(condition.parts[0], f"'not' left out before: {said(condition.parts[0])}")
    for place, part in enumerate(condition.parts):
        for changed in faults(part, catalogue):
            parts = (*condition.parts[:place], changed.condition, *condition.parts[place + 1 :])
            yield Changed(replace(condition, parts=parts), changed.fault)


def _of_atom(atom: Atom, catalogue: Mapping[str, FactSpec]) -> Iterator[Changed]:
    yield Changed(_opposite(atom), f"turned round: {atom.words}")
    if atom.operator == "one of" and catalogue[atom.fact].kind == "choice":
        for word in atom.operands:
            rest = tuple(one for one in atom.operands if one != word)
            if rest:
                yield Changed(replace(atom, operands=rest), f"'{word}' left out of: {atom.words}")
    for place, bound in enumerate(atom.operands):
        if isinstance(bound, float):
            step = 1.0 if catalogue[atom.fact].kind == "count" else abs(bound) * _STEP or _STEP
            for moved, way in ((bound + step, "raised"), (bound - step, "lowered")):
                operands = (*atom.operands[:place], moved, *atom.operands[place + 1 :])
                yield Changed(replace(atom, operands=operands), f"bound {way} in: {atom.words}")


def _opposite(atom: Atom) -> Condition:
    if atom.operator in _TURNED:
        return replace(atom, operator=_TURNED[atom.operator])
    if atom.operator in _OPPOSITE:
        return replace(atom, operator=_OPPOSITE[atom.operator])
    return Block("not", (atom,))


def said(condition: Condition) -> str:
    """A condition in few words."""
    if isinstance(condition, Atom):
        return condition.words
    inner = ", ".join(said(part) for part in condition.parts)
    return inner if condition.join == "all" else f"{condition.join} ({inner})"
