"""The card at the lathe: nothing on it but what the sheet says, and no speed of the sheet missing."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in
from tailtrue.inspection.spelt import words_of
from tailtrue.parts import Figure
from tailtrue.procedure import CardLine

_CARD = "card"
_MOST_LINES = 9
# An answer that can be given without looking.
_NO_STATE = frozenset({"", "ok", "done", "set", "checked", "yes"})
# What kills at a start when it is left out, and what kills where hands go in and nothing may turn.
_CALLED = ("key", "gloves", "sleeves, hair", "guard", "clamps", "behind the spindle", "speed", "turn by hand")
_STILL = ("power", "plug or lock", "spindle", "key", "sleeves, hair")


def agrees(sheet: Sheet) -> Iterator[Fault]:
    """Every number on the card stands at the step it names: same fact, value, unit and rounding."""
    steps = {placed.step.number: placed.step for placed in sheet.steps}
    for line in _lines(sheet):
        step = steps.get(line.step)
        if step is None:
            yield Fault(_CARD, f"{line.value.fact} is said to stand at step {line.step}, and there is no such step")
            continue
        set_there = [
            figure for part in (*step.settings, *(check.limits for check in step.checks)) for figure in figures_in(part)
        ]
        for figure in (*figures_in(line.label), line.value):
            if figure not in set_there:
                yield Fault(_CARD, f"{figure.fact} of {figure.value:g} {figure.unit} is not set at step {line.step}")


def tells_side(sheet: Sheet) -> Iterator[Fault]:
    """A depth set at the cross slide is called per side on the card as it is at the step."""
    per_side = {
        figure
        for placed in sheet.steps
        for setting in placed.step.settings
        if any(isinstance(piece, str) and "per side" in piece for piece in setting.label)
        for figure in figures_in(setting.value)
    }
    for line in _lines(sheet):
        said = "per side" in words_of(line.label)
        if said != (line.value in per_side):
            here, there = ("on the card", "at its step") if said else ("at its step", "on the card")
            yield Fault(_CARD, f"{line.value.fact} is per side {here} and not {there}")


def tells_limit(sheet: Sheet) -> Iterator[Fault]:
    """A number that is rounded as a lower limit is not called the most, nor an upper one the least."""
    for line in _lines(sheet):
        for word, wrong in (("at least", "most"), ("at most", "least")):
            if word in words_of(line.label) and line.value.bound == wrong:
                yield Fault(_CARD, f'{line.value.fact} is a limit of the other side, the card says "{word}"')


def speeds_complete(sheet: Sheet) -> Iterator[Fault]:
    """Each speed that is set while the spindle turns stands on the card, where the sheet has one."""
    if sheet.procedure.card is None:
        return
    on_card = {line.value for line in _lines(sheet)}
    for placed in sheet.steps:
        for setting in placed.step.settings:
            for piece in setting.value:
                if isinstance(piece, Figure) and piece.rounding == "speed" and piece not in on_card:
                    yield Fault(placed.where, f"the speed {piece.fact} of {piece.value:g} {piece.unit} is not on the card")


def starts_called_out(sheet: Sheet) -> Iterator[Fault]:
    """What is looked at before each start stands on the card: few lines, each with its state, and words that end them.

    Where nothing turns in the whole job, it is looked at before hands go in.
    """
    card = sheet.procedure.card
    if card is None:
        return
    start = card.start
    if not 1 <= len(start.lines) <= _MOST_LINES:
        yield Fault(_CARD, f"the list before each start has {len(start.lines)} lines, {_MOST_LINES} is the most")
    if "complete" not in start.ends_with:
        yield Fault(_CARD, "the list before each start does not end by saying that it is complete")
    for line in start.lines:
        if line.state.strip().lower() in _NO_STATE:
            yield Fault(_CARD, f'before each start "{line.item}" names no state that must be found')
    called = " ".join(line.item for line in start.lines)
    turns = any(placed.step.machine == "turning" for placed in sheet.steps)
    for name in _CALLED if turns else _STILL:
        if name not in called:
            yield Fault(_CARD, f'before each start the line "{name}" is missing')


def _lines(sheet: Sheet) -> Iterator[CardLine]:
    card = sheet.procedure.card
    for group in card.groups if card is not None else ():
        yield from group.lines
