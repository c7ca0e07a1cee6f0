"""What to buy: lengths with the saw cuts, masses, and how much of what is used up."""

from tailtrue.calc.beams import mass_cylinder
from tailtrue.calc.joints import compound_needed
from tailtrue.calc.lengths import length_for_pieces
from tailtrue.calc.solids import mass_slab, mass_with_pieces
from tailtrue.calc.steps import step_up
from tailtrue.computed.registry import Limited, computed, taken
from tailtrue.tables import Table


@computed(
    "bar.buy_length",
    label="length of bar to buy",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("bar.stock_needed", "limit.saw_kerf"),
    how="finished length, facing at both ends and one saw cut",
)
def bar_length(sawn: float, kerf: float) -> float:
    return sawn + kerf


@computed(
    "collar.buy_length",
    label="length of collar stock to buy",
    unit="mm",
    rounding="length",
    bound="least",
    needs=(
        "collar.section", "collar.saw_width", "collar.stock_diameter", "limit.saw_kerf", "collar.pieces",
        "limit.saw_holding",
    ),
    how="the blanks along the stock, a saw cut for each, and what the vice holds at the last cut: their width with its "
    "facing, on a slab their side",
)  # fmt: skip
def collar_length(section: str, width: float, across: float, kerf: float, pieces: int, held: float) -> float:
    return length_for_pieces(across if section == "slab" else width, kerf, pieces) + held


@computed(
    "collar.left_over",
    label="collar stock left in the vice at the last cut",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("collar.stock_length", "collar.saw_width", "limit.saw_kerf", "collar.pieces"),
    how="the stock less the blanks and a saw cut for each",
)
def left_over(stock: float, width: float, kerf: float, pieces: int) -> float | None:
    left = stock - length_for_pieces(width, kerf, pieces)
    return left if left > 0 else None


@computed(
    "bar.buy_mass",
    label="mass of bar to buy",
    unit="kg",
    rounding="mass",
    bound="least",
    needs=("bar.diameter", "bar.buy_length", "bar.density"),
    how="volume of the round stock times its density",
)
def bought_bar(across: float, length: float, density: float) -> float:
    return mass_cylinder(across, length, density)


@computed(
    "collar.buy_mass",
    label="mass of collar stock to buy",
    unit="kg",
    rounding="mass",
    bound="least",
    needs=(
        "collar.section", "collar.stock_diameter", "hole.start", "collar.stock_length", "collar.buy_length",
        "collar.density",
    ),
    how="section of the stock, a hole left out, or of a strip of the plate, times length and density",
)  # fmt: skip
def bought_stock(section: str, across: float, hole: float, thick: float, length: float, density: float) -> Limited:
    if section == "slab":
        return taken(mass_slab(across, thick, length, density), "a strip of the plate, times length and density")
    how = f"section of the stock{', its hole left out,' if hole > 0 else ''} times length and density"
    return taken(mass_cylinder(across, length, density, hole), "the section of the stock", how)


@computed(
    "bar.finished_mass",
    label="mass of the finished bar without collars",
    unit="kg",
    rounding="mass",
    needs=("bar.diameter", "bar.length", "bar.density"),
    how="volume of the cylinder times its density",
)
def bar_mass(diameter: float, length: float, density: float) -> float:
    return mass_cylinder(diameter, length, density)


@computed(
    "collar.finished_mass",
    label="mass of the finished collars",
    unit="kg",
    rounding="mass",
    needs=("collar.diameter", "collar.width", "bore.nominal", "collar.density", "collar.pieces"),
    how="volume of the rings times their density",
)
def collars_mass(diameter: float, width: float, bore: float, density: float, pieces: int) -> float:
    return mass_with_pieces(0.0, mass_cylinder(diameter, width, density, bore), pieces)


@computed(
    "consume.compound",
    label="retaining compound used",
    unit="ml",
    bound="least",
    needs=("joint.area", "bore.gap_largest", "collar.pieces"),
    tables=("materials/consumables",),
    how="area of the seats times half the largest gap on diameter, and what is wiped off; up to a whole step of the bottle",
)
def compound(area: float, gap: float, pieces: int, table: Table) -> float:
    waste, step = (table.value(f"compound_{name}") for name in ("waste", "step"))
    return step_up(compound_needed(area, gap, waste, pieces), step)


def _used(name: str, what: str, unit: str) -> None:
    @computed(f"consume.{name}", label=f"{what} used", unit=unit, rounding="ratio" if unit != "1" else "count",
              tables=("materials/consumables",), how="a usual amount for this job")  # fmt: skip
    def _amount(table: Table) -> float:
        return table.value(name)


def _fastenings(method: str, what: str) -> None:
    of = f"joint.{method}.count"

    @computed(f"consume.{method}", label=f"{what} used", kind="count", rounding="count", needs=(of, "collar.pieces"),
              how="so many in each collar")  # fmt: skip
    def _in_all(each: int, pieces: int) -> int:
        return pieces * each


for _method, _what in (
    ("set_screws", "set screws"),
    ("split_clamp", "clamp screws"),
    ("radial_pin", "pins across"),
):
    _fastenings(_method, _what)

_used("packing", "soft packing", "1")
_used("cutting_fluid", "cutting fluid", "ml")
_used("grease", "grease", "g")
_used("oil", "oil", "ml")
_used("wipes", "wipes", "1")
_used("degreaser", "degreaser", "ml")
_used("activator", "activator", "ml")
_used("marking_blue", "marking blue", "ml")
_used("soft_pad", "soft pads", "1")
