"""The bar as it measures, and the sizes between which the bore must come out for it."""

from collections.abc import Callable, Sequence

from tailtrue.calc.fits import bore_window
from tailtrue.calc.lengths import over_both_sides, per_side, share_of
from tailtrue.calc.steps import step_down
from tailtrue.computed.registry import Limited, computed, taken
from tailtrue.tables import Table

_BONDED = "bonded-slip-fit"
_WINDOW = ("bore.gap_least", "bore.gap_largest", "bore.gauge_uncertainty", "lathe.fit_step")
Readings = tuple[float, ...] | None
_EVEN = (0.0,)  # a bar that is the same everywhere: only what is added to it counts


@computed(
    "bar.working_diameter",
    label="diameter of the bar that the plan reckons with",
    unit="mm",
    rounding="fit",
    needs=("bar.diameter", "job.measured_head?", "job.measured_middle?", "job.measured_tail?"),
    how="the least that was measured; the nominal diameter until it has been measured",
)
def working_diameter(nominal: float, *seats: tuple[float, ...] | None) -> Limited:
    measured = [reading for readings in seats for reading in readings or ()]
    if measured:
        return taken(min(measured), "the least of the readings", as_said=True)
    return taken(nominal, "nominal: not measured yet")


def _reading(name: str, label: str, take: Callable[[Sequence[float]], float]) -> None:
    @computed(
        name,
        label=label,
        unit="mm",
        rounding="fit",
        needs=("job.measured_head", "job.measured_tail", "job.measured_middle?"),
        how="of all readings at every seat",
    )
    def _of_readings(head: Sequence[float], tail: Sequence[float], middle: Sequence[float] | None) -> float:
        return take([*head, *tail, *(middle or ())])


_reading("bar.measured_least", "least reading of the bar", min)
_reading("bar.measured_largest", "largest reading of the bar", max)


@computed(
    "bore.gap_least_usual",
    label="gap a bore made by hand needs, on diameter",
    unit="mm",
    rounding="fit",
    bound="least",
    needs=("bar.diameter",),
    tables=("fits/attachment_clearance",),
    how="the target of a bonded slip fit",
)
def gap_usual(diameter: float, clearances: Table) -> float:
    return clearances.within(diameter, "over_mm", "upto_mm", method=_BONDED).number("target_mm")


@computed(
    "bore.nominal",
    label="bore to make",
    unit="mm",
    rounding="size",
    needs=("bar.working_diameter", "bore.gap_target"),
    how="diameter of the bar and the clearance wanted for the bond",
)
def nominal(bar: float, gap: float) -> float:
    return bar + gap


def _end(end: str, words: str) -> None:
    needs = (f"job.measured_{end}", *_WINDOW)
    how = "the bar as measured, plus the least and less the largest clearance, drawn in by the doubt of the gauge"

    @computed(f"bore.{end}_low", label=f"smallest bore, collar at the {words} end", unit="mm", rounding="fit",
              bound="least", needs=needs, how=how)  # fmt: skip
    def _low(measured: tuple[float, ...], *window: float) -> float:
        return bore_window(min(measured), max(measured), *window)[0]

    @computed(f"bore.{end}_high", label=f"largest bore, collar at the {words} end", unit="mm", rounding="fit",
              bound="most", needs=needs, how=how)  # fmt: skip
    def _high(measured: tuple[float, ...], *window: float) -> float:
        return bore_window(min(measured), max(measured), *window)[1]


_end("head", "headstock")
_end("tail", "tailstock")

_MIDDLE = ("job.measured_middle", "job.measured_tail", *_WINDOW)


@computed("bore.middle_low", label="smallest bore, collar in the middle", unit="mm", rounding="fit", bound="least",
          needs=_MIDDLE, how="as at the ends, from the largest reading there and at the seat it slides over")  # fmt: skip
def middle_low(middle: tuple[float, ...], passed: tuple[float, ...], *window: float) -> float:
    return bore_window(min(middle), max(*middle, *passed), *window)[0]


@computed("bore.middle_high", label="largest bore, collar in the middle", unit="mm", rounding="fit", bound="most",
          needs=_MIDDLE, how="as at the ends, from the least reading there")  # fmt: skip
def middle_high(middle: tuple[float, ...], passed: tuple[float, ...], *window: float) -> float:
    return bore_window(min(middle), max(*middle, *passed), *window)[1]


@computed(
    "bore.spread",
    label="how unevenly the bar was measured, at the worse seat",
    unit="mm",
    rounding="fit",
    bound="least",
    needs=("job.measured_head?", "job.measured_tail?", "job.measured_middle?"),
    how="largest less least reading; in the middle of the seat it slides over too; nothing until the bar has been measured",
)
def spread(head: Sequence[float] | None, tail: Sequence[float] | None, middle: Sequence[float] | None) -> float:
    seats = [head or (0.0,), tail or (0.0,)]
    uneven = [max(readings) - min(readings) for readings in seats]
    if middle:
        uneven.append(max(*middle, *(tail or ())) - min(middle))
    return max(uneven)


@computed(
    "bore.window",
    label="room between the smallest and the largest bore",
    unit="mm",
    rounding="fit",
    bound="most",
    needs=("job.measured_head?", "job.measured_tail?", "job.measured_middle?", *_WINDOW),
    how="largest less smallest bore at the seat where they lie closest; an even bar until it is measured",
)
def window(head: Readings, tail: Readings, middle: Readings, *gaps: float) -> Limited:
    seats = [(min(read), max(read)) for read in (head or _EVEN, tail or _EVEN)]
    if middle:
        # On its way there the collar slides over the seat at the tailstock end.
        seats.append((min(middle), max(*middle, *(tail or ()))))
    room = min(high - low for low, high in (bore_window(*seat, *gaps) for seat in seats))
    if head or tail or middle:
        return taken(room, "as measured", "largest less smallest bore at the seat where they lie closest")
    return taken(room, "not measured yet", "largest less smallest bore for an even bar: not measured yet")


@computed(
    "bore.bar_slack",
    label="how far off the bar may read on this sheet",
    unit="mm",
    rounding="fit",
    bound="most",
    needs=("bore.window", "limit.bore_room_left", "bar.micrometer_resolution"),
    how="the room between the two sizes less the share that is left to bore in, half of it inside each size, down to what "
    "the micrometer reads",
)
def bar_slack(room: float, left: float, step: float) -> float:
    return step_down(per_side(room, share_of(room, left)), step)


@computed(
    "bore.band_least",
    label="room that the gauge needs to judge a bore",
    unit="mm",
    rounding="fit",
    bound="least",
    needs=("bore.gauge_uncertainty", "lathe.fit_step"),
    how="twice the doubt of the gauge, and a step of rounding at both ends",
)
def band_least(unsure: float, step: float) -> float:
    return over_both_sides(0.0, unsure + step)


@computed(
    "bore.blank_fits",
    label="the bore that is there fits the bar as it is",
    kind="yes-no",
    needs=("hole.start", "bore.head_low", "bore.head_high", "bore.tail_low", "bore.tail_high"),
    how="whether it lies between the smallest and the largest bore at both ends",
)
def blank_fits(start: float, head_low: float, head_high: float, tail_low: float, tail_high: float) -> bool:
    return max(head_low, tail_low) <= start <= min(head_high, tail_high)


@computed(
    "bore.add_least",
    label="least to add to the largest reading of the bar",
    unit="mm",
    rounding="fit",
    bound="least",
    needs=_WINDOW,
    how="least clearance and the doubt of the gauge",
)
def add_least(gap_least: float, gap_most: float, unsure: float, step: float) -> float:
    return bore_window(0.0, 0.0, gap_least, gap_most, unsure, step)[0]


@computed(
    "bore.add_most",
    label="most to add to the least reading of the bar",
    unit="mm",
    rounding="fit",
    bound="most",
    needs=_WINDOW,
    how="largest clearance less the doubt of the gauge",
)
def add_most(gap_least: float, gap_most: float, unsure: float, step: float) -> float:
    return bore_window(0.0, 0.0, gap_least, gap_most, unsure, step)[1]
