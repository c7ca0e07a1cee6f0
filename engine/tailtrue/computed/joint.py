"""The bond: its gap, what it carries, how long it cures; and the torques that any joint is held against."""

from tailtrue.calc.cutting import cutting_force
from tailtrue.calc.joints import bond_area, bond_torque, derated_shear, skim_torque, slowed_cure
from tailtrue.calc.margins import catch_torque as torque_of_catch
from tailtrue.calc.margins import depth_for_margin, strength_for_margin, torque_margin, width_for_margin
from tailtrue.calc.steps import step_down, step_up
from tailtrue.computed.registry import Limited, computed, taken
from tailtrue.computed.stepping import least_of
from tailtrue.tables import Table

_METALS = ("collar.material", "collar.diameter")
_BOND = "joint.retaining_compound"
_SLIP = "bonded-slip-fit"
_ACTIVE = "active"
_NO_BOTTLE = Limited(None, "no retaining compound is in the crib")


def _gap(name: str, column: str, label: str, bound: str) -> None:
    @computed(name, label=label, unit="mm", rounding="fit", bound=bound, needs=("bar.diameter", "crib.compound_gap?"),
              tables=("fits/attachment_clearance",),
              how="diametral clearance of a bonded slip fit, never above what the bottle allows")  # fmt: skip
    def _column(diameter: float, bottle: float | None, clearances: Table) -> float | Limited:
        row = clearances.within(diameter, "over_mm", "upto_mm", method=_SLIP)
        return _NO_BOTTLE if bottle is None else min(row.number(column), bottle)


_gap(f"{_BOND}.target", "target_mm", "clearance wanted for the bond, on diameter", "nearest")
_gap(f"{_BOND}.least", "least_mm", "least clearance for the bond, on diameter", "least")


@computed(
    f"{_BOND}.largest",
    label="largest clearance for the bond, on diameter",
    unit="mm",
    rounding="fit",
    bound="most",
    needs=("bar.diameter", "crib.compound_gap?", "limit.bond_gap"),
    tables=("fits/attachment_clearance",),
    how="the least of: what the bottle allows, what a bonded joint still bears, what this plan accepts",
)
def gap_largest(diameter: float, bottle: float | None, accepted: float, clearances: Table) -> Limited:
    if bottle is None:
        return _NO_BOTTLE
    usable = clearances.within(diameter, "over_mm", "upto_mm", method="bonded-usable").number("largest_mm")
    gap, by = least_of((bottle, "the bottle"), (usable, "the bond"), (accepted, "a gap that a bond fills well"))
    return Limited(gap, by)


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
        "joint.compound_strength", f"{_BOND}.largest?", "bar.material_family", "collar.material_family",
        "bar.diameter", "crib.activator?", "limit.bond_safety",
    ),
    tables=("joints/derating",),
    how="strength of the data sheet, cut down for gap, weaker metal, size, cleaning, warmth and cure, then a safety factor",
)  # fmt: skip
def shear(
    strength: float, gap: float | None, bar: str, collar: str, diameter: float, activator: bool | None,
    safety: float, derating: Table,
) -> float | Limited:  # fmt: skip
    if gap is None:
        return _NO_BOTTLE
    return shear_at(strength, gap, (bar, collar), diameter, activator, safety, derating)


def shear_at(
    strength: float, gap: float, families: tuple[str, ...], diameter: float, activator: bool | None, safety: float,
    derating: Table,
) -> float:  # fmt: skip
    """Shear strength of the bond that fills this gap between two metals: it lets go of the weaker."""

    def named(factor: str, condition: str) -> float:
        return derating.one(factor=factor, condition=condition).number("value")

    factors = [
        derating.within(gap, "from_mm", "to_mm", factor="gap").number("value"),
        min(named("substrate", family) for family in families),
        derating.within(diameter, "from_mm", "to_mm", factor="size").number("value"),
        named("activator", "used" if activator else "not-used"),
        # What the steps of the sheet always come to: how the seats are cleaned, the cure they wait for.
        *(derating.take(row).number("value") for row in derating.where(always="yes")),
    ]
    return derated_shear(strength, factors, safety)


@computed(
    "joint.compound_strength",
    label="strength that the compound is taken for",
    unit="MPa",
    rounding="pressure",
    bound="most",
    needs=("crib.compound_strength?", "limit.compound_strength"),
    how="as given, steel on steel; when it was not given, the weakest of the usual compounds",
)
def compound_strength(said: float | None, usual: float) -> Limited:
    return Limited(usual, "not given, so the weakest of the usual") if said is None else Limited(said, "as given")


@computed(
    "joint.compound_least",
    label="least strength of a compound that holds a tool that catches",
    unit="MPa",
    rounding="pressure",
    bound="least",
    needs=("joint.compound_strength", f"{_BOND}.catch_margin", "limit.joint_margin"),
    how="strength reckoned with, raised as the margin has to be raised",
)
def compound_least(strength: float, margin: float, wanted: float) -> float:
    return strength_for_margin(strength, margin, wanted)


@computed(
    f"{_BOND}.width_asked",
    label="width that the bond asks for, of a collar as thick as its stock",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("joint.shear?", "joint.catch_of_stock", "bar.diameter", "limit.joint_margin", "lathe.size_step"),
    how="a collar as wide as the bar is thick, made wider as its margin has to be raised, up to a whole step",
)
def width_for_bond(
    strength: float | None, catch: float, diameter: float, wanted: float, step: float
) -> float | Limited:  # fmt: skip
    if strength is None:
        return _NO_BOTTLE
    return step_up(width_for_margin(diameter, torque_margin(bond_torque(strength, diameter, diameter), catch), wanted), step)


@computed(
    "joint.width_least",
    label="narrowest collar whose bond holds a tool that catches",
    unit="mm",
    rounding="length",
    bound="least",
    needs=(
        "collar.width", f"{_BOND}.catch_margin", "limit.joint_margin", "lathe.size_step", "collar.own_width",
        "collar.width_from_stock", "collar.width_on_bar", "limit.collar_width_most",
    ),
    how="width reckoned with, raised as the margin has to be raised, up to a whole step; where stock and bar give it",
)  # fmt: skip
def width_least(
    width: float, margin: float, wanted: float, step: float, own: bool, stock: float, bar: float, most: float
) -> Limited:  # fmt: skip
    least = step_up(width_for_margin(width, margin, wanted), step)
    if own or least > min(stock, bar, most):
        return Limited(None, "stock and bar give no collar so wide")
    return Limited(least, "the bond carries by its width")


@computed(
    f"{_BOND}.torque",
    label="torque one bonded collar carries",
    unit="N mm",
    rounding="torque",
    bound="most",
    needs=("joint.shear?", "bar.diameter", "collar.width"),
    how="shear strength times bond area times half the diameter",
)
def torque(strength: float | None, diameter: float, width: float) -> float | Limited:
    return _NO_BOTTLE if strength is None else bond_torque(strength, diameter, width)


@computed(
    "joint.catch_torque",
    label="torque when the tool catches",
    unit="N mm",
    rounding="torque",
    bound="least",
    needs=_METALS,
    tables=("joints/catch", "materials/materials"),
    how="cutting force of a deep, coarse, dull cut, the metal as tough as it comes, times half the diameter",
)
def catch_torque(material: str, diameter: float, catch: Table, materials: Table) -> float:
    return _caught(material, diameter, catch, materials)


@computed("joint.catch_of_stock", label="torque when the tool catches a collar as thick as its stock", unit="N mm",
          rounding="torque", bound="least", needs=("collar.material", "collar.stock_diameter"),
          tables=("joints/catch", "materials/materials"),
          how="as for the collar; how thick that is, is known only after its width")  # fmt: skip
def catch_of_stock(material: str, stock: float, catch: Table, materials: Table) -> float:
    return _caught(material, stock, catch, materials)


def _caught(material: str, diameter: float, catch: Table, materials: Table) -> float:
    metal = materials.one(material=material)
    value = catch.value
    force = cutting_force(metal.number("kc11_high_mpa"), metal.number("mc_high"), value("depth"), value("feed"))
    return torque_of_catch(force, value("dull_tool"), diameter)


@computed(
    "joint.spared_depth",
    label="deepest cut over the collars that spares a thin joint",
    unit="mm",
    rounding="depth",
    bound="most",
    needs=("joint.catch_margin", "limit.joint_margin_ample", "lathe.radial_division"),
    tables=("joints/catch",),
    how="depth of the catch reckoned with, lowered as far as the margin must rise, in whole divisions",
)
def spared_depth(margin: float, ample: float, division: float, catch: Table) -> float | Limited:
    if margin >= ample:
        return Limited(None, "the margin is ample")
    return step_down(depth_for_margin(catch.value("depth"), margin, ample), division)


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
    "joint.cure_temperature",
    label="coldest shop in which the bond is left to cure",
    unit="degC",
    rounding="temperature",
    bound="least",
    needs=("crib.compound_least_temperature?", "limit.cure_temperature"),
    how="what the bottle says; a usual figure where it was not given",
)
def cure_temperature(bottle: float | None, usual: float) -> Limited:
    if bottle is None:
        return taken(usual, "usual; look at the bottle", "a usual figure: look at the bottle")
    return taken(bottle, "the bottle", "what the bottle says", as_said=True)


@computed("joint.cure_starts", label="bar, collar or activator starts the cure", kind="yes-no",
          needs=("bar.material_family", "collar.material_family", "crib.activator?"), tables=("joints/curing",),
          how="whether one of the two metals is active, or the shop has an activator")  # fmt: skip
def cure_starts(bar: str, collar: str, activator: bool | None, curing: Table) -> bool:
    return bool(activator) or _ACTIVE in {curing.one(family=family).text("surface") for family in (bar, collar)}


@computed(
    "joint.cure_wait",
    label="wait for the bond",
    unit="s",
    rounding="time",
    bound="least",
    needs=("crib.compound_cure", "bar.material_family", "collar.material_family", "crib.activator?", "limit.cure_least"),
    tables=("joints/curing",),
    how="full cure of the bottle, longer on a metal that slows it and without activator, never less than the least wait",
)
def cure_wait(bottle: float, bar: str, collar: str, activator: bool | None, least: float, curing: Table) -> Limited:
    times = 1.0 if activator else max(curing.one(family=family).number("full_cures") for family in (bar, collar))
    full, by = slowed_cure(bottle, times), "the bottle"
    if full > bottle:
        by = "the bottle, and a metal that slows the cure"
    return Limited(full, by) if full >= least else Limited(least, "the least wait for a bond")
