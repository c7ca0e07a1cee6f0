"""Stops judged for a case: why no procedure is printed, with the figures and the shortest way out."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial

from tailtrue.assemble.filling import Filler
from tailtrue.case import Case, Gap
from tailtrue.conditions import leaves
from tailtrue.errors import Problem, Refused, Said
from tailtrue.explaining.roots import root_of, ways_of
from tailtrue.facts import Fact, NotKnown
from tailtrue.parts import Dials, Text
from tailtrue.render.words import say
from tailtrue.store.knowledge import Route, Stop
from tailtrue.truth import Truth
from tailtrue.wording import Wording


@dataclass(frozen=True)
class Refusal:
    """One reason not to print."""

    id: str
    title: str
    text: Text
    way_out: tuple[Text, ...]
    sources: tuple[str, ...]
    read: tuple[str, ...] = ()
    missing: tuple[str, ...] = ()
    roots: tuple[str, ...] = ()
    bare: bool = False  # its text, or every way out, lacks a fact: a defect of the rule base, which the sweep tells
    follows: bool = False  # all that it hangs on is told by reasons that stand above it


def refusals(case: Case, route: Route | None = None) -> tuple[Refusal, ...]:
    """Every stop that fires, or that may fire and says that not knowing is enough to refuse.

    With a route only those that have to do with it are judged.
    """
    filler = Filler(case, tells_trouble=True)
    stops = (stop for stop in case.knowledge.stops if route is None or route.has_to_do_with(stop.file.concerns))
    return _root_first(case, tuple(_refusals(case, filler, stops)))


def _root_first(case: Case, found: tuple[Refusal, ...]) -> tuple[Refusal, ...]:
    """What keeps a choice from being made stands first; what can only be judged after it stands last, told shortly."""
    roots = {root for one in found for root in one.roots}
    if not roots:
        return found
    stops = {stop.file.id: stop for stop in case.knowledge.stops}
    firm = [one for one in found if not one.roots]
    told = {root: one.id for root in roots for one in reversed(firm) if root in _asked_of(stops[one.id])}
    firm.sort(key=lambda one: roots.isdisjoint(_asked_of(stops[one.id])))
    hanging: list[Refusal] = []
    for one in found:
        if not one.roots:
            continue
        ways = tuple(way for root in one.roots if root not in told for way in ways_of(case, root))
        if above := tuple(dict.fromkeys(told[root] for root in one.roots if root in told)):
            ways = ((f"First mend what stands above: {', '.join(above)}.",), *ways)
        follows = all(root in told for root in one.roots)
        told.update({root: one.id for root in one.roots if root not in told})
        hanging.append(
            replace(one, title=f"Cannot be judged yet: {one.title}", way_out=ways or one.way_out, follows=follows)
        )
    return (*firm, *hanging)


def _asked_of(stop: Stop) -> frozenset[str]:
    return frozenset(stop.when.names()).union(stop.file.behind)


def passed_over(case: Case, route: Route) -> tuple[str, ...]:
    """Labels of what a user may say and did not, where a stop against a hazard hangs on it and lets the job pass."""
    may_be_said = case.knowledge.given.facts
    open_facts: dict[str, None] = {}
    for stop in case.knowledge.stops:
        if stop.file.row and stop.file.if_unknown == "pass-over" and route.has_to_do_with(stop.file.concerns):
            judged = case.judge(stop.when)
            if judged.truth is Truth.UNKNOWN:
                open_facts.update(dict.fromkeys(name for name in judged.missing if name in may_be_said))
    return tuple(may_be_said[name].spec.label for name in open_facts)


def _refusals(case: Case, filler: Filler, stops: Iterable[Stop]) -> Iterator[Refusal]:
    for stop in stops:
        judged = case.judge(stop.when)
        if judged.truth is Truth.NO or (judged.truth is Truth.UNKNOWN and stop.file.if_unknown != "refuse"):
            continue
        read = tuple(
            dict.fromkeys(
                name for leaf in leaves(stop.when, judged) if leaf.judged.truth is judged.truth or leaf.met
                for name in sorted(leaf.atom.names())
            )
        )  # fmt: skip
        if judged.truth is Truth.YES:
            open_facts = (found for name in read if isinstance(found := case.get(name), NotKnown))
            missing = tuple(dict.fromkeys(name for found in open_facts for name in found.missing))
            yield replace(_refusal(stop, filler, stop.text), read=read, missing=missing)
        else:
            labels = " and ".join(case.knowledge.catalogue[name].label for name in judged.missing)
            roots = tuple(dict.fromkeys(root for name in read if (root := root_of(case, name))))
            one = _refusal(stop, filler, stop.text, f"Not known: {labels}.")
            if roots:
                # Its own ways out mend nothing while the choice behind what it asks for has found none.
                causes = " ".join(f"It hangs on this: {_trouble(case, root)}" for root in roots)
                one = replace(one, text=(f"Not known: {labels}. {causes}",))
            yield replace(one, read=read, missing=judged.missing, roots=roots)


def _trouble(case: Case, root: str) -> str:
    found = case.get(root)
    trouble = found.trouble if isinstance(found, NotKnown) else ""
    return trouble if trouble.endswith(".") else f"{trouble}."


def _refusal(stop: Stop, filler: Filler, text: Wording, also: str = "") -> Refusal:
    # Where a text cannot be filled, what is not known says why; the title stands above it already.
    said = _filled(filler, text)
    if also:
        said = (*said, f" {also}") if said else (also,)
    ways = tuple(filled for way in stop.way_out if (filled := _filled(filler, way)))
    ours = "Shop rule: " if filler.case.knowledge.shop.mark("stop", stop.file.id) else ""
    return Refusal(
        stop.file.id, f"{ours}{stop.file.title}", said or (stop.file.title,), ways or (("see the manual",),),
        tuple(stop.file.sources), bare=not (said and ways),
    )  # fmt: skip


def _filled(filler: Filler, wording: Wording) -> Text | None:
    try:
        return filler.text(wording)
    except Gap:
        return None


def impossible(case: Case, name: str, found: NotKnown) -> Refusal:
    """A refusal for a fact that no stop foresaw: a formula or table that does not reach this case."""
    label = case.knowledge.catalogue[name].label
    if found.missing:
        missing = ", ".join(case.knowledge.catalogue[need].label for need in found.missing)
        ways: tuple[Text, ...] = ((f"Give: {missing}.",),)
        return Refusal(name, f"Not known: {label}", (f"It depends on: {missing}.",), ways, (), missing=found.missing)
    return Refusal(
        name, f"Cannot be worked out: {label}", (f"{found.trouble or 'nothing fits'}.",),
        (("Change the stock or the tools so that the tables and formulas reach it.",),), (), read=(name,),
    )  # fmt: skip


def refused(reasons: Sequence[Refusal], case: Case, routes: Iterable[Route] = ()) -> Refused:
    """The error that carries refusals in words, each way out on a line of its own, and what each hangs on.

    `routes` are those whose stops were judged, so that no figure is advised that another of them refuses.
    """
    # What a refusal hangs on is looked for only where something is refused.
    from tailtrue.explaining.hangs_on import hangs_on

    dials: Dials = "inch" if case.value("lathe.dials") == "inch" else "metric"
    stops = [stop for stop in case.knowledge.stops if any(route.has_to_do_with(stop.file.concerns) for route in routes)]
    before = frozenset(reason.id for reason in reasons)

    def no_worse(trial: Case) -> bool:
        return _firing(trial, stops) <= before

    told = [reason for reason in reasons if not reason.follows]
    problems = [
        Problem(
            reason.id,
            reason.title,
            say(reason.text, dials).rstrip("."),
            "\n  or: ".join(say(way, dials).rstrip(".") for way in reason.way_out),
        )
        for reason in told
    ]
    on: list[Callable[[], tuple[Said, ...]]] = [
        partial(hangs_on, case, reason.read, reason.missing, _falls(reason), no_worse) for reason in told
    ]
    if follow := [reason for reason in reasons if reason.follows]:
        problems.append(_may_follow(follow))
        on.append(lambda: ())
    return Refused(problems, on)


def _may_follow(reasons: Sequence[Refusal]) -> Problem:
    """What cannot be judged before what stands above is mended: counted and named in one line."""
    return Problem(
        ", ".join(reason.id for reason in reasons),
        f"{len(reasons)} more cannot be judged yet" if len(reasons) > 1 else "One more cannot be judged yet",
        "what is asked for hangs on the reasons above",
        "Mend those first; more may follow",
    )


def _firing(case: Case, stops: Iterable[Stop]) -> frozenset[str]:
    return frozenset(stop.file.id for stop in stops if _refuses(stop, case))


def _refuses(stop: Stop, case: Case) -> bool:
    truth = case.judge(stop.when).truth
    return truth is Truth.YES or (truth is Truth.UNKNOWN and stop.file.if_unknown == "refuse")


def _falls(reason: Refusal) -> Callable[[Case], bool]:
    """Whether a case is free of one refusal: its stop does not hold, or the fact that it lacked is there."""

    def falls(case: Case) -> bool:
        stop = next((stop for stop in case.knowledge.stops if stop.file.id == reason.id), None)
        if stop is None:
            return all(isinstance(case.get(name), Fact) for name in reason.read)
        return case.judge(stop.when).truth is Truth.NO

    return falls
