"""What a row of the tables says: the range of each argument of a formula, the sign of its result, the way it goes.

The ends of a range are those in which the formula holds, or what is plausible where it sets no end. The ways are reasoned
from what happens at the machine, not read off results.
"""

import math
from collections.abc import Callable, Mapping
from typing import NamedTuple

UP, DOWN, FREE = 1, -1, 0  # the result rises with the argument, falls with it, or may go either way
Axis = tuple[float, float, int]
Given = Mapping[str, float]


class Law(NamedTuple):
    """A formula with the range of each argument, the bounds of its result, and what else must hold between arguments."""

    formula: Callable[..., float]
    axes: Mapping[str, Axis]
    least: float = 0.0
    most: float = math.inf
    together: Callable[[Given], bool] = lambda _: True


def slender(at_least: float, length: str = "span_mm") -> Callable[[Given], bool]:
    """A bar at least so many diameters long."""
    return lambda given: given[length] >= at_least * given["diameter_mm"]


def on_span(given: Given) -> bool:
    """Collars apart from each other and between the centres."""
    return given["first_station_mm"] + 1e-3 < given["second_station_mm"] <= given["span_mm"]
