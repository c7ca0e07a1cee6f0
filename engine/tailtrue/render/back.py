"""What the back of the sheet tells of its numbers."""

from collections.abc import Iterable
from itertools import chain

from tailtrue.parts import Figure
from tailtrue.procedure import Alternative, Derivation, Procedure, StepTime

# Parts of the tree that are other papers, or the back itself.
_ELSEWHERE = frozenset({"sop", "card", "safety_review", "record", "derivations"})
# Words and bare numbers hold no figures: the most of a tree.
_BARE = frozenset({str, int, float, bool, type(None)})


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
    # Grows while it is walked through. Kinds are compared, for to ask what a part is an instance of takes a call.
    parts: list[object] = [tuple(part for name, part in vars(procedure).items() if name not in _ELSEWHERE)]
    for part in parts:
        kind = type(part)
        if isinstance(part, tuple):
            inside: Iterable[object] = part
        elif isinstance(part, dict):
            inside = part.values()
        elif kind is Alternative and (vars(part)["verdict"] == "no" or vars(part)["size"] is not None):
            # The name of a way that comes to a size says how it does.
            inside = [one for name, one in vars(part).items() if name not in ("figures", "size")]
        elif kind is StepTime:
            # What is cut of the time of a step is no number of its own on paper.
            inside = [one for name, one in vars(part).items() if name != "cutting"]
        else:
            inside = vars(part).values()
        for one in inside:
            if type(one) is Figure:
                facts.add(one.fact)
            elif type(one) not in _BARE and one != ():
                parts.append(one)
    return facts
