"""Which drills the shop has, and what one drill asks of hand, holder and motor."""

import re
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from typing import Any, NamedTuple

from tailtrue.calc.drill_demand import DrillDemand, drill_demand, lips_left_by_pilot
from tailtrue.calc.drilling import taper_friction_torque
from tailtrue.calc.steps import length_of_steps, nearest_steps
from tailtrue.quantities import read_quantity
from tailtrue.tables import Row, Table

Record = Mapping[str, Any]


class Drill(NamedTuple):
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
                for size, marked in _in_row(drill_sets.take(row)):
                    found[size, shank] = Drill(size, marked, shank)
        for written in entry.get("sizes") or ():
            size = read_quantity(written, "mm")
            found[size, shank] = Drill(size, _plain(written), shank)
    return sorted(found.values(), key=lambda drill: (drill.size_mm, drill.shank))


def _in_row(row: Row) -> Iterator[tuple[float, str]]:
    """Size and mark of each drill of a row: the one that it names, or every one in even steps from first to last. [mm]"""
    if row.text("label"):
        yield row.number("size_mm"), row.text("label")
        return
    begins, step = row.number("begins_mm"), row.number("step_mm")
    for place in range(round(nearest_steps(row.number("ends_mm") - begins, step)) + 1):
        size = round(begins + length_of_steps(place, step), 4)
        parts = row.text("inch_parts")
        yield size, f"{Fraction(round(nearest_steps(size, step)), int(parts))} in" if parts else f"{size:g} mm"


def _plain(written: str) -> str:
    return re.sub(r"\s+", " ", written.strip()).replace(" ", "\u00a0")


def needs_sleeve(shank: str, taper: str) -> bool:
    """Whether a shank has a taper smaller than that of the quill."""
    return shank.startswith("MT") and int(shank[2:]) < int(taper.removeprefix("MT"))


def fits_tailstock(drill: Drill, chuck_to: float, taper: str, sleeves: bool | None) -> bool:
    """Whether the tailstock can hold the drill: in its drill chuck, or in its taper, with a sleeve unless there is none."""
    if drill.taper_shank:
        return drill.shank == taper or (sleeves is not False and needs_sleeve(drill.shank, taper))
    return drill.shank == "reduced" or drill.size_mm <= chuck_to


def demand(size: float, pilot: float, feed: float, kd: float, k: float, chisel: Row, worn: float) -> DrillDemand:
    """What a drill asks, worn, with the factors of its point; of its lips only what the hole before it leaves to cut.

    Raises OutOfRange for a size or feed that the model does not reach.
    """
    whole = drill_demand(
        kd, kd, k, feed, size, pilot / size, worn, chisel_ratio=chisel.number("chisel_ratio"),
        torque_factor=chisel.number("torque_a"), thrust_factor=chisel.number("thrust_b"),
        chisel_thrust_factor=chisel.number("chisel_thrust_j"),
    )  # fmt: skip
    if not pilot:
        return whole
    edge = chisel.number("chisel_ratio")
    return whole._replace(thrust_n=whole.thrust_n * lips_left_by_pilot(max(pilot / size, edge), edge))


def holder_torque(drill: Drill, thrust: float, morse: Table, chuck_torque: float, friction: float) -> float:
    """The torque the holder of a drill can take: its keyed chuck, or the grip of its taper under this thrust."""
    if not drill.taper_shank:
        return chuck_torque
    row = next(row for row in morse.where(morse_no=drill.shank[2:]) if row.text("half_angle_deg"))
    morse.take(row)
    return taper_friction_torque(thrust, friction, row.number("mean_diameter_mm"), row.number("half_angle_deg"))
