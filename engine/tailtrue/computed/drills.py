"""Which drills the shop has, and what one drill asks of hand, holder and motor."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from tailtrue.calc.drilling import (
    taper_friction_torque,
    thrust_shaw_oxford,
    thrust_tool_maker,
    tool_maker_holds,
    torque_shaw_oxford,
    torque_tool_maker,
)
from tailtrue.quantities import read_quantity
from tailtrue.tables import Row, Table

Record = Mapping[str, Any]


@dataclass(frozen=True)
class Drill:
    """A drill as it lies in the crib."""

    size_mm: float
    marked: str
    shank: str

    @property
    def taper_shank(self) -> bool:
        """Whether it goes into the quill without a chuck."""
        return self.shank.startswith("MT")


def drills_of(owned: Sequence[Record], drill_sets: Table) -> list[Drill]:
    """Every drill of the crib, sets written out, smallest first."""
    found: dict[tuple[float, str], Drill] = {}
    for entry in owned:
        shank = entry["shank"]
        if entry.get("set"):
            for row in drill_sets.where(set=entry["set"]):
                drill_sets.take(row)
                found[row.number("size_mm"), shank] = Drill(row.number("size_mm"), row.text("label"), shank)
        for written in entry.get("sizes") or ():
            size = read_quantity(written, "mm")
            found[size, shank] = Drill(size, _plain(written), shank)
    return sorted(found.values(), key=lambda drill: (drill.size_mm, drill.shank))


def _plain(written: str) -> str:
    return re.sub(r"\s+", " ", written.strip()).replace(" ", "\u00a0")


def fits_tailstock(drill: Drill, chuck_to: float, taper: str) -> bool:
    """Whether the tailstock can hold the drill: in its drill chuck, or in its taper, never sleeved up."""
    if drill.taper_shank:
        return int(drill.shank[2:]) <= int(taper.removeprefix("MT"))
    return drill.shank == "reduced" or drill.size_mm <= chuck_to


@dataclass(frozen=True)
class Demand:
    """What a drill asks: thrust on the quill, torque on its holder."""

    thrust_n: float
    torque_nmm: float


def demand(size: float, pilot: float, feed: float, kd: float, k: float, chisel: Row, worn: float) -> Demand:
    """The larger of two published models of drilling, for a worn drill.

    Opening a hole, the chisel edge cuts nothing: only the ring outside the pilot asks for torque, and the tool maker's
    model, which knows no pilot, is scaled by the same share. Outside its band of feeds that model is left out.

    Raises OutOfRange for a size or feed that the first model does not reach.
    """
    ratio = pilot / size if pilot else 0.0
    edge = chisel.number("chisel_ratio")
    thrust = thrust_shaw_oxford(
        kd, feed, size, ratio, worn, chisel_ratio=edge, thrust_factor=chisel.number("thrust_b"),
        chisel_thrust_factor=chisel.number("chisel_thrust_j"),
    )  # fmt: skip
    torque = torque_shaw_oxford(kd, feed, size, ratio, worn, chisel_ratio=edge, torque_factor=chisel.number("torque_a"))
    if tool_maker_holds(feed):
        torque = max(torque, torque_tool_maker(k, feed, size) * worn * (1 - ratio**2))
        if not pilot:
            thrust = max(thrust, thrust_tool_maker(k, feed, size) * worn)
    return Demand(thrust, torque)


def holder_torque(drill: Drill, thrust: float, morse: Table, chuck_torque: float, friction: float) -> float:
    """The torque the holder of a drill can take: its keyed chuck, or the grip of its taper under this thrust."""
    if not drill.taper_shank:
        return chuck_torque
    row = next(row for row in morse.where(morse_no=drill.shank[2:]) if row.cells["half_angle_deg"])
    morse.take(row)
    return taper_friction_torque(thrust, friction, row.number("mean_diameter_mm"), row.number("half_angle_deg"))
