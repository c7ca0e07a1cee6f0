"""What stands on a paper already: said once beside its work, it is not said again further on."""

from collections.abc import Iterator

from tailtrue.parts import Setting, Text
from tailtrue.procedure import Alternative, Derivation, Procedure, Step

# Fewer letters than this are read faster than the number of another step.
_WORTH_A_LOOK = 30


class Told:
    """Where the reasons and the limits of a sheet are told first."""

    def __init__(self, procedure: Procedure) -> None:
        self._steps = [step for phase in procedure.phases for step in phase.steps]
        self._settings = [(step.number, line) for step in self._steps for line in step.settings]
        self._again = dict(self._said_again())
        self._beside: dict[str, list[str]] = {}
        for _, line in self._settings:
            for piece in line.value:
                if not isinstance(piece, str):
                    self._beside.setdefault(piece.fact, []).append(_words(line.reason))

    def reason_at(self, line: Setting) -> str:
        """The number of the earlier step that sets the same for the same reason, or nothing."""
        return self._again.get(id(line), "")

    def why_at(self, way: Alternative) -> str:
        """The number of the step that gives the reason of this way beside its setting, or nothing."""
        return next((number for number, line in self._settings if way.why in _words(line.reason)), "")

    def limit_at_a_step(self, one: Derivation) -> bool:
        """Whether what bounds a number stands beside it where it is set."""
        bound = _words(one.limited_by)
        return any(bound in reason for reason in self._beside.get(one.fact, ()))

    def why_before(self, step: Step) -> bool:
        """Whether an earlier step of the sheet gives the same reason for being done."""
        return bool(step.why) and any(one.why == step.why for one in self._steps[: self._steps.index(step)])

    def _said_again(self) -> Iterator[tuple[int, str]]:
        first: dict[tuple[str, str], tuple[str, Text]] = {}
        for number, line in self._settings:
            if all(isinstance(piece, str) for piece in line.reason) and len(_words(line.reason)) >= _WORTH_A_LOOK:
                where, value = first.setdefault((_words(line.label), _words(line.reason)), (number, line.value))
                if where != number and value == line.value:
                    yield id(line), where


def _words(text: Text) -> str:
    return "".join([piece for piece in text if isinstance(piece, str)])
