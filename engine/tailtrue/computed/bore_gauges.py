"""The gauges for the bore: the one that is chosen, what each kind is good for, and which of them the crib has."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.computed.registry import Limited, computed, taken
from tailtrue.tables import Table

Record = Mapping[str, Any]
_KINDS = ("bore-gauge", "inside-micrometer", "telescoping", "plug", "caliper")


def gauge_for(owned: Sequence[Record], kind: str, bar: float, gap: float) -> Record | None:
    """The first gauge of a kind whose range holds every bore that this bar may get."""
    return next((g for g in owned if g["kind"] == kind and g["from"] <= bar and bar + gap <= g["to"]), None)


@computed(
    "bore.gauge_reading",
    label="gauge for the bore",
    kind="record",
    needs=("bore.gauge", "crib.bore_gauges", "bar.diameter", "limit.bond_gap"),
    tables=("measuring/bore_gauges",),
    how="the gauge of the chosen kind whose range holds the bore",
)
def gauge_reading(
    kind: str, owned: Sequence[Record], diameter: float, largest: float, gauges: Table
) -> dict[str, Any] | None:
    row = gauges.one(kind=kind)
    gauge = gauge_for(owned, kind, diameter, largest)
    return None if gauge is None else {**gauge, "uncertainty": gauge.get("doubt") or row.number("expanded_uncertainty_mm")}


def _doubt_of(gauge: Record, doubt: float) -> Limited:
    return taken(doubt, "as given for the gauge", as_said=True) if gauge.get("doubt") else taken(doubt, "usual for its kind")


@computed(
    "bore.gauge_uncertainty",
    label="doubt of the bore reading",
    unit="mm",
    rounding="fit",
    bound="least",
    needs=("bore.gauge_reading",),
    how="as given for the gauge; else the doubt usual for its kind",
)
def gauge_uncertainty(gauge: Record) -> Limited:
    return _doubt_of(gauge, gauge["uncertainty"])


def _of_kind(kind: str) -> None:
    @computed(
        f"crib.{kind.replace('-', '_')}_doubt",
        label=f"doubt of a gap measured by {kind.replace('-', ' ')}",
        unit="mm",
        rounding="fit",
        bound="least",
        needs=("crib.bore_gauges", "bar.diameter", "limit.bond_gap"),
        tables=("measuring/bore_gauges",),
        how="as given for the gauge; else usual for its kind",
    )
    def _doubt(owned: Sequence[Record], bar: float, gap: float, gauges: Table) -> Limited:
        gauge = gauge_for(owned, kind, bar, gap) or {}
        return _doubt_of(gauge, gauge.get("doubt") or gauges.one(kind=kind).number("expanded_uncertainty_mm"))


for _kind in _KINDS:
    _of_kind(_kind)


def _owns(kind: str) -> None:
    @computed(
        f"crib.has_{kind.replace('-', '_')}",
        label=f"{kind.replace('-', ' ')} for the bore in the crib",
        kind="yes-no",
        needs=("crib.bore_gauges", "bar.diameter", "limit.bond_gap"),
        how="whether the crib has one whose range holds the bore",
    )
    def _has(owned: Sequence[Record], diameter: float, largest: float) -> bool:
        return gauge_for(owned, kind, diameter, largest) is not None


for _kind in ("bore-gauge", "inside-micrometer"):
    _owns(_kind)


@computed(
    "crib.has_telescoping",
    label="telescoping for the bore in the crib",
    kind="yes-no",
    needs=("crib.bore_gauges", "bar.diameter", "limit.bond_gap", "bore.reader?"),
    how="whether the crib has one whose range holds the bore, and an outside micrometer that reads it",
)
def has_telescoping(owned: Sequence[Record], diameter: float, largest: float, reader: Record | None) -> bool:
    return reader is not None and gauge_for(owned, "telescoping", diameter, largest) is not None


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
