"""Set screws: which of the crib hold a catch and end below the last surface, and how tight they are drawn."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from tailtrue.calc.lengths import length_of_diameters
from tailtrue.calc.screws import screw_depth, screw_holding, screw_preload, screws_hold, thread_shear
from tailtrue.calc.validity import OutOfRange
from tailtrue.computed.joint_placing import depth_now, lightest_that_holds, of_record, place, thread_share, track_left
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
    needs=(
        "crib.set_screws?", "crib.taps?", "bar.diameter", "collar.width", "skim.worn_out_at", "collar.material",
        "bar.material", "joint.catch_torque", "limit.joint_margin",
    ),
    tables=(
        "joints/set_screws", "joints/set_screw_factors", "joints/screw_patterns", "joints/soft_threads", "joints/placing",
        "materials/materials", "joints/interference",
    ),
    how="the fewest and thinnest that hold a catch by the low chart, end below the last surface and leave a track",
)  # fmt: skip
def found(
    owned: Sequence[Record] | None, taps: Sequence[str] | None, bar: float, width: float, worn: float, material: str,
    bar_metal: str, catch: float, margin: float, threads: Table, factors: Table, patterns: Table, soft: Table,
    placing: Table, materials: Table, shares: Table,
) -> Limited:  # fmt: skip
    if not owned or not taps:
        return Limited(None, "no set screws with their taps are in the crib")
    metal = materials.one(material=material)
    bears = metal.number("yield_mpa") * placing.value("shear-share") * shares.value("elastic-share")
    share = thread_share(material, soft)
    hard = materials.one(material=bar_metal).number("hardness_high_hb") > factors.value("hard-bar-over")
    shares_left = [share, factors.value("hard-bar")] if hard else [share]
    fitting: list[dict[str, Any]] = []
    # The shortest comes nearest to going in: what keeps that one out is told.
    why = ""
    for one, row in sorted(_tapped(owned, taps, threads), key=lambda pair: -float(pair[0]["length"])):
        try:
            fitting += _held(one, row, bar, width, worn, bears, share, shares_left, factors, patterns, placing)
        except OutOfRange as beyond:
            why = str(beyond)
    if not fitting:
        return Limited(None, why or "no set screw of the crib leaves a track to measure and has thread enough in the collar")
    return lightest_that_holds(fitting, margin * catch)


def _tapped(owned: Sequence[Record], taps: Sequence[str], threads: Table) -> Iterator[tuple[Record, Row]]:
    return ((one, threads.one(designation=one["thread"])) for one in owned if one["thread"] in taps)


def _held(
    one: Record, row: Row, bar: float, width: float, worn: float, bears: float, share: float,
    shares_left: Sequence[float], factors: Table,
    patterns: Table, placing: Table,
) -> Iterator[dict[str, Any]]:  # fmt: skip
    major, spot, least = row.number("major_mm"), placing.value("spot"), factors.value("least-depth")
    depth = screw_depth(
        end_diameter_mm=worn, joint_diameter_mm=bar, thread_diameter_mm=major, screw_length_mm=one["length"],
        spot_mm=spot, least_depth_mm=least,
    )  # fmt: skip
    # What lies in the spot carries no thread.
    engaged = one["length"] - spot
    torque = row.number("torque_nmm") * share
    preload = screw_preload(torque, major, factors.value("nut-factor"))
    shear = thread_shear(preload, major, engaged)
    if engaged < length_of_diameters(major, factors.value("aluminium-engagement")) - spot or shear > bears:
        return
    if track_left(width, major, placing) < placing.value("track-least"):
        return
    for pattern in patterns:
        angles = _angles(pattern)
        safety = factors.value("safety-low-chart")
        held = screws_hold(_holding(row, factors), angles, shares_left, safety, bar)
        patterns.take(pattern)
        yield {
            "thread": one["thread"], "major": major, "length": one["length"], "count": len(angles),
            "pattern": pattern.text("designation"), "torque": held.torque_nmm, "tighten": torque, "depth": depth,
            "spot": spot, "drill": row.number("tap_drill_mm"),
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
