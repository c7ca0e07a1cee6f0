"""Standing lines of the sheet that belong to some jobs only: those that have to do with what is said and done there."""

from collections.abc import Iterable, Iterator

from tailtrue.procedure import Phase
from tailtrue.store.knowledge import Route
from tailtrue.store.page_texts import StandingLine
from tailtrue.wording import Wording


def told(lines: Iterable[StandingLine], route: Route, phases: Iterable[Phase]) -> Iterator[Wording]:
    """The lines for a sheet: its route has to do with them, a step waits, or a step says the words they explain."""
    steps = [step for phase in phases for step in phase.steps]
    waits = any(step.time and step.time.waiting for step in steps)
    labels = [piece for step in steps for line in step.settings for piece in line.label if isinstance(piece, str)]
    for one in lines:
        said = not one.file.where_said or any(one.file.where_said in label for label in labels)
        if said and route.has_to_do_with(one.file.concerns) and (waits or not one.file.waits):
            yield one.text
