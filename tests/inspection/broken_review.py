"""Safety reviews that leave something out or make it look smaller than it is."""

from collections.abc import Callable
from typing import Any

from tailtrue.parts import Blank
from tailtrue.review import CheckList, Control, Held, Rating, ReviewedHazard

from .broken import breaks
from .broken_bench import _job
from .changed import Job, reviewed_anew, with_list_of_press, with_sheet, with_step
from .sample import procedure
from .sample_pieces import caution


def _with_review(**changes: Any) -> Job:
    return with_sheet(safety_review=procedure().safety_review.model_copy(update=changes))


def _hazard(caution: str) -> ReviewedHazard:
    return next(one for one in procedure().safety_review.hazards if one.caution == caution)


def _with_hazard(name: str, /, **changes: Any) -> Job:
    hazards = procedure().safety_review.hazards
    return _with_review(hazards=tuple(one.model_copy(update=changes) if one.caution == name else one for one in hazards))


def _rated(severity: int, likelihood: int, band: str) -> Rating:
    return Rating.model_validate(
        {"severity": severity, "likelihood": likelihood, "score": severity * likelihood, "band": band}
    )


def _told(*states: str) -> tuple[Control, ...]:
    return tuple(Control(level="instruct", text="stand aside", state=state) for state in states)  # type: ignore[arg-type]


@breaks("V90", "safety review")
def hazard_left_out() -> Job:
    return _with_review(hazards=procedure().safety_review.hazards[1:])


@breaks("V90", "safety review, hazard H1")
def hazard_listed_twice() -> Job:
    hazards = procedure().safety_review.hazards
    return _with_review(hazards=(*hazards, hazards[0]))


@breaks("V90", "safety review, hazard H2")
def hazard_that_no_caution_names() -> Job:
    return _with_hazard("chips", caution="dragons")


@breaks("V90", "safety review, hazard H2")
def hazard_called_less_grave_than_its_caution() -> Job:
    return _with_hazard("chips", before=_rated(2, 2, "low"), after=_rated(2, 1, "low"))


@breaks("V90", "safety review, hazard H1")
def hazard_told_of_one_activity_and_met_in_more() -> Job:
    return _with_hazard("gloves", parts=_hazard("gloves").parts[:1])


@breaks("V91", "safety review, hazard H1")
def weak_control_before_the_strong_one() -> Job:
    return _with_hazard("gloves", controls=_hazard("gloves").controls[::-1])


@breaks("V91", "safety review, hazard H2", also="V34 V92")
def hazard_without_a_control() -> Job:
    return _with_hazard("chips", controls=())


@breaks("V91", "safety review, elimination no-solvent", also="V34")
def elimination_declined_without_a_reason() -> Job:
    ways = procedure().safety_review.eliminations
    return _with_review(eliminations=(ways[0], ways[1].model_copy(update={"because": (" ",)})))


@breaks("V91", "safety review, elimination no-polishing")
def elimination_without_a_source() -> Job:
    ways = procedure().safety_review.eliminations
    return _with_review(eliminations=(ways[0].model_copy(update={"sources": ()}), ways[1]))


@breaks("V92", "safety review, hazard H1")
def likelihood_lowered_further_than_the_controls_go() -> Job:
    return _with_hazard("gloves", controls=_told("counted"))


@breaks("V92", "safety review, hazard H1")
def a_guard_that_nobody_saw_lowers_the_likelihood() -> Job:
    guard = Control(level="guard", text="guard shut", state="to-see")
    return _with_hazard("gloves", controls=(guard, *_told("counted")))


@breaks("V92", "safety review, hazard H2")
def severity_lowered_by_an_instruction() -> Job:
    return _with_hazard("chips", after=_rated(2, 1, "low"))


@breaks("V92", "safety review, hazard H2")
def likelier_after_the_controls_than_before() -> Job:
    return _with_hazard("chips", after=_rated(3, 3, "moderate"))


@breaks("V92", "safety review, hazard H2")
def score_that_is_no_product() -> Job:
    return _with_hazard("chips", after=_rated(3, 1, "low").model_copy(update={"score": 2}))


@breaks("V92", "safety review, hazard H1")
def harm_that_kills_called_low() -> Job:
    return _with_hazard("gloves", after=_rated(5, 1, "low"))


@breaks("V93", "safety review, matrix")
def matrix_with_a_cell_of_the_wrong_class() -> Job:
    matrix = procedure().safety_review.matrix
    rows = (("low",) * 5, *matrix.cells[1:])
    return _with_review(matrix=matrix.model_copy(update={"cells": rows}))


@breaks("V93", "safety review, matrix")
def matrix_that_lets_an_instruction_lower_by_two() -> Job:
    matrix = procedure().safety_review.matrix
    return _with_review(matrix=matrix.model_copy(update={"lowers": {**matrix.lowers, "instruct": 2}}))


@breaks("V93", "safety review, matrix")
def matrix_with_classes_moved_up() -> Job:
    matrix = procedure().safety_review.matrix
    classes = (matrix.classes[0].model_copy(update={"high": 9}), *matrix.classes[1:])
    return _with_review(matrix=matrix.model_copy(update={"classes": classes}))


@breaks("V94", "safety review, hazard H1")
def high_and_held_by_nothing() -> Job:
    return _with_hazard("gloves", controls=_told("counted"), after=_rated(5, 2, "high"), held=None)


@breaks("V94", "safety review, hazard H1")
def high_and_held_by_a_control_that_is_not_there() -> Job:
    return _with_hazard("gloves", controls=_told("counted"), after=_rated(5, 2, "high"), held=Held(by="control"))


@breaks("V94", "safety review, hazard H1")
def high_and_held_at_a_step_without_a_hold() -> Job:
    held = Held(by="hold", hold_step="1.3")
    return _with_hazard("gloves", controls=_told("counted"), after=_rated(5, 2, "high"), held=held)


@breaks("V94", "safety review, hazard H1")
def high_and_held_where_the_hazard_is_not_met() -> Job:
    held = Held(by="hold", hold_step="3.2")
    return _with_hazard("gloves", controls=_told("counted"), after=_rated(5, 2, "high"), held=held)


@breaks("V94", "safety review, hazard H1", also="V34 V97")
def high_and_accepted_by_nobody() -> Job:
    accepts = procedure().safety_review.accepts.model_copy(update={"role": " "})
    changed, shop = _with_hazard("gloves", controls=_told("counted"), after=_rated(5, 2, "high"), held=Held(by="acceptance"))
    review = changed.safety_review.model_copy(update={"accepts": accepts})
    return changed.model_copy(update={"safety_review": review}), shop


@breaks("V94", "safety review, hazard H2")
def listed_as_high_without_being_so() -> Job:
    return _with_hazard("chips", held=Held(by="acceptance"))


@breaks("V94", "safety review, hazard H1", also="V90")
def extreme_and_done_all_the_same() -> Job:
    return _with_hazard(
        "gloves", before=_rated(5, 5, "extreme"), controls=_told("counted"), after=_rated(5, 4, "extreme"),
        held=Held(by="acceptance"),
    )  # fmt: skip


def _with_wear(place: int, **changes: Any) -> Job:
    states = list(procedure().safety_review.wear)
    states[place] = states[place].model_copy(update=changes)
    return _with_review(wear=tuple(states))


@breaks("V95", "safety review, wear in state live")
def gloves_worn_where_the_spindle_turns() -> Job:
    return _with_wear(1, wear=(("thin nitrile gloves",),))


@breaks("V95", "safety review, wear in state live")
def gloves_not_forbidden_where_the_spindle_turns() -> Job:
    return _with_wear(1, never=(("No rings.",),))


@breaks("V95", "safety review, wear in state live")
def live_steps_worn_as_if_isolated() -> Job:
    return _with_wear(1, spindle_can_turn=False)


@breaks("V95", "safety review, wear in state isolated")
def gloves_worn_at_the_drill_press() -> Job:
    warned = caution("drill-grabs-the-collar", "caution", "drill-press")
    return with_list_of_press(reviewed_anew(with_step("3.1", activities=("bond", "drill-press"), cautions=(warned,))))


@breaks("V95", "safety review, wear in state isolated")
def gloves_that_never_come_off() -> Job:
    return _with_wear(0, never=(("No rings.",),))


@breaks("V95", "safety review")
def step_without_a_word_on_wear() -> Job:
    return _with_wear(1, used_at=procedure().safety_review.wear[1].used_at[1:])


def _with_check(name: str, **changes: Any) -> Job:
    (checks,) = procedure().safety_review.checks
    lines = tuple(line.model_copy(update=changes) if line.id == name else line for line in checks.lines)
    return _with_review(checks=(checks.model_copy(update={"lines": lines}),))


@breaks("V96", "safety review, check stop")
def killer_line_with_a_way_round() -> Job:
    return _with_check("stop", not_applicable=True)


@breaks("V96", "safety review, checks")
def killer_line_called_an_ordinary_one() -> Job:
    return _with_check("key", killer=False)


@breaks("V96", "safety review, check key")
def line_that_is_ticked_without_looking() -> Job:
    return _with_check("key", blanks=())


@breaks("V96", "safety review, Lathe isolated")
def list_too_long_to_be_read() -> Job:
    (checks,) = procedure().safety_review.checks
    extra = checks.lines[0].model_copy(update={"id": "extra", "killer": False})
    return _with_review(checks=(checks.model_copy(update={"lines": (*checks.lines, extra)}),))


@breaks("V96", "safety review, Lathe isolated")
def list_without_an_end() -> Job:
    (checks,) = procedure().safety_review.checks
    return _with_review(checks=(checks.model_copy(update={"ends_with": "Go"}),))


@breaks("V97", "safety review, signatures")
def reviewer_has_no_place_to_sign() -> Job:
    return _with_review(signatures=procedure().safety_review.signatures[:1])


@breaks("V97", "safety review, signatures")
def operator_has_no_place_to_sign() -> Job:
    return _with_review(signatures=procedure().safety_review.signatures[1:])


@breaks("V97", "safety review, head")
def review_that_holds_for_ever() -> Job:
    return _with_review(head=procedure().safety_review.head[:-1])


@breaks("V97", "safety review")
def nothing_said_of_working_alone() -> Job:
    return _with_review(alone=())


@breaks("V98", "safety review, activity W1")
def step_left_out_of_its_activity() -> Job:
    first, *rest = procedure().safety_review.work
    return _with_review(work=(first.model_copy(update={"used_at": first.used_at[1:]}), *rest))


@breaks("V98", "safety review, activity W1")
def activity_with_the_wrong_state_of_the_machine() -> Job:
    first, *rest = procedure().safety_review.work
    return _with_review(work=(first.model_copy(update={"machine": ("turning",)}), *rest))


@breaks("V98", "safety review, activity W1", also="V290")
def step_changed_after_the_review() -> Job:
    activity = procedure().safety_review.work[0].activities[0]
    number = procedure().safety_review.work[0].used_at[0]
    step = next(one for phase in procedure().phases for one in phase.steps if one.number == number)
    return with_step(number, activities=tuple(one for one in step.activities if one != activity))


@breaks("V99", "safety review, emergency")
def emergency_number_not_asked_for() -> Job:
    return _with_review(emergency=procedure().safety_review.emergency[1:])


@breaks("V99", "safety review, emergency")
def emergency_number_with_no_place_for_it() -> Job:
    phone, *rest = procedure().safety_review.emergency
    return _with_review(emergency=(phone.model_copy(update={"blanks": ()}), *rest))


@breaks("V99", "safety review, isolation")
def nobody_keeps_the_plug() -> Job:
    isolation = procedure().safety_review.isolation
    return _with_review(isolation=tuple(line for line in isolation if line.id != "isolate-keeper"))


@breaks("V99", "safety review, chemicals")
def compound_without_a_line() -> Job:
    return _with_review(chemicals=())


@breaks("V99", "safety review, chemical compound")
def compound_without_its_data_sheet() -> Job:
    (compound,) = procedure().safety_review.chemicals
    return _with_review(chemicals=(compound.model_copy(update={"blanks": (Blank(label="kept at"),)}),))


_STILL = "fernhill/height-and-droop"


def _still_checks(change: Callable[[CheckList], CheckList]) -> Job:
    tree, givens = _job(_STILL)
    review = tree.safety_review
    first, *others = review.checks
    told = review.model_copy(update={"checks": (change(first), *others)})
    return tree.model_copy(update={"safety_review": told}), givens


@breaks("V615", "safety review")
def speed_of_the_chuck_asked_where_nothing_turns() -> Job:
    def asked(one: CheckList) -> CheckList:
        lines = (
            line.model_copy(update={"item": ("Speed marked on the chuck",)}) if line.id == "key" else line
            for line in one.lines
        )
        return one.model_copy(update={"lines": tuple(lines)})

    return _still_checks(asked)


@breaks("V96", "safety review, checks", also="V190")
def lathe_at_rest_that_nobody_tried() -> Job:
    return _still_checks(
        lambda one: one.model_copy(update={"lines": tuple(line for line in one.lines if line.id != "dead")})
    )
