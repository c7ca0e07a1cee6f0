"""Width that a collar needs for its joint, where job and crib leave one way to fix it: what it carries, or a track left."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.calc.lengths import length_of_diameters
from tailtrue.calc.margins import torque_margin
from tailtrue.calc.steps import step_up
from tailtrue.computed import joint_clamp, joint_pins, joint_screws
from tailtrue.computed.joint_placing import track_left
from tailtrue.computed.joint_screws_tried import TABLES
from tailtrue.computed.joint_ways import ANY
from tailtrue.computed.registry import Limited, computed
from tailtrue.tables import Table

Record = Mapping[str, Any]
# What the crib says of each way.
_LISTED = {
    "retaining-compound": "crib.compound_gap",
    "shrink-fit": "crib.oven_to",
    "set-screws": "crib.set_screws",
    "radial-pin": "crib.pins",
    "press-fit": "crib.press_force",
    "split-clamp": "crib.clamp_screws",
}
# What a collar that is too narrow lacks.
LACKS = {
    "retaining-compound": "a narrower bond lets a tool that catches turn the collar",
    "set-screws": "a narrower collar leaves no track beside its screws",
    "radial-pin": "a narrower collar leaves no track beside its pin",
    "split-clamp": "a narrower collar has no room for its clamp screws",
}
_WIDTHS = {way: f"joint.{way.replace('-', '_')}.width_asked" for way in LACKS}
_NONE_HOLDS = "none of the crib holds a tool that catches, at any width"


@computed("joint.one_way", label="the one way to fix the collars that this job and this crib leave", kind="choice",
          choices=tuple(_LISTED), needs=("joint.wish", *(f"{fact}?" for fact in _LISTED.values())),
          how="the one that is wished, or the only one that the crib says anything of")  # fmt: skip
def one_way(wish: str, *listed: object) -> Limited:
    there = [way for way, one in zip(_LISTED, listed, strict=True) if one is not None and wish in (ANY, way)]
    return Limited(there[0] if len(there) == 1 else None, "several ways are left, or none")


def _asked(way: str, module: str, needs: tuple[str, ...]) -> dict[str, Any]:
    return {
        "name": _WIDTHS[way], "label": f"width that {module} ask for, of a collar as thick as its stock", "unit": "mm",
        "rounding": "length", "bound": "least",
        "needs": (*needs, "joint.catch_of_stock", "limit.joint_margin", "lathe.size_step"),
    }  # fmt: skip


def _held(found: Limited, catch: float, margin: float) -> dict[str, Any] | None:
    chosen = found.value
    return chosen if chosen is not None and torque_margin(chosen["torque"], catch) >= margin else None


def _beside(thick: float, placing: Table, step: float) -> float:
    return step_up(placing.value("track-least") - track_left(0.0, thick, placing), step)


@computed(
    **_asked("set-screws", "the set screws", (
        "crib.set_screws?", "crib.taps?", "bar.diameter", "limit.collar_width_most", "collar.stock_diameter",
        "collar.material", "bar.material",
    )),
    tables=("joints/set_screws", "joints/screw_patterns", *TABLES),
    how="tried in the widest collar: beside the fewest and thinnest that hold a catch, what the faces of a micrometer need",
)  # fmt: skip
def width_for_screws(
    owned: Sequence[Record] | None, taps: Sequence[str] | None, bar: float, widest: float, stock: float, material: str,
    bar_metal: str, catch: float, margin: float, step: float, threads: Table, patterns: Table, factors: Table,
    soft: Table, placing: Table, materials: Table, shares: Table,
) -> float | Limited:  # fmt: skip
    found = joint_screws.found(
        owned, taps, bar, widest, stock, material, bar_metal, catch, margin, threads, patterns, factors, soft, placing,
        materials, shares,
    )  # fmt: skip
    chosen = _held(found, catch, margin)
    return Limited(None, _NONE_HOLDS) if chosen is None else _beside(chosen["major"], placing, step)


@computed(
    **_asked("radial-pin", "the pins across", (
        "crib.pins?", "bar.diameter", "limit.collar_width_most", "collar.stock_diameter", "bar.material", "collar.material",
    )),
    tables=joint_pins.TABLES,
    how="tried in the widest collar: beside the thinnest that holds a catch, what the faces of a micrometer need",
)  # fmt: skip
def width_for_pins(
    owned: Sequence[Record] | None, bar: float, widest: float, stock: float, bar_metal: str, collar_metal: str,
    catch: float, margin: float, step: float, pins: Table, factors: Table, placing: Table, materials: Table,
) -> float | Limited:  # fmt: skip
    found = joint_pins.found(
        owned, bar, widest, stock, stock, bar_metal, collar_metal, catch, margin, pins, factors, placing, materials
    )
    chosen = _held(found, catch, margin)
    return Limited(None, _NONE_HOLDS) if chosen is None else _beside(chosen["diameter"], placing, step)


@computed(
    **_asked("split-clamp", "the clamp screws", (
        "crib.clamp_screws?", "crib.taps?", "bar.diameter", "limit.collar_width_most", "collar.stock_diameter",
        "collar.material", "collar.material_family",
    )),
    tables=joint_clamp.TABLES,
    how="tried in the widest collar: room for as many as hold a catch, side by side",
)  # fmt: skip
def width_for_clamps(
    owned: Sequence[Record] | None, taps: Sequence[str] | None, bar: float, widest: float, stock: float, material: str,
    family: str, catch: float, margin: float, step: float, threads: Table, factors: Table, soft: Table, placing: Table,
    friction: Table, fits: Table, values: Table, materials: Table,
) -> float | Limited:  # fmt: skip
    found = joint_clamp.found(
        owned, taps, bar, widest, stock, material, family, catch, margin, threads, factors, soft, placing, friction, fits,
        values, materials,
    )  # fmt: skip
    chosen = _held(found, catch, margin)
    if chosen is None:
        return Limited(None, _NONE_HOLDS)
    room = length_of_diameters(chosen["major"], placing.value("clamp-screw-room"))
    return step_up(length_of_diameters(room, chosen["count"]), step)


@computed("joint.width_asked", label="width that the one way to fix the collars asks for", unit="mm", rounding="length",
          bound="least", needs=("joint.one_way?", *(f"{fact}?" for fact in _WIDTHS.values())),
          how="of the one way that job and crib leave")  # fmt: skip
def width_asked(way: str | None, *each: float | None) -> Limited:
    width = dict(zip(_WIDTHS, each, strict=True)).get(way or "")
    return Limited(width, LACKS.get(way or "", "no one way asks for a width"))
