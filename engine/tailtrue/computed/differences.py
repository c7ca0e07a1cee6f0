"""The differences that a look-up table lists."""

from collections.abc import Iterable, Iterator

from tailtrue.calc.steps import length_of_steps, nearest_steps
from tailtrue.tables import Row


def in_steps(rows: Iterable[Row]) -> Iterator[float]:
    """Differences in the steps of these rows, each on from where the one before it ends, the first from nothing. [mm]"""
    reached = 0.0
    for row in rows:
        step, ends = row.number("step_mm"), row.number("ends_mm")
        for place in range(1, round(nearest_steps(ends - reached, step)) + 1):
            yield round(reached + length_of_steps(place, step), 6)
        reached = ends
