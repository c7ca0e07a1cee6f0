"""What the card owes to the job: readings that are carried, sizes to finish to, the way back, lists and stops that fit."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in
from tailtrue.inspection.spelt import words_of
from tailtrue.parts import Text
from tailtrue.procedure import CardLine

_CARD = "card"
_DROOP = "droop"  # read at one step, taken off at another
# Numbers without which an operation cannot be ended from the card.
_ENDS = frozenset(
    {
        "setover.large", "setover.small", "setover.length", "setover.passes", "setover.small_at_check",
        "bench.press_speed", "bar.centre_cone_depth",
    }
)  # fmt: skip
_SET_OVER, _SET_BACK = "set-over", "set-back"
_WAYS = ("away from you", "toward you")
_ON_PRESS = frozenset({"centre-on-press", "drill-press"})
_PRESS = ("key", "gloves", "sleeves, hair", "work", "guard", "by hand")
# Words of a stop that only a spindle under power, or work on a dead centre, can bring about.
_TURNING = ("noise", "shakes", "chips", "into line with the work")
_CENTRE = "tailstock centre"


def readings_carried(sheet: Sheet) -> Iterator[Fault]:
    """A place of the card is a blank of its step, in the same unit; the droop of an arm has one."""
    card = sheet.procedure.card
    if card is None:
        return
    blanks = {
        (placed.step.number, blank.label): blank.unit
        for placed in sheet.steps
        for check in placed.step.checks
        for blank in check.blanks
    }
    places = [place for group in card.groups for place in group.places]
    for place in places:
        if blanks.get((place.step, place.at)) != place.unit:
            yield Fault(_CARD, f'"{place.label}" is no reading "{place.at}" of step {place.step}')
    carried = {(place.step, place.at) for place in places}
    for step, label in blanks:
        if label == _DROOP and (step, label) not in carried:
            yield Fault(_CARD, f"the droop found at step {step} has no place on the card")


def ends_told(sheet: Sheet) -> Iterator[Fault]:
    """What an operation is finished to, and how often it is cut, stands on the card where it stands on the sheet."""
    if sheet.procedure.card is None:
        return
    on_card = {line.value.fact for line in _lines(sheet)}
    at_steps = {figure.fact for placed in sheet.steps for one in placed.step.settings for figure in figures_in(one.value)}
    for fact in sorted(_ENDS & at_steps - on_card):
        yield Fault(_CARD, f"{fact} stands at a step and not on the card")


def way_back_told(sheet: Sheet) -> Iterator[Fault]:
    """A tailstock that is set over is set back the other way, by as much, and the card says so."""
    card = sheet.procedure.card
    back = {placed.step.number for placed in sheet.steps if _SET_BACK in placed.step.activities}
    over = {placed.step.number for placed in sheet.steps if _SET_OVER in placed.step.activities} - back
    if card is None or not back:
        return
    there = [(line, _way(line.label)) for line in _lines(sheet) if line.step in over and _way(line.label)]
    home = [(line, _way(line.label)) for line in _lines(sheet) if line.step in back and _way(line.label)]
    if not there or not home:
        yield Fault(_CARD, "the way over or the way back of the tailstock is not told")
    for line, way in home:
        for first, other in there:
            if way == other or line.value != first.value:
                yield Fault(_CARD, f"step {line.step} does not undo step {first.step}")


def _way(label: Text) -> str:
    said = words_of(label)
    return next((way for way in _WAYS if way in said), "")


def lists_fit(sheet: Sheet) -> Iterator[Fault]:
    """Who starts a drill press on the way has its list; a sheet without one is not asked for it."""
    card = sheet.procedure.card
    if card is None:
        return
    on_press = any(_ON_PRESS.intersection(placed.step.activities) for placed in sheet.steps)
    if on_press != bool(card.besides):
        said = "the list of the drill press is missing" if on_press else "a list is told for a machine that is not used"
        yield Fault(_CARD, said)
    for other in card.besides:
        called = " ".join(line.item for line in other.lines)
        yield from (Fault(_CARD, f'"{other.title}": the line "{name}" is missing') for name in _PRESS if name not in called)


def stops_fit(sheet: Sheet) -> Iterator[Fault]:
    """What stops the work at once can happen in it: nothing shakes where nothing turns, no centre runs dry without one."""
    said = " ".join(
        piece for text in sheet.procedure.stop_at_once for piece in text if isinstance(piece, str)
    ).lower()  # fmt: skip
    turns = any(placed.step.machine == "turning" for placed in sheet.steps)
    driven = any("dog-drive" in placed.step.activities for placed in sheet.steps)
    for word in _TURNING if not turns else ():
        if word in said:
            yield Fault("stop at once", f'nothing turns in this job, and "{word}" stops it')
    if (_CENTRE in said) != (turns and driven):
        yield Fault("stop at once", "the tailstock centre stops a job without one, or does not stop one that runs on it")


def _lines(sheet: Sheet) -> Iterator[CardLine]:
    card = sheet.procedure.card
    for group in card.groups if card is not None else ():
        yield from group.lines
