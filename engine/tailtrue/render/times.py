"""Times in words: from so long to so long, for which pieces, and what waits by itself."""

from tailtrue.parts import Dials, Figure
from tailtrue.procedure import Phase, Span, Step
from tailtrue.render.numbers import read
from tailtrue.render.words import listed

_MINUTE = 60


def attended(span: Span, dials: Dials) -> str:
    """How long somebody is at it; the unit stands once where both ends share it.

    >>> one = Figure(fact="time", value=2400, unit="s", rounding="time")
    >>> attended(Span(low=one, high=one.model_copy(update={"value": 3600})), "metric").replace("\\u00a0", " ")
    '40 min to 1 h'
    >>> attended(Span(low=one, high=one.model_copy(update={"value": 3300})), "metric").replace("\\u00a0", " ")
    '40 to 55 min'
    """
    low, high = read(span.low, dials), read(span.high, dials)
    if low == high:
        return high.whole
    if (low.unit, high.unit) == ("s", "min") and (span.low.value or 0) >= _MINUTE:
        # Seconds go up to two minutes: before minutes they are one, for nobody plans a job by the second.
        return f"1 to {high.whole}"
    # Hours with minutes hold a unit among the digits, so the first unit may only go where it is one and the same.
    bare = low.unit == high.unit and "h" not in low.number and "h" not in high.number
    return f"{low.number if bare else low.whole} to {high.whole}"


def waiting(span: Span, dials: Dials) -> str:
    """What runs by itself; empty where nothing does."""
    return whole(span.waiting, dials) if span.waiting else ""


def whole(figure: Figure, dials: Dials) -> str:
    """One time with its unit."""
    return read(figure, dials).whole


def phase_clause(phase: Phase, dials: Dials) -> str:
    """The time of a phase as it stands at its heading; empty where none is known."""
    if phase.time is None:
        return ""
    pieces = f" for {listed(phase.each)} together" if phase.each else ""
    wait = f", and a wait of {waiting(phase.time, dials)}" if phase.time.waiting else ""
    return f"Takes about {attended(phase.time, dials)}{pieces}{wait}."


def step_clause(step: Step, dials: Dials) -> str:
    """The time of a step as it stands at its head, for one piece; a wait after a sign of its own."""
    if step.time is None:
        return ""
    each = " each" if len(step.boxes) > 1 else ""
    wait = f" + {waiting(step.time, dials)}" if step.time.waiting else ""
    return f"{attended(step.time, dials)}{each}{wait}"
