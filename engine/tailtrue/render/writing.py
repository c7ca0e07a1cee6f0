"""Places to write in, as text: what is planned beside them, what they take."""

from collections.abc import Iterator

from tailtrue.parts import Dials
from tailtrue.record_sheet import Block, Place
from tailtrue.render.numbers import show_limits, show_one
from tailtrue.render.paper import unit_beside
from tailtrue.render.plain import literal
from tailtrue.render.words import say

WRITE = "____________"
PLANNED = "planned"
ON_SHEET = "on the sheet:"


def to_write(entry: Place, dials: Dials) -> str:
    """What stands in a place: its choices, or a line with its unit."""
    unit = unit_beside(entry.unit, dials)
    return " / ".join(map(literal, entry.choices)) if entry.choices else literal(f"{WRITE} {unit}" if unit else WRITE)


def planned(entry: Place, dials: Dials, word: str = PLANNED) -> str:
    """What is planned for a place, in brackets; nothing where nothing is."""
    return f" ({word} {literal(say(entry.planned, dials))})" if entry.planned else ""


def judged(entry: Place, dials: Dials) -> str:
    """The band of a place that is judged, what it is read with, and how well that reads; nothing where nothing is judged."""
    if entry.limits is None:
        return ""
    told = [f"accept {show_limits(entry.limits, dials)}", f"with {say(entry.read_with, dials)}"]
    if entry.resolution is not None:
        told.append(f"reads to {show_one(entry.resolution, dials)}")
    if entry.uncertainty is not None:
        told.append(f"sure to {show_one(entry.uncertainty, dials)}")
    return ", ".join(told)


def block_rows(block: Block, dials: Dials) -> Iterator[tuple[str, ...]]:
    """The rows of a block of places: its label with what is planned and judged, then a place in each column."""
    for entry in block.entries:
        band = judged(entry, dials)
        beside = planned(entry, dials, ON_SHEET) + (f" ({literal(band)})" if band else "")
        yield (literal(entry.label) + beside, *[to_write(entry, dials)] * len(block.columns))
