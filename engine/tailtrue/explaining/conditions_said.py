"""A condition line by line: what each comparison asks, what it met, whether it holds."""

from collections.abc import Iterator
from typing import Any

from tailtrue.case import Case
from tailtrue.conditions import Atom, Condition, Judged, Leaf, leaves
from tailtrue.explaining.said import Line
from tailtrue.explaining.turning import distance_of, needed
from tailtrue.explaining.wording import dials_of, leaf_said
from tailtrue.facts import NotKnown
from tailtrue.render.words import say
from tailtrue.truth import Truth

_ALWAYS = Line(("always",))
# What a fact follows from is told nearest first; nobody reads forty.
_NEAREST = 6


def condition_lines(case: Case, condition: Condition) -> tuple[Line, ...]:
    """Every comparison of a condition; an empty one holds always."""
    return tuple(_lines(case, condition, case.judge(condition), True, 0)) or (_ALWAYS,)


def _lines(case: Case, condition: Condition, judged: Judged, wanted: bool, depth: int) -> Iterator[Line]:
    if isinstance(condition, Atom):
        leaf = Leaf(condition, judged, wanted)
        yield Line((f"{_mark(leaf)}: ", *leaf_said(case, leaf)), depth)
        return
    pairs = tuple(zip(condition.parts, judged.parts, strict=True))
    if condition.join == "not":
        yield from _lines(case, *pairs[0], not wanted, depth)
        return
    if len(pairs) > 1 and ((condition.join == "any") is wanted or depth):
        yield Line(("one of these:" if (condition.join == "any") is wanted else "all of these:",), depth)
        depth += 1
    for part, result in pairs:
        yield from _lines(case, part, result, wanted, depth)


def _mark(leaf: Leaf) -> str:
    if leaf.judged.truth is Truth.UNKNOWN:
        return "open"
    return "holds" if leaf.met else "fails"


def failed(case: Case, condition: Condition) -> tuple[Leaf, ...]:
    """The comparisons that are not as they would have to be; those that are not known stand among them."""
    judged = case.judge(condition)
    if judged.truth is Truth.YES:
        return ()
    return tuple(leaf for leaf in leaves(condition, judged) if not leaf.met)


def to_change(case: Case, condition: Condition) -> tuple[Line, ...]:
    """What would have to be otherwise for a condition to hold, and where each thing comes from."""
    changes = needed(case, condition, case.judge(condition))
    if changes is None:
        return (Line(("nothing that is said can make it hold",)),)
    lines: list[Line] = []
    for leaf in changes:
        lines.append(Line(leaf_said(case, leaf)))
        lines += [Line((text,), 1) for text in _where_from(case, leaf)]
    return tuple(lines)


def _where_from(case: Case, leaf: Leaf) -> Iterator[str]:
    catalogue = case.knowledge.catalogue
    for name in dict.fromkeys((leaf.atom.fact, leaf.atom.other or leaf.atom.fact)):
        spec = catalogue[name]
        if spec.comes == "given":
            yield f"'{name}' is given; try it with: compare JOB --set {name}=..."
        elif spec.comes == "limit":
            yield f"'{name}' is a limit: {spec.how}"
        else:
            said = given_below(case, name)
            more = f" and {len(said) - _NEAREST} more" if len(said) > _NEAREST else ""
            yield f"'{name}' follows from {', '.join(said[:_NEAREST])}{more}" if said else f"'{name}' is said at the lathe"


def given_below(case: Case, name: str) -> tuple[str, ...]:
    """The given facts that a fact hangs on, nearest first."""
    found: dict[str, None] = {}
    met = {name}
    row = [name]
    while row:
        reads = dict.fromkeys(read for one in row for read in case.get(one).read)
        row = [read for read in reads if read not in met]
        met.update(row)
        found.update(dict.fromkeys(read for read in row if case.knowledge.catalogue[read].comes == "given"))
    return tuple(found)


def leaf_data(case: Case, leaf: Leaf) -> dict[str, Any]:
    """One comparison for a program."""
    found = case.get(leaf.atom.fact)
    return {
        "fact": leaf.atom.fact,
        "condition": leaf.atom.words,
        "wanted": leaf.wanted,
        "said": say(leaf_said(case, leaf), dials_of(case)),
        "met": leaf.judged.met,
        "known": not isinstance(found, NotKnown),
        "off_by_share": distance_of(case, leaf.atom) if not leaf.met else None,
    }
