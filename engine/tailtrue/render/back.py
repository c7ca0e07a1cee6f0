"""What the back of the sheet tells of its numbers."""

from collections.abc import Iterable, Iterator

from tailtrue.parts import Figure, Node
from tailtrue.procedure import Alternative, Derivation, Procedure

# Parts of the tree that are other papers, or the back itself.
_ELSEWHERE = frozenset({"sop", "card", "safety_review", "record", "derivations"})


def worked_out(procedure: Procedure) -> tuple[tuple[Derivation, ...], ...]:
    """The numbers of this paper that were worked out; those that one rule made from the same sources stand together.

    A number that was given is what the user said, and needs no telling. Those of the other papers are told in the JSON.
    """
    here = {figure.fact for figure in _figures(procedure)}
    groups: dict[tuple[object, ...], list[Derivation]] = {}
    for one in procedure.derivations:
        if one.by_hand or (one.fact in here and one.weakest != "said"):
            groups.setdefault((one.how, one.own_sources, one.weakest, one.by_hand), []).append(one)
    return tuple(map(tuple, groups.values()))


def _figures(node: object) -> Iterator[Figure]:
    if isinstance(node, Figure):
        yield node
    elif isinstance(node, Node):
        ruled_out = isinstance(node, Alternative) and node.verdict == "no"
        for name in type(node).model_fields:
            if name not in _ELSEWHERE and not (ruled_out and name == "figures"):
                yield from _figures(getattr(node, name))
    elif isinstance(node, dict):
        yield from _figures(tuple(node.values()))
    elif isinstance(node, Iterable) and not isinstance(node, str):
        for one in node:
            yield from _figures(one)
