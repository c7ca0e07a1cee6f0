"""The standing procedure of work by hand at an isolated lathe: it warns of that work, and of no turning."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of

_SOP = "standing procedure"
_TURNS = re.compile(
    r"\b(?:turning (?:spindle|work|dog|chuck)|moving (?:chuck|work)|near the work|under the cut|while it turns"
    r"|leave it running|at speed|sawn|abrasive|slow the chuck)\b",
    re.IGNORECASE,
)


def warns_of_its_own(sheet: Sheet) -> Iterator[Fault]:
    """Where the quill is swept and nothing turns, the paper has hazards, and none of them, nor a line, is of turning."""
    sop = sheet.procedure.sop
    swept = any("sweep" in placed.step.activities for placed in sheet.steps)
    if sop is None or not swept or any(placed.step.machine == "turning" for placed in sheet.steps):
        return
    for hazard in sop.hazards:
        if found := _TURNS.search(f"{hazard.hazard}. {hazard.harm}"):
            yield Fault(_SOP, f'the hazard "{hazard.hazard}" speaks of "{found[0]}", and nothing turns in this work')
    for line in sop.forbidden:
        if found := _TURNS.search(words_of(line.text)):
            yield Fault(_SOP, f'the line "{line.id}" speaks of "{found[0]}", and nothing turns in this work')
    for row in sop.wear:
        if row.machine == "turning":
            yield Fault(_SOP, f'it says what is worn in the state "{row.state}", and nothing turns in this work')
