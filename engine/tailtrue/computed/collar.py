"""The collars: which stock, how large, how wide, where they sit, and how a blank is held."""

from collections.abc import Mapping
from typing import Any

from tailtrue.calc.beams import mass_cylinder
from tailtrue.calc.lengths import (
    middle_past,
    near_edge,
    on_diameter,
    over_both_sides,
    per_side,
    share_of,
    within_both_sides,
)
from tailtrue.calc.solids import mass_with_pieces
from tailtrue.calc.steps import length_of_steps, step_up
from tailtrue.computed.bar import material_facts
from tailtrue.computed.registry import Limited, computed, taken
from tailtrue.tables import Table

Record = Mapping[str, Any]
_ON_HAND = "as measured on the bar on hand"
_GRIPS = ("blank.jaw_depth", "collar.band_grip", "collar.soft_step?", "collar.collet_grip?")
_GRIPPED = (
    "depth of the jaws", "what leaves room to turn it beside its band", "the step of the soft jaws",
    "what leaves the face clear of the collet",
)  # fmt: skip

material_facts("collar", ("aluminium", "brass", "bronze", "iron"))


@computed(
    "collar.facing_stock",
    label="metal to face off each side of a blank",
    unit="mm",
    rounding="length",
    needs=("limit.facing_stock", "collar.skin_face"),
    how="what cleans up a sawn face, and the skin where there is one",
)
def facing_stock(sawn: float, skin: float) -> float:
    return sawn + skin


@computed(
    "collar.blank_diameter",
    label="diameter of the blank when it goes on the bar",
    unit="mm",
    rounding="size",
    needs=("collar.stock_diameter", "collar.skin_side"),
    how="the stock, less corners or skin turned off first",
)
def blank_diameter(stock: float, skin: float) -> float:
    return within_both_sides(stock, skin)


@computed(
    "collar.saw_width",
    label="width of a blank before facing",
    unit="mm",
    rounding="length",
    bound="least",
    needs=(
        "collar.width", "collar.facing_stock", "collar.own_width", "collar.stock_length", "collar.banded",
        "limit.grip_least", "limit.face_clearance", "lathe.size_step",
    ),
    how="finished width and facing stock on both faces, wide enough to be held by halves where that is how it is turned; "
    "the stock itself where the blank is as wide",
)  # fmt: skip
def saw_width(
    width: float, facing: float, own: bool, stock: float, banded: bool, grip: float, clearance: float, step: float
) -> Limited:  # fmt: skip
    if own:
        return taken(stock, "the stock is as wide", "the stock as it is")
    wide = over_both_sides(width, facing)
    halves = on_diameter(clearance + step_up(grip, step))
    if banded and halves > wide:
        return taken(halves, "held by one half, then by the other", "wide enough to be held by one half, then by the other")
    return taken(wide, "the finished width, and metal to face off", "finished width and facing stock on both faces")


@computed(
    "collar.swing_limit",
    label="largest diameter that clears the cross slide",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("lathe.swing_over_slide", "limit.swing_clearance"),
    how="swing over the cross slide less clearance on both sides",
)
def swing_limit(swing: float, clearance: float) -> float:
    return within_both_sides(swing, clearance)


@computed(
    "collar.least_diameter",
    label="smallest useful diameter of a collar",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("bar.diameter", "limit.collar_wall", "limit.use_per_visit", "limit.visits_wanted"),
    how="bar, a wall on both sides, and the wear of the visits that are wanted",
)
def least_diameter(bar: float, wall: float, use: float, visits: float) -> float:
    return over_both_sides(bar, wall) + length_of_steps(visits, use)


@computed(
    "collar.micrometer",
    label="micrometer for the collars",
    kind="record",
    needs=(
        "bar.on_hand?", "crib.outside_micrometers", "job.collar_diameter?", "collar.largest_from_stock",
        "collar.swing_limit", "collar.least_diameter", "limit.use_per_visit", "limit.visits_wanted",
        "limit.micrometer_margin",
    ),
    how="the one that reads the largest collar this stock and this swing give, and still reads it after the visits "
    "that are wanted",
)  # fmt: skip
def collar_micrometer(
    on_hand: Record | None, owned: tuple[Record, ...], asked: float | None, stock: float, swing: float, least: float,
    use: float, visits: float, margin: float,
) -> Limited:  # fmt: skip
    if on_hand is not None:
        # A bar that exists is read as it is: it need not have years before it. Whether a visit is left is judged apart.
        asked, least, visits = on_hand["collar_diameter"], 0.0, 0.0
    top = asked if asked is not None else min(stock, swing)
    # Where the wish or the stock itself is too thin, that is refused in its own words; no micrometer is to blame for it.
    if top < least:
        least, visits = top, 0.0
    best: tuple[float, Record] | None = None
    for instrument in owned:
        size = min(top, instrument["to"] - margin) if asked is None else top
        worn = size - length_of_steps(visits, use)
        covers = instrument["from"] <= worn and size <= instrument["to"] and size >= least
        if covers and (best is None or size > best[0]):
            best = (size, instrument)
    if best is None:
        return Limited(None, "no outside micrometer covers a collar that this stock and this swing give")
    return Limited(best[1], "it covers the collar now and after years of skims")


@computed(
    "collar.micrometer_covers",
    label="a micrometer covers the collars",
    kind="yes-no",
    needs=("collar.micrometer?", "collar.blank_diameter"),
    how="whether the crib has such a micrometer",
)
def micrometer_covers(instrument: Record | None, _stock: float) -> bool:
    return instrument is not None


def _of_micrometer(name: str, key: str, label: str) -> None:
    @computed(name, label=label, unit="mm", rounding="size" if key != "resolution" else "fit",
              needs=("collar.micrometer",), how="as given for the micrometer", as_said=True)  # fmt: skip
    def _said(instrument: Record) -> Any:
        return instrument[key]


_of_micrometer("collar.micrometer_from", "from", "lower end of the micrometer for the collars")
_of_micrometer("collar.micrometer_resolution", "resolution", "resolution of the micrometer for the collars")


@computed(
    "collar.largest_from_stock",
    label="largest collar that this stock cleans up to",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("collar.blank_diameter", "collar.clean_up"),
    how="diameter of the stock less what cleans it up all round",
)
def largest_from_stock(stock: float, clean: float) -> float:
    return stock - clean


@computed(
    "collar.station",
    label="middle of a collar from its end of the bar",
    unit="mm",
    rounding="length",
    needs=(
        "bar.on_hand?", "bar.length", "limit.station_share", "crib.dog_room", "limit.dog_clearance", "collar.width",
        "lathe.length_step",
    ),
    how="a share of the bar, or what the dog and clearance need, the same at both ends so that the bar can be turned "
    "end for end; up to a whole step of the rule",
)  # fmt: skip
def station(
    on_hand: Record | None, length: float, share: float, dog: float, clearance: float, width: float, step: float
) -> Limited:
    if on_hand is not None:
        return taken(on_hand["station"], _ON_HAND, as_said=True)
    weighed = (share_of(length, share), "share of the bar"), (middle_past(dog + clearance, width), "room for the dog")
    furthest, by = max(weighed, key=lambda one: one[0])
    return Limited(step_up(furthest, step), by, weighed)


@computed(
    "collar.inner_edge",
    label="edge of a collar from its end of the bar",
    unit="mm",
    rounding="length",
    needs=("collar.station", "collar.width"),
    how="station less half the width",
)
def inner_edge(station: float, width: float) -> float:
    return near_edge(station, width)


@computed(
    "collar.stop_at",
    label="edge of a collar furthest from its end of the bar",
    unit="mm",
    rounding="length",
    needs=("collar.inner_edge", "collar.width"),
    how="edge nearest to that end, and the width",
)
def stop_at(edge: float, width: float) -> float:
    return edge + width


@computed(
    "collar.dog_gap",
    label="room between dog and collar",
    unit="mm",
    rounding="length",
    needs=("collar.inner_edge", "crib.dog_room"),
    how="edge of the collar from the end of the bar, less the length of bar that the dog needs",
)
def dog_gap(edge: float, dog: float) -> float:
    return edge - dog


@computed(
    "collar.height_over_bar",
    label="how far a collar stands out from the bar",
    unit="mm",
    rounding="length",
    needs=("collar.diameter", "bar.diameter"),
    how="half the difference of the two diameters",
)
def height_over_bar(collar: float, bar: float) -> float:
    return per_side(collar, bar)


@computed(
    "collar.spacing",
    label="distance between the middles of the collars",
    unit="mm",
    rounding="length",
    needs=("bar.length", "collar.station"),
    how="length of the bar less both stations",
)
def spacing(length: float, station: float) -> float:
    return within_both_sides(length, station)


@computed(
    "collar.mass",
    label="mass of one collar",
    unit="kg",
    rounding="mass",
    needs=("collar.blank_diameter", "bar.diameter", "collar.width", "collar.density"),
    how="volume of the ring times its density",
)
def collar_mass(outside: float, bore: float, width: float, density: float) -> float:
    return mass_cylinder(outside, width, density, bore_mm=bore)


@computed(
    "bar.assembly_mass",
    label="mass of the finished bar with its collars",
    unit="kg",
    rounding="mass",
    needs=("bar.mass", "collar.mass", "collar.pieces"),
    how="bar and its collars",
)
def assembly_mass(bar: float, collar: float, pieces: int) -> float:
    return mass_with_pieces(bar, collar, pieces)


@computed(
    "collar.stands_out",
    label="how far a blank stands out, against the chuck face",
    unit="mm",
    rounding="length",
    needs=("collar.saw_width", "blank.jaw_depth"),
    how="width of the sawn blank less the depth of the jaws; less than nothing means behind the jaw faces",
)
def stands_out(width: float, jaws: float) -> float:
    return width - jaws


@computed(
    "collar.held_out",
    label="blank standing out of the jaws as it is held",
    unit="mm",
    rounding="length",
    needs=("collar.saw_width", "collar.grip"),
    how="width of the sawn blank less the grip",
)
def held_out(width: float, grip: float) -> float:
    return width - grip


@computed(
    "collar.spacer_least",
    label="thinnest spacer that brings the face clear of the jaws and leaves room for the drill",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("collar.stands_out", "limit.face_clearance", "hole.room_behind?"),
    how="the larger of: clearance in front of the jaws less what stands out already, room that drilling needs behind",
)
def spacer_least(stands: float, clearance: float, behind: float | None) -> Limited:
    clear = max(0.0, clearance - stands)
    if behind is not None and behind > clear:
        return Limited(behind, "room for the drill behind the blank")
    return Limited(clear, "the face clear of the jaws")


@computed(
    "collar.spacer_most",
    label="thickest spacer that leaves enough grip",
    unit="mm",
    rounding="length",
    bound="most",
    needs=("blank.jaw_depth", "limit.grip_least"),
    how="depth of the jaws less the least grip",
)
def spacer_most(jaws: float, grip: float) -> float:
    return jaws - grip


@computed(
    "collar.spacer_for_tools",
    label="a spacer makes room for tools that the hole of the chuck does not let through",
    kind="yes-no",
    needs=(
        "chuck.hole?", "bore.nominal?", "blank.room_needed?", "crib.spacer?", "collar.spacer_least?", "collar.spacer_most?",
    ),
    how="yes where the hole of the chuck is no larger than the bore, and the spacer leaves tools their room and jaws "
    "their grip; no where any of it is not known",
)  # fmt: skip
def spacer_for_tools(
    hole: float | None, bore: float | None, room: float | None, spacer: float | None, least: float | None,
    most: float | None,
) -> bool:  # fmt: skip
    if hole is None or bore is None or room is None or spacer is None or least is None or most is None:
        return False
    return hole <= bore and max(room, least) <= spacer <= most


@computed(
    "collar.grip",
    label="grip on the blank",
    unit="mm",
    rounding="length",
    needs=("collar.hold", _GRIPS[0], "crib.spacer?", "collar.saw_width", *_GRIPS[1:]),
    tables=("machines/holdings",),
    how="depth of the jaws less the spacer, or the blank where it is shorter; on a band, what leaves room to turn it; in "
    "soft jaws the step; in a collet what leaves the face clear of it",
)  # fmt: skip
def grip(
    hold: str, jaws: float, spacer: float | None, width: float, band: float, soft: float | None, collet: float | None,
    holdings: Table,
) -> Limited | None:  # fmt: skip
    row = holdings.one(decision="collar.hold", hold=hold)
    depths = zip(_GRIPS, zip((jaws, band, soft, collet), _GRIPPED, strict=True), strict=True)
    depth, how = {fact.rstrip("?"): told for fact, told in depths}.get(row.text("grip"), (None, ""))
    if depth is None:
        return None
    if row.yes("spacer") and spacer is not None:
        depth, how = depth - spacer, f"{how} less the spacer"
    return taken(depth, how) if depth <= width else taken(width, "the whole width of the blank")
