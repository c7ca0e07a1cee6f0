"""A soft headstock centre: turned where it sits before work hangs on it, at half its angle, the top slide put back."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet

_CENTRE, _SOFT = "headstock-centre", re.compile(r"\bsoft\b", re.IGNORECASE)
_TURNS, _SEATS, _HANGS = "turn-point", "fit-centre", "mount-between-centres"
_ANGLE, _HALF, _SAME = "point.slide_angle", 30.0, 1e-6
_BACK = re.compile(r"\bset (?:it|the top slide) back in line with the bed\b", re.IGNORECASE)


def turned_where_it_sits(sheet: Sheet) -> Iterator[Fault]:
    """Between the step that seats a soft centre and the one that hangs work on it the point is turned."""
    if not any(need.id == _CENTRE and _SOFT.search("".join(map(str, need.name))) for need in sheet.procedure.needs):
        return
    seated: Placed | None = None
    for placed in sheet.steps:
        done = set(placed.step.activities)
        if _SEATS in done and _CENTRE in placed.step.tools:
            seated = placed
        elif _TURNS in done:
            seated = None
        elif _HANGS in done and seated is not None:
            yield Fault(seated.where, "a soft centre is seated, and work hangs on it before its point was turned there")
            seated = None


def slide_at_half_and_back(sheet: Sheet) -> Iterator[Fault]:
    """The top slide is told half the angle of a centre before the point is turned, and is back before the next cut."""
    told: float | None = None
    turned: Placed | None = None
    for placed in sheet.steps:
        told = placed.told.get(_ANGLE, told)
        if _TURNS in placed.step.activities:
            if told is None or abs(told - _HALF) > _SAME:
                yield Fault(placed.where, f"the point is turned, and the top slide was not told {_HALF:g} degrees")
            turned = placed
        elif turned is not None and placed.step.machine == "turning":
            yield Fault(turned.where, "the top slide stands at the angle of the point when the next cut begins")
            turned = None
        elif turned is not None and _BACK.search(_words(placed)):
            turned = None


def _words(placed: Placed) -> str:
    return " ".join(piece for text in placed.step.text for piece in text if isinstance(piece, str))
