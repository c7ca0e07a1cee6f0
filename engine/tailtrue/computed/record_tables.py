"""Tables of the records of work: what a reading says, and by how much something is off or is packed up."""

from collections.abc import Mapping, Sequence
from typing import Any

from tailtrue.calc.alignment import scaled_tolerance
from tailtrue.calc.lengths import length_ratio, midway
from tailtrue.calc.steps import length_of_steps, step_down
from tailtrue.computed.differences import in_steps, of_instrument
from tailtrue.computed.registry import computed, field
from tailtrue.tables import Table

_SLACK = 1e-9
_STEPS = "record/look_up_steps"
_LINES = "record/look_up_lines"
Rows = tuple[Mapping[str, Any], ...]


def _differences(steps: Table, dials: str, resolution: float) -> Sequence[float]:
    return tuple(in_steps(map(steps.take, of_instrument(steps.where(dials=dials), resolution))))


@computed(
    "bar.swap_table",
    label="change of the difference when the bar is turned round, and the part of the bar in it",
    kind="records",
    fields=(field("change", "mm", "difference"), field("do", kind="text"), field("own", "mm", "half")),
    needs=("lathe.dials", "collar.instrument_resolution", "bar.swap_most"),
    tables=(_STEPS, _LINES),
    how="half of the change is of the bar; what the doubts of both differences explain says nothing",
)  # fmt: skip
def swap_table(dials: str, resolution: float, most: float, steps: Table, lines: Table) -> Rows | None:
    return (
        tuple(
            {
                "change": change,
                "do": "good" if change <= most + _SLACK else "again",
                "own": midway(0.0, change),
            }
            for change in _differences(steps, dials, resolution)[: round(lines.one(dials=dials).number("swap_lines"))]
        )
        or None
    )


@computed("chucked.over", label="length of work for which the taper is told", unit="mm", rounding="length",
          needs=("lathe.dials",), tables=(_LINES,), how="a round length in the system of the dials")  # fmt: skip
def over(dials: str, lines: Table) -> float:
    return lines.one(dials=dials).number("taper_over_mm")


@computed("chucked.over_factor", label="taper of such work for each unit of the difference", unit="1",
          needs=("chucked.over", "chucked.spacing"), how="its length over the distance of the bands")  # fmt: skip
def over_factor(length: float, apart: float) -> float:
    return length_ratio(length, apart)


@computed(
    "chucked.bands",
    label="bands of the difference, and what each asks",
    kind="records",
    fields=(
        field("from", "mm", "difference", bound="least"), field("to", "mm", "difference", bound="least"),
        field("do", kind="text"),
    ),
    needs=("chucked.uncertainty?", "chucked.inside?", "chucked.outside?", "chucked.verdict_possible"),
    how="surely in limits, not told, surely out; where no verdict is possible, inside the doubt and beyond it",
)  # fmt: skip
def chucked_bands(unsure: float | None, inside: float | None, outside: float | None, verdict: bool) -> Rows | None:
    if verdict and inside is not None and outside is not None:
        return (
            {"from": 0.0, "to": inside, "do": "leave"},
            {"from": inside, "to": outside, "do": "again"},
            {"from": outside, "to": None, "do": "level"},
        )
    if unsure is None:
        return None
    return ({"from": 0.0, "to": unsure, "do": "again"}, {"from": unsure, "to": None, "do": "nearer"})


@computed(
    "chucked.table",
    label="difference of the bands that is acted on, and what it comes to",
    kind="records",
    fields=(
        field("difference", "mm", "difference"), field("leads", "mm", "difference"), field("taper", "mm", "difference"),
    ),
    needs=(
        "lathe.dials", "bar.micrometer_resolution?", "crib.caliper_resolution?", "chucked.uncertainty", "chucked.outside?",
        "chucked.verdict_possible", "chucked.spacing", "chucked.over",
    ),
    tables=(_STEPS,),
    how="the tool leads off by half of the difference over the distance of the bands; a taper goes with the length",
)  # fmt: skip
def chucked_table(
    dials: str, micrometer: float | None, caliper: float | None, unsure: float, outside: float | None, verdict: bool,
    apart: float, length: float, steps: Table,
) -> Rows | None:  # fmt: skip
    resolution = micrometer if micrometer is not None else caliper
    if resolution is None:
        return None
    judged = verdict and outside is not None

    def acted_on(difference: float) -> bool:
        return difference >= outside - _SLACK if judged and outside is not None else difference > unsure + _SLACK

    return (
        tuple(
            {
                "difference": difference,
                "leads": midway(0.0, difference),
                "taper": scaled_tolerance(difference, apart, length),
            }
            for difference in _differences(steps, dials, resolution)
            if acted_on(difference)
        )
        or None
    )


@computed("height.middle", label="middle of the heights that are allowed", unit="mm", rounding="difference",
          needs=("height.least", "height.most"), how="half of both together")  # fmt: skip
def height_middle(least: float, most: float) -> float:
    return midway(least, most)


@computed("height.table_step", label="step of the table of heights", unit="mm", rounding="difference",
          needs=("lathe.dials", "crib.indicator_division"), tables=(_LINES,),
          how="a round step, no finer than a division of the indicator")  # fmt: skip
def height_step(dials: str, division: float, lines: Table) -> float:
    return max(division, lines.one(dials=dials).number("height_step_mm"))


@computed(
    "height.table",
    label="height of the quill, and what would bring it to the middle",
    kind="records",
    fields=(
        field("height", "mm", "difference"), field("says", kind="text"), field("shim", "mm", "difference"),
    ),
    needs=("lathe.dials", "crib.indicator_division", "height.table_step", "height.least", "height.most", "height.middle"),
    tables=(_LINES,),
    how="what is low is packed up by the middle less the height; within a division of a limit nothing is told",
)  # fmt: skip
def height_table(dials: str, division: float, step: float, least: float, most: float, middle: float, lines: Table) -> Rows:
    row = lines.one(dials=dials)
    below, above = (round(row.number(f"height_steps_{side}")) for side in ("below", "above"))

    def line(side: str, height: float) -> Mapping[str, Any]:
        signed = -height if side == "below" else height
        low, high = signed < least - division - _SLACK, signed > most + division + _SLACK
        inside = least + division - _SLACK <= signed <= most - division + _SLACK
        do = "low" if low else "high" if high else "in" if inside else "again"
        return {"height": signed, "says": f"{side}-{do}", "shim": middle - signed if low else None}

    return (
        *(line("below", length_of_steps(place, step)) for place in range(below, 0, -1)),
        line("level", 0.0),
        *(line("above", length_of_steps(place, step)) for place in range(1, above + 1)),
    )


@computed("rework.middle", label="middle of the two sizes of the bore", unit="mm", rounding="fit",
          needs=("rework.low", "rework.high"), how="half of both together")  # fmt: skip
def rework_middle(low: float, high: float) -> float:
    return midway(low, high)


@computed(
    "rework.table",
    label="reading of the bore, and what it lacks of the middle",
    kind="records",
    fields=(field("reading", "mm", "fit"), field("do", kind="text"), field("opens", "mm", "fit")),
    needs=("lathe.dials", "rework.low", "rework.high", "rework.middle"),
    tables=(_LINES,),
    how="between the smallest and the largest bore it fits; what is smaller lacks the middle less the reading, on diameter",
)  # fmt: skip
def rework_table(dials: str, low: float, high: float, middle: float, lines: Table) -> Rows:
    row = lines.one(dials=dials)
    step = row.number("bore_step_mm")
    first = step_down(low, step) - length_of_steps(row.number("bore_steps_below"), step)
    rows: list[Mapping[str, Any]] = []
    for place in range(round(row.number("bore_steps"))):
        reading = first + (length_of_steps(place, step) if place else 0.0)
        do = "small" if reading < low - _SLACK else "large" if reading > high + _SLACK else "fits"
        rows.append({"reading": reading, "do": do, "opens": middle - reading if do == "small" else None})
    return tuple(rows)
