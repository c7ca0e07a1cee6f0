"""The drawings of the tree: the bar at the front, those of the making at their steps."""

from collections.abc import Iterator, Mapping

from tailtrue.assemble.filling import Filler, figure, words_of
from tailtrue.facts import Fact
from tailtrue.parts import Figure
from tailtrue.procedure import Drawing, Phase
from tailtrue.store.knowledge import StepDrawing
from tailtrue.store.models import DrawnRecordsFile
from tailtrue.truth import Truth
from tailtrue.wording import Wording

FRONT = "front"
_BAR = "bar"


def bar(filler: Filler) -> Drawing:
    """The drawing of the bar at the front of the sheet."""
    plan = filler.case.knowledge.page.drawing
    return Drawing(
        id=_BAR,
        kind=_BAR,
        place=FRONT,
        title=plan.title,
        caption=plan.caption,
        dimensions={name: filler.figure(fact) for name, fact in plan.dimensions.items()},
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
    return tuple(_drawing(filler, one, places[one.file.step]) for one in wanted)


def _belongs(filler: Filler, one: StepDrawing) -> bool:
    return filler.case.judge(one.when).truth is Truth.YES


def _drawing(filler: Filler, one: StepDrawing, place: str) -> Drawing:
    file = one.file
    dimensions = {name: filler.figure(fact) for name, fact in file.dimensions.items()}
    dimensions |= {
        name: filler.figure(fact) for name, fact in file.if_known.items() if isinstance(filler.case.get(fact), Fact)
    }
    if file.rows is not None:
        dimensions |= _of_rows(filler, file.rows)
    return Drawing(
        id=file.id,
        kind=file.kind,
        place=place,
        title=file.title,
        caption=file.caption,
        dimensions=dimensions,
        labels=_labels(filler, one.labels),
    )


def _of_rows(filler: Filler, rows: DrawnRecordsFile) -> Iterator[tuple[str, Figure]]:
    found = filler.fact(rows.records)
    for number, row in enumerate(found.value, start=1):
        spec = found.spec.fields[rows.field]
        yield f"{rows.name}.{number}", figure(spec, f"{rows.records}.{rows.field}", row[rows.field])


def _labels(filler: Filler, labels: Mapping[str, Wording]) -> dict[str, str]:
    return {name: words_of(filler.text(text)) for name, text in labels.items()}
