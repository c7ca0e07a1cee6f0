"""The state of the lathe for whoever goes back: power, what is between the centres and which way round, tags, tool.

The sheet is walked with this state. Each way back is walked from where it lands, with the state that it was left in.
A sentence that begins with IF is done by whoever is sent back, and by nobody else.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet
from tailtrue.inspection.spelt import words_of
from tailtrue.inspection.ways_back import restores, ways

_DO = tuple(
    (what, re.compile(pattern, re.IGNORECASE))
    for what, pattern in (
        ("isolate", r"\bisolate\b"),
        ("stays isolated", r"\bkeep (?:it|the lathe) isolated\b"),
        ("out", r"\blift the (?:bar|work) out\b|\btake the (?:bar|work) out of the centres\b"),
        ("in", r"\bmount the (?:bar|work)\b|\bput the bar between the centres\b"),
        ("slacken", r"\bslacken (?:the bed clamp|the quill clamp|both clamps)\b|\bclamps slackened\b"),
        ("hang", r"\bhang the ([\w-]+) tag\b"),
        ("tag off", r"\btake the ([\w-]+) tag off\b"),
        ("boring bar in", r"\bfit the boring bar\b"),
        ("tool in", r"\bfit (?:the|a) (?:facing|turning|chamfer|sharp) tool\b"),
    )
)
_END = re.compile(r"\bend ([AB]) at the headstock\b", re.IGNORECASE)
_IF = re.compile(r"^\s*IF\b")
_BETWEEN = frozenset({"dog-drive", "skim"})
_CUTS = frozenset({"facing", "turning", "skim"})
_STOPS_STARTS = "do-not-start"
_WHOLE, _FIRST = "setover.amount", re.compile(r"\bfirst time\b", re.IGNORECASE)
_NOTED = re.compile(r"^State before\b")
_SENDS = re.compile(r"\bgo back to\b", re.IGNORECASE)


@dataclass(frozen=True)
class _State:
    """What is known; None where no line has said it."""

    live: bool = False
    mounted: bool | None = None
    end: str | None = None
    tags: frozenset[str] = frozenset()
    post: str | None = None


@dataclass(frozen=True)
class _Done:
    """One thing that a sentence asks for."""

    what: str
    named: str
    end: str | None
    only_if: bool


def lands_where_it_fits(sheet: Sheet) -> Iterator[Fault]:
    """Every step finds the lathe as it needs it, on the way down the sheet and on every way back."""
    steps = list(sheet.steps)
    asked = [_asked(placed) for placed in steps]
    state = _State()
    said: dict[Fault, None] = {}
    for place, placed in enumerate(steps):
        before = state
        for what in _misfits(placed, asked[place], state):
            said[Fault(placed.where, what)] = None
        state = _after(placed, asked[place], state, sent_back=False)
        for way in ways(steps, place):
            if way.to is None:
                continue
            left = _after(placed, _until(placed, asked[place], way.sentence), before, sent_back=True)
            for found, what in _along(steps, asked, way.to, place, left):
                said[Fault(placed.where, f'"{way.said}" comes to step {found.step.number}: {what}')] = None
    yield from said


def nothing_twice(sheet: Sheet) -> Iterator[Fault]:
    """What is set once is not set again in full, and the state that it is set back to is not written over."""
    steps = list(sheet.steps)
    for place, placed in enumerate(steps):
        for way in ways(steps, place):
            if way.to is None:
                continue
            again = steps[way.to : place + 1]
            for one in again:
                for line, figures in one.set_there:
                    if any(figure.fact == _WHOLE for figure in figures) and not _FIRST.search(words_of(line.label)):
                        what = "its amount counts from a tailstock in line, and is printed as if for every time"
                        yield Fault(placed.where, f'"{way.said}" comes to step {one.step.number}: {what}')
                if any(_NOTED.search(words_of(check.text)) for check in one.step.checks):
                    what = "the state before the move is written over"
                    yield Fault(placed.where, f'"{way.said}" comes to step {one.step.number}: {what}')


def hold_is_met(sheet: Sheet) -> Iterator[Fault]:
    """No line of a step sends everybody back, or takes a tag off, before the hold printed behind it."""
    for placed in sheet.steps:
        if placed.step.hold is None:
            continue
        for text in placed.step.text:
            for sentence in words_of(text).split(". "):
                if _SENDS.search(sentence) and not _IF.search(sentence):
                    yield Fault(placed.where, "a line sends back, and the hold stands behind it: nobody meets the hold")
        if any(one.what == "tag off" and not one.only_if for one in _asked(placed)):
            yield Fault(placed.where, "the tag comes off before the hold of the same step")


def _asked(placed: Placed) -> tuple[_Done, ...]:
    return tuple(done for text in placed.step.text for done in _asked_by(words_of(text)))


@lru_cache(maxsize=4096)
def _asked_by(words: str) -> tuple[_Done, ...]:
    found = []
    for sentence in words.split(". "):
        end = _END.search(sentence)
        inside = [(one.start(), what, one) for what, pattern in _DO for one in pattern.finditer(sentence)]
        for _, what, one in sorted(inside, key=lambda each: each[0]):
            named = one[1].lower() if one.groups() else ""
            found.append(_Done(what, named, end[1].upper() if end else None, bool(_IF.search(sentence))))
    return tuple(found)


def _until(placed: Placed, asked: tuple[_Done, ...], sentence: str | None) -> tuple[_Done, ...]:
    """What was done when a sentence sends back; all of it at a hold, or where no line of the step says the sentence."""
    before = 0
    for text in placed.step.text:
        for one in words_of(text).split(". "):
            if one == sentence:
                return asked[:before]
            before += sum(len(pattern.findall(one)) for _, pattern in _DO)
    return asked


def _along(
    steps: Sequence[Placed], asked: Sequence[tuple[_Done, ...]], to: int, place: int, state: _State
) -> Iterator[tuple[Placed, str]]:
    for index in range(to, place + 1):
        for what in _misfits(steps[index], asked[index], state):
            yield steps[index], what
        state = _after(steps[index], asked[index], state, sent_back=False)


def _after(placed: Placed, asked: tuple[_Done, ...], state: _State, *, sent_back: bool) -> _State:
    for one in asked:
        if sent_back or not one.only_if:
            state = _with(state, one)
    return replace(state, live=restores(placed) or (state.live and placed.step.machine != "isolated"))


def _with(state: _State, one: _Done) -> _State:
    if one.what == "isolate":
        return replace(state, live=False)
    if one.what == "out":
        return replace(state, mounted=False, end=None)
    if one.what == "in":
        return replace(state, mounted=True, end=one.end)
    if one.what == "hang":
        return replace(state, tags=state.tags | {one.named})
    if one.what == "tag off":
        return replace(state, tags=state.tags - {one.named})
    if one.what in ("boring bar in", "tool in"):
        return replace(state, post=one.what)
    return state


def _misfits(placed: Placed, asked: tuple[_Done, ...], state: _State) -> Iterator[str]:
    """What a step asks for that the lathe, as it stands, does not allow."""
    entered = state
    if placed.step.machine == "isolated" and state.live and not any(one.what == "isolate" for one in asked):
        yield "the lathe is live, and no line of this step isolates it"
    for one in asked:
        if one.only_if:
            continue
        if one.what == "stays isolated" and state.live:
            yield "it keeps a lathe isolated that is live"
        elif one.what == "slacken" and state.mounted:
            yield "a clamp is slackened, and what is mounted is still between the centres"
        elif one.what == "in" and state.mounted:
            yield "something is mounted, and what was mounted is still between the centres"
        elif one.what == "in" and one.end is not None and one.end == entered.end and entered.mounted:
            yield f"end {one.end} is brought to the headstock, and lies there already"
        elif one.what == "tag off" and one.named not in state.tags:
            yield f"the {one.named} tag is taken off, and does not hang there"
        state = _with(state, one)
    if placed.step.machine == "turning":
        yield from _misfits_turning(placed, state)


def _misfits_turning(placed: Placed, state: _State) -> Iterator[str]:
    if state.tags & {_STOPS_STARTS}:
        yield "the spindle turns, and the do-not-start tag hangs on the lever"
    if _BETWEEN & set(placed.step.activities) and state.mounted is False:
        yield "it turns between the centres, and nothing is mounted"
    wanted = _END.search(words_of(placed.phase.purpose))
    if wanted and state.mounted and state.end not in (None, wanted[1].upper()):
        yield f"end {wanted[1].upper()} belongs at the headstock, and end {state.end} is there"
    bores = "boring-bar" in placed.step.tools
    if state.post == "tool in" and bores:
        yield "it bores, and another tool was fitted last"
    if state.post == "boring bar in" and not bores and _CUTS & set(placed.step.activities):
        yield "it faces or turns, and the boring bar was fitted last"
