"""Which instrument reads the bar and the collars."""

from collections.abc import Mapping
from typing import Any

from tailtrue.computed.registry import Limited, computed

Record = Mapping[str, Any]


@computed(
    "bar.micrometer",
    label="micrometer for the bar",
    kind="record",
    needs=("crib.outside_micrometers", "bar.diameter"),
    how="the finest whose range holds the nominal diameter",
)
def bar_micrometer(owned: tuple[Record, ...], diameter: float) -> Limited:
    fitting = [one for one in owned if one["from"] <= diameter <= one["to"]]
    if not fitting:
        return Limited(None, "no outside micrometer reads the bar")
    return Limited(min(fitting, key=lambda one: one["resolution"]), "the finest that reads it")


@computed("bar.micrometer_covers", label="a micrometer reads the bar", kind="yes-no",
          needs=("bar.micrometer?", "bar.diameter"), how="whether the crib has such a micrometer")  # fmt: skip
def bar_covered(instrument: Record | None, _diameter: float) -> bool:
    return instrument is not None


def _of_micrometer(name: str, key: str, label: str) -> None:
    @computed(name, label=label, unit="mm", rounding="fit" if key == "resolution" else "size",
              needs=("bar.micrometer",), how="as given for the micrometer")  # fmt: skip
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
)
def sizing_resolution(instrument: str, micrometer: float | None, caliper: float | None) -> float | None:
    return micrometer if instrument == "outside-micrometer" else caliper
