"""What stands on a paper already: said once beside its work, it is not said again further on."""

from bisect import bisect_right
from collections.abc import Iterable, Iterator
from itertools import accumulate

from tailtrue.parts import Setting, Text
from tailtrue.procedure import Alternative, Derivation, Procedure, Step

# Fewer letters than this are read faster than the number of another step.
_WORTH_A_LOOK = 30


class Told:
    """Where the reasons and the limits of a sheet are told first."""

    def __init__(self, procedure: Procedure) -> None:
        steps = [step for phase in procedure.phases for step in phase.steps]
        self._settings = [(step.number, line, _words(line.reason)) for step in steps for line in step.settings]
        self._again = dict(self._said_again())
        self._beside: dict[str, list[str]] = {}
        for _, line, reason in self._settings:
            for piece in line.value:
                if not isinstance(piece, str):
                    self._beside.setdefault(piece.fact, []).append(reason)
        self._why_before = set(_why_again(steps))
        # All reasons in one text, to look through it at once, and where each begins.
        self._reasons = "\n".join([reason for _, _, reason in self._settings])
        self._begins = [*accumulate((len(reason) + 1 for _, _, reason in self._settings), initial=0)]

    def reason_at(self, line: Setting) -> str:
        """The number of the earlier step that sets the same for the same reason, or nothing."""
        return self._again.get(id(line), "")

    def why_at(self, way: Alternative) -> str:
        """The number of the step that gives the reason of this way beside its setting, or nothing."""
        at = self._reasons.find(way.why)
        return self._settings[bisect_right(self._begins, at) - 1][0] if at >= 0 and self._settings else ""

    def limit_at_a_step(self, one: Derivation) -> bool:
        """Whether what bounds a number stands beside it where it is set."""
        bound = _words(one.limited_by)
        return any(bound in reason for reason in self._beside.get(one.fact, ()))

    def why_before(self, step: Step) -> bool:
        """Whether an earlier step of the sheet gives the same reason for being done."""
        return step.number in self._why_before

    def _said_again(self) -> Iterator[tuple[int, str]]:
        first: dict[tuple[str, str], tuple[str, Text]] = {}
        for number, line, reason in self._settings:
            if len(reason) >= _WORTH_A_LOOK and all(isinstance(piece, str) for piece in line.reason):
                where, value = first.setdefault((_words(line.label), reason), (number, line.value))
                if where != number and value == line.value:
                    yield id(line), where


def _why_again(steps: Iterable[Step]) -> Iterator[str]:
    given: dict[str, list[Text]] = {}
    for step in steps:
        alike = given.setdefault(_words(step.why), [])
        if step.why in alike:
            yield step.number
        elif step.why:
            alike.append(step.why)


def _words(text: Text) -> str:
    return "".join([piece for piece in text if isinstance(piece, str)])


def repeated(procedure: Procedure) -> dict[str, str]:
    """The steps whose actions, reason and tools an earlier step has given already, each with the first that did."""
    first: dict[tuple[object, ...], str] = {}
    found: dict[str, str] = {}
    for step in (step for phase in procedure.phases for step in phase.steps):
        said = (step.text, step.why, step.tools)
        if first.setdefault(said, step.number) != step.number:
            found[step.number] = first[said]
    return found


def fetched(procedure: Procedure) -> dict[str, tuple[str, ...]]:
    """The tools that a step is the first of its phase to name, and what is worn for it, by its number."""
    worn = {need.id for need in procedure.needs if need.kind == "wear"}
    found: dict[str, tuple[str, ...]] = {}
    for phase in procedure.phases:
        at_hand: set[str] = set()
        for step in phase.steps:
            found[step.number] = tuple(tool for tool in step.tools if tool not in at_hand or tool in worn)
            at_hand.update(step.tools)
    return found
