"""The bar as it was made, where somebody measured it; as planned, where nobody did."""

from tailtrue.calc.alignment import scaled_tolerance
from tailtrue.computed.registry import Limited, computed, taken
from tailtrue.tables import Table


def _measured_or(measured: float | None, planned: float) -> Limited:
    return (
        taken(planned, "as planned")
        if measured is None
        else taken(measured, "as measured on the finished bar", as_said=True)
    )


@computed(
    "truing.span",
    label="distance between the seats on the centres",
    unit="mm",
    rounding="length",
    needs=("job.bar_between_points?", "align.span"),
    how="as measured on the finished bar; as planned where it was not",
)
def span(measured: float | None, planned: float) -> Limited:
    return _measured_or(measured, planned)


@computed(
    "truing.head_station",
    label="headstock centre to the middle of its collar",
    unit="mm",
    rounding="length",
    needs=("job.head_from_point?", "align.station"),
    how="as measured on the finished bar; as planned where it was not",
)
def head_station(measured: float | None, planned: float) -> Limited:
    return _measured_or(measured, planned)


@computed(
    "truing.tail_station",
    label="headstock centre to the middle of the tailstock collar",
    unit="mm",
    rounding="length",
    needs=("job.tail_from_point?", "align.span", "align.station"),
    how="as measured on the finished bar; as planned where it was not",
)
def tail_station(measured: float | None, whole: float, planned: float) -> Limited:
    return _measured_or(measured, whole - planned)


@computed(
    "truing.limit",
    label="limit on the difference of the collars as they stand",
    unit="mm",
    rounding="difference",
    bound="most",
    needs=("job.accuracy", "truing.head_station", "truing.tail_station"),
    tables=("alignment/accuracy",),
    how="tolerance of the chosen accuracy, scaled to the distance between the collars",
)
def limit(word: str, head: float, tail: float, accuracy: Table) -> float:
    row = accuracy.one(word=word)
    return scaled_tolerance(row.number("tolerance_mm"), row.number("over_length_mm"), tail - head)


@computed("truing.bar", label="the bar that was read", kind="text",
          needs=("job.bar_mark?", "job.bar_on_hand?", "job.number"),
          how="the mark on the bar; else the name of the bar on hand, and of a bar of this sheet its number")  # fmt: skip
def bar(mark: str | None, on_hand: str | None, number: str) -> str:
    return mark or on_hand or number
