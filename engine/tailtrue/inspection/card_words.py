"""The words of the card: few messages and none that matters missing, short lines that follow the sheet, a way back."""

import re
from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet

_CARD = "card"
_MOST_MESSAGES, _MOST_STEPS, _MOST_STOPS, _MOST_WORDS = 3, 15, 6, 20
# What a line of the list before a start must name to keep a danger off. Of a danger that is not here no line can.
_KEEPS_OFF = {
    "gloves-at-the-spindle": "gloves",
    "loose-clothing": "sleeves",
    "loose-hair": "hair",
    "bar-out-behind-the-spindle": "behind the spindle",
    "stub-behind-the-spindle": "behind the spindle",
}
_WAY_ROUND = re.compile(r"\bn/?a\b|not applicable|if any\b|where fitted|optional", re.IGNORECASE)
_IN_EMERGENCY = ("stop", "isolate", "call")


def dangers_told(sheet: Sheet) -> Iterator[Fault]:
    """Three messages at most, each a danger of the sheet; none is missing that no line keeps off, while there is room."""
    card = sheet.procedure.card
    if card is None:
        return
    dangers = {caution.id for _, caution in sheet.cautions if caution.signal == "danger"}
    others = {placed.phase.number for placed in sheet.steps if placed.step.who != "staff"}
    met = {caution.id for caution in sheet.procedure.job_cautions if caution.signal == "danger"}
    for phase in sheet.procedure.phases:
        if phase.number in others:
            every = (*phase.cautions, *(caution for step in phase.steps for caution in step.cautions))
            met |= {caution.id for caution in every if caution.signal == "danger"}
    if len(card.messages) > _MOST_MESSAGES:
        yield Fault(_CARD, f"{len(card.messages)} messages stand on the card, {_MOST_MESSAGES} is the most")
    for name in card.messages:
        if name not in dangers:
            yield Fault(_CARD, f"the message {name} is no danger of this sheet")
    kept_off = {name for line in card.start.lines for name in line.answers}
    for name in sorted(met - kept_off - set(card.messages)):
        if len(card.messages) < _MOST_MESSAGES:
            yield Fault(_CARD, f"the danger {name} is neither told nor kept off by a line of the list")


def lines_keep_off(sheet: Sheet) -> Iterator[Fault]:
    """A line of the list keeps off only a danger of this sheet, by its name; and no line has a way round."""
    card = sheet.procedure.card
    for line in card.start.lines if card else ():
        for name in line.answers:
            if _KEEPS_OFF.get(name, "no line") not in line.item:
                yield Fault(_CARD, f'the line "{line.item}" does not keep off the danger {name}')
        if _WAY_ROUND.search(f"{line.item} {line.state}"):
            yield Fault(_CARD, f'the line "{line.item}: {line.state}" offers a way round')


def steps_follow(sheet: Sheet) -> Iterator[Fault]:
    """The lines to do and tick are few, follow the sheet, and are marked where the spindle turns on the way."""
    card = sheet.procedure.card
    if card is None:
        return
    if not 1 <= len(card.steps) <= _MOST_STEPS:
        yield Fault(_CARD, f"the card has {len(card.steps)} lines to do, {_MOST_STEPS} is the most")
    place = {placed.step.number: count for count, placed in enumerate(sheet.steps)}
    before = -1
    for line in card.steps:
        first, last = place.get(line.step), place.get(line.last)
        if first is None or last is None:
            yield Fault(_CARD, f'"{line.text}" is said to be steps {line.step} to {line.last}, and there are none')
            continue
        if not before < first <= last:
            yield Fault(_CARD, f'"{line.text}" at step {line.step} is not in the order of the sheet')
        before = last
        turns = any(placed.step.machine == "turning" for placed in sheet.steps[first : last + 1])
        if turns != line.starts:
            said = "is marked as a start, and nothing turns" if line.starts else "turns the spindle and is not marked so"
            yield Fault(_CARD, f'"{line.text}" {said}')


def steps_short(sheet: Sheet) -> Iterator[Fault]:
    """A line to do is a sentence or a few, each short, and carries no number of its own."""
    card = sheet.procedure.card
    for line in card.steps if card else ():
        if not line.text.endswith("."):
            yield Fault(_CARD, f'"{line.text}" is no sentence')
        if re.search(r"\d", line.text):
            yield Fault(_CARD, f'"{line.text}" holds a number, which is nobody\'s')
        if any(len(one.split()) > _MOST_WORDS for one in re.split(r"(?<=[.?])\s", line.text)):
            yield Fault(_CARD, f'"{line.text}" is longer than {_MOST_WORDS} words')


def frame_said(sheet: Sheet) -> Iterator[Fault]:
    """What to do when called away, when to stop, what to do in an emergency, and that the sheet comes first."""
    card = sheet.procedure.card
    if card is None:
        return
    if "back one line" not in card.interrupted:
        yield Fault(_CARD, "whoever is called away is not sent back one line")
    turns = any(placed.step.machine == "turning" for placed in sheet.steps)
    if ("Stop the spindle" in card.interrupted) != turns:
        yield Fault(_CARD, "whoever is called away stops a spindle that turns, and no other")
    if "list" not in card.list_first:
        yield Fault(_CARD, "the mark before a start does not send to the list")
    if "complete" not in card.ends_with:
        yield Fault(_CARD, "the lines to do do not end by saying that the list is complete")
    if "sheet" not in card.pointer:
        yield Fault(_CARD, "a learner is not sent to the sheet")
    places = [card.emergency.lower().find(word) for word in _IN_EMERGENCY]
    if -1 in places or places != sorted(places):
        yield Fault(_CARD, "in an emergency: stop, isolate, call, in this order")
    if len(sheet.procedure.stop_at_once) > _MOST_STOPS:
        yield Fault(_CARD, f"{len(sheet.procedure.stop_at_once)} stop conditions are too many, {_MOST_STOPS} is the most")
