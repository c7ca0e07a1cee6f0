"""Pins across the bar: which of the crib hold a catch and stay below the last surface."""

from collections.abc import Callable, Mapping, Sequence
from math import isclose
from typing import Any

from tailtrue.calc.pins import bar_section_left, cross_pin, cross_pin_depth
from tailtrue.calc.validity import OutOfRange
from tailtrue.computed.joint_placing import depth_now, of_record, place, track_left
from tailtrue.computed.registry import Limited, computed
from tailtrue.tables import Table

Record = Mapping[str, Any]
_ACROSS = "radial_pin"
_SAME = 1e-6  # what converting between inches and millimetres may leave behind
_NEEDS = (
    "crib.pins?", "bar.diameter", "collar.width", "collar.stock_diameter", "skim.worn_out_at",
    "bar.material", "collar.material", "joint.catch_torque", "limit.joint_margin",
)  # fmt: skip
TABLES = ("joints/pins", "joints/set_screw_factors", "joints/placing", "materials/materials")


class _Seat:
    """What pins of this job meet: sizes, and the pressures that the metals stand."""

    def __init__(
        self, bar: float, width: float, blank: float, worn: float, bar_metal: str, collar_metal: str,
        pins: Table, factors: Table, placing: Table, materials: Table,
    ) -> None:  # fmt: skip
        share = placing.value("bearing-share")
        self.bar, self.width, self.blank, self.worn = bar, width, blank, worn
        self.bar_bears = materials.one(material=bar_metal).number("yield_mpa") * share
        self.collar_bears = materials.one(material=collar_metal).number("yield_mpa") * share
        self.safety, self.least_depth = placing.value("pin-safety"), factors.value("least-depth")
        self.track_least = placing.value("track-least")
        self.pins, self.placing = pins, placing

    def shears_at(self, pin: Record) -> float:
        rows = self.pins.where(type=pin["type"])
        row = next((row for row in rows if isclose(row.number("diameter_mm"), pin["diameter"], rel_tol=_SAME)), None)
        if row is None:
            known = ", ".join(f"{one.number('diameter_mm'):g}" for one in rows)
            raise OutOfRange(f"no strength is known of a pin {pin['diameter']:g} mm thick of this kind, only of {known} mm")
        return self.pins.take(row).number("double_shear_n")

    def across(self, pin: Record) -> dict[str, Any]:
        thick, long = pin["diameter"], pin["length"]
        depth = cross_pin_depth(self.worn, long, thick, self.least_depth)
        if track_left(self.width, thick, self.placing) < self.track_least:
            raise OutOfRange(f"a pin {thick:g} mm thick leaves no track to measure on the collar")
        # The hole ends blind: the far side of the rim stays whole.
        hole = (self.blank + long) / 2
        _reaches(pin, hole)
        held = cross_pin(
            shear_force_n=self.shears_at(pin), pin_diameter_mm=thick, pin_length_mm=long, joint_diameter_mm=self.bar,
            collar_bearing_mpa=self.collar_bears, bar_bearing_mpa=self.bar_bears, safety=self.safety,
        )  # fmt: skip
        left = 100 * bar_section_left(thick, self.bar)
        return {**pin, "torque": held.carried_nmm, "depth": depth, "hole": hole, "left": round(left), "count": 1}


def _reaches(pin: Record, needed: float) -> None:
    if pin["drill_reach"] < needed:
        raise OutOfRange(
            f"the drill stands {pin['drill_reach']:g} mm out of its chuck, and must reach {needed:g} mm: a longer one helps"
        )


def _chosen(owned: Sequence[Record] | None, hold: Callable[[Record], dict[str, Any]], wanted: float) -> Limited:
    if not owned:
        return Limited(None, "no pins are in the crib")
    fitting: list[dict[str, Any]] = []
    why = ""
    for pin in owned:
        try:
            fitting.append(hold(pin))
        except OutOfRange as beyond:
            why = str(beyond)
    if not fitting:
        return Limited(None, why)
    strong = [pin for pin in fitting if pin["torque"] >= wanted]
    if strong:
        return Limited(min(strong, key=lambda pin: pin["diameter"]), "the thinnest that holds a catch")
    return Limited(max(fitting, key=lambda pin: pin["torque"]), "the strongest that fits")


@computed("joint.radial_pin.found", label="a pin across chosen", kind="record", needs=_NEEDS, tables=TABLES,
          how="the thinnest that holds a catch and ends below the last surface")  # fmt: skip
def found(
    owned: Sequence[Record] | None, bar: float, width: float, blank: float, worn: float, bar_metal: str,
    collar_metal: str, catch: float, margin: float, pins: Table, factors: Table, placing: Table, materials: Table,
) -> Limited:  # fmt: skip
    seat = _Seat(bar, width, blank, worn, bar_metal, collar_metal, pins, factors, placing, materials)
    return _chosen(owned, seat.across, margin * catch)


of_record(_ACROSS, "type", "type", "kind of a pin across", kind="choice",
          choices=("hardened-dowel", "slotted-spring-heavy", "coiled-spring-light"))  # fmt: skip
of_record(_ACROSS, "diameter", "diameter", "diameter of a pin across", unit="mm", rounding="size")
of_record(_ACROSS, "length", "length", "length of a pin across", unit="mm", rounding="size")
of_record(
    _ACROSS, "torque", "torque", "torque a pin across holds in one collar", unit="N mm", rounding="torque", bound="most"
)
of_record(_ACROSS, "depth", "depth", "a pin across below the surface when the collars are worn out", unit="mm",
          rounding="length", bound="most")  # fmt: skip
of_record(_ACROSS, "hole", "hole", "depth of the hole for a pin across", unit="mm", rounding="length")
of_record(_ACROSS, "bar_left", "left", "strength in bending that the bar keeps beside the hole", unit="%", rounding="ratio")
of_record(_ACROSS, "count", "count", "pins across in each collar", kind="count", rounding="count")
place(_ACROSS, "diameter", "the pin across")
depth_now(_ACROSS, "the pin across")
