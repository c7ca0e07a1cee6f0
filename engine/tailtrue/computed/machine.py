"""What the lathe and its chuck allow."""

from collections.abc import Mapping
from typing import Any

from tailtrue.calc.lengths import share_of
from tailtrue.computed.registry import Limited, computed
from tailtrue.tables import Table

Record = Mapping[str, Any]


@computed(
    "lathe.swing_over_slide",
    label="swing over the cross slide",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("lathe.swing_over_cross_slide?", "lathe.swing_over_bed", "limit.cross_slide_share"),
    how="as given; when it was not given, the swing over the bed times a cautious share",
)
def swing_over_slide(said: float | None, over_bed: float, share: float) -> Limited:
    if said is not None:
        return Limited(said, "as measured")
    return Limited(share_of(over_bed, share), "not given, so taken small; measure it from the centre line to the slide")


@computed(
    "lathe.fastest",
    label="top speed of the spindle",
    unit="1/min",
    rounding="speed",
    needs=("lathe.speeds?", "lathe.speed_to?"),
    how="the highest speed on the plate",
)
def fastest(speeds: tuple[float, ...] | None, speed_to: float | None) -> float | None:
    return max(speeds) if speeds else speed_to


@computed(
    "lathe.slowest",
    label="slowest speed of the spindle",
    unit="1/min",
    rounding="speed",
    needs=("lathe.speeds?", "lathe.speed_from?"),
    how="the lowest speed on the plate",
)
def slowest(speeds: tuple[float, ...] | None, speed_from: float | None) -> float | None:
    return min(speeds) if speeds else speed_from


@computed(
    "chuck.used",
    label="chuck used",
    kind="record",
    needs=("lathe.chucks", "blank.chuck?", "collar.banded", "bar.diameter", "bar.four_jaw?"),
    how="the three-jaw scroll chuck of the blanks, so that no chuck is changed between; the smallest that grips the bar, "
    "where the blanks are held in another kind; a four-jaw independent chuck where there is no scroll chuck",
)
def chuck_used(
    chucks: tuple[Record, ...], of_blanks: Record | None, banded: bool, bar: float, four_jaw: Record | None
) -> Limited | None:  # fmt: skip
    if not banded and of_blanks is not None:
        return Limited(of_blanks, "it holds the blanks")
    three_jaw = [chuck for chuck in chucks if chuck["jaws"] == 3 and chuck["kind"] == "scroll"]
    if not three_jaw:
        return Limited(four_jaw, "there is no three-jaw scroll chuck on the list")
    fitting = [chuck for chuck in three_jaw if chuck["grips_to"] >= bar]
    if fitting:
        return Limited(min(fitting, key=lambda chuck: chuck["body"]), "the smallest that grips the bar")
    return Limited(max(three_jaw, key=lambda chuck: chuck["grips_to"]), "the largest there is")


@computed("chuck.label", label="chuck", kind="text", needs=("chuck.used",), how="its name on the list")
def chuck_label(chuck: Record) -> Any:
    return chuck["label"]


@computed("chuck.kind", label="kind of the chuck", kind="choice", choices=("scroll", "independent"), needs=("chuck.used",),
          how="as given for the chuck")  # fmt: skip
def chuck_kind(chuck: Record) -> Any:
    return chuck["kind"]


@computed(
    "chuck.grips_to",
    label="largest diameter gripped with the jaws inside the body",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("chuck.used",),
    how="as given for the chuck",
)
def grips_to(chuck: Record) -> Any:
    return chuck["grips_to"]


@computed(
    "chuck.body",
    label="body of the chuck",
    unit="mm",
    rounding="length",
    needs=("chuck.used",),
    how="as given for the chuck",
)
def body(chuck: Record) -> Any:
    return chuck["body"]


@computed(
    "chuck.marking",
    label="speed marking of the chuck",
    kind="choice",
    choices=("marked", "unmarked"),
    needs=("chuck.used",),
    how="as read from the chuck",
)
def marking(chuck: Record) -> str | None:
    said = chuck.get("marked_speed")
    if said is None:
        return None
    return "unmarked" if said == "unmarked" else "marked"


@computed(
    "chuck.speed_limit",
    label="speed limit of the chuck",
    unit="1/min",
    rounding="speed",
    bound="most",
    needs=("chuck.used",),
    tables=("machines/chuck_limits",),
    how="the speed marked on the chuck; for an unmarked chuck the cautious figure for its size",
)
def speed_limit(chuck: Record, limits: Table) -> Limited | None:
    return chuck_limit(chuck, limits)


def chuck_limit(chuck: Record, limits: Table) -> Limited | None:
    """The speed a chuck may run at and why; None when nobody looked for its mark."""
    said = chuck.get("marked_speed")
    if said is None:
        return None
    if said != "unmarked":
        return Limited(said, "the speed marked on the chuck")
    row = limits.within(chuck["body"], "body_over_mm", "body_upto_mm")
    return Limited(row.number("unmarked_limit_per_min"), "the chuck is not marked")


@computed(
    "lathe.heaviest_chuck_mass",
    label="mass of the heaviest chuck of this lathe, about",
    unit="kg",
    rounding="mass",
    bound="least",
    needs=("lathe.chucks",),
    tables=("machines/chuck_masses",),
    how="a usual mass for the size of the largest body on the list",
)
def heaviest_chuck_mass(chucks: tuple[Record, ...], masses: Table) -> Limited:
    heaviest = max(chucks, key=lambda chuck: chuck["body"])
    row = masses.within(heaviest["body"], "body_over_mm", "body_upto_mm")
    return Limited(row.number("mass_kg"), str(heaviest["label"]))


@computed(
    "chuck.jaw_depth",
    label="depth of the jaws",
    unit="mm",
    rounding="length",
    needs=("chuck.used", "limit.jaw_depth_assumed"),
    how="as given for the chuck; when it was not given, a usual depth",
)
def jaw_depth(chuck: Record, assumed: float) -> Limited:
    return jaws_of(chuck, assumed)


def jaws_of(chuck: Record, assumed: float) -> Limited:
    """The depth of the jaws of a chuck."""
    said = chuck.get("jaw_depth")
    return Limited(said, "as measured") if said is not None else Limited(assumed, "not given; measure it")


@computed("chuck.hole", label="hole through the chuck", unit="mm", rounding="length", bound="most", needs=("chuck.used",),
          how="as measured on the chuck")  # fmt: skip
def chuck_hole(chuck: Record) -> float | None:
    return chuck.get("through_bore")


@computed(
    "lathe.centre_room",
    label="room the tailstock centre takes",
    unit="mm",
    rounding="length",
    needs=("crib.tailstock_centre", "crib.tailstock_centre_reach?", "lathe.tailstock_taper"),
    tables=("machines/centre_reach",),
    how="a live centre reaches further out than the plain point that the distance between centres is measured with",
)
def centre_room(centre: str, reach: float | None, taper: str, reaches: Table) -> Limited:
    if reach is not None:
        return Limited(reach, "as measured")
    if centre == "dead":
        return Limited(0.0, "a plain point")
    return Limited(reaches.one(taper=taper).number("live_reach_extra_mm"), "usual for a live centre; measure yours")


@computed(
    "lathe.quill_out",
    label="quill extension for the test",
    unit="mm",
    rounding="length",
    needs=("lathe.quill_travel", "limit.quill_share", "limit.quill_out_least"),
    how="a share of its travel, short so that it is stiff",
)
def quill_out(travel: float, share: float, least: float) -> float:
    return min(travel, max(least, share_of(travel, share)))
