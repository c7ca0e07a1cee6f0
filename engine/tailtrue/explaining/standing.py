"""Which steps and cautions belong to a job, told for every job, also for one of which no procedure is printed."""

from collections.abc import Iterator
from dataclasses import dataclass

from tailtrue.case import Case
from tailtrue.store.knowledge import Caution, Phase, Route, StepText
from tailtrue.truth import Truth


@dataclass(frozen=True)
class Placed:
    """A step at its place in a phase; its number on the sheet, empty where it does not belong or may not."""

    phase: Phase
    step: StepText
    belongs: Truth
    number: str


def places(case: Case, route: Route) -> tuple[Placed, ...]:
    """Every step of a route at every place, whether it belongs or not, in the order of the route."""
    return tuple(_places(case, route))


def _places(case: Case, route: Route) -> Iterator[Placed]:
    phases = 0
    for phase in route.phases:
        whole = case.judge(phase.when).truth
        judged = [(step, _both(whole, case.judge(step.when).truth)) for step in _steps(case, phase)]
        phases += any(truth is Truth.YES for _, truth in judged)
        number = 0
        for step, truth in judged:
            number += truth is Truth.YES
            yield Placed(phase, step, truth, f"{phases}.{number}" if truth is Truth.YES else "")


def _both(phase: Truth, step: Truth) -> Truth:
    if Truth.NO in (phase, step):
        return Truth.NO
    return Truth.UNKNOWN if Truth.UNKNOWN in (phase, step) else Truth.YES


def _steps(case: Case, phase: Phase) -> Iterator[StepText]:
    return (case.knowledge.steps[name] for name in phase.file.steps)


def done(placed: tuple[Placed, ...]) -> tuple[Placed, ...]:
    """The steps that belong."""
    return tuple(one for one in placed if one.belongs is Truth.YES)


def answering(caution: Caution, placed: tuple[Placed, ...]) -> tuple[Placed, ...]:
    """The steps of a job with an activity that a caution answers."""
    return tuple(one for one in done(placed) if set(one.step.file.activities) & set(caution.file.answers))


def shown(case: Case, placed: tuple[Placed, ...]) -> tuple[Caution, ...]:
    """The cautions of a job: those that hold or may hold and meet a step."""
    return tuple(
        caution
        for caution in case.knowledge.cautions
        if case.judge(caution.when).truth is not Truth.NO and answering(caution, placed)
    )


def facts_of_step(step: StepText) -> Iterator[str]:
    """The facts that a step prints."""
    wordings = [*step.sentences, step.why]
    for setting in step.settings:
        wordings += [setting.label, setting.value, setting.reason]
    if step.settings_from is not None:
        wordings += [step.settings_from.label, step.settings_from.value, step.settings_from.reason]
    wordings += [check.text for check in step.checks]
    if step.hold:
        wordings += step.hold.wordings()
    yield from (place.name for wording in wordings for place in wording.places() if not place.name.startswith("row."))
    if step.settings_from is not None:
        yield step.settings_from.records
    for check in step.checks:
        yield from (name for name in (check.low, check.high, check.resolution, check.uncertainty) if name)
