"""A bar of three collars that is certified anew: the middle one is read in every round, and has its places on the record."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet

_STEP, _ROUNDS = "compare-swap", "rounds"
_ROUNDS_READ = 2
_ORDER = ("h", "middle", "t", "t", "middle", "h")
_DEVIATION = "middle less the mean"


def control_reading(sheet: Sheet) -> Iterator[Fault]:
    """Both rounds read the middle collar, in order; its deviation is compared, and has its places."""
    if not sheet.shop.third_collar or _STEP not in {placed.step.id for placed in sheet.steps}:
        return
    reading = [
        placed
        for placed in sheet.steps
        if any(len(check.blanks) == len(_ORDER) and "middle" in check.blanks[1].label for check in placed.step.checks)
    ]
    if len(reading) < _ROUNDS_READ:
        yield Fault("steps", f"the bar has three collars, and {len(reading)} of both rounds read the one in the middle")
    for placed in sheet.steps:
        if placed.step.id == _STEP and not any(
            any(_DEVIATION in piece.lower() for piece in check.text if isinstance(piece, str))
            for check in placed.step.checks
        ):
            yield Fault(placed.where, "the middle of both rounds is read, and not compared")
    record = sheet.procedure.work_record
    for block in record.blocks if record is not None else ():
        if block.id == _ROUNDS:
            labels = [place.label.lower() for place in block.entries]
            places = tuple(label.split(",")[0] for label in labels if label.split(",")[0] in _ORDER)
            if places != _ORDER:
                yield Fault("work record, rounds", f"three collars are read {', '.join(_ORDER)}; the places are {places}")
            if not any(label.startswith(_DEVIATION) for label in labels):
                yield Fault("work record, rounds", "no place takes the middle less the mean of both ends")
