"""What the grip does to the rest of the bar: jaws on the seat of a collar, a far end loose in the spindle."""

from tailtrue.calc.beams import LEAST_OVERHANG_IN_DIAMETERS, whirl_speed_cantilever
from tailtrue.calc.cutting import spindle_speed
from tailtrue.calc.lengths import length_of_diameters, length_ratio, per_side, share_of
from tailtrue.computed.registry import Limited, computed
from tailtrue.tables import Table

_HOLDINGS = "machines/holdings"


@computed(
    "bar.jaws_on_seat",
    label="the jaws grip where a collar will sit",
    kind="yes-no",
    needs=("bar.short_overhang", "limit.facing_stock", "bar.chuck_jaw_depth", "collar.inner_edge", "collar.stop_at"),
    how="the stretch under the jaws, before and after the end is faced, against the stretch under the collar",
)
def jaws_on_seat(out: float, facing: float, jaws: float, seat_from: float, seat_to: float) -> bool:
    return out - facing < seat_to and seat_from < out + jaws


@computed(
    "bar.far_jaws_on_seat",
    label="the jaws grip the far end where a collar will sit",
    kind="yes-no",
    needs=("bar.chuck_jaw_depth", "collar.inner_edge"),
    how="the jaws gripping the end in their whole depth, against the edge of the collar nearest to that end",
)
def far_jaws_on_seat(jaws: float, seat_from: float) -> bool:
    return seat_from < jaws


@computed(
    "bar.inside",
    label="bar inside chuck and spindle while its end is faced",
    unit="mm",
    rounding="length",
    needs=("bar.stock_needed", "bar.short_overhang"),
    how="the stock less what stands out in front",
)
def inside(length: float, out: float) -> float:
    return length - out


@computed(
    "bar.loose_inside",
    label="the far end of the bar is loose in the spindle",
    kind="yes-no",
    needs=("lathe.spindle_bore", "bar.diameter", "limit.bore_shake", "bar.inside", "limit.overhang_most"),
    how="room round the bar in the bore of the spindle, and the length inside in diameters, each against its limit",
)
def loose_inside(bore: float, diameter: float, shake: float, length: float, most: float) -> bool:
    return bore - diameter > shake and length_ratio(length, diameter) > most


@computed(
    "bar.inside_speed_limit",
    label="speed limit of the bar inside the spindle",
    unit="1/min",
    rounding="speed",
    bound="most",
    needs=(
        "bar.hold", "bar.inside", "bar.diameter", "bar.modulus", "bar.density", "limit.whirl_share", "lathe.fastest",
    ),
    tables=(_HOLDINGS,),
    how="a share of the speed at which the bar inside would whirl if nothing held its far end, no bush either; a stub is "
    "taken as long as the formula holds for",
)  # fmt: skip
def inside_speed_limit(
    hold: str, inside: float, diameter: float, modulus: float, density: float, share: float, top: float,
    holdings: Table,
) -> Limited:  # fmt: skip
    if not holdings.one(decision="bar.hold", hold=hold).yes("inside_spindle"):
        return Limited(top, "nothing of the bar turns inside the spindle")
    free = max(inside, length_of_diameters(diameter, LEAST_OVERHANG_IN_DIAMETERS))
    whirls = whirl_speed_cantilever(diameter, free, modulus, density)
    return Limited(share_of(whirls, share), "the far end of the bar, as if no bush held it")


@computed(
    "bar.bush_from_rear",
    label="the bar goes into the spindle from the rear, for its bush",
    kind="yes-no",
    needs=("bar.loose_inside", "lathe.spindle_bore", "bar.hold", "bar.chuck_hole?", "crib.collet_hole?"),
    tables=(_HOLDINGS,),
    how="whether a bush that fills the bore of the spindle is larger than the hole of what grips the bar; so too where "
    "nobody measured that hole",
)
def bush_from_rear(
    bushed: bool, bore: float, hold: str, chuck: float | None, collet: float | None, holdings: Table
) -> bool:  # fmt: skip
    hole = collet if holdings.one(decision="bar.hold", hold=hold).yes("collet_chuck") else chuck
    return bushed and (hole is None or bore > hole)


@computed("bar.bush", label="bush on the far end of the bar", unit="mm", rounding="length", bound="most",
          needs=("lathe.spindle_bore", "limit.bush_clearance"), how="bore of the spindle, less room to slide")  # fmt: skip
def bush(bore: float, room: float) -> float:
    return bore - room


@computed("bar.bush_wall", label="wall of a bush on the far end of the bar", unit="mm", rounding="length",
          needs=("bar.bush", "bar.diameter"), how="half of what the bush is larger than the bar")  # fmt: skip
def bush_wall(outside: float, diameter: float) -> float:
    return per_side(outside, diameter)


@computed(
    "bar.pads_speed_limit",
    label="speed limit of the bar on the pads of the fixed steady",
    unit="1/min",
    rounding="speed",
    bound="most",
    needs=("bar.hold", "bar.diameter", "limit.pad_speed", "lathe.fastest"),
    tables=(_HOLDINGS,),
    how="1000 v / (pi D) with the rubbing speed that greased pads bear",
)
def pads_speed_limit(hold: str, diameter: float, rubbing: float, top: float, holdings: Table) -> Limited:
    if not holdings.one(decision="bar.hold", hold=hold).yes("on_pads"):
        return Limited(top, "no pads rub on the bar")
    return Limited(spindle_speed(rubbing, diameter), "the greased pads of the steady")
