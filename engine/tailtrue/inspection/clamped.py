"""A blank clamped to the faceplate: straps enough, tried again; nothing cut where they stand, nothing past the rim."""

from collections.abc import Iterator, Sequence

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet

_CLAMPS, _BALANCED, _WRENCH = "clamp-to-faceplate", "out-of-balance", "strap-wrench"
_STRAPS, _LEAST = "faceplate.straps", "limit.straps_least"
_MARGIN, _WANTED = "faceplate.margin", "limit.strap_margin"
_TORQUE, _CIRCLE, _PLATE = "faceplate.torque", "faceplate.strap_circle", "crib.faceplate_diameter"
# What the tool does inside the straps; every other cut meets them.
_INSIDE = frozenset({"centre-drill", "drill", "taper-shank-drill", "bore"})


def bore_alone(sheet: Sheet) -> Iterator[Fault]:
    """While straps hold the blank it is spotted, drilled and bored, and nothing else of it is cut."""
    for steps in _clamped(sheet):
        for placed in steps:
            if placed.step.machine == "turning" and not _INSIDE & set(placed.step.activities):
                yield Fault(placed.where, "a cut that is no bore is taken while straps stand on the face and the rim")


def held_as_told(sheet: Sheet) -> Iterator[Fault]:
    """The step that clamps tells straps enough, the torque of their nuts, and that they hold with the margin wanted."""
    for steps in _clamped(sheet):
        first = next(placed for placed in steps if _CLAMPS in placed.step.activities)
        told = first.told
        least, wanted = (sheet.shop.limits.get(name, (0.0, ""))[0] for name in (_LEAST, _WANTED))
        if not told.get(_STRAPS, 0.0) >= least:
            yield Fault(first.where, f"{told.get(_STRAPS, 0.0):g} straps are told, and {least:g} is the least")
        if not told.get(_MARGIN, 0.0) >= wanted:
            yield Fault(first.where, f"the straps hold {told.get(_MARGIN, 0.0):.3g} times the cut; {wanted:g} is the least")
        if not told.get(_TORQUE, 0.0) > 0 or _WRENCH not in first.step.tools:
            yield Fault(first.where, "nothing says how tight the nuts are, or no wrench that shows it is at hand")


def tried_again(sheet: Sheet) -> Iterator[Fault]:
    """The balance is tried before the plate turns under power, and the nuts are tried behind the first cut."""
    for steps in _clamped(sheet):
        balanced, cut = False, False
        for placed in steps:
            done, still = set(placed.step.activities), placed.step.machine == "isolated"
            balanced = balanced or (still and _BALANCED in done)
            if still and _CLAMPS in done and _WRENCH in placed.step.tools and cut:
                break
            if placed.step.machine != "turning":
                continue
            if not balanced:
                yield Fault(placed.where, "the loaded plate turns, and nobody has tried its balance by hand")
            if cut:
                yield Fault(placed.where, "the blank was cut once, and nobody has tried the nuts of its straps again")
                break
            cut = True


def inside_the_plate(sheet: Sheet) -> Iterator[Fault]:
    """Straps and screws swing inside the rim of the plate and clear of the cross slide."""
    for steps in _clamped(sheet):
        told = {fact: value for placed in steps for fact, value in placed.told.items()}
        plates = [placed.told[_PLATE] for placed in sheet.steps if _PLATE in placed.told]
        first, circle = steps[0], told.get(_CIRCLE, 0.0)
        if not 0 < circle <= min((*plates, sheet.shop.swing_over_cross_slide_mm)):
            yield Fault(first.where, f"straps swing {circle:g} mm: past the rim of the plate, or into the cross slide")


def _clamped(sheet: Sheet) -> Iterator[Sequence[Placed]]:
    """The steps of each phase in which a blank is clamped to the faceplate."""
    for phase in sheet.procedure.phases:
        steps = [placed for placed in sheet.steps if placed.phase is phase]
        if any(_CLAMPS in placed.step.activities for placed in steps):
            yield steps
