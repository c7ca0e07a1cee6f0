"""The ends of the bar: centre holes cut up their cone, rims broken, seats kept from the jaws, the far end held."""

from collections.abc import Iterator
from math import radians, tan

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet, figures_in

_FROM_FACE, _CONE_DEPTH, _LARGE_END = "bar.centre_depth", "bar.centre_cone_depth", "bar.centre_cone"
_HALF_CONE = tan(radians(30))
_CLOSE_MM = 0.02
_BELOW_BODY = 0.95  # of the body: above it the straight part cuts
_LENGTH, _DIAMETER, _STATION, _WIDTH = "bar.length", "bar.diameter", "collar.station", "collar.width"
_STRIPS, _BUSH = "jaw-strips", "spindle-bush"
_REAR = "from the rear"


def cone_is_cut(sheet: Sheet) -> Iterator[Fault]:
    """A centre hole is told from where the cone begins to cut, to a large end that a drill of the shop makes there."""
    for placed in sheet.steps:
        told = _told(placed)
        if "centre-drill" not in placed.step.activities or placed.step.machine != "turning":
            continue
        if _FROM_FACE in told:
            yield Fault(placed.where, "a centre hole is counted from the face; pilots differ in length")
        if "cut-collar" in placed.step.activities:
            continue
        if _CONE_DEPTH not in told or _LARGE_END not in told:
            yield Fault(placed.where, "depth of the cone and its large end are not both told")
            continue
        pilot = told[_LARGE_END] - 2 * told[_CONE_DEPTH] * _HALF_CONE
        drills = sheet.shop.centre_drills
        if not any(abs(pilot - one) < _CLOSE_MM and told[_LARGE_END] < _BELOW_BODY * body for one, body in drills):
            what = f"a cone {told[_CONE_DEPTH]:.3g} mm deep and {told[_LARGE_END]:.3g} mm across"
            yield Fault(placed.where, f"no centre drill of the shop cuts {what}")


def rims_broken(sheet: Sheet) -> Iterator[Fault]:
    """A faced end of the bar has its rim broken by file or tool, power off, before the phase lets it go."""
    for phase in sheet.procedure.phases:
        faced = [one for one in phase.steps if "facing" in one.activities and one.machine == "turning"]
        faced = [one for one in faced if not {"cut-collar", "face-on-stub"} & set(one.activities)]
        after = phase.steps[phase.steps.index(faced[-1]) + 1 :] if faced else ()
        if faced and not any(
            "deburr" in one.activities and "file" in one.tools and one.machine == "isolated" for one in after
        ):
            yield Fault(f"step {faced[-1].number}", "the end is faced and its rim is not broken after that")


def seats_kept(sheet: Sheet) -> Iterator[Fault]:
    """Jaws that grip the bar where a collar will sit have soft strips under them."""
    sizes = _drawn(sheet)
    if not {_STATION, _WIDTH} <= sizes.keys() or sheet.shop.piece is None:
        return
    low, high = (sizes[_STATION] + side * sizes[_WIDTH] / 2 for side in (-1, 1))
    jaws = sheet.shop.piece.grip_mm
    for placed in sheet.steps:
        out = _told(placed).get("bar.short_overhang")
        done = set(placed.step.activities)
        if out is None or "grip-in-chuck" not in done or not done & {"bar-through-spindle", "steady-rest"}:
            continue
        front = 0.0 if "steady-rest" in done else out
        if front < high and low < front + jaws and _STRIPS not in placed.step.tools:
            what = f"the jaws grip from {front:.3g} to {front + jaws:.3g} mm, a collar sits from {low:.3g} to {high:.3g} mm"
            yield Fault(placed.where, f"{what}, and nothing soft is between")


def far_end_held(sheet: Sheet) -> Iterator[Fault]:
    """A long bar with room round it in the spindle has a bush at its far end."""
    sizes, shop = _drawn(sheet), sheet.shop
    if shop.spindle_bore_mm is None or _DIAMETER not in sizes or _LENGTH not in sizes:
        return
    room = shop.spindle_bore_mm - sizes[_DIAMETER]
    shake, most = (shop.limits.get(name, (0.0, ""))[0] for name in ("limit.bore_shake", "limit.overhang_most"))
    for placed in sheet.steps:
        out = _told(placed).get("bar.short_overhang")
        if out is None or "bar-through-spindle" not in placed.step.activities:
            continue
        inside = sizes[_LENGTH] - out
        if room > shake and inside > most * sizes[_DIAMETER] and _BUSH not in placed.step.tools:
            what = f"{inside:.3g} mm of the bar turn inside the spindle with {room:.3g} mm of room"
            yield Fault(placed.where, f"{what}, and no bush holds the far end")


def bush_passes(sheet: Sheet) -> Iterator[Fault]:
    """A bush that fills the spindle and is thicker than the hole of the chuck is brought in from the rear."""
    shop = sheet.shop
    for placed in sheet.steps:
        if "bar-through-spindle" not in placed.step.activities or _BUSH not in placed.step.tools:
            continue
        rear = any(line.value == (_REAR,) for line in placed.step.settings)
        if shop.spindle_bore_mm is not None and shop.spindle_bore_mm > shop.bush_passes_mm and not rear:
            what = f"a bush of {shop.spindle_bore_mm:.3g} mm does not pass a hole of {shop.bush_passes_mm:.3g} mm"
            yield Fault(placed.where, f"{what}, and the bar goes in from the front")


def _told(placed: Placed) -> dict[str, float]:
    return {figure.fact: figure.value for figure in figures_in(placed.step)}


def _drawn(sheet: Sheet) -> dict[str, float]:
    drawing = sheet.procedure.drawing
    return {} if drawing is None else {figure.fact: figure.value for figure in drawing.dimensions.values()}
