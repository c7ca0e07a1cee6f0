"""What the back of the sheet tells of its numbers."""

from itertools import chain

from tailtrue.procedure import Derivation, Procedure


def worked_out(procedure: Procedure) -> tuple[tuple[Derivation, ...], ...]:
    """The numbers of this paper that were worked out; those that one rule made stand together, by their sources.

    A number that was given is what the user said, and needs no telling. Those of the other papers are told in the JSON.
    """
    groups: dict[tuple[object, ...], dict[tuple[object, ...], list[Derivation]]] = {}
    for one in procedure.derivations:
        if one.by_hand or (one.on_sheet and one.weakest != "said"):
            from_there = groups.setdefault((one.how, one.by_hand), {})
            from_there.setdefault((one.own_sources, one.weakest), []).append(one)
    return tuple(tuple(chain.from_iterable(group.values())) for group in groups.values())


def short_label(one: Derivation, first: Derivation) -> str:
    """What a number is called beside the first of its group: words that both begin with, up to a mark, are said once."""
    for mark in () if one is first else (": ", ", "):
        begin, found, rest = one.label.partition(mark)
        if found and first.label.startswith(begin + mark):
            return rest
    return one.label
