"""The cut of the skim: what its depth, its feed and the nose of its tool could come from; decisions say which it is."""

from tailtrue.calc.beams import deflection_between_centres
from tailtrue.calc.bending import diameter_error
from tailtrue.calc.chip import corrected_force, passive_force
from tailtrue.calc.cut_power import depth_for_power
from tailtrue.calc.cutting import cutting_force
from tailtrue.calc.finish import feed_for_peak_height
from tailtrue.calc.steps import length_of_steps, step_down, step_up, steps_in
from tailtrue.computed.operation import depth_on_the_dial, feed_row
from tailtrue.computed.registry import Limited, computed
from tailtrue.tables import Table

_WHAT = "skimming the collars"
_OF_PLATE = "finest-on-the-plate"


def _of_table(name: str, label: str, unit: str, rounding: str, bound: str, column: str) -> None:
    @computed(name, label=label, unit=unit, rounding=rounding, bound=bound,
              needs=("collar.feed_group", "tool.material"), tables=("cutting/feeds",),
              how="from the table of feeds")  # fmt: skip
    def _cell(group: str, tool: str, feeds: Table) -> float:
        return feed_row(feeds, "skim", group, tool).number(column)


@computed("skim.nose_radius", label="nose radius that skims", unit="mm", rounding="depth", settled_by="skim.nose",
          how="as found on the tool, or what it is stoned or ground to")  # fmt: skip
def nose_radius(nose: Limited) -> Limited:
    return nose


@computed(
    "skim.feed_by_nose",
    label="coarsest feed whose marks stay low",
    unit="mm/rev",
    rounding="feed",
    bound="most",
    needs=("skim.nose_radius", "limit.skim_crest"),
    how="f = sqrt(8 r Rt): the feed that leaves marks of the height allowed",
)
def feed_by_nose(nose: float, crest: float) -> float:
    return feed_for_peak_height(crest, nose)


_of_table("skim.feed_high", "coarsest feed of the advised band, skim", "mm/rev", "feed", "most", "feed_high_mm")
_of_table("skim.feed_low", "finest feed that cuts, skim", "mm/rev", "feed", "least", "feed_low_mm")


@computed("skim.feed_most", label="coarsest feed of the skim", unit="mm/rev", rounding="feed", bound="most",
          settled_by="skim.feed_bound", how="the least of the feeds that were weighed")  # fmt: skip
def feed_most(bound: Limited) -> Limited:
    return bound


@computed("skim.feed_finest", label="finest feed on the plate that cuts", unit="mm/rev", rounding="feed",
          needs=("lathe.feeds?", "skim.feed_low"), how="of the feeds on the plate the least that still cuts")  # fmt: skip
def feed_finest(feeds: tuple[float, ...] | None, low: float) -> Limited:
    cutting = (feed for feed in feeds or () if feed >= low)
    return Limited(min(cutting, default=None), "no feed on the plate is coarse enough to cut")


@computed(
    "skim.plate_cuts",
    label="a feed on the plate is coarse enough to cut",
    kind="yes-no",
    needs=("lathe.feeds?", "skim.feed_low"),
    how="the coarsest feed on the plate against the finest that cuts",
)
def plate_cuts(feeds: tuple[float, ...] | None, low: float) -> bool:
    return max(feeds or (), default=0.0) >= low


@computed("skim.feed", label=f"feed, {_WHAT}", unit="mm/rev", rounding="feed",
          needs=("skim.feed_from", "skim.feed_finest?"),
          how="the finest feed on the lathe's own plate that cuts and leaves low marks")  # fmt: skip
def feed(chosen: str, finest: float | None) -> Limited:
    if chosen != _OF_PLATE or finest is None:
        return Limited(None, "no power feed inside the advised band; feed by hand")
    return Limited(finest, "of the feeds on the plate")


_of_table("skim.depth_edge", "least depth that the edge cuts", "mm", "depth", "least", "depth_low_mm")
_of_table("skim.depth_high", "deepest skim of the advised band", "mm", "depth", "most", "depth_high_mm")


@computed("skim.depth_need", label="least depth of the skim", unit="mm", rounding="depth", bound="least",
          settled_by="skim.depth_from", how="the greatest of the depths that were weighed")  # fmt: skip
def depth_need(bound: Limited) -> Limited:
    return bound


@computed("skim.depth_most", label="deepest skim", unit="mm", rounding="depth", bound="most",
          settled_by="skim.depth_bound", how="the least of the depths that were weighed")  # fmt: skip
def depth_most(bound: Limited) -> Limited:
    return bound


@computed(
    "skim.depth_by_motor",
    label="deepest skim that the motor drives",
    unit="mm",
    rounding="depth",
    bound="most",
    needs=("collar.material", "skim.surface_speed", "skim.used_feed", "lathe.cutting_power"),
    tables=("materials/materials",),
    how="Kienzle with the high constants, at the power at the cut",
)
def depth_by_motor(material: str, surface: float, feed: float, power: float, materials: Table) -> float:
    metal = materials.one(material=material)
    return depth_for_power(metal.number("kc11_high_mpa"), metal.number("mc_high"), feed, surface, power)


@computed(
    "skim.depth_by_bending",
    label="deepest skim that the bar bears",
    unit="mm",
    rounding="depth",
    bound="most",
    needs=(
        "collar.material", "skim.used_feed", "lathe.radial_division", "limit.truing_in_skims", "skim.nose_radius",
        "align.span", "align.station", "bar.modulus", "bar.diameter", "skim.bend_most",
    ),
    tables=("materials/materials", "cutting/force_factors"),
    how="whole divisions of the dial, until the truing cut before the skim bends the bar by what is allowed",
)  # fmt: skip
def depth_by_bending(
    material: str, feed: float, division: float, times: float, nose: float, span: float, station: float, modulus: float,
    diameter: float, allowed: float, materials: Table, factors: Table,
) -> float:  # fmt: skip
    metal = materials.one(material=material)
    slow, light, rough = (
        factors.value(name)
        for name in ("hss_speed_kc_factor", "passive_to_cutting_force_light_cut", "passive_to_cutting_force_rough_cut")
    )
    truing = length_of_steps(times, division)
    force = corrected_force(cutting_force(metal.number("kc11_high_mpa"), metal.number("mc_high"), truing, feed), [slow])
    pushed = passive_force(force, truing, nose, light, rough)
    one_division = diameter_error(deflection_between_centres(pushed, span, station, modulus, diameter))
    return length_of_steps(steps_in(allowed, one_division), division)


@computed(
    "skim.depth",
    label=f"depth of cut per side, {_WHAT}",
    unit="mm",
    rounding="depth",
    needs=("skim.depth_need", "skim.depth_most", "lathe.radial_division"),
    how="the least that is needed, up to a whole division of the dial, and no deeper than is borne; never less than one",
)
def depth(need: float, most: float, division: float) -> Limited:
    needed, borne = step_up(need, division), step_down(most, division)
    weighed = (need, "the least that is needed"), (most, "the deepest that is borne")
    return Limited(max(min(needed, borne), division), (weighed[0] if needed <= borne else weighed[1])[1], weighed)


depth_on_the_dial("skim", _WHAT)
