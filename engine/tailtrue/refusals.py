"""Stops judged for a case: why no procedure is printed, with the figures and the shortest way out."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from tailtrue.assemble.filling import Filler
from tailtrue.case import Case, Gap
from tailtrue.errors import Problem, Refused
from tailtrue.facts import NotKnown
from tailtrue.parts import Dials, Text
from tailtrue.render.words import say
from tailtrue.store.knowledge import Route, Stop
from tailtrue.truth import Truth
from tailtrue.wording import Wording


@dataclass(frozen=True)
class Refusal:
    """One reason not to print."""

    id: str
    title: str
    text: Text
    way_out: tuple[Text, ...]
    sources: tuple[str, ...]


def refusals(case: Case, route: Route | None = None) -> tuple[Refusal, ...]:
    """Every stop that fires, or that may fire and says that not knowing is enough to refuse.

    With a route only those that have to do with it are judged.
    """
    filler = Filler(case)
    stops = (stop for stop in case.knowledge.stops if route is None or route.has_to_do_with(stop.file.concerns))
    return tuple(_refusals(case, filler, stops))


def _refusals(case: Case, filler: Filler, stops: Iterable[Stop]) -> Iterator[Refusal]:
    for stop in stops:
        judged = case.judge(stop.when)
        if judged.truth is Truth.YES:
            yield _refusal(stop, filler, stop.text)
        elif judged.truth is Truth.UNKNOWN and stop.file.if_unknown == "refuse":
            labels = " and ".join(case.knowledge.catalogue[name].label for name in judged.missing)
            yield _refusal(stop, filler, stop.text, f"Not known: {labels}.")


def _refusal(stop: Stop, filler: Filler, text: Wording, also: str = "") -> Refusal:
    said = _filled(filler, text) or (stop.file.title,)
    ways = tuple(filled for way in stop.way_out if (filled := _filled(filler, way)))
    ours = "Shop rule: " if filler.case.knowledge.shop.mark("stop", stop.file.id) else ""
    return Refusal(
        stop.file.id, f"{ours}{stop.file.title}", (*said, f" {also}") if also else said, ways or (("see the manual",),),
        tuple(stop.file.sources),
    )  # fmt: skip


def _filled(filler: Filler, wording: Wording) -> Text | None:
    try:
        return filler.text(wording)
    except Gap:
        return None


def impossible(case: Case, name: str, found: NotKnown) -> Refusal:
    """A refusal for a fact that no stop foresaw: a formula or table that does not reach this case."""
    label = case.knowledge.catalogue[name].label
    if found.missing:
        missing = ", ".join(case.knowledge.catalogue[need].label for need in found.missing)
        return Refusal(name, f"Not known: {label}", (f"It depends on: {missing}.",), ((f"Give: {missing}.",),), ())
    return Refusal(
        name, f"Cannot be worked out: {label}", (f"{found.trouble or 'nothing fits'}.",),
        (("Change the stock or the tools so that the tables and formulas reach it.",),), (),
    )  # fmt: skip


def refused(reasons: Iterable[Refusal], dials: Dials) -> Refused:
    """The error that carries refusals in words, each way out on a line of its own."""
    return Refused(
        Problem(
            reason.id,
            reason.title,
            say(reason.text, dials).rstrip("."),
            "\n  or: ".join(say(way, dials).rstrip(".") for way in reason.way_out),
        )
        for reason in reasons
    )
