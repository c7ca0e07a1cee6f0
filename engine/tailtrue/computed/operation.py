"""Speed, feed and depth of one cutting operation, from material, tool, diameter and what the machine can do.

`operation` registers the same set of facts for each operation of the job, under that operation's own name.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from statistics import median_high
from typing import Any, NamedTuple

from tailtrue.calc.cut_power import depth_for_power
from tailtrue.calc.cutting import surface_speed
from tailtrue.calc.lengths import on_diameter, share_of
from tailtrue.calc.spindle import choose_from_range, choose_speed
from tailtrue.calc.spindle_band import SpeedBand, speed_band
from tailtrue.calc.steps import step_down, step_up, steps_in
from tailtrue.calc.validity import OutOfRange
from tailtrue.computed import learner
from tailtrue.computed.registry import Cut, Limited, computed, taken
from tailtrue.computed.speed_table import BORNE_TABLES, most_printed, surface_band
from tailtrue.tables import Row, Table

Cap = tuple[str, str]  # the fact that caps the speed, and how the page calls it
TOP_SPEED = "top speed of the lathe"
CLAMPED = "a blank clamped to the faceplate"
# What a cutter could do does not count here: fast, the work would leave the chuck.
SHORT_GRIP = "cap for a short grip"


class Dial(NamedTuple):
    """The dial that a depth is set by: its name, the step of the depth, and what one division moves the tool."""

    name: str
    step: str
    division: str


CROSS_SLIDE = Dial("cross-slide dial", "lathe.radial_division", "lathe.radial_division")
_TOP_SLIDE = Dial("top-slide dial", "lathe.facing_step", "lathe.top_slide_dial_division")
SPINDLE = ("lathe.speeds?", "lathe.speed_from?", "lathe.speed_to?", "limit.speed_step", "limit.speed_overrun")


def spindle_step(
    wanted: float,
    cap: float,
    speeds: Sequence[float] | None,
    speed_from: float | None,
    speed_to: float | None,
    step: float,
) -> float | None:
    """The speed this lathe has at or below what is wanted and what is allowed; None when it has none that is allowed."""
    try:
        if speeds:
            return choose_speed(speeds, wanted, cap)
        if speed_from is not None and speed_to is not None:
            return choose_from_range(speed_from, speed_to, step, wanted, cap)
    except OutOfRange:
        return None
    return None


def limited_speed(
    advised: SpeedBand, caps: Sequence[tuple[float, str]], *spindle: Any, printed: Callable[[], float | None] = lambda: None
) -> Limited:
    """The speed to set and what limited it; no speed where even the slowest is far above the advised one.

    `spindle` holds the speeds of the lathe as `spindle_step` takes them, and last the share of the advised speed that
    is still borne. `printed` is asked for the highest speed that books print for the cut, where that share is passed.
    """
    wanted = advised.middle_per_min
    weighed = ((wanted, "surface speed"), *caps)
    *speeds, overrun = spindle
    # What does not bind gives the top speed of the lathe: among equals the lathe itself is the reason.
    cap, cap_name = min(caps, key=lambda one: (one[0], one[1] != TOP_SPEED))
    speed = spindle_step(wanted, cap, *speeds)
    if speed is None:
        return Limited(None, f"the slowest speed of this lathe is above its limit: {cap_name}")
    if speed > wanted:
        if speed <= advised.high_per_min:
            return Limited(speed, "the slowest this lathe has, inside the advised band", weighed)
        if speed > wanted * overrun:
            most = printed()
            if most is not None and speed <= min(most, advised.high_per_min * overrun):
                return Limited(
                    speed, "the slowest this lathe has, above the advised band and no faster than books print", weighed
                )
            return Limited(None, "the slowest speed of this lathe is far above what tool and metal bear")
        return Limited(speed, "the slowest this lathe has, a little above the advised", weighed)
    return Limited(speed, cap_name if cap < wanted else "surface speed", weighed)


@dataclass(frozen=True)
class Operation:
    """What an operation was registered with, for those who tell of its speed."""

    prefix: str
    table: str
    diameter: str
    tool: str
    caps: tuple[Cap, ...]
    speed_factor: str | None


def operation(
    prefix: str,
    what: str,
    *,
    table: str,
    work: str,
    diameter: str,
    tool: str,
    caps: tuple[Cap, ...],
    speed_factor: str | None = None,
    feed_factor: str | None = None,
    depth_factor: str | None = None,
    depth_by: str = "overhang",
    fine: bool = False,
    bound_depth: bool = True,
    by_top_slide: bool = False,
    decided: bool = False,
    as_fast_as: str | None = None,
) -> Operation:
    """Register speed, surface speed, feed and depth of an operation; not feed and depth where decisions choose them.

    `as_fast_as` is the cut whose speed is taken, where cuts of that kind are taken at the same setting.
    """
    pace = as_fast_as or table
    registered = Operation(prefix, pace, diameter, tool, caps, speed_factor)
    caps = (*caps, ("lathe.fastest", TOP_SPEED))
    cap_facts = tuple(fact for fact, _ in caps)
    cap_names = tuple(name for _, name in caps)

    @computed(
        f"{prefix}.speed", label=f"spindle speed, {what}", unit="1/min", rounding="speed",
        needs=(f"{work}.material", diameter, tool, *((speed_factor,) if speed_factor else ()), *cap_facts, *SPINDLE),
        tables=BORNE_TABLES,
        how="1000 v / (pi D) in the middle of the advised band, then the speed of the lathe at or below it and below "
        "every limit",
        cut=Cut(f"{work}.material", pace, tool),
    )  # fmt: skip
    def _speed(material: str, size: float, cutter: str, *rest: Any) -> Limited:
        *numbers, speeds_table, ratios, printed_table, materials = rest
        factor = numbers.pop(0) if speed_factor else 1.0
        capped, spindle = numbers[: len(caps)], numbers[len(caps) :]
        band = surface_band(material, pace, cutter, speeds_table, ratios)

        def printed() -> float | None:
            # What books print is for a cut that nothing breaks.
            if factor < 1.0:
                return None
            most = most_printed(material, pace, cutter, ratios, printed_table, materials)
            return None if most is None else speed_band(most, most, size, factor).high_per_min

        return limited_speed(
            speed_band(*band, size, factor), list(zip(capped, cap_names, strict=True)), *spindle, printed=printed
        )

    @computed(
        f"{prefix}.surface_speed", label=f"surface speed obtained, {what}", unit="m/min", rounding="surface-speed",
        needs=(f"{prefix}.speed", diameter), how="pi D n / 1000 with the speed that is set",
    )  # fmt: skip
    def _surface(speed: float, size: float) -> float:
        return surface_speed(speed, size)

    if not decided:
        _feed_of_plate(prefix, what, table, work, tool, feed_factor, fine=fine)

    @computed(
        f"{prefix}.feed_kind", label=f"how the tool is fed, {what}", kind="choice", choices=("power", "hand"),
        needs=(f"{prefix}.feed?", f"{work}.feed_group"), how="by power where the lathe has a fitting feed",
    )  # fmt: skip
    def _kind(feed: float | None, _group: str) -> str:
        return "hand" if feed is None else "power"

    @computed(
        f"{prefix}.hand_feed", label=f"feed by hand, {what}", unit="mm/rev", rounding="feed",
        needs=(f"{work}.feed_group", tool, f"{learner.FEED}?"), tables=("cutting/feeds",),
        how="the low end of the advised band, or what a learner feeds at most",
    )  # fmt: skip
    def _hand(group: str, cutter: str, most: float | None, feeds: Table) -> Limited:
        low = feed_row(feeds, table, group, cutter).number("feed_low_mm")
        return taken(low, "the low end of the advised band") if most is None or low <= most else taken(most, learner.BY)

    if bound_depth and not decided:
        dial = _TOP_SLIDE if by_top_slide else CROSS_SLIDE
        _depth_facts(prefix, what, table, work, tool, depth_factor, depth_by, dial, fine=fine)
    return registered


def _feed_of_plate(
    prefix: str, what: str, table: str, work: str, tool: str, feed_factor: str | None, *, fine: bool
) -> None:  # fmt: skip
    @computed(
        f"{prefix}.feed", label=f"feed, {what}", unit="mm/rev", rounding="feed",
        needs=(f"{work}.feed_group", tool, "lathe.feeds?", f"{learner.FEED}?", *((feed_factor,) if feed_factor else ())),
        tables=("cutting/feeds",),
        how="a feed of the lathe's own plate inside the advised band, no faster than a learner feeds",
    )  # fmt: skip
    def _feed(group: str, cutter: str, feeds: tuple[float, ...] | None, most: float | None, *rest: Any) -> Limited:
        row = feed_row(rest[-1], table, group, cutter)
        low, high = row.number("feed_low_mm"), share_of(row.number("feed_high_mm"), rest[0] if feed_factor else 1.0)
        fitting = sorted(feed for feed in feeds or () if low <= feed <= high)
        if not fitting:
            return Limited(None, "no power feed inside the advised band; feed by hand")
        chosen, by = fitting[0] if fine else median_high(fitting), "of the feeds on the plate"
        if most is None or chosen <= most:
            return Limited(chosen, by)
        slower = [feed for feed in fitting if feed <= most]
        return Limited(slower[-1], learner.BY) if slower else Limited(None, "no power feed is slow enough for a learner")


def feed_row(feeds: Table, operation: str, group: str, cutter: str) -> Row:
    return feeds.one(operation=operation, feed_group=group, tool=cutter)


def _depth_facts(
    prefix: str, what: str, table: str, work: str, tool: str, factor: str | None, factor_name: str, dial: Dial,
    *, fine: bool,
) -> None:  # fmt: skip
    @computed(
        f"{prefix}.depth", label=f"depth of cut per side, {what}", unit="mm", rounding="depth", needs=(
            f"{work}.material", f"{work}.feed_group", tool, f"{prefix}.surface_speed",
            f"{prefix}.feed?", f"{prefix}.hand_feed", dial.step, "lathe.cutting_power", "limit.depth_share",
            f"{learner.DEPTH}?", *((factor,) if factor else ()),
        ),
        tables=("cutting/feeds", "materials/materials"),
        how="the least that anything asks for, in whole divisions of the dial",
    )  # fmt: skip
    def _depth(
        material: str, group: str, cutter: str, surface: float, feed: float | None, hand: float,
        division: float, power: float, share: float, most: float | None, *rest: Any,
    ) -> Limited:  # fmt: skip
        *numbers, feeds, materials = rest
        row = feed_row(feeds, table, group, cutter)
        low, high = row.number("depth_low_mm"), row.number("depth_high_mm")
        depth, by = (low if fine else low + share_of(high - low, share)), "advised band, light lathe"
        if numbers and numbers[0] < 1.0:
            depth, by = share_of(depth, numbers[0]), factor_name
        metal = materials.one(material=material)
        driven = depth_for_power(metal.number("kc11_high_mpa"), metal.number("mc_high"), feed or hand, surface, power)
        if driven < depth:
            depth, by = driven, "motor"
        if most is not None and most < depth:
            depth, by = most, learner.BY
        # A fine cut below its least depth rubs instead of cutting, so it takes the next whole division.
        whole = min(step_up(depth, division), step_down(high, division)) if fine else step_down(depth, division)
        return Limited(whole if whole > 0 else division, by if whole > 0 else "one division of the dial")

    depth_on_the_dial(prefix, what, dial)


def depth_on_the_dial(prefix: str, what: str, dial: Dial = CROSS_SLIDE) -> None:
    """Register what a depth is on the dial and on the diameter."""

    @computed(
        f"{prefix}.depth_divisions", label=f"divisions of the {dial.name}, {what}", unit="1", rounding="count",
        needs=(f"{prefix}.depth", dial.division), how="depth per side divided by what one division moves the tool",
    )  # fmt: skip
    def _divisions(depth: float, division: float) -> float:
        return float(steps_in(depth, division))

    @computed(
        f"{prefix}.diameter_step", label=f"change of diameter per cut, {what}", unit="mm", rounding="depth",
        needs=(f"{prefix}.depth",), how="twice the depth per side",
    )  # fmt: skip
    def _step(depth: float) -> float:
        return on_diameter(depth)
