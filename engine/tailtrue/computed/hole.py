"""The hole through a collar: the ladder of drills, from what lies in the crib."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any, Literal

from tailtrue.calc.cut_time import drill_travel
from tailtrue.calc.cutting import surface_speed
from tailtrue.calc.drill_demand import DrillDemand
from tailtrue.calc.drill_ladder import pilot_choices
from tailtrue.calc.drilling import drill_power, hand_thrust, point_length
from tailtrue.calc.lengths import length_of_diameters
from tailtrue.calc.spindle_band import speed_band
from tailtrue.calc.steps import step_down
from tailtrue.calc.validity import OutOfRange
from tailtrue.computed.drills import Drill, demand, drills_of, fits_tailstock, holder_torque, needs_sleeve
from tailtrue.computed.operation import TOP_SPEED, limited_speed
from tailtrue.computed.registry import Cut, Limited, computed, field
from tailtrue.computed.stepping import least_of
from tailtrue.tables import NoRow, Row, Table

Record = Mapping[str, Any]


@computed(
    "bore.nominal",
    label="bore to make",
    unit="mm",
    rounding="size",
    needs=("bar.working_diameter", "bore.gap_target"),
    how="diameter of the bar and the clearance wanted for the bond",
)
def nominal(bar: float, gap: float) -> float:
    return bar + gap


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
    def value(name: str) -> float:
        return factors.one(name=name).number("value")

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


_NEEDS = (
    "crib.drills", "crib.drill_chuck_to", "lathe.tailstock_taper", "hole.last_most", "collar.material",
    "collar.material_family", "collar.feed_group", "hole.hand_thrust", "lathe.cutting_power", "collar.saw_width",
    "blank.chuck_speed_limit", "lathe.fastest", "limit.blank_speed", "limit.drill_feed_share", "lathe.speeds?",
    "lathe.speed_from?", "lathe.speed_to?", "limit.speed_step", "limit.speed_overrun", "crib.reduction_sleeves?",
)  # fmt: skip
_TABLES = (
    "tools/drill_sets", "tools/morse_drills", "materials/materials", "cutting/speeds", "cutting/drill_feeds",
    "cutting/drill_feed_factors", "cutting/drill_factors", "cutting/force_factors", "cutting/ladder_rules",
    "cutting/adjustments",
)  # fmt: skip


def _with_planner(make: Callable[["_Planner", list[Drill]], Limited]) -> Callable[..., Limited]:
    """A fact made from the drills that the tailstock holds, smallest first."""

    def made(
        owned: Sequence[Record], chuck_to: float, taper: str, last_most: float, material: str, family: str, group: str,
        hand: float, power: float, depth: float, chuck_cap: float, top: float, blank_cap: float, light: float,
        speeds: Sequence[float] | None, low: float | None, high: float | None, step: float, overrun: float,
        sleeves: bool | None, *tables: Table,
    ) -> Limited:  # fmt: skip
        caps = [(chuck_cap, "the chuck"), (top, TOP_SPEED), (blank_cap, "a blank held short")]
        spindle = (speeds, low, high, step, overrun)
        planner = _Planner(material, family, group, hand, power, depth, caps, spindle, light, last_most, tables)
        held = [drill for drill in drills_of(owned, tables[0]) if fits_tailstock(drill, chuck_to, taper, sleeves)]
        return make(planner, held)

    return made


@computed(
    "hole.ladder",
    label="drills for the hole, in order",
    kind="records",
    fields=_ROW,
    needs=_NEEDS,
    tables=_TABLES,
    how="backward from the largest drill that leaves enough to bore: each pilot wide enough for the chisel edge of the "
    "next, no wider than the rule for this metal; each step within hand, holder and motor",
    cut=Cut("collar.material", "drilling", "HSS"),
)
@_with_planner
def ladder(planner: "_Planner", held: list[Drill]) -> Limited:
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
    needs=_NEEDS,
    tables=_TABLES,
    how="what it asks at the lighter feed, with no hole before it: the least that any drill of the crib can ask; a drill "
    "thinner than the formulas reach only where there is no other",
)
@_with_planner
def smallest(planner: "_Planner", held: list[Drill]) -> Limited:
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


class _Planner:
    """Builds a ladder for one metal, one machine and one crib."""

    def __init__(
        self, material: str, family: str, group: str, hand: float, power: float, depth: float,
        caps: list[tuple[float, str]], spindle: tuple[Any, ...], light: float, last_most: float,
        tables: Sequence[Table],
    ) -> None:  # fmt: skip
        (_, self.morse, materials, speeds, self.feeds, feed_factors, drill_factors, self.forces, rules, self.deep) = tables
        self.metal = materials.one(material=material)
        self.speed_row = speeds.one(material=material, operation="drilling", tool="HSS")
        self.feed_factor = feed_factors.one(feed_group=group).number("factor")
        self.chisel = drill_factors.one(point="standard")
        self.rule = rules.one(family=family)
        self.light, self.last_most = light, last_most
        self.hand, self.power, self.depth, self.caps, self.spindle = hand, power, depth, caps, spindle

    def force(self, name: str) -> float:
        return self.forces.one(name=name).number("value")

    def down_to(self, last: Drill, smaller: list[Drill]) -> list[tuple[Drill, float]] | None:
        """Drills and their pilots from the spot to this last drill, or None when no way leads there."""
        if last.size_mm <= self.rule.number("solid_most_mm") and self.can(last, 0.0):
            return [(last, 0.0)]
        rule = self.rule.number
        sizes = pilot_choices(
            last.size_mm, sorted({drill.size_mm for drill in smaller}), rule("pilot_least_ratio"),
            rule("pilot_most_ratio"), rule("step_most_ratio"), rule("step_least_ratio"),
        )  # fmt: skip
        for pilot in (drill for size in sizes for drill in smaller if drill.size_mm == size):
            if self.can(last, pilot.size_mm):
                before = self.down_to(pilot, [drill for drill in smaller if drill.size_mm < pilot.size_mm])
                if before is not None:
                    return [*before, (last, pilot.size_mm)]
        return None

    def feeds_for(self, size: float) -> tuple[float, float]:
        """The feed at the low end of the advised band, and the lighter one that a hand may fall back to."""
        row = self.feeds.within(size, "over_mm", "upto_mm")
        deep = self._deep(size)
        feed = row.number("feed_low_mm") * self.feed_factor * (deep.number("feed_factor") if deep else 1.0)
        return feed, feed * self.light

    def _deep(self, size: float) -> Row | None:
        ratio = self.depth / size
        first = min(row.number("from_ratio") for row in self.deep.where(situation="deep-hole-drilling"))
        if ratio < first:
            return None
        return self.deep.within(ratio, "from_ratio", "to_ratio", ends="[)", situation="deep-hole-drilling")

    def demand(self, size: float, pilot: float, feed: float) -> DrillDemand:
        kd, k = self.metal.number("drill_kd"), self.metal.number("drill_k")
        return demand(size, pilot, feed, kd, k, self.chisel, self.force("worn_drill"))

    def speed(self, size: float, pilot: float) -> Limited:
        factor = self.force("enlarging_drill_speed") if pilot else 1.0
        deep = self._deep(size)
        if deep:
            factor *= deep.number("speed_factor")
        low, high = self.speed_row.number("low_m_min"), self.speed_row.number("high_m_min")
        return limited_speed(speed_band(low, high, size, factor), self.caps, *self.spindle)

    def can(self, drill: Drill, pilot: float) -> bool:
        """Whether hand, holder and motor can drive this drill."""
        return self.way(drill, pilot) is not None

    def way(self, drill: Drill, pilot: float) -> tuple[float, DrillDemand] | None:
        """The feed and what it asks, at the advised or else at the lighter feed; None when neither can be driven."""
        speed = self.speed(drill.size_mm, pilot).value
        if speed is None:
            return None
        for feed in self.feeds_for(drill.size_mm):
            try:
                asked = self.demand(drill.size_mm, pilot, feed)
            except OutOfRange:
                continue
            driven = drill_power(asked.torque_nmm, speed) <= self.power
            if asked.thrust_n <= self.hand and asked.torque_nmm <= self.holds(drill, asked) and driven:
                return feed, asked
        return None

    def begins_at_most(self) -> float:
        """The largest drill that may begin the hole."""
        return min(self.rule.number("solid_most_mm"), self.last_most)

    def asked_of(self, drill: Drill) -> Record:
        """What a drill asks in solid metal at the lighter feed; without what tables and formulas do not reach."""
        said: dict[str, Any] = {"drill": drill.size_mm}
        speed = self.speed(drill.size_mm, 0.0).value
        try:
            asked = self.demand(drill.size_mm, 0.0, min(self.feeds_for(drill.size_mm)))
        except (OutOfRange, NoRow):
            return said
        said |= {"thrust": asked.thrust_n, "torque": asked.torque_nmm, "holds": self.holds(drill, asked)}
        return said if speed is None else {**said, "power": drill_power(asked.torque_nmm, speed)}

    def holds(self, drill: Drill, asked: DrillDemand) -> float:
        """The torque that the holder of a drill takes under its thrust."""
        chuck, taper = self.force("drill_chuck_torque"), self.force("taper_friction_clean")
        return holder_torque(drill, asked.thrust_n, self.morse, chuck, taper)

    def limit_of(self, last: Drill, drills: Sequence[Drill]) -> str:
        if all(drill.size_mm <= last.size_mm for drill in drills):
            return "the largest drill of the crib that leaves enough to bore"
        return "hand, holder or motor: the next drill asks for more"

    def row(self, drill: Drill, pilot: float) -> Record:
        speed = self.speed(drill.size_mm, pilot)
        found = self.way(drill, pilot)
        if found is None:
            raise OutOfRange(f"{drill.marked} cannot be driven")
        feed, asked = found
        return {
            "name": f"drill, {'taper' if drill.taper_shank else drill.shank} shank",
            "size": (drill.size_mm, drill.marked),
            "speed": speed.value,
            "surface_speed": surface_speed(speed.value, drill.size_mm),
            "hand_feed": feed,
            "thrust": asked.thrust_n,
            "reason": speed.by,
            "taper_shank": drill.taper_shank,
            "shank": drill.shank,
        }


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


_of_ladder(
    "hole.taper_shank_used", "a taper-shank drill is used", lambda rows: any(row["taper_shank"] for row in rows),
    kind="yes-no",
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
        return Limited(start, "the hole that the blank has")
    return Limited(rows[-1]["size"][0], "the last drill") if rows else None


@computed("hole.drills", label="drills in the ladder", kind="count", rounding="count", needs=("hole.ladder",),
          how="counted")  # fmt: skip
def drills(rows: Sequence[Record]) -> int:
    return len(rows)


@computed(
    "hole.travel_needed",
    label="quill travel the last drill needs",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("bore.through_width", "hole.last_drill", "limit.break_through"),
    how="width of the blank as it is then, the point of the drill, and a little to break through",
)
def travel_needed(width: float, drill: float, through: float) -> float:
    return drill_travel(width, drill, through)


@computed(
    "hole.comes_out",
    label="how far the last drill comes out behind the blank",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("hole.last_drill", "limit.break_through"),
    how="the point of the drill, and a little to break through",
)
def comes_out(drill: float, through: float) -> float:
    return point_length(drill) + through


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
