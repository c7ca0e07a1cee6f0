"""What the back of the sheet tells of its numbers."""

from collections.abc import Iterable, Mapping
from functools import lru_cache
from itertools import chain
from typing import Any, get_args

from tailtrue.parts import Figure, Node
from tailtrue.procedure import Alternative, Derivation, Procedure, StepTime

# What does not stand on this paper: other papers, the back itself, and what is cut of the time of a step.
_NOT_HERE: Mapping[type[Node], frozenset[str]] = {
    Procedure: frozenset({"sop", "card", "safety_review", "record", "derivations"}),
    StepTime: frozenset({"cutting"}),
}
# Words and bare numbers hold no figures.
_BARE = frozenset({str, int, float, bool})
_OF_A_WAY = frozenset({"figures", "size"})


def worked_out(procedure: Procedure) -> tuple[tuple[Derivation, ...], ...]:
    """The numbers of this paper that were worked out; those that one rule made stand together, by their sources.

    A number that was given is what the user said, and needs no telling. Those of the other papers are told in the JSON.
    """
    here = _on_this_paper(procedure)
    groups: dict[tuple[object, ...], dict[tuple[object, ...], list[Derivation]]] = {}
    for one in procedure.derivations:
        if one.by_hand or (one.fact in here and one.weakest != "said"):
            from_there = groups.setdefault((one.how, one.by_hand), {})
            from_there.setdefault((one.own_sources, one.weakest), []).append(one)
    return tuple(tuple(chain.from_iterable(group.values())) for group in groups.values())


def short_label(one: Derivation, first: Derivation) -> str:
    """What a number is called beside the first of its group: words that both begin with, up to a mark, are said once."""
    for mark in (": ", ", "):
        begin, found, rest = one.label.partition(mark)
        if found and one is not first and first.label.startswith(begin + mark):
            return rest
    return one.label


def _on_this_paper(procedure: Procedure) -> set[str]:
    """The facts whose figures stand on this paper."""
    facts: set[str] = set()
    parts: list[Any] = [procedure]
    # Grows while it is walked through.
    for part in parts:
        if isinstance(part, tuple):
            inside: Iterable[object] = part
        elif isinstance(part, dict):
            inside = part.values()
        else:
            held, fields = vars(part), _holders(part.__class__)
            if isinstance(part, Alternative) and (held["verdict"] == "no" or held["size"] is not None):
                # The name of a way that comes to a size says how it does.
                fields = tuple(name for name in fields if name not in _OF_A_WAY)
            inside = [held[name] for name in fields]
        for one in inside:
            if type(one) is Figure:
                facts.add(one.fact)
            elif one and type(one) not in _BARE:
                parts.append(one)
    return facts


@lru_cache
def _holders(kind: Any) -> tuple[str, ...]:
    """The fields of a kind of part in which a figure of this paper may stand: most hold words alone."""
    left_out = _NOT_HERE.get(kind, frozenset())
    return tuple(
        name
        for name, field in kind.model_fields.items()
        if name not in left_out and _may_hold(field.annotation, frozenset({kind}))
    )


def _may_hold(annotation: Any, within: frozenset[type[Node]]) -> bool:
    if not isinstance(annotation, type):
        return any(_may_hold(part, within) for part in get_args(annotation))
    if annotation is Figure:
        return True
    if annotation in within or not issubclass(annotation, Node):
        return False
    return any(_may_hold(field.annotation, within | {annotation}) for field in annotation.model_fields.values())
