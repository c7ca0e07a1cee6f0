"""The safety review besides its risks: all work in it, what is worn, checks, isolation, emergency, signatures."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of
from tailtrue.parts import Text
from tailtrue.review import ReviewLine

_REVIEW = "safety review"
_MOST_LINES = 9
# Bench work at a machine that turns while the lathe is isolated.
_TURNS_AT_THE_BENCH = frozenset({"drill-press"})
# What each part of the review must ask for, by the id of its line.
_MUST = {
    "head": frozenset({"review-date", "analyst", "operator", "reviewer", "valid-until"}),
    "isolation": frozenset({"isolate-how", "isolate-keeper", "isolate-prove"}),
    "emergency": frozenset({"phone", "address", "first-aid-kit", "eyewash", "extinguisher", "way-out"}),
}
# The lines of the check without which nothing starts.
_KILLERS = frozenset({"stop", "no-volt", "covers", "tailstock", "chuck-mark", "key", "rear", "turn-by-hand", "body"})
_KILLERS_AT_REST = frozenset({"dead", "covers", "tailstock", "key", "rear", "body"})
_OF_A_START = re.compile(
    r"\b(?:first start|run-down|speed marked|drops out|while turning|stops the drive|tool position)\b", re.IGNORECASE
)


def work_covered(sheet: Sheet) -> Iterator[Fault]:
    """Every step is in an activity, with the state of the machine it is done in; nothing else is."""
    steps = {placed.step.number: placed.step for placed in sheet.steps}
    covered: set[str] = set()
    for part in sheet.procedure.safety_review.work:
        where = f"{_REVIEW}, activity {part.id}"
        due = [number for number, step in steps.items() if set(step.activities) & set(part.activities)]
        if list(part.used_at) != due:
            yield Fault(where, "the steps named are not those of this activity")
        machine = tuple(dict.fromkeys(steps[number].machine for number in part.used_at if number in steps))
        if part.machine != machine:
            yield Fault(where, "the states of the machine are not those of its steps")
        covered |= set(part.used_at)
    for number, step in steps.items():
        if number not in covered and step.activities:
            yield Fault(_REVIEW, f"step {number} is in no activity of the review")


def worn_by_state(sheet: Sheet) -> Iterator[Fault]:
    """Every step has its wear; where the spindle can turn, gloves are forbidden in words and worn by nobody."""
    steps = {placed.step.number: placed.step for placed in sheet.steps}
    worn: set[str] = set()
    for state in sheet.procedure.safety_review.wear:
        where = f"{_REVIEW}, wear in state {state.id}"
        live = [number for number in state.used_at if number in steps and steps[number].machine != "isolated"]
        if live and not state.spindle_can_turn:
            yield Fault(where, f"step {live[0]} is done with power on, the state says that nothing can turn")
        if state.spindle_can_turn and any("glove" in _words(one) for one in state.wear):
            yield Fault(where, "gloves are to be worn while the spindle can turn")
        if state.spindle_can_turn and not any("no gloves" in _words(one) for one in state.never):
            yield Fault(where, "it is not said that gloves are forbidden while the spindle can turn")
        drilled = [
            number for number in state.used_at if number in steps and set(steps[number].activities) & _TURNS_AT_THE_BENCH
        ]
        if drilled and any("glove" in _words(one) for one in state.wear):
            yield Fault(where, f"gloves are to be worn at step {drilled[0]}, where a drill turns")
        if any("glove" in _words(one) for one in state.wear) and not any("gloves off" in _words(one) for one in state.never):
            yield Fault(where, "gloves are put on and nothing says that they come off before power")
        worn |= set(state.used_at)
    for number in steps:
        if number not in worn:
            yield Fault(_REVIEW, f"nothing says what is worn at step {number}")


def _words(text: Text) -> str:
    return words_of(text).lower()


def checks_answered(sheet: Sheet) -> Iterator[Fault]:
    """Each line wants a value; killer lines offer no way out; lists are short and end with words."""
    killers: set[str] = set()
    for checks in sheet.procedure.safety_review.checks:
        where = f"{_REVIEW}, {checks.title}"
        if not 1 <= len(checks.lines) <= _MOST_LINES:
            yield Fault(where, f"this list has {len(checks.lines)} lines, {_MOST_LINES} is the most")
        if "complete" not in checks.ends_with:
            yield Fault(where, "the list does not end by saying that it is complete")
        for line in checks.lines:
            if not line.blanks:
                yield Fault(f"{_REVIEW}, check {line.id}", "nothing is written down, so nobody need look")
            if line.killer and line.not_applicable:
                yield Fault(f"{_REVIEW}, check {line.id}", "a line that decides over life offers a box to skip it")
        killers |= {line.id for line in checks.lines if line.killer}
    for name in sorted((_KILLERS_AT_REST if _at_rest(sheet) else _KILLERS) - killers):
        yield Fault(f"{_REVIEW}, checks", f'the line "{name}" is missing, or may be skipped')


def no_check_of_a_start(sheet: Sheet) -> Iterator[Fault]:
    """Where the lathe is isolated from the first line to the last, no line looks at what only a start can hurt."""
    for checks in sheet.procedure.safety_review.checks if _at_rest(sheet) else ():
        for line in checks.lines:
            if found := _OF_A_START.search(" ".join((checks.title, _words(line.item), _words(line.passes)))):
                yield Fault(_REVIEW, f'the check "{line.id}" speaks of "{found[0]}", and no power comes back in this job')


def _at_rest(sheet: Sheet) -> bool:
    return all(placed.step.machine == "isolated" for placed in sheet.steps)


def signed(sheet: Sheet) -> Iterator[Fault]:
    """There is a place for whoever made the review, does the work, reviews it, accepts the rest, and for how long."""
    review = sheet.procedure.safety_review
    yield from _asked("head", review.head)
    for role in ("operator", "reviewer"):
        if not any(one.role.startswith(role) for one in review.signatures):
            yield Fault(f"{_REVIEW}, signatures", f"there is no place for the {role} to sign")
    if not review.accepts.role.strip():
        yield Fault(f"{_REVIEW}, signatures", "nobody is named who accepts what stays high")
    if not review.people:
        yield Fault(_REVIEW, "nothing says who may work and who is there")
    if not review.alone:
        yield Fault(_REVIEW, "nothing says what holds when somebody works alone")


def ready_for_the_worst(sheet: Sheet) -> Iterator[Fault]:
    """Isolation, emergency and the data sheets of chemicals are asked for, each with an answer or a blank."""
    review = sheet.procedure.safety_review
    yield from _asked("isolation", review.isolation)
    yield from _asked("emergency", review.emergency)
    for chemical in review.chemicals:
        where = f"{_REVIEW}, chemical {chemical.need}"
        if not any("data sheet" in blank.label for blank in chemical.blanks):
            yield Fault(where, "there is no place for the date of its data sheet")
    handled = {chemical.need for chemical in review.chemicals}
    bottles = {"compound", "degreaser", "activator"}
    for need in sheet.procedure.needs:
        if need.id in bottles - handled:
            yield Fault(f"{_REVIEW}, chemicals", f'"{need.id}" is used and has no line')


def _asked(part: str, lines: tuple[ReviewLine, ...]) -> Iterator[Fault]:
    there = {line.id for line in lines}
    for name in sorted(_MUST[part] - there):
        yield Fault(f"{_REVIEW}, {part}", f'the line "{name}" is missing')
    for line in lines:
        if line.must and line.answer is None and not line.blanks:
            yield Fault(f"{_REVIEW}, {part}", f'"{line.id}" has neither an answer nor a place for one')
