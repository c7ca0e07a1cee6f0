"""What is bonded: both metals count in its strength and in its wait, reckoned anew from the tables and the files."""

from collections.abc import Iterator
from math import pi

from tailtrue.inspection.joints import bores_told
from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Placed, Sheet

_CARRIES, _WAIT = "joint.torque", "joint.cure_wait"
_BAR, _WIDTH = "bar.diameter", "collar.width"
_ROUNDED = 1e-6


def both_metals_count(sheet: Sheet) -> Iterator[Fault]:
    """A bond carries no more than its weaker metal lets it, waits as long as the slower asks, and has what starts it."""
    for placed in sheet.steps:
        activities = set(placed.step.activities)
        if sheet.shop.bond is None or sheet.shop.bar_exists:
            return
        if "bond" in activities:
            yield from _strength(sheet, placed)
        if "cure-wait" in activities:
            yield from _wait(sheet, placed)


def _strength(sheet: Sheet, placed: Placed) -> Iterator[Fault]:
    bond = sheet.shop.bond
    if bond is None or _CARRIES not in placed.told:
        return
    if not bond.starts:
        yield Fault(placed.where, "neither metal starts the cure of the bond, and the shop has no activator")
    sizes = {figure.fact: figure.value for _, figure in sheet.figures if figure.fact in (_BAR, _WIDTH)}
    if len(sizes) < 2 or not min(sizes.values()) > 0:
        return  # the drawing is at fault, and another rule says so
    widest = max((gaps[1] for _, gaps in bores_told(sheet) if gaps is not None), default=0.0)
    share = next((share for up_to, share in bond.gaps if widest <= up_to + _ROUNDED), 0.0)
    most = bond.mpa * share * pi * sizes[_BAR] ** 2 * sizes[_WIDTH] / 2
    if not 0 < placed.told[_CARRIES] <= most * (1 + _ROUNDED):
        yield Fault(
            placed.where, f"the bond is said to carry {placed.told[_CARRIES]:g} N mm; between these metals it is {most:.0f}"
        )


def _wait(sheet: Sheet, placed: Placed) -> Iterator[Fault]:
    bond = sheet.shop.bond
    told = placed.told.get(_WAIT)
    if bond is not None and (told is None or not told >= bond.wait_s * (1 - _ROUNDED)):
        hours = "no time" if told is None else f"{told / 3600:g} h"
        yield Fault(placed.where, f"the bond is left {hours}; between these metals it cures in {bond.wait_s / 3600:g} h")
