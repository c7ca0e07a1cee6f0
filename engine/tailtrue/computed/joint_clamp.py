"""A split collar: which cap screw of the crib draws it tight enough and stays below the last surface."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.calc.lengths import midway
from tailtrue.calc.screws import screw_preload, thread_shear
from tailtrue.calc.split_clamp import longest_clamp_screw, split_clamp_torque
from tailtrue.calc.validity import OutOfRange
from tailtrue.computed.joint_placing import lightest_that_holds, of_record, thread_share
from tailtrue.computed.registry import Limited, computed
from tailtrue.tables import Row, Table

Record = Mapping[str, Any]
_M = "split_clamp"
_MOST = 2
TABLES = (
    "joints/set_screws", "joints/set_screw_factors", "joints/soft_threads", "joints/placing", "joints/friction",
    "joints/press_fits", "joints/interference", "materials/materials",
)  # fmt: skip


@computed(
    f"joint.{_M}.found",
    label="clamp screw chosen",
    kind="record",
    needs=(
        "crib.clamp_screws?", "crib.taps?", "bar.diameter", "collar.width", "skim.worn_out_at", "collar.material",
        "collar.material_family", "joint.catch_torque", "limit.joint_margin",
    ),
    tables=TABLES,
    how="the fewest and thinnest that hold a catch, drawn up like a set screw, with the head below the last surface",
)  # fmt: skip
def found(
    owned: Sequence[Record] | None, taps: Sequence[str] | None, bar: float, width: float, worn: float, material: str,
    family: str, catch: float, margin: float, threads: Table, factors: Table, soft: Table, placing: Table, friction: Table,
    fits: Table, values: Table, materials: Table,
) -> Limited:  # fmt: skip
    if not owned or not taps:
        return Limited(None, "no cap screws with their taps are in the crib")
    situation = fits.one(method="shrink-fit", family=family).text("situation")
    mu = friction.one(family=family, situation=situation).number("friction_low")
    bears = materials.one(material=material).number("yield_mpa")
    bears *= placing.value("shear-share") * values.value("elastic-share")
    share = thread_share(material, soft)
    fitting: list[dict[str, Any]] = []
    why = ""
    for one in owned:
        if one["thread"] not in taps:
            continue
        try:
            drawn = _drawn(one, threads.one(designation=one["thread"]), bar, worn, share, bears, factors)
        except OutOfRange as beyond:
            why = str(beyond)
            continue
        room = placing.value("clamp-screw-room") * drawn["major"]
        for count in range(1, min(_MOST, int(width / room)) + 1):
            torque = split_clamp_torque(drawn["preload"], count, mu, bar, values.value("safety-grip"))
            fitting.append({**drawn, "count": count, "torque": torque})
    if not fitting:
        return Limited(None, why or "no cap screw of the crib has its tap there")
    return lightest_that_holds(fitting, margin * catch)


def _drawn(one: Record, row: Row, bar: float, worn: float, share: float, bears: float, factors: Table) -> dict[str, Any]:
    major, depth = row.number("major_mm"), factors.value("least-depth")
    longest = longest_clamp_screw(worn, bar, one["head"], depth)
    if one["length"] > longest:
        raise OutOfRange(f"a screw {one['length']:g} mm long would stand nearer than {depth:g} mm to the last surface")
    torque = row.number("torque_nmm") * share
    preload = screw_preload(torque, major, factors.value("nut-factor"))
    if thread_shear(preload, major, one["length"] * factors.value("clamp-threaded-share")) > bears:
        raise OutOfRange(f"the thread of a screw {major:g} mm thick would be torn out of the collar")
    return {
        "thread": one["thread"], "major": major, "length": one["length"], "head": one["head"], "longest": longest,
        "tighten": torque, "preload": preload, "drill": row.number("tap_drill_mm"),
    }  # fmt: skip


of_record(_M, "thread", "thread", "thread of the clamp screw", kind="text")
of_record(_M, "count", "count", "number of clamp screws in each collar", kind="count", rounding="count")
of_record(_M, "length", "length", "length of the clamp screw with its head", unit="mm", rounding="size")
of_record(_M, "longest", "longest", "longest clamp screw that stays below the last surface", unit="mm", rounding="size",
          bound="most")  # fmt: skip
of_record(_M, "head", "head", "diameter of the head of the clamp screw", unit="mm", rounding="size")
of_record(_M, "preload", "preload", "force along the clamp screw", unit="N", rounding="force")
of_record(_M, "tighten", "tighten", "tightening torque of a clamp screw", unit="N mm", rounding="torque")
of_record(_M, "tapping_size", "drill", "tapping size for the clamp screw", unit="mm", rounding="size")
of_record(_M, "torque", "torque", "torque a split collar holds", unit="N mm", rounding="torque", bound="most")


@computed(f"joint.{_M}.from_axis", label="middle of the clamp screw from the axis", unit="mm", rounding="length",
          needs=("bar.diameter", "skim.worn_out_at"), how="the middle of the wall when the collar is worn out")  # fmt: skip
def from_axis(bar: float, worn: float) -> float:
    return midway(0.0, midway(bar, worn))
