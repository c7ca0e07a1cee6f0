"""The corners of a square slug: what it costs to saw them off or to turn them off, and the circle that is left."""

from tailtrue.calc.cutting import passes_for_stock
from tailtrue.calc.octagon import corner_leg, corners_area, octagon_circle, sawing_time
from tailtrue.computed.operation import operation
from tailtrue.computed.registry import Limited, computed
from tailtrue.computed.speeds import RAW_CAPS
from tailtrue.computed.times import along
from tailtrue.tables import Table

_SAWN = "sawn-off"
_CORNERS = 4
_HALVES = 2  # a slug is turned one half at a time

# As if its corners were left on, whatever is decided: what they cost is held against the saw.
operation(
    "collar.square", "turning a slug with its corners on", table="turn-rough", work="collar",
    diameter="collar.square_circle", tool="tool.material", caps=RAW_CAPS, speed_factor="collar.interrupted_speed",
    depth_factor="collar.interrupted_depth", depth_by="corners or skin: the cut is interrupted",
)  # fmt: skip


@computed("collar.octagon_circle", label="circle that a slug swings with its corners sawn off", unit="mm", rounding="size",
          bound="least", needs=("collar.stock_diameter", "limit.saw_outside"),
          how="across the corners of an octagon whose cuts run outside their lines by what is allowed")  # fmt: skip
def circle_of_octagon(flats: float, outside: float) -> float:
    return octagon_circle(flats, outside)


@computed("collar.corner_leg", label="from each corner of the slug along its edges", unit="mm", rounding="length",
          needs=("collar.stock_diameter", "collar.corners"),
          how="where the cuts begin that leave a regular octagon")  # fmt: skip
def leg_of_corner(flats: float, corners: str) -> Limited | float:
    return corner_leg(flats) if corners == _SAWN else Limited(None, "the corners stay on")


@computed(
    "collar.corner_diameter",
    label="circle that the raw blank swings",
    unit="mm",
    rounding="size",
    bound="least",
    needs=("collar.square_circle", "collar.octagon_circle", "collar.corners?"),
    how="as given for the stock; of a square slug across its corners, sawn off or left on",
)
def corner_diameter(square: float, octagon: float, corners: str | None) -> float:
    return octagon if corners == _SAWN else square


@computed(
    "collar.corner_passes",
    label="passes that only knock corners off a slug",
    unit="1",
    rounding="count",
    bound="least",
    needs=("collar.square_circle", "collar.octagon_circle", "collar.square.depth"),
    how="from the circle of the square to that of the octagon, each pass as deep as an interrupted cut may be",
)
def corner_passes(square: float, octagon: float, depth: float) -> float:
    return float(passes_for_stock(square - octagon, depth))


@computed(
    "time.corners_turned",
    label="time to turn the corners of all slugs off",
    unit="s",
    rounding="time",
    needs=("collar.corner_passes", "collar.band_length", "collar.square.speed", "collar.square.hand_feed", "collar.pieces"),
    tables=("time/planning",),
    how="passes that only knock corners off, along both halves of each slug",
)
def corners_turned(passes: float, length: float, speed: float, feed: float, pieces: int, planning: Table) -> float:
    return along(length, feed, speed, round(passes) * _HALVES * pieces, planning)


@computed(
    "time.corners_sawn",
    label="time to saw the corners of all slugs off",
    unit="s",
    rounding="time",
    needs=("collar.stock_diameter", "collar.saw_width", "collar.pieces", "crib.saw", "collar.material_family"),
    tables=("time/sawing", "time/planning"),
    how="area of the cuts over the cutting rate of the saw, and the time to turn and clamp a slug for each cut",
)
def corners_sawn(
    flats: float, thick: float, pieces: int, saw: str, family: str, sawing: Table, planning: Table
) -> float:  # fmt: skip
    rate = sawing.one(saw=saw, family=family).number("rate_mm2_min")
    clamp = planning.one(name="clamp_for_cut").number("value")
    return sawing_time(corners_area(flats, thick, pieces), rate, _CORNERS * pieces, clamp)
