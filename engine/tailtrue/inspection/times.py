"""Times: every step has one, the sums add up, and no cut is shorter than its own feed and speed allow."""

import re
from collections.abc import Iterator, Sequence
from math import inf, isclose

from tailtrue.inspection.drawing import size
from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet
from tailtrue.parts import Figure
from tailtrue.procedure import Span

_PHASE_TOLD_IN_S = 300.0
_TOTAL_TOLD_IN_S = 900.0
_SAME = 1e-6
_TOTAL = "time of the job"
# A cut may take this many times what feed and speed alone ask, and this much more for dials, travels and ways back.
_MOST_TIMES = 3.0
_MOST_PER_PASS_S = 120.0
_LAST_CUTS = 3.0
_COUNTED = re.compile(r"\bpasses\b|\blight cuts\b")


def every_step_timed(sheet: Sheet) -> Iterator[Fault]:
    """Every step and phase and the job have a time, from the least up to the most; a wait has the time it is told."""
    for placed in sheet.steps:
        time = placed.step.time
        if time is None:
            yield Fault(placed.where, "this step has no time")
            continue
        yield from _sound(placed.where, time)
        if time.cutting is not None and not 0 < time.cutting.value <= time.low.value:
            yield Fault(placed.where, "the cutting alone takes longer than the step, or no time at all")
        if "cure-wait" in placed.step.activities:
            yield from _told_wait(placed, time)
    for phase in sheet.procedure.phases:
        if phase.time is None:
            yield Fault(f"phase {phase.number}", "this phase has no time")
        else:
            yield from _sound(f"phase {phase.number}", phase.time)
    if sheet.procedure.time is None:
        yield Fault(_TOTAL, "the job has no time")
    else:
        yield from _sound(_TOTAL, sheet.procedure.time.total)


def _sound(where: str, span: Span) -> Iterator[Fault]:
    times = [span.low, span.high, *([span.waiting] if span.waiting else [])]
    if any(figure.unit != "s" or not figure.value > 0 for figure in times):
        yield Fault(where, "a time here is not above nothing, or not in seconds")
    elif not span.low.value <= span.high.value:
        yield Fault(where, "the least time is longer than the most")


def _told_wait(placed: Placed, time: Span) -> Iterator[Fault]:
    told = [
        piece.value
        for setting in placed.step.settings
        for piece in setting.value
        if isinstance(piece, Figure) and piece.rounding == "time"
    ]
    if time.waiting is None or any(not isclose(one, time.waiting.value, rel_tol=_SAME) for one in told):
        yield Fault(placed.where, "the wait in the plan of times is not the wait that the step asks for")


def sums_add_up(sheet: Sheet) -> Iterator[Fault]:
    """A phase is the sum of its steps for all its pieces, the job the sum of its phases, each rounded up."""
    spans: list[Span] = []
    for phase in sheet.procedure.phases:
        steps = [step.time for step in phase.steps if step.time is not None]
        if phase.time is not None:
            spans.append(phase.time)
            yield from _adds_up(f"phase {phase.number}", phase.time, steps, len(phase.each) or 1, _PHASE_TOLD_IN_S)
    if sheet.procedure.time is not None:
        yield from _adds_up(_TOTAL, sheet.procedure.time.total, spans, 1, _TOTAL_TOLD_IN_S)


def _adds_up(where: str, said: Span, parts: Sequence[Span], pieces: int, told_in: float) -> Iterator[Fault]:
    waits = pieces * sum(part.waiting.value for part in parts if part.waiting)
    for name, value, due in (
        ("least time", said.low.value, pieces * sum(part.low.value for part in parts)),
        ("most time", said.high.value, pieces * sum(part.high.value for part in parts)),
    ):
        if not due * (1 - _SAME) <= value < due + told_in * (1 + _SAME):
            yield Fault(where, f"the {name} is {value:g} s, its parts come to {due:g} s")
    if not isclose(said.waiting.value if said.waiting else 0.0, waits, rel_tol=_SAME):
        yield Fault(where, f"the waits of its parts come to {waits:g} s, and it says otherwise")


def cuts_take_their_time(sheet: Sheet) -> Iterator[Fault]:
    """Cutting is no shorter than length over feed and speed for every pass, and not far above it."""
    for placed in sheet.steps:
        time = placed.step.time
        bare = _bare_time(sheet, placed)
        if time is None or bare is None:
            continue
        seconds, most = bare
        if time.cutting is None:
            yield Fault(placed.where, f"cuts for {seconds:.0f} s at least, and no cutting time is given")
        elif not seconds * (1 - _SAME) <= time.cutting.value:
            what = f"the cutting time is {time.cutting.value:.0f} s; length, feed and speed alone ask {seconds:.0f} s"
            yield Fault(placed.where, what)
        elif not time.cutting.value <= most:
            what = f"the cutting time of {time.cutting.value:.0f} s is far above the {seconds:.0f} s of feed and speed"
            yield Fault(placed.where, what)


def _bare_time(sheet: Sheet, placed: Placed) -> tuple[float, float] | None:
    """Seconds that the passes alone take, and the most that is believed; None where that cannot be told."""
    step = placed.step
    width, bar = size(sheet, "collar.width"), size(sheet, "bar.diameter")
    if step.machine != "turning" or width is None or bar is None:
        return None
    speeds, feeds, passes = (_set(placed, kind) for kind in ("speed", "feed", "count"))
    if len(speeds) != 1 or len(feeds) != 1 or not speeds[0] > 0 or not feeds[0] > 0:
        return None
    count = max(passes, default=1.0)
    per_length = 60 * max(count, 1.0) / feeds[0] / speeds[0]
    if "skim" in step.activities:
        seconds = 2 * width * per_length
    elif "bore" in step.activities:
        seconds = width * per_length
    elif "facing" in step.activities:
        # Bar or collar, and how many cuts, is not said: once over the smaller face is the least.
        return bar / 2 * per_length, inf
    else:
        return None
    return seconds, _MOST_TIMES * seconds + _MOST_PER_PASS_S * 2 * max(count, _LAST_CUTS)


def _set(placed: Placed, kind: str) -> list[float]:
    """The values of one rounding that a line sets; a count is that of passes."""
    return [
        piece.value
        for setting in placed.step.settings
        if kind != "count" or any(_COUNTED.search(word) for word in setting.label if isinstance(word, str))
        for piece in setting.value
        if isinstance(piece, Figure) and piece.rounding == kind
    ]
