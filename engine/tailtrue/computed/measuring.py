"""Which instrument reads the bar and the collars."""

from collections.abc import Mapping
from typing import Any

from tailtrue.computed.registry import Limited, computed

Record = Mapping[str, Any]


@computed(
    "bar.micrometer",
    label="micrometer for the bar",
    kind="record",
    needs=(
        "crib.outside_micrometers", "bar.diameter", "bar.expected_least", "bar.expected_largest", "job.measured_head?",
        "job.measured_middle?", "job.measured_tail?",
    ),
    how="of those whose range holds the nominal diameter, one that holds the bar as it was measured, or else as it may be; "
    "of these the finest",
)  # fmt: skip
def bar_micrometer(
    owned: tuple[Record, ...], diameter: float, least: float, largest: float, *seats: tuple[float, ...] | None
) -> Limited:
    fitting = [one for one in owned if one["from"] <= diameter <= one["to"]]
    if not fitting:
        return Limited(None, "no outside micrometer reads the bar")
    sizes = [reading for readings in seats for reading in readings or ()] or [least, largest]

    def missed(one: Record) -> tuple[bool, float]:
        return not one["from"] <= min(sizes) <= max(sizes) <= one["to"], one["resolution"]

    return Limited(min(fitting, key=missed), "the finest that reads it")


@computed(
    "bar.micrometer_next_from",
    label="lower end of the micrometer for a bar above the first one",
    unit="mm",
    rounding="size",
    needs=("crib.outside_micrometers", "bar.micrometer", "bar.expected_largest"),
    how="of the micrometer of the crib whose range holds the largest that the bar may be",
)
def next_micrometer(owned: tuple[Record, ...], chosen: Record, largest: float) -> Limited:
    if largest <= chosen["to"]:
        return Limited(None, "the micrometer for the bar holds it")
    reaching = [one for one in owned if one["from"] <= chosen["to"] and largest <= one["to"]]
    if not reaching:
        return Limited(None, "the crib has none")
    return Limited(min(one["from"] for one in reaching), "the next size up")


@computed("bar.micrometer_covers", label="a micrometer reads the bar", kind="yes-no",
          needs=("bar.micrometer?", "bar.diameter"), how="whether the crib has such a micrometer")  # fmt: skip
def bar_covered(instrument: Record | None, _diameter: float) -> bool:
    return instrument is not None


def _of_micrometer(name: str, key: str, label: str) -> None:
    @computed(name, label=label, unit="mm", rounding="fit" if key == "resolution" else "size",
              needs=("bar.micrometer",), how="as given for the micrometer", as_said=True)  # fmt: skip
    def _said(instrument: Record) -> Any:
        return instrument[key]


_of_micrometer("bar.micrometer_from", "from", "lower end of the micrometer for the bar")
_of_micrometer("bar.micrometer_to", "to", "upper end of the micrometer for the bar")
_of_micrometer("bar.micrometer_resolution", "resolution", "resolution of the micrometer for the bar")


# The word for an instrument of the collars in the table of what instruments do to readings, and at the lathe.
KINDS = {"outside-micrometer": "micrometer", "indicator": "indicator", "caliper": "caliper"}


@computed(
    "collar.instrument_resolution",
    label="resolution of the instrument for the collars",
    unit="mm",
    rounding="fit",
    needs=(
        "collar.instrument", "collar.micrometer_resolution?", "crib.indicator_division?", "crib.caliper_resolution?",
    ),
    how="as given for the instrument",
    as_said=True,
)  # fmt: skip
def instrument_resolution(
    instrument: str, micrometer: float | None, division: float | None, caliper: float | None
) -> float | None:
    return {"micrometer": micrometer, "indicator": division, "caliper": caliper}[KINDS[instrument]]


@computed(
    "collar.sizing_resolution",
    label="resolution of the instrument for the diameter of the collars",
    unit="mm",
    rounding="fit",
    needs=("collar.sized_with", "collar.micrometer_resolution?", "crib.caliper_resolution?"),
    how="as given for the instrument",
    as_said=True,
)
def sizing_resolution(instrument: str, micrometer: float | None, caliper: float | None) -> float | None:
    return micrometer if instrument == "outside-micrometer" else caliper


@computed(
    "bore.reader",
    label="outside micrometer that reads the telescoping gauge",
    kind="record",
    needs=("crib.outside_micrometers?", "bar.diameter", "limit.bond_gap"),
    how="the finest whose range holds every bore that this bar may get",
)
def bore_reader(owned: tuple[Record, ...] | None, bar: float, gap: float) -> Limited:
    fitting = [one for one in owned or () if one["from"] <= bar and bar + gap <= one["to"]]
    if not fitting:
        return Limited(None, "no outside micrometer reads such a bore")
    return Limited(min(fitting, key=lambda one: one["resolution"]), "the finest that reads it")


def _of_reader(key: str, label: str) -> None:
    @computed(f"bore.reader_{key}", label=label, unit="mm", rounding="size", needs=("bore.reader",),
              how="as given for the micrometer", as_said=True)  # fmt: skip
    def _said(instrument: Record) -> Any:
        return instrument[key]


_of_reader("from", "lower end of the micrometer for the bore")
_of_reader("to", "upper end of the micrometer for the bore")
