"""The bar: which piece of stock, how long, how held, and what it weighs."""

from collections.abc import Mapping
from math import copysign
from typing import Any

from tailtrue.calc.beams import mass_cylinder
from tailtrue.calc.lengths import length_of_diameters, length_ratio, over_both_sides, within_both_sides
from tailtrue.calc.steps import step_down
from tailtrue.computed.registry import Limited, computed, taken
from tailtrue.tables import Row, Table

Record = Mapping[str, Any]
_ON_HAND = "as measured on the bar on hand"


@computed(
    "bar.on_hand",
    label="test bar on hand",
    kind="record",
    needs=("stock.test_bars?", "job.bar_on_hand?"),
    how="the one the job names",
)
def on_hand(bars: tuple[Record, ...] | None, named: str | None) -> Limited:
    return Limited(next((bar for bar in bars or () if bar["label"] == named), None), "the job names no test bar on hand")


@computed("bar.offer_count", label="bars to choose from", kind="count", rounding="count", needs=("stock.bars",),
          how="counted")  # fmt: skip
def bar_offer_count(bars: tuple[Record, ...]) -> int:
    return len(bars)


def _of_stock(name: str, key: str, label: str, **more: Any) -> None:
    @computed(name, label=label, needs=("bar.stock",), how="as given for the stock", **more)
    def _said(stock: Record) -> Any:
        return stock[key]


_of_stock("bar.label", "label", "bar stock", kind="text")
_of_stock("bar.material", "material", "bar material", kind="text")
_of_stock("bar.diameter", "diameter", "nominal diameter of the bar", unit="mm", rounding="size", as_said=True)
_of_stock("bar.stock_length", "length", "length of the bar stock", unit="mm", rounding="length", as_said=True)
_of_stock("bar.finish", "finish", "finish of the bar", kind="choice",
          choices=("cold-drawn", "ground", "turned", "hot-rolled", "unknown"))  # fmt: skip


def material_facts(prefix: str, families: tuple[str, ...]) -> None:
    """Register what the materials table says of the bar or of the collars."""

    def read(name: str, make: Any, **more: Any) -> None:
        @computed(f"{prefix}.{name}", needs=(f"{prefix}.material",), tables=("materials/materials",),
                  how="from the table of materials", **more)  # fmt: skip
        def _row(material: str, materials: Table) -> Any:
            return make(materials.one(material=material))

    def number(column: str) -> Any:
        def take(row: Row) -> float:
            return row.number(column)

        return take

    def words(column: str) -> Any:
        def take(row: Row) -> str:
            return row.text(column)

        return take

    what = {"bar": "bar", "collar": "collars"}[prefix]
    read("material_name", words("name"), label=f"material of the {what}", kind="text")
    read("material_family", words("family"), label=f"kind of material of the {what}", kind="choice", choices=families)
    read("chip_form", words("chip_form"), label=f"chips of the {what}", kind="choice",
         choices=("stringy", "broken", "powder", "gummy"))  # fmt: skip
    read("fluid", words("fluid"), label=f"cutting fluid for the {what}", kind="text")
    read("chips", words("chips"), label=f"how the {what} cut", kind="text")
    read("material_hazards", words("hazards"), label=f"hazards of cutting the {what}", kind="text")
    read("feed_group", words("feed_group"), label=f"feed group of the {what}", kind="text")
    read("density", number("density_kg_m3"), label=f"density of the {what}", unit="kg/m3")
    read("modulus", number("modulus_mpa"), label=f"modulus of elasticity of the {what}", unit="MPa", rounding="pressure")
    read("expansion", number("expansion_per_k"), label=f"thermal expansion of the {what}", unit="1/K")


material_facts("bar", ("steel", "stainless", "tool-steel"))


@computed(
    "bar.length_limit",
    label="longest bar this lathe takes",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("lathe.between_centres", "lathe.centre_room", "lathe.quill_out", "limit.mounting_room"),
    how="distance between centres, less the room of the tailstock centre, the quill extension and room to mount",
)
def length_limit(between: float, centre: float, quill: float, room: float) -> float:
    return between - centre - quill - room


@computed(
    "lathe.length_step",
    label="step of lengths",
    unit="mm",
    rounding="length",
    needs=("lathe.dials", "limit.length_step_metric", "limit.length_step_inch"),
    how="a whole step on the user's rule",
)
def length_step(dials: str, metric: float, inch: float) -> float:
    return metric if dials == "metric" else inch


@computed(
    "lathe.size_step",
    label="step of small sizes",
    unit="mm",
    rounding="length",
    needs=("lathe.dials", "limit.size_step_metric", "limit.size_step_inch"),
    how="a whole step on the user's rule",
)
def size_step(dials: str, metric: float, inch: float) -> float:
    return metric if dials == "metric" else inch


@computed(
    "bar.length_least",
    label="shortest bar that carries both collars",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("collar.station", "collar.width", "limit.spacing_in_widths"),
    how="both stations, and a clear space between the collars of some collar widths",
)
def length_least(station: float, width: float, widths: float) -> float:
    return over_both_sides(length_of_diameters(width, widths), station)


@computed(
    "bar.stock_needed",
    label="stock the bar is made from",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("bar.length", "limit.facing_stock"),
    how="finished length and facing stock at both ends",
)
def stock_needed(length: float, facing: float) -> float:
    return over_both_sides(length, facing)


@computed(
    "bar.saw_from",
    label="shortest stock that is sawn",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("bar.stock_needed", "limit.saw_off_least"),
    how="stock the bar is made from and the least that is sawn off",
)
def saw_from(needed: float, least: float) -> float:
    return needed + least


@computed(
    "bar.sawn_length",
    label="length of the bar when it comes to the lathe",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("bar.stock_needed", "bar.saw_from", "bar.stock_length?"),
    how="as sawn; the whole stock where too little is over to be sawn off",
)
def sawn_length(needed: float, sawn_from: float, stock: float | None) -> Limited:
    if stock is None or stock >= sawn_from:
        return taken(needed, "as sawn")
    return taken(max(stock, needed), "the whole stock", "the whole stock: too little is over to be sawn off")


@computed(
    "bar.face_off",
    label="what is faced off both ends together",
    unit="mm",
    rounding="length",
    needs=("bar.stock_length", "bar.length"),
    how="the stock less the finished length",
)
def face_off(stock: float, finished: float) -> float:
    return stock - finished


@computed(
    "bar.mass",
    label="mass of the bar",
    unit="kg",
    rounding="mass",
    needs=("bar.diameter", "bar.sawn_length", "bar.density"),
    how="volume of the cylinder times its density",
)
def bar_mass(diameter: float, length: float, density: float) -> float:
    return mass_cylinder(diameter, length, density)


@computed(
    "bar.hole_through",
    label="smaller of the hole through the chuck and the bore of the spindle",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("lathe.spindle_bore", "chuck.used"),
    how="as measured on both; the bore of the spindle alone where the hole through the chuck was not given",
)
def hole_through(bore: float, chuck: Record) -> Limited:
    hole = chuck.get("through_bore")
    if not hole:
        return taken(bore, "the bore of the spindle", "the bore of the spindle; the hole through the chuck was not given")
    return taken(min(bore, hole), "the bore of the spindle" if bore <= hole else "the hole through the chuck")


@computed(
    "bar.thickest_through",
    label="thickest bar that goes into chuck and spindle",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("bar.hole_through", "limit.bore_clearance"),
    how="the smaller hole less clearance on diameter",
)
def thickest_through(hole: float, clearance: float) -> float:
    return hole - clearance


@computed(
    "bar.goes_through",
    label="the bar goes into the spindle bore",
    kind="yes-no",
    needs=("bar.diameter", "bar.thickest_through"),
    how="diameter against the thickest bar that goes in",
)
def goes_through(diameter: float, thickest: float) -> bool:
    return diameter <= thickest


@computed(
    "bar.longest_inside",
    label="longest finished bar that ends inside the spindle",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("bar.short_overhang", "lathe.spindle_length", "limit.rear_projection", "limit.facing_stock"),
    how="what stands out in front, the spindle and what may stand out behind, less facing stock at both ends",
)
def longest_inside(overhang: float, spindle: float, behind: float, facing: float) -> float:
    return within_both_sides(overhang + spindle + behind, facing)


@computed(
    "bar.short_overhang",
    label="bar standing out of the jaws for facing",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("bar.diameter", "limit.overhang_short", "lathe.size_step"),
    how="so many diameters, short so that the end cannot whip",
)
def short_overhang(diameter: float, ratio: float, step: float) -> float:
    return step_down(length_of_diameters(diameter, ratio), step)


@computed(
    "bar.spindle_least",
    label="shortest spindle that the stock ends inside of",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("bar.sawn_length", "bar.short_overhang", "limit.rear_projection"),
    how="the stock less what stands out in front and what may stand out behind",
)
def spindle_least(length: float, overhang: float, behind: float) -> float:
    return length - overhang - behind


@computed(
    "bar.rear_projection",
    label="bar standing out behind the spindle",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("bar.sawn_length", "bar.short_overhang", "lathe.spindle_length"),
    how="what is left of the bar beyond the rear end of the spindle while the front end is faced",
)
def rear_projection(length: float, overhang: float, spindle: float) -> float:
    return max(0.0, length - overhang - spindle)


@computed(
    "bar.overhang_ratio",
    label="free length of the bar in diameters while its end is faced",
    unit="1",
    needs=("bar.short_overhang", "bar.diameter"),
    how="free length in front of the last support, divided by the diameter",
)
def overhang_ratio(short: float, diameter: float) -> float:
    return length_ratio(short, diameter)


@computed(
    "bar.in_steady",
    label="the fixed steady takes the bar",
    kind="yes-no",
    needs=("bar.diameter", "lathe.steady_from?", "lathe.steady_to?"),
    how="diameter against the range of the steady",
)
def in_steady(diameter: float, low: float | None, high: float | None) -> bool:
    return high is not None and (low or 0.0) <= diameter <= high


@computed(
    "bar.expected_least",
    label="least diameter to expect of this stock",
    unit="mm",
    rounding="fit",
    bound="least",
    needs=("bar.diameter", "bar.finish"),
    tables=("fits/bar_tolerances",),
    how="nominal diameter and the lower deviation of its finish",
)
def expected_least(diameter: float, finish: str, tolerances: Table) -> float:
    return diameter + min(row.number("lower_mm") for row in _tolerance_rows(diameter, finish, tolerances))


def _believed(name: str, label: str, tolerance: str, sign: int) -> None:
    @computed(
        name,
        label=label,
        unit="mm",
        rounding="fit",
        needs=(tolerance, "limit.bar_surprise"),
        how="what the finish of the stock allows, and a little",
    )
    def _edge(expected: float, surprise: float) -> float:
        return expected + copysign(surprise, sign)


_believed("bar.believed_least", "least reading that is believed", "bar.expected_least", -1)
_believed("bar.believed_largest", "largest reading that is believed", "bar.expected_largest", 1)


@computed(
    "bar.expected_largest",
    label="largest diameter to expect of this stock",
    unit="mm",
    rounding="fit",
    bound="most",
    needs=("bar.diameter", "bar.finish"),
    tables=("fits/bar_tolerances",),
    how="nominal diameter and the upper deviation of its finish",
)
def expected_largest(diameter: float, finish: str, tolerances: Table) -> float:
    return diameter + max(row.number("upper_mm") for row in _tolerance_rows(diameter, finish, tolerances))


def _tolerance_rows(diameter: float, finish: str, tolerances: Table) -> list[Row]:
    rows = [
        row
        for row in tolerances.where(finish=finish)
        if row.number("over_mm") < diameter <= row.number("upto_mm") and row.text("lower_mm")
    ]
    if not rows:
        tolerances.within(diameter, "over_mm", "upto_mm", finish=finish)
    return [tolerances.take(row) for row in rows]
