"""One set screw tried in the collar: what keeps it out, or how deep it lies and how tight it is drawn."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from tailtrue.calc.lengths import length_of_diameters, share_of
from tailtrue.calc.screws import screw_depth, screw_preload, thread_shear
from tailtrue.calc.validity import OutOfRange
from tailtrue.computed.joint_placing import thread_share, track_left
from tailtrue.tables import Row, Table

Record = Mapping[str, Any]
# In the order in which a screw is tried: what comes later comes nearer. A tap is bought, the rest is geometry.
FAILS = ("too-long", "too-little-thread", "its-thread-would-tear", "no-track-is-left", "its-tap-is-missing")
_LONG, _SHORT, _TEARS, _NO_TRACK, _NO_TAP = FAILS
# What is looked up for it, in the order in which `Into` takes it.
TABLES = ("joints/set_screw_factors", "joints/soft_threads", "joints/placing", "materials/materials", "joints/interference")
SIZES = ("bar.diameter", "collar.width", "skim.worn_out_at", "collar.material")


@dataclass(frozen=True)
class Tried:
    """One set screw of the crib: what it fails by, or nothing, then its depth when worn out and its torque."""

    one: Record
    row: Row
    major: float
    fails: str = ""
    why: str = ""
    depth: float = 0.0
    tighten: float = 0.0


class Into:
    """The collar on its bar, into which each set screw is tried."""

    def __init__(
        self, bar: float, width: float, worn: float, material: str,
        factors: Table, soft: Table, placing: Table, materials: Table, shares: Table,
    ) -> None:  # fmt: skip
        self.bar, self.width, self.worn, self.factors, self.placing = bar, width, worn, factors, placing
        yields = materials.one(material=material).number("yield_mpa")
        self.bears = share_of(share_of(yields, placing.value("shear-share")), shares.value("elastic-share"))
        self.share = thread_share(material, soft)
        self.spot = placing.value("spot")

    def each(self, owned: Sequence[Record], taps: Sequence[str], threads: Table) -> list[Tried]:
        """Every set screw of the crib, tried."""
        return [self._tried(one, threads.one(designation=one["thread"]), one["thread"] in taps) for one in owned]

    def _tried(self, one: Record, row: Row, tapped: bool) -> Tried:
        major, factors, length = row.number("major_mm"), self.factors, one["length"]
        try:
            depth = screw_depth(
                end_diameter_mm=self.worn, joint_diameter_mm=self.bar, thread_diameter_mm=major, screw_length_mm=length,
                spot_mm=self.spot, least_depth_mm=factors.value("least-depth"),
            )  # fmt: skip
        except OutOfRange as beyond:
            return Tried(one, row, major, _LONG, str(beyond))
        tighten = share_of(row.number("torque_nmm"), self.share)
        fails = self._fails(major, length, tighten, tapped)
        return Tried(one, row, major, fails, f"{one['thread']}: {fails.replace('-', ' ')}" if fails else "", depth, tighten)

    def _fails(self, major: float, length: float, tighten: float, tapped: bool) -> str:
        if length < length_of_diameters(major, self.factors.value("aluminium-engagement")):
            return _SHORT
        # What lies in the spot carries no thread.
        preload = screw_preload(tighten, major, self.factors.value("nut-factor"))
        if thread_shear(preload, major, length - self.spot) > self.bears:
            return _TEARS
        if track_left(self.width, major, self.placing) < self.placing.value("track-least"):
            return _NO_TRACK
        return "" if tapped else _NO_TAP


def nearest_of(tried: Sequence[Tried]) -> Tried | None:
    """Of those that fail the one that fails last; of like ones the shortest."""
    failing = (one for one in tried if one.fails)
    return max(failing, key=lambda one: (FAILS.index(one.fails), -one.one["length"]), default=None)
