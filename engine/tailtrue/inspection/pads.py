"""A bar that turns on the greased pads of a fixed steady turns slowly."""

from collections.abc import Iterator
from math import pi

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in

_PADS, _LIMIT, _DIAMETER = "steady-rest", "limit.pad_speed", "bar.diameter"
_SPARE = 1 + 1e-6


def slow_on_pads(sheet: Sheet) -> Iterator[Fault]:
    """No speed of a phase with the bar on pads rubs them faster than they bear."""
    drawing = sheet.procedure.drawing
    sizes = {} if drawing is None else {figure.fact: figure.value for figure in drawing.dimensions.values()}
    phases = {placed.phase.number for placed in sheet.steps if _PADS in placed.step.activities}
    if not phases or _DIAMETER not in sizes or _LIMIT not in sheet.shop.limits:
        return
    most = 1000 * sheet.shop.limits[_LIMIT][0] / (pi * sizes[_DIAMETER])
    for placed in sheet.steps:
        if placed.phase.number not in phases:
            continue
        for figure in figures_in(placed.step):
            if figure.rounding == "speed" and figure.value > most * _SPARE:
                what = f"{figure.value:g} 1/min ({figure.fact}) on the pads of the steady; {most:.0f} 1/min is the most"
                yield Fault(placed.where, what)
