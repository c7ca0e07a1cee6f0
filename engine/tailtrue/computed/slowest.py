"""A lathe that turns too fast: for which cut of the work, how fast the rim passes the tool, and what is advised."""

from collections.abc import Mapping
from typing import Any

from tailtrue.calc.cutting import surface_speed
from tailtrue.calc.lengths import share_of
from tailtrue.computed.operation import Operation
from tailtrue.computed.registry import Limited, computed
from tailtrue.computed.speed_table import SPEED_TABLES, surface_band
from tailtrue.computed.speeds import BAR_FACING, COLLAR_FACING, COLLAR_ROUGHING, SKIMMING
from tailtrue.computed.stepping import least_of


def _too_fast(work: str, what: str, cuts: Mapping[str, Operation]) -> None:
    """Register whether the lathe turns slowly enough for these cuts of the work, and what of the first that it does not."""
    names, each = tuple(cuts), tuple(cuts.values())
    speeds = tuple(f"{one.prefix}.speed?" for one in each)
    sizes = tuple(one.diameter for one in each)
    factors = tuple(dict.fromkeys(one.speed_factor for one in each if one.speed_factor))
    caps = tuple(dict.fromkeys(fact for one in each for fact, _ in one.caps))
    made_from = tuple(dict.fromkeys((f"{work}.material", *(one.tool for one in each), *factors, *caps, *sizes)))
    cut = f"{work}.too_fast_cut"
    where = " and ".join(names)

    @computed(f"{work}.speeds_there", label=f"the lathe has a speed slow enough for {what}", kind="yes-no",
              needs=(*speeds, "lathe.slowest", *made_from),
              how=f"whether {where} each find a speed that tool, metal and holding bear; not known while what a speed is "
              "made from is not")  # fmt: skip
    def _there(*given: Any) -> bool:
        return None not in given[: len(speeds)]

    @computed(cut, label=f"cut of {what} that even the slowest speed is too fast for", kind="choice", choices=names,
              needs=(*speeds, "lathe.slowest"), how=f"the first of {where} that finds no speed")  # fmt: skip
    def _cut(*given: Any) -> str | None:
        return next((name for name, speed in zip(names, given, strict=False) if speed is None), None)

    @computed(f"{work}.too_fast_at", label="diameter that passes the tool too fast", unit="mm", rounding="length",
              needs=(cut, *sizes), how="the largest that the tool meets in that cut")  # fmt: skip
    def _at(too_fast: str, *across: float) -> float:
        return dict(zip(names, across, strict=True))[too_fast]

    @computed(f"{work}.too_fast_surface", label="surface speed there at the slowest speed of the lathe", unit="m/min",
              rounding="surface-speed", bound="least", needs=("lathe.slowest", f"{work}.too_fast_at"),
              how="pi D n / 1000")  # fmt: skip
    def _surface(slowest: float, diameter: float) -> float:
        return surface_speed(slowest, diameter)

    def _end(name: str, label: str, take: Any, bound: Any) -> None:
        @computed(f"{work}.too_fast_{name}", label=f"{label} end of the surface speeds advised for that cut", unit="m/min",
                  rounding="surface-speed", bound=bound,
                  needs=(cut, f"{work}.material", each[0].tool, *factors), tables=SPEED_TABLES,
                  how="from the table; less where the cut is interrupted or the work stands out far")  # fmt: skip
        def _of_band(too_fast: str, material: str, tool: str, *given: Any) -> float:
            shares: dict[str | None, float] = dict(zip(factors, given, strict=False))
            one, tables = cuts[too_fast], given[len(factors) :]
            return share_of(take(surface_band(material, one.table, tool, *tables)), shares.get(one.speed_factor, 1.0))

    _end("low", "lower", min, "nearest")
    _end("high", "upper", max, "most")

    @computed(f"{work}.too_fast_limit", label="speed that the holding bears at that cut", unit="1/min", rounding="speed",
              bound="most", needs=(cut, *caps), how="the lowest of the limits of that cut")  # fmt: skip
    def _limit(too_fast: str, *limits: float) -> Limited:
        told = dict(zip(caps, limits, strict=True))
        return Limited(*least_of(*((told[fact], name) for fact, name in cuts[too_fast].caps)))


_too_fast("collar", "the collars", {"facing": COLLAR_FACING, "roughing": COLLAR_ROUGHING, "skimming": SKIMMING})
_too_fast("bar", "the ends of the bar", {"facing": BAR_FACING})
