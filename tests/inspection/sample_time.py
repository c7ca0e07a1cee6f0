"""Times of the sample: each step is given its own, sums are made of them."""

from math import ceil

from tailtrue.parts import Figure
from tailtrue.procedure import Phase, Span, Step, StepTime, TimePlan

from .sample_pieces import figure

WIDTH, WAIT = 30.0, 86400.0


def seconds(fact: str, value: float) -> Figure:
    """A time."""
    return figure(fact, value, "s", "time")


def timed(phases: tuple[Phase, ...]) -> tuple[Phase, ...]:
    """The phases with times at every step and their sums."""
    return tuple(_phase(phase) for phase in phases)


def plan(phases: tuple[Phase, ...]) -> TimePlan:
    """The time of the whole job."""
    total = _sum([phase.time for phase in phases if phase.time], 1, 900)
    return TimePlan(total=total, notes=(("An estimate.",),))


def _phase(phase: Phase) -> Phase:
    steps = tuple(step.model_copy(update={"time": _step(step)}) for step in phase.steps)
    times = [step.time for step in steps if step.time]
    return phase.model_copy(update={"steps": steps, "time": _sum(times, len(phase.each) or 1, 300)})


def _sum(parts: list[StepTime] | list[Span], pieces: int, told_in: int) -> Span:
    def up(value: float) -> float:
        return max(1, ceil(pieces * value / told_in)) * float(told_in)

    waits = pieces * sum(part.waiting.value for part in parts if part.waiting)
    return Span(
        low=seconds("time.low", up(sum(part.low.value for part in parts))),
        high=seconds("time.high", up(sum(part.high.value for part in parts))),
        waiting=seconds("time.waiting", waits) if waits else None,
    )


def _step(step: Step) -> StepTime:
    cutting = _cutting(step)
    wait = next(iter(_set(step, "time")), WAIT) if "cure-wait" in step.activities else None
    cut = cutting.value if cutting else 0.0
    return StepTime(
        low=seconds("time.low", 60 + cut),
        high=seconds("time.high", 180 + cut),
        cutting=cutting,
        waiting=seconds("time.waiting", wait) if wait else None,
    )


def _cutting(step: Step) -> Figure | None:
    """A fifth more than one pass over the longest cut of the sample, both collars."""
    speeds, feeds = _set(step, "speed"), _set(step, "feed")
    if step.machine != "turning" or not speeds or not feeds or not min(*speeds, *feeds) > 0:
        return None
    return seconds("time.cutting", 1.2 * 60 * 2 * WIDTH / (min(feeds) * min(speeds)))


def _set(step: Step, kind: str) -> list[float]:
    values = (piece for setting in step.settings for piece in setting.value)
    return [piece.value for piece in values if isinstance(piece, Figure) and piece.rounding == kind]
