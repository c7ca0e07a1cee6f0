"""How long the job takes: cutting from speed, feed and passes, handling from a table of usual minutes."""

from collections.abc import Callable, Mapping, Sequence
from math import ceil
from typing import Any

from tailtrue.calc.cut_time import drilling_time, facing_pass_time, pass_time, passes_time
from tailtrue.calc.cutting import cut_time, passes_for_stock
from tailtrue.calc.lengths import on_diameter, per_side
from tailtrue.computed.registry import computed, field
from tailtrue.tables import Table

Record = Mapping[str, Any]
_PLANNING = "time/planning"
_MINUTE = 60.0

# What a step's time is made from; every one may be unknown in a job that does without the step.
CUTTING = (
    "time.bar_facing", "time.bar_centring", "time.collar_facing", "time.collar_to_width", "time.collar_spotting",
    "time.drilling", "time.band", "time.soft_jaws", "time.stub", "time.stub_facing", "time.stub_rim", "time.bore_rough",
    "time.bore_finish", "time.collar_turning", "time.truing", "time.skim",
)  # fmt: skip


def _cutting(
    name: str, what: str, *, needs: tuple[str, ...], how: str
) -> Callable[[Callable[..., float]], Callable[..., float]]:
    return computed(
        f"time.{name}",
        label=f"cutting time, {what}",
        unit="s",
        rounding="time",
        needs=needs,
        tables=(_PLANNING,),
        how=how,
    )


def _passes(one_pass_s: float, travel: float, passes: int, planning: Table) -> float:
    return passes_time(one_pass_s, travel, planning.value("way_back"), passes, planning.value("set_dial"))


def along(length: float, feed: float, speed: float, passes: int, planning: Table) -> float:
    """So many passes along a length, each with its travels and the way back."""
    approach, run_out = planning.value("approach"), planning.value("run_out")
    cut = pass_time(length, approach, run_out, feed, speed)
    return _passes(cut, length + approach + run_out, passes, planning)


def _facing(name: str, what: str, work: str, diameter: str) -> None:
    @_cutting(
        name, what, needs=(diameter, "limit.facing_stock", f"{work}.facing.depth", f"{work}.facing.hand_feed",
                           f"{work}.facing.speed"),
        how="facing stock taken in equal cuts from the rim to the middle, each with approach and way back",
    )  # fmt: skip
    def _time(across: float, stock: float, depth: float, feed: float, speed: float, planning: Table) -> float:
        approach = planning.value("approach")
        cut = facing_pass_time(across, 0.0, approach, 0.0, feed, speed)
        return _passes(cut, per_side(across, 0.0) + approach, passes_for_stock(on_diameter(stock), depth), planning)


_facing("bar_facing", "facing one end of the bar", "bar", "bar.diameter")


def _roughed_and_lit(name: str, what: str, rough: str, speed: str, how: str) -> None:
    @_cutting(
        name, what, needs=("collar.stock_diameter", rough, "collar.widening.hand_feed", "collar.facing.hand_feed", speed),
        how=f"{how}, in roughing cuts and a light one from the rim to the middle, each with approach and way back",
    )  # fmt: skip
    def _time(across: float, count: float, deep: float, light: float, turns: float, planning: Table) -> float:
        approach = planning.value("approach")
        way = per_side(across, 0.0) + approach
        return sum(
            _passes(facing_pass_time(across, 0.0, approach, 0.0, feed, turns), way, cuts, planning)
            for feed, cuts in ((deep, round(count)), (light, 1))
            if cuts
        )


_roughed_and_lit("collar_facing", "facing the first side of a collar", "collar.first_rough_cuts", "collar.facing.speed",
                 "what is there to clean the side up")  # fmt: skip
_roughed_and_lit("collar_to_width", "facing the second side of a collar to width", "collar.second_rough_cuts",
                 "collar.widening.speed", "what is left over the width")  # fmt: skip


def _pecked(cut_s: float, travel: float, diameter: float, planning: Table) -> float:
    """A hole drilled a diameter at a time, each peck with its way out and in."""
    return cut_s + ceil(travel / diameter) * planning.value("peck")


@_cutting(
    "bar_centring", "one centre hole of the bar",
    needs=("bar.centre_depth", "bar.centre_pilot", "bar.centring.hand_feed", "bar.centring.speed"),
    how="depth over feed and speed, a peck for each diameter of the pilot",
)  # fmt: skip
def bar_centring(depth: float, pilot: float, feed: float, speed: float, planning: Table) -> float:
    return _pecked(cut_time(depth, feed, speed), depth, pilot, planning)


@_cutting(
    "collar_spotting", "spotting a collar",
    needs=("bar.centre_pilot", "collar.spotting.hand_feed", "collar.spotting.speed"),
    how="about a diameter of the pilot deep, over feed and speed, in one peck",
)  # fmt: skip
def collar_spotting(pilot: float, feed: float, speed: float, planning: Table) -> float:
    return _pecked(cut_time(pilot, feed, speed), pilot, pilot, planning)


@_cutting(
    "drilling", "drilling one collar", needs=("hole.ladder", "collar.width", "limit.break_through", "hole.point_angle"),
    how="every drill of the list through the collar with its point, over feed and speed, a peck for each diameter",
)  # fmt: skip
def drilling(ladder: Sequence[Record], width: float, through: float, point: float, planning: Table) -> float:
    whole = 0.0
    for row in ladder:
        size = row["size"][0]
        cut = drilling_time(width, size, row["hand_feed"], row["speed"], through, point)
        whole += _pecked(cut, width + through, size, planning)
    return whole


@_cutting(
    "band", "turning one half of a raw blank round",
    needs=(
        "collar.band_passes", "collar.band_length", "collar.band.speed", "collar.band.hand_feed",
    ),
    how="equal passes along what stands out, from the highest place of the blank, each with its travels and way back",
)  # fmt: skip
def band(passes: float, length: float, speed: float, feed: float, planning: Table) -> float:
    return along(length, feed, speed, round(passes), planning)


def _hand_passes(name: str, what: str, length: str, operation: str, passes: str) -> None:
    @_cutting(
        name, what, needs=(length, f"{operation}.speed", passes, f"{operation}.hand_feed"),
        how="equal passes along the length, each with its travels, way back and setting of the dial",
    )  # fmt: skip
    def _time(long: float, speed: float, count: float, feed: float, planning: Table) -> float:
        return along(long, feed, speed, round(count), planning)


_hand_passes("soft_jaws", "boring the soft jaws", "collar.soft_step", "softjaw.boring", "softjaw.passes")
_hand_passes("stub", "turning the spigot of the stub", "stub.spigot", "stub.turning", "stub.passes")
_hand_passes("stub_rim", "turning one raw rim on the stub", "collar.saw_width", "stub.rim", "stub.rim_passes")


@_cutting(
    "stub_facing", "facing one collar on the stub",
    needs=("collar.blank_diameter", "collar.facing_stock", "stub.cut", "stub.facing.hand_feed", "stub.facing.speed"),
    how="facing stock taken in light cuts from the rim to the bore, each with approach and way back",
)  # fmt: skip
def stub_facing(across: float, stock: float, depth: float, feed: float, speed: float, planning: Table) -> float:
    approach = planning.value("approach")
    cut = facing_pass_time(across, 0.0, approach, 0.0, feed, speed)
    return _passes(cut, per_side(across, 0.0) + approach, passes_for_stock(on_diameter(stock), depth), planning)


@_cutting(
    "bore_rough", "roughing one bore",
    needs=("collar.width", "collar.boring.speed", "bore.rough_passes", "collar.boring.hand_feed", "collar.boring.feed?"),
    how="passes through the collar, each with its travels, way back and setting of the dial",
)  # fmt: skip
def bore_rough(width: float, speed: float, passes: int, hand: float, feed: float | None, planning: Table) -> float:
    return along(width, feed or hand, speed, max(1, passes), planning)


@_cutting(
    "bore_finish", "finishing one bore",
    needs=(
        "collar.width", "collar.bore_finish.speed", "bore.finish_cuts", "collar.bore_finish.hand_feed",
        "collar.bore_finish.feed?",
    ),
    how="the last cuts and one more at the same setting, each with its travels and way back",
)  # fmt: skip
def bore_finish(width: float, speed: float, cuts: int, hand: float, feed: float | None, planning: Table) -> float:
    return along(width, feed or hand, speed, cuts + 1, planning)


@_cutting(
    "collar_turning", "roughing the collars",
    needs=(
        "collar.pieces", "collar.width", "collar.turning.speed", "collar.turning_passes", "collar.turning.hand_feed",
        "collar.turning.feed?",
    ),
    how="passes over every collar, each with its travels and way back",
)  # fmt: skip
def collar_turning(
    pieces: int, width: float, speed: float, passes: int, hand: float, feed: float | None, planning: Table
) -> float:
    return along(width, feed or hand, speed, pieces * max(1, passes), planning)


@computed("time.cool_roughing", label="waits for bar and collars to cool while they are roughed", unit="s", rounding="time",
          needs=("collar.turning_passes",), tables=(_PLANNING,), how="the usual wait before each pass")  # fmt: skip
def cool_roughing(passes: int, planning: Table) -> float:
    return max(1, passes) * planning.value("cool")


@_cutting(
    "truing", "truing the collars", needs=("collar.pieces", "collar.width", "skim.speed", "skim.used_feed"),
    how="one pass over every collar, each with its travels and way back",
)  # fmt: skip
def truing(pieces: int, width: float, speed: float, feed: float, planning: Table) -> float:
    return along(width, feed, speed, pieces, planning)


@_cutting(
    "skim", "skimming the collars", needs=("collar.pieces", "collar.width", "skim.speed", "skim.used_feed"),
    how="the skim over every collar and once more as it stands, each with its travels and way back",
)  # fmt: skip
def skim(pieces: int, width: float, speed: float, feed: float, planning: Table) -> float:
    return along(width, feed, speed, pieces * round(planning.value("skim_runs")), planning)


def _of_planning(name: str, label: str, how: str, unit: str, rounding: str) -> None:
    @computed(f"time.{name}", label=label, unit=unit, rounding=rounding, tables=(_PLANNING,), how=how)
    def _value(planning: Table) -> float:
        return planning.value(name)


_of_planning("cool", "wait for the collars to cool", "usual wait for collars on a bar, by hand and by nose", "s", "time")
_of_planning("heat_through", "wait for the collars in the oven", "a usual time for both collars", "s", "time")
_of_planning("part_cools", "wait for bar and hot collars to cool", "a usual time in still air", "s", "time")
_of_planning("learner_factor", "how much longer a first time takes", "a usual figure", "1", "ratio")
_of_planning("round_to", "step in which the time of a phase is told", "so that no minute is promised", "s", "time")
_of_planning("round_total_to", "step in which the whole time is told", "so that no minute is promised", "s", "time")


@computed(
    "time.handling",
    label="usual minutes of handling",
    kind="records",
    fields=(field("kind", kind="text"), field("low", "s", "time"), field("high", "s", "time")),
    tables=("time/handling",),
    how="from the table of handling, least and most",
)
def handling(minutes: Table) -> tuple[Record, ...]:
    return tuple(
        {
            "kind": row.text("handling"),
            "low": row.number("low_min") * _MINUTE,
            "high": row.number("high_min") * _MINUTE,
        }
        for row in map(minutes.take, minutes)
    )


@computed(
    "time.estimate",
    label="estimate of the time",
    kind="records",
    fields=(field("low", "s", "time"), field("high", "s", "time"), field("waiting", "s", "time")),
    needs=("time.handling", "time.round_to", "time.round_total_to", *(f"{name}?" for name in CUTTING)),
    how="cutting and handling of each step and piece; a phase up to five minutes, the whole up to a quarter of an hour",
)  # fmt: skip
def estimate(minutes: Sequence[Record], *_rest: Any) -> tuple[Record, ...]:
    return tuple(minutes)
