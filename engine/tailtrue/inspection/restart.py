"""After a stop and in an emergency: what is done first, in which order, and where work begins again."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of
from tailtrue.parts import Text

# In this order. Power comes back behind a clear tool, clear hands and a lever in neutral, and never straight into a cut.
_RESTART = (
    ("the spindle stands still", re.compile(r"\bspindle\b[^.]*\b(?:stands? still|has stopped)\b")),
    ("the lathe is isolated", re.compile(r"\bIsolate\b")),
    ("the tool is clear of the work", re.compile(r"\btool clear\b")),
    ("hands, keys and gauges are out", re.compile(r"\bClear hands\b")),
    ("the start lever is in neutral", re.compile(r"\blever in neutral\b")),
    ("power comes back", re.compile(r"\bBring power back\b")),
    ("the start check is made again", re.compile(r"\bstart check\b")),
    ("work begins one line earlier", re.compile(r"\bone line earlier\b")),
    ("a cut begins from its start", re.compile(r"\bcut from its start\b")),
)
# By hand at an isolated lathe: it stays without power.
_RESTART_STILL = (
    ("hands are out", re.compile(r"\bClear hands\b")),
    ("the lathe is isolated", re.compile(r"\bIsolate\b")),
    ("work begins one line earlier", re.compile(r"\bone line earlier\b")),
    ("no power comes back", re.compile(r"\bPower stays off\b")),
)
_OF_TURNING = re.compile(r"\b(?:spindle stands still|tool clear|power back|start check|cut)\b")
_EMERGENCY = (
    ("stop", re.compile(r"\bPress the stop\b")),
    ("isolate", re.compile(r"\bisolate\b", re.IGNORECASE)),
    ("call", re.compile(r"\bCall\b")),
    ("first aid", re.compile(r"\bfirst aid\b")),
    ("leave a fire that grows", re.compile(r"\bfire\b.*\bleave\b")),
)


def restarted_in_order(sheet: Sheet) -> Iterator[Fault]:
    """After a stop the lathe is made safe before power comes back, and no cut goes on from its middle."""
    lines = sheet.procedure.after_a_stop
    if any(placed.step.machine == "turning" for placed in sheet.steps):
        yield from _in_order("after a stop", _RESTART, lines)
        return
    yield from _in_order("after a stop", _RESTART_STILL, lines)
    for line in lines:
        if found := _OF_TURNING.search(words_of(line, "X")):
            yield Fault("after a stop", f'it speaks of "{found[0]}", and nothing turns on this sheet')


def emergency_told(sheet: Sheet) -> Iterator[Fault]:
    """Stop, isolate, call, first aid, fire: in that order, before anything else is read."""
    yield from _in_order("in an emergency", _EMERGENCY, sheet.procedure.in_emergency)


def _in_order(where: str, wanted: tuple[tuple[str, re.Pattern[str]], ...], lines: tuple[Text, ...]) -> Iterator[Fault]:
    told = " ".join(words_of(line, "X") for line in lines)
    at = 0
    for name, pattern in wanted:
        found = pattern.search(told, at)
        if found is None:
            yield Fault(where, f"not said, or not in its place: {name}")
        else:
            at = found.end()
