"""Speed and feed of a visit held against the steps of the lathe: what cannot be set there was not set."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any, Self

from tailtrue.case import Case
from tailtrue.errors import Problem
from tailtrue.facts import NotKnown
from tailtrue.log.rules import log_rules
from tailtrue.log.typed import Typed

_CONFIRMED = "nearest_step"
_INCH_MM = 25.4


@dataclass(frozen=True)
class LatheSteps:
    """What a lathe can be set to: a list of speeds or a range of them, and the feeds; empty where nothing is said."""

    lathe: str
    speeds: tuple[float, ...]
    speed_range: tuple[float, float] | None
    feeds: tuple[float, ...]
    inch: bool = False

    @classmethod
    def of(cls, value: Callable[[str], Any]) -> Self:
        """Those of a lathe whose facts are asked for by name; None is not said."""
        low, high = value("lathe.speed_from"), value("lathe.speed_to")
        between = None if low is None or high is None else (low, high)
        speeds, feeds = (tuple(value(name) or ()) for name in ("lathe.speeds", "lathe.feeds"))
        return cls(value("lathe.name"), speeds, between, feeds, value("lathe.dials") == "inch")


def steps_of(case: Case) -> LatheSteps:
    """The steps of the lathe of a case."""

    def value(name: str) -> Any:
        return None if isinstance(case.get(name), NotKnown) else case.value(name)

    return LatheSteps.of(value)


def on_steps(typed: Typed, steps: LatheSteps | None) -> Typed:
    """What was typed, its speed and feed being steps of the lathe; what is no step is a fault.

    The nearest step takes the place of one only where the typing says so itself.
    """
    if steps is None or typed.content.get("lathe", steps.lathe) != steps.lathe:
        return typed
    faults: list[Problem] = []
    settled: dict[str, Any] = {}
    feed_unit, one = ("in/rev", _INCH_MM) if steps.inch else ("mm/rev", 1.0)
    for key, found, unit, size in (("speed", steps.speeds, "1/min", 1.0), ("feed", steps.feeds, feed_unit, one)):
        if not found or not typed.says(key):
            continue
        said = typed.content[key]
        nearest = min(found, key=lambda step: abs(step - said))
        if abs(nearest - said) <= log_rules().step_share * nearest:
            continue
        if typed.content.get(_CONFIRMED) and min(found) <= said <= max(found):
            settled[key] = nearest
            continue
        faults.append(_no_step(typed, key, sorted(found), nearest, (unit, size)))
    faults += _beyond(typed, steps)
    return typed.instead(settled, faults)


def _no_step(typed: Typed, key: str, found: list[float], nearest: float, shown: tuple[str, float]) -> Problem:
    unit, size = shown
    listed = ", ".join(f"{step / size:.4g}" for step in found)
    if found[0] <= typed.content[key] <= found[-1]:
        there = f"{nearest / size:.4g} {unit}"
        do = f"write the {key} that was set; if it was the nearest one, {there}, write {_CONFIRMED} = true beside it"
    else:
        do = f"write the {key} that was set, or mend {key}s in the file of the lathe"
    return typed.places[key].problem((), f"is no {key} of this lathe, which has {listed} {unit}", do)


def _beyond(typed: Typed, steps: LatheSteps) -> Iterator[Problem]:
    if steps.speeds or steps.speed_range is None or not typed.says("speed"):
        return
    low, high = steps.speed_range
    share = log_rules().step_share
    if not low * (1 - share) <= typed.content["speed"] <= high * (1 + share):
        do = "write the speed that was set, or mend speed_from and speed_to in the file of the lathe"
        wrong = f"is no speed of this lathe, which goes from {low:g} to {high:g} 1/min"
        yield typed.places["speed"].problem((), wrong, do)
