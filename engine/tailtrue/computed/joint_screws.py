"""Set screws: which of the crib hold a catch and end below the last surface, and how tight they are drawn."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from tailtrue.calc.screws import screw_holding, screws_hold
from tailtrue.computed.joint_placing import depth_now, lightest_that_holds, of_record, place
from tailtrue.computed.joint_screws_tried import SIZES, TABLES, Into, Tried, nearest_of
from tailtrue.computed.registry import Limited, computed
from tailtrue.quantities import read_quantity
from tailtrue.tables import Row, Table

Record = Mapping[str, Any]
_M = "set_screws"


def _angles(pattern: Row) -> list[float]:
    cells = (pattern.text(column) for column in ("first_deg", "second_deg", "third_deg"))
    return [float(cell) for cell in cells if cell]


@computed(
    f"joint.{_M}.found",
    label="set screws chosen",
    kind="record",
    needs=("crib.set_screws?", "crib.taps?", *SIZES, "bar.material", "joint.catch_torque", "limit.joint_margin"),
    tables=("joints/set_screws", "joints/screw_patterns", *TABLES),
    how="the fewest and thinnest that hold a catch by the low chart, end below the last surface and leave a track",
)  # fmt: skip
def found(
    owned: Sequence[Record] | None, taps: Sequence[str] | None, bar: float, width: float, worn: float, material: str,
    bar_metal: str, catch: float, margin: float, threads: Table, patterns: Table, factors: Table, soft: Table,
    placing: Table, materials: Table, shares: Table,
) -> Limited:  # fmt: skip
    if not owned or not taps:
        return Limited(None, "no set screws with their taps are in the crib")
    into = Into(bar, width, worn, material, factors, soft, placing, materials, shares)
    tried = into.each(owned, taps, threads)
    hard = materials.one(material=bar_metal).number("hardness_high_hb") > factors.value("hard-bar-over")
    shares_left = [into.share, factors.value("hard-bar")] if hard else [into.share]
    fitting = [held for one in tried if not one.fails for held in _held(one, into, shares_left, patterns)]
    if not fitting:
        near = nearest_of(tried)
        return Limited(None, near.why if near else "no set screw is in the crib")
    return lightest_that_holds(fitting, margin * catch)


def _held(tried: Tried, into: Into, shares_left: Sequence[float], patterns: Table) -> Iterator[dict[str, Any]]:
    row, factors = tried.row, into.factors
    for pattern in patterns:
        angles = _angles(pattern)
        held = screws_hold(_holding(row, factors), angles, shares_left, factors.value("safety-low-chart"), into.bar)
        patterns.take(pattern)
        yield {
            "thread": tried.one["thread"], "major": tried.major, "length": tried.one["length"], "count": len(angles),
            "pattern": pattern.text("designation"), "torque": held.torque_nmm, "tighten": tried.tighten,
            "depth": tried.depth, "spot": into.spot, "drill": row.number("tap_drill_mm"),
            "key": (read_quantity(row.text("label"), "mm"), row.text("label")),
        }  # fmt: skip


def _holding(row: Row, factors: Table) -> float:
    """What one screw holds along the bar: by the low chart, or where it lacks the thread by the rule that follows it."""
    if row.text("holding_low_n"):
        return row.number("holding_low_n")
    return screw_holding(row.number("torque_nmm"), row.number("major_mm"), factors.value("holding-ratio-low"))


of_record(_M, "thread", "thread", "thread of the set screws", kind="text")
of_record(_M, "pattern", "pattern", "set screws in each collar", kind="text")
of_record(_M, "count", "count", "number of set screws in each collar", kind="count", rounding="count")
of_record(_M, "key", "key", "key for the set screws", unit="mm", rounding="tool")
of_record(_M, "major", "major", "outside diameter of the set screws", unit="mm", rounding="size")
of_record(_M, "length", "length", "length of the set screws", unit="mm", rounding="size")
of_record(_M, "torque", "torque", "torque the set screws of one collar hold", unit="N mm", rounding="torque", bound="most")
of_record(_M, "tighten", "tighten", "tightening torque of a set screw", unit="N mm", rounding="torque")
of_record(_M, "depth", "depth", "set screw below the surface when the collars are worn out", unit="mm", rounding="length",
          bound="most")  # fmt: skip
of_record(_M, "spot", "spot", "depth of the spot in the bar", unit="mm", rounding="size")
of_record(_M, "tapping_size", "drill", "tapping size for the set screws", unit="mm", rounding="size")
place(_M, "major", "the set screws")
depth_now(_M, "set screws")
