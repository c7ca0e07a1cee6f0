"""A blank in a collet: how deep it is gripped, and whether it fills enough of the collet to be held there."""

from tailtrue.calc.steps import step_down
from tailtrue.computed.registry import Limited, computed
from tailtrue.computed.stepping import least_of
from tailtrue.tables import Table


@computed(
    "collar.collet_grip",
    label="grip on a blank in the collet",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("crib.collet_length?", "collar.width", "limit.face_clearance", "lathe.size_step"),
    how="what leaves the finished face clear of the collet, or the collet itself; down to a whole step",
)
def collet_grip(length: float | None, width: float, clearance: float, step: float) -> Limited:
    if length is None:
        return Limited(None, "nobody said how long the collet grips")
    deepest, by = least_of((length, "the collet"), (width - clearance, "the face, which must stand clear of it"))
    return Limited(max(0.0, step_down(deepest, step)), by)


@computed(
    "collar.collet_serves",
    label="the collet holds the blanks",
    kind="yes-no",
    needs=(
        "crib.collet_from?", "crib.collet_to?", "collar.gripped_diameter", "crib.collet_hole?", "crib.collet_length?",
        "collar.collet_grip?", "limit.collet_fill", "bar.diameter", "limit.face_clearance", "collar.raw", "crib.drive?",
    ),
    tables=("machines/drives",),
    how="it closes on the blank and is not the one for the bar, its chuck lets drill and boring bar through, the blank "
    "fills enough of its length, and no chuck is wanted on the spindle to drive the dog",
)  # fmt: skip
def collet_serves(
    low: float | None, high: float | None, blank: float, hole: float | None, length: float | None, grip: float | None,
    fill: float, bar: float, clearance: float, raw: bool, drive: str | None, drives: Table,
) -> bool:  # fmt: skip
    if low is None or high is None or hole is None or length is None or grip is None or raw:
        return False
    if drive is not None and drives.one(drive=drive).yes("chuck_stays_on"):
        return False
    closes, of_bar = low <= blank <= high, low <= bar <= high
    return closes and not of_bar and hole >= bar + clearance and grip >= fill * length
