"""Using the bar: limit, uncertainty, and the table from a difference read to a move of the tailstock."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.calc.adequacy import adequate
from tailtrue.calc.alignment import scaled_tolerance, tailstock_move
from tailtrue.calc.difference_budget import DifferenceParts, difference_parts
from tailtrue.calc.doubts import all_together
from tailtrue.calc.fresh_skims import height_effect, skims_uncertainty
from tailtrue.calc.lengths import share_of
from tailtrue.calc.setover import working_span
from tailtrue.calc.steps import surely_less
from tailtrue.calc.thermal import growth
from tailtrue.calc.uncertainty import expanded
from tailtrue.computed.differences import in_steps
from tailtrue.computed.measuring import KINDS
from tailtrue.computed.registry import Limited, computed, field, taken
from tailtrue.tables import Table


@computed(
    "align.span",
    label="length of the bar between its seats on the centres",
    unit="mm",
    rounding="length",
    needs=("bar.length", "bar.centre_cone_depth"),
    how="length of the bar less the depth of the cone at both ends",
)
def span(length: float, cone: float) -> float:
    return working_span(length, cone, cone)


@computed(
    "align.station",
    label="middle of a collar from its seat on the centre",
    unit="mm",
    rounding="length",
    needs=("collar.station", "bar.centre_cone_depth"),
    how="station from the end of the bar less the depth of the cone",
)
def station(from_end: float, cone: float) -> float:
    return from_end - cone


@computed(
    "align.limit",
    label="limit on the difference of the collars",
    unit="mm",
    rounding="difference",
    bound="most",
    needs=("job.accuracy", "collar.spacing"),
    tables=("alignment/accuracy",),
    how="tolerance of the chosen accuracy, scaled to the distance between the collars",
)
def limit(word: str, spacing: float, accuracy: Table) -> float:
    row = accuracy.one(word=word)
    return scaled_tolerance(row.number("tolerance_mm"), row.number("over_length_mm"), spacing)


@computed(
    "align.height_effect",
    label="doubt from the height of the plunger",
    unit="mm",
    rounding="difference",
    needs=("collar.diameter",),
    tables=("alignment/uncertainty",),
    how="plunger off the height of the centres, one collar higher than the other, on a collar of this diameter",
)
def plunger_effect(diameter: float, components: Table) -> float:
    off, higher = (components.value(name) for name in ("plunger_height", "collar_height_difference"))
    return height_effect(off, higher, diameter)


@computed(
    "align.uncertainty",
    label="doubt of the difference of the collars",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=(
        "collar.instrument",
        "collar.instrument_resolution",
        "collar.diameter",
        "collar.expansion",
        "limit.readings",
        "align.height_effect",
    ),
    tables=("alignment/uncertainty", "alignment/repeatability"),
    how="budget after the GUM for both collars read with one instrument, expanded with k = 2",
)
def uncertainty(
    instrument: str, resolution: float, diameter: float, expansion: float, readings: float, by_height: float,
    components: Table, repeatability: Table,
) -> float:  # fmt: skip
    kind = KINDS[instrument]
    parts = budget_parts(kind, resolution, diameter, expansion, readings, components, repeatability)
    coverage = components.value("coverage_factor")
    if kind != "indicator":
        return expanded(all_together(parts), coverage)
    guidance = components.value("carriage_guidance")
    return expanded(skims_uncertainty(parts, guidance, by_height), coverage)


def budget_parts(
    kind: str, resolution: float, diameter: float, expansion: float, readings: float, components: Table,
    repeatability: Table,
) -> DifferenceParts:  # fmt: skip
    """What makes the difference of two diameters unsure, when one instrument of a kind reads both."""

    value = components.value
    scatter = repeatability.within(resolution, "over_mm", "upto_mm", instrument=kind)
    warm = growth(diameter, expansion, value("collar_temperature_difference"))
    return difference_parts(
        scatter.number("repeatability_mm"), int(readings), resolution, scatter.number("local_error_mm"),
        value("form"), warm, value("tool_wear"), value("residual_deflection"),
    )  # fmt: skip


@computed(
    "align.verdict_possible",
    label="the instrument is good enough for a verdict",
    kind="yes-no",
    needs=("align.uncertainty?", "align.limit", "collar.instrument", "limit.verdict_share"),
    how="no caliper, and the doubt is within a share of the limit",
)
def verdict_possible(unsure: float | None, within: float, instrument: str, share: float) -> bool:
    return KINDS.get(instrument) != "caliper" and unsure is not None and adequate(unsure, within, share)


@computed(
    "align.judged_doubt",
    label="largest doubt that can judge the limit",
    unit="mm",
    rounding="difference",
    bound="most",
    needs=("align.limit", "limit.verdict_share"),
    how="a share of the limit",
)
def judged_doubt(within: float, share: float) -> float:
    return share_of(within, share)


@computed(
    "align.inside",
    label="difference that is surely inside the limit",
    unit="mm",
    rounding="difference",
    bound="most",
    needs=("align.limit", "align.uncertainty", "lathe.difference_step"),
    how="limit down less doubt up, as written",
)
def inside(within: float, unsure: float, step: float) -> float | None:
    return surely_less(within, unsure, step) if within > unsure else None


@computed(
    "lathe.difference_step",
    label="step of differences",
    unit="mm",
    rounding="difference",
    needs=("lathe.dials", "limit.difference_step_metric", "limit.difference_step_inch"),
    how="the finest step that a difference is written in",
)
def difference_step(dials: str, metric: float, inch: float) -> float:
    return metric if dials == "metric" else inch


@computed(
    "align.outside",
    label="difference that is surely outside the limit",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=("align.limit", "align.uncertainty"),
    how="limit and the doubt",
)
def outside(within: float, unsure: float) -> float:
    return within + unsure


@computed(
    "align.leave_up_to",
    label="difference up to which the tailstock is left alone",
    unit="mm",
    rounding="difference",
    bound="most",
    needs=("align.uncertainty", "align.inside?", "align.verdict_possible"),
    how="what is surely inside the limit; the doubt where the instrument gives no verdict",
)
def leave_up_to(unsure: float, surely: float | None, verdict: bool) -> Limited:
    if verdict and surely is not None and surely >= unsure:
        return taken(surely, "what is surely inside the limit")
    return taken(unsure, "the doubt", "the doubt: less than that, the instrument does not tell")


@computed(
    "align.table",
    label="difference read and offset of the tailstock centre",
    kind="records",
    fields=(field("difference", "mm", "difference"), field("move", "mm", "difference")),
    needs=("lathe.dials", "truing.span", "truing.head_station", "truing.tail_station", "align.leave_up_to"),
    tables=("alignment/look_up_steps",),
    how="move = difference / 2 x L / (b - a); inside limit or doubt, none",
)
def table(
    dials: str, span: float, first: float, second: float, leave: float, steps: Table
) -> tuple[Mapping[str, Any], ...]:  # fmt: skip
    rows = []
    for difference in in_steps(map(steps.take, steps.where(dials=dials))):
        move = tailstock_move(difference, span, first, second)
        rows.append({"difference": difference, "move": None if difference <= leave else move})
    return tuple(rows)


@computed(
    "job.measured_bar",
    label="the bar has been measured",
    kind="yes-no",
    needs=("job.measured_head?", "job.measured_tail?", "bar.diameter"),
    how="whether both places are in the job file",
)
def measured_bar(head: Sequence[float] | None, tail: Sequence[float] | None, _diameter: float) -> bool:
    return bool(head) and bool(tail)
