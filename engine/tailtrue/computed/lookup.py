"""Paper at the lathe: the table and the scales of this bar as it was made, and why half the difference is not the move."""

from collections.abc import Mapping
from typing import Any

from tailtrue.calc.alignment import diameter_difference, tailstock_move
from tailtrue.calc.budget import carried_uncertainty
from tailtrue.calc.indicator import move_factor
from tailtrue.calc.lengths import midway, percentage
from tailtrue.calc.steps import surely_less
from tailtrue.computed.differences import in_steps, of_instrument
from tailtrue.computed.registry import computed, field
from tailtrue.tables import Table

_SLACK = 1e-9
_BAR = ("truing.span", "truing.head_station", "truing.tail_station")


@computed("lookup.spacing", label="distance between the middles of the collars as made", unit="mm", rounding="length",
          needs=("truing.head_station", "truing.tail_station"), how="station of the one less that of the other")  # fmt: skip
def spacing(first: float, second: float) -> float:
    return second - first


@computed("lookup.factor", label="factor from the difference to the move", unit="1", rounding="ratio",
          needs=("collar.instrument?", *_BAR), how="L / (2 (b - a))")  # fmt: skip
def factor(instrument: str | None, span: float, first: float, second: float) -> float:
    far_side = instrument == "indicator"
    return move_factor(
        "traverse of fresh skims on the far side" if far_side else "difference of diameters", span, first, second
    )


@computed("lookup.inside", label="difference that is surely inside the limit of the bar as made", unit="mm",
          rounding="difference", bound="most",
          needs=("truing.limit", "align.uncertainty", "lathe.difference_step", "align.verdict_possible"),
          how="limit down less doubt up, as written")  # fmt: skip
def inside(limit: float, unsure: float, step: float, verdict: bool) -> float | None:
    # Closer than that, what is surely inside would be less than what the readings can tell at all.
    return surely_less(limit, unsure, step) if verdict and limit - unsure > unsure else None


@computed("lookup.again_up_to", label="difference up to which it is too close to say", unit="mm", rounding="difference",
          bound="least", needs=("truing.limit", "align.uncertainty", "lookup.inside"),
          how="limit and the doubt")  # fmt: skip
def again_up_to(limit: float, unsure: float, _inside: float) -> float:
    return limit + unsure


@computed(
    "lookup.table",
    label="difference read and offset of the tailstock centre, in fine steps",
    kind="records",
    fields=(field("difference", "mm", "difference"), field("do", kind="text"), field("move", "mm", "difference")),
    needs=(
        "lathe.dials", "collar.instrument_resolution", "align.uncertainty", "lookup.inside?", "lookup.again_up_to?", *_BAR,
    ),
    tables=("record/look_up_steps",),
    how="move = difference / 2 x L / (b - a); what is in limits or inside the doubt is left alone",
)  # fmt: skip
def table(
    dials: str, resolution: float, unsure: float, inside: float | None, again: float | None, span: float, first: float,
    second: float, steps: Table,
) -> tuple[Mapping[str, Any], ...] | None:  # fmt: skip
    leave, doubtful = (unsure, unsure) if inside is None or again is None else (inside, again)
    rows = []
    for difference in in_steps(map(steps.take, of_instrument(steps.where(dials=dials), resolution))):
        do = "leave" if difference <= leave + _SLACK else "again" if difference <= doubtful + _SLACK else "move"
        move = None if do == "leave" else tailstock_move(difference, span, first, second)
        rows.append({"difference": difference, "do": do, "move": move})
    return tuple(rows) or None


@computed("lookup.move_uncertainty", label="doubt of the move", unit="mm", rounding="difference", bound="least",
          needs=("align.uncertainty", "lookup.factor"), how="doubt of the difference times the factor")  # fmt: skip
def move_uncertainty(unsure: float, times: float) -> float:
    return carried_uncertainty(unsure, times)


@computed("lookup.limit_move", label="offset of the centre at the limit", unit="mm", rounding="difference",
          needs=("truing.limit", *_BAR), how="limit / 2 x L / (b - a)")  # fmt: skip
def limit_move(limit: float, span: float, first: float, second: float) -> float:
    return tailstock_move(limit, span, first, second)


@computed("lookup.share_percent", label="share of the offset that the collars show", unit="%", rounding="ratio",
          needs=("lookup.spacing", "truing.span"), how="(b - a) / L")  # fmt: skip
def share_percent(apart: float, span: float) -> float:
    return round(percentage(apart, span))


@computed("lookup.left_percent", label="share of the error that half the difference leaves", unit="%", rounding="ratio",
          needs=("lookup.share_percent",), how="what the collars do not show")  # fmt: skip
def left_percent(share: float) -> float:
    return 100 - share


@computed("lookup.half_move", label="half the difference", unit="mm", rounding="difference",
          needs=("visit.gap",), how="difference / 2")  # fmt: skip
def half_move(gap: float) -> float:
    return midway(0.0, gap)


@computed("lookup.half_short", label="what half the difference lacks of the move", unit="mm", rounding="difference",
          needs=("visit.move", "lookup.half_move"), how="the move less half the difference")  # fmt: skip
def half_short(move: float, half: float) -> float:
    return move - half


@computed("lookup.half_leaves", label="difference that is left after a move by half the difference", unit="mm",
          rounding="difference", needs=("lookup.half_short", *_BAR), how="2 x what is lacking x (b - a) / L")  # fmt: skip
def half_leaves(short: float, span: float, first: float, second: float) -> float:
    return diameter_difference(short, span, first, second)
