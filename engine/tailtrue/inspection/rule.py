"""A rule of the inspection, and the fault it finds."""

from collections.abc import Callable, Iterator
from typing import NamedTuple

from tailtrue.inspection.sheet import Sheet


class Fault(NamedTuple):
    """Where something is wrong, and what."""

    where: str
    what: str


Judge = Callable[[Sheet], Iterator[Fault]]


class Rule(NamedTuple):
    """One thing that must hold: its id, how it is judged, and what it rests on."""

    id: str
    judge: Judge
    source: str
