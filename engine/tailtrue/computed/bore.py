"""The bore: made to the bar as it measures, with the boring bar that reaches."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from tailtrue.calc.boring import overhang_ratio
from tailtrue.calc.boring_passes import boring_passes
from tailtrue.calc.fits import bore_window
from tailtrue.calc.lengths import midway, on_diameter, over_both_sides
from tailtrue.calc.steps import finishing_cut, step_down, steps_in
from tailtrue.computed.registry import Limited, computed
from tailtrue.tables import Row, Table

Record = Mapping[str, Any]
_BONDED = "bonded-slip-fit"
_FACED_AFTER = "stub-mandrel"  # the way of holding the second face that comes after the bore


@computed(
    "bar.working_diameter",
    label="diameter of the bar that the plan reckons with",
    unit="mm",
    rounding="fit",
    needs=("bar.diameter", "job.measured_head?", "job.measured_middle?", "job.measured_tail?"),
    how="the least that was measured; the nominal diameter until it has been measured",
)
def working_diameter(nominal: float, *seats: tuple[float, ...] | None) -> Limited:
    measured = [reading for readings in seats for reading in readings or ()]
    if measured:
        return Limited(min(measured), "the least of the readings")
    return Limited(nominal, "nominal: not measured yet")


def _reading(name: str, label: str, take: Callable[[Sequence[float]], float]) -> None:
    @computed(
        name,
        label=label,
        unit="mm",
        rounding="fit",
        needs=("job.measured_head", "job.measured_tail", "job.measured_middle?"),
        how="of all readings at every seat",
    )
    def _of_readings(head: Sequence[float], tail: Sequence[float], middle: Sequence[float] | None) -> float:
        return take([*head, *tail, *(middle or ())])


_reading("bar.measured_least", "least reading of the bar", min)
_reading("bar.measured_largest", "largest reading of the bar", max)


@computed(
    "bore.gap_least_usual",
    label="gap a bore made by hand needs, on diameter",
    unit="mm",
    rounding="fit",
    bound="least",
    needs=("bar.diameter",),
    tables=("fits/attachment_clearance",),
    how="the target of a bonded slip fit",
)
def gap_usual(diameter: float, clearances: Table) -> float:
    return clearances.within(diameter, "over_mm", "upto_mm", method=_BONDED).number("target_mm")


@computed(
    "bore.gauge_reading",
    label="gauge for the bore",
    kind="record",
    needs=("bore.gauge", "crib.bore_gauges", "bar.diameter", "limit.bond_gap"),
    tables=("measuring/bore_gauges",),
    how="the gauge of the chosen kind whose range holds the bore",
)
def gauge_reading(
    kind: str, owned: Sequence[Record], diameter: float, largest: float, gauges: Table
) -> dict[str, Any] | None:
    row = gauges.one(kind=kind)
    gauge = gauge_for(owned, kind, diameter, largest)
    return None if gauge is None else {**gauge, "uncertainty": gauge.get("doubt") or row.number("expanded_uncertainty_mm")}


def gauge_for(owned: Sequence[Record], kind: str, bar: float, gap: float) -> Record | None:
    """The first gauge of a kind whose range holds every bore that this bar may get."""
    return next((g for g in owned if g["kind"] == kind and g["from"] <= bar and bar + gap <= g["to"]), None)


@computed(
    "bore.gauge_uncertainty",
    label="uncertainty of the bore reading",
    unit="mm",
    rounding="fit",
    bound="least",
    needs=("bore.gauge_reading",),
    how="as given for the gauge; else the expanded uncertainty usual for its kind",
)
def gauge_uncertainty(gauge: Record) -> Any:
    return gauge["uncertainty"]


def _owns(kind: str) -> None:
    @computed(
        f"crib.has_{kind.replace('-', '_')}",
        label=f"{kind.replace('-', ' ')} for the bore in the crib",
        kind="yes-no",
        needs=("crib.bore_gauges", "bar.diameter", "limit.bond_gap"),
        how="whether the crib has one whose range holds the bore",
    )
    def _has(owned: Sequence[Record], diameter: float, largest: float) -> bool:
        return gauge_for(owned, kind, diameter, largest) is not None


for _kind in ("bore-gauge", "inside-micrometer"):
    _owns(_kind)


@computed(
    "crib.has_telescoping",
    label="telescoping for the bore in the crib",
    kind="yes-no",
    needs=("crib.bore_gauges", "bar.diameter", "limit.bond_gap", "bore.reader?"),
    how="whether the crib has one whose range holds the bore, and an outside micrometer that reads it",
)
def has_telescoping(owned: Sequence[Record], diameter: float, largest: float, reader: Record | None) -> bool:
    return reader is not None and gauge_for(owned, "telescoping", diameter, largest) is not None


def _window(least: float, most: float, gap_least: float, gap_most: float, unsure: float, step: float) -> tuple[float, float]:
    return bore_window(least, most, gap_least, gap_most, unsure, step)


_WINDOW = ("bore.gap_least", "bore.gap_largest", "bore.gauge_uncertainty", "lathe.fit_step")


def _end(end: str, words: str) -> None:
    needs = (f"job.measured_{end}", *_WINDOW)
    how = "the bar as measured, plus the least and less the largest clearance, drawn in by the uncertainty of the gauge"

    @computed(f"bore.{end}_low", label=f"smallest bore, collar at the {words} end", unit="mm", rounding="fit",
              bound="least", needs=needs, how=how)  # fmt: skip
    def _low(measured: tuple[float, ...], *window: float) -> float:
        return _window(min(measured), max(measured), *window)[0]

    @computed(f"bore.{end}_high", label=f"largest bore, collar at the {words} end", unit="mm", rounding="fit",
              bound="most", needs=needs, how=how)  # fmt: skip
    def _high(measured: tuple[float, ...], *window: float) -> float:
        return _window(min(measured), max(measured), *window)[1]


_end("head", "headstock")
_end("tail", "tailstock")

_MIDDLE = ("job.measured_middle", "job.measured_tail", *_WINDOW)


@computed("bore.middle_low", label="smallest bore, collar in the middle", unit="mm", rounding="fit", bound="least",
          needs=_MIDDLE, how="as at the ends, from the largest reading there and at the seat it slides over")  # fmt: skip
def middle_low(middle: tuple[float, ...], passed: tuple[float, ...], *window: float) -> float:
    return _window(min(middle), max(*middle, *passed), *window)[0]


@computed("bore.middle_high", label="largest bore, collar in the middle", unit="mm", rounding="fit", bound="most",
          needs=_MIDDLE, how="as at the ends, from the least reading there")  # fmt: skip
def middle_high(middle: tuple[float, ...], passed: tuple[float, ...], *window: float) -> float:
    return _window(min(middle), max(*middle, *passed), *window)[1]


@computed(
    "bore.spread",
    label="how unevenly the bar was measured, at the worse seat",
    unit="mm",
    rounding="fit",
    bound="least",
    needs=("job.measured_head?", "job.measured_tail?", "job.measured_middle?"),
    how="largest less least reading; in the middle of the seat it slides over too; nothing until the bar has been measured",
)
def spread(head: Sequence[float] | None, tail: Sequence[float] | None, middle: Sequence[float] | None) -> float:
    seats = [head or (0.0,), tail or (0.0,)]
    uneven = [max(readings) - min(readings) for readings in seats]
    if middle:
        uneven.append(max(*middle, *(tail or ())) - min(middle))
    return max(uneven)


@computed(
    "bore.band_least",
    label="room that the gauge needs to judge a bore",
    unit="mm",
    rounding="fit",
    bound="least",
    needs=("bore.gauge_uncertainty", "lathe.fit_step"),
    how="twice the uncertainty of the gauge, and a step of rounding at both ends",
)
def band_least(unsure: float, step: float) -> float:
    return over_both_sides(0.0, unsure + step)


@computed(
    "bore.blank_fits",
    label="the bore that is there fits the bar as it is",
    kind="yes-no",
    needs=("hole.start", "bore.head_low", "bore.head_high", "bore.tail_low", "bore.tail_high"),
    how="whether it lies between the smallest and the largest bore at both ends",
)
def blank_fits(start: float, head_low: float, head_high: float, tail_low: float, tail_high: float) -> bool:
    return max(head_low, tail_low) <= start <= min(head_high, tail_high)


@computed(
    "bore.add_least",
    label="least to add to the largest reading of the bar",
    unit="mm",
    rounding="fit",
    bound="least",
    needs=_WINDOW,
    how="least clearance and the uncertainty of the gauge",
)
def add_least(gap_least: float, gap_most: float, unsure: float, step: float) -> float:
    return bore_window(0.0, 0.0, gap_least, gap_most, unsure, step)[0]


@computed(
    "bore.add_most",
    label="most to add to the least reading of the bar",
    unit="mm",
    rounding="fit",
    bound="most",
    needs=_WINDOW,
    how="largest clearance less the uncertainty of the gauge",
)
def add_most(gap_least: float, gap_most: float, unsure: float, step: float) -> float:
    return bore_window(0.0, 0.0, gap_least, gap_most, unsure, step)[1]


@computed(
    "lathe.fit_step",
    label="step of fine sizes",
    unit="mm",
    rounding="fit",
    needs=("lathe.dials", "limit.fit_step_metric", "limit.fit_step_inch"),
    how="the finest step that is written on the sheet",
)
def fit_step(dials: str, metric: float, inch: float) -> float:
    return metric if dials == "metric" else inch


@computed(
    "bore.tool",
    label="boring bar",
    kind="record",
    needs=("crib.boring_bars", "hole.before_boring", "bore.overhang"),
    how="the thickest that goes into the hole and reaches through the blank",
)
def boring_tool(owned: Sequence[Record], hole: float, overhang: float) -> Limited:
    fitting = [bar for bar in owned if bar["least_bore"] <= hole and bar["reach"] >= overhang]
    if not fitting:
        return Limited(None, "no boring bar of the crib goes into the drilled hole and reaches through the blank")
    return Limited(max(fitting, key=lambda bar: bar["shank"]), "the thickest that goes in and reaches")


@computed(
    "bore.tool_fits",
    label="a boring bar fits the hole",
    kind="yes-no",
    needs=("bore.tool?", "hole.before_boring"),
    how="whether the crib has one that goes in and reaches",
)
def tool_fits(tool: Record | None, _ladder: Any) -> bool:
    return tool is not None


@computed("bore.shank", label="shank of the boring bar", unit="mm", rounding="size", needs=("bore.tool",),
          how="as given for the boring bar")  # fmt: skip
def shank(tool: Record) -> Any:
    return tool["shank"]


@computed("bore.tip", label="tip of the boring bar", kind="choice", choices=("HSS", "carbide"), needs=("bore.tool",),
          how="as given for the boring bar")  # fmt: skip
def tip(tool: Record) -> Any:
    return tool["tip"]


@computed(
    "bore.overhang",
    label="boring bar standing out of its holder",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("bore.through_width", "limit.boring_clearance"),
    how="width of the blank while it is bored, and clearance",
)
def overhang(width: float, clearance: float) -> float:
    return width + clearance


@computed(
    "bore.through_width",
    label="width of the blank while it is bored",
    unit="mm",
    rounding="length",
    needs=("collar.width", "collar.second_face_hold?", "collar.saw_width", "collar.facing_stock"),
    how="width of the collar; where the second side is faced after the bore, the blank less what its first side lost",
)
def through_width(width: float, second_face: str | None, blank: float, facing: float) -> float:
    return blank - facing if second_face == _FACED_AFTER else width


@computed(
    "bore.holder_room",
    label="room between holder and collar when the tip is at the far face",
    unit="mm",
    rounding="length",
    needs=("bore.overhang", "bore.through_width"),
    how="overhang of the boring bar less what it bores through",
)
def holder_room(overhang: float, width: float) -> float:
    return overhang - width


@computed("bore.overhang_ratio", label="overhang of the boring bar in diameters", unit="1",
          needs=("bore.overhang", "bore.shank"), how="overhang divided by the shank")  # fmt: skip
def boring_ratio(length: float, diameter: float) -> float:
    return overhang_ratio(length, diameter)


def _factor(name: str, what: str) -> None:
    @computed(f"bore.{name}", label=f"share of {what} left by the overhang of the boring bar", unit="1",
              needs=("bore.overhang_ratio", "bore.tool"), tables=("cutting/adjustments",),
              how="from the table of adjustments for the overhang of boring bars")  # fmt: skip
    def _share(ratio: float, tool: Record, adjustments: Table) -> float:
        return _overhang_row(ratio, tool, adjustments).number(name)


def _overhang_row(ratio: float, tool: Record, adjustments: Table) -> Row:
    return adjustments.within(ratio, "from_ratio", "to_ratio", ends="[)", situation=f"boring-overhang-{tool['material']}")


for _name, _what in (("speed_factor", "speed"), ("feed_factor", "feed"), ("depth_factor", "depth")):
    _factor(_name, _what)


@computed(
    "bore.rough_to",
    label="bore to rough to",
    unit="mm",
    rounding="size",
    bound="most",
    needs=("bore.nominal", "bore.finish_stock", "lathe.fit_step"),
    how="bore less the stock for the last cuts",
)
def rough_to(bore: float, stock: float, step: float) -> float:
    return step_down(bore - stock, step)


@computed(
    "bore.finish_depth",
    label="depth per side of each of the last cuts",
    unit="mm",
    rounding="depth",
    needs=("limit.bore_finish_stock", "limit.bore_finish_cuts", "lathe.radial_division"),
    how="stock for the last cuts shared out per side, in whole divisions of the dial",
)
def finish_depth(stock: float, cuts: float, division: float) -> float:
    return finishing_cut(stock, cuts, division)


@computed(
    "bore.finish_stock",
    label="stock for the last cuts, on diameter",
    unit="mm",
    rounding="depth",
    needs=("bore.finish_depth", "limit.bore_finish_cuts"),
    how="twice the depth of the last cuts, all of them",
)
def finish_stock(depth: float, cuts: float) -> float:
    return on_diameter(depth, cuts)


@computed(
    "bore.aim_most",
    label="bore to aim at, where the bar is largest",
    unit="mm",
    rounding="fit",
    needs=(
        "bar.expected_largest", "bore.add_least", "bore.add_most", "job.measured_head?", "job.measured_tail?",
        "job.measured_middle?",
    ),
    how="largest reading of the bar, and the middle between the least and the most that is added to it; until it has been "
    "measured, the largest that stock of its finish may be",
)  # fmt: skip
def aim_most(expected: float, least: float, most: float, *seats: tuple[float, ...] | None) -> float:
    measured = [reading for readings in seats for reading in readings or ()]
    return max(measured, default=expected) + midway(least, most)


@computed(
    "bore.finish_cuts",
    label="last cuts in the bore",
    kind="count",
    rounding="count",
    needs=("bore.aim_most", "bore.rough_to", "bore.finish_depth", "limit.bore_finish_cuts"),
    how="from the size roughed to, up to the bore aimed at, divided by what a cut takes off; no fewer than usual",
)
def finish_cuts(aim: float, roughed: float, depth: float, usual: float) -> int:
    return max(round(usual), boring_passes(roughed, max(aim, roughed), depth))


@computed(
    "bore.bar_slack",
    label="how far off the bar may read on this sheet",
    unit="mm",
    rounding="fit",
    bound="most",
    needs=("bore.window", "bar.micrometer_resolution"),
    how="a quarter of the room between the two sizes, down to what the micrometer reads: half of it is left to bore in",
)
def bar_slack(room: float, step: float) -> float:
    return step_down(midway(0.0, midway(0.0, room)), step)


@computed(
    "bore.finish_divisions",
    label="divisions of the dial for each of the last cuts",
    unit="1",
    rounding="count",
    needs=("bore.finish_depth", "lathe.radial_division"),
    how="depth per side divided by what one division moves the tool",
)
def finish_divisions(depth: float, division: float) -> float:
    return float(steps_in(depth, division))


@computed(
    "bore.rough_passes",
    label="roughing passes in the bore",
    kind="count",
    rounding="count",
    needs=("bore.rough_to", "hole.before_boring", "collar.boring.depth"),
    how="what is left, divided by what a pass takes off the diameter, up to a whole pass",
)
def rough_passes(to: float, drilled: float, depth: float) -> int:
    return boring_passes(drilled, to, depth)


@computed(
    "bore.rough_cut",
    label="depth per side of each roughing pass in the bore",
    unit="mm",
    rounding="depth",
    needs=("bore.rough_to", "hole.before_boring", "bore.rough_passes", "lathe.radial_division"),
    how="stock per side shared out over the passes, up to whole divisions of the dial; the last pass takes what is left",
)
def rough_cut(to: float, drilled: float, passes: int, division: float) -> float:
    return finishing_cut(to - drilled, passes, division)


@computed(
    "bore.rough_divisions",
    label="divisions of the dial for each roughing pass in the bore",
    unit="1",
    rounding="count",
    needs=("bore.rough_cut", "lathe.radial_division"),
    how="depth per side divided by what one division moves the tool",
)
def rough_divisions(depth: float, division: float) -> float:
    return float(steps_in(depth, division))
