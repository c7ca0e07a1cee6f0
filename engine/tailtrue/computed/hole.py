"""The hole through a collar: the ladder of drills, from what lies in the crib."""

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Any, Literal

from tailtrue.calc.cut_time import drill_travel
from tailtrue.calc.drilling import hand_thrust, point_length
from tailtrue.calc.lengths import length_of_diameters
from tailtrue.calc.steps import step_down
from tailtrue.computed.drill_planner import NEEDS, TABLES, Planner, with_planner
from tailtrue.computed.drills import Drill, drills_of, fits_tailstock, needs_sleeve
from tailtrue.computed.registry import Cut, Limited, computed, field, taken
from tailtrue.computed.stepping import least_of
from tailtrue.tables import Table

Record = Mapping[str, Any]


@computed(
    "hole.last_most",
    label="largest drill that leaves enough to bore",
    unit="mm",
    rounding="size",
    bound="most",
    needs=("bore.nominal",),
    tables=("cutting/boring_stock",),
    how="bore less the least stock for boring at this diameter",
)
def last_most(bore: float, stock: Table) -> float:
    return bore - stock.within(bore, "over_mm", "upto_mm").number("least_mm")


@computed(
    "hole.hand_thrust",
    label="thrust a hand gives at the tailstock wheel",
    unit="N",
    rounding="force",
    bound="most",
    needs=("lathe.quill_screw_pitch?", "limit.hand_thrust"),
    tables=("cutting/force_factors",),
    how="force on the handle over one turn of the quill screw, at the poor efficiency of a screw, and never above a "
    "comfortable limit",
)
def thrust_by_hand(pitch: float | None, most: float, factors: Table) -> float:
    value = factors.value
    screw = pitch if pitch is not None else value("quill_screw_pitch")
    return min(most, hand_thrust(value("handwheel_force"), value("handwheel_radius"), screw, value("screw_efficiency")))


_ROW = (
    field("name", kind="text"),
    field("size", "mm", "tool"),
    field("speed", "1/min", "speed"),
    field("surface_speed", "m/min", "surface-speed"),
    field("hand_feed", "mm/rev", "feed"),
    field("thrust", "N", "force"),
    field("reason", kind="text"),
)


@computed(
    "hole.ladder",
    label="drills for the hole, in order",
    kind="records",
    fields=_ROW,
    needs=NEEDS,
    tables=TABLES,
    how="backward from the largest drill that leaves enough to bore: each pilot wide enough for the chisel edge of the "
    "next, no wider than this metal wants; within hand, holder and motor, with a margin where there is one",
    cut=Cut("collar.material", "drilling", "HSS"),
)
@with_planner
def ladder(planner: Planner, held: list[Drill]) -> Limited:
    drills = [drill for drill in held if drill.size_mm <= planner.last_most]
    for last in sorted(drills, key=lambda drill: drill.size_mm, reverse=True):
        found = planner.down_to(last, [drill for drill in drills if drill.size_mm < last.size_mm])
        if found is not None:
            return Limited(tuple(planner.row(drill, pilot) for drill, pilot in found), planner.limit_of(last, drills))
    return Limited(None, "no drill of the crib makes a hole that hand, holder and motor can drive")


@computed(
    "hole.smallest",
    label="smallest drill that the tailstock holds, in solid metal",
    kind="record",
    needs=NEEDS,
    tables=TABLES,
    how="what it asks at the lighter feed, with no hole before it: the least that any drill of the crib can ask; a drill "
    "thinner than the formulas reach only where there is no other",
)
@with_planner
def smallest(planner: Planner, held: list[Drill]) -> Limited:
    if not held:
        return Limited(None, "the tailstock holds none of the drills")
    begins = (planner.asked_of(drill) for drill in held if drill.size_mm <= planner.begins_at_most())
    reached = (asked for asked in begins if "power" in asked)
    return Limited(next(reached, planner.asked_of(held[0])), "the smallest that the tailstock holds")


def _of_smallest(name: str, label: str, unit: str, rounding: str, bound: Literal["least", "most"]) -> None:
    @computed(f"hole.smallest_{name}", label=label, unit=unit, rounding=rounding, bound=bound, needs=("hole.smallest",),
              how="of the smallest drill that the tailstock holds")  # fmt: skip
    def _field(record: Record) -> float | None:
        return record.get(name)


_of_smallest("drill", "smallest drill that the tailstock holds", "mm", "size", "least")
_of_smallest("thrust", "thrust that drill asks in solid metal", "N", "force", "least")
_of_smallest("torque", "torque that drill asks in solid metal", "N mm", "torque", "least")
_of_smallest("holds", "torque that its holder takes", "N mm", "torque", "most")
_of_smallest("power", "power that drill asks in solid metal", "W", "power", "least")


@computed("hole.drills_held", label="drills that the tailstock holds", kind="count", rounding="count",
          needs=("crib.drills", "crib.drill_chuck_to", "lathe.tailstock_taper", "crib.reduction_sleeves?"),
          tables=("tools/drill_sets",),
          how="counted: shanks that the drill chuck or the taper of the quill takes")  # fmt: skip
def drills_held(owned: Sequence[Record], chuck_to: float, taper: str, sleeves: bool | None, drill_sets: Table) -> int:
    return sum(fits_tailstock(drill, chuck_to, taper, sleeves) for drill in drills_of(owned, drill_sets))


@computed(
    "hole.first_most",
    label="largest drill that the hole may begin with",
    unit="mm",
    rounding="size",
    bound="most",
    needs=("hole.last_most", "collar.material_family"),
    tables=("cutting/ladder_rules",),
    how="the largest drill that this metal lets into a spot by hand, and no larger than what leaves enough to bore",
)
def first_most(last_most: float, family: str, rules: Table) -> Limited:
    size, by = least_of(
        (rules.one(family=family).number("solid_most_mm"), "a larger one wants a pilot"),
        (last_most, "a larger one leaves nothing to bore"),
    )
    return Limited(size, by)


def _of_ladder(name: str, label: str, take: Any, **more: Any) -> None:
    @computed(name, label=label, needs=("hole.ladder",), how="from the ladder of drills", **more)
    def _row(rows: Sequence[Record]) -> Any:
        return take(rows)


_of_ladder("hole.last_drill", "last drill", lambda rows: rows[-1]["size"][0], unit="mm", rounding="size")
_of_ladder("hole.first_drill", "first drill", lambda rows: rows[0]["size"][0], unit="mm", rounding="size")


@computed("hole.sleeve_used", label="a sleeve for a smaller taper is used", kind="yes-no",
          needs=("hole.ladder", "lathe.tailstock_taper"),
          how="whether a drill of the ladder has a smaller taper")  # fmt: skip
def sleeve_used(rows: Sequence[Record], taper: str) -> bool:
    return any(needs_sleeve(row["shank"], taper) for row in rows)


@computed("hole.sleeve_for", label="drills with a taper shank that go into a sleeve", kind="choice",
          choices=("none", "every", "some"), needs=("hole.ladder", "lathe.tailstock_taper"),
          how="by the tapers of the ladder beside that of the quill")  # fmt: skip
def sleeve_for(rows: Sequence[Record], taper: str) -> str:
    small = [needs_sleeve(row["shank"], taper) for row in rows if row["taper_shank"]]
    return "some" if any(small) and not all(small) else "every" if any(small) else "none"


_of_ladder(
    "hole.taper_shank_used", "a taper-shank drill is used", lambda rows: any(row["taper_shank"] for row in rows),
    kind="yes-no",
)  # fmt: skip
_of_ladder(
    "hole.taper_drills", "drills of the ladder with a taper shank", lambda rows: sum(row["taper_shank"] for row in rows),
    kind="count", rounding="count",
)  # fmt: skip
_of_ladder(
    "hole.taper_drills_last", "no straight shank comes after a taper shank",
    lambda rows: all(later["taper_shank"] or not row["taper_shank"] for row, later in pairwise(rows)), kind="yes-no",
)  # fmt: skip


@computed(
    "hole.before_boring",
    label="hole that the boring bar begins in",
    unit="mm",
    rounding="size",
    needs=("hole.start", "hole.ladder?"),
    how="the hole that is there; else the last drill",
)
def before_boring(start: float, rows: Sequence[Record] | None) -> Limited | None:
    if start > 0:
        return taken(start, "the hole that the blank has")
    return taken(rows[-1]["size"][0], "the last drill") if rows else None


@computed("hole.drills", label="drills in the ladder", kind="count", rounding="count", needs=("hole.ladder",),
          how="counted")  # fmt: skip
def drills(rows: Sequence[Record]) -> int:
    return len(rows)


@computed("hole.point_angle", label="angle of the point of a twist drill", unit="deg", rounding="angle", needs=(),
          tables=("cutting/drill_factors",), how="of the standard point")  # fmt: skip
def point_angle(factors: Table) -> float:
    return factors.one(point="standard").number("point_angle_deg")


@computed(
    "hole.travel_needed",
    label="quill travel the last drill needs",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("bore.through_width", "hole.last_drill", "limit.break_through", "hole.point_angle"),
    how="width of the blank as it is then, the point of the drill, and a little to break through",
)
def travel_needed(width: float, drill: float, through: float, point: float) -> float:
    return drill_travel(width, drill, through, point)


@computed(
    "hole.comes_out",
    label="how far the last drill comes out behind the blank",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("hole.last_drill", "limit.break_through", "hole.point_angle"),
    how="the point of the drill, and a little to break through",
)
def comes_out(drill: float, through: float, point: float) -> float:
    return point_length(drill, point) + through


@computed(
    "hole.room_behind",
    label="room that drilling needs behind the blank",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("hole.comes_out", "limit.behind_drill", "blank.hole?", "bore.nominal"),
    how="what the drill comes out by, and a margin; none where the hole of the chuck is larger than the bore",
)
def room_behind(out: float, margin: float, hole: float | None, bore: float) -> Limited:
    if hole is not None and hole > bore:
        return Limited(0.0, "the hole of the chuck takes the drill")
    return Limited(out + margin, "the drill would strike the chuck")


@computed(
    "hole.first_peck",
    label="depth of the first peck",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("hole.first_drill", "limit.peck_first", "lathe.size_step"),
    how="so many diameters of the first drill",
)
def first_peck(drill: float, diameters: float, step: float) -> float:
    return max(step, step_down(length_of_diameters(drill, diameters), step))
