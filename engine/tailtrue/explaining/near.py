"""Near misses: rules that hold off by one thing, and a thing that may well be otherwise tomorrow.

Two sorts are worth reading. A size within `limit.near_miss` of its bound: a little more stock, a little more wear, and
the rule holds. A yes, no or choice that changes from day to day (`changes = "daily"` in the catalogue of given facts):
who stands at the lathe, how warm the shop is, which centre is in the tailstock. What cannot change for this shop - the
metal on the rack, the kind of nose - is left out, near or not. So are rules that hold sizes against each other which
lie close by nature (`near = false` in the rule), and sizes that are nought on both sides.
"""

from collections.abc import Callable, Collection, Iterator
from typing import Literal, NamedTuple

from tailtrue.assemble.filling import Filler
from tailtrue.case import Case, Gap
from tailtrue.conditions import Condition, Leaf
from tailtrue.explaining.turning import bound_of, distance_of, needed
from tailtrue.explaining.wording import dials_of, leaf_said
from tailtrue.facts import Fact
from tailtrue.render.words import say
from tailtrue.truth import Truth
from tailtrue.wording import Wording

Kind = Literal["caution", "stop", "choice", "note"]

# A stop is told with the worst cautions; a choice changes the work and hurts nobody by itself.
_SEVERITY_OF_A_STOP = 5
_SEVERITY_OF_A_NOTE = {"attention": 2, "note": 1}
_SEVERITY_OF_A_CHOICE = 1


class NearMiss(NamedTuple):
    """A rule that one thing keeps from holding: which, by how much, and what happens when it does hold."""

    kind: Kind
    id: str
    title: str
    short_by: str
    what_happens: str
    severity: int
    sources: tuple[str, ...]


def near_misses(case: Case) -> tuple[NearMiss, ...]:
    """Every near miss of a case, the worst first, of equal ones the nearest first."""
    found = sorted(_found(case), key=lambda pair: (-pair[1].severity, pair[0], pair[1].kind, pair[1].id))
    return tuple(miss for _, miss in found)


def _found(case: Case) -> Iterator[tuple[float, NearMiss]]:
    knowledge = case.knowledge
    doing = case.get("job.do")
    route = knowledge.routes.get(str(doing.value)) if isinstance(doing, Fact) else None

    def concerned(concerns: Collection[str]) -> bool:
        return route is None or route.has_to_do_with(concerns)

    for caution in knowledge.cautions:
        about = caution.file
        if leaf := _one_short(case, caution.when):
            yield _miss(case, leaf, "caution", about.id, about.hazard, about.harm, about.severity, tuple(about.sources))
    for stop in knowledge.stops:
        if stop.file.near and concerned(stop.file.concerns) and (leaf := _one_short(case, stop.when)):
            yield _miss(
                case, leaf, "stop", stop.file.id, stop.file.title, "No procedure is printed.", _SEVERITY_OF_A_STOP,
                tuple(stop.file.sources),
            )  # fmt: skip
    for note in knowledge.notes:
        if concerned(note.file.concerns) and (leaf := _one_short(case, note.when)):
            title = note.file.id.replace("-", " ")
            severity = _SEVERITY_OF_A_NOTE[note.file.level]
            happens = _said(case, note.text)
            yield _miss(case, leaf, "note", note.file.id, title, happens, severity, tuple(note.file.sources))
    yield from _choices(case, concerned)


def _choices(case: Case, concerned: Callable[[Collection[str]], bool]) -> Iterator[tuple[float, NearMiss]]:
    """Alternatives that would be chosen: of rows that go by order, those before the chosen one."""
    for name, decision in case.knowledge.decisions.items():
        if not concerned(decision.concerns):
            continue
        for judged in case.outcome(name).rows:
            row = judged.row
            if judged.chosen and decision.hit == "priority":
                break
            if row.never_taken:
                continue
            if leaf := _one_short(case, row.when):
                yield _miss(
                    case, leaf, "choice", f"{name}={row.then}", f"{decision.spec.label}: {row.name}", row.why,
                    _SEVERITY_OF_A_CHOICE, row.sources,
                )  # fmt: skip


def _one_short(case: Case, condition: Condition) -> Leaf | None:
    judged = case.judge(condition)
    if judged.truth is not Truth.NO:
        return None
    changes = needed(case, condition, judged)
    if changes is None or len(changes) != 1:
        return None
    leaf = changes[0]
    return leaf if _may_change(case, leaf) else None


def _may_change(case: Case, leaf: Leaf) -> bool:
    if leaf.judged.truth is Truth.UNKNOWN or leaf.atom.operator in ("known", "unknown"):
        return False
    given = case.knowledge.given.facts.get(leaf.atom.fact)
    if given is not None and given.changes == "daily":
        return True
    distance = distance_of(case, leaf.atom)
    if distance is None or not bound_of(case, leaf.atom):
        return False
    return bool(distance <= case.value("limit.near_miss"))


def _miss(
    case: Case, leaf: Leaf, kind: Kind, name: str, title: str, happens: str, severity: int, sources: tuple[str, ...]
) -> tuple[float, NearMiss]:
    distance = distance_of(case, leaf.atom)
    miss = NearMiss(kind, name, title, say(leaf_said(case, leaf), dials_of(case)), happens, severity, sources)
    return (0.0 if distance is None else distance), miss


def _said(case: Case, wording: Wording) -> str:
    try:
        return say(Filler(case).text(wording), dials_of(case))
    except Gap:
        return ""
