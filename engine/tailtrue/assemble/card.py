"""The card at the lathe: chosen settings of the steps that are in the plan, by operation."""

from collections.abc import Iterable, Iterator
from typing import TypeVar

from tailtrue.assemble.filling import Filler
from tailtrue.assemble.steps import settings
from tailtrue.parts import Figure, Text
from tailtrue.procedure import Card, CardGroup, CardLine, Phase, StartLine, StartList, Step
from tailtrue.store.knowledge import CardGroupText, CardLineText, PageLine, Route, Trouble

Line = TypeVar("Line", PageLine, Trouble)


def about(route: Route, lines: Iterable[Line]) -> tuple[Line, ...]:
    """The lines that have to do with a route."""
    return tuple(line for line in lines if route.has_to_do_with(line.concerns))


def card(filler: Filler, phases: Iterable[Phase], route: Route) -> Card:
    """The card of a job. A group without a line in this job is left out."""
    page = filler.case.knowledge.page.card
    steps = [step for phase in phases for step in phase.steps]
    groups = (CardGroup(title=group.title, lines=tuple(_lines(filler, group, steps))) for group in page.groups)
    return Card(
        start=StartList(
            title=page.start.title,
            lines=tuple(StartLine(item=line.item, state=line.state) for line in page.start.line),
            ends_with=page.start.ends_with,
        ),
        notes=settings(filler, about(route, page.notes)),
        groups=tuple(group for group in groups if group.lines),
    )


def _lines(filler: Filler, group: CardGroupText, steps: list[Step]) -> Iterator[CardLine]:
    """Each number once, though several steps of the group set it alike."""
    here = [step for step in steps if step.id in group.steps]
    for wanted in group.lines:
        found: dict[tuple[Text, Figure], CardLine] = {}
        for line in (line for step in here for line in _set_at(filler, wanted, step)):
            found.setdefault((line.label, line.value), line)
        yield from found.values()


def _set_at(filler: Filler, wanted: CardLineText, step: Step) -> Iterator[CardLine]:
    for setting in step.settings:
        for piece in setting.value:
            if isinstance(piece, Figure) and piece.fact == wanted.fact:
                label = filler.text(wanted.label) if wanted.label.parts else setting.label
                yield CardLine(label=label, value=piece, step=step.number)
