"""What the cross slide cannot set: a bore finer than its dial, and depths that the top slide sets."""

from collections.abc import Iterator
from math import isfinite, radians, sin

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import BY_TOP_SLIDE, DIVISIONS, words_of
from tailtrue.parts import Figure

_SAME = 1e-6
_NEAR = 0.01  # a scale of degrees is set to a quarter of one
_QUARTERS = 4  # in a degree
_OFF = 0.15  # by how much a proof of the angle may let it be off
# The two sizes of a bore, end by end; until the bar is measured, what is added to it.
_ENDS = (("bore.head_low", "bore.head_high"), ("bore.tail_low", "bore.tail_high"), ("bore.add_least", "bore.add_most"))


def bore_can_be_set(sheet: Sheet) -> Iterator[Fault]:
    """Where a division of the dial is wider than the room of the bore, the sheet tells a setting that is not."""
    shop = sheet.shop
    dial = 2 * (shop.dial_division_mm if shop.dial_reads == "radius" else shop.dial_division_mm / 2)
    for _, steps in sheet.by_phase:
        boring = [one for one in steps if one.step.machine == "turning" and "bore" in one.step.activities]
        told = {fact: value for one in steps for fact, value in one.told.items()}
        rooms = [told[high] - told[low] for low, high in _ENDS if low in told and high in told]
        if not boring or not rooms or dial <= min(rooms) + _SAME:
            continue
        where, room = boring[-1].where, min(rooms)
        step = told.get("bore.fine_step")
        if step is None:
            what = f"one division of the dial opens the bore by {dial:g} mm, its room is {room:g} mm"
            yield Fault(where, f"{what}, and no finer setting is told")
        elif step > room + _SAME:
            yield Fault(where, f"the last cut is set in steps of {step:g} mm, the room of the bore is {room:g} mm")
        elif not any(abs(step - one) <= _NEAR * one for one in steps_of(sheet, told.get("bore.slide_angle"), dial)):
            yield Fault(where, f"nothing in the shop sets the last cut in steps of {step:g} mm")


def steps_of(sheet: Sheet, angle: float | None, dial: float) -> Iterator[float]:
    """What one step opens a bore by: the slide that is told to be set over, or else an indicator or half a division."""
    if angle is not None:
        if sheet.shop.top_slide_division_mm is not None and isfinite(angle):
            yield 2 * sheet.shop.top_slide_division_mm * sin(radians(angle))
        return
    yield dial / 2
    if sheet.shop.indicator_division_mm is not None:
        yield 2 * sheet.shop.indicator_division_mm


def angle_can_be_set(sheet: Sheet) -> Iterator[Fault]:
    """The angle of the top slide is one that its scale shows, and a reading across proves it."""
    for placed in sheet.steps:
        told = placed.told
        angle = told.get("bore.slide_angle")
        if angle is None:
            continue
        marks = angle * _QUARTERS
        if not isfinite(marks) or marks < 1 or abs(marks - round(marks)) > _SAME:
            yield Fault(placed.where, f"no scale of degrees sets the top slide to {angle:g} degrees")
            continue
        if sheet.shop.indicator_division_mm is None:
            continue
        proof = [told.get(f"bore.proof_{part}") for part in ("wind", "least", "most")]
        if None in proof:
            yield Fault(placed.where, "the top slide is set over, and no reading across proves its angle")
            continue
        wind, least, most = (value for value in proof if value is not None)
        across = wind * sin(radians(angle))
        if not across * (1 - _OFF) <= least < across < most <= across * (1 + _OFF):
            yield Fault(
                placed.where, f"the slide moves {across:.3f} mm across, the proof asks for {least:g} mm to {most:g} mm"
            )


def facing_on_its_own_dial(sheet: Sheet) -> Iterator[Fault]:
    """A depth by the top slide is told in divisions of its own dial, or in none where nobody gave that dial."""
    division = sheet.shop.top_slide_division_mm
    for placed in sheet.steps:
        for line in placed.step.settings:
            if not BY_TOP_SLIDE.search(words_of(line.label)):
                continue
            counted = [
                one.value for one in line.reason if isinstance(one, Figure) and one.unit == "1" and isfinite(one.value)
            ]
            said = any(isinstance(piece, str) and DIVISIONS.search(piece) for piece in line.reason)
            for depth in (piece for piece in line.value if isinstance(piece, Figure)):
                if said and division is None:
                    yield Fault(placed.where, f"{depth.fact} is told in divisions of a dial that nobody gave")
                elif division is not None and not any(
                    round(count) >= 1 and abs(count * division - depth.value) <= _SAME for count in counted
                ):
                    what = f"{depth.value:g} mm ({depth.fact}) is not told in divisions of the top-slide dial"
                    yield Fault(placed.where, f"{what}, {division:g} mm each")
