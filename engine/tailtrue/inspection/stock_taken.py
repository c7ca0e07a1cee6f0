"""What is taken off the rack: the piece that a step names is the one its list calls chosen, and of a metal for collars."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.parts import Text

_CHOSEN, _VERDICTS = "chosen", frozenset({"chosen", "left", "does not serve"})
_TAKE = "Take this "
_METAL = "collar.metal"
# A collar of these is never made: it swells, creeps, burns, or throws the tool off.
_NO_COLLAR = ("nylon", "acetal", "PVC", "steel", "magnesium")


def _words(text: Text) -> str:
    return " ".join("".join(piece if isinstance(piece, str) else " " for piece in text).split())


def listed_as_chosen(sheet: Sheet) -> Iterator[Fault]:
    """Of the pieces that a step lists one is chosen, and it is the one that the step tells to take."""
    for placed in sheet.steps:
        lines = {_words(line.label): _words(line.value) for line in placed.step.settings}
        told = [words for line in placed.step.text if (words := _words(line)).startswith(_TAKE)]
        if not told or not _VERDICTS.intersection(lines.values()):
            continue
        taken = [label for label, verdict in lines.items() if verdict == _CHOSEN]
        if len(taken) != 1:
            yield Fault(placed.where, f"{len(taken)} pieces of the rack are called chosen")
            continue
        if not any(_named(words) in taken[0] for words in told):
            yield Fault(placed.where, f'the piece that is called chosen is not the one to take: "{taken[0]}"')


def _named(told: str) -> str:
    """The piece in "Take this bar: LABEL. Mark it."."""
    return told.partition(": ")[2].removesuffix(" Mark it.").removesuffix(".")


def metal_for_collars(sheet: Sheet) -> Iterator[Fault]:
    """No collar is made of a plastic, of steel or of what burns."""
    for choice in sheet.procedure.choices:
        found = next((word for word in _NO_COLLAR if word in choice.chosen), "")
        if choice.id == _METAL and found:
            yield Fault(f"choice {choice.id}", f'collars of "{choice.chosen}" are no use to measure')
