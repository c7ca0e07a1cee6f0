"""How long each step, each phase and the whole job take."""

from collections.abc import Iterable, Mapping
from math import ceil
from typing import Any

from tailtrue.assemble.filling import Filler, figure
from tailtrue.parts import Figure
from tailtrue.procedure import Phase, Span, Step, StepTime, TimePlan
from tailtrue.store.models import TimeFile
from tailtrue.wording import Wording

_ESTIMATE = "time.estimate"
_SLACK = 1e-9  # of a step of rounding: what adding floats leaves behind


def step_time(filler: Filler, file: TimeFile | None) -> StepTime | None:
    """The time of a step, for one piece: cutting from the settings, and handling from the table."""
    if file is None:
        return None
    row = _handling(filler, file.handling)
    cutting = filler.figure(file.cutting) if file.cutting else None
    cut = cutting.value if cutting else 0.0
    return StepTime(
        low=_seconds(filler, "low", row["low"] + cut),
        high=_seconds(filler, "high", row["high"] + cut),
        waiting=filler.figure(file.waiting) if file.waiting else None,
        cutting=cutting,
    )


def phase_time(filler: Filler, steps: Iterable[Step], pieces: int) -> Span:
    """The time of a phase for all its pieces; waits run once for each piece."""
    return _sum(filler, [step.time for step in steps if step.time], pieces, "time.round_to")


def job_time(filler: Filler, phases: Iterable[Phase], notes: Iterable[Wording]) -> TimePlan:
    """The time of the whole job, told in larger steps, and the sentences that go with it."""
    spans = [phase.time for phase in phases if phase.time]
    told = tuple(filler.text(text) for text in notes)
    return TimePlan(total=_sum(filler, spans, 1, "time.round_total_to"), notes=told)


def _handling(filler: Filler, kind: str) -> Mapping[str, Any]:
    rows: Iterable[Mapping[str, Any]] = filler.fact("time.handling").value
    return next(row for row in rows if row["kind"] == kind)


def _sum(filler: Filler, spans: Iterable[Span], pieces: int, told_in: str) -> Span:
    spans = tuple(spans)
    step = filler.figure(told_in).value

    def up(seconds: float) -> float:
        return ceil(seconds / step - _SLACK) * step

    waits = sum(span.waiting.value for span in spans if span.waiting)
    return Span(
        low=_seconds(filler, "low", up(pieces * sum(span.low.value for span in spans))),
        high=_seconds(filler, "high", up(pieces * sum(span.high.value for span in spans))),
        waiting=_seconds(filler, "waiting", pieces * waits) if waits else None,
    )


def _seconds(filler: Filler, name: str, value: float) -> Figure:
    return figure(filler.case.knowledge.catalogue[_ESTIMATE].fields[name], f"{_ESTIMATE}.{name}", value)
