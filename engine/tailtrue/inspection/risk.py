"""The risks of the safety review, rated again from the cautions of the sheet and limits of its own."""

from collections.abc import Iterator

from tailtrue.inspection.rule import Fault
from tailtrue.inspection.sheet import Sheet
from tailtrue.inspection.spelt import words_of
from tailtrue.parts import Caution
from tailtrue.review import Rating, ReviewedHazard

_ORDER = {"eliminate": 1, "substitute": 2, "guard": 3, "instruct": 4, "protect": 5}
_AT_MOST = {"eliminate": 2, "substitute": 1, "guard": 1, "instruct": 1, "protect": 1}
_HARD = frozenset({"eliminate", "substitute", "guard"})
_GRAVE, _KILLS, _SCALE = 4, 5, 5
_CLASSES = (("low", 1, 4), ("moderate", 5, 9), ("high", 10, 16), ("extreme", 17, 25))


def _where(hazard: ReviewedHazard) -> str:
    return f"safety review, hazard {hazard.number}"


def each_once(sheet: Sheet) -> Iterator[Fault]:
    """Every hazard of the sheet is in the review once, as its caution has it, and with every activity that meets it."""
    shown: dict[str, Caution] = {}
    for _, caution in sheet.cautions:
        shown.setdefault(caution.id, caution)
    review = sheet.procedure.safety_review
    listed: dict[str, ReviewedHazard] = {}
    numbers: set[str] = set()
    for hazard in review.hazards:
        if hazard.caution in listed:
            yield Fault(_where(hazard), f'the hazard "{hazard.caution}" is listed twice')
        if hazard.number in numbers:
            yield Fault(_where(hazard), "two hazards have this number")
        listed.setdefault(hazard.caution, hazard)
        numbers.add(hazard.number)
    for name in shown:
        if name not in listed:
            yield Fault("safety review", f'the sheet warns of "{name}" and the review leaves it out')
    for name, hazard in listed.items():
        if name not in shown:
            yield Fault(_where(hazard), f'nothing on the sheet warns of "{name}"')
        else:
            yield from _like_its_caution(sheet, hazard, shown[name])


def _like_its_caution(sheet: Sheet, hazard: ReviewedHazard, caution: Caution) -> Iterator[Fault]:
    said = (hazard.hazard, hazard.harm, hazard.signal, hazard.before.severity, hazard.before.likelihood)
    if said != (caution.hazard, caution.harm, caution.signal, caution.severity, caution.likelihood):
        yield Fault(_where(hazard), f'it does not say what the caution "{caution.id}" says')
    met = tuple(part.id for part in sheet.procedure.safety_review.work if set(part.activities) & set(caution.answers))
    if not met:
        yield Fault(_where(hazard), "no activity of the review meets it")
    elif hazard.parts != met:
        yield Fault(_where(hazard), f"it belongs to the activities {', '.join(met)}, the review names others")


def best_controls_first(sheet: Sheet) -> Iterator[Fault]:
    """What could take a hazard away is weighed first; every hazard has a control, the strongest kind before the weaker."""
    yield from _ways_out(sheet)
    for hazard in sheet.procedure.safety_review.hazards:
        places = [_ORDER.get(control.level, 0) for control in hazard.controls]
        if 0 in places:
            yield Fault(_where(hazard), "a control is of no kind of the hierarchy")
        if not places:
            yield Fault(_where(hazard), "no control answers this hazard")
        if places != sorted(places):
            yield Fault(_where(hazard), "its controls are not in the order of the hierarchy")


def _ways_out(sheet: Sheet) -> Iterator[Fault]:
    ways = sheet.procedure.safety_review.eliminations
    if not ways:
        yield Fault("safety review", "no way to take a hazard away is weighed")
    for way in ways:
        if not words_of(way.because).strip():
            yield Fault(f"safety review, elimination {way.id}", f"it is {way.verdict} and nothing says why")
        if not way.sources:
            yield Fault(f"safety review, elimination {way.id}", "it names no source")


def rated_right(sheet: Sheet) -> Iterator[Fault]:
    """Scores are products, classes are those of the matrix, and no control lowers more than it may."""
    for hazard in sheet.procedure.safety_review.hazards:
        before, after = hazard.before, hazard.after
        for when, rating in (("before", before), ("after", after)):
            yield from _sound(_where(hazard), when, rating)
        if after.severity != before.severity:
            yield Fault(_where(hazard), "a control changes the severity, and none of them can")
        kinds = {control.level for control in hazard.controls if control.state == "counted"}
        least = max(1, before.likelihood - sum(_AT_MOST.get(kind, 0) for kind in kinds))
        if not kinds & _HARD and before.severity >= _GRAVE:
            least = max(least, min(2, before.likelihood))
        if not least <= after.likelihood <= before.likelihood:
            said = f"likelihood {before.likelihood} is brought to {after.likelihood}"
            yield Fault(_where(hazard), f"{said}; what is counted allows {least} at the lowest")


def _sound(where: str, when: str, rating: Rating) -> Iterator[Fault]:
    if not (1 <= rating.severity <= _SCALE and 1 <= rating.likelihood <= _SCALE):
        yield Fault(where, f"the rating {when} is off the scale of one to five")
    elif rating.score != rating.severity * rating.likelihood:
        yield Fault(where, f"the score {when} is {rating.score} and should be {rating.severity * rating.likelihood}")
    elif rating.band != _class(rating.severity, rating.likelihood):
        due = _class(rating.severity, rating.likelihood)
        yield Fault(where, f'the class {when} is "{rating.band}" and should be "{due}"')


def _class(severity: int, likelihood: int) -> str:
    score = severity * likelihood
    name = next(band for band, low, high in _CLASSES if low <= score <= high)
    return "moderate" if name == "low" and severity == _KILLS else name


def matrix_declared(sheet: Sheet) -> Iterator[Fault]:
    """The matrix printed is the one the hazards are rated on."""
    matrix = sheet.procedure.safety_review.matrix
    where = "safety review, matrix"
    scale = range(1, _SCALE + 1)
    if len(matrix.severities) != _SCALE or len(matrix.likelihoods) != _SCALE:
        yield Fault(where, "a scale does not have five words")
    if matrix.cells != tuple(tuple(_class(severity, likelihood) for severity in scale) for likelihood in scale):
        yield Fault(where, "a cell does not carry the class of its score")
    if tuple((one.band, one.low, one.high) for one in matrix.classes) != _CLASSES:
        yield Fault(where, "the classes are not those the hazards are rated by")
    for level, steps in matrix.lowers.items():
        if steps > _AT_MOST.get(level, 0):
            yield Fault(where, f'"{level}" is said to lower by {steps} steps, {_AT_MOST.get(level, 0)} is the most')
    if not matrix.sources:
        yield Fault(where, "the matrix names no source")


def high_held(sheet: Sheet) -> Iterator[Fault]:
    """What stays high has more than an instruction against it, a hold, or somebody who accepts it; nothing is extreme."""
    review = sheet.procedure.safety_review
    for hazard in review.hazards:
        if hazard.after.band == "extreme":
            yield Fault(_where(hazard), "it stays extreme, so the job is not done this way")
        if hazard.after.band not in ("high", "extreme"):
            if hazard.held is not None:
                yield Fault(_where(hazard), "it is listed among what stays high and does not")
            continue
        if hazard.held is None:
            yield Fault(_where(hazard), "it stays high and nothing holds it")
        elif hazard.held.by == "control":
            if not any(control.state == "counted" and control.level in _HARD for control in hazard.controls):
                yield Fault(_where(hazard), "it stays high, held by a control that is not there")
        elif hazard.held.by == "hold":
            yield from _hold_there(sheet, hazard, hazard.held.hold_step)
        elif not review.accepts.role.strip():
            yield Fault(_where(hazard), "it stays high and nobody is named who accepts it")


def _hold_there(sheet: Sheet, hazard: ReviewedHazard, number: str | None) -> Iterator[Fault]:
    answers = {answer for _, caution in sheet.cautions if caution.id == hazard.caution for answer in caution.answers}
    step = next((placed.step for placed in sheet.steps if placed.step.number == number), None)
    if step is None or step.hold is None:
        yield Fault(_where(hazard), f"it stays high, held by step {number}, and there is no hold")
    elif not answers & set(step.activities):
        yield Fault(_where(hazard), f"it stays high, held by step {number}, where this hazard is not met")
