"""Work held otherwise than in hard jaws: jaws bored before they hold, a stub turned where it sits, sizes within range."""

from collections.abc import Iterator, Mapping

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet
from tailtrue.parts import Figure

_STUB_CUT = "limit.stub_cut"
_GRIP, _OUT, _GRIPPED = "collar.grip", "collar.held_out", "collar.gripped_diameter"
_DRILL, _HOLE = "hole.ladder.size", "crib.collet_hole"
# What grips, by the activity that uses it, and the fact of what it grips.
_SIZED: Mapping[str, tuple[str, str]] = {
    "bore-jaws": ("soft jaws", "collar.blank_diameter"),
    "turn-stub": ("stub mandrel", "bore.nominal"),
}
_TAKES_OUT = {"grip-in-chuck", "chuck-change", "jaw-change"}


def bored_before_held(sheet: Sheet) -> Iterator[Fault]:
    """Soft jaws are bored on a plug, tried at a hold, and the plug is out before they hold work or the spindle turns."""
    plugged = bored = released = False
    for placed in sheet.worked:
        done = set(placed.step.activities)
        turning = placed.step.machine == "turning"
        if "jaw-change" in done:
            bored = released = False
        if "plug-out" in done:
            plugged, released = False, bored and placed.step.hold is not None
        elif "plug-in-jaws" in done:
            plugged = True
        if turning and "bore-jaws" in done:
            bored, released = True, False
            if not plugged:
                yield Fault(placed.where, "the jaws are bored and no step has closed them on a plug")
        elif turning and plugged:
            yield Fault(placed.where, "the spindle turns and no step has taken the plug out of the jaws")
        if "grip-in-soft-jaws" in done and not released:
            yield Fault(placed.where, "soft jaws hold work before a hold at which they were found bored and the plug out")


def on_a_turned_stub(sheet: Sheet) -> Iterator[Fault]:
    """A collar goes on a stub that was turned where it sits and not taken out since; what is faced on it was put on it."""
    turned = mounted = False
    for placed in sheet.worked:
        done = set(placed.step.activities)
        if "turn-stub" in done and placed.step.machine == "turning":
            turned, mounted = True, False
        elif done & _TAKES_OUT:
            turned = mounted = False
        if "mount-on-stub" in done:
            mounted = turned
            if not turned:
                yield Fault(placed.where, "the collar goes on a stub that was not turned, or was taken out since")
        if "face-on-stub" in done and not mounted:
            yield Fault(placed.where, "a collar is faced on the stub and no step has put it there")


def light_on_the_stub(sheet: Sheet) -> Iterator[Fault]:
    """What is held by its bore alone is cut no deeper than friction holds."""
    for placed in sheet.steps:
        if "face-on-stub" not in placed.step.activities:
            continue
        most = sheet.shop.limits.get(_STUB_CUT, (0.0, ""))[0]
        depths = [one for one in placed.figures if one.rounding == "depth" and one.unit == "mm"]
        if not depths:
            yield Fault(placed.where, "nothing says how deep a cut may be on the stub")
        for figure in depths:
            if not 0 < figure.value <= most:
                yield Fault(placed.where, f"a cut of {figure.value:g} mm on the stub; {most:g} mm is the most")


def in_their_range(sheet: Sheet) -> Iterator[Fault]:
    """Collet, soft jaws and stub are used within the sizes that the user's files give for them."""
    for placed in sheet.steps:
        if "grip-in-collet" in placed.step.activities:
            yield from _outside(sheet, placed, "collet", _blank_sizes(sheet) if _of_blank(placed) else _bar_sizes(sheet))
        for activity in set(placed.step.activities) & _SIZED.keys():
            what, fact = _SIZED[activity]
            sizes = [figure.value for figure in placed.figures if figure.fact == fact]
            if placed.step.machine == "turning":
                yield from _outside(sheet, placed, what, sizes)


def collet_filled(sheet: Sheet) -> Iterator[Fault]:
    """A blank in a collet fills most of it, stands out of it, and drill and boring bar find a hole behind it."""
    least, clear = (sheet.shop.limits.get(name, (0.0, ""))[0] for name in ("limit.collet_fill", "limit.face_clearance"))
    shorts = [placed for placed in sheet.steps if _of_blank(placed)]
    for placed in shorts:
        grip = placed.told.get(_GRIP, 0.0)
        if not least * sheet.shop.collet_mm <= grip <= sheet.shop.collet_mm or not grip:
            what = f"{grip:.3g} mm of the blank in a collet of {sheet.shop.collet_mm:.3g} mm"
            yield Fault(placed.where, f"{what}; {least * sheet.shop.collet_mm:.3g} mm is the least")
        if "grip-in-collet" not in placed.step.activities or not {"collet", "collet-key"} <= set(placed.step.tools):
            yield Fault(placed.where, "a blank sits in the collet and no step closes it with its key")
    if shorts and shorts[0].told.get(_OUT, 0.0) <= clear:
        yield Fault(shorts[0].where, f"the face stands no more than {clear:g} mm out of the collet")
    holes = [placed for placed in sheet.steps if "drill" in placed.step.activities] if shorts else []
    for placed in holes:
        drills = [figure.value for figure in placed.figures if figure.fact == _DRILL]
        if drills and placed.told.get(_HOLE, 0.0) <= max(drills):
            yield Fault(placed.where, "the last drill comes out behind the blank, and no hole of the collet chuck takes it")


def _of_blank(placed: Placed) -> bool:
    return "short-in-collet" in placed.step.activities


def _blank_sizes(sheet: Sheet) -> list[float]:
    return [figure.value for placed in sheet.steps if _of_blank(placed) for figure in placed.figures
            if figure.fact == _GRIPPED]  # fmt: skip


def _bar_sizes(sheet: Sheet) -> list[float]:
    """The bar as it was measured; its nominal diameter until it has been."""
    measured = [reading for readings in sheet.shop.measured.values() for reading in readings]
    drawing = sheet.procedure.drawing
    nominal: Figure | None = drawing.dimensions.get("bar.diameter") if drawing is not None else None
    return measured or ([nominal.value] if nominal is not None else [])


def _outside(sheet: Sheet, placed: Placed, what: str, sizes: list[float]) -> Iterator[Fault]:
    if what not in sheet.shop.takes:
        yield Fault(placed.where, f"the {what} is used and the crib has none")
        return
    low, high = sheet.shop.takes[what]
    if not sizes:
        yield Fault(placed.where, f"nothing says for which size the {what} is used")
    for size in sizes:
        if not low <= size <= high:
            yield Fault(placed.where, f"the {what} takes {low:g} to {high:g} mm, and {size:g} mm is asked of it")
