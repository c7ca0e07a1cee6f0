"""Cautions put where they protect: up front, at the opening of a phase, or directly above the action."""

from collections.abc import Iterable, Sequence, Set
from typing import NamedTuple, get_args

from tailtrue.assemble.filling import Filler
from tailtrue.parts import Caution as CautionNode
from tailtrue.parts import MachineState
from tailtrue.store.knowledge import Caution
from tailtrue.truth import Truth

# What is read while the reader gets ready is about the step that follows.
_GETS_READY = "start-check"
# Words for what maims nobody.
_LESSER = ("caution", "notice")


def applicable(filler: Filler) -> list[tuple[Caution, CautionNode]]:
    """The cautions that hold or may hold for this case, worst first."""
    held = []
    for caution in filler.case.knowledge.cautions:
        judged = filler.case.judge(caution.when)
        if judged.truth is Truth.NO:
            continue
        missing = [filler.case.knowledge.catalogue[name].label for name in judged.missing]
        because = f"{' and '.join(missing)} was not given" if judged.truth is Truth.UNKNOWN else None
        held.append((caution, _node(filler, caution, because)))
    return sorted(held, key=lambda pair: _rank(pair[1]))


def _rank(node: CautionNode) -> tuple[bool, int, int, str]:
    return (node.signal != "danger", -node.severity, -node.likelihood, node.id)


def _node(filler: Filler, caution: Caution, because: str | None) -> CautionNode:
    file = caution.file
    return CautionNode(
        id=file.id,
        signal=file.signal,
        severity=file.severity,
        likelihood=file.likelihood,
        hazard=file.hazard,
        harm=file.harm,
        avoid=tuple(filler.text(wording) for wording in caution.avoid),
        protective_equipment=tuple(file.protective_equipment),
        signs=tuple(file.signs),
        answers=tuple(file.answers),
        shown_because=because,
        shop_rule=filler.case.knowledge.shop.mark("caution", file.id),
        of_shop=filler.case.knowledge.shop.own_lines("caution", file.id),
        at_back=file.at_back and not filler.case.knowledge.shop.mark("caution", file.id),
        sources=tuple(file.sources),
    )


def for_the_job(held: Iterable[tuple[Caution, CautionNode]], activities: Set[str]) -> tuple[CautionNode, ...]:
    """Cautions that hold for the whole job, told or named once up front."""
    return tuple(node for caution, node in held if caution.file.scope == "job" and activities & set(caution.file.answers))


def few_up_front(nodes: Sequence[CautionNode], most: int) -> tuple[CautionNode, ...]:
    """What stands up front, worst first, no more in full than are read: of lesser words the least are told at the back."""
    full = [node for node in nodes if not node.at_back]
    may_go = [node.id for node in full if node.signal in _LESSER and not node.shop_rule]
    gone = set(may_go[max(len(may_go) + most - len(full), 0) :])
    return tuple(node.model_copy(update={"at_back": True}) if node.id in gone else node for node in nodes)


def worst_first(nodes: Iterable[CautionNode]) -> tuple[CautionNode, ...]:
    """Cautions in the order in which they are read."""
    return tuple(sorted(nodes, key=_rank))


class Place(NamedTuple):
    """A step as far as cautions are put above it."""

    number: str
    machine: MachineState
    activities: tuple[str, ...]


class Dealt(NamedTuple):
    """The cautions of a phase: what opens it, and what stands above each of its steps."""

    opening: tuple[CautionNode, ...]
    steps: tuple[tuple[CautionNode, ...], ...]


class Few(NamedTuple):
    """How many cautions may stand at a step and before a phase, and from which severity on one is told again."""

    at_step: int
    at_phase: int
    again_from: int


class CautionDealer:
    """Deals cautions out over the whole sheet, phase by phase, and remembers where each stands in full.

    A caution stands above the first step that meets its hazard. In a later phase it comes again only where it is the
    worst that answers an activity, so that every activity has one close by and none is read so often that it is no
    longer read; one of little severity does not where a message up front is about that activity. What stood in full in
    an earlier phase names that place and is printed as one line; a danger never is.
    A step carries few of them, in full or as a line, the worst first. What is left over stands at the start check right
    before the step; where there is none, or no room, it opens the phase. It never moves to a step that is about something
    else. What is too much for the opening of a phase goes up front, the least of it (`up_front`); but no danger, and
    nothing that asks for more than is worn for the whole job.
    """

    def __init__(self, held: Iterable[tuple[Caution, CautionNode]], few: Few, front: Sequence[CautionNode] = ()) -> None:
        self._few = few
        self._worn = {piece for node in front for piece in node.protective_equipment}
        self._answered = {activity for node in front for activity in node.answers}
        self.up_front: list[CautionNode] = []
        self._held = [(caution, node) for caution, node in held if caution.file.scope == "step"]
        self._answers = {node.id: frozenset(node.answers) for _, node in self._held}
        self._answering: dict[str, set[int]] = {}
        for rank, (_, node) in enumerate(self._held):
            for activity in node.answers:
                self._answering.setdefault(activity, set()).add(rank)
        self._shown: dict[str, str] = {}

    def phase(self, number: str, places: Sequence[Place]) -> Dealt:
        """The cautions of the phase of this number with these steps."""
        opening: list[CautionNode] = []
        above: list[list[CautionNode]] = []
        due = self._due(places)
        for index, place in enumerate(places):
            above.append([])
            here = [node for node in due if not self._answers[node.id].isdisjoint(place.activities)]
            due = [node for node in due if self._answers[node.id].isdisjoint(place.activities)]
            for node in here:
                self._with_room(opening, above, places, index, node).append(node)
        placed = tuple(self._placed(node, number) for node in self._opening(opening))
        return Dealt(
            placed,
            tuple(
                tuple(self._placed(node, place.number) for node in sorted(nodes, key=_rank))
                for place, nodes in zip(places, above, strict=True)
            ),
        )

    def _opening(self, opening: list[CautionNode]) -> list[CautionNode]:
        """What opens a phase, once what is too much for it has gone up front."""
        may_go = [one for one in opening if one.signal != "danger" and self._worn >= set(one.protective_equipment)]
        over = max(len(opening) - self._few.at_phase, 0)
        gone = may_go[-over:] if over else []
        self.up_front += gone
        return sorted((one for one in opening if one not in gone), key=_rank)

    def _with_room(
        self,
        opening: list[CautionNode],
        above: list[list[CautionNode]],
        places: Sequence[Place],
        index: int,
        node: CautionNode,
    ) -> list[CautionNode]:
        """Where a caution goes. What is worn may be gloves: then to no livelier step."""
        states = get_args(MachineState)
        bound = states.index(places[index].machine) if node.protective_equipment else len(states)
        for near in (index, index - 1):
            ready = near == index or (near >= 0 and _GETS_READY in places[near].activities)
            if not ready or states.index(places[near].machine) > bound:
                continue
            if len(above[near]) < self._few.at_step:
                return above[near]
        return opening

    def _placed(self, node: CautionNode, place: str) -> CautionNode:
        first = self._shown.setdefault(node.id, place)
        return node if node.signal == "danger" or first == place else node.model_copy(update={"again": first})

    def _due(self, places: Sequence[Place]) -> list[CautionNode]:
        """The cautions of a phase with these steps, worst first."""
        due: set[str] = set()
        answered: set[str] = set()
        said = {node.id for node in self.up_front}
        for place in places:
            ranks = set().union(*(self._answering.get(activity, ()) for activity in place.activities))
            # Worst first: the first to answer an activity in this phase is the one that stays close to it.
            for _, node in map(self._held.__getitem__, sorted(ranks)):
                met = self._answers[node.id].intersection(place.activities)
                if node.severity < self._few.again_from:
                    met -= self._answered
                if node.id not in said and (node.id not in self._shown or met - answered):
                    due.add(node.id)
                    answered |= met
        return [node for _, node in self._held if node.id in due]
