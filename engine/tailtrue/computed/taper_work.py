"""The work that gets a taper between centres: its metal, speed, feed and depth."""

from typing import Any

from tailtrue.calc.cutting import passes_for_stock
from tailtrue.calc.lengths import on_diameter
from tailtrue.computed.operation import operation
from tailtrue.computed.registry import computed
from tailtrue.tables import Table

_FAMILIES = ("steel", "stainless", "tool-steel", "aluminium", "brass", "bronze", "iron", "magnesium", "plastic")


def _of_material(name: str, column: str, label: str, **more: Any) -> None:
    @computed(f"setover.{name}", label=label, needs=("setover.material",), tables=("materials/materials",),
              how="from the table of materials", **{"kind": "text", **more})  # fmt: skip
    def _said(material: str, materials: Table) -> Any:
        return materials.one(material=material).text(column)


_of_material("material_name", "name", "material of the work with the taper")
_of_material("material_family", "family", "kind of material of the work with the taper", kind="choice", choices=_FAMILIES)
_of_material("feed_group", "feed_group", "feed group of the work with the taper")
_of_material("fluid", "fluid", "cutting fluid for the work with the taper")
_of_material("chips", "chips", "how the work with the taper cuts")
_of_material("hazards", "hazards", "hazards of cutting the work with the taper")

operation(
    "setover.turning", "turning the taper", table="turn-finish", work="setover", diameter="setover.large",
    tool="tool.material",
    caps=(("limit.between_centres_speed", "work on a dog between centres"), ("skim.centre_speed_limit", "the centre")),
)  # fmt: skip


@computed("setover.passes", label="passes that turn the taper, from work as thick as its large end", unit="1",
          rounding="count", needs=("setover.difference", "setover.turning.depth"),
          how="half of the difference of diameters over the depth, rounded up")  # fmt: skip
def passes(difference: float, depth: float) -> float:
    return passes_for_stock(difference, depth)


@computed("setover.small_at_check", label="small end when the taper is checked", unit="mm", rounding="length",
          bound="least", needs=("setover.small?", "setover.turning.depth", "limit.taper_cuts_left"),
          how="small end of the drawing, and what the cuts that are left take off")  # fmt: skip
def small_at_check(small: float | None, depth: float, cuts: float) -> float | None:
    return None if small is None else small + on_diameter(depth, cuts)
