"""A second chuck: fitted as a step of its own, of the kind it is used as, under its own mark; room behind what is bored."""

from collections.abc import Iterator, Mapping

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet, figures_in

_ALONE, _OF_BAR = "independent-chuck", "bar-four-jaw"
_FOUR_JAWS = ("four-jaw-chuck", _OF_BAR, _ALONE)
_FITS = {"chuck-change", "machine-check"}
_OF_A_CHUCK = ("chuck.speed_limit", "chuck_speed_limit", "hold_speed_limit")
_CENTRE = "headstock-centre"
_MARK = ("chuck_speed_limit", "hold_speed_limit")
_ROOM, _HOLE, _BAR = "rework.room_behind", "rework.chuck_hole", "bore.shank"
_THROUGH, _SET_TRUE, _INDICATOR, _RUN_OUT = "bar-through-spindle", "set-bar-true", "indicator", "limit.set_true"
_GRIPS = {"chuck", _OF_BAR}
_TRUED, _PAST_BAR = "rework.stands_out", "limit.boring_clearance"


def fitted_before_use(sheet: Sheet) -> Iterator[Fault]:
    """A chuck with independent jaws is one of the lathe, fitted dead before it holds, and told no faster than its mark."""
    names = _named(sheet)
    for tool in _FOUR_JAWS:
        uses = [placed for placed in sheet.steps if tool in placed.step.tools]
        if not uses:
            continue
        marks = [cap for label, cap in sheet.shop.independent_chucks.items() if names.get(tool, "").startswith(label)]
        if not marks:
            yield Fault(uses[0].where, "work is gripped by independent jaws, and the tool list names another chuck")
            continue
        first = uses[0]
        fits = "chuck-change" in first.step.activities or _on_already(sheet, first, names, names[tool])
        if not fits or first.step.machine != "isolated":
            yield Fault(first.where, "another chuck holds work before a step, lathe isolated, has fitted it")
        told = [figure.value for figure in first.figures if figure.fact.endswith(_MARK)]
        if not told or max(told) > max(marks):
            yield Fault(first.where, "a chuck is fitted, and the speed told for it is not that of its mark")


def _named(sheet: Sheet) -> dict[str, str]:
    return {need.id: "".join(str(piece) for piece in need.name) for need in sheet.procedure.needs}


def _on_already(sheet: Sheet, first: Placed, names: Mapping[str, str], name: str) -> bool:
    """Whether the last step before this one that fitted a chuck, or looked it over, is about the chuck of this name."""
    label = max((one for one in sheet.shop.independent_chucks if name.startswith(one)), key=len, default="")
    before = sheet.steps[: next(place for place, one in enumerate(sheet.steps) if one is first)]
    chucks = {"chuck", *_FOUR_JAWS}
    fitted = [one for one in before if _FITS & set(one.step.activities) and chucks & set(one.step.tools)]
    return bool(label and fitted) and any(names.get(tool, "").startswith(label) for tool in fitted[-1].step.tools)


def bar_set_true(sheet: Sheet) -> Iterator[Fault]:
    """A bar in independent jaws is set true with the indicator, to a limit that is told, and the run-out is written down."""
    names = _named(sheet)
    for placed in sheet.steps:
        step, done = placed.step, set(placed.step.activities)
        independent = any(names.get(tool, "").startswith(one) for tool in _GRIPS & set(step.tools)
                          for one in sheet.shop.independent_chucks)  # fmt: skip
        if "grip-in-chuck" not in done or not done & {_THROUGH, _SET_TRUE} or not independent | (_SET_TRUE in done):
            continue
        if not independent:
            yield Fault(placed.where, "the bar is set true jaw by jaw, and no independent chuck is on the tool list")
        if _SET_TRUE not in done:
            yield Fault(placed.where, "independent jaws grip the bar, and nothing sets it true")
        if _INDICATOR not in step.tools:
            yield Fault(placed.where, "the bar is set true and no indicator is at hand")
        most = sheet.shop.limits.get(_RUN_OUT, (0.0, ""))[0]
        highs = [check.limits.high for check in step.checks if check.limits and check.blanks and check.instrument]
        if not any(high is not None and 0 < high.value <= most for high in highs):
            yield Fault(placed.where, "nobody writes down how far the bar runs out, against its limit")
        division = sheet.shop.indicator_division_mm
        if division is None or division >= most:
            yield Fault(placed.where, "the bar is set true with an indicator that does not show its limit")


def each_in_the_limits(sheet: Sheet) -> Iterator[Fault]:
    """A limit of speed that a step tells for a chuck stands in the table of limits too, for that chuck."""
    rows = {figure.fact: figure.value for row in sheet.procedure.limits for figure in figures_in(row.limit)}
    if not rows:
        return
    for placed in sheet.steps:
        if not _FITS & set(placed.step.activities):
            continue
        for figure in placed.figures:
            if figure.fact.endswith(_OF_A_CHUCK) and rows.get(figure.fact) != figure.value:
                yield Fault(placed.where, f"{figure.value:g} 1/min for this chuck does not stand among the limits")


def point_in_the_jaws(sheet: Sheet) -> Iterator[Fault]:
    """Where the chuck stays on as the driver, the headstock centre is gripped in its jaws: the taper is behind it."""
    if not sheet.shop.chuck_drives:
        return
    for placed in sheet.steps:
        done, tools = set(placed.step.activities), set(placed.step.tools)
        if "fit-centre" in done and _CENTRE in tools and not ("grip-in-chuck" in done and {"chuck", "chuck-key"} <= tools):
            yield Fault(placed.where, "the chuck stays on the spindle, and a centre is put into the taper behind it")


def boring_bar_has_room(sheet: Sheet) -> Iterator[Fault]:
    """Behind a collar that is set true by its bore there is told room for the boring bar, or a hole that takes it."""
    for placed in sheet.steps:
        told = placed.told
        if _TRUED not in told:
            if _ALONE in placed.step.tools and "grip-in-chuck" in placed.step.activities:
                yield Fault(placed.where, "nothing says how far the collar stands out of the jaws")
            continue
        least = sheet.shop.limits[_PAST_BAR][0]
        shanks = [figure.value for one in sheet.steps for figure in one.figures if figure.fact == _BAR]
        if not told.get(_ROOM, 0.0) >= least and not told.get(_HOLE, 0.0) > max(shanks, default=0.0):
            yield Fault(placed.where, "the boring bar comes out behind the collar, and neither room nor hole is told")
