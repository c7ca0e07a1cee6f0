"""Corners of a square slug: the circle that it is told to swing is that of the square, or of what the saw left of it."""

import re
from collections.abc import Iterator
from math import hypot, sqrt

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of

_FLATS, _CIRCLE, _SQUARE = "collar.stock_diameter", "collar.corner_diameter", "collar.square_circle"
_LEG, _OUTSIDE = "collar.corner_leg", "limit.saw_outside"
_CLOSE_MM = 0.1
_SAWS = re.compile(r"\bsaw\b[^.]*\bcorner", re.IGNORECASE)


def swings_as_sawn(sheet: Sheet) -> Iterator[Fault]:
    """A slug whose corners are not all there was sawn before it is gripped, and swings no less than that leaves."""
    flats, left, sawn = None, None, False
    for placed in sheet.steps:
        told = placed.told
        if _SQUARE in told and _FLATS in told:
            flats, left, sawn = told[_FLATS], told[_FLATS] * sqrt(2), False
        if flats is None or left is None:
            continue
        if _LEG in told:
            half, words = flats / 2, " ".join(words_of(text) for text in placed.step.text)
            sawn = placed.step.machine == "isolated" and _SAWS.search(words) is not None
            # Each cut may run outside its line, and so comes nearer to the corner along both edges.
            kept = min(half, half - told[_LEG] + sheet.shop.limits.get(_OUTSIDE, (0.0, ""))[0] * sqrt(2))
            left = 2 * hypot(half, kept) if sawn else left
        if _CIRCLE in told and told[_CIRCLE] < left - _CLOSE_MM:
            how = "with its corners sawn off" if sawn else "with its corners on, for no line saws them off"
            yield Fault(
                placed.where, f"a slug of {flats:.4g} mm swings {left:.4g} mm {how}, and {told[_CIRCLE]:.4g} mm is told"
            )
