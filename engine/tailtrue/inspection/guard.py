"""The switch of a chuck guard: tried while the spindle turns slowly, before any work relies on it."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of

# What the trial asks for, in this order.
_TRIAL = (
    ("open the guard", re.compile(r"\bOpen the guard\b")),
    ("the spindle drops out", re.compile(r"\bmust drop out\b")),
    ("close the guard", re.compile(r"\bClose the guard\b")),
    ("the spindle does not start by itself", re.compile(r"\bmust not start by itself\b")),
    ("isolate the lathe where it fails", re.compile(r"\bIF\b.*\bTHEN isolate\b")),
)


def switch_tried(sheet: Sheet) -> Iterator[Fault]:
    """Where the stop is proved and the guard has a switch, the switch is proved before the next turning step."""
    trials = [placed for placed in sheet.steps if "prove-guard" in placed.step.activities]
    if not sheet.shop.guard_switch:
        for placed in trials:
            yield Fault(placed.where, "a switch of the guard is tried, and the guard of this lathe has none")
        return
    turning = [placed for placed in sheet.steps if placed.step.machine == "turning"]
    proofs = [placed for placed in turning if "machine-check" in placed.step.activities]
    if proofs and not trials:
        yield Fault(proofs[0].where, "the stop is proved here and the switch of the guard nowhere")
    for placed in trials:
        if placed not in turning[: len(proofs)]:
            yield Fault(placed.where, "work turns before the switch of the guard is tried")
        if not placed.step.checks:
            yield Fault(placed.where, "nothing is ticked for the switch of the guard")
        told, at = " ".join(words_of(line, "X") for line in placed.step.text), 0
        for name, pattern in _TRIAL:
            found = pattern.search(told, at)
            if found is None:
                yield Fault(placed.where, f"the trial of the guard does not say, in its place: {name}")
            else:
                at = found.end()
