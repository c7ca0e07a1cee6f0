"""Of which metals the stock list has collars: those that serve, of the source decided on, and those that never do."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.computed.registry import Limited, computed, field
from tailtrue.tables import Row, Table

Record = Mapping[str, Any]
_METALS = "materials/collar_metals"
_SERVE = {
    "short-chip": "brass or aluminium of short chips",
    "long-chip": "wrought aluminium",
    "cast": "cast aluminium or bronze of known alloy",
    "iron": "grey cast iron",
    "doubtful": "aluminium of unknown alloy",
}
_NEVER = {
    "nylon": "nylon",
    "acetal": "acetal",
    "rigid-pvc": "rigid PVC",
    "steel": "soft steel",
    "stainless": "austenitic stainless steel",
    "hard-steel": "hardened or hardenable steel",
    "magnesium": "magnesium alloy",
}


def group(metals: Table, material: str) -> str:
    """The group of metals that a material belongs to as a collar."""
    return metals.one(material=material).text("group")


def unfit(material: Row, metals: Table) -> str:
    """Why a material is no metal for collars; nothing where it serves."""
    metal = metals.one(material=material.text("material"))
    return f"{material.text('name')}: {metal.text('against')}" if metal.cells["against"] else ""


def _serves(metal: str, words: str) -> None:
    @computed(
        f"collar.metal_{metal.replace('-', '_')}", label=f"{words} that serves", kind="yes-no",
        needs=("collar.offers", "collar.source?"),
        how="whether a piece of this metal serves, of the source that was decided on",
    )  # fmt: skip
    def _any(pieces: Sequence[Record], source: str | None) -> bool:
        return any(one["fits"] and one["source"] == source and one["metal"] == metal for one in pieces)


def _offered(metal: str, words: str) -> None:
    @computed(
        f"collar.metal_{metal.replace('-', '_')}", label=f"{words} in the stock list", kind="yes-no",
        needs=("collar.offers",), how="whether a piece of this material is offered for the collars",
    )  # fmt: skip
    def _any(pieces: Sequence[Record]) -> bool:
        return any(one["metal"] == metal for one in pieces)


for _metal, _words in _SERVE.items():
    _serves(_metal, _words)
for _metal, _words in _NEVER.items():
    _offered(_metal, _words)


@computed("collar.metal_serves", label="the collar stock is a metal for collars", kind="yes-no", needs=("collar.material",),
          tables=("materials/materials", _METALS), how="from the table of metals for collars")  # fmt: skip
def metal_serves(material: str, materials: Table, metals: Table) -> Limited:
    against = unfit(materials.one(material=material), metals)
    return Limited(not against, against or "a metal that holds its size")


def _unknown_grade(work: str, what: str) -> None:
    @computed(f"{work}.grade_unknown", label=f"the grade of the {what} is not known", kind="yes-no",
              needs=(f"{work}.material",), tables=("materials/materials",),
              how="from the table of materials: its condition is unknown")  # fmt: skip
    def _unknown(material: str, materials: Table) -> bool:
        return materials.one(material=material).text("condition") == "unknown"


_unknown_grade("collar", "collar stock")
_unknown_grade("bar", "bar")


@computed(
    "collar.choices",
    label="stock for the collars, beside what was taken",
    kind="records",
    fields=(
        field("label", kind="text"),
        field("source_name", kind="text"),
        field("verdict", kind="text"),
        field("reason", kind="text"),
        field("gives", "mm", "length"),
    ),
    needs=("collar.offers", "collar.stock", "collar.metal?"),
    tables=("materials/collar_left", "materials/materials"),
    how="each piece of the stock list beside the one that was taken, with what that one has over it",
)
def choices(
    pieces: Sequence[Record], taken: Record, metal: str | None, left: Table, materials: Table
) -> tuple[Record, ...]:  # fmt: skip
    def told(piece: Record) -> Record:
        if piece is taken or piece == taken:
            return {**piece, "verdict": "chosen"}
        if not piece["fits"]:
            return piece
        says = left.one(because=_because(piece, taken, metal)).text("says")
        name = materials.one(material=piece["material"]).text("name")
        reason = says.format(source=piece["source_name"], chosen=taken.get("source_name", ""), metal=name)
        return {**piece, "verdict": "left", "reason": reason}

    return tuple(map(told, pieces))


def _because(piece: Record, taken: Record, metal: str | None) -> str:
    """What put the other first, in the order in which the pieces are told apart."""
    if metal in ("on-hand", "named"):
        return metal
    if piece["source"] != taken["source"]:
        return "source"
    if piece["metal"] != taken["metal"]:
        return "metal"
    return "thinner" if piece["diameter"] < taken["diameter"] else "alike"
