"""A chuck that one person does not lift: where chucks are changed, the sheet says so, with its mass."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in

_CHANGED = "chuck-change"
# The bodies of chucks that makers advise not to lift alone begin here (memory).
HEAVY_BODY_MM = 200.0
# With bodies from here on (30 kg and more) two people do not lift them either (memory).
HOIST_BODY_MM = 250.0
HELP = re.compile(r"\b(?:hoist|second person)\b", re.IGNORECASE)
HOIST = re.compile(r"\bhoist\b", re.IGNORECASE)
BY_TWO = re.compile(r"\bor a second person\b|\bwith a second person\b", re.IGNORECASE)


def not_lifted_alone(sheet: Sheet) -> Iterator[Fault]:
    """A message about the change of a chuck of this size names help and tells the mass."""
    heavy = [body for body in sheet.shop.chuck_bodies_mm if body >= HEAVY_BODY_MM]
    changed = [placed for placed in sheet.steps if _CHANGED in placed.step.activities]
    if not heavy or not changed:
        return
    for _, caution in sheet.cautions:
        lines = [text for text in caution.avoid if any(isinstance(piece, str) and HELP.search(piece) for piece in text)]
        if _CHANGED in caution.answers and any(figure.unit == "kg" for text in lines for figure in figures_in(text)):
            return
    yield Fault(
        changed[0].where,
        f"a chuck is changed where one of {max(heavy):g} mm is in use, and no message tells its mass and asks for help",
    )
