"""What the back of the sheet tells of its numbers."""

from collections.abc import Iterable

from tailtrue.parts import Figure, Node
from tailtrue.procedure import Alternative, Derivation, Procedure

# Parts of the tree that are other papers, or the back itself.
_ELSEWHERE = frozenset({"sop", "card", "safety_review", "record", "derivations"})


def worked_out(procedure: Procedure) -> tuple[tuple[Derivation, ...], ...]:
    """The numbers of this paper that were worked out; those that one rule made from the same sources stand together.

    A number that was given is what the user said, and needs no telling. Those of the other papers are told in the JSON.
    """
    here: set[str] = set()
    _gather(procedure, here)
    groups: dict[tuple[object, ...], list[Derivation]] = {}
    for one in procedure.derivations:
        if one.by_hand or (one.fact in here and one.weakest != "said"):
            groups.setdefault((one.how, one.own_sources, one.weakest, one.by_hand), []).append(one)
    return tuple(map(tuple, groups.values()))


def _gather(node: object, facts: set[str]) -> None:
    """The facts whose figures stand on this paper."""
    inside: Iterable[object] = ()
    if isinstance(node, tuple):
        inside = node
    elif isinstance(node, dict):
        inside = node.values()
    elif isinstance(node, Node) and _ELSEWHERE.isdisjoint(vars(node)) and not isinstance(node, Alternative):
        inside = vars(node).values()
    elif isinstance(node, Node):
        ruled_out = isinstance(node, Alternative) and node.verdict == "no"
        inside = [
            one for name, one in vars(node).items() if name not in _ELSEWHERE and not (ruled_out and name == "figures")
        ]
    for one in inside:
        # The most of a tree is words and figures: they are taken without a call.
        if one.__class__ is Figure:
            facts.add(one.fact)
        elif one is not None and one.__class__ is not str:
            _gather(one, facts)
