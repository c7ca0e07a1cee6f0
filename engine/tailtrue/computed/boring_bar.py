"""The boring bar: the one of the crib that goes in and reaches, how far it stands out, and what that leaves of a cut."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.calc.boring import overhang_ratio
from tailtrue.computed.registry import Limited, computed, taken
from tailtrue.tables import Row, Table

Record = Mapping[str, Any]


@computed(
    "bore.tool",
    label="boring bar",
    kind="record",
    needs=("crib.boring_bars", "hole.before_boring", "bore.overhang"),
    how="the thickest that goes into the hole and reaches through the blank",
)
def boring_tool(owned: Sequence[Record], hole: float, overhang: float) -> Limited:
    fitting = [bar for bar in owned if bar["least_bore"] <= hole and bar["reach"] >= overhang]
    if not fitting:
        return Limited(None, "no boring bar of the crib goes into the drilled hole and reaches through the blank")
    return Limited(max(fitting, key=lambda bar: bar["shank"]), "the thickest that goes in and reaches")


@computed(
    "bore.tool_fits",
    label="a boring bar fits the hole",
    kind="yes-no",
    needs=("bore.tool?", "hole.before_boring"),
    how="whether the crib has one that goes in and reaches",
)
def tool_fits(tool: Record | None, _ladder: Any) -> bool:
    return tool is not None


@computed("bore.shank", label="shank of the boring bar", unit="mm", rounding="size", needs=("bore.tool",),
          how="as given for the boring bar", as_said=True)  # fmt: skip
def shank(tool: Record) -> Any:
    return tool["shank"]


@computed("bore.tip", label="tip of the boring bar", kind="choice", choices=("HSS", "carbide"), needs=("bore.tool",),
          how="as given for the boring bar", as_said=True)  # fmt: skip
def tip(tool: Record) -> Any:
    return tool["tip"]


@computed(
    "bore.overhang",
    label="boring bar standing out of its holder",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("bore.through_width", "limit.boring_clearance", "collar.plated", "crib.strap_height?"),
    how="width of the blank while it is bored, and clearance; on the faceplate also what straps and screws stand in front",
)
def overhang(width: float, clearance: float, plated: bool, straps: float | None) -> Limited:
    how = "width of the blank while it is bored, and clearance"
    if plated and straps is not None:
        return taken(
            width + clearance + straps, "straps and screws in front", f"{how}, and what straps and screws stand in front"
        )
    return taken(width + clearance, how)


@computed(
    "bore.through_width",
    label="width of the blank while it is bored",
    unit="mm",
    rounding="length",
    needs=("collar.width", "collar.second_face_hold?", "collar.saw_width", "collar.facing_stock", "collar.plated"),
    tables=("machines/holdings",),
    how="width of the collar; where the second side is faced after the bore, the blank less what its first side lost; on "
    "the faceplate the whole blank",
)
def through_width(
    width: float, second_face: str | None, blank: float, facing: float, plated: bool, holdings: Table
) -> Limited:  # fmt: skip
    if plated:
        return taken(blank, "the whole blank")
    held = None if second_face is None else holdings.one(decision="collar.second_face_hold", hold=second_face)
    if held is not None and held.yes("bore_first"):
        return taken(blank - facing, "the blank less what its first side lost")
    return taken(width, "width of the collar")


@computed(
    "bore.holder_room",
    label="room between holder and collar when the tip is at the far face",
    unit="mm",
    rounding="length",
    needs=("bore.overhang", "bore.through_width"),
    how="overhang of the boring bar less what it bores through",
)
def holder_room(overhang: float, width: float) -> float:
    return overhang - width


@computed("bore.overhang_ratio", label="overhang of the boring bar in diameters", unit="1",
          needs=("bore.overhang", "bore.shank"), how="overhang divided by the shank")  # fmt: skip
def boring_ratio(length: float, diameter: float) -> float:
    return overhang_ratio(length, diameter)


def _factor(name: str, what: str) -> None:
    @computed(f"bore.{name}", label=f"share of {what} left by the overhang of the boring bar", unit="1",
              needs=("bore.overhang_ratio", "bore.tool"), tables=("cutting/adjustments",),
              how="from the table of adjustments for the overhang of boring bars")  # fmt: skip
    def _share(ratio: float, tool: Record, adjustments: Table) -> float:
        return _overhang_row(ratio, tool, adjustments).number(name)


def _overhang_row(ratio: float, tool: Record, adjustments: Table) -> Row:
    return adjustments.within(ratio, "from_ratio", "to_ratio", ends="[)", situation=f"boring-overhang-{tool['material']}")


for _name, _what in (("speed_factor", "speed"), ("feed_factor", "feed"), ("depth_factor", "depth")):
    _factor(_name, _what)
