"""A blank clamped to the faceplate for its bore: how many straps, what they hold, where they reach, how fast it may turn."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.calc.beams import mass_cylinder
from tailtrue.calc.cutting import cutting_force, passes_for_stock, spindle_speed
from tailtrue.calc.joints import skim_torque
from tailtrue.calc.lengths import midway, on_diameter, per_side
from tailtrue.calc.screws import screw_preload
from tailtrue.calc.steps import step_down, steps_in
from tailtrue.calc.straps import even_straps, slip_margin, strap_force
from tailtrue.calc.turning_masses import unbalance_force
from tailtrue.computed.operation import operation
from tailtrue.computed.registry import Limited, computed
from tailtrue.computed.speeds import RAW_CAPS
from tailtrue.computed.stepping import least_of
from tailtrue.tables import Table

Record = Mapping[str, Any]
_SCREWS = "machines/strap_screws"


@computed(
    "faceplate.speed_limit",
    label="speed limit of a blank clamped to the faceplate",
    unit="1/min",
    rounding="speed",
    bound="most",
    needs=("collar.plated", "crib.faceplate_diameter?", "limit.faceplate_rim", "collar.unbalance_speed", "lathe.fastest"),
    how="the lower of: rim of the plate at the speed of an unmarked one, a blank out of true that pulls on the lathe; the "
    "top speed of the lathe where nothing is clamped",
)
def speed_limit(plated: bool, plate: float | None, rim: float, uneven: float, top: float) -> Limited:
    if not plated or plate is None:
        return Limited(top, "nothing is clamped")
    speed, by = least_of(
        (spindle_speed(rim, plate), "the rim of the plate"), (uneven, "a blank not yet true"), (top, "lathe")
    )
    return Limited(speed, by)


@computed("faceplate.straps", label="straps that hold a blank, evenly spaced", kind="count", rounding="count",
          needs=("crib.faceplate_slots", "crib.strap_count", "limit.straps_least"),
          how="the most that stand in slots at equal angles, so that they balance; none where too few do")  # fmt: skip
def straps(slots: int, owned: int, least: float) -> int:
    return even_straps(slots, owned, round(least))


@computed("faceplate.torque", label="tightening torque of a strap's nut", unit="N mm", rounding="torque",
          needs=("crib.strap_screw",), tables=(_SCREWS,),
          how="what an unmarked screw of this thread bears, oiled")  # fmt: skip
def torque(screw: str, screws: Table) -> float:
    return screws.one(designation=screw).number("torque_nmm")


@computed("faceplate.strap_force", label="force of one strap on the blank", unit="N", rounding="force", bound="most",
          needs=("faceplate.torque", "crib.strap_screw", "limit.strap_nut_factor", "crib.strap_to_work",
                 "crib.strap_to_heel"), tables=(_SCREWS,),
          how="force along the screw, shared by nose and heel as their distances from it have it")  # fmt: skip
def force(tightened: float, screw: str, factor: float, work: float, heel: float, screws: Table) -> float:
    along = screw_preload(tightened, screws.one(designation=screw).number("major_mm"), factor)
    return strap_force(along, work, heel)


@computed("faceplate.strap_radius", label="nose of a strap from the axis", unit="mm", rounding="length",
          needs=("collar.stock_diameter", "limit.strap_bearing"),
          how="the edge of the blank less what a strap bears on")  # fmt: skip
def strap_radius(blank: float, bearing: float) -> float:
    return midway(0.0, blank) - bearing


@computed("faceplate.strap_circle", label="circle that the straps swing", unit="mm", rounding="length", bound="least",
          needs=("faceplate.strap_radius", "crib.strap_to_work", "crib.strap_to_heel"),
          how="twice the distance of the heel from the axis")  # fmt: skip
def strap_circle(radius: float, work: float, heel: float) -> float:
    return on_diameter(radius + work + heel)


@computed("faceplate.wall", label="blank between its bore and its edge", unit="mm", rounding="length", bound="most",
          needs=("collar.stock_diameter", "bore.nominal"), how="half of what it is larger than its bore")  # fmt: skip
def wall(blank: float, bore: float) -> float:
    return per_side(blank, bore)


@computed("faceplate.wall_least", label="least of it that straps need", unit="mm", rounding="length", bound="least",
          needs=("limit.strap_bearing", "limit.strap_clear"),
          how="what a strap bears on, and its distance from the bore")  # fmt: skip
def wall_least(bearing: float, clear: float) -> float:
    return bearing + clear


@computed("faceplate.room_needed", label="room that the tools need behind a clamped blank", unit="mm", rounding="length",
          bound="least", needs=("hole.comes_out", "limit.behind_drill", "limit.boring_clearance"),
          how="what the last drill comes out by, and a margin; no less than the boring bar goes past")  # fmt: skip
def room_needed(out: float, margin: float, boring: float) -> float:
    return max(out + margin, boring)


@computed("faceplate.unbalance", label="force of a clamped blank out of true", unit="N", rounding="force", bound="least",
          needs=("collar.corner_diameter", "collar.saw_width", "collar.density", "collar.run_out", "faceplate.speed_limit"),
          how="mass of a round as large as its corners, the whole run-out as distance, at the highest speed it may turn",
          )  # fmt: skip
def unbalance(size: float, width: float, density: float, out: float, speed: float) -> float:
    return unbalance_force(mass_cylinder(size, width, density), out, speed)


@computed(
    "faceplate.drill_margin",
    label="hold of the straps while the blank is drilled, in holds that are asked of them",
    unit="1",
    rounding="ratio",
    bound="most",
    needs=("faceplate.straps", "faceplate.strap_force", "limit.strap_friction", "faceplate.strap_radius", "hole.ladder",
           "faceplate.unbalance", "limit.straps_least"),
    how="friction under the blank against torque of the drill that asks most, which also pulls as hard as it was pushed "
    "when it breaks through, and the force of unbalance",
)  # fmt: skip
def drill_margin(
    count: int, force: float, friction: float, radius: float, drills: Sequence[Record], uneven: float, least: float
) -> float:  # fmt: skip
    return min(
        _margin(count, least, force, friction, one["thrust"], one["torque"], radius, uneven) for one in drills
    )  # fmt: skip


@computed(
    "faceplate.bore_margin",
    label="hold of the straps while the blank is bored, in holds that are asked of them",
    unit="1",
    rounding="ratio",
    bound="most",
    needs=("faceplate.straps", "faceplate.strap_force", "limit.strap_friction", "faceplate.strap_radius",
           "collar.material", "collar.boring.depth", "collar.boring.feed?", "collar.boring.hand_feed", "bore.nominal",
           "faceplate.unbalance", "limit.straps_least"),
    tables=("materials/materials", "joints/catch"),
    how="friction under the blank against torque and side force of the deepest pass with a dull tool, the metal as tough "
    "as it comes, and the force of unbalance",
)  # fmt: skip
def bore_margin(
    count: int, force: float, friction: float, radius: float, material: str, depth: float, feed: float | None, hand: float,
    bore: float, uneven: float, least: float, materials: Table, catch: Table,
) -> float:  # fmt: skip
    metal = materials.one(material=material)
    sharp = cutting_force(metal.number("kc11_high_mpa"), metal.number("mc_high"), depth, feed or hand)
    across = sharp * catch.value("dull_tool")
    return _margin(count, least, force, friction, 0.0, skim_torque(across, bore), radius, across + uneven)


@computed("faceplate.margin", label="hold of the straps, in holds that are asked of them", unit="1", rounding="ratio",
          bound="most", needs=("faceplate.drill_margin", "faceplate.bore_margin"),
          how="the smaller of drilling and boring")  # fmt: skip
def margin(drilled: float, bored: float) -> Limited:
    return Limited(*least_of((drilled, "drilling"), (bored, "boring")))


def _margin(count: int, least: float, force: float, friction: float, pull: float, torque: float, radius: float,
            side: float) -> float:  # fmt: skip
    # Where too few stand evenly the hold is told for the fewest that would do: another stop asks for them.
    return slip_margin(force, max(count, round(least)), friction, pull, torque, radius, side)


operation(
    "stub.rim", "turning a raw rim on the stub mandrel", table="turn-rough", work="collar",
    diameter="collar.corner_diameter", tool="tool.material",
    caps=(*RAW_CAPS, ("limit.stub_speed", "a collar held by its bore")), speed_factor="collar.interrupted_speed",
    depth_factor="collar.interrupted_depth", depth_by="corners or skin: the cut is interrupted",
)  # fmt: skip


@computed("stub.rim_cut", label="depth of a cut round the raw rim", unit="mm", rounding="depth", bound="most",
          needs=("stub.rim.depth", "limit.stub_cut", "lathe.radial_division"),
          how="as for a first cut in jaws, and no more than friction holds; in whole divisions of the dial")  # fmt: skip
def rim_cut(raw: float, most: float, division: float) -> Limited:
    depth, by = least_of((most, "the collar is held by friction alone"), (raw, "corners or skin: the cut is interrupted"))
    whole = step_down(depth, division)
    return Limited(whole if whole > 0 else None, by)


@computed("stub.rim_divisions", label="divisions of the dial for a cut round the raw rim", unit="1", rounding="count",
          needs=("stub.rim_cut", "lathe.radial_division"),
          how="depth of the cut divided by what one division moves the tool")  # fmt: skip
def rim_divisions(depth: float, division: float) -> float:
    return float(steps_in(depth, division))


@computed("stub.rim_passes", label="passes until the rim is round and bright", unit="1", rounding="count", bound="least",
          needs=("collar.corner_diameter", "collar.run_out", "collar.blank_diameter", "stub.rim_cut"),
          how="from the highest place to the size of the blank, up to a whole pass")  # fmt: skip
def rim_passes(corners: float, out: float, blank: float, depth: float) -> float:
    return float(max(1, passes_for_stock(max(0.0, corners + out - blank), depth)))


@computed("faceplate.speeds_there", label="the lathe has a speed slow enough for plate and raw rim", kind="yes-no",
          needs=("collar.spotting.speed?", "stub.rim.speed?", "stub.facing.speed?", "lathe.slowest", "faceplate.speed_limit",
                 "collar.corner_diameter"),
          how="whether spotting on the plate, turning the raw rim and facing on the stub each find a speed; not known while "
          "what a speed is made from is not")  # fmt: skip
def speeds_there(spotting: float | None, rim: float | None, facing: float | None, *_known: float) -> bool:
    return None not in (spotting, rim, facing)
