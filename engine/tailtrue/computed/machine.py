"""What the lathe allows: swing, speeds, room, and the steps in which it is set and written."""

from tailtrue.calc.lengths import share_of
from tailtrue.computed.registry import Limited, computed, taken
from tailtrue.tables import Table


@computed(
    "lathe.swing_over_slide",
    label="swing over the cross slide",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("lathe.swing_over_cross_slide?", "lathe.swing_over_bed", "limit.cross_slide_share"),
    how="as given; when it was not given, the swing over the bed times a cautious share",
)
def swing_over_slide(said: float | None, over_bed: float, share: float) -> Limited:
    if said is not None:
        return taken(said, "as measured", as_said=True)
    return taken(
        share_of(over_bed, share), "not given, so taken small; measure it from the centre line to the slide",
        "the swing over the bed times a cautious share; not given: measure it from the centre line to the slide",
    )  # fmt: skip


@computed(
    "lathe.fastest",
    label="top speed of the spindle",
    unit="1/min",
    rounding="speed",
    needs=("lathe.speeds?", "lathe.speed_to?"),
    how="the highest speed on the plate",
)
def fastest(speeds: tuple[float, ...] | None, speed_to: float | None) -> float | None:
    return max(speeds) if speeds else speed_to


@computed(
    "lathe.slowest",
    label="slowest speed of the spindle",
    unit="1/min",
    rounding="speed",
    needs=("lathe.speeds?", "lathe.speed_from?"),
    how="the lowest speed on the plate",
)
def slowest(speeds: tuple[float, ...] | None, speed_from: float | None) -> float | None:
    return min(speeds) if speeds else speed_from


@computed(
    "lathe.centre_room",
    label="room the tailstock centre takes",
    unit="mm",
    rounding="length",
    needs=("crib.tailstock_centre", "crib.tailstock_centre_reach?", "lathe.tailstock_taper"),
    tables=("machines/centre_reach",),
    how="a live centre reaches further out than the plain point that the distance between centres is measured with",
)
def centre_room(centre: str, reach: float | None, taper: str, reaches: Table) -> Limited:
    if reach is not None:
        return taken(reach, "as measured", as_said=True)
    if centre == "dead":
        return Limited(0.0, "a plain point")
    return Limited(reaches.one(taper=taper).number("live_reach_extra_mm"), "usual for a live centre; measure yours")


@computed(
    "lathe.quill_out",
    label="quill extension for the test",
    unit="mm",
    rounding="length",
    needs=("lathe.quill_travel", "limit.quill_share", "limit.quill_out_least"),
    how="a share of its travel, short so that it is stiff",
)
def quill_out(travel: float, share: float, least: float) -> float:
    return min(travel, max(least, share_of(travel, share)))


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
    "lathe.facing_step",
    label="step of a depth of facing",
    unit="mm",
    rounding="depth",
    needs=("lathe.top_slide_dial_division?", "lathe.dials", "limit.facing_step_metric", "limit.facing_step_inch"),
    how="one division of the top-slide dial; where that is not known, a step that a caliper tells",
)
def facing_step(division: float | None, dials: str, metric: float, inch: float) -> Limited:
    if division is not None:
        return Limited(division, "one division of the top-slide dial")
    return Limited(metric if dials == "metric" else inch, "what a caliper tells")
