"""Where a shared shop has somebody stand by: work that maims by one thing left loose or held wrong."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet

_WATCHED = ("chuck-change", "grind-tool")
_BETWEEN, _IN_CHUCK = "mount-between-centres", "grip-in-chuck"


def stood_by(sheet: Sheet) -> Iterator[Fault]:
    """In a shared shop a chuck is changed, a tool ground and work first started between centres with a supervisor."""
    if not sheet.shop.shared:
        return
    yield from _alone_at_chuck_or_wheel(sheet)
    yield from _first_start_alone(sheet)


def _alone_at_chuck_or_wheel(sheet: Sheet) -> Iterator[Fault]:
    for placed in sheet.steps:
        done = [one for one in _WATCHED if one in placed.step.activities]
        if done and placed.step.who == "any":
            yield Fault(placed.where, f'others use this lathe, and anybody may do "{done[0]}" with no supervisor there')


def _first_start_alone(sheet: Sheet) -> Iterator[Fault]:
    between = seen = False
    for placed in sheet.steps:
        if _BETWEEN in placed.step.activities:
            between = True
        elif _IN_CHUCK in placed.step.activities:
            between = seen = False
        elif between:
            seen = seen or placed.step.who != "any"
        if between and placed.step.machine == "turning":
            if not seen:
                yield Fault(placed.where, "others use this lathe, and the first start between centres has no supervisor")
            return
