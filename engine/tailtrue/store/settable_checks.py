"""Numbers that may be set by hand, held against the catalogue: what bounds one must be there and must not follow from it."""

from collections.abc import Iterable, Iterator, Mapping

from tailtrue.errors import Problem
from tailtrue.facts import FactSpec, Settable
from tailtrue.given.knowledge_file import unknown_source
from tailtrue.tables import source_keys


def settable_problems(
    settable: Iterable[Settable],
    catalogue: Mapping[str, FactSpec],
    reads: Mapping[str, Iterable[str]],
    sources: Iterable[str],
) -> Iterator[Problem]:
    """What is wrong with the list; `reads` tells which facts a fact is made from."""
    known = frozenset(sources)
    for one in settable:
        spec = catalogue.get(one.fact)
        if spec is None or spec.comes != "computed" or spec.kind != "quantity":
            yield Problem(one.where, one.fact, "is no computed number", "mend the name, or take it out")
        elif spec.unit != one.unit:
            yield Problem(one.where, one.fact, f"is in {spec.unit}, not in {one.unit}", "give it its own unit")
        for bound in (*one.at_least, *one.at_most, *filter(None, (one.one_of, one.whole))):
            yield from _bound(one, bound, catalogue, reads)
        for key in (key for written in one.sources for key in source_keys(written)):
            if key not in known:
                yield Problem(one.where, one.fact, *unknown_source(key))


def _bound(
    one: Settable, bound: str, catalogue: Mapping[str, FactSpec], reads: Mapping[str, Iterable[str]]
) -> Iterator[Problem]:
    if bound not in catalogue or catalogue[bound].unit != one.unit:
        yield Problem(one.where, bound, f"is no fact in {one.unit} that could bound '{one.fact}'", "mend the name")
    elif one.fact in _made_from(bound, reads):
        yield Problem(one.where, bound, f"follows from '{one.fact}' and cannot bound it", "name another bound")


def _made_from(name: str, reads: Mapping[str, Iterable[str]]) -> set[str]:
    """Every fact that a fact is made from, near or far."""
    met: set[str] = set()
    waiting = [name]
    while waiting:
        for need in reads.get(waiting.pop(), ()):
            if need not in met:
                met.add(need)
                waiting.append(need)
    return met
