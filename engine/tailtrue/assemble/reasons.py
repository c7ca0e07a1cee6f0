"""The back of the sheet: choices with every alternative, how each number came about, and the sources."""

from collections.abc import Container, Iterable
from itertools import chain
from typing import Any, Literal

from tailtrue.assemble.by_hand import worked_out
from tailtrue.assemble.filling import Filler
from tailtrue.assemble.wanted import wanted
from tailtrue.case import Gap
from tailtrue.decisions import JudgedRow
from tailtrue.facts import Fact, NotKnown
from tailtrue.parts import Figure, Node, Origin, Text
from tailtrue.procedure import ANOTHER_BINDS, ANOTHER_FIRST, IT_BINDS, IT_FITS, Alternative, Choice, Derivation, Source
from tailtrue.store.knowledge import Route
from tailtrue.truth import Truth

GIVEN = "given"
_OPEN: dict[str, Origin] = {"memory": "memory", "common-practice": "common-practice", GIVEN: "said", "shop-rule": "said"}
_WEIGHED: dict[str, Literal["least", "greatest"]] = {"least": "least", "greatest": "greatest"}
_WEAKNESS: tuple[Origin, ...] = ("memory", "common-practice", "published", "said")


def choices(filler: Filler, route: Route) -> tuple[Choice, ...]:
    """Every question of this route that was asked and answered for this job; of the route's answers alone, if it names some.

    What is asked only on the way to something else is no choice of a route that it does not concern: how the collars of a
    bar on hand would be fixed today says nothing of how they are.
    """
    made = []
    asked, told = filler.case.known(), route.file.answers
    takers = {way.settled_by: name for name, way in filler.case.knowledge.computed.items() if way.settled_by}
    for name, decision in filler.case.knowledge.decisions.items():
        if name not in asked or (told and name not in told) or not route.has_to_do_with(decision.concerns):
            continue
        outcome = filler.case.outcome(name)
        weighed = bool(outcome.weighed)
        alternatives = tuple(_alternative(filler, row, weighed) for row in outcome.rows)
        won = next(row.row for row in outcome.rows if row.chosen)
        made.append(
            Choice(
                id=name, question=decision.question, chosen=won.name, alternatives=alternatives,
                settles=takers.get(name), weighed=_WEIGHED[decision.hit] if weighed else None,
                every_way=decision.every_way,
            )
        )  # fmt: skip
    return tuple(made)


def _alternative(filler: Filler, row: JudgedRow, weighed: bool) -> Alternative:
    verdict, reason, sizes = _verdict(filler, row, weighed)
    size = filler.figure(row.row.gives) if isinstance(row.size, Fact) else None
    said = _comes_to(filler, row)
    # A lone size keeps its own shape: by it a page sees that nothing but the size was weighed.
    comes_to = (size, ". ", *said) if size and said else (size, ".") if size else said
    both = (*sizes, " ", *comes_to) if sizes and comes_to else sizes or comes_to
    return Alternative(
        name=row.row.name, verdict=verdict, reason=reason, why=row.row.why, sources=row.row.sources, figures=both, size=size
    )


def _verdict(filler: Filler, row: JudgedRow, weighed: bool) -> tuple[Literal["chosen", "fits", "no", "unknown"], str, Text]:
    if row.chosen:
        return "chosen", IT_BINDS if weighed else IT_FITS, ()
    if weighed and isinstance(row.size, Fact) and not row.row.never_taken:
        return "no", ANOTHER_BINDS, ()
    if row.row.closed_by:
        return "no", row.row.closed_by, ()
    if row.judged.truth is Truth.YES:
        # What is never taken is no second choice, whatever it is good for.
        return ("no", row.row.never_taken, ()) if row.row.never_taken else ("fits", ANOTHER_FIRST, ())
    verdict: Literal["no", "unknown"] = "no" if row.judged.truth is Truth.NO else "unknown"
    said = next((words for when, words in row.row.says if filler.case.judge(when).truth is Truth.YES), None)
    if said:
        return verdict, said, ()
    return verdict, *wanted(filler, row.row.when, row.judged)


def _comes_to(filler: Filler, row: JudgedRow) -> Text:
    try:
        return filler.text(row.row.figures)
    except Gap:
        return ()


def figures(node: Any) -> list[Figure]:
    """Every figure of a tree, in the order of the page."""
    found: list[Figure] = []
    _gather((node,), found)
    return found


def _gather(inside: Iterable[Any], found: list[Figure]) -> None:
    for value in inside:
        # The most of a tree is words and figures: they are taken without a call.
        kind = value.__class__
        if kind is str or value is None:
            continue
        if kind is Figure:
            found.append(value)
        elif kind is tuple or kind is list:
            _gather(value, found)
        elif kind is dict:
            _gather(value.values(), found)
        elif Node in kind.__mro__:
            _gather(vars(value).values(), found)


def derivations(filler: Filler, printed: Iterable[Figure], on_sheet: Container[str]) -> tuple[Derivation, ...]:
    """One entry for each fact that is printed; those on the sheet itself say so."""
    found: dict[str, list[Figure]] = {}
    for one in printed:
        found.setdefault(one.fact, []).append(one)
    known: dict[str, tuple[str, ...]] = {}
    told: set[str] = set()
    made = (_derivation(filler, name, of_it, known, told) for name, of_it in found.items())
    return tuple(one if one.fact in on_sheet else one.model_copy(update={"on_sheet": False}) for one in made)


def _derivation(
    filler: Filler, name: str, printed: list[Figure], known: dict[str, tuple[str, ...]], told: set[str]
) -> Derivation:
    catalogue = filler.case.knowledge.catalogue
    base = name if name in catalogue else name.rsplit(".", 1)[0]
    found = filler.fact(base)
    # A table is accounted for once, with its first column.
    again = base != name and base in told
    told.add(base)
    sources = all_sources(filler, base, known)
    by_hand = found.by_hand
    value = filler.told(name) if base == name else _least_to_most(printed)
    return Derivation(
        fact=name,
        label=found.spec.label if base == name else f"{found.spec.label}: {name.rsplit('.', 1)[1].replace('_', ' ')}",
        value=value,
        how=_how(found),
        read=() if again else tuple(catalogue[read].label for read in found.read),
        limited_by=_limit(found),
        by_hand=(f"set by {by_hand.initials}: {by_hand.reason}; worked out: ", worked_out(found)) if by_hand else (),
        own_sources=tuple(dict.fromkeys(_own_sources(found))),
        sources=sources,
        weakest="said" if found.as_said else _weakest(sources),
    )


def _least_to_most(printed: list[Figure]) -> Text:
    """The number printed under a name; of the column of a table, the least and the most."""
    least, most = (pick(printed, key=lambda one: one.value) for pick in (min, max))
    return (least,) if least.value == most.value else (least, " to ", most)


def _how(found: Fact) -> str:
    if found.spec.comes == "given":
        return "not said: taken as usual" if found.unsaid else "as given"
    return found.how or found.spec.how or "decided by rule"


def _limit(found: Fact) -> Text:
    """What bound the number; the way that was taken says it already, unless sizes were weighed."""
    told = found.by_hand or (found.how and not found.weighed)
    return (found.limited_by,) if found.limited_by and not told else ()


def all_sources(filler: Filler, name: str, known: dict[str, tuple[str, ...]]) -> tuple[str, ...]:
    """The sources of a fact and of all that it was made from; `known` remembers those already gathered."""
    if name not in known:
        found = filler.case.get(name)
        if isinstance(found, NotKnown):
            known[name] = ()
        else:
            below = chain.from_iterable(all_sources(filler, read, known) for read in found.read)
            known[name] = tuple(dict.fromkeys(chain(_own_sources(found), below))) or (GIVEN,)
    return known[name]


def _own_sources(found: Fact) -> tuple[str, ...]:
    if found.unsaid:
        return tuple(found.spec.sources)
    return (GIVEN,) if found.spec.comes == "given" else tuple(found.sources)


def _weakest(sources: tuple[str, ...]) -> Origin:
    return min((_OPEN.get(key, "published") for key in sources), key=_WEAKNESS.index)


def source_list(filler: Filler, used: Iterable[str]) -> tuple[Source, ...]:
    """The sources that this sheet relied on."""
    listed = filler.case.knowledge.sources
    return tuple(
        Source(
            id=key, kind=listed[key].kind, title=listed[key].title, edition=listed[key].edition, status=listed[key].status
        )
        for key in sorted(set(used))
    )
