"""What each test sees of each cause: a row of coefficients for every place that it reads."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import sqrt
from statistics import fmean
from typing import Any

from tailtrue.calc.causes import (
    LOCAL_WEAR,
    PATH_LEAN,
    TAILSTOCK_HEIGHT,
    TOOL_WEAR,
    bed_bow_term,
    between_centres_row,
    chucked_row,
    level_row,
    riding_the_bed,
    sweep_height_row,
    sweep_row,
    tool_height_term,
    wear_term,
)
from tailtrue.calc.estimation import Reading
from tailtrue.calc.indicator import sweep
from tailtrue.calc.sides import sign_of_side
from tailtrue.diagnosis.knowing import Known
from tailtrue.diagnosis.setup import Setup
from tailtrue.diagnosis.tests_file import Values

Row = dict[str, float]

SETTING = "setting "
CUT = (
    "between_centres", "cut_order_reversed", "bar_turned_end_for_end", "more_spring_passes", "centre_turned", "clamped_anew",
)  # fmt: skip
_K = 2.0  # a doubt as people give it, over its standard uncertainty
_SIGNED_BY_LENGTH = ("eccentric-centre", "centre-holes", "clamping")


@dataclass(frozen=True)
class Model:
    """Rows and readings of tests on one lathe. `first` holds what was said of the first skim between centres."""

    setup: Setup
    knowledge: Known
    first: Values

    def readings(self, kind: str, values: Values, step_mm: float = 0.0) -> list[Reading]:
        """The readings of one test that was made; `step_mm` is the last place that was written."""
        if kind in CUT:
            return list(self._cut(kind, values, step_mm))
        if kind == "chucked_bar":
            return list(self._chucked_bar(kind, values, step_mm))
        # The scatter of clamping is no place, and is weighed by itself.
        others = {
            "level": self._level, "sweep": self._sweep, "height": self._height,
            "indicator_on_collars": self._indicator_on_collars,
        }  # fmt: skip
        return list(others[kind](kind, values)) if kind in others else []

    def planned(self, kind: str) -> list[Reading]:
        """The readings that a test would bring; their values do not count."""
        return self.readings(kind, self._plan(kind))

    @property
    def overhang_mm(self) -> float:
        """Point of the tailstock centre back to the middle of its base."""
        return float(self.first.get("overhang_of_centre", self.knowledge.figures["overhang_of_centre"]))

    def _plan(self, kind: str) -> Values:
        figures, shares = self.knowledge.figures, self.knowledge.tests[kind].stations
        if kind in CUT:
            return {"head": (0.0, 0.0), "tail": (0.0, 0.0)} | {
                collar: self.first[collar] for collar in ("head", "middle", "tail") if collar in self.first
            }
        if kind == "chucked_bar":
            return {"stations": [one * figures["planned_stick_out"] for one in shares], "diameters": [1.0] * len(shares)}
        if kind == "level":
            places = [one * figures["planned_level"] for one in shares]
            return {"stations": places, "readings": [0.0] * len(shares), "plus_is": "front low"}
        nought = dict.fromkeys(
            ("front", "top", "rear", "bottom", "sag", "head", "tail", "far_side_head", "far_side_tail"), 0.0
        )
        return {**nought, "where": "outside"}

    def doubt(self, of: str, values: Values, readings: int = 1, step: float = 0.0) -> float:
        """Standard uncertainty of what was read in one place."""
        (row,) = self.setup.tables["diagnosis/doubts"].where(situation=of)
        said = values.get("give_or_take")
        if said is not None:
            return float(said[0] if isinstance(said, Sequence) else said) / _K
        rounding = step / sqrt(12)
        return sqrt(row.number("one_reading") ** 2 / readings + row.number("beside") ** 2 + rounding**2)

    def _factor(self, cause: str, kind: str) -> float:
        rows = self.setup.tables["diagnosis/signatures"].where(component=cause, situation=kind)
        return sum(row.number("factor") for row in rows)

    def _collars(self, values: Values) -> Iterator[tuple[float, Sequence[float]]]:
        """Station and readings of each collar, from the headstock on."""
        yield self.setup.head_mm, values["head"]
        if "middle" in values:
            yield float(self.first["middle_station"]), values["middle"]
        yield self.setup.tail_mm, values["tail"]

    def _cut(self, kind: str, values: Values, step: float) -> Iterator[Reading]:
        collars = list(self._collars(values))
        zero = fmean(collars[0][1])
        for number, (station, sizes) in enumerate(collars):
            row = self._diameter(kind, station, fmean(sizes), self._cut_before(kind, number, len(collars)))
            yield Reading(row, fmean(sizes) - zero, self.doubt("collars", values, len(sizes), step))

    def _cut_before(self, kind: str, number: int, collars: int) -> int | None:
        """How many collars the tool had cut before this one; None where nobody said the order."""
        first = self.first.get("cut_first")
        if first is None:
            return None
        from_head = (first == "head") != (kind == "cut_order_reversed")
        return number if from_head else collars - 1 - number

    def _diameter(self, kind: str, station: float, diameter: float, before: int | None) -> Row:
        setup, span = self.setup, self.setup.span_mm
        sign, share = sign_of_side(setup.tool_side), station / span
        row = riding_the_bed(between_centres_row(station, span, setup.tool_side, kind), span, self.overhang_mm)
        row[LOCAL_WEAR] = self._worn(station)
        if before is not None:
            row[TOOL_WEAR] = self._factor("tool-wear", kind) * wear_term(before)[TOOL_WEAR]
        # A bar on its centres, and a soft end, give way with the square of these shares.
        shapes = {"bar-bends": 2 * (4 * share * (1 - share)) ** 2, "soft-end": 2 * share**2}
        shapes |= dict.fromkeys(_SIGNED_BY_LENGTH, -2 * sign * share)
        shapes["bowed-path"] = bed_bow_term(station, 0.0, span, setup.tool_side)[LOCAL_WEAR]
        for cause, shape in shapes.items():
            row[self.knowledge.causes[cause].unknown] = self._factor(cause, kind) * shape
        if height := self.first.get("tool_height"):
            row[TAILSTOCK_HEIGHT] = tool_height_term(height, diameter, station, span)[TAILSTOCK_HEIGHT]
        return row

    def _worn(self, station: float) -> float:
        reach = self.knowledge.figures["wear_reach"]
        return bed_bow_term(station, -reach, reach, self.setup.tool_side)[LOCAL_WEAR]

    def _chucked_bar(self, kind: str, values: Values, step: float) -> Iterator[Reading]:
        places = sorted(zip(values["stations"], values["diameters"], strict=True))
        first = values.get("cut_first")
        for number, (station, size) in enumerate(places):
            row = chucked_row(station, self.setup.tool_side, kind)
            row[LOCAL_WEAR] = self._worn(station)
            if first is not None:
                before = number if first == "chuck" else len(places) - 1 - number
                row[TOOL_WEAR] = self._factor("tool-wear", kind) * wear_term(before)[TOOL_WEAR]
            yield Reading(row, size - places[0][1], self.doubt("chucked", values, 1, step))

    def _level(self, kind: str, values: Values) -> Iterator[Reading]:
        height = values.get("height_of_centres", self.setup.height_of_centres_mm)
        each = level_row(1.0, height)[PATH_LEAN]
        plus = 1 if values["plus_is"] == "front low" else -1
        for station, reading in zip(values["stations"], values["readings"], strict=True):
            # A roll of the carriage shifts the path by its height over the ways; the level shows the roll.
            worn = self._worn(station) / (2 * sign_of_side(self.setup.tool_side)) * each
            row = {PATH_LEAN: each * station, LOCAL_WEAR: worn, SETTING + kind: 1.0}
            yield Reading(row, plus * reading, self.doubt("level", values))

    def _sweep(self, _kind: str, values: Values) -> Iterator[Reading]:
        span = values.get("station", self.setup.span_mm)
        each = self.doubt("sweep", values)
        (sag,) = self.setup.tables["diagnosis/doubts"].where(situation="sag")
        found = swept(values)
        yield Reading(riding_the_bed(sweep_row(span), span, self.overhang_mm), found[0], each / sqrt(2))
        yield Reading(sweep_height_row(span), found[1], sqrt(each**2 / 2 + sag.number("beside") ** 2))

    def _height(self, kind: str, values: Values) -> Iterator[Reading]:
        each = self.doubt("height", values)
        for station, size in ((self.setup.head_mm, values["head"]), (self.setup.tail_mm, values["tail"])):
            yield Reading({TAILSTOCK_HEIGHT: station / self.setup.span_mm, SETTING + kind: 1.0}, size, each)

    def _indicator_on_collars(self, kind: str, values: Values) -> Iterator[Reading]:
        for number, (end, station) in enumerate((("head", self.setup.head_mm), ("tail", self.setup.tail_mm))):
            last = 1 + ("middle" in self.first)
            row = self._diameter(kind, station, self.setup.span_mm, self._cut_before(kind, number * last, 1 + last))
            row.pop(TAILSTOCK_HEIGHT, None)
            yield Reading(row | {SETTING + kind: 1.0}, values[f"far_side_{end}"], self.doubt("traverse", values))


def swept(values: Mapping[str, Any]) -> tuple[float, float, float]:
    """Offset toward the operator, height with the droop taken off, and closure of a sweep. [mm, mm, mm]"""
    found = sweep(values["front"], values["top"], values["rear"], values["bottom"], values["sag"], values["where"] == "bore")
    return found.offset_to_operator_mm, found.height_mm, found.closure_mm
