"""Where no set screw of the crib serves: which comes nearest, what it fails by, and what one of its thread asks for."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.calc.lengths import length_of_diameters, per_side, share_of
from tailtrue.calc.screws import screw_depth, screw_preload, thread_shear
from tailtrue.calc.validity import OutOfRange
from tailtrue.computed.joint_placing import thread_share, track_left
from tailtrue.computed.registry import computed
from tailtrue.tables import Row, Table

Record = Mapping[str, Any]
# In the order in which a screw is tried: what comes later comes nearer.
_FAILS = ("too-long", "too-little-thread", "its-thread-would-tear", "no-track-is-left")
_NEAREST = ("joint.set_screws.nearest",)


@computed(
    "joint.set_screws.nearest",
    label="set screw of the crib that comes nearest to serving",
    kind="record",
    needs=("crib.set_screws", "crib.taps", "bar.diameter", "collar.width", "skim.worn_out_at", "collar.material"),
    tables=("joints/set_screws", "joints/set_screw_factors", "joints/soft_threads", "joints/placing", "materials/materials",
            "joints/interference"),
    how="of those with their taps the one that fails last: length, then thread, then the track beside it",
)  # fmt: skip
def nearest(
    owned: Sequence[Record], taps: Sequence[str], bar: float, width: float, worn: float, material: str, threads: Table,
    factors: Table, soft: Table, placing: Table, materials: Table, shares: Table,
) -> dict[str, Any] | None:  # fmt: skip
    yields = materials.one(material=material).number("yield_mpa")
    bears = share_of(share_of(yields, placing.value("shear-share")), shares.value("elastic-share"))
    share, found = thread_share(material, soft), []
    for one in owned:
        if one["thread"] not in taps:
            continue
        row = threads.one(designation=one["thread"])
        fails = _fails(one, row, bar, width, worn, bears, share, factors, placing)
        if fails:
            found.append({"thread": one["thread"], "length": one["length"], "major": row.number("major_mm"), "fails": fails})
    return max(found, key=lambda one: (_FAILS.index(one["fails"]), -one["length"]), default=None)


def _fails(
    one: Record, row: Row, bar: float, width: float, worn: float, bears: float, share: float, factors: Table, placing: Table,
) -> str:  # fmt: skip
    major, spot = row.number("major_mm"), placing.value("spot")
    try:
        screw_depth(
            end_diameter_mm=worn, joint_diameter_mm=bar, thread_diameter_mm=major, screw_length_mm=one["length"],
            spot_mm=spot, least_depth_mm=factors.value("least-depth"),
        )  # fmt: skip
    except OutOfRange:
        return _FAILS[0]
    if one["length"] < length_of_diameters(major, factors.value("aluminium-engagement")):
        return _FAILS[1]
    preload = screw_preload(share_of(row.number("torque_nmm"), share), major, factors.value("nut-factor"))
    if thread_shear(preload, major, one["length"] - spot) > bears:
        return _FAILS[2]
    return _FAILS[3] if track_left(width, major, placing) < placing.value("track-least") else ""


def _of_it(name: str, label: str, **more: Any) -> None:
    @computed(f"joint.set_screws.nearest_{name}", label=label, needs=_NEAREST, how="of the one that comes nearest", **more)
    def _said(found: Record) -> Any:
        return found[name]


_of_it("thread", "its thread", kind="text")
_of_it("length", "its length", unit="mm", rounding="size")
_of_it("fails", "what it fails by", kind="choice", choices=_FAILS)


@computed("joint.set_screws.wall", label="wall of a collar that is worn out", unit="mm", rounding="length", bound="most",
          needs=("skim.worn_out_at", "bar.diameter"), how="half of what the collar is larger than the bar")  # fmt: skip
def wall(worn: float, bar: float) -> float:
    return per_side(worn, bar)


@computed("joint.set_screws.least_length", label="shortest screw with thread enough", unit="mm", rounding="size",
          bound="least", needs=_NEAREST, tables=("joints/set_screw_factors",),
          how="so many diameters of the thread")  # fmt: skip
def least_length(found: Record, factors: Table) -> float:
    return length_of_diameters(float(found["major"]), factors.value("aluminium-engagement"))


@computed("joint.set_screws.least_width", label="narrowest collar that keeps a track beside it", unit="mm",
          rounding="length", bound="least", needs=_NEAREST, tables=("joints/placing",),
          how="the band of the hole, and what the faces of a micrometer need")  # fmt: skip
def least_width(found: Record, placing: Table) -> float:
    return placing.value("track-least") - track_left(0.0, float(found["major"]), placing)
