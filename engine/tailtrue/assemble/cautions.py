"""Cautions put where they protect: up front, at the opening of a phase, or directly above the action."""

from collections.abc import Iterable, Sequence
from typing import NamedTuple, get_args

from tailtrue.assemble.filling import Filler
from tailtrue.parts import Caution as CautionNode
from tailtrue.parts import MachineState
from tailtrue.store.knowledge import Caution
from tailtrue.truth import Truth

MOST_AT_A_STEP = "limit.messages_at_step"


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
        sources=tuple(file.sources),
    )


def for_the_job(held: Iterable[tuple[Caution, CautionNode]], activities: set[str]) -> tuple[CautionNode, ...]:
    """Cautions that hold for the whole job, printed once up front."""
    return tuple(node for caution, node in held if caution.file.scope == "job" and activities & set(caution.file.answers))


class Place(NamedTuple):
    """A step as far as cautions are put above it."""

    number: str
    machine: MachineState
    activities: tuple[str, ...]


class Dealt(NamedTuple):
    """The cautions of a phase: what opens it, and what stands above each of its steps."""

    opening: tuple[CautionNode, ...]
    steps: tuple[tuple[CautionNode, ...], ...]


class CautionDealer:
    """Deals cautions out over the whole sheet, phase by phase, and remembers where each stands in full.

    A caution stands above the first step that meets its hazard. In a later phase it comes again only where it is the
    worst that answers an activity, so that every activity has one close by and none is read so often that it is no
    longer read. A step carries `most`, the worst of them. What is left over goes to the nearest step before it that has
    room; what finds none opens the phase, still before the hand reaches the place. What stood in
    full in an earlier phase names that place and is printed as one line; a danger never is.
    """

    def __init__(self, held: Iterable[tuple[Caution, CautionNode]], most: int) -> None:
        self._most = most
        self._held = [(caution, node) for caution, node in held if caution.file.scope == "step"]
        self._shown: dict[str, str] = {}
        self._in_phase: set[str] = set()
        self._answered: set[str] = set()

    def phase(self, number: str, places: Sequence[Place]) -> Dealt:
        """The cautions of the phase of this number with these steps."""
        self._in_phase, self._answered = set(), set()
        opening: list[CautionNode] = []
        above: list[list[CautionNode]] = []
        for index, place in enumerate(places):
            here = [node for node in self._due(set(place.activities)) if node.id not in self._in_phase]
            self._in_phase.update(node.id for node in here)
            above.append(here[: self._most])
            for node in here[self._most :]:
                _with_room(opening, above, places, index, self._most, bool(node.protective_equipment)).append(node)
        placed = tuple(self._placed(node, number) for node in opening)
        return Dealt(
            placed,
            tuple(
                tuple(self._placed(node, place.number) for node in sorted(nodes, key=_rank))
                for place, nodes in zip(places, above, strict=True)
            ),
        )

    def _placed(self, node: CautionNode, place: str) -> CautionNode:
        first = self._shown.setdefault(node.id, place)
        return node if node.signal == "danger" or first == place else node.model_copy(update={"again": first})

    def _due(self, activities: set[str]) -> list[CautionNode]:
        due = []
        for _, node in self._held:
            met = activities & set(node.answers)
            # Worst first: the first to answer an activity in this phase is the one that stays close to it.
            if met and (node.id not in self._shown or met - self._answered):
                due.append(node)
                self._answered |= met
        return due


def _with_room(
    opening: list[CautionNode], above: list[list[CautionNode]], places: Sequence[Place], index: int, most: int, worn: bool
) -> list[CautionNode]:
    """Where a caution goes that its step has no room for. What is worn may be gloves: then to no livelier step."""
    states = get_args(MachineState)
    bound = states.index(places[index].machine) if worn else len(states)
    for earlier in reversed(range(index)):
        if len(above[earlier]) < most and states.index(places[earlier].machine) <= bound:
            return above[earlier]
    return opening
