"""A test bar that exists: what a visit leaves of it, and what may change when it is turned end for end."""

from collections.abc import Mapping
from typing import Any

from tailtrue.calc.doubts import both_together
from tailtrue.calc.lengths import length_ratio
from tailtrue.calc.steps import length_of_steps, step_up
from tailtrue.computed.joint_ways import EVERY_WAY
from tailtrue.computed.registry import Limited, computed, taken


@computed("collar.after_visit", label="diameter of the collars after one more visit", unit="mm", rounding="size",
          bound="least", needs=("collar.diameter", "skim.use_per_visit"),
          how="diameter today less what a visit costs")  # fmt: skip
def after_visit(diameter: float, use: float) -> float:
    return diameter - use


@computed(
    "collar.read_most",
    label="largest that a collar may be read",
    unit="mm",
    rounding="size",
    bound="most",
    needs=("bar.on_hand?", "collar.stock_diameter", "limit.collars_differ"),
    how="the stock it was turned from; for a bar on hand the smaller collar, and by how much two collars may differ",
)
def read_most(on_hand: Mapping[str, Any] | None, stock: float, differ: float) -> Limited:
    if on_hand is None:
        return Limited(stock, "the stock that the collars are turned from")
    return Limited(stock + differ, "the smaller collar as measured, and what the other may be larger")


@computed("collar.before_visit", label="least diameter of the collars before a visit", unit="mm", rounding="size",
          bound="least", needs=("skim.worn_out_at", "skim.use_per_visit"),
          how="where the collars are worn out, and what a visit costs on top")  # fmt: skip
def before_visit(worn_out: float, use: float) -> float:
    return worn_out + use


@computed("collar.before_certificate", label="least diameter of the collars before a certificate", unit="mm",
          rounding="size", bound="least", needs=("skim.worn_out_at", "skim.use_per_visit", "limit.certificate_skims"),
          how="where the collars are worn out, and what all its skims cost on top")  # fmt: skip
def before_certificate(worn_out: float, use: float, skims: float) -> float:
    return worn_out + length_of_steps(skims, use)


@computed("bar.swap_most", label="change of the difference by place that says nothing", unit="mm", rounding="difference",
          bound="least", needs=("align.uncertainty", "lathe.difference_step"),
          how="the doubts of two differences together, the root of two times the doubt of one, up to a whole step: as it "
          "is written it is no less than the doubt of one")  # fmt: skip
def swap_most(unsure: float, step: float) -> float:
    return round(step_up(both_together(unsure, unsure), step), 6)


@computed("bar.stations_apart", label="distance between the middles of the collars in widths", unit="1", bound="least",
          needs=("collar.spacing", "collar.width"), how="distance divided by the width of a collar")  # fmt: skip
def stations_apart(spacing: float, width: float) -> float:
    return length_ratio(spacing, width)


@computed("joint.fixed_by", label="how the collars of this bar are fixed", kind="choice", choices=EVERY_WAY,
          needs=("bar.on_hand?", "joint.method?"),
          how="as told for the bar on hand; else as this job fixes them")  # fmt: skip
def fixed_by(on_hand: Mapping[str, Any] | None, made: str | None) -> Limited:
    if on_hand is None:
        return Limited(made, "this job settles no way to fix them")
    told = on_hand.get("fixed_by")
    return Limited(told, "the stock file says so" if told else "nobody told how the collars of this bar are fixed")


@computed("bar.worn_out_told", label="diameter at which the collars of this bar are worn out, as told", unit="mm",
          rounding="size", bound="least", needs=("bar.on_hand?",), how="as told for the bar on hand")  # fmt: skip
def worn_out_told(on_hand: Mapping[str, Any] | None) -> Limited:
    return Limited((on_hand or {}).get("worn_out_at"), "the stock file says so" if on_hand else "this job makes the bar")


@computed("bar.middle_run_out", label="run-out of the middle of the bar that is borne", unit="mm", rounding="fit",
          bound="most", needs=("bar.on_hand?", "limit.bar_run_out"),
          how="the limit, and what the bar ran out when it was made where its certificate tells that")  # fmt: skip
def middle_run_out(on_hand: Mapping[str, Any] | None, most: float) -> Limited:
    new = (on_hand or {}).get("run_out")
    if new is None:
        return taken(most, "a bar centred in a lathe")
    return taken(most + float(new), "what this bar ran out when it was made, and a little")
