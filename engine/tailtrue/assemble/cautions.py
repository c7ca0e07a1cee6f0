"""Cautions put where they protect: up front, at the opening of a phase, or directly above the action."""

from collections.abc import Iterable

from tailtrue.assemble.filling import Filler
from tailtrue.parts import Caution as CautionNode
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


class CautionDealer:
    """Deals cautions out over the whole sheet, phase by phase.

    A caution stands above the first step that meets its hazard. In a later phase it comes again only where it is the
    worst that answers an activity, so that every activity has one close by and none is read so often that it is no
    longer read. A step carries `most`, the worst of them; what is left over opens the phase, still before the hand
    reaches the place.
    """

    def __init__(self, held: Iterable[tuple[Caution, CautionNode]], most: int) -> None:
        self._most = most
        self._held = [(caution, node) for caution, node in held if caution.file.scope == "step"]
        self._shown: set[str] = set()
        self._in_phase: set[str] = set()
        self._answered: set[str] = set()
        self.left_over: list[CautionNode] = []

    def open_phase(self) -> None:
        """Begin a phase: nothing of it has been shown yet."""
        self._in_phase, self._answered, self.left_over = set(), set(), []

    def at(self, activities: Iterable[str]) -> tuple[CautionNode, ...]:
        """The cautions to print above a step with these activities."""
        here = [node for node in self._due(set(activities)) if node.id not in self._in_phase]
        self._in_phase.update(node.id for node in here)
        self._shown.update(node.id for node in here)
        self.left_over.extend(here[self._most :])
        return tuple(here[: self._most])

    def _due(self, activities: set[str]) -> list[CautionNode]:
        due = []
        for _, node in self._held:
            met = activities & set(node.answers)
            # Worst first: the first to answer an activity in this phase is the one that stays close to it.
            if met and (node.id not in self._shown or met - self._answered):
                due.append(node)
                self._answered |= met
        return due
