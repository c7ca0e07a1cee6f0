"""What the back of the sheet tells of its choices and its numbers."""

from collections.abc import Iterable
from itertools import chain

from tailtrue.procedure import Alternative, Choice, Derivation, Procedure


def near_ways(choice: Choice) -> list[Alternative]:
    """The ways that were not chosen and came near: they would do, are not known, or a figure speaks of them.

    What is ruled out by a word of the files is no news to who wrote them, and fills a page; the Markdown has them all. So
    has paper where a choice asks for it.
    """
    left = (way for way in choice.alternatives if way.verdict != "chosen")
    return [way for way in left if choice.every_way or way.verdict != "no" or way.figures]


def was_weighed(way: Alternative, choice: Choice) -> bool:
    """Whether the size of a way was held against the one that binds, and nothing else is to be said of it."""
    return choice.weighed is not None and way.size is not None and way.verdict == "no" and way.figures == (way.size, ".")


def together(ways: Iterable[Alternative]) -> Iterable[tuple[list[str], Alternative]]:
    """Ways of which the same is said, by their names."""
    found: dict[tuple[object, ...], tuple[list[str], Alternative]] = {}
    for way in ways:
        said = (way.verdict, way.reason, way.why if way.verdict == "fits" else "", way.figures, way.size)
        found.setdefault(said, ([], way))[0].append(way.name)
    return found.values()


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
