"""The bond: what it carries, against the skim and against a tool that catches."""

from tailtrue.calc.cutting import cutting_force
from tailtrue.calc.joints import bond_area, bond_torque, derated_shear, skim_torque
from tailtrue.computed.registry import Limited, computed
from tailtrue.tables import Table

_METALS = ("collar.material", "collar.diameter")


@computed(
    "joint.area",
    label="bond area of one collar",
    unit="mm2",
    rounding="count",
    needs=("bar.diameter", "collar.width"),
    how="pi d w",
)
def area(diameter: float, width: float) -> float:
    return bond_area(diameter, width)


@computed(
    "joint.shear",
    label="shear strength reckoned with",
    unit="MPa",
    rounding="pressure",
    bound="most",
    needs=(
        "crib.compound_strength?", "limit.compound_strength", "bore.gap_largest", "collar.material_family",
        "bar.diameter", "crib.activator?", "limit.bond_safety",
    ),
    tables=("joints/derating",),
    how="strength of the data sheet, cut down for gap, metal, size, cleaning, temperature and cure, then by a safety factor",
)  # fmt: skip
def shear(
    said: float | None, usual: float, gap: float, family: str, diameter: float, activator: bool | None,
    safety: float, derating: Table,
) -> float:  # fmt: skip
    def named(factor: str, condition: str) -> float:
        return derating.one(factor=factor, condition=condition).number("value")

    factors = [
        derating.within(gap, "from_mm", "to_mm", factor="gap").number("value"),
        named("substrate", family),
        derating.within(diameter, "from_mm", "to_mm", factor="size").number("value"),
        named("activator", "used" if activator else "not-used"),
        # What the steps of the sheet always come to: how the seats are cleaned, the cure they wait for.
        *(derating.take(row).number("value") for row in derating.where(always="yes")),
    ]
    return derated_shear(said if said is not None else usual, factors, safety)


@computed(
    "joint.torque",
    label="torque one bonded collar carries",
    unit="N mm",
    rounding="torque",
    bound="most",
    needs=("joint.shear", "bar.diameter", "collar.width"),
    how="shear strength times bond area times half the diameter",
)
def torque(strength: float, diameter: float, width: float) -> float:
    return bond_torque(strength, diameter, width)


@computed(
    "joint.catch_torque",
    label="torque when the tool catches",
    unit="N mm",
    rounding="torque",
    bound="least",
    needs=_METALS,
    tables=("joints/catch", "materials/materials"),
    how="cutting force of a deep, coarse, dull cut times half the diameter",
)
def catch_torque(material: str, diameter: float, catch: Table, materials: Table) -> float:
    metal = materials.one(material=material)

    def value(name: str) -> float:
        return catch.one(name=name).number("value")

    force = cutting_force(metal.number("kc11_low_mpa"), metal.number("mc_low"), value("depth"), value("feed"))
    return skim_torque(force * value("dull_tool"), diameter)


@computed(
    "joint.skim_torque",
    label="torque of the skim",
    unit="N mm",
    rounding="torque",
    bound="least",
    needs=("skim.cutting_force", "collar.diameter"),
    how="cutting force of the skim times half the diameter",
)
def torque_of_skim(force: float, diameter: float) -> float:
    return skim_torque(force, diameter)


@computed(
    "joint.catch_margin",
    label="strength of the bond in torques of a catch",
    unit="1",
    needs=("joint.torque", "joint.catch_torque"),
    how="torque the bond carries divided by the torque of a catch",
)
def catch_margin(carries: float, asked: float) -> float:
    return carries / asked


@computed(
    "joint.cure_temperature",
    label="coldest shop in which the bond is left to cure",
    unit="degC",
    rounding="temperature",
    bound="least",
    needs=("crib.compound_least_temperature?", "limit.cure_temperature"),
    how="what the bottle says; a usual figure where it was not given",
)
def cure_temperature(bottle: float | None, usual: float) -> Limited:
    return Limited(usual, "usual; look at the bottle") if bottle is None else Limited(bottle, "the bottle")


@computed(
    "joint.cure_wait",
    label="wait for the bond",
    unit="s",
    rounding="time",
    bound="least",
    needs=("crib.compound_cure", "limit.cure_least"),
    how="full cure of the bottle, never less than the usual for a metal that slows the cure",
)
def cure_wait(bottle: float, least: float) -> Limited:
    return Limited(bottle, "the bottle") if bottle >= least else Limited(least, "slow cure on this metal")
