"""What is on the spindle nose: a step that changes chucks takes off what the step before it put on, and asks for help."""

from collections.abc import Iterator

from tailtrue.inspection.heavy_chuck import BY_TWO, HEAVY_BODY_MM, HELP, HOIST, HOIST_BODY_MM
from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet

_CHANGED, _LOOKED_OVER = "chuck-change", "machine-check"
_CHUCKS = ("chuck", "four-jaw-chuck", "bar-four-jaw", "independent-chuck", "collet")
_DRIVER = "drive-plate"
_OF = (", for the blanks", ", for the bar")
# Who chooses among several fits whatever is named: nobody knows what is on before.
_IF_ANOTHER = "IF another one is"


def what_is_on_comes_off(sheet: Sheet) -> Iterator[Fault]:
    """The tools of a change name the chuck that was fitted last and the one that goes on, and no third."""
    names = {need.id: "".join(str(piece) for piece in need.name) for need in sheet.procedure.needs}
    on = ""
    for placed in sheet.steps:
        done, here = set(placed.step.activities), _fitted(placed, names)
        if _LOOKED_OVER in done and len(here) == 1:
            (on,) = here
        if _CHANGED not in done or _chosen(placed):
            continue
        if on and on not in here:
            yield Fault(placed.where, f"{on} is on the spindle, and the step that changes chucks does not name it")
        goes_on = here - {on}
        if len(goes_on) > 1:
            yield Fault(placed.where, f"a change of chucks names {', '.join(sorted(goes_on))}, and one goes on")
        on = next(iter(sorted(goes_on)), on)


def _fitted(placed: Placed, names: dict[str, str]) -> set[str]:
    found = {names.get(tool, "") for tool in (*_CHUCKS, _DRIVER) if tool in placed.step.tools}
    for suffix in _OF:
        found = {name.removesuffix(suffix) for name in found}
    return found - {""}


def _chosen(placed: Placed) -> bool:
    return any(isinstance(piece, str) and _IF_ANOTHER in piece for line in placed.step.text for piece in line)


def help_at_each_change(sheet: Sheet) -> Iterator[Fault]:
    """Where a chuck that one person does not lift is among those in use, each change asks for help on its own lines."""
    if max(sheet.shop.chuck_bodies_mm, default=0.0) < HEAVY_BODY_MM:
        return
    for placed in sheet.steps:
        lines = (piece for line in placed.step.text for piece in line if isinstance(piece, str))
        if _CHANGED in placed.step.activities and not any(map(HELP.search, lines)):
            yield Fault(placed.where, "a heavy chuck goes on or off, and no line of the step asks for a second person")


def hoisted(sheet: Sheet) -> Iterator[Fault]:
    """Where two people do not lift the largest chuck, each change asks for a hoist, and nothing offers a second person."""
    if max(sheet.shop.chuck_bodies_mm, default=0.0) < HOIST_BODY_MM:
        return
    for placed in sheet.steps:
        if _CHANGED not in placed.step.activities:
            continue
        warned = (line for one in placed.step.cautions if _CHANGED in one.answers for line in one.avoid)
        said = [piece for line in (*placed.step.text, *warned) for piece in line if isinstance(piece, str)]
        if not any(map(HOIST.search, said)) or any(map(BY_TWO.search, said)):
            yield Fault(placed.where, "a chuck that two people do not lift goes on or off, and not by a hoist alone")
