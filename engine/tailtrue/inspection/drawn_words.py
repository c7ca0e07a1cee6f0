"""What the drawings say in words: the side of the tool, the ways of the tailstock and its screws, the settings of speeds."""

from collections.abc import Iterator

from tailtrue.inspection.drawings import LISTED_SPEED
from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.procedure import Drawing

# What a drawing of a kind cannot do without.
_TURNED_BY_THE_TOOL = frozenset(
    {"between-centres", "indicator-on-collars", "indicator-on-quill", "tailstock-move", "tailstock-set-over", "taper-work"}
)
_MOVE, _QUILL, _PLATE, _SET_OVER = "tailstock-move", "indicator-on-quill", "speed-plate", "tailstock-set-over"
_WORK = "taper-work"
_ONE_SCREW = "one_screw"  # the label of the only one
_SCREWS = ("screw_toward", "screw_away")


def _where(drawing: Drawing) -> str:
    return f"drawing {drawing.id}"


def tool_side_right(sheet: Sheet) -> Iterator[Fault]:
    """A view from above is turned by the side of the tool: it is that of this lathe."""
    for drawing in sheet.procedure.drawings:
        side = drawing.said.get("tool_side")
        if side != sheet.shop.tool_side and (side is not None or drawing.kind in _TURNED_BY_THE_TOOL):
            yield Fault(
                _where(drawing),
                f"it has the tool on the side {side or 'nobody said'}, the lathe on the {sheet.shop.tool_side}",
            )


def move_right(sheet: Sheet) -> Iterator[Fault]:
    """The arrows of the move: toward the tool when the tailstock end is larger; each screw as its owner named it."""
    front = sheet.shop.tool_side == "front"
    due = {"larger": "toward you" if front else "away from you", "smaller": "away from you" if front else "toward you"}
    screws = dict(zip(_SCREWS, sheet.shop.screws, strict=True))
    for drawing in sheet.procedure.drawings:
        if drawing.kind in (_MOVE, _QUILL, _SET_OVER) and sheet.shop.set_over == "none":
            yield Fault(_where(drawing), "it shows a move, and this tailstock cannot be set over")
        if drawing.kind not in (_MOVE, _SET_OVER):
            continue
        for case, way in due.items() if drawing.kind == _MOVE else ():
            if drawing.labels.get(case) != way:
                said = drawing.labels.get(case, "nothing")
                yield Fault(_where(drawing), f'a {case} tailstock end moves "{way}", the drawing says "{said}"')
        if (_ONE_SCREW in drawing.labels) != (sheet.shop.set_over == "one-screw"):
            yield Fault(_where(drawing), f"it shows the wrong number of screws for a tailstock of {sheet.shop.set_over}")
        for name, named in screws.items():
            if drawing.said.get(name, "") != named:
                said = drawing.said.get(name, "nothing")
                yield Fault(_where(drawing), f'the owner calls the screw "{named or "nothing"}", the drawing says "{said}"')


def set_over_right(sheet: Sheet) -> Iterator[Fault]:
    """The arrow of a set-over: the small end toward the tool, and the other way where the step sets back."""
    taper = sheet.shop.taper
    activities = {placed.step.number: placed.step.activities for placed in sheet.steps}
    for drawing in sheet.procedure.drawings:
        if drawing.kind not in (_SET_OVER, _WORK):
            continue
        here = activities.get(drawing.place, ())
        moved = drawing.kind == _WORK or "move-tailstock" in here
        if taper is None or not moved or not {"set-over", "set-back"} & set(here):
            yield Fault(_where(drawing), "it shows a set-over, and none is made at its step")
            continue
        toward = (taper.small_end == "tailstock") == (sheet.shop.tool_side == "front")
        due = "toward you" if toward == ("set-over" in here) else "away from you"
        if drawing.labels.get("way") != due:
            said = drawing.labels.get("way", "nothing")
            yield Fault(_where(drawing), f'the tailstock goes "{due}" here, the drawing says "{said}"')
        if drawing.kind == _WORK and drawing.said.get("small_end") != taper.small_end:
            yield Fault(_where(drawing), f"the small end is at the {taper.small_end}, and it is drawn at the other end")


def plate_right(sheet: Sheet) -> Iterator[Fault]:
    """The plate is that of the lathe, speed for speed and setting for setting, and has every speed the steps set."""
    for drawing in sheet.procedure.drawings:
        if drawing.kind != _PLATE:
            continue
        listed = tuple(figure.value for name, figure in drawing.dimensions.items() if name.startswith(LISTED_SPEED))
        if listed != sheet.shop.speeds:
            yield Fault(_where(drawing), "its speeds are not those of the lathe, in the order of the lathe's file")
        due = {f"setting.{number}": word for number, word in enumerate(sheet.shop.speed_settings, start=1)}
        if dict(drawing.said) != due:
            yield Fault(_where(drawing), "its settings are not those that the owner wrote to the speeds")
        yield from _uses(sheet, drawing)


def _uses(sheet: Sheet, drawing: Drawing) -> Iterator[Fault]:
    used = {figure.fact for name, figure in drawing.dimensions.items() if not name.startswith(LISTED_SPEED)}
    for name in drawing.dimensions:
        if not name.startswith(LISTED_SPEED) and not drawing.labels.get(name.partition(".")[0]):
            yield Fault(_where(drawing), f"the speed {name} stands without the work it is for")
    at_steps = {found.figure.fact for found in sheet.at_steps}
    for fact in sorted(used - at_steps):
        yield Fault(_where(drawing), f"it has work at {fact}, and no step of this sheet does that work")
    for found in sheet.at_steps:
        figure = found.figure
        runs = found.placed.step.machine == "turning" and found.line is not None and figure in found.line.value
        if runs and figure.unit == "1/min" and figure.fact not in used:
            yield Fault(_where(drawing), f"step {found.placed.step.number} runs at a speed that it leaves out")
