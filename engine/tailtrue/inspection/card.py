"""The card at the lathe: nothing on it but what the sheet says, and no speed of the sheet missing."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in
from tailtrue.parts import Figure
from tailtrue.procedure import CardLine

_CARD = "card"


def agrees(sheet: Sheet) -> Iterator[Fault]:
    """Every number on the card stands at the step it names: same fact, value, unit and rounding."""
    steps = {placed.step.number: placed.step for placed in sheet.steps}
    for line in _lines(sheet):
        step = steps.get(line.step)
        if step is None:
            yield Fault(_CARD, f"{line.value.fact} is said to stand at step {line.step}, and there is no such step")
            continue
        set_there = [figure for setting in step.settings for figure in figures_in(setting)]
        for figure in (*figures_in(line.label), line.value):
            if figure not in set_there:
                yield Fault(_CARD, f"{figure.fact} of {figure.value:g} {figure.unit} is no setting of step {line.step}")


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
        said = "per side" in _words(line)
        if said != (line.value in per_side):
            here, there = ("on the card", "at its step") if said else ("at its step", "on the card")
            yield Fault(_CARD, f"{line.value.fact} is per side {here} and not {there}")


def tells_limit(sheet: Sheet) -> Iterator[Fault]:
    """A number that is rounded as a lower limit is not called the most, nor an upper one the least."""
    for line in _lines(sheet):
        for word, wrong in (("at least", "most"), ("at most", "least")):
            if word in _words(line) and line.value.bound == wrong:
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


def _words(line: CardLine) -> str:
    return "".join(piece for piece in line.label if isinstance(piece, str))


def _lines(sheet: Sheet) -> Iterator[CardLine]:
    card = sheet.procedure.card
    for group in card.groups if card is not None else ():
        yield from group.lines
