"""The drawings of the tree: the bar at the front, those of the making at their steps."""

from collections.abc import Iterator, Mapping, Set

from tailtrue.assemble.filling import Filler, figure, words_of
from tailtrue.assemble.reasons import figures
from tailtrue.facts import Fact
from tailtrue.parts import Figure
from tailtrue.procedure import Drawing, Phase
from tailtrue.store.knowledge import StepDrawing
from tailtrue.store.page_models import DrawnRecordsFile
from tailtrue.truth import Truth
from tailtrue.wording import Wording

FRONT = "front"
_BAR = "bar"


def bar(filler: Filler, made: tuple[Phase, ...] = ()) -> Drawing:
    """The drawing of the bar at the front of the sheet, with the limits of size that its steps speak of."""
    plan = filler.case.knowledge.page.drawing
    also = plan.also if filler.case.judge(plan.also_when).truth is Truth.YES else {}
    said = {figure.fact for phase in made for figure in figures(phase)}
    limits = {name: fact for name, fact in plan.if_said.items() if fact in said}
    shown = (*plan.dimensions.items(), *also.items(), *limits.items())
    return Drawing(
        id=_BAR,
        kind=_BAR,
        place=FRONT,
        title=plan.title,
        caption=plan.caption,
        dimensions={name: filler.figure(fact) for name, fact in shown},
        labels=_labels(filler, plan.labels),
    )


def drawings(filler: Filler, made: tuple[Phase, ...]) -> tuple[Drawing, ...]:
    """The drawings that belong to this job, in the order of the page; a step that comes again is drawn once."""
    places: dict[str, str] = {"": FRONT}
    for phase in made:
        for step in phase.steps:
            places.setdefault(step.id, step.number)
    order = list(places)
    wanted = [one for one in filler.case.knowledge.drawings if one.file.step in places and _belongs(filler, one)]
    wanted.sort(key=lambda one: order.index(one.file.step))
    said = {figure.fact for phase in made for figure in figures(phase)}
    made_of = ((one, _drawing(filler, one, places[one.file.step], said)) for one in wanted)
    return tuple(drawn for one, drawn in made_of if _has_a_use(one, drawn))


def _has_a_use(one: StepDrawing, drawn: Drawing) -> bool:
    """A list beside which uses are drawn, and no use of it on this sheet, is not drawn."""
    listed = tuple(f"{name}." for name in one.file.lists)
    return not (listed and one.file.if_known) or any(not name.startswith(listed) for name in drawn.dimensions)


def _belongs(filler: Filler, one: StepDrawing) -> bool:
    return filler.case.judge(one.when).truth is Truth.YES


def _drawing(filler: Filler, one: StepDrawing, place: str, said: Set[str]) -> Drawing:
    """`said` are the facts that the steps speak of: what is drawn at the front, if known, is of this sheet's work."""
    file = one.file
    dimensions = {name: filler.figure(fact) for name, fact in file.dimensions.items()}
    dimensions |= {
        name: filler.figure(fact)
        for name, fact in file.if_known.items()
        if isinstance(filler.case.get(fact), Fact) and (place != FRONT or fact in said)
    }
    for name, fact in file.lists.items():
        dimensions |= _of_list(filler, name, fact)
    if file.rows is not None and (place != FRONT or f"{file.rows.records}.{file.rows.field}" in said):
        dimensions |= _of_rows(filler, file.rows)
    return Drawing(
        id=file.id,
        kind=file.kind,
        place=place,
        title=file.title,
        caption=file.caption,
        dimensions=dimensions,
        labels=_labels(filler, one.labels),
        said=dict(_said(filler, file.said)),
    )


def _of_list(filler: Filler, name: str, fact: str) -> Iterator[tuple[str, Figure]]:
    found = filler.fact(fact)
    for number, value in enumerate(found.value, start=1):
        yield f"{name}.{number}", figure(found.spec, fact, value)


def _said(filler: Filler, facts: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """Words by name, those of a list with their number; what nobody said is left out."""
    for name, fact in facts.items():
        value = filler.case.value(fact)
        if isinstance(value, tuple):
            yield from ((f"{name}.{number}", word) for number, word in enumerate(value, start=1))
        elif value is not None:
            yield name, value


def _of_rows(filler: Filler, rows: DrawnRecordsFile) -> Iterator[tuple[str, Figure]]:
    found = filler.fact(rows.records)
    for number, row in enumerate(found.value, start=1):
        spec = found.spec.fields[rows.field]
        yield f"{rows.name}.{number}", figure(spec, f"{rows.records}.{rows.field}", row[rows.field])


def _labels(filler: Filler, labels: Mapping[str, Wording]) -> dict[str, str]:
    return {name: words_of(filler.text(text)) for name, text in labels.items()}
