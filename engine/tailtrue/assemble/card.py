"""The card at the lathe: chosen settings of the steps that are in the plan, by operation, and the steps in short."""

from collections.abc import Iterable, Iterator
from itertools import groupby
from typing import TypeVar

from tailtrue.assemble.filling import Filler
from tailtrue.assemble.steps import settings
from tailtrue.parts import Caution, Figure, Text
from tailtrue.procedure import Card, CardGroup, CardLine, CardPlace, Phase, ShortStep, StartLine, StartList, Step
from tailtrue.store.knowledge import Route
from tailtrue.store.page_models import CardFile, ShortStepFile, StartListFile
from tailtrue.store.page_texts import CardGroupText, CardLineText, PageLine, Trouble, WorkLine
from tailtrue.wording import Wording

Line = TypeVar("Line", PageLine, Trouble)
MOST_MESSAGES = 3


def about(route: Route, lines: Iterable[Line]) -> tuple[Line, ...]:
    """The lines that have to do with a route."""
    return tuple(line for line in lines if route.has_to_do_with(line.concerns))


def of_work(lines: Iterable[WorkLine], phases: Iterable[Phase]) -> Iterator[Wording]:
    """The lines that belong to this job: nothing runs dry, shakes or throws chips where the spindle never turns."""
    steps = [step for phase in phases for step in phase.steps]
    spindle = "turns" if any(map(_turns, steps)) else "stands"
    done = {activity for step in steps for activity in step.activities}
    for one in lines:
        if one.file.spindle in ("", spindle) and (not one.file.activities or done.intersection(one.file.activities)):
            yield one.text


def card(filler: Filler, phases: Iterable[Phase], route: Route, for_the_job: Iterable[Caution]) -> Card:
    """The card of a job. A group without a line in this job is left out."""
    page = filler.case.knowledge.page.card
    phases = tuple(phases)
    steps = [step for phase in phases for step in phase.steps]
    dangers = _dangers(for_the_job, phases)
    turns = any(map(_turns, steps))
    start = _list(page.file.start if turns else page.file.still, dangers)
    done = {activity for step in steps for activity in step.activities}
    groups = (
        CardGroup(title=group.title, lines=tuple(_lines(filler, group, steps)), places=tuple(_places(group, steps)))
        for group in page.groups
    )
    return Card(
        messages=_messages(page.file, start, dangers),
        start=start,
        besides=tuple(_list(other, ()) for other in page.file.other if done.intersection(other.activities)),
        notes=settings(filler, about(route, page.notes)),
        groups=tuple(group for group in groups if group.lines or group.places),
        steps_title=page.file.short.title,
        steps=tuple(_short(page.file.short.line, steps)),
        list_first=page.file.short.list_first,
        interrupted=page.file.short.interrupted if turns else page.file.short.interrupted_still,
        ends_with=page.file.short.ends_with,
        emergency=page.file.emergency,
        pointer=page.file.pointer,
    )


def _dangers(for_the_job: Iterable[Caution], phases: Iterable[Phase]) -> tuple[str, ...]:
    """Every danger that the operator meets, each once; what others do away from this lathe is theirs."""
    met = list(for_the_job)
    for phase in phases:
        if any(step.who != "staff" for step in phase.steps):
            met += [*phase.cautions, *(caution for step in phase.steps for caution in step.cautions)]
    return tuple(dict.fromkeys(caution.id for caution in met if caution.signal == "danger"))


def _list(file: StartListFile, dangers: tuple[str, ...]) -> StartList:
    lines = (
        StartLine(
            item=line.item, state=line.state, unit=line.unit, answers=tuple(name for name in line.answers if name in dangers)
        )
        for line in file.line
    )
    return StartList(title=file.title, lines=tuple(lines), ends_with=file.ends_with)


def _messages(file: CardFile, start: StartList, dangers: tuple[str, ...]) -> tuple[str, ...]:
    """What no line of the list keeps off: first what the shop added, then in the order of the file."""
    answered = {name for line in start.lines for name in line.answers}
    rank = {name: place for place, name in enumerate(file.messages)}
    told = sorted((name for name in dangers if name not in answered), key=lambda name: rank.get(name, -1))
    return tuple(told[:MOST_MESSAGES])


def _short(lines: Iterable[ShortStepFile], steps: list[Step]) -> Iterator[ShortStep]:
    """The steps that have a line, in their order; those of one line that follow each other are one stretch."""
    line_of = {name: line for line in lines for name in line.steps}
    told = [(place, step, line_of[step.id]) for place, step in enumerate(steps) if step.id in line_of]
    # A line without a text is as many lines as it has steps.
    for (_, text), group in groupby(told, key=lambda one: (one[2].steps[0] if one[2].text else one[1].number, one[2].text)):
        stretch = tuple(group)
        (first, step, _), (last, _, _) = stretch[0], stretch[-1]
        yield ShortStep(
            step=step.number,
            last=steps[last].number,
            text=text or f"{step.title}.",
            starts=any(map(_turns, steps[first : last + 1])),
        )


def _turns(step: Step) -> bool:
    return step.machine == "turning"


def _lines(filler: Filler, group: CardGroupText, steps: list[Step]) -> Iterator[CardLine]:
    """Each number once, though several steps of the group set it alike."""
    here = [step for step in steps if step.id in group.steps]
    for wanted in group.lines:
        found: dict[tuple[Text, Figure], tuple[CardLine, ...]] = {}
        for lines in (lines for step in here for lines in _set_at(filler, wanted, step)):
            found.setdefault((lines[0].label, lines[0].value), lines)
        for lines in found.values():
            yield from lines


def _places(group: CardGroupText, steps: list[Step]) -> Iterator[CardPlace]:
    """The readings that are carried, each with the unit of its blank at the step."""
    for wanted in group.places:
        for step in (step for step in steps if step.id in group.steps):
            for blank in (blank for check in step.checks for blank in check.blanks if blank.label == wanted.of):
                yield CardPlace(label=wanted.label, unit=blank.unit, at=blank.label, step=step.number)


def _set_at(filler: Filler, wanted: CardLineText, step: Step) -> Iterator[tuple[CardLine, ...]]:
    """What is set at a step with what is told beside it; under a label of its own also the ends of what is accepted."""
    for setting in step.settings:
        for piece in _figures(setting.value, wanted.fact):
            label = filler.text(wanted.label) if wanted.label.parts else _in_short(setting.label, wanted.tool)
            beside = _figures(setting.reason, wanted.beside)
            yield (
                CardLine(label=label, value=piece, step=step.number),
                *(CardLine(label=(wanted.beside_label,), value=one, step=step.number) for one in beside),
            )
    for check in step.checks:
        for end in (check.limits.low, check.limits.high) if check.limits else ():
            if end is not None and end.fact == wanted.fact:
                yield (CardLine(label=filler.text(wanted.label), value=end, step=step.number),)


def _in_short(label: Text, tool: str) -> Text:
    """The label of a tool with a word of the card in place of the words before its size."""
    return (f"{tool} ", label[-1]) if tool and len(label) > 1 else label


def _figures(text: Text, fact: str) -> Iterator[Figure]:
    return (piece for piece in text if isinstance(piece, Figure) and piece.fact == fact)
