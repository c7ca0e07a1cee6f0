"""The differences that a look-up table lists."""

from collections.abc import Iterable, Iterator, Sequence

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


def of_instrument(rows: Sequence[Row], resolution: float) -> list[Row]:
    """The rows for an instrument: those of the finest class that it belongs to; none for a coarser one than all."""
    classes = [row.number("instrument_upto_mm") for row in rows]
    finest = min((one for one in classes if resolution <= one), default=None)
    return [row for row, one in zip(rows, classes, strict=True) if one == finest]
