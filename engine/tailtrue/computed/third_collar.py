"""A third collar in the middle of the bar: what no setting of the tailstock explains."""

from collections.abc import Sequence
from statistics import fmean

from tailtrue.calc.lathe_geometry import bow_doubt, third_collar_bow
from tailtrue.computed.registry import computed

_STATIONS = ("truing.head_station", "visit.middle_station", "truing.tail_station")


@computed("visit.middle", label="diameter of the collar in the middle", unit="mm", rounding="fit",
          needs=("visit.middle_readings",), how="mean of its readings")  # fmt: skip
def middle(readings: Sequence[float]) -> float:
    return fmean(readings)


@computed(
    "visit.bow_signed",
    label="middle collar less what a plain taper gives there",
    unit="mm",
    rounding="difference",
    needs=("visit.head", "visit.middle", "visit.tail", *_STATIONS),
    how="D_m - (D_h + (D_t - D_h) (z_m - a) / (b - a))",
)
def bow_signed(head: float, mid: float, tail: float, first: float, between: float, second: float) -> float:
    return third_collar_bow(head, mid, tail, first, between, second)


@computed("visit.bow", label="bow of the three collars", unit="mm", rounding="difference",
          needs=("visit.bow_signed",), how="its size; which way is said in words")  # fmt: skip
def bow(signed: float) -> float:
    return abs(signed)


@computed("visit.bow_way", label="way of the bow", kind="choice", choices=("larger", "smaller"),
          needs=("visit.bow_signed",), how="sign of the bow")  # fmt: skip
def bow_way(signed: float) -> str:
    return "smaller" if signed < 0 else "larger"


@computed(
    "visit.bow_uncertainty",
    label="doubt of the bow",
    unit="mm",
    rounding="difference",
    bound="least",
    needs=("visit.uncertainty", *_STATIONS),
    how="that of one collar, taken once for the middle one and by their shares for the others",
)
def bow_uncertainty(of_difference: float, first: float, between: float, second: float) -> float:
    return bow_doubt(of_difference, first, between, second)
