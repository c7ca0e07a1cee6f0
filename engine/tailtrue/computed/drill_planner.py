"""The way from a spot to the last drill: pilots that the metal allows, cuts that hand, holder and motor can drive."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from math import inf
from typing import Any

from tailtrue.calc.cutting import surface_speed
from tailtrue.calc.drill_demand import DrillDemand
from tailtrue.calc.drill_ladder import pilot_choices
from tailtrue.calc.drilling import drill_power
from tailtrue.calc.spindle_band import speed_band
from tailtrue.calc.validity import OutOfRange
from tailtrue.computed.drills import Drill, demand, drills_of, fits_tailstock, holder_torque
from tailtrue.computed.operation import CLAMPED, SHORT_GRIP, TOP_SPEED, limited_speed
from tailtrue.computed.registry import Limited
from tailtrue.tables import NoRow, Row, Table

Record = Mapping[str, Any]
Way = tuple[tuple[Drill, float], ...]  # drills from the spot to the last one, each with its pilot; none at the first


NEEDS = (
    "crib.drills", "crib.drill_chuck_to", "lathe.tailstock_taper", "hole.last_most", "collar.material",
    "collar.material_family", "collar.feed_group", "hole.hand_thrust", "lathe.cutting_power", "collar.saw_width",
    "blank.chuck_speed_limit", "lathe.fastest", "limit.blank_speed", "limit.drill_feed_share", "lathe.speeds?",
    "lathe.speed_from?", "lathe.speed_to?", "limit.speed_step", "limit.speed_overrun", "crib.reduction_sleeves?",
    "limit.drill_load_share", "learner.feed?", "faceplate.speed_limit",
)  # fmt: skip
TABLES = (
    "tools/drill_sets", "tools/morse_drills", "materials/materials", "cutting/speeds", "cutting/drill_feeds",
    "cutting/drill_feed_factors", "cutting/drill_factors", "cutting/force_factors", "cutting/ladder_rules",
    "cutting/adjustments",
)  # fmt: skip


class Planner:
    """Builds a ladder for one metal, one machine and one crib."""

    def __init__(
        self, material: str, family: str, group: str, hand: float, power: float, depth: float,
        caps: list[tuple[float, str]], spindle: tuple[Any, ...], light: float, last_most: float, margin: float,
        feed_most: float | None, tables: Sequence[Table],
    ) -> None:  # fmt: skip
        (_, self.morse, materials, speeds, self.feeds, feed_factors, drill_factors, self.forces, rules, self.deep) = tables
        self.metal = materials.one(material=material)
        self.speed_row = speeds.one(material=material, operation="drilling", tool="HSS")
        self.feed_factor = feed_factors.one(feed_group=group).number("factor")
        self.chisel = drill_factors.one(point="standard")
        self.rule = rules.one(family=family)
        self.light, self.last_most, self.margin = light, last_most, margin
        self.feed_most = feed_most if feed_most is not None else inf
        self.hand, self.power, self.depth, self.caps, self.spindle = hand, power, depth, caps, spindle

    def force(self, name: str) -> float:
        return self.forces.value(name)

    def down_to(self, last: Drill, smaller: list[Drill]) -> Way | None:
        """Drills and their pilots from the spot to this last drill, or None when no way leads there.

        The first way by the rule of pilots; where that asks nearly all of hand or holder, another one with as many
        drills, none of them narrower or wider against the rule, that leaves a margin or else the most of one.
        """
        first = next(self._ways(last, smaller), None)
        if first is None or self.load(first) <= self.margin:
            return first
        others = [way for way in self._ways(last, smaller, len(first)) if self._by_rule(way) >= self._by_rule(first)]
        roomy = next((way for way in others if self.load(way) <= self.margin), None)
        return roomy or min(others, key=self.load)

    def _ways(self, last: Drill, smaller: list[Drill], drills: int | None = None) -> Iterator[Way]:
        """Ways from the spot to this drill, by the rule of pilots the best first; of a count of drills if asked."""
        if last.size_mm <= self.rule.number("solid_most_mm") and self.can(last, 0.0):
            if drills in (None, 1):
                yield ((last, 0.0),)
            return
        if drills == 1:
            return
        for pilot in self._may_go_before(last, smaller):
            rest = [drill for drill in smaller if drill.size_mm < pilot.size_mm]
            for before in self._ways(pilot, rest, None if drills is None else drills - 1):
                yield (*before, (last, pilot.size_mm))

    def _may_go_before(self, last: Drill, smaller: list[Drill]) -> Iterator[Drill]:
        """Drills whose hole this one can be driven through, by the rule of pilots the best first."""
        for size in self._pilots(last.size_mm, smaller):
            if self.can(last, size):
                yield from (drill for drill in smaller if drill.size_mm == size)

    def _pilots(self, size: float, smaller: list[Drill]) -> tuple[float, ...]:
        rule = self.rule.number
        return pilot_choices(
            size, sorted({drill.size_mm for drill in smaller}), rule("pilot_least_ratio"),
            rule("pilot_most_ratio"), rule("step_most_ratio"), rule("step_least_ratio"),
        )  # fmt: skip

    def _by_rule(self, way: Way) -> int:
        """How many pilots of a way are as wide as usual, neither wider nor narrower."""
        most, step = self.rule.number("pilot_most_ratio"), self.rule.number("step_most_ratio")
        return sum(drill.size_mm / step <= pilot <= most * drill.size_mm for drill, pilot in way)

    def load(self, way: Way) -> float:
        """The most that any drill of a way asks of hand or holder, as a share of what each gives.

        The motor is left out: of its power only a share is counted as there for cutting.
        """
        return max(self._asks(drill, pilot) for drill, pilot in way)

    def _asks(self, drill: Drill, pilot: float) -> float:
        found = self.way(drill, pilot)
        if found is None:
            return inf
        asked = found[1]
        return max(asked.thrust_n / self.hand, asked.torque_nmm / self.holds(drill, asked))

    def feeds_for(self, size: float) -> tuple[float, float]:
        """The feed at the low end of the advised band, and the lighter one that a hand may fall back to."""
        row = self.feeds.within(size, "over_mm", "upto_mm")
        deep = self._deep(size)
        feed = row.number("feed_low_mm") * self.feed_factor * (deep.number("feed_factor") if deep else 1.0)
        # A learner feeds a drill no faster than a tool: a faster one pulls itself in.
        return min(feed, self.feed_most), min(feed * self.light, self.feed_most)

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
            "torque": asked.torque_nmm,
            "reason": speed.by,
            "taper_shank": drill.taper_shank,
            "shank": drill.shank,
        }


def with_planner(make: Callable[[Planner, list[Drill]], Limited]) -> Callable[..., Limited]:
    """A fact made from the drills that the tailstock holds, smallest first."""

    def made(
        owned: Sequence[Record], chuck_to: float, taper: str, last_most: float, material: str, family: str, group: str,
        hand: float, power: float, depth: float, chuck_cap: float, top: float, blank_cap: float, light: float,
        speeds: Sequence[float] | None, low: float | None, high: float | None, step: float, overrun: float,
        sleeves: bool | None, margin: float, feed_most: float | None, clamped: float, *tables: Table,
    ) -> Limited:  # fmt: skip
        caps = [(chuck_cap, "the chuck"), (top, TOP_SPEED), (blank_cap, SHORT_GRIP), (clamped, CLAMPED)]
        spindle = (speeds, low, high, step, overrun)
        planner = Planner(
            material, family, group, hand, power, depth, caps, spindle, light, last_most, margin, feed_most, tables
        )
        held = [drill for drill in drills_of(owned, tables[0]) if fits_tailstock(drill, chuck_to, taper, sleeves)]
        return make(planner, held)

    return made
