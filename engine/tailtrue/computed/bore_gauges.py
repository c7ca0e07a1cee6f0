"""What each kind of gauge is good for, beside the one that is chosen: its doubt."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.computed.bore import gauge_for
from tailtrue.computed.registry import computed
from tailtrue.tables import Table

Record = Mapping[str, Any]
_KINDS = ("bore-gauge", "inside-micrometer", "telescoping", "plug", "caliper")


def _of_kind(kind: str) -> None:
    @computed(
        f"crib.{kind.replace('-', '_')}_doubt",
        label=f"doubt of a gap measured by {kind.replace('-', ' ')}",
        unit="mm",
        rounding="fit",
        bound="least",
        needs=("crib.bore_gauges", "bar.diameter", "limit.bond_gap"),
        tables=("measuring/bore_gauges",),
        how="as given for the gauge that reads the bore; else what is usual for its kind",
    )
    def _doubt(owned: Sequence[Record], bar: float, gap: float, gauges: Table) -> Any:
        gauge = gauge_for(owned, kind, bar, gap) or {}
        return gauge.get("doubt") or gauges.one(kind=kind).number("expanded_uncertainty_mm")


for _kind in _KINDS:
    _of_kind(_kind)


@computed(
    "crib.has_plug",
    label="plug for the bore in the crib",
    kind="yes-no",
    needs=("crib.bore_gauges", "bar.diameter", "limit.bond_gap"),
    how="whether the crib has one of a size that the bore for this bar may have",
)
def has_plug(owned: Sequence[Record], bar: float, gap: float) -> bool:
    return any(one["kind"] == "plug" and bar <= one["from"] and one["to"] <= bar + gap for one in owned)


@computed(
    "crib.has_caliper",
    label="caliper among the gauges for the bore",
    kind="yes-no",
    needs=("crib.bore_gauges",),
    how="whether the crib lists one",
)
def has_caliper(owned: Sequence[Record]) -> bool:
    return any(one["kind"] == "caliper" for one in owned)
