"""The ends of the bar centred away from the lathe: whether the bench has what that needs, and what it costs."""

from tailtrue.calc.centre_hole import mean_cutting_diameter
from tailtrue.calc.spindle_band import speed_band
from tailtrue.calc.steps import step_down
from tailtrue.computed.registry import Cut, Limited, computed
from tailtrue.computed.speed_table import SPEED_TABLES, surface_band
from tailtrue.computed.stepping import least_of
from tailtrue.tables import Table


@computed(
    "bench.serves",
    label="the ends may be marked out and drilled upright under the drill press",
    kind="yes-no",
    needs=(
        "crib.drill_press?", "crib.upright_to?", "crib.upright_height?", "crib.caliper_resolution?", "bar.diameter",
        "bar.sawn_length", "limit.press_clearance",
    ),
    how="a drill press is there, its angle plate holds a bar of this diameter upright, bar and clearance stand under its "
    "chuck, and a caliper shows how far a hole lies beside the middle",
)  # fmt: skip
def serves(
    press: bool | None, thickest: float | None, height: float | None, caliper: float | None, diameter: float,
    length: float, clearance: float,
) -> bool:  # fmt: skip
    if not press or thickest is None or height is None or caliper is None:
        return False
    return diameter <= thickest and length + clearance <= height


@computed(
    "bench.press_speed",
    label="speed of the drill press, centre drilling the bar",
    unit="1/min",
    rounding="count",
    bound="most",
    needs=("bar.material", "bar.centre_pilot", "bar.centre_body", "limit.centre_drill_speed", "limit.speed_step"),
    tables=SPEED_TABLES,
    how="surface speed of the table on the mean of pilot and body diameter, capped; down to a whole step",
    cut=Cut("bar.material", "centre-drilling", "HSS"),
)
def press_speed(
    material: str, pilot: float, body: float, most: float, step: float, table: Table, ratios: Table
) -> Limited:  # fmt: skip
    band = surface_band(material, "centre-drilling", "HSS", table, ratios)
    wanted = speed_band(*band, mean_cutting_diameter(pilot, body)).middle_per_min
    fastest, by = least_of((wanted, "surface speed"), (most, "a thin pilot"))
    return Limited(step_down(fastest, step), by)


@computed(
    "collar.clean_up",
    label="stock that cleans a collar up all round, on diameter",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("bar.hold?", "limit.clean_up", "limit.bench_run_out"),
    tables=("machines/holdings",),
    how="as usual; where the ends of the bar are centred at the bench, what the bar may then run out besides",
)
def clean_up(hold: str | None, usual: float, bench: float, holdings: Table) -> Limited:
    if hold is not None and holdings.one(decision="bar.hold", hold=hold).yes("marked_out"):
        return Limited(usual + bench, "the centre holes were marked out by hand")
    return Limited(usual, "centre holes drilled in the lathe")
