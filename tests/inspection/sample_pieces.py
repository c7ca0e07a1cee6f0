"""Short ways to make the nodes of the sample."""

from tailtrue.parts import Blank, Bound, Caution, Check, Figure, Rounding, Setting, Signal
from tailtrue.procedure import Phase, Step

_SEVERITY: dict[Signal, int] = {"danger": 5, "warning": 4, "caution": 3, "notice": 1}
# What is of common practice, and of no one text.
OPEN = ("common-practice",)


def figure(fact: str, value: float, unit: str, rounding: Rounding, bound: Bound = "nearest") -> Figure:
    """A figure."""
    return Figure(fact=fact, value=value, unit=unit, rounding=rounding, bound=bound)


def mm(fact: str, value: float, rounding: Rounding = "length") -> Figure:
    """A length."""
    return figure(fact, value, "mm", rounding)


def speed(fact: str, value: float) -> Setting:
    """A line that sets a speed."""
    return Setting(label=("speed",), value=(figure(fact, value, "1/min", "speed"),), reason=("surface speed",))


def power_feed(fact: str, value: float) -> Setting:
    """A line that sets a feed of the plate."""
    return Setting(label=("feed",), value=(figure(fact, value, "mm/rev", "feed"),))


def hand_feed(fact: str, value: float) -> Setting:
    """A line that tells how fast to feed by hand."""
    return Setting(label=("feed by hand, about",), value=(figure(fact, value, "mm/rev", "feed"),))


def depth(fact: str, value: float) -> Setting:
    """A line that sets a depth of cut."""
    return Setting(label=("depth per side",), value=(mm(fact, value, "depth"),), reason=("dial, which reads radius",))


def caution(name: str, signal: Signal, *answers: str, wear: tuple[str, ...] = ()) -> Caution:
    """A safety message."""
    return Caution(
        id=name,
        signal=signal,
        severity=_SEVERITY[signal],
        likelihood=2,
        hazard=f"What {name.replace('-', ' ')} can do",
        harm="It wounds whoever is near.",
        avoid=(("Keep clear of it.",),),
        protective_equipment=wear,
        answers=answers,
        sources=("lathe-guide:4", "common-practice"),
    )


def written(text: str, *labels: str) -> Check:
    """A check with blanks to fill in."""
    return Check(text=(text,), blanks=tuple(Blank(label=label) for label in labels))


def start_check(number: str) -> Step:
    """The look round before a start."""
    return Step(
        id="start-check",
        number=number,
        title="Ready to start",
        machine="stopped",
        activities=("start-check", "spindle-start"),
        text=(
            ("Touch the chuck key in its place.",),
            ("Set the slowest speed for the first turns, spindle stopped.",),
            ("Turn the spindle by hand through one full turn.",),
            ("IF the lathe was isolated, THEN restore power.",),
        ),
        checks=(written("Key seen in its place.", "speed set"),),
    )


def written_for_each(phases: tuple[Phase, ...]) -> tuple[Phase, ...]:
    """The phases with a place to write for each of their pieces, as a sheet has them."""

    def of(check: Check, phase: Phase) -> Check:
        said = " ".join([*(piece for piece in check.text if isinstance(piece, str)), *(one.label for one in check.blanks)])
        each = () if any(piece in said for piece in phase.each) else phase.each
        return check.model_copy(update={"blanks": tuple(one.model_copy(update={"each": each}) for one in check.blanks)})

    def whole(step: Step, phase: Phase) -> Step:
        return step.model_copy(update={"checks": tuple(of(check, phase) for check in step.checks)})

    return tuple(phase.model_copy(update={"steps": tuple(whole(step, phase) for step in phase.steps)}) for phase in phases)
