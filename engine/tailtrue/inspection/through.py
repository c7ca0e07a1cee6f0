"""How far drill and boring bar are sent through a blank: its width as it is then, not as it was sawn or cast."""

from collections.abc import Iterator
from math import radians, tan

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet

_POINT = tan(radians(118 / 2))  # half the angle of a common drill point
_TRAVEL, _DRILL, _OVERHANG = "hole.travel_needed", "hole.ladder.size", "bore.overhang"
_WIDTH, _THROUGH = "collar.width", "bore.through_width"
_CLOSE_MM = 0.1
_EXACT_MM = 0.001
_STEP_MM = 0.06  # of a top slide whose dial was not given
_CUTS, _LEFT, _LAST = "collar.second_rough_cuts", "collar.second_stock", "collar.facing.depth"
_DEEP, _MOST_CUTS = "collar.second_depth", "limit.face_cuts"
_FIRST_CUTS, _FIRST, _OFF = "collar.first_rough_cuts", "collar.first_depth", "collar.facing_stock"
_CIRCLE, _OUT = "collar.corner_diameter", "collar.run_out"
_BAND, _PASSES, _BLANK_SIZE = "collar.band.depth", "collar.band_passes", "collar.blank_diameter"
_STANDS, _AGAIN, _GRIP = "collar.band_out", "collar.again_out", "collar.band_grip"
_STRAPS = "crib.strap_height"  # in front of a blank that is clamped to the faceplate
_PAST_DRILL, _PAST_BAR = "limit.break_through", "limit.boring_clearance"


def sent_through(sheet: Sheet) -> Iterator[Fault]:
    """Drill and boring bar go through the blank as wide as it was faced before, and no farther than their limit past it."""
    limits = sheet.shop.limits
    number, faced = "", None
    for placed in sheet.steps:
        if placed.phase.number != number:
            number, faced = placed.phase.number, None
        told = [(figure.fact, figure.value) for figure in placed.figures]
        sizes = dict(told)
        if "facing" in placed.step.activities:
            faced = sizes.get(_WIDTH, faced)
        width = sizes.get(_THROUGH) if faced is None else faced
        if _THROUGH in sizes and faced is not None and abs(sizes[_THROUGH] - faced) > _CLOSE_MM:
            yield Fault(placed.where, f"a blank faced to {faced:.4g} mm is reckoned {sizes[_THROUGH]:.4g} mm wide")
        drills = [value for fact, value in told if fact == _DRILL]
        if _TRAVEL in sizes and drills and width is not None:
            wanted = width + max(drills) / 2 / _POINT + limits[_PAST_DRILL][0]
            if abs(sizes[_TRAVEL] - wanted) > _CLOSE_MM:
                what = f"the last drill is sent {sizes[_TRAVEL]:.4g} mm, and {wanted:.4g} mm takes it through"
                yield Fault(placed.where, what)
        if _OVERHANG in sizes and _THROUGH in sizes and width is not None:
            past = sizes[_OVERHANG] - width - sizes.get(_STRAPS, 0.0)
            if not 0 < past <= limits[_PAST_BAR][0] + _CLOSE_MM:
                what = f"the boring bar stands out {sizes[_OVERHANG]:.4g} mm for a blank {width:.4g} mm wide"
                yield Fault(placed.where, what)


def band_reached(sheet: Sheet) -> Iterator[Fault]:
    """The first cut round a raw blank tells as many passes as its highest place takes at the depth that is told."""
    cuts: dict[str, list[Placed]] = {}
    for placed in sheet.steps:
        if "first-cut-raw" in placed.step.activities:
            cuts.setdefault(placed.phase.number, []).append(placed)
    for raw in cuts.values():
        # A pass that only tries the grip comes before the step that tells how many there are.
        placed = next((one for one in raw if _PASSES in one.told), raw[0])
        told = placed.told
        if not told.keys() >= {_BAND, _PASSES, _BLANK_SIZE, _CIRCLE, _OUT}:
            yield Fault(placed.where, "passes, depth, size, circle and run-out of a raw blank are not all told")
            continue
        most = (told[_CIRCLE] + told[_OUT] - told[_BLANK_SIZE]) / 2
        if not told[_PASSES] * told[_BAND] >= most - _CLOSE_MM:
            what = f"{told[_PASSES]:g} passes of {told[_BAND]:.3g} mm do not take the {most:.3g} mm at the highest place"
            yield Fault(placed.where, what)


def faced_to_width(sheet: Sheet) -> Iterator[Fault]:
    """Where roughing cuts and a light one bring a collar to width, so many are told as take off what is told to come off."""
    most = sheet.shop.limits.get(_MOST_CUTS, (0.0, ""))[0]
    for placed in sheet.steps:
        told = placed.told
        if "facing" not in placed.step.activities or _WIDTH not in told or _LAST not in told:
            continue
        if _CUTS not in told:
            left = told.get(_LEFT, 0.0) - told[_LAST]
            if left > _CLOSE_MM or _DEEP in told:
                yield Fault(placed.where, "a collar is faced to width, and nothing says in how many cuts")
            continue
        due = told.get(_LEFT, 0.0) - told[_LAST]
        yield from _shared_out(sheet, placed, told[_CUTS], told.get(_DEEP, 0.0), due)
        if told[_CUTS] + 1 > most:
            yield Fault(
                placed.where, f"{told[_CUTS]:g} cuts over one face, where {most:g} are the most: saw it thinner first"
            )


def first_side_faced(sheet: Sheet) -> Iterator[Fault]:
    """The first side of a blank is told as many roughing cuts as take off what is to come off, less the light one."""
    for placed in sheet.steps:
        told = placed.told
        if _FIRST_CUTS in told:
            due = told.get(_OFF, 0.0) - told.get(_LAST, 0.0)
            yield from _shared_out(sheet, placed, told[_FIRST_CUTS], told.get(_FIRST, 0.0), due)


def _shared_out(sheet: Sheet, placed: Placed, cuts: float, deep: float, due: float) -> Iterator[Fault]:
    """So many cuts of such a depth leave no more than a step of the top slide each, and take no more than there is.

    No cut is finer than one step, so one of just a step may take a part of it too much.
    """
    step = sheet.shop.top_slide_division_mm or _STEP_MM
    left = due - cuts * deep
    over = step if deep <= step + _EXACT_MM else 0.0
    if not -over - _EXACT_MM <= left <= cuts * step + _EXACT_MM:
        what = f"{cuts:g} roughing cuts of {deep:.3g} mm are told for {due:.3g} mm, before a light one"
        yield Fault(placed.where, what)


def still_gripped(sheet: Sheet) -> Iterator[Fault]:
    """A blank that was faced and turned round stands out less, so that the jaws hold as much of it as is told."""
    for placed in sheet.steps:
        told = placed.told
        if "grip-on-band" not in placed.step.activities or _STANDS in told:
            continue
        if not told.keys() >= {_AGAIN, _GRIP}:
            yield Fault(placed.where, "nothing says how far a blank that was turned round stands out, and what grip is left")
            continue
        phase = [one.told for one in sheet.steps if one.phase.number == placed.phase.number]
        for sizes in (one for one in phase if one.keys() >= {_WIDTH, _LEFT}):
            left = sizes[_WIDTH] + sizes[_LEFT] - told[_AGAIN]
            if abs(left - told[_GRIP]) > _CLOSE_MM:
                yield Fault(placed.where, f"{left:.3g} mm are left in the jaws, and {told[_GRIP]:.3g} mm of grip are told")
