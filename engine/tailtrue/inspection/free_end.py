"""A piece held in the chuck alone: short enough, and the right foot of the lathe for what it shows."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet, figures_in
from tailtrue.inspection.spelt import words_of

_FACT = "chucked.stand_out"
_RATIO = "chucked.overhang_ratio"
_LIMITS = ("limit.overhang_most", "limit.overhang_short", "limit.chucked_overhang")
# Lengths that differ by less are one length, taken off in another order.
_SAME_MM = 1e-6
_FEET = ("front foot", "rear foot")


def short_enough(sheet: Sheet) -> Iterator[Fault]:
    """Where a free end turns, the sheet says how far it stands out, and that is within a multiple of its diameter."""
    turns = [placed for placed in sheet.steps if "free-end" in placed.step.activities and placed.step.machine == "turning"]
    told = [found for found in sheet.at_steps if found.figure.fact == _FACT]
    if turns and not told:
        yield Fault(turns[0].where, "a free end turns and nothing says how far it may stand out")
    piece = sheet.shop.piece
    for placed, _, figure in told:
        if piece is None:
            yield Fault(placed.where, "a length to stand out is printed and no piece is known")
            continue
        most = min(piece.diameter_mm * piece.most_diameters, piece.length_mm - piece.grip_mm)
        if figure.unit != "mm" or not 0 < figure.value <= most + _SAME_MM:
            what = f"{figure.value:g} {figure.unit} would stand out of the jaws"
            yield Fault(placed.where, f"{what}, {most:g} mm is the most for this piece")


def limit_agrees(sheet: Sheet) -> Iterator[Fault]:
    """The table of limits allows no less than the steps ask for: nobody works against a limit of his own sheet."""
    told = [figure.value for _, _, figure in sheet.at_steps if figure.fact == _RATIO]
    for row in sheet.procedure.limits:
        for figure in figures_in(row):
            if figure.fact in _LIMITS and told and max(told) > figure.value:
                what = f"{figure.value:g} diameters are the limit here, and the steps let {max(told):.3g} stand out"
                yield Fault("limits", what)


def foot_right(sheet: Sheet) -> Iterator[Fault]:
    """At the tailstock end the foot on the side of the tool is raised for a larger free end, the other for a smaller."""
    tool, other = _FEET if sheet.shop.tool_side == "front" else _FEET[::-1]
    for placed in sheet.steps:
        if "level-machine" not in placed.step.activities:
            continue
        for line in placed.step.settings:
            label, value = words_of(line.label).lower(), words_of(line.value).lower()
            due = tool if "larger" in label else other if "smaller" in label else None
            if due is not None and [foot for foot in _FEET if foot in value] != [due]:
                yield Fault(placed.where, f'"{label}" asks for the {due}, the sheet says "{value}"')
