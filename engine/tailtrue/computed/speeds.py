"""The operations of the job, and what they share: dial, motor, limits of speed."""

from typing import Any

from tailtrue.calc.centre_hole import mean_cutting_diameter
from tailtrue.calc.cut_power import power_at_tool
from tailtrue.calc.lengths import midway
from tailtrue.calc.spindle_band import speed_band
from tailtrue.computed.operation import CLAMPED, SHORT_GRIP, SPINDLE, TOP_SPEED, limited_speed, operation
from tailtrue.computed.registry import Cut, Limited, computed, taken
from tailtrue.computed.speed_table import SPEED_TABLES, surface_band
from tailtrue.tables import Table

_INSIDE = ("bar.inside_speed_limit", "the far end of the bar inside the spindle")
_PADS = ("bar.pads_speed_limit", "the greased pads of the steady")
_CHUCK = (("bar.hold_speed_limit", "the chuck"), _INSIDE, _PADS)
# A blank is heavy and short in the jaws: nothing in this job needs it fast.
_BLANK = (("blank.chuck_speed_limit", "the chuck"), ("limit.blank_speed", SHORT_GRIP))
# Its bore may be made on the faceplate, with a limit of its own.
_BORED = (*_BLANK, ("faceplate.speed_limit", CLAMPED))
RAW_CAPS = (*_BLANK, ("collar.unbalance_speed", "a blank not yet true"))
_CENTRES = (("limit.between_centres_speed", "work on a dog between centres"), ("skim.centre_speed_limit", "the centre"))


@computed(
    "lathe.radial_division",
    label="tool movement per division of the cross-slide dial",
    unit="mm",
    rounding="depth",
    needs=("lathe.dial_reads", "lathe.dial_division"),
    how="one division where the dial reads the radius, half a division where it reads the diameter",
)
def radial_division(reads: str, division: float) -> Limited:
    if reads == "radius":
        return taken(division, "one division: the dial reads the radius")
    return taken(midway(0.0, division), "half a division: the dial reads the diameter")


@computed(
    "lathe.cutting_power",
    label="power there is for cutting",
    unit="W",
    rounding="power",
    bound="most",
    needs=("lathe.motor_power",),
    tables=("cutting/force_factors",),
    how="motor power times the efficiency of a light lathe times the share that may be used",
)
def power_for_cutting(motor: float, factors: Table) -> float:
    efficiency, share = (factors.value(name) for name in ("drive_efficiency_low", "motor_use_limit"))
    return power_at_tool(motor, efficiency, share)


@computed(
    "skim.centre_speed_limit",
    label="speed limit of the tailstock centre",
    unit="1/min",
    rounding="speed",
    bound="most",
    needs=("crib.tailstock_centre", "limit.dead_centre_speed", "limit.live_centre_speed"),
    how="low on a dead centre, which has no bearing; higher on a live one",
)
def centre_speed(centre: str, dead: float, live: float) -> Limited:
    return (
        taken(dead, "low on a dead centre, which has no bearing")
        if centre == "dead"
        else taken(live, "that of a live centre")
    )


@computed(
    "bar.overhang_factor",
    label="share of speed left by the free length of the bar",
    unit="1",
    needs=("bar.overhang_ratio",),
    tables=("cutting/adjustments",),
    how="from the table of adjustments for unsupported work",
)
def overhang_factor(ratio: float, adjustments: Table) -> float:
    return adjustments.within(
        ratio, "from_ratio", "to_ratio", ends="[)", situation="unsupported-work"
    ).number("speed_factor")  # fmt: skip


BAR_FACING = operation(
    "bar.facing", "facing the bar", table="facing", work="bar", diameter="bar.diameter", tool="tool.material",
    caps=_CHUCK, speed_factor="bar.overhang_factor", by_top_slide=True,
)  # fmt: skip
# The first face takes roughing cuts before its light one, at one speed: no faster than the second, which runs true.
COLLAR_FACING = operation(
    "collar.facing", "facing a collar", table="facing", work="collar", diameter="collar.corner_diameter",
    tool="tool.material", caps=RAW_CAPS, speed_factor="collar.interrupted_speed", by_top_slide=True,
    as_fast_as="turn-rough",
)  # fmt: skip
# The second face is cut on a blank that runs true by then: its width is taken off as stock is turned off.
operation(
    "collar.widening", "facing a collar down to its width", table="turn-rough", work="collar",
    diameter="collar.blank_diameter", tool="tool.material", caps=_BLANK, by_top_slide=True,
)  # fmt: skip
operation(
    "collar.band", "turning a band on the blank", table="turn-rough", work="collar", diameter="collar.corner_diameter",
    tool="tool.material", caps=RAW_CAPS, speed_factor="collar.interrupted_speed",
    depth_factor="collar.interrupted_depth", depth_by="corners or skin: the cut is interrupted",
)  # fmt: skip
operation(
    "collar.boring", "boring", table="boring", work="collar", diameter="bore.nominal", tool="bore.tip", caps=_BORED,
    speed_factor="bore.speed_factor", feed_factor="bore.feed_factor", depth_factor="bore.depth_factor",
)  # fmt: skip
operation(
    "collar.bore_finish", "finishing the bore", table="boring", work="collar", diameter="bore.nominal", tool="bore.tip",
    caps=_BORED, speed_factor="bore.speed_factor", feed_factor="bore.feed_factor", fine=True, bound_depth=False,
)  # fmt: skip
COLLAR_ROUGHING = operation(
    "collar.turning", "roughing the collars", table="turn-rough", work="collar", diameter="collar.blank_diameter",
    tool="tool.material", caps=_CENTRES,
)  # fmt: skip
SKIMMING = operation(
    "skim", "skimming the collars", table="skim", work="collar", diameter="collar.diameter", tool="tool.material",
    caps=_CENTRES, decided=True,
)  # fmt: skip


def _centre_drilling(prefix: str, work: str, what: str, held: str, *more: tuple[str, str]) -> None:
    caps = (*more, ("lathe.fastest", TOP_SPEED), ("limit.centre_drill_speed", "a thin pilot"))
    caps = (*caps, (held, SHORT_GRIP))
    cap_names = tuple(name for _, name in caps)

    @computed(
        f"{prefix}.speed", label=f"spindle speed, {what}", unit="1/min", rounding="speed",
        needs=(
            f"{work}.material", "bar.centre_pilot", "bar.centre_body", *(fact for fact, _ in caps), *SPINDLE,
        ),
        tables=SPEED_TABLES,
        how="surface speed of the table on the mean of pilot and body diameter, capped",
        cut=Cut(f"{work}.material", "centre-drilling", "HSS"),
    )  # fmt: skip
    def _speed(
        material: str, pilot: float, body: float, *rest: Any
    ) -> Limited:  # fmt: skip
        *numbers, table, ratios = rest
        capped, spindle = numbers[: len(caps)], numbers[len(caps) :]
        band = surface_band(material, "centre-drilling", "HSS", table, ratios)
        advised = speed_band(*band, mean_cutting_diameter(pilot, body))
        return limited_speed(advised, list(zip(capped, cap_names, strict=True)), *spindle)

    @computed(
        f"{prefix}.hand_feed", label=f"feed by hand, {what}", unit="mm/rev", rounding="feed",
        needs=(f"{work}.feed_group",), tables=("cutting/feeds",), how="the middle of the advised band",
    )  # fmt: skip
    def _feed(group: str, table: Table) -> float:
        row = table.one(operation="centre-drilling", feed_group=group, tool="HSS")
        return midway(row.number("feed_low_mm"), row.number("feed_high_mm"))


_centre_drilling("bar.centring", "bar", "centre drilling the bar", "limit.centre_drill_speed", *_CHUCK)
_centre_drilling("collar.spotting", "collar", "spotting the collar", "limit.blank_speed", _BORED[0], _BORED[-1])
