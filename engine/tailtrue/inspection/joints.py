"""The joint of collar and bar: it holds a catch, nothing in it comes near the tool, and the bore belongs to it."""

from collections.abc import Iterator
from math import hypot

from tailtrue.inspection.activities import BY_INTERFERENCE, RELEASED_BY
from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet, figures_in

_CARRIES, _CATCH = "joint.torque", "joint.catch_torque"
_WORN = "skim.worn_out_at"
_SPARED, _ROUGHED = "joint.spared_depth", "collar.turning_cut"
_AMPLE, _DIG_MM = 1.5, 1.0  # margin from which a joint is ample; how deep a tool digs in when it catches
_BAR = "bar.diameter"
_SLACK_MM = 1e-6
_ROUNDED_MM = 0.001  # what a worn-out diameter loses when it is carried over from an inch micrometer
_WINDOWS = (("bore.head_low", "bore.head_high", "head"), ("bore.tail_low", "bore.tail_high", "tail"))


def _value(sheet: Sheet, fact: str) -> float | None:
    """A length on the sheet, wherever it stands."""
    return next((figure.value for _, figure in sheet.figures if figure.fact == fact and figure.unit == "mm"), None)


def _fixing(sheet: Sheet) -> Iterator[Placed]:
    return (placed for placed in sheet.steps if set(placed.step.activities) & RELEASED_BY.keys())


def holds_a_catch(sheet: Sheet) -> Iterator[Fault]:
    """What the joint carries is told where it is made or proved, beside what a catch asks, and is not less."""
    fixing = {placed.phase.number: placed for placed in _fixing(sheet)}
    for number, placed in fixing.items():
        told = {
            figure.fact: figure.value for other in sheet.steps if other.phase.number == number for figure in other.figures
        }
        if _CARRIES not in told or _CATCH not in told:
            yield Fault(placed.where, "nothing in this phase says what the joint carries and what a tool that catches asks")
        elif not 0 < told[_CATCH] <= told[_CARRIES]:
            yield Fault(
                placed.where,
                f"the joint carries {told[_CARRIES]:g} N mm, a tool that catches turns it with {told[_CATCH]:g} N mm",
            )


def below_the_skim(sheet: Sheet) -> Iterator[Fault]:
    """Screws and pins end below the rim of the worn collar, reckoned anew from their sizes."""
    worn, bar = _value(sheet, _WORN), _value(sheet, _BAR)
    for placed in sheet.steps:
        if not {"set-screw", "pin"} & set(placed.step.activities):
            continue
        sizes = {fact.removeprefix("joint."): value for fact, value in placed.told.items()}
        depth = None if worn is None or bar is None else _depth(sheet, sizes, worn, bar)
        if depth is None:
            yield Fault(
                placed.where, "a screw or pin goes into a collar, and its sizes do not tell how near the tool it comes"
            )
        elif not depth >= sheet.shop.least_depth_mm - _ROUNDED_MM:
            yield Fault(
                placed.where,
                f"in the worn collar the screw or pin ends {depth:.3g} mm below the rim; {sheet.shop.least_depth_mm:g} mm is"
                " the least",
            )


def _depth(sheet: Sheet, sizes: dict[str, float], worn: float, bar: float) -> float | None:
    def all_of(*names: str) -> tuple[float, ...] | None:
        found = [sizes.get(name, _value(sheet, f"joint.{name}")) for name in names]
        return None if None in found else tuple(one for one in found if one is not None)

    if screw := all_of("set_screws.length", "set_screws.major", "set_screws.spot"):
        length, thick, spot = screw
        return worn / 2 - hypot(bar / 2 - spot + length, thick / 2)
    if pin := all_of("radial_pin.length", "radial_pin.diameter"):
        return (worn - hypot(*pin)) / 2
    if clamp := all_of("split_clamp.length", "split_clamp.head"):
        length, head = clamp
        rim = (worn + bar) / 4 + head / 2
        return (worn**2 / 4 - rim**2) ** 0.5 - length / 2 if rim < worn / 2 else 0.0
    return None


def bore_belongs(sheet: Sheet) -> Iterator[Fault]:
    """The bore is smaller than the bar where collars are pressed or shrunk on, larger elsewhere, and inside its window."""
    activities = {activity for placed in _fixing(sheet) for activity in placed.step.activities}
    tight = bool(activities & BY_INTERFERENCE)
    least, largest = sheet.shop.fit_mm
    for where, gaps in bores_told(sheet):
        if gaps is None:
            yield Fault(where, "a bore is named, and the bar was not measured at this end")
            continue
        if tight and not gaps[1] < 0:
            yield Fault(where, f"the bore is larger than the bar by up to {gaps[1]:.4g} mm, and is pressed or shrunk on")
        if not tight and not gaps[0] > 0:
            yield Fault(where, f"the bore may leave {gaps[0]:.4g} mm to a bar on which the collar goes by hand")
        if not (least - _SLACK_MM <= gaps[0] and gaps[1] <= largest + _SLACK_MM):
            yield Fault(
                where,
                f"gaps of {gaps[0]:.4g} to {gaps[1]:.4g} mm do not belong to how it is fixed, {least:g} to {largest:g} mm",
            )


def bores_told(sheet: Sheet) -> Iterator[tuple[str, tuple[float, float] | None]]:
    """Least and largest clearance that the sheet allows, wherever it names a bore or tells how to work one out."""
    added = _value(sheet, "bore.add_least"), _value(sheet, "bore.add_most")
    if added[0] is not None and added[1] is not None:
        yield "bore, to be worked out", (added[0], added[1])
    for low_fact, high_fact, end in _WINDOWS:
        low, high = _value(sheet, low_fact), _value(sheet, high_fact)
        if low is None or high is None:
            continue
        readings = sheet.shop.measured.get(end)
        yield f"bore, {end} end", None if readings is None else (low - max(readings), high - min(readings))


def thin_margin_told(sheet: Sheet) -> Iterator[Fault]:
    """A joint that carries little more than a catch is told; no cut over the collars is deeper than it bears."""
    told = {figure.fact: figure.value for placed in _fixing(sheet) for figure in placed.figures}
    told |= {
        figure.fact: figure.value
        for placed in sheet.steps
        if set(placed.step.activities) & set(RELEASED_BY.values())
        for figure in placed.figures
    }
    carries, catch = told.get(_CARRIES), told.get(_CATCH)
    if carries is None or catch is None or not 0 < catch <= carries or carries >= _AMPLE * catch:
        return
    spared = [figure for found in sheet.procedure.findings for figure in figures_in(found.text) if figure.fact == _SPARED]
    if not spared:
        yield Fault("findings", f"the joint carries {carries / catch:.3g} times a catch, and no finding says so")
    bears = carries / catch / _AMPLE * _DIG_MM
    for figure in spared:
        if not 0 < figure.value <= bears * (1 + 1e-6):
            yield Fault("findings", f"a cut of {figure.value:.3g} mm is allowed, the joint bears {bears:.3g} mm")
    for found in sheet.at_steps:
        if found.figure.fact == _ROUGHED and not found.figure.value <= bears * (1 + 1e-6):
            yield Fault(
                found.placed.where,
                f"the collars are roughed {found.figure.value:.3g} mm deep, the joint bears {bears:.3g} mm",
            )
