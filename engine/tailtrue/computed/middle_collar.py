"""How many collars the bar gets, and whether one in its middle may be: stock, room, and what the bar bends there."""

from typing import Any

from tailtrue.calc.beams import deflection_midspan
from tailtrue.calc.bending import bow_from_bending, diameter_error, sag_with_collars
from tailtrue.calc.lathe_geometry import bow_doubt
from tailtrue.calc.lengths import length_for_pieces, near_edge, over_both_sides, per_side, share_of
from tailtrue.calc.third_collar import middle_allowance
from tailtrue.computed.registry import computed

_TWO, _THREE = 2, 3
_WORDS = {_TWO: "two", _THREE: "three"}
_ALL = {_TWO: "both", _THREE: "all three"}


@computed("collar.pieces", label="collars on the bar", kind="count", rounding="count",
          needs=("job.third_collar?", "lathe.dials"),
          how="two; three where the job asks for one in the middle, which is refused where it may not be")  # fmt: skip
def pieces(third: bool | None, _dials: str) -> int:
    return _THREE if third else _TWO


@computed("collar.how_many", label="their number in a word", kind="text", needs=("collar.pieces",), how="in a word")
def how_many(count: int) -> str:
    return _WORDS[count]


@computed("collar.all", label="all collars of the bar, in words", kind="text", needs=("collar.pieces",), how="in words")
def all_of_them(count: int) -> str:
    return _ALL[count]


@computed("third.station", label="middle of the bar from either end", unit="mm", rounding="length", needs=("bar.length",),
          how="half the length of the bar")  # fmt: skip
def station(length: float) -> float:
    return per_side(length, 0.0)


@computed("third.edge", label="edge of the middle collar from either end", unit="mm", rounding="length",
          needs=("third.station", "collar.width"), how="middle of the bar less half the width")  # fmt: skip
def edge(middle: float, width: float) -> float:
    return near_edge(middle, width)


@computed("third.apart", label="middle collar from the middle of its neighbours", unit="mm", rounding="length",
          needs=("collar.spacing",), how="half the distance of the outer collars")  # fmt: skip
def apart(spacing: float) -> float:
    return per_side(spacing, 0.0)


@computed("third.room", label="room between the middle collar and its neighbours", unit="mm", rounding="length",
          needs=("third.apart", "collar.width"), how="distance of the middles less a width")  # fmt: skip
def room(between: float, width: float) -> float:
    return between - width


@computed(
    "third.stock_needed",
    label="least collar stock for the collars that are wanted",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("collar.pieces", "limit.collar_width_least", "collar.facing_stock", "limit.saw_kerf"),
    how="so many of the narrowest collar with its facing, and the saw cuts between them",
)
def stock_needed(count: int, width: float, facing: float, kerf: float) -> float:
    return length_for_pieces(over_both_sides(width, facing), kerf, count) - kerf


@computed(
    "third.stock_enough",
    label="the collar stock gives the collars that are wanted",
    kind="yes-no",
    needs=("bar.on_hand?", "third.stock_needed", "collar.stock_length", "collar.own_width"),
    how="least stock against the stock; a bar on hand has its collars, and a plate was held against all its squares when it "
    "was chosen",
)
def stock_enough(on_hand: Any, needed: float, there: float, own: bool) -> bool:
    return on_hand is not None or own or needed <= there


@computed(
    "third.bend_on_diameter",
    label="bending of the bar in its middle, on diameter",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=("skim.radial_force", "align.span", "bar.modulus", "bar.diameter"),
    how="twice F L^3 / (48 E I)",
)
def bend_on_diameter(load: float, span: float, modulus: float, diameter: float) -> float:
    return diameter_error(deflection_midspan(load, span, modulus, diameter))


@computed(
    "third.sag",
    label="sag of the bar in its middle under its own weight and its collars",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=("bar.diameter", "align.span", "bar.modulus", "bar.density", "collar.mass", "align.station"),
    how="beam on two supports with three collars; downward, so it hardly changes a diameter",
)
def sag(diameter: float, span: float, modulus: float, density: float, collar: float, first: float) -> float:
    middle = per_side(span, 0.0)
    return sag_with_collars(diameter, span, modulus, density, (collar,) * _THREE, (first, middle, span - first), middle)


@computed(
    "third.bend_most",
    label="bending allowed in the middle",
    unit="mm",
    rounding="difference",
    bound="most",
    needs=("align.limit", "limit.third_bend_share"),
    how="a share of the limit on the difference of the collars",
)
def bend_most(limit: float, share: float) -> float:
    return share_of(limit, share)


@computed(
    "third.bow_from_cut",
    label="how much larger the skim may leave the middle collar",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=("skim.radial_force", "align.span", "align.station", "bar.modulus", "bar.diameter"),
    how="bending in the middle less that at the other collars, on diameter, before spring passes",
)
def bow_from_cut(load: float, span: float, first: float, modulus: float, diameter: float) -> float:
    return bow_from_bending(load, span, first, per_side(span, 0.0), span - first, modulus, diameter)


@computed(
    "third.doubt",
    label="doubt of the middle reading against the mean of the ends",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=("align.uncertainty", "align.span", "align.station"),
    how="that of one collar, taken once for the middle one and by half for the others",
)
def doubt(unsure: float, span: float, first: float) -> float:
    return bow_doubt(unsure, first, per_side(span, 0.0), span - first)


@computed(
    "third.allowance",
    label="middle off the mean of the ends, up to which it says nothing",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=("third.doubt", "third.bow_from_cut"),
    how="doubt of the reading and what the bending of the bar may leave, added",
)
def allowance(unsure: float, bending: float) -> float:
    return middle_allowance(unsure, bending)
