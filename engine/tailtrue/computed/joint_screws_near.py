"""Where no set screw of the crib serves: which comes nearest, what it fails by, and what one of its thread asks for."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.calc.lengths import length_of_diameters, per_side
from tailtrue.computed.joint_placing import track_left
from tailtrue.computed.joint_screws_tried import FAILS, SIZES, TABLES, Into, nearest_of
from tailtrue.computed.registry import computed
from tailtrue.tables import Table

Record = Mapping[str, Any]
_NEAREST = ("joint.set_screws.nearest",)


@computed(
    "joint.set_screws.nearest", label="set screw of the crib that comes nearest to serving", kind="record",
    needs=("crib.set_screws", "crib.taps", *SIZES), tables=("joints/set_screws", *TABLES),
    how="the one that fails last: length, then thread, then the track beside it, then its tap",
)  # fmt: skip
def nearest(
    owned: Sequence[Record], taps: Sequence[str], bar: float, width: float, worn: float, material: str, threads: Table,
    *tables: Table,
) -> dict[str, Any] | None:  # fmt: skip
    near = nearest_of(Into(bar, width, worn, material, *tables).each(owned, taps, threads))
    if near is None:
        return None
    return {"thread": near.one["thread"], "length": near.one["length"], "major": near.major, "fails": near.fails}


def _of_it(name: str, label: str, **more: Any) -> None:
    @computed(f"joint.set_screws.nearest_{name}", label=label, needs=_NEAREST, how="of the one that comes nearest", **more)
    def _said(found: Record) -> Any:
        return found[name]


_of_it("thread", "its thread", kind="text")
_of_it("length", "its length", unit="mm", rounding="size")
_of_it("fails", "what it fails by", kind="choice", choices=FAILS)


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
