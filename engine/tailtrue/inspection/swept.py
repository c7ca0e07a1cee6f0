"""An indicator arm whose droop is measured: it stays as it was then, and comes off a bar as thick as the quill."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in

_FIXED = re.compile(r"\b(?:fix|clamp|screw|fasten) the arm\b[^.]*", re.IGNORECASE)
_TO_A_JAW = re.compile(r"(?<!never )(?<!not )\b(?:to|on) (?:a|the|one) jaw", re.IGNORECASE)
_HOLD, _GRIP = "hold-arm", "grip-in-chuck"
_LIKE_THE_QUILL = "as thick as the quill"


def arm_stays(sheet: Sheet) -> Iterator[Fault]:
    """The arm is fixed to what does not move when the chuck is opened, over a bar of the quill's own thickness."""
    for placed in sheet.steps:
        if not {"sweep", _HOLD} <= set(placed.step.activities):
            continue
        words = placed.words_alone
        fixed = _FIXED.search(words)
        if fixed is None:
            continue
        if _TO_A_JAW.search(fixed[0]) or "body" not in fixed[0]:
            yield Fault(
                placed.where, "the arm is fixed where opening the chuck moves it, and its droop is measured before that"
            )
        if _LIKE_THE_QUILL not in words:
            yield Fault(
                placed.where, "the arm must be set anew for the quill: the bar in the chuck is not said to be as thick"
            )


def nothing_to_brush(sheet: Sheet) -> Iterator[Fault]:
    """Where nothing turned, nothing was cut: no line speaks of chips to be put away."""
    if any(placed.step.machine == "turning" for placed in sheet.steps):
        return
    for placed in sheet.steps:
        if re.search(r"\bBrush the chips\b", placed.words_alone):
            yield Fault(placed.where, "chips are brushed away on a sheet on which nothing is cut")


def nothing_to_throw(sheet: Sheet) -> Iterator[Fault]:
    """Where the quill is swept and nothing turns, no step grips work for a cut, and no limit is a speed of the spindle."""
    swept = any("sweep" in placed.step.activities for placed in sheet.steps)
    if not swept or any(placed.step.machine == "turning" for placed in sheet.steps):
        return
    for placed in sheet.steps:
        if _GRIP in placed.step.activities:
            yield Fault(placed.where, "work is held as for a cut on a sheet on which nothing turns, with hazards it has not")
    sop = sheet.procedure.sop
    for where, rows in (("limits", sheet.procedure.limits), ("standing procedure", sop.limits if sop else ())):
        for row in rows:
            if any(figure.unit == "1/min" for figure in figures_in(row.limit)):
                yield Fault(where, f'the limit "{row.label}" is a speed on a sheet on which nothing turns')
