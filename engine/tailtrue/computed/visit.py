"""One visit to the lathe: what the readings say, how sure that is, and what they would have to be."""

from collections.abc import Mapping, Sequence
from statistics import fmean, median_low
from typing import Any

from tailtrue.calc.adequacy import readings_to_settle
from tailtrue.calc.alignment import diameter_difference, tailstock_move, uses_left
from tailtrue.calc.budget import Component, expanded_uncertainty, standard_uncertainty
from tailtrue.calc.difference_budget import difference_parts
from tailtrue.calc.difference_budget import move_uncertainty as standard_of_move
from tailtrue.calc.doubts import as_read_once, without_scatter
from tailtrue.calc.fresh_skims import difference_from_readings, guidance_parts
from tailtrue.calc.lengths import length_ratio, share_of
from tailtrue.calc.readings import drift_over, drift_per_step, order_bias, pooled_deviation, repeatability, thread_slip
from tailtrue.calc.steps import nearest_steps
from tailtrue.calc.thermal import growth
from tailtrue.calc.uncertainty import expanded, verdict
from tailtrue.computed.registry import Limited, computed, field
from tailtrue.tables import Table

Record = Mapping[str, Any]

_HALVES = 2  # a division is read to half of it

_READINGS = ("visit.head_readings", "visit.tail_readings")


@computed("visit.head", label="reading of the headstock collar", unit="mm", rounding="fit",
          needs=("visit.head_readings",), how="mean of its readings")  # fmt: skip
def head(readings: Sequence[float]) -> float:
    return fmean(readings)


@computed("visit.tail", label="reading of the tailstock collar", unit="mm", rounding="fit",
          needs=("visit.tail_readings",), how="mean of its readings")  # fmt: skip
def tail(readings: Sequence[float]) -> float:
    return fmean(readings)


@computed("visit.difference", label="tailstock collar less headstock collar", unit="mm", rounding="difference",
          needs=("visit.instrument_kind?", "visit.head", "visit.tail"),
          how="mean of the one less mean of the other")  # fmt: skip
def difference(kind: str | None, at_head: float, at_tail: float) -> float:
    return difference_from_readings(at_head, at_tail, "away") if kind == "indicator" else at_tail - at_head


@computed("visit.size", label="diameter of the collars, near enough for their warmth", unit="mm", rounding="length",
          needs=("visit.instrument_kind", "visit.head", "collar.diameter"),
          how="as read; as planned where an indicator read the collars")  # fmt: skip
def size(kind: str, at_head: float, planned: float) -> float:
    return planned if kind == "indicator" else at_head


@computed("visit.gap", label="difference of the collars", unit="mm", rounding="difference",
          needs=("visit.difference",), how="its size, whichever is larger")  # fmt: skip
def gap(signed: float) -> float:
    return abs(signed)


@computed("visit.larger_end", label="the larger collar", kind="choice", choices=("tailstock", "headstock", "neither"),
          needs=("visit.difference",), how="the end whose mean is more")  # fmt: skip
def larger_end(signed: float) -> str:
    return "tailstock" if signed > 0 else "headstock" if signed < 0 else "neither"


@computed(
    "visit.micrometer",
    label="micrometer that reads both collars",
    kind="record",
    needs=("crib.outside_micrometers", *_READINGS),
    how="the finest of the crib whose range holds every reading",
)
def micrometer(owned: Sequence[Record], at_head: Sequence[float], at_tail: Sequence[float]) -> Limited:
    fitting = [one for one in owned if all(one["from"] <= size <= one["to"] for size in (*at_head, *at_tail))]
    if not fitting:
        return Limited(None, "no one micrometer of the crib reads both collars")
    return Limited(min(fitting, key=lambda one: one["resolution"]), "the finest that reads them")


@computed("visit.micrometer_step", label="step of the micrometer", unit="mm", rounding="fit",
          needs=("visit.micrometer",), how="as given for it", as_said=True)  # fmt: skip
def micrometer_step(chosen: Record) -> float:
    return float(chosen["resolution"])


@computed(
    "visit.step",
    label="smallest step of the readings",
    unit="mm",
    rounding="fit",
    needs=(
        "visit.instrument_kind", "visit.micrometer_step?", "crib.indicator_division?", "crib.caliper_resolution?",
        "visit.typed_step",
    ),
    how="of the instrument, or of what was written down if that is coarser",
)  # fmt: skip
def step(kind: str, fine: float | None, division: float | None, coarse: float | None, typed: float) -> Limited:
    owned = {"micrometer": fine, "indicator": division, "caliper": coarse}[kind]
    if owned is None:
        return Limited(None, f"there is no {kind} in the crib that reads both collars")
    return Limited(max(owned, typed), "the instrument" if owned >= typed else "what was written down")


@computed(
    "visit.usual",
    label="what such an instrument does to readings",
    kind="record",
    fields=(field("scatter", "mm", "difference"), field("local_error", "mm", "difference")),
    needs=("visit.instrument_kind", "visit.step"),
    tables=("alignment/repeatability",),
    how="from the table, by instrument and step",
)
def usual(kind: str, smallest: float, table: Table) -> dict[str, float]:
    row = table.within(smallest, "over_mm", "upto_mm", instrument=kind)
    return {"scatter": row.number("repeatability_mm"), "local_error": row.number("local_error_mm")}


@computed("visit.scatter_seen", label="scatter of the readings of a collar", unit="mm", rounding="difference",
          needs=_READINGS, how="standard deviation, both collars together")  # fmt: skip
def scatter_seen(at_head: Sequence[float], at_tail: Sequence[float]) -> float | None:
    if len(at_head) + len(at_tail) < 3:
        return None
    return pooled_deviation((at_head, at_tail)).standard_deviation_mm


@computed("visit.scatter_ratio", label="scatter of the readings as a multiple of the usual one", unit="1",
          needs=("visit.scatter_seen", "visit.usual"), how="the one over the other")  # fmt: skip
def scatter_ratio(seen: float, table: Record) -> float:
    return length_ratio(seen, table["scatter"])


@computed("visit.spread", label="widest spread on one collar", unit="mm", rounding="difference",
          needs=_READINGS, how="largest less smallest reading of a collar")  # fmt: skip
def spread(at_head: Sequence[float], at_tail: Sequence[float]) -> float:
    return max(max(one) - min(one) for one in (at_head, at_tail))


@computed(
    "visit.thimble_turn",
    label="one turn of the thimble",
    unit="mm",
    rounding="fit",
    needs=("lathe.dials",),
    tables=("measuring/thimble",),
    how="pitch of the screw of a micrometer of this system",
)
def thimble_turn(dials: str, table: Table) -> float:
    return table.one(system=dials).number("turn_mm")


@computed(
    "visit.turned_within",
    label="a reading of one collar is off by turns of the thimble",
    kind="yes-no",
    needs=("visit.instrument_kind", "lathe.dials", *_READINGS),
    tables=("measuring/thimble",),
    how="a reading stands whole or half turns from the middle one of its collar",
)
def turned_within(kind: str, dials: str, at_head: Sequence[float], at_tail: Sequence[float], table: Table) -> bool:
    # The lower middle one where their number is even: always a reading that was made.
    return any(_turns(kind, one - median_low(row), dials, table) != 0 for row in (at_head, at_tail) for one in row)


@computed(
    "visit.turned_between",
    label="the collars differ by turns of the thimble",
    kind="yes-no",
    needs=("visit.instrument_kind", "lathe.dials", "visit.difference"),
    tables=("measuring/thimble",),
    how="the means stand whole or half turns apart",
)
def turned_between(kind: str, dials: str, signed: float, table: Table) -> bool:
    return _turns(kind, signed, dials, table) != 0


def _turns(kind: str, apart: float, dials: str, table: Table) -> float:
    row = table.one(system=dials)
    return thread_slip(apart, row.number("turn_mm"), row.number("near_mm")) if kind == "micrometer" else 0.0


@computed("visit.order_balanced", label="a slow drift falls out of the difference", kind="yes-no",
          needs=("visit.order",), how="mean place of the readings is the same for both collars")  # fmt: skip
def order_balanced(order: str) -> bool:
    return order_bias(order) == 0


@computed(
    "visit.drift",
    label="drift over the visit",
    unit="mm",
    rounding="difference",
    needs=("visit.order", *_READINGS),
    tables=("alignment/uncertainty",),
    how="drift from reading to reading that both collars share, over the whole visit; none where scatter hides it",
)
def drift(order: str, at_head: Sequence[float], at_tail: Sequence[float], components: Table) -> float | None:
    if len(order) < 4:
        return None
    rows = {"H": iter(at_head), "T": iter(at_tail)}
    probability = components.value("probability")
    found = drift_per_step([next(rows[letter]) for letter in order], order, probability)
    return drift_over(found.slope_mm, len(order)) if found.differs_from_noise else 0.0


@computed("visit.drifting", label="the collars still change size", kind="yes-no",
          needs=("visit.drift", "visit.uncertainty"), how="the drift is more than the doubt")  # fmt: skip
def drifting(over_visit: float, unsure: float) -> bool:
    return abs(over_visit) > unsure


@computed("visit.drift_way", label="way in which the collars change size", kind="choice", choices=("less", "more"),
          needs=("visit.drift",), how="sign of the drift")  # fmt: skip
def drift_way(over_visit: float) -> str:
    return "less" if over_visit < 0 else "more"


@computed(
    "visit.warm_difference",
    label="difference that warmth makes",
    unit="mm",
    rounding="difference",
    needs=("visit.head_temperature", "visit.tail_temperature", "visit.size", "collar.expansion"),
    how="diameter x expansion x difference of temperature",
)
def warm_difference(at_head: float, at_tail: float, diameter: float, expansion: float) -> float:
    return abs(growth(diameter, expansion, at_tail - at_head))


@computed(
    "visit.budget",
    label="budget of the difference",
    kind="record",
    fields=(
        field("standard", "mm", "difference"),
        field("freedom"),
        field("coverage"),
        field("expanded", "mm", "difference"),
    ),
    needs=(
        "visit.instrument_kind", "visit.usual", "visit.step", "visit.size", "collar.expansion", "align.height_effect",
        *_READINGS,
    ),
    tables=("alignment/uncertainty",),
    how="scatter, step and local error of the instrument, form, temperature, wear, bending, after the GUM; for an indicator "
    "the path of the saddle and the height of the plunger too",
)  # fmt: skip
def budget(
    kind: str, table: Record, smallest: float, diameter: float, expansion: float, by_height: float,
    at_head: Sequence[float], at_tail: Sequence[float], components: Table,
) -> dict[str, float]:  # fmt: skip
    value = components.value
    scatter = repeatability((at_head, at_tail), table["scatter"])
    # As if each collar had been read once, with the scatter that its mean has.
    of_means = as_read_once(scatter.standard_deviation_mm, len(at_head), len(at_tail))
    warmer = growth(diameter, expansion, value("collar_temperature_difference"))
    parts = difference_parts(
        of_means, 1, smallest, table["local_error"], value("form"), warmer, value("tool_wear"),
        value("residual_deflection"),
    )  # fmt: skip
    unsure = list(parts.components(scatter.degrees_of_freedom))
    if kind == "indicator":
        guided = guidance_parts(value("carriage_guidance"), by_height)
        unsure += [Component(name, part) for name, part in zip(("guidance", "height"), guided, strict=True)]
    found = expanded_uncertainty(unsure, value("probability"))
    # The sheet prints with the least factor; a visit is never surer than the sheet.
    coverage = max(value("coverage_factor"), found.coverage_factor)
    return {
        "scatter": scatter.standard_deviation_mm,
        "standard": found.standard_uncertainty_mm,
        "freedom": found.degrees_of_freedom,
        "coverage": coverage,
        "expanded": expanded(found.standard_uncertainty_mm, coverage),
    }


@computed("visit.uncertainty", label="doubt of the difference", unit="mm", rounding="difference", bound="least",
          needs=("visit.budget",), how="expanded uncertainty of the difference, about 95 %")  # fmt: skip
def uncertainty(whole: Record) -> float:
    return float(whole["expanded"])


@computed("visit.adequate", label="doubt that is good enough for the limit", unit="mm", rounding="difference",
          bound="most", needs=("truing.limit", "limit.adequate_share"), how="a share of the limit")  # fmt: skip
def adequate(limit: float, share: float) -> float:
    return share_of(limit, share)


@computed(
    "visit.verdict",
    label="verdict",
    kind="choice",
    choices=("inside", "outside", "too-close", "none"),
    needs=("visit.instrument_kind", "visit.difference", "visit.uncertainty", "truing.limit", "limit.verdict_share"),
    how="inside: difference and doubt within the limit; outside: difference less doubt beyond it; else too close to say",
    sources=("iso-14253-1",),
)
def judged(kind: str, signed: float, unsure: float, limit: float, share: float) -> str:
    if kind == "caliper" or (kind == "indicator" and unsure > share_of(limit, share)):
        return "none"
    return verdict(signed, unsure, limit).replace(" to say", "").replace(" ", "-")


@computed(
    "visit.more_readings",
    label="further readings of each collar that would settle the verdict",
    unit="1",
    rounding="count",
    needs=("visit.verdict", "visit.difference", "visit.budget", "truing.limit", "limit.most_readings", *_READINGS),
    how="readings until the doubt is less than the distance to the limit, if the difference stands",
)
def more_readings(
    said: str, signed: float, whole: Record, limit: float, most: float, at_head: Sequence[float], at_tail: Sequence[float]
) -> float | None:  # fmt: skip
    if said != "too-close":
        return None
    scatter = whole["scatter"]
    now = min(len(at_head), len(at_tail))
    other = without_scatter(whole["standard"], scatter, len(at_head), len(at_tail))
    wanted = readings_to_settle(signed, limit, scatter, other, int(most), whole["coverage"])
    return float(wanted - now) if wanted > now else None


@computed(
    "visit.toward_tool",
    label="move of the tailstock toward the tool",
    unit="mm",
    rounding="difference",
    needs=("visit.difference", "truing.span", "truing.head_station", "truing.tail_station"),
    how="difference / 2 x L / (b - a); less than nought is away from the tool",
)
def toward_tool(signed: float, span: float, first: float, second: float) -> float:
    return tailstock_move(signed, span, first, second)


@computed("visit.move", label="move of the tailstock", unit="mm", rounding="difference",
          needs=("visit.toward_tool",), how="its size; the way is said in words")  # fmt: skip
def move(signed: float) -> float:
    return abs(signed)


@computed(
    "visit.move_uncertainty",
    label="doubt of the move",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=("visit.budget", "visit.difference", "truing.span", "truing.head_station", "truing.tail_station"),
    tables=("alignment/uncertainty",),
    how="that of the difference carried to the move, with the doubt of the lengths along the bar",
)
def move_uncertainty(whole: Record, signed: float, span: float, first: float, second: float, components: Table) -> float:
    def unsure(name: str) -> float:
        return standard_uncertainty(components.value(name), "rectangular")

    at = unsure("station")
    standard = standard_of_move(signed, span, first, second, whole["standard"], unsure("length"), at, at)
    return expanded(standard, whole["coverage"])


@computed(
    "visit.left_by_move",
    label="difference that a move to the mark may leave",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=("visit.move_uncertainty", "truing.span", "truing.head_station", "truing.tail_station"),
    how="doubt of the move, carried back to the difference of the collars",
)
def left_by_move(unsure: float, span: float, first: float, second: float) -> float:
    return diameter_difference(unsure, span, first, second)


@computed("visit.divisions", label="divisions of the indicator", unit="1", rounding="ratio",
          needs=("visit.move", "crib.indicator_division"), how="move over one division")  # fmt: skip
def divisions(size: float, division: float) -> float:
    return nearest_steps(size, division, _HALVES)


@computed(
    "visit.visits_left",
    label="visits left in the collars",
    unit="1",
    rounding="count",
    needs=("visit.instrument_kind", "visit.head", "visit.tail", "skim.worn_out_at", "skim.use_per_visit"),
    how="diameter there is to use on the smaller collar, divided by what a visit costs; not told by an indicator",
)
def visits_left(kind: str, at_head: float, at_tail: float, least: float, use: float) -> float | None:
    if kind == "indicator":
        return None
    return float(uses_left(min(at_head, at_tail), least, use))
