"""Setting the tailstock over on purpose: how far for a taper, and what the taper that was cut says of it."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.calc.lengths import length_ratio, midway
from tailtrue.calc.setover import (
    half_angle_of_taper,
    setover_exact,
    setover_toward_tool,
    taper_from_diameters,
    taper_from_half_angle,
    taper_per_foot,
    working_span,
)
from tailtrue.calc.steps import length_of_steps, nearest_steps, steps_in
from tailtrue.calc.tapers import correction_doubt as doubt_of_correction
from tailtrue.calc.tapers import difference_over, length_in_one, taper_of_ratio
from tailtrue.computed.registry import Limited, computed
from tailtrue.tables import Table

_INCH = 25.4
_SPAN = ("setover.span",)


@computed(
    "setover.taper",
    label="taper on diameter for each unit of length",
    unit="1",
    needs=("setover.large?", "setover.small?", "setover.length?", "setover.per_foot?", "setover.ratio?",
           "setover.half_angle_said?"),
    how="from the two diameters and their distance, or as given for each foot, as a ratio or as an angle",
)  # fmt: skip
def taper(
    large: float | None, small: float | None, length: float | None, per_foot: float | None, ratio: float | None,
    half_angle: float | None,
) -> float | None:  # fmt: skip
    if per_foot is not None:
        return taper_per_foot(per_foot / _INCH)
    if ratio is not None:
        return taper_of_ratio(ratio)
    if half_angle is not None:
        return taper_from_half_angle(half_angle)
    if large is None or small is None or length is None:
        return None
    return taper_from_diameters(large, small, length)


@computed("setover.one_in", label="length in which the diameter loses one", unit="1", rounding="ratio",
          needs=("setover.taper",), how="1 / taper")  # fmt: skip
def one_in(slope: float) -> float:
    return length_in_one(slope)


@computed("setover.half_angle", label="angle between side and axis", unit="deg", rounding="angle",
          needs=("setover.taper",), how="atan(taper / 2)")  # fmt: skip
def half_angle(slope: float) -> float:
    return half_angle_of_taper(slope)


@computed("setover.steepest_half_angle", label="steepest half angle that is set over", unit="deg", rounding="angle",
          bound="most", tables=("setover/limits",), how="from the table")  # fmt: skip
def steepest_half_angle(limits: Table) -> float:
    return limits.value("steepest_half_angle")


@computed("setover.span", label="length of the work between the points of the centres", unit="mm", rounding="length",
          needs=("setover.work_length", "setover.head_depth", "setover.tail_depth"),
          how="length over both faces less the depth of both centre holes")  # fmt: skip
def span(length: float, head: float, tail: float) -> float:
    return working_span(length, head, tail)


@computed("setover.clear_of_dog", label="headstock end of the taper from that face of the work", unit="mm",
          rounding="length", bound="least", needs=("crib.dog_room", "limit.dog_clearance"),
          how="length that the dog needs, and the clearance in which the tool runs off")  # fmt: skip
def clear_of_dog(dog: float, clearance: float) -> float:
    return dog + clearance


@computed("setover.room", label="length of the work that the tool can taper", unit="mm", rounding="length", bound="most",
          needs=("setover.work_length", "setover.clear_of_dog"),
          how="length over both faces less what stays clear for the dog")  # fmt: skip
def room(length: float, clear: float) -> float:
    return length - clear


@computed("setover.amount", label="set-over of the tailstock", unit="mm", rounding="depth",
          needs=("setover.taper", *_SPAN), how="L sin(atan(taper / 2)), the work standing aslant")  # fmt: skip
def amount(slope: float, length: float) -> float:
    return setover_exact(slope, length)


@computed("setover.toward_tool", label="set-over toward the tool", unit="mm", rounding="depth",
          needs=("setover.amount", "setover.small_end"),
          how="the set-over; less than nought, away from the tool, when the small end is at the headstock")  # fmt: skip
def toward_tool(size: float, small_end: str) -> float:
    return setover_toward_tool(size, small_end)


@computed("setover.span_in_setovers", label="length of the work in set-overs", unit="1", rounding="ratio",
          needs=("setover.amount", *_SPAN), how="length between the points / set-over")  # fmt: skip
def span_in_setovers(size: float, length: float) -> float:
    return length_ratio(length, size)


@computed("setover.customary", label="length in set-overs up to which plain centres last", unit="1", rounding="ratio",
          tables=("setover/limits",), how="from the table")  # fmt: skip
def customary(limits: Table) -> float:
    return length_in_one(limits.value("customary_share"))


@computed("setover.steep", label="steep for a set-over", kind="yes-no",
          needs=("setover.span_in_setovers", "setover.customary"),
          how="the length holds fewer set-overs than is customary")  # fmt: skip
def steep(found: float, usual: float) -> bool:
    return found < usual


@computed("setover.turns_serve", label="the indicator shows the whole set-over in turns of its needle", kind="yes-no",
          needs=("setover.amount", "crib.indicator_turn?", "crib.indicator_travel?"),
          how="a turn of the needle is known, and the plunger travels farther than the set-over")  # fmt: skip
def turns_serve(size: float, turn: float | None, travel: float | None) -> bool:
    return turn is not None and travel is not None and size < travel


@computed("setover.turns", label="whole turns of the needle for the set-over", unit="1", rounding="count",
          needs=("setover.amount", "crib.indicator_division", "crib.indicator_turn"),
          how="set-over in whole divisions, over one turn")  # fmt: skip
def turns(size: float, division: float, turn: float) -> float:
    return float(steps_in(length_of_steps(nearest_steps(size, division), division), turn))


@computed("setover.divisions_over", label="divisions over the whole turns for the set-over", unit="1", rounding="count",
          needs=("setover.amount", "setover.turns", "crib.indicator_division", "crib.indicator_turn"),
          how="set-over less the whole turns, over one division")  # fmt: skip
def divisions_over(size: float, whole: float, division: float, turn: float) -> float:
    return max(0.0, nearest_steps(size - length_of_steps(whole, turn), division))


@computed("setover.difference", label="difference of diameters over the tapered part", unit="mm", rounding="fit",
          needs=("setover.taper", "setover.length"), how="taper x length")  # fmt: skip
def difference(slope: float, length: float) -> float:
    return difference_over(slope, length)


@computed("setover.cut_difference", label="difference of the two diameters read", unit="mm", rounding="fit",
          needs=("setover.cut_large", "setover.cut_small"), how="the one less the other")  # fmt: skip
def cut_difference(large: float, small: float) -> float:
    return large - small


@computed("setover.cut_wanted", label="difference wanted over the distance read", unit="mm", rounding="fit",
          needs=("setover.taper", "setover.cut_apart"), how="taper x distance")  # fmt: skip
def cut_wanted(slope: float, apart: float) -> float:
    return difference_over(slope, apart)


@computed(
    "setover.correction",
    label="correction of the set-over",
    unit="mm",
    rounding="difference",
    needs=("setover.taper", "setover.cut_large", "setover.cut_small", "setover.cut_apart", *_SPAN),
    how="set-over for the taper wanted less that of the taper that was cut; more than nought is further",
)
def correction(slope: float, large: float, small: float, apart: float, length: float) -> float:
    return setover_exact(slope, length) - setover_exact(taper_from_diameters(large, small, apart), length)


@computed("setover.cut_far", label="taper that was cut is far off the one wanted", kind="yes-no",
          needs=("setover.cut_difference", "setover.cut_wanted"), tables=("setover/limits",),
          how="the difference read is off the one wanted by more than a share of it")  # fmt: skip
def cut_far(found: float, wanted: float, limits: Table) -> bool:
    return abs(found - wanted) > limits.value("cut_far_share") * wanted


@computed("setover.corrected", label="set-over with its correction", unit="mm", rounding="depth",
          needs=("setover.amount", "setover.correction"), how="the set-over and the correction together")  # fmt: skip
def corrected(size: float, further: float) -> float:
    return size + further


@computed("setover.correction_amount", label="size of the correction", unit="mm", rounding="difference",
          needs=("setover.correction",), how="its size; the way is said in words")  # fmt: skip
def correction_amount(signed: float) -> float:
    return abs(signed)


@computed(
    "setover.correction_doubt",
    label="doubt of the correction",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=("setover.cut_large", "setover.cut_small", "setover.cut_apart", *_SPAN, "lathe.dials",
           "crib.outside_micrometers?", "crib.caliper_resolution?", "crib.indicator_division?"),
    tables=("measuring/instruments",),
    how="doubt of the two diameters, each by itself, carried to the set-over, and half a division of the indicator",
)  # fmt: skip
def correction_doubt(
    large: float, small: float, apart: float, length: float, dials: str, micrometers: Sequence[Mapping[str, Any]] | None,
    caliper: float | None, division: float | None, instruments: Table,
) -> Limited:  # fmt: skip
    # The two sizes differ too much for the error of one instrument to cancel.
    doubts = []
    for size in (large, small):
        owned = any(one["from"] <= size <= one["to"] for one in micrometers or ())
        kinds = [f"outside-micrometer-{dials}"] if owned else ["caliper"] if caliper is not None else []
        rows = [
            row
            for kind in kinds
            for row in instruments.where(kind=kind)
            if row.number("from_mm") <= size <= row.number("to_mm")
        ]
        if not rows:
            return Limited(None, f"no instrument of the crib is known to read {size:g} mm")
        doubts.append(instruments.take(rows[0]).number("expanded_uncertainty_mm"))
    of_setting = 0.0 if division is None else midway(0.0, division)
    return Limited(doubt_of_correction(doubts[0], doubts[1], apart, length, of_setting), "the instruments and the indicator")
