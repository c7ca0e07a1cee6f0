"""A bore that came out tight: between the gap that a bond still takes and the one that the sheet aims at."""

from collections.abc import Sequence

from tailtrue.calc.joints import bond_torque
from tailtrue.calc.margins import torque_margin
from tailtrue.computed.joint import shear_at
from tailtrue.computed.registry import computed
from tailtrue.computed.rework import seat_of
from tailtrue.tables import Table

_SEAT = ("job.found_at", "job.measured_head", "job.measured_tail")
_USABLE = "bonded-usable"


@computed(
    "bore.usable_add",
    label="least gap that a bond still takes, on diameter",
    unit="mm",
    rounding="fit",
    bound="least",
    needs=("bar.diameter",),
    tables=("fits/attachment_clearance",),
    how="least clearance of a bonded joint that is usable",
)
def usable_add(diameter: float, clearances: Table) -> float:
    return clearances.within(diameter, "over_mm", "upto_mm", method=_USABLE).number("least_mm")


def _usable(end: str, words: str, seats: tuple[str, ...]) -> None:
    @computed(f"bore.{end}_usable", label=f"smallest bore that may be bonded, collar {words}", unit="mm", rounding="fit",
              bound="least", needs=("bore.usable_add", *seats),
              how="largest reading of the bar where the collar goes, and the least gap that a bond takes")  # fmt: skip
    def _low(least: float, *seats: Sequence[float]) -> float:
        return max(reading for readings in seats for reading in readings) + least


_usable("head", "at the headstock end", ("job.measured_head",))
_usable("tail", "at the tailstock end", ("job.measured_tail",))
_usable("middle", "in the middle", ("job.measured_middle", "job.measured_tail"))


@computed("rework.tight_low", label="smallest bore that may still be bonded", unit="mm", rounding="fit", bound="least",
          needs=(*_SEAT, "bore.usable_add"), how="largest reading of the bar at this seat and the least gap")  # fmt: skip
def tight_low(at: str, head: Sequence[float], tail: Sequence[float], least: float) -> float:
    return max(seat_of(at, head, tail)) + least


@computed("rework.gap_least", label="least gap the bore as found would leave, on diameter", unit="mm", rounding="fit",
          bound="least", needs=("rework.least", *_SEAT),
          how="least reading of the bore less the largest reading of the bar at this seat")  # fmt: skip
def gap_least(smallest: float, at: str, head: Sequence[float], tail: Sequence[float]) -> float:
    return smallest - max(seat_of(at, head, tail))


@computed(
    "rework.tight",
    label="the bore as found is tight and may still be bonded",
    kind="yes-no",
    needs=("rework.least", "rework.largest", "rework.tight_low", "rework.low", "rework.high"),
    how="least reading from the smallest that may be bonded up to the smallest of the sheet, largest within the largest",
)
def tight(smallest: float, biggest: float, usable: float, low: float, high: float) -> bool:
    return usable <= smallest < low and biggest <= high


@computed("rework.tight_gap", label="largest gap that the tight bore may leave, on diameter", unit="mm", rounding="fit",
          bound="most", needs=("rework.gap_found", "bore.gauge_uncertainty"),
          how="gap as read and the doubt of the gauge")  # fmt: skip
def tight_gap(found: float, unsure: float) -> float:
    return found + unsure


@computed(
    "rework.tight_shear",
    label="shear strength reckoned with in the tight bore",
    unit="MPa",
    rounding="pressure",
    bound="most",
    needs=(
        "joint.compound_strength", "rework.tight_gap", "bar.material_family", "collar.material_family", "bar.diameter",
        "crib.activator?", "limit.bond_safety",
    ),
    tables=("joints/derating",),
    how="strength of the data sheet, cut down for this gap, and for all else as on the sheet",
)  # fmt: skip
def tight_shear(
    strength: float, gap: float, bar: str, collar: str, diameter: float, activator: bool | None, safety: float,
    derating: Table,
) -> float:  # fmt: skip
    return shear_at(strength, gap, (bar, collar), diameter, activator, safety, derating)


@computed("rework.tight_torque", label="torque the bond in the tight bore carries", unit="N mm", rounding="torque",
          bound="most", needs=("rework.tight_shear", "bar.diameter", "collar.width"),
          how="shear strength times bond area times half the diameter")  # fmt: skip
def tight_torque(strength: float, diameter: float, width: float) -> float:
    return bond_torque(strength, diameter, width)


@computed("rework.tight_margin", label="bond in the tight bore against a tool that catches", unit="1", rounding="ratio",
          bound="least", needs=("rework.tight_torque", "joint.catch_torque"),
          how="torque carried divided by that of a catch")  # fmt: skip
def tight_margin(carried: float, asked: float) -> float:
    return torque_margin(carried, asked)


@computed("rework.bonds_tight", label="the tight bore is bonded as it is", kind="yes-no",
          needs=("rework.tight", "rework.tight_margin", "limit.joint_margin"),
          how="whether it is tight, may be bonded, and its bond carries a tool that catches")  # fmt: skip
def bonds_tight(usable: bool, margin: float, wanted: float) -> bool:
    return usable and margin >= wanted
