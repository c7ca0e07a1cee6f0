"""What was found while the sheet was worked through, and what can be done about it."""

from collections.abc import Mapping, Sequence
from statistics import fmean
from typing import Any

from tailtrue.calc.lengths import midway, on_diameter, share_of
from tailtrue.calc.margins import margin_of_narrow
from tailtrue.calc.rework import landing_divisions, shared_divisions
from tailtrue.calc.rework import light_cuts as cuts_to_the_middle
from tailtrue.calc.steps import length_of_steps, step_down, step_up, steps_in
from tailtrue.computed.registry import Limited, computed, field

_READINGS = ("job.found_front", "job.found_rear")
_WINDOW = ("rework.low", "rework.high")
_ENDS = {"end-a": ("head", "tail"), "end-b": ("tail", "head")}


def seat_of(at: str, head: Sequence[float], tail: Sequence[float]) -> Sequence[float]:
    """The readings of the bar where the collar that was found belongs."""
    return {"head": head, "tail": tail}[_ENDS[at][0]]


@computed("rework.least", label="least reading of the bore as found", unit="mm", rounding="fit", needs=_READINGS,
          how="of all readings at both ends of the bore")  # fmt: skip
def least(front: Sequence[float], rear: Sequence[float]) -> float:
    return min(*front, *rear)


@computed("rework.largest", label="largest reading of the bore as found", unit="mm", rounding="fit", needs=_READINGS,
          how="of all readings at both ends of the bore")  # fmt: skip
def largest(front: Sequence[float], rear: Sequence[float]) -> float:
    return max(*front, *rear)


@computed("rework.taper", label="difference of the two ends of the bore", unit="mm", rounding="fit", needs=_READINGS,
          how="mean of the readings in front less mean of those at the rear, whichever is larger")  # fmt: skip
def taper(front: Sequence[float], rear: Sequence[float]) -> float:
    return abs(fmean(front) - fmean(rear))


def _window(side: str, words: str, bound: Any) -> None:
    @computed(f"rework.{side}", label=f"{words} bore of this collar", unit="mm", rounding="fit", bound=bound,
              needs=("job.found_at", f"bore.head_{side}", f"bore.tail_{side}"),
              how="that of the end of the bar where the collar belongs")  # fmt: skip
    def _own(at: str, head: float, tail: float) -> float:
        return {"head": head, "tail": tail}[_ENDS[at][0]]

    @computed(f"rework.other_{side}", label=f"{words} bore at the other end", unit="mm", rounding="fit", bound=bound,
              needs=("job.found_at", f"bore.head_{side}", f"bore.tail_{side}"),
              how="that of the end of the bar where the other collar belongs")  # fmt: skip
    def _other(at: str, head: float, tail: float) -> float:
        return {"head": head, "tail": tail}[_ENDS[at][1]]


_window("low", "smallest", "least")
_window("high", "largest", "most")


def _fits(name: str, label: str, low_fact: str, high_fact: str) -> None:
    @computed(name, label=label, kind="yes-no", needs=("rework.least", "rework.largest", low_fact, high_fact),
              how="whether every reading lies between the smallest and the largest bore")  # fmt: skip
    def _inside(smallest: float, biggest: float, low: float, high: float) -> bool:
        return low <= smallest and biggest <= high


_fits("rework.fits", "the bore as found fits its end of the bar", *_WINDOW)
_fits("rework.fits_other", "the bore as found fits the other end of the bar", "rework.other_low", "rework.other_high")


@computed(
    "rework.gap_found",
    label="gap the bore as found would leave, on diameter",
    unit="mm",
    rounding="fit",
    bound="most",
    needs=("rework.largest", "job.found_at", "job.measured_head", "job.measured_tail"),
    how="largest reading of the bore less the least reading of the bar at this seat",
)
def gap_found(biggest: float, at: str, head: Sequence[float], tail: Sequence[float]) -> float:
    return biggest - min(seat_of(at, head, tail))


@computed("rework.step", label="what one step of a cut in the bore moves the tool", unit="mm", rounding="depth",
          needs=("bore.fine_step",), how="half of what a step of the way that sets the last cut opens the bore")  # fmt: skip
def step(opens: float) -> float:
    return midway(0.0, opens)


@computed(
    "rework.divisions",
    label="steps of what sets the last cut that open the bore into its window",
    unit="1",
    rounding="count",
    needs=("rework.least", "rework.largest", *_WINDOW, "rework.step"),
    how="whole steps, one at least, that end nearest to the middle of the window with every reading inside it",
)
def divisions(smallest: float, biggest: float, low: float, high: float, step: float) -> Limited | None:
    found = landing_divisions(smallest, biggest, low, high, step)
    if found is None:
        return Limited(None, "no whole number of steps ends inside the window")
    return Limited(float(found), "nearest to the middle of the window")


@computed("rework.can_open", label="whole steps of what sets the last cut bring the bore into its window", kind="yes-no",
          needs=("rework.divisions?", *_WINDOW), how="whether there is such a number")  # fmt: skip
def can_open(number: float | None, _low: float, _high: float) -> bool:
    return number is not None


@computed("rework.below", label="the bore as found is too small at one end at least", kind="yes-no",
          needs=("rework.least", "rework.low"), how="least reading against the smallest bore")  # fmt: skip
def below(smallest: float, low: float) -> bool:
    return smallest < low


@computed("rework.above", label="the bore as found is too large at one end at least", kind="yes-no",
          needs=("rework.largest", "rework.high"), how="largest reading against the largest bore")  # fmt: skip
def above(biggest: float, high: float) -> bool:
    return biggest > high


@computed(
    "rework.cuts",
    label="cuts that open the bore",
    kind="records",
    fields=(
        field("cut", "1", "count"),
        field("divisions", "1", "count"),
        field("depth", "mm", "depth"),
        field("least_after", "mm", "fit"),
        field("largest_after", "mm", "fit"),
    ),
    needs=("rework.divisions", "bore.finish_depth", "rework.step", "rework.least", "rework.largest"),
    how="the steps shared out evenly, none deeper than a last cut of the sheet",
)
def cuts(total: float, deepest: float, division: float, smallest: float, biggest: float) -> tuple[Mapping[str, float], ...]:
    rows: list[Mapping[str, float]] = []
    done = 0
    for number, each in enumerate(shared_divisions(round(total), max(1, steps_in(deepest, division))), start=1):
        done += each
        grown = on_diameter(division, done)
        rows.append(
            {
                "cut": float(number), "divisions": float(each), "depth": length_of_steps(each, division),
                "least_after": smallest + grown, "largest_after": biggest + grown,
            }
        )  # fmt: skip
    return tuple(rows)


@computed("rework.light_cuts", label="light cuts still to take, about", unit="1", rounding="count",
          needs=("rework.least", *_WINDOW, "bore.finish_depth"),
          how="from the least reading to the middle of the window, in cuts as deep as the last of the sheet")  # fmt: skip
def light_cuts(smallest: float, low: float, high: float, depth: float) -> float:
    return float(cuts_to_the_middle(smallest, low, high, depth))


@computed("rework.begin_most", label="largest bore from which the cuts may begin", unit="mm", rounding="fit", bound="most",
          needs=("rework.high", "rework.divisions", "rework.step", "lathe.fit_step"),
          how="largest bore less what all the cuts take off, in fine steps down")  # fmt: skip
def begin_most(high: float, total: float, division: float, step: float) -> float:
    return step_down(high - on_diameter(division, total), step)


@computed(
    "rework.cut_off",
    label="length to saw off the end of the bar",
    unit="mm",
    rounding="length",
    bound="least",
    needs=("bar.centre_depth", "limit.rework_beyond_point", "lathe.length_step"),
    how="depth of the centre drill and a little beyond the broken point",
)
def cut_off(depth: float, beyond: float, step: float) -> float:
    return step_up(depth + beyond, step)


@computed("rework.length_left", label="finished length that is left", unit="mm", rounding="length", bound="most",
          needs=("bar.length", "rework.cut_off", "limit.facing_stock"),
          how="length of the sheet less what is sawn off and what is faced off the new end")  # fmt: skip
def length_left(length: float, off: float, facing: float) -> float:
    return length - off - facing


@computed("rework.width_over", label="metal to face off the collar", unit="mm", rounding="depth",
          needs=("job.found_width", "collar.width"), how="width as found less width of the sheet")  # fmt: skip
def width_over(found: float, width: float) -> float | None:
    return found - width if found > width else None


@computed("rework.margin_left", label="joint of the narrow collar against a tool that catches", unit="1",
          bound="least", needs=("joint.catch_margin", "job.found_width", "collar.width"),
          how="margin of the sheet times width as found over width of the sheet: the area of a bond")  # fmt: skip
def margin_left(margin: float, found: float, width: float) -> float:
    return margin_of_narrow(margin, found, width)


@computed("rework.visits_left", label="truing cuts with their skims that the smaller collar has left", unit="1",
          rounding="count", bound="most", needs=("job.found_collar", "skim.worn_out_at", "skim.use_per_visit"),
          how="diameter as found above that of a worn collar, in whole visits")  # fmt: skip
def visits_left(found: float, worn: float, use: float) -> float:
    return float(max(0, steps_in(found - worn, use)))


@computed("rework.collar_most", label="largest reading of a collar that is believed", unit="mm", rounding="size",
          bound="most", needs=("collar.diameter", "limit.collar_over"),
          how="diameter of the sheet and a little above it")  # fmt: skip
def collar_most(diameter: float, over: float) -> float:
    return diameter + over


@computed("rework.tries", label="tries, at most", unit="1", rounding="count", bound="most",
          needs=("rework.visits_left", "limit.rework_tries"),
          how="what the collars have left, and never above the limit")  # fmt: skip
def tries(left: float, most: float) -> float:
    return min(left, most)


def _slower(name: str, label: str, of: str) -> None:
    @computed(name, label=label, unit="1/min", rounding="speed", bound="most",
              needs=(of, "lathe.speeds?", "lathe.slowest", "limit.rework_slower"),
              how="the next speed below that of the sheet; with a variable drive, a share of it")  # fmt: skip
    def _next(speed: float, speeds: Sequence[float] | None, slowest: float, share: float) -> float | None:
        lower = [one for one in speeds or (share_of(speed, share),) if slowest <= one < speed]
        return max(lower) if lower else None


_slower("rework.slower_skim", "speed against chatter, skim", "skim.speed")
_slower("rework.slower_bore", "speed against chatter, bore", "collar.bore_finish.speed")
