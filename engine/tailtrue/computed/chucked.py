"""A stout bar held in the chuck, its end free: how far it stands out, where its bands are, what the difference may be."""

from tailtrue.calc.adequacy import adequate
from tailtrue.calc.alignment import scaled_tolerance
from tailtrue.calc.beams import greatest_deflection_cantilever
from tailtrue.calc.bending import diameter_error
from tailtrue.calc.chip import corrected_force, passive_force
from tailtrue.calc.cutting import cutting_force, passes_for_stock
from tailtrue.calc.doubts import all_together
from tailtrue.calc.lengths import length_of_diameters, length_ratio, middle_past, near_edge, on_diameter, share_of
from tailtrue.calc.steps import step_down, surely_less
from tailtrue.calc.uncertainty import expanded
from tailtrue.computed.alignment import budget_parts
from tailtrue.computed.operation import operation
from tailtrue.computed.registry import Limited, computed
from tailtrue.computed.stepping import least_of
from tailtrue.tables import Table

_CHUCK = (("chuck.speed_limit", "the chuck"),)


@computed(
    "chucked.stand_out",
    label="bar standing out of the jaws",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("bar.diameter", "limit.chucked_overhang", "bar.stock_length", "chuck.jaw_depth", "lathe.size_step"),
    how="so many diameters, less where the whole depth of the jaws must grip; down to a whole step of the rule",
)
def stand_out(diameter: float, ratio: float, length: float, grip: float, step: float) -> Limited:
    out, by = least_of(
        (length_of_diameters(diameter, ratio), "a longer free end climbs the tool and whips"),
        (length - grip, "the jaws grip over their whole depth"),
    )
    return Limited(step_down(out, step), by)


@computed("chucked.free", label="free length when the jaws grip over their whole depth", unit="mm", rounding="length",
          bound="least", needs=("bar.stock_length", "chuck.jaw_depth"),
          how="length of the piece less the depth of the jaws")  # fmt: skip
def free(length: float, grip: float) -> float:
    return length - grip


@computed("chucked.free_ratio", label="that free length in diameters", unit="1", bound="least",
          needs=("chucked.free", "bar.diameter"), how="free length divided by diameter")  # fmt: skip
def free_ratio(out: float, diameter: float) -> float:
    return length_ratio(out, diameter)


@computed("chucked.overhang_ratio", label="free length of the bar in diameters", unit="1", bound="least",
          needs=("chucked.stand_out", "bar.diameter"), how="free length divided by diameter")  # fmt: skip
def overhang_ratio(out: float, diameter: float) -> float:
    return length_ratio(out, diameter)


@computed("chucked.overhang_factor", label="share of speed and depth left by the free length", unit="1",
          needs=("chucked.overhang_ratio",), tables=("cutting/adjustments",),
          how="from the table of adjustments for unsupported work")  # fmt: skip
def overhang_factor(ratio: float, adjustments: Table) -> float:
    return adjustments.within(
        ratio, "from_ratio", "to_ratio", ends="[)", situation="unsupported-work"
    ).number("speed_factor")  # fmt: skip


operation(
    "chucked.relief", "relieving the middle", table="turn-finish", work="bar", diameter="bar.diameter",
    tool="tool.material", caps=_CHUCK, speed_factor="chucked.overhang_factor", fine=True,
)  # fmt: skip
operation(
    "chucked.skim", "skimming the bands", table="skim", work="bar", diameter="bar.diameter", tool="tool.material",
    caps=_CHUCK, speed_factor="chucked.overhang_factor", fine=True,
)  # fmt: skip


@computed("chucked.relief_stock", label="diameter by which the middle is turned smaller", unit="mm", rounding="depth",
          bound="least", needs=("chucked.skim.depth", "limit.chucked_rounds"),
          how="twice the depth per side of a skim, for each round that may follow and one to spare")  # fmt: skip
def relief_stock(depth: float, rounds: float) -> float:
    return on_diameter(depth, rounds)


@computed("chucked.relief_passes", label="passes that relieve the middle", kind="count", rounding="count",
          needs=("chucked.relief_stock", "chucked.relief.depth"),
          how="what is turned off, divided by what a pass takes off the diameter, up to a whole pass")  # fmt: skip
def relief_passes(stock: float, depth: float) -> int:
    return passes_for_stock(stock, depth)


@computed("chucked.near", label="middle of the band at the chuck from the jaws", unit="mm", rounding="length",
          needs=("limit.chucked_band", "limit.chucked_clear"),
          how="clear of the jaws, and half a band")  # fmt: skip
def near(band: float, clear: float) -> float:
    return middle_past(clear, band)


@computed("chucked.far", label="middle of the band at the free end from the jaws", unit="mm", rounding="length",
          needs=("chucked.stand_out", "limit.chucked_band"), how="free length less half a band")  # fmt: skip
def far(out: float, band: float) -> float:
    return near_edge(out, band)


@computed("chucked.spacing", label="distance between the middles of the bands", unit="mm", rounding="length",
          needs=("chucked.near", "chucked.far"), how="the one less the other")  # fmt: skip
def spacing(first: float, second: float) -> float | None:
    return second - first if second > first else None


@computed(
    "chucked.limit",
    label="limit on the difference of the bands",
    unit="mm",
    rounding="difference",
    bound="most",
    needs=("job.accuracy", "chucked.spacing"),
    tables=("alignment/chucked",),
    how="tolerance of the chosen accuracy for a chucked bar, scaled to the distance between the bands",
)
def limit(word: str, apart: float, accuracy: Table) -> float:
    row = accuracy.one(word=word)
    return scaled_tolerance(row.number("tolerance_mm"), row.number("over_length_mm"), apart)


@computed(
    "chucked.bend_on_diameter",
    label="change of diameter from bending at the free end",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=("bar.material", "chucked.skim.depth", "chucked.skim.feed?", "chucked.skim.hand_feed", "crib.nose_radius",
           "chucked.far", "bar.modulus", "bar.diameter"),
    tables=("materials/materials", "cutting/force_factors"),
    how="twice F l^3 / (3 E I) and the shear, with the force of the skim of a worn tool; spring passes make it less",
)  # fmt: skip
def bend_on_diameter(
    material: str, depth: float, feed: float | None, hand: float, nose: float, length: float, modulus: float,
    diameter: float, materials: Table, factors: Table,
) -> float:  # fmt: skip
    metal = materials.one(material=material)
    slow, light, rough = (
        factors.value(name)
        for name in ("hss_speed_kc_factor", "passive_to_cutting_force_light_cut", "passive_to_cutting_force_rough_cut")
    )
    sharp = cutting_force(metal.number("kc11_high_mpa"), metal.number("mc_high"), depth, feed or hand)
    cutting = corrected_force(sharp, [slow])
    return diameter_error(
        greatest_deflection_cantilever(passive_force(cutting, depth, nose, light, rough), length, modulus, diameter)
    )


@computed("chucked.bend_most", label="bending allowed, on diameter", unit="mm", rounding="difference", bound="most",
          needs=("chucked.limit", "limit.bend_share"), how="a share of the limit on the difference")  # fmt: skip
def bend_most(within: float, share: float) -> float:
    return share_of(within, share)


@computed(
    "chucked.uncertainty",
    label="doubt of the difference of the bands",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=("bar.micrometer_resolution?", "crib.caliper_resolution?", "bar.diameter", "bar.expansion", "limit.readings"),
    tables=("alignment/uncertainty", "alignment/repeatability"),
    how="the same budget as for two collars, for two bands read with one micrometer",
)
def uncertainty(
    micrometer: float | None, caliper: float | None, diameter: float, expansion: float, readings: float,
    components: Table, repeatability: Table,
) -> float | None:  # fmt: skip
    resolution = micrometer if micrometer is not None else caliper
    if resolution is None:
        return None
    kind = "micrometer" if micrometer is not None else "caliper"
    parts = budget_parts(kind, resolution, diameter, expansion, readings, components, repeatability)
    return expanded(all_together(parts), components.value("coverage_factor"))


@computed("chucked.verdict_possible", label="the micrometer is good enough for a verdict on the bands", kind="yes-no",
          needs=("chucked.uncertainty", "chucked.limit", "limit.verdict_share", "bar.micrometer_covers"),
          how="a micrometer reads the bar, and the doubt is within a share of the limit")  # fmt: skip
def verdict_possible(unsure: float, within: float, share: float, covers: bool) -> bool:
    return covers and adequate(unsure, within, share)


@computed("chucked.inside", label="difference of the bands that is surely inside the limit", unit="mm",
          rounding="difference", bound="most", needs=("chucked.limit", "chucked.uncertainty", "lathe.difference_step"),
          how="limit down less doubt up, as written")  # fmt: skip
def inside(within: float, unsure: float, step: float) -> float | None:
    return surely_less(within, unsure, step) if within > unsure else None


@computed("chucked.outside", label="difference of the bands that is surely outside the limit", unit="mm",
          rounding="difference", bound="least", needs=("chucked.limit", "chucked.uncertainty"),
          how="limit and the doubt")  # fmt: skip
def outside(within: float, unsure: float) -> float:
    return within + unsure
