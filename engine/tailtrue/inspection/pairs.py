"""Two figures that a text gives as the ends of a band: the lower one first, in one unit, none that reads outward."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.parts import Figure

_BETWEEN = frozenset({"to", "and"})
_LOW = re.compile(r"(?:^|[._])(?:least|low|from|small|least_after)$")
_HIGH = re.compile(r"(?:^|[._])(?:most|largest|high|to|large|largest_after)$")
_SAME = 1e-9  # relative


def ends_in_order(sheet: Sheet) -> Iterator[Fault]:
    """The least stands before the most and is no larger, and both are in one unit and kind."""
    for where, _, text in sheet.texts:
        for low, between, high in zip(text, text[1:], text[2:], strict=False):
            if not isinstance(between, str) or between.strip() not in _BETWEEN:
                continue
            if isinstance(low, Figure) and isinstance(high, Figure) and _band(low, high):
                yield from _faults(where, low, high)


def _band(low: Figure, high: Figure) -> bool:
    """Whether two figures are ends of a band: by how they are rounded, or by their names."""
    bounds = {low.bound, high.bound} == {"least", "most"}
    return bounds or (low.fact != high.fact and bool(_LOW.search(low.fact)) and bool(_HIGH.search(high.fact)))


def _faults(where: str, low: Figure, high: Figure) -> Iterator[Fault]:
    said = f"{low.fact} to {high.fact}"
    if low.unit != high.unit or low.rounding != high.rounding:
        yield Fault(where, f"the ends of the band {said} are not of one unit and kind")
    elif low.bound == "most" or high.bound == "least":
        yield Fault(where, f"the ends of the band {said} are rounded outward, or stand the wrong way round")
    elif low.value - high.value > _SAME * abs(high.value):
        yield Fault(where, f"the band {said} is inverted: {low.value:g} to {high.value:g} {low.unit}")
