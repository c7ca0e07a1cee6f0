"""Length of the bar, width and diameter of the collars: what each could come from; decisions say which of it binds."""

from collections.abc import Mapping
from typing import Any

from tailtrue.calc.lengths import length_of_diameters, piece_of_stock, share_of, within_both_sides
from tailtrue.calc.steps import step_down
from tailtrue.computed.joint_width import LACKS
from tailtrue.computed.registry import Limited, computed
from tailtrue.computed.stepping import greatest_of

Record = Mapping[str, Any]


def _on_hand(name: str, key: str, label: str) -> None:
    @computed(name, label=label, unit="mm", rounding="length", needs=("bar.on_hand",),
              how="as given for the bar on hand", as_said=True)  # fmt: skip
    def _measured(bar: Record) -> Any:
        return bar[key]


_on_hand("bar.length_on_hand", "length", "length of the bar on hand")
_on_hand("collar.width_on_hand", "collar_width", "width of the collars on hand")
_on_hand("collar.diameter_on_hand", "collar_diameter", "diameter of the collars on hand")


def _settled(name: str, label: str, step: str, weighed: str) -> None:
    @computed(name, label=label, unit="mm", rounding="length", settled_by=f"{name}_bound", needs=(step,),
              how=f"as measured or wished; else {weighed}")  # fmt: skip
    def _down_to_a_step(bound: Limited, step: float) -> Limited:
        if not bound.weighed:
            return bound._replace(how=bound.by)
        return bound._replace(value=step_down(bound.value, step), how=weighed, as_said=False)


@computed(
    "bar.length_from_stock",
    label="longest bar from the stock",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("bar.stock_length", "limit.facing_stock"),
    how="the stock less facing at both ends",
)
def length_from_stock(stock: float, facing: float) -> float:
    return within_both_sides(stock, facing)


@computed(
    "bar.length_by_share",
    label="bar as long as the usual work",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("lathe.between_centres", "limit.bar_share"),
    how="a share of the distance between centres",
)
def length_by_share(between: float, share: float) -> float:
    return share_of(between, share)


@computed(
    "bar.length_by_stiffness",
    label="longest bar that stays stiff",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("bar.diameter", "limit.slenderness"),
    how="so many times the diameter",
)
def length_by_stiffness(diameter: float, slenderness: float) -> float:
    return length_of_diameters(diameter, slenderness)


_settled(
    "bar.length",
    "finished length of the bar",
    "lathe.length_step",
    "the least of the lengths that were weighed, down to a whole step of the rule",
)


@computed(
    "collar.width_of_bar",
    label="collar as wide as the bar is thick",
    unit="mm",
    rounding="length",
    needs=(
        "bar.diameter", "limit.collar_width_ratio", "limit.collar_width_least", "joint.one_way?", "joint.width_asked?",
    ),
    how="about the diameter of the bar, no narrower than a collar may be, as wide as a joint that is the one way asks for",
)  # fmt: skip
def width_of_bar(diameter: float, ratio: float, least: float, way: str | None, asked: float | None) -> Limited:
    width, by = greatest_of(
        (length_of_diameters(diameter, ratio), "about the diameter of the bar"),
        (least, "no collar is narrower"),
        *(((asked, LACKS[way]),) if way is not None and asked is not None else ()),
    )
    return Limited(width, by)


@computed(
    "collar.width_on_bar",
    label="widest collar on a bar of this length",
    unit="mm",
    rounding="length",
    needs=("bar.length", "limit.collar_width_share", "limit.collar_width_least"),
    how="a share of the bar, and no narrower than a collar may be",
)
def width_on_bar(length: float, share: float, least: float) -> float:
    return max(share_of(length, share), least)


@computed(
    "collar.width_from_stock",
    label="widest collar from the stock",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("collar.stock_length", "limit.saw_kerf", "collar.facing_stock", "collar.pieces"),
    how="the stock shared out with a saw cut between the blanks, less facing on both sides of each",
)
def width_from_stock(stock: float, kerf: float, facing: float, pieces: int) -> float:
    return within_both_sides(piece_of_stock(stock, kerf, pieces), facing)


@computed(
    "collar.width_of_blank",
    label="width of a blank that is not sawn, faced",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("collar.stock_length", "collar.facing_stock"),
    how="the blank, cleaned up on both faces",
)
def width_of_blank(stock: float, facing: float) -> float:
    return within_both_sides(stock, facing)


_settled(
    "collar.width",
    "width of a collar",
    "lathe.size_step",
    "the least of the widths that were weighed, down to a whole step",
)


@computed(
    "collar.micrometer_top",
    label="largest collar that the micrometer reads",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("collar.micrometer", "limit.micrometer_margin"),
    how="the top of its range, less a margin",
)
def micrometer_top(instrument: Record, margin: float) -> Any:
    return instrument["to"] - margin


_settled(
    "collar.diameter",
    "finished diameter of the collars",
    "lathe.size_step",
    "the least of the diameters that were weighed, down to a whole step",
)
