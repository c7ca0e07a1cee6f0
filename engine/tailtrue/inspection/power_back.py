"""Power on the way back: whoever goes back from an isolated lathe passes the line that restores power before it turns.

The sheet is walked with the state of its power. Each go-back, of a hold or of a sentence, is walked from where it lands.
"""

import re
from collections.abc import Iterator, Sequence

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet
from tailtrue.inspection.ways_back import restores, ways

_ISOLATES = re.compile(r"\bisolate\b", re.IGNORECASE)


def comes_back(sheet: Sheet) -> Iterator[Fault]:
    """No spindle turns on an isolated lathe, whichever way its step is reached."""
    steps = list(sheet.steps)
    power = False
    for place, placed in enumerate(steps):
        if placed.step.machine == "turning" and not power:
            yield Fault(placed.where, "the spindle is to turn, and no line since it was isolated restores power")
        power = _after(placed, power)
        for way in ways(steps, place):
            if way.to is None:
                yield Fault(way.where, f'"{way.said}": nothing tells which line that is')
            elif (stuck := _stuck(steps, way.to, power and not _ISOLATES.search(way.sentence or ""))) is not None:
                what = f'"{way.said}" lands at step {steps[way.to].step.number}'
                yield Fault(way.where, f"{what}: step {stuck.step.number} turns, and no line from there on restores power")


def _after(placed: Placed, power: bool) -> bool:
    return restores(placed) or (power and placed.step.machine != "isolated")


def _stuck(steps: Sequence[Placed], to: int, power: bool) -> Placed | None:
    """The step that would turn without power, from a place on; none where power comes back before it."""
    for placed in steps[to:]:
        if placed.step.machine == "turning":
            return None if power else placed
        power = _after(placed, power)
    return None
