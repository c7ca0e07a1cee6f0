"""The skim between centres: forces, bending, and how many visits the collars last."""

from tailtrue.calc.alignment import uses_left
from tailtrue.calc.beams import deflection_between_centres
from tailtrue.calc.bending import diameter_error
from tailtrue.calc.chip import corrected_force, passive_force
from tailtrue.calc.cutting import cutting_force, passes_for_stock
from tailtrue.calc.lengths import on_diameter, over_both_sides, share_of
from tailtrue.calc.steps import equal_cut, length_of_steps, step_down, steps_in
from tailtrue.computed.registry import Limited, computed, taken
from tailtrue.tables import Table


@computed(
    "skim.used_feed",
    label="feed of the skim",
    unit="mm/rev",
    rounding="feed",
    needs=("skim.feed?", "skim.hand_feed"),
    how="the power feed, or the feed by hand where the lathe has no fitting one",
)
def used_feed(feed: float | None, hand: float) -> Limited:
    return taken(hand, "the feed by hand: no power feed fits") if feed is None else taken(feed, "the power feed")


@computed(
    "skim.cutting_force",
    label="cutting force of the skim",
    unit="N",
    rounding="force",
    bound="least",
    needs=("collar.material", "skim.truing_depth", "skim.used_feed"),
    tables=("materials/materials", "cutting/force_factors"),
    how="Kienzle with the high constants, the worn tool and high-speed-steel factor",
)
def force(material: str, depth: float, feed: float, materials: Table, factors: Table) -> float:
    metal = materials.one(material=material)
    slow = factors.value("hss_speed_kc_factor")
    sharp = cutting_force(metal.number("kc11_high_mpa"), metal.number("mc_high"), depth, feed)
    return corrected_force(sharp, [slow])


@computed(
    "skim.radial_force",
    label="force that pushes the bar off, skim",
    unit="N",
    rounding="force",
    bound="least",
    needs=("skim.cutting_force", "skim.truing_depth", "skim.nose_radius"),
    tables=("cutting/force_factors",),
    how="as large as the cutting force where the cut is shallower than the nose radius of the tool, else a share of it",
)
def radial_force(cutting: float, depth: float, nose: float, factors: Table) -> float:
    light, rough = (factors.value(f"passive_to_cutting_force_{kind}_cut") for kind in ("light", "rough"))
    return passive_force(cutting, depth, nose, light, rough)


@computed(
    "skim.bend",
    label="bending of the bar under the skim at a collar",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=("skim.radial_force", "align.span", "align.station", "bar.modulus", "bar.diameter"),
    how="F a^2 b^2 / (3 E I L); the same at both collars, so it cancels in the difference",
)
def bend(load: float, span: float, station: float, modulus: float, diameter: float) -> float:
    return deflection_between_centres(load, span, station, modulus, diameter)


@computed(
    "skim.bend_on_diameter",
    label="change of diameter from bending",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=("skim.bend",),
    how="twice the bending",
)
def bend_on_diameter(deflection: float) -> float:
    return diameter_error(deflection)


@computed(
    "skim.bend_most",
    label="bending allowed, on diameter",
    unit="mm",
    rounding="difference",
    bound="most",
    needs=("align.limit", "limit.bend_share"),
    how="a share of the limit on the difference of the collars",
)
def bend_most(limit: float, share: float) -> float:
    return share_of(limit, share)


@computed(
    "skim.truing_depth",
    label="depth of the truing cut per side",
    unit="mm",
    rounding="depth",
    needs=("skim.depth", "lathe.radial_division", "limit.truing_in_skims"),
    how="some depths of the skim, in whole divisions",
)
def truing_depth(depth: float, division: float, times: float) -> float:
    return step_down(length_of_steps(times, depth), division)


@computed(
    "skim.truing_divisions",
    label="divisions of the dial for the truing cut",
    unit="1",
    rounding="count",
    needs=("skim.truing_depth", "lathe.radial_division"),
    how="depth per side divided by what one division moves the tool",
)
def truing_divisions(depth: float, division: float) -> float:
    return float(steps_in(depth, division))


@computed(
    "skim.truing_step",
    label="change of diameter by the truing cut",
    unit="mm",
    rounding="depth",
    needs=("skim.truing_depth",),
    how="twice the depth per side",
)
def truing_step(depth: float) -> float:
    return on_diameter(depth)


@computed(
    "skim.use_per_visit",
    label="diameter one visit costs",
    unit="mm",
    rounding="depth",
    needs=("skim.truing_depth", "skim.depth"),
    how="twice the truing cut and twice the skim",
)
def use_per_visit(truing: float, depth: float) -> float:
    return on_diameter(truing + depth)


@computed(
    "skim.worn_out_at",
    label="collars are worn out at",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("bar.diameter", "limit.collar_wall", "collar.micrometer_from?", "bar.worn_out_told?"),
    how="the largest of bar and walls, the lower end of the micrometer, and what is told of a bar on hand",
)
def worn_out_at(bar: float, wall: float, micrometer: float | None, told: float | None) -> Limited:
    least = Limited(over_both_sides(bar, wall), "the wall of the collar")
    also = ((micrometer, "the lower end of the micrometer"), (told, "what is told of this bar"))
    return max([least, *(Limited(size, by) for size, by in also if size is not None)], key=lambda one: one.value)


@computed(
    "skim.visits",
    label="visits the collars last",
    kind="count",
    rounding="count",
    needs=("collar.diameter", "skim.worn_out_at", "skim.use_per_visit"),
    how="diameter there is to use, divided by what a visit costs, whole visits",
)
def visits(diameter: float, least: float, use: float) -> int:
    return uses_left(diameter, least, use)


@computed(
    "collar.turning_passes",
    label="roughing passes over each collar",
    kind="count",
    rounding="count",
    needs=("collar.blank_diameter", "collar.diameter", "collar.turning.depth", "joint.spared_depth?"),
    how="stock on diameter divided by what a pass takes off the diameter, up to a whole pass; no deeper than a thin joint "
    "bears",
)
def turning_passes(stock: float, finished: float, depth: float, spared: float | None) -> Limited:
    how = "stock on diameter divided by what a pass takes off the diameter, up to a whole pass"
    if spared is not None and spared < depth:
        return taken(
            passes_for_stock(stock - finished, spared), "a thin joint", f"{how}; no deeper than the thin joint bears"
        )
    return taken(passes_for_stock(stock - finished, depth), "the depth of a pass", how)


@computed(
    "collar.turning_cut",
    label="depth per side of each roughing pass over the collars",
    unit="mm",
    rounding="depth",
    needs=("collar.blank_diameter", "collar.diameter", "collar.turning_passes", "lathe.radial_division"),
    how="stock per side shared out over the passes, in whole divisions of the dial",
)
def turning_cut(stock: float, finished: float, passes: int, division: float) -> float:
    return equal_cut(stock - finished, passes, division)


@computed(
    "collar.turning_divisions",
    label="divisions of the dial for each roughing pass",
    unit="1",
    rounding="count",
    needs=("collar.turning_cut", "lathe.radial_division"),
    how="depth per side divided by what one division moves the tool",
)
def turning_divisions(depth: float, division: float) -> float:
    return float(steps_in(depth, division))


@computed(
    "collar.turning_step",
    label="change of diameter by each roughing pass over the collars",
    unit="mm",
    rounding="depth",
    needs=("collar.turning_cut",),
    how="twice the depth per side",
)
def turning_step(depth: float) -> float:
    return on_diameter(depth)


@computed(
    "collar.stop_past",
    label="how far past the collar the carriage stop lets the tool",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("collar.dog_gap", "limit.stop_share"),
    how="a share of the room between collar and dog; the rest stays between tool and dog",
)
def stop_past(gap: float, share: float) -> float:
    return share_of(gap, share)
