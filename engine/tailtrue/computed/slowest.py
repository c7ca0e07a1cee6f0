"""A lathe that turns too fast: for which cut of the collars, how fast the rim passes the tool, and what is advised."""

from collections.abc import Sequence

from tailtrue.calc.cutting import surface_speed
from tailtrue.calc.lengths import share_of
from tailtrue.computed.registry import computed
from tailtrue.computed.speed_table import SPEED_TABLES, surface_band
from tailtrue.tables import Table

_FACING, _ROUGHING, _SKIMMING = _CUTS = ("facing", "roughing", "skimming")
_OPERATIONS = {_FACING: "facing", _ROUGHING: "turn-rough", _SKIMMING: "skim"}
_BAND = ("collar.too_fast_cut", "collar.material", "crib.tool_material", "collar.interrupted_speed")


@computed("collar.too_fast_cut", label="cut of the collars that even the slowest speed is too fast for", kind="choice",
          choices=_CUTS, needs=("collar.facing.speed?", "collar.turning.speed?", "skim.speed?", "lathe.slowest"),
          how="the first of facing, roughing and skimming that finds no speed")  # fmt: skip
def too_fast_cut(facing: float | None, roughing: float | None, skimming: float | None, _slowest: float) -> str | None:
    found = zip(_CUTS, (facing, roughing, skimming), strict=True)
    return next((cut for cut, speed in found if speed is None), None)


@computed("collar.too_fast_at", label="diameter that passes the tool too fast", unit="mm", rounding="length",
          needs=("collar.too_fast_cut", "collar.corner_diameter", "collar.blank_diameter", "collar.diameter"),
          how="over the corners for facing, the blank for roughing, the collar for skimming")  # fmt: skip
def too_fast_at(cut: str, corners: float, blank: float, collar: float) -> float:
    return {_FACING: corners, _ROUGHING: blank, _SKIMMING: collar}[cut]


@computed("collar.too_fast_surface", label="surface speed there at the slowest speed of the lathe", unit="m/min",
          rounding="surface-speed", bound="least", needs=("lathe.slowest", "collar.too_fast_at"),
          how="pi D n / 1000")  # fmt: skip
def too_fast_surface(slowest: float, diameter: float) -> float:
    return surface_speed(slowest, diameter)


def _band(cut: str, material: str, tool: str, broken: float, tables: Sequence[Table]) -> list[float]:
    share = broken if cut == _FACING else 1.0
    return [share_of(end, share) for end in surface_band(material, _OPERATIONS[cut], tool, *tables)]


@computed("collar.too_fast_low", label="lower end of the surface speeds advised for that cut", unit="m/min",
          rounding="surface-speed", needs=_BAND, tables=SPEED_TABLES,
          how="from the table; less where corners break the cut")  # fmt: skip
def too_fast_low(cut: str, material: str, tool: str, broken: float, *tables: Table) -> float:
    return min(_band(cut, material, tool, broken, tables))


@computed("collar.too_fast_high", label="upper end of the surface speeds advised for that cut", unit="m/min",
          rounding="surface-speed", bound="most", needs=_BAND, tables=SPEED_TABLES,
          how="from the table; less where corners break the cut")  # fmt: skip
def too_fast_high(cut: str, material: str, tool: str, broken: float, *tables: Table) -> float:
    return max(_band(cut, material, tool, broken, tables))


@computed(
    "collar.too_fast_limit", label="speed that the holding bears at that cut", unit="1/min", rounding="speed", bound="most",
    needs=("collar.too_fast_cut", "blank.chuck_speed_limit", "limit.blank_speed", "collar.unbalance_speed",
           "limit.between_centres_speed", "skim.centre_speed_limit"),
    how="the lowest of the limits of chuck and blank, or of work and point between centres",
)  # fmt: skip
def too_fast_limit(cut: str, chuck: float, short: float, uneven: float, centres: float, point: float) -> float:
    return min((chuck, short, uneven) if cut == _FACING else (centres, point))
