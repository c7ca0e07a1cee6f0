"""Which numbers stand on the sheet itself; the others stand on its other papers alone."""

from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import Any, get_args

from tailtrue.parts import Figure, Node
from tailtrue.procedure import Alternative, Procedure, StepTime

# What does not stand on the sheet: other papers, the back of the sheet itself, and what is cut of the time of a step.
_NOT_HERE: Mapping[type[Node], frozenset[str]] = {
    Procedure: frozenset({"sop", "card", "safety_review", "record", "derivations"}),
    StepTime: frozenset({"cutting"}),
}
# Words and bare numbers hold no figures.
_BARE = frozenset({str, int, float, bool})
_OF_A_WAY = frozenset({"figures", "size"})


def on_sheet(procedure: Procedure) -> set[str]:
    """The facts whose figures stand on the sheet."""
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
    """The fields of a kind of part in which a figure of the sheet may stand: most hold words alone."""
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
