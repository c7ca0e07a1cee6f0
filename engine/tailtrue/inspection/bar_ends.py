"""The ends of the bar: centre holes cut up their cone, rims broken, seats kept from the jaws, the far end held."""

import re
from collections.abc import Iterator
from math import pi, radians, sqrt, tan

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet
from tailtrue.inspection.spelt import words_of

_FROM_FACE, _CONE_DEPTH, _LARGE_END = "bar.centre_depth", "bar.centre_cone_depth", "bar.centre_cone"
_HALF_CONE = tan(radians(30))
_CLOSE_MM = 0.02
_BELOW_BODY = 0.95  # of the body: above it the straight part cuts
_LENGTH, _DIAMETER, _STATION, _WIDTH = "bar.length", "bar.diameter", "collar.station", "collar.width"
_STRIPS, _BUSH, _THROUGH, _OUT = "jaw-strips", "spindle-bush", "bar-through-spindle", "bar.short_overhang"
_BUSH_SEEN = re.compile(r"\bbush\b", re.IGNORECASE)
_BUSH_SIZE, _BUSH_WALL = "bar.bush", "limit.bush_wall"
_TAPE = re.compile(r"\btape\b", re.IGNORECASE)
_SAME_MM = 1e-6
_STUBBY = 2.5  # diameters: a shorter piece shears more than it bends
_SAME = 1.001  # the root is written to four digits
_REAR = "from the rear"


def cone_is_cut(sheet: Sheet) -> Iterator[Fault]:
    """A centre hole is told from where the cone begins to cut, to a large end that a drill of the shop makes there."""
    for placed in sheet.steps:
        told = placed.told
        on_press = "centre-on-press" in placed.step.activities
        if not on_press and ("centre-drill" not in placed.step.activities or placed.step.machine != "turning"):
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
        done = set(placed.step.activities)
        if "grip-in-chuck" not in done or not done & {_THROUGH, "steady-rest"}:
            continue
        front = 0.0 if "steady-rest" in done else placed.told.get(_OUT)
        # Where nothing tells how far the bar stands out, the jaws may be anywhere.
        if (front is None or (front < high and low < front + jaws)) and _STRIPS not in placed.step.tools:
            where = "nobody knows where" if front is None else f"from {front:.3g} to {front + jaws:.3g} mm"
            yield Fault(
                placed.where,
                f"the jaws grip {where}, a collar sits from {low:.3g} to {high:.3g} mm, and nothing soft is between",
            )


def far_end_held(sheet: Sheet) -> Iterator[Fault]:
    """A long bar with room round it in the spindle has a bush at its far end, and somebody writes that it holds."""
    sizes, shop = _drawn(sheet), sheet.shop
    if shop.spindle_bore_mm is None or _DIAMETER not in sizes:
        return
    room = shop.spindle_bore_mm - sizes[_DIAMETER]
    shake, most = (shop.limits.get(name, (0.0, ""))[0] for name in ("limit.bore_shake", "limit.overhang_most"))
    for placed, inside in _through(sheet):
        if room <= shake or inside <= most * sizes[_DIAMETER]:
            continue
        what = f"{inside:.3g} mm of the bar turn inside the spindle with {room:.3g} mm of room"
        if _BUSH not in placed.step.tools:
            yield Fault(placed.where, f"{what}, and no bush holds the far end")
        elif not any(_BUSH_SEEN.search(words_of(check.text)) and check.blanks for check in placed.step.checks):
            yield Fault(placed.where, f"{what}, and nobody writes down that the bush holds it")


def standing_out_told(sheet: Sheet) -> Iterator[Fault]:
    """Where the bar goes through the spindle, it is told how far it stands out of what grips it."""
    for placed in sheet.steps:
        if _THROUGH in placed.step.activities and _OUT not in placed.told:
            yield Fault(placed.where, "the bar goes through the spindle and nothing tells how far it stands out in front")


def far_end_slow(sheet: Sheet) -> Iterator[Fault]:
    """No speed whirls the part of the bar inside the spindle, whether or not a bush holds it."""
    sizes, shop = _drawn(sheet), sheet.shop
    if shop.bar_metal is None or _DIAMETER not in sizes:
        return
    share = shop.limits.get("limit.whirl_share", (0.0, ""))[0]
    for held, inside in _through(sheet):
        most = share * _whirls(sizes[_DIAMETER], inside, *shop.bar_metal)
        for placed in sheet.steps:
            if placed.phase is not held.phase or placed.step.machine != "turning":
                continue
            for figure in placed.figures:
                if figure.rounding == "speed" and figure.value > most * _SAME:
                    what = f"{figure.value:g} 1/min ({figure.fact}) with {inside:.3g} mm of the bar free inside the spindle"
                    yield Fault(placed.where, f"{what}; {most:.0f} 1/min is the most")


def _through(sheet: Sheet) -> Iterator[tuple[Placed, float]]:
    """Steps that put the bar through the spindle, and how much is inside: all of it where nothing tells what is not."""
    length = _drawn(sheet).get(_LENGTH)
    for placed in sheet.steps:
        if length is not None and _THROUGH in placed.step.activities:
            yield placed, length - placed.told.get(_OUT, 0.0)


def _whirls(diameter_mm: float, free_mm: float, modulus_mpa: float, density_kg_m3: float) -> float:
    """Lowest speed at which a round bar held at one end bows out: 1.875 is the first root of cos x cosh x = -1."""
    free = max(free_mm, _STUBBY * diameter_mm) / 1000
    per_second = (1.875 / free) ** 2 * diameter_mm / 4000 * sqrt(modulus_mpa * 1e6 / density_kg_m3)
    return per_second * 60 / (2 * pi)


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


def bush_keeps_its_shape(sheet: Sheet) -> Iterator[Fault]:
    """What fills the spindle round a bar is told as tape where a bush would be thinner than its least wall."""
    thinnest = sheet.shop.limits.get(_BUSH_WALL, (0.0, ""))[0]
    size = _drawn(sheet).get(_DIAMETER)
    for placed in sheet.steps if size is not None else ():
        for line, figures in placed.set_there:
            for figure in figures:
                if figure.fact != _BUSH_SIZE or figure not in line.value or size is None:
                    continue
                wall = (figure.value - size) / 2
                if wall < thinnest - _SAME_MM and not _TAPE.search(words_of(line.label)):
                    yield Fault(placed.where, f"a bush with a wall of {wall:.3g} mm, where {thinnest:g} mm is the thinnest")


def _drawn(sheet: Sheet) -> dict[str, float]:
    drawing = sheet.procedure.drawing
    return {} if drawing is None else {figure.fact: figure.value for figure in drawing.dimensions.values()}
