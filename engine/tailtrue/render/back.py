"""What the back of the sheet tells of its numbers, and how its entries stand beside each other."""

from collections.abc import Callable, Sequence
from itertools import accumulate, combinations_with_replacement
from math import ceil
from typing import TypeVar

from tailtrue.parts import Caution, Figure, Node, Text
from tailtrue.procedure import Alternative, Choice, Derivation, Procedure, Source

_Entry = TypeVar("_Entry")
# Parts of the tree that are other papers, or the back itself.
_ELSEWHERE = frozenset({"sop", "card", "safety_review", "record", "derivations"})
# Letters on the page: of a figure, of the number of a source, of the rest of a last line, in a line.
_FIGURE, _SOURCE, _REST, _IN_A_LINE = 20, 5, 18, 45


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
    # The most of a tree is words, and to ask a word for its class is cheaper than to ask a class for the word.
    if isinstance(node, str) or node is None:
        return
    if isinstance(node, tuple):
        for one in node:
            _gather(one, facts)
    elif isinstance(node, Figure):
        facts.add(node.fact)
    elif isinstance(node, Node):
        ruled_out = isinstance(node, Alternative) and node.verdict == "no"
        for name, one in vars(node).items():
            if name not in _ELSEWHERE and not (ruled_out and name == "figures"):
                _gather(one, facts)
    elif isinstance(node, dict):
        for one in node.values():
            _gather(one, facts)


def thirds(entries: Sequence[_Entry], letters: Callable[[_Entry], int]) -> list[Sequence[_Entry]]:
    """Entries in three runs, cut where the longest of them is shortest, and then the next longest.

    >>> thirds(["a" * 6, "b", "c" * 2, "d" * 4], len)
    [['aaaaaa'], ['b', 'cc'], ['dddd']]
    """
    sums = list(accumulate(map(letters, entries), initial=0))

    def lengths(cut: tuple[int, int]) -> list[int]:
        first, second = cut
        return sorted((sums[first], sums[second] - sums[first], sums[-1] - sums[second]), reverse=True)

    first, second = min(combinations_with_replacement(range(len(sums)), 2), key=lengths)
    return [entries[:first], entries[first:second], entries[second:]]


def letters_of_numbers(group: Sequence[Derivation]) -> int:
    """About how many letters the numbers of one rule take on the page."""
    numbers = sum(len(one.label) + _letters(one.value) + _letters(one.limited_by) + 2 for one in group)
    return numbers + len(group[0].how) + _SOURCE * len(group[0].own_sources) + _REST


def letters_of_choice(choice: Choice) -> int:
    """About how many letters a choice takes on the page, its empty lines counted in."""
    found = len(choice.question) + _SOURCE * len(choice.sources) + 3 * _REST + _IN_A_LINE // 2
    for way in choice.alternatives:
        found += len(way.name) + len(way.reason) + _REST
        found += len(way.why) + _letters(way.figures) if way.verdict != "no" else 0
    return found


def letters_of_caution(caution: Caution) -> int:
    """About how many letters a caution takes among those that name their sources."""
    return _whole_lines(len(caution.hazard) + _SOURCE * len(caution.sources))


def letters_of_source(source: Source) -> int:
    """About how many letters a source takes on the page."""
    return _whole_lines(len(source.title) + len(source.edition) + len(source.status) + _SOURCE)


def _whole_lines(letters: int) -> int:
    return _IN_A_LINE * ceil(letters / _IN_A_LINE)


def _letters(text: Text) -> int:
    return sum(_FIGURE if isinstance(piece, Figure) else len(piece) for piece in text)
