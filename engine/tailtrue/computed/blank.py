"""A raw blank that is made round on a band first: how far it stands out, how long the band is, how fast it may turn."""

from collections.abc import Mapping
from typing import Any

from tailtrue.calc.cutting import passes_for_stock
from tailtrue.calc.lengths import midway, on_diameter, share_of, within_both_sides
from tailtrue.calc.steps import equal_cut, step_down, steps_in
from tailtrue.calc.turning_masses import unbalance_speed_limit
from tailtrue.computed.chuck_facts import body_fact, chuck_limit, hole_fact, jaws_fact, name_fact, opening_fact
from tailtrue.computed.registry import Limited, computed, taken
from tailtrue.tables import Table

Record = Mapping[str, Any]

hole_fact("blank.hole", "blank.chuck", "hole through the chuck for the blanks")
name_fact("blank.chuck_label", "blank.chuck", "chuck for the blanks")
opening_fact("blank.grips_to", "blank.chuck", "largest blank gripped with the jaws inside the body")
body_fact("blank.body", "blank.chuck", "body of the chuck for the blanks")
jaws_fact("blank.jaw_depth", "blank.chuck", "depth of the jaws that hold the blank")


@computed(
    "blank.chuck_speed_limit",
    label="speed limit of the chuck for the blanks",
    unit="1/min",
    rounding="speed",
    bound="most",
    needs=("blank.chuck", "collar.collet_serves", "crib.collet_speed?"),
    tables=("machines/chuck_limits",),
    how="the speed marked on the chuck; for an unmarked chuck the cautious figure for its size; no more than that of the "
    "collet chuck where its collet holds the blanks",
)
def chuck_speed_limit(chuck: Record, in_collet: bool, collet: float | None, limits: Table) -> Limited | None:
    limit = chuck_limit(chuck, limits)
    if not in_collet or limit is None or collet is None or collet >= limit.value:
        return limit
    return taken(collet, "the speed marked on the collet chuck", as_said=True)


@computed(
    "collar.band_grip",
    label="grip on a blank that is turned half and half",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("collar.saw_width", "limit.face_clearance", "blank.jaw_depth", "lathe.size_step"),
    how="half the blank less the clearance in front of the jaws, so that either half can be turned while the other is "
    "held; no more than the jaws are deep",
)
def band_grip(width: float, clearance: float, jaws: float, step: float) -> float:
    return max(0.0, step_down(min(midway(0.0, width) - clearance, jaws), step))


@computed("blank.room_behind", label="room behind a blank held by its band", unit="mm", rounding="length", bound="most",
          needs=("blank.chuck", "collar.band_grip"),
          how="depth of the jaws as measured, less the grip; the blank only grows shorter by facing")  # fmt: skip
def room_behind(chuck: Record, grip: float) -> Limited:
    jaws = chuck.get("jaw_depth")
    if jaws is None:
        return Limited(None, "how deep the jaws are was not measured")
    return Limited(jaws - grip, "the depth of the jaws")


@computed(
    "blank.room_needed",
    label="room that the tools need behind a blank held by its band",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("hole.there", "hole.room_behind?", "limit.boring_clearance", "blank.hole?", "bore.nominal"),
    how="what drilling needs, and at the least what the boring bar is longer than its work; none where the hole of the "
    "chuck is larger than the bore",
)
def room_needed(
    bored: bool, drilling: float | None, boring: float, hole: float | None, bore: float
) -> Limited | None:  # fmt: skip
    if hole is not None and hole > bore:
        return Limited(0.0, "the hole of the chuck takes the tools")
    if bored:
        return Limited(boring, "the boring bar would strike the chuck")
    return None if drilling is None else Limited(max(drilling, boring), "the drill would strike the chuck")


@computed("collar.band_out", label="blank standing out of the jaws to be turned", unit="mm", rounding="length",
          needs=("collar.saw_width", "collar.band_grip"), how="width of the blank less the grip")  # fmt: skip
def band_out(width: float, grip: float) -> float:
    return width - grip


@computed("collar.again_out", label="blank standing out of the jaws, its first side faced", unit="mm", rounding="length",
          needs=("collar.band_out", "collar.facing_stock"),
          how="what stood out before, less what the first side lost, so that the grip stays as deep")  # fmt: skip
def again_out(out: float, faced: float) -> float:
    return out - faced


@computed("collar.band_length", label="length of the band", unit="mm", rounding="length",
          needs=("collar.band_out", "limit.face_clearance"),
          how="what stands out less the clearance in front of the jaws")  # fmt: skip
def band_length(out: float, clearance: float) -> float:
    return out - clearance


@computed(
    "collar.band_passes",
    label="passes until a band on the raw blank is bright",
    unit="1",
    rounding="count",
    bound="least",
    needs=("collar.corner_diameter", "collar.run_out", "collar.blank_diameter", "collar.band.depth"),
    how="from the highest place, the largest circle and what it runs out, to the size of the band, each pass as deep as the "
    "list says, up to a whole pass",
)
def band_passes(corners: float, run_out: float, blank: float, depth: float) -> float:
    return float(max(1, passes_for_stock(max(0.0, corners + run_out - blank), depth)))


@computed(
    "collar.second_stock",
    label="metal that comes off the second side",
    unit="mm",
    rounding="length",
    needs=("collar.saw_width", "collar.facing_stock", "collar.width"),
    how="width of the blank less what its first side lost, less the width of the collar",
)
def second_stock(blank: float, first: float, width: float) -> float:
    return max(0.0, blank - first - width)


@computed(
    "collar.width_by_halves",
    label="widest collar from a blank that is held by halves",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("collar.saw_width", "collar.facing_stock", "collar.own_width", "collar.width_from_stock", "lathe.size_step"),
    how="width of the sawn blank less facing on both sides, down to a whole step; where the stock gives it",
)
def width_by_halves(sawn: float, facing: float, own: bool, stock: float, step: float) -> Limited:
    if own:
        return Limited(None, "the blank is not sawn")
    return Limited(step_down(min(within_both_sides(sawn, facing), stock), step), "facing on both sides")


@computed(
    "collar.first_most",
    label="deepest roughing cut over the first side",
    unit="mm",
    rounding="depth",
    bound="most",
    needs=("collar.widening.depth", "collar.interrupted_depth", "lathe.facing_step"),
    how="that of the second side, less where corners or skin interrupt the cut, in whole steps of the top slide",
)
def first_most(deep: float, share: float, step: float) -> float:
    return max(step, step_down(share_of(deep, share), step))


def _roughed(side: str, stock: str, deepest: str) -> None:
    """Register the roughing cuts over one side: how many, how deep each, and that on the dial of the top slide."""

    @computed(f"collar.{side}_rough_cuts", label=f"roughing cuts over the {side} side", unit="1", rounding="count",
              bound="least", needs=(stock, "collar.facing.depth", deepest),
              how="what comes off less one light cut, divided by the depth of a roughing cut, up to a whole cut",
              )  # fmt: skip
    def _cuts(stock: float, light: float, deep: float) -> float:
        return float(passes_for_stock(on_diameter(stock - light), deep)) if stock > light else 0.0

    @computed(f"collar.{side}_depth", label=f"depth of a roughing cut over the {side} side", unit="mm", rounding="depth",
              needs=(stock, "collar.facing.depth", f"collar.{side}_rough_cuts", "lathe.facing_step"),
              how="what comes off less one light cut, shared out over the cuts, in whole steps of the top slide",
              )  # fmt: skip
    def _depth(stock: float, light: float, cuts: float, step: float) -> Limited | float:
        if cuts < 1:
            return Limited(None, "one light cut takes it off")
        return equal_cut(on_diameter(stock - light), round(cuts), step)

    @computed(f"collar.{side}_divisions", label=f"divisions of the top-slide dial, {side} side", unit="1", rounding="count",
              needs=(f"collar.{side}_depth", "lathe.top_slide_dial_division"),
              how="depth per side divided by what one division moves the tool")  # fmt: skip
    def _divisions(depth: float, division: float) -> float:
        return float(steps_in(depth, division))


_roughed("first", "collar.facing_stock", "collar.first_most")
_roughed("second", "collar.second_stock", "collar.widening.depth")


@computed("collar.second_cuts", label="cuts that face the second side to width", unit="1", rounding="count", bound="least",
          needs=("collar.second_rough_cuts",), how="the roughing cuts and the light one")  # fmt: skip
def second_cuts(rough: float) -> float:
    return rough + 1.0


@computed(
    "collar.unbalance_speed",
    label="speed at which a blank out of true pulls on the lathe",
    unit="1/min",
    rounding="speed",
    bound="most",
    needs=("collar.run_out", "limit.unbalance_share"),
    how="speed at which the turning force of unbalance is the allowed share of the weight; the whole run-out is taken as "
    "the distance of the centre of mass, for a blank is not even within",
)
def unbalance_speed(run_out: float, share: float) -> float:
    return unbalance_speed_limit(run_out, share)


@computed("collar.run_out", label="run-out that the blank may start with", unit="mm", rounding="depth", bound="most",
          needs=("collar.raw", "limit.first_run_out", "limit.scroll_run_out", "collar.out_of_round"),
          how="more for a raw blank set by hand than for bar in a scroll chuck; there it may be all that the bar is out of "
          "round")  # fmt: skip
def run_out(raw: bool, by_hand: float, scroll: float, uneven: float) -> Limited:
    if raw:
        return taken(by_hand, "a raw blank, set by hand")
    return taken(scroll, "bar in a scroll chuck") if scroll >= uneven else taken(uneven, "all that the bar is out of round")


@computed("collar.raw", label="the blank comes to the lathe with corners, skin or out of round", kind="yes-no",
          needs=("collar.banded", "collar.plated"),
          how="whether it is made round on a band, or bored on the faceplate and made round after")  # fmt: skip
def comes_raw(banded: bool, plated: bool) -> bool:
    return banded or plated


def _interrupted(name: str, what: str) -> None:
    @computed(f"collar.interrupted_{name}", label=f"share of {what} left by corners or skin", unit="1",
              needs=("collar.raw",), tables=("cutting/adjustments",),
              how="from the table of adjustments for interrupted cuts; all of it on round stock")  # fmt: skip
    def _share(raw: bool, adjustments: Table) -> float:
        return adjustments.one(situation="interrupted-cut").number(f"{name}_factor") if raw else 1.0


for _name, _what in (("speed", "speed"), ("depth", "depth")):
    _interrupted(_name, _what)
