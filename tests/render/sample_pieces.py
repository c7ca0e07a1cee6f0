"""Short ways to make the nodes of the sample."""

from collections.abc import Mapping

from tailtrue.parts import Blank, Bound, Caution, Check, Figure, Rounding, Signal
from tailtrue.procedure import Step

DIFFERENCES: Mapping[str, tuple[float, ...]] = {
    "metric": (0.005, 0.01, 0.015, 0.02, 0.03, 0.04, 0.05, 0.06, 0.08, 0.1, 0.15, 0.2),
    "inch": (
        0.00508,
        0.01016,
        0.01524,
        0.02032,
        0.0254,
        0.0381,
        0.0508,
        0.0762,
        0.1016,
        0.1524,
        0.2032,
        0.254,
    ),
}
LITERAL_LABEL = "bar *2* <B> [x] | rack_a"
_SEVERITY: Mapping[Signal, int] = {"danger": 5, "warning": 4, "caution": 3, "notice": 1}


def figure(
    fact: str,
    value: float,
    unit: str,
    rounding: Rounding,
    bound: Bound = "nearest",
    marked: str | None = None,
) -> Figure:
    """A figure."""
    return Figure(fact=fact, value=value, unit=unit, rounding=rounding, bound=bound, marked=marked)


def mm(fact: str, value: float, rounding: Rounding, bound: Bound = "nearest") -> Figure:
    """A length."""
    return figure(fact, value, "mm", rounding, bound)


def bar_length() -> Figure:
    """The length of the sample's bar."""
    return mm("bar.length", 380, "length")


def caution(
    name: str,
    signal: Signal,
    hazard: str,
    harm: str,
    *avoid: str,
    wear: tuple[str, ...] = (),
    shown_because: str | None = None,
    sources: tuple[str, ...] = ("common-practice",),
) -> Caution:
    """A safety message."""
    return Caution(
        id=name,
        signal=signal,
        severity=_SEVERITY[signal],
        likelihood=2,
        hazard=hazard,
        harm=harm,
        avoid=tuple((line,) for line in avoid),
        protective_equipment=wear,
        signs=("W024",) if signal == "danger" else (),
        answers=(name,),
        shown_because=shown_because,
        sources=sources,
    )


def start_check(number: str) -> Step:
    """The step before every start."""
    return Step(
        id=f"start-check-{number}",
        number=number,
        title="Check before the start",
        machine="stopped",
        activities=("start-check",),
        text=(("Touch the chuck key on the bench.",), ("Turn the chuck by hand, one whole turn.",)),
        checks=(Check(text=("Speed lever stands at",), blanks=(Blank(label="speed", unit="rev/min"),)),),
    )
