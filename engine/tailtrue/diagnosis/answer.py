"""From tests to an answer: what is named, what cannot be told apart, what the readings settle, which test is next."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import combinations, permutations
from statistics import fmean
from typing import Literal

from tailtrue.calc.causes import HEADSTOCK_YAW, PATH_LEAN, TAILSTOCK_ON_BED
from tailtrue.calc.clamping import ClampingScatter, clamping_scatter
from tailtrue.calc.estimation import Estimate, Fit, Reading
from tailtrue.calc.further_tests import NextTest
from tailtrue.calc.readings import thread_slip
from tailtrue.calc.sides import sign_of_side
from tailtrue.calc.validity import OutOfRange
from tailtrue.diagnosis.judging import Judged, against_bar, against_table
from tailtrue.diagnosis.knowing import Cause, Known, Test
from tailtrue.diagnosis.model import CUT, SETTING, Model, swept
from tailtrue.diagnosis.setup import Setup
from tailtrue.diagnosis.tests_file import Made, TestsWrong, Values
from tailtrue.diagnosis.weighing import Expected, Explanation, Scatter, separation, shares, weigh
from tailtrue.errors import Problem

Answer = Literal["nothing", "named", "cannot-tell", "unexplained"]

NO_FAULT = "no-fault"
AXIS = "axis"
_OF_TAPER = ("bed-twist", "headstock", "tailstock")
_MOST_COMPARED = 6


@dataclass(frozen=True)
class Diagnosis:
    """What the tests came to. Causes by id; estimates in mm, slopes in mm for each mm."""

    answer: Answer
    named: tuple[str, ...]
    rivals: tuple[str, ...]
    weights: Mapping[str, float]
    best: Explanation
    estimates: Mapping[str, Estimate]
    judged: Mapping[str, Judged]
    not_settled: tuple[str, ...]
    left_out: Mapping[str, float]
    next_test: Test | None
    clamping: ClampingScatter | None
    alone: Mapping[str, Explanation]
    made: Made = field(repr=False)
    setup: Setup = field(repr=False)
    knowledge: Known = field(repr=False)


def answer(made: Made, setup: Setup, knowledge: Known) -> Diagnosis:
    """The answer to a file of tests. Raises TestsWrong where a value is outside what a formula holds for."""
    left_out = _left_out(made, setup, knowledge)
    kinds = [kind for kind in made.tests if kind not in left_out]
    model = Model(setup, knowledge, made.tests.get("between_centres", {}))
    readings = _readings(model, kinds, made)
    scatter = _scatter(model, made)
    expected = {one.unknown: Expected(one.usual_size, one.chance, one.positive) for one in knowledge.causes.values()}
    explanations = weigh(readings, expected, int(knowledge.figures["most_at_once"]), scatter)
    ids = {one.unknown: one.id for one in knowledge.causes.values()}
    weights = {ids[name]: weight for name, weight in shares(explanations).items()}
    sure = _Sure(
        model, readings, [knowledge.causes[one] for one in weights if weights[one] >= knowledge.figures["named_from"]]
    )
    said = _Said(knowledge, weights, explanations, sure)
    return Diagnosis(
        said.answer, said.named, said.rivals, weights, explanations[0], sure.estimates, _judged(sure, made, setup),
        _not_settled(knowledge, weights, sure), left_out,
        _Next(model, readings, expected, sure, said, kinds).test(),
        clamping_scatter(made["clamping"]["released"], made["clamping"]["clamped"]) if "clamping" in made else None,
        _alone(explanations, ids), made, setup, knowledge,
    )  # fmt: skip


def _readings(model: Model, kinds: Sequence[str], made: Made) -> list[Reading]:
    readings: list[Reading] = []
    problems = []
    middle = model.first.get("middle_station")
    if middle is not None and not model.setup.head_mm < middle < model.setup.tail_mm:
        wrong = f"is not between the other two collars, at {model.setup.head_mm:g} mm and {model.setup.tail_mm:g} mm"
        do = "measure from the point of the headstock centre"
        problems.append(Problem(made.places["between_centres"], "middle_station", wrong, do))
    for kind in kinds:
        try:
            readings += model.readings(kind, made[kind], made.steps_mm[kind])
        except OutOfRange as wrong:
            problems.append(Problem(made.places[kind], f"[{kind}]", str(wrong), "look at the lengths and their units"))
    if problems:
        raise TestsWrong(problems)
    return readings


def _left_out(made: Made, setup: Setup, knowledge: Known) -> dict[str, float]:
    """Tests that contradict themselves, and by how much; TestsWrong when nothing else was made."""
    found = {kind: gap for kind in CUT if kind in made and (gap := _slip(made[kind], setup))}
    if "sweep" in made:
        closure = abs(swept(made["sweep"])[2])
        if closure > max(knowledge.figures["closure"], 2 * made["sweep"].get("give_or_take", 0.0)):
            found["sweep"] = closure
    if "indicator_on_collars" in made:
        values = made["indicator_on_collars"]
        change = abs(values["tool_side_tail"] - values["tool_side_head"])
        if change > max(knowledge.figures["tool_side"], 2 * values.get("give_or_take", 0.0)):
            found["indicator_on_collars"] = change
    if set(found) == set(made.tests):
        do = "read again; look at the sleeve of the micrometer, and that nothing moves during a sweep"
        raise TestsWrong(Problem(made.places[kind], f"[{kind}]", "contradicts itself", do) for kind in found)
    return found


def _slip(values: Values, setup: Setup) -> float:
    """A gap between readings that looks like a turn of the thimble taken wrong, or nought. [mm]"""
    row = setup.tables["measuring/thimble"].one(system=setup.dials)
    collars = [values[place] for place in ("head", "middle", "tail") if place in values]
    gaps = [max(one) - min(one) for one in collars]
    gaps += [abs(fmean(second) - fmean(first)) for first, second in combinations(collars, 2)]
    return max((gap for gap in gaps if thread_slip(gap, row.number("turn_mm"), row.number("near_mm"))), default=0.0)


def _alone(explanations: Sequence[Explanation], ids: Mapping[str, str]) -> dict[str, Explanation]:
    """The explanation by each cause with no other beside it, and by no fault."""
    return {ids[one.causes[0]] if one.causes else NO_FAULT: one for one in explanations if len(one.causes) < 2}


def _scatter(model: Model, made: Made) -> Scatter | None:
    if "clamping" not in made:
        return None
    clamped = made["clamping"]["clamped"]
    middle = fmean(clamped)
    squares = sum((one - middle) ** 2 for one in clamped)
    cause = model.knowledge.causes["clamping"].unknown
    return Scatter(cause, squares, len(clamped) - 1, model.doubt("clamping", made["clamping"]))


def _not_settled(knowledge: Known, weights: Mapping[str, float], sure: "_Sure") -> tuple[str, ...]:
    """Causes that these tests leave open whatever is wrong: main ones by rank, others that no reading sees."""
    causes = knowledge.causes.values()
    return tuple(one.id for one in causes if (one.id not in sure.estimates if one.main else one.id not in weights))


class _Sure:
    """What the readings settle by rank alone, whatever is likely: main causes, and others that were named."""

    def __init__(self, model: Model, readings: Sequence[Reading], named: Sequence[Cause]) -> None:
        causes = model.knowledge.causes
        kept = {one.unknown for one in (*causes.values(), *named) if one.main or one in named}
        self.model, self.kept = model, kept
        self.readings = self.of(readings)
        self.fit = Fit.of(self.readings) if self.readings else None
        self.estimates = {
            one.id: self.fit.estimate(self.combination(one))
            for one in causes.values()
            if self.fit and one.unknown in kept and self.fit.sees(self.combination(one))
        }
        axis = {HEADSTOCK_YAW: 1.0, PATH_LEAN: -1.0}
        if self.fit and self.fit.sees(axis):
            self.estimates[AXIS] = self.fit.estimate(axis)

    def of(self, readings: Sequence[Reading]) -> list[Reading]:
        """The readings with the causes that are kept, settings always; what sees nothing then is left out."""
        found = []
        for one in readings:
            row = {name: factor for name, factor in one.row.items() if name in self.kept or name.startswith(SETTING)}
            if any(row.values()):
                found.append(one._replace(row=row))
        return found

    def combination(self, cause: Cause) -> dict[str, float]:
        """What stands for a cause: itself; of the tailstock, its place from the path of the tool."""
        if cause.unknown == TAILSTOCK_ON_BED and self.model.overhang_mm:
            return {TAILSTOCK_ON_BED: 1.0, PATH_LEAN: self.model.overhang_mm}
        return {cause.unknown: 1.0}

    def tied(self, cause: Cause) -> set[str]:
        """Unknowns that may change together with a cause without any reading seeing it."""
        blind = self.fit.blind if self.fit else ()
        return {name for row in blind if cause.unknown in row for name in row}


class _Said:
    """What is named, and what cannot be told apart."""

    def __init__(
        self, knowledge: Known, weights: Mapping[str, float], explanations: Sequence[Explanation], sure: _Sure
    ) -> None:
        figures, causes = knowledge.figures, knowledge.causes
        heavy = [one for one, weight in weights.items() if weight >= figures["rival_from"]]
        nothing = next(one.weight for one in explanations if not one.causes)
        self.named = tuple(
            one for one in heavy
            if weights[one] >= figures["named_from"] and (not causes[one].main or one in sure.estimates)
        )  # fmt: skip
        rivals = [one for one in heavy if one not in self.named]
        self.unsettled = [causes[one] for one in rivals if causes[one].main and one not in sure.estimates]
        tied = {name for cause in self.unsettled for name in sure.tied(cause)}
        rivals += [one.id for one in causes.values() if one.unknown in tied and one.id not in (*rivals, *self.named)]
        if nothing >= figures["rival_from"]:
            rivals.append(NO_FAULT)
        worse = explanations[0].chance_of_worse
        self.rivals = tuple(rivals)
        self.explanations = explanations
        self.answer: Answer
        if worse is not None and worse < figures["unexplained_below"]:
            self.answer, self.named, self.rivals = "unexplained", (), ()
        elif self.named:
            self.answer = "named"
        else:
            self.answer = "cannot-tell" if explanations[0].causes else "nothing"


class _Next:
    """The one further test that would tell most."""

    def __init__(
        self, model: Model, readings: Sequence[Reading], expected: Mapping[str, Expected], sure: _Sure, said: _Said,
        made: Sequence[str],
    ) -> None:  # fmt: skip
        self.model, self.readings, self.expected, self.sure, self.said = model, readings, expected, sure, said
        tests = model.knowledge.tests.values()
        self.candidates = {
            one.id: model.planned(one.id) for one in tests if one.id not in made and (not one.with_ or one.with_ in made)
        }

    def test(self) -> Test | None:
        """The test, or None where none would tell more."""
        if self.said.answer == "unexplained":
            return None
        causes = self.model.knowledge.causes
        open_ones = self.said.unsettled
        if not open_ones and self.said.answer != "cannot-tell":
            open_ones = [causes[one] for one in _OF_TAPER if one not in self.sure.estimates]
        return self._settling(open_ones) or self._telling()

    def _settling(self, causes: Sequence[Cause]) -> Test | None:
        """What settles the first of causes that rank alone leaves open."""
        tests = self.model.knowledge.tests
        if not self.sure.fit:
            return None
        planned = {name: self.sure.of(rows) for name, rows in self.candidates.items()}
        for cause in causes:
            found = NextTest.ranked(self.sure.fit, planned, self.sure.combination(cause))
            settled = [one for one in found if one.standard_uncertainty is not None]
            if settled:
                return tests[settled[0].name]
        return None

    def _telling(self) -> Test | None:
        """What sets the likeliest explanations furthest apart."""
        compared = self.said.explanations[:_MOST_COMPARED]
        if len(compared) < 2 or not self.said.rivals:
            return None
        before = self._apart(compared, [])
        gains = {name: self._apart(compared, rows) - before for name, rows in self.candidates.items() if rows}
        tests = self.model.knowledge.tests
        best = max(gains, key=lambda name: (round(gains[name], 3), -tests[name].minutes), default=None)
        worth = self.model.knowledge.figures["worth_a_test"]
        return tests[best] if best is not None and gains[best] >= worth else None

    def _apart(self, compared: Sequence[Explanation], planned: Sequence[Reading]) -> float:
        readings = [*self.readings, *planned]
        enough = self.model.knowledge.figures["told_apart"]
        weights = total = 0.0
        for true, other in permutations(compared, 2):
            weight = true.weight * other.weight
            weights += weight
            total += weight * min(separation(readings, self.expected, true, other), enough)
        return total / weights


def _judged(sure: _Sure, made: Made, setup: Setup) -> dict[str, Judged]:
    """Every estimate that a limit speaks of."""
    found = {}
    estimates = sure.estimates
    if "tailstock" in estimates:
        found["tailstock"] = against_bar(setup, estimates["tailstock"])
    if "bed-twist" in estimates and "level" in made:
        stations = made["level"]["stations"]
        height = made["level"].get("height_of_centres", setup.height_of_centres_mm)
        change = 1000 * (max(stations) - min(stations)) / height
        found["bed-twist"] = against_table(setup, "bed-twist", estimates["bed-twist"], change)
    over = sure.model.knowledge.figures[f"over_{setup.dials}"]
    if AXIS in estimates:
        found[AXIS] = against_table(setup, "headstock", estimates[AXIS], sign_of_side(setup.tool_side) * over, over)
    if "headstock-pitch" in estimates:
        found["headstock-pitch"] = against_table(setup, "headstock-pitch", estimates["headstock-pitch"], over, over)
    if "height" in estimates:
        found["height"] = against_table(setup, "height", estimates["height"], 1.0)
    return found
