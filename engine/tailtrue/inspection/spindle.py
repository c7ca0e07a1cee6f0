"""What is done while the spindle turns, and what comes before it is started."""

import re
from collections.abc import Iterator

from tailtrue.inspection.activities import HANDS_IN, POWER_OFF
from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import sentences_in, words_of

# What a sentence begins with when it sends a hand to the work, and what else it may ask for after an "and".
_HAND = r"(?:measure|gauge|file|deburr|wipe|clean|grip|load|unload|mount|slacken|loosen|tighten|feel|steady)\b"
_HAND_WORK = re.compile(rf"(?:^|(?<=[.!?:]\s)|(?<=\bthen\s)){_HAND}", re.IGNORECASE)
_AND_HAND_WORK = re.compile(rf"\band (?:then )?{_HAND}", re.IGNORECASE)
_STOPPED = re.compile(r"\bstop the spindle\b", re.IGNORECASE)
_GLOVES_ON = re.compile(r"\b(?:wear|put on|pull on|keep on|with|in)\b[^.]*\b(?:gloves?|mitts?)\b", re.IGNORECASE)
_ABRASIVE = re.compile(r"\b(emery|abrasive|sand\s?paper|glass\s?paper|polish\w*)\b", re.IGNORECASE)


def start_checked(sheet: Sheet) -> Iterator[Fault]:
    """Since hands were last at the work, a start check was made, with the spindle still, before it turns."""
    checked = False
    for placed in sheet.worked:
        step = placed.step
        if step.machine == "turning":
            if "start-check" in step.activities:
                yield Fault(placed.where, "the start check is made with the spindle already turning")
            if not checked:
                yield Fault(placed.where, "the spindle turns without a start check since hands were last at the work")
        elif HANDS_IN & set(step.activities):
            checked = False
        elif "start-check" in step.activities:
            checked = True


def hands_away(sheet: Sheet) -> Iterator[Fault]:
    """Nothing is gripped, measured, cleaned or moved while the spindle turns."""
    for placed in sheet.steps:
        if placed.step.machine == "turning":
            for activity in placed.step.activities:
                if activity in HANDS_IN:
                    yield Fault(placed.where, f'"{activity}" is asked for while the spindle turns')


def power_off(sheet: Sheet) -> Iterator[Fault]:
    """What holds work, tailstock or chuck is moved with the power off, and gloved work is done there."""
    for placed in sheet.steps:
        if placed.step.machine != "isolated":
            for activity in placed.step.activities:
                if activity in POWER_OFF:
                    yield Fault(placed.where, f'"{activity}" is asked for and the machine is not isolated')


def in_its_state(sheet: Sheet) -> Iterator[Fault]:
    """Each activity is done in a state of the machine that is known to be safe for it."""
    for placed in sheet.steps:
        for activity in placed.step.activities:
            allowed = sheet.shop.states.get(activity, frozenset())
            if not allowed:
                yield Fault(placed.where, f'nothing says in which state of the machine "{activity}" may be done')
            elif placed.step.machine not in allowed:
                said = " or ".join(sorted(allowed))
                yield Fault(placed.where, f'"{activity}" is done {said}, here the machine is {placed.step.machine}')


def words_in_state(sheet: Sheet) -> Iterator[Fault]:
    """No sentence tells a hand to go to turning work, or to put on gloves where the spindle can turn."""
    for placed in sheet.steps:
        if placed.step.machine == "isolated":
            continue
        for sentence in placed.step.text:
            words = words_of(sentence)
            if placed.step.machine == "turning" and (found := _HAND_WORK.search(words)):
                yield Fault(placed.where, f'"{found[0].strip()}" is asked for while the spindle turns')
            if placed.step.machine == "turning":
                yield from (
                    Fault(placed.where, f'"{one}" is asked for and the spindle is not stopped') for one in _joined(words)
                )
            if found := _GLOVES_ON.search(words):
                yield Fault(placed.where, f'"{found[0].strip()}" is asked for and the machine is not isolated')


def _joined(words: str) -> Iterator[str]:
    """Hand work that a sentence joins on to another command, before it has the spindle stopped by name."""
    for sentence in sentences_in(words):
        for found in _AND_HAND_WORK.finditer(sentence):
            if not _STOPPED.search(sentence[: found.start()]):
                yield found[0]


def no_abrasive(sheet: Sheet) -> Iterator[Fault]:
    """Nobody is told to hold abrasive cloth to turning work, or to polish it."""
    for placed in sheet.steps:
        if placed.step.machine == "turning":
            for sentence in placed.step.text:
                found = _ABRASIVE.search(words_of(sentence))
                if found:
                    yield Fault(placed.where, f'"{found[0]}" is asked for while the spindle turns')


def rear_seen(sheet: Sheet) -> Iterator[Fault]:
    """A bar through the spindle is looked at from behind, and that is written down."""
    for placed in sheet.steps:
        if "bar-through-spindle" in placed.step.activities and not any(check.blanks for check in placed.step.checks):
            yield Fault(placed.where, "the bar goes through the spindle and nobody writes down what stands out behind")
