"""Sheets of a learner, and of a supervised job, that leave to one alone what somebody else must see."""

from dataclasses import replace

from tailtrue.procedure import Step

from .broken import breaks
from .changed import Job
from .learner_sample import sheet_for, with_step_of


def _released(operator: str, wanted: str, releases: str) -> Job:
    def change(step: Step) -> Step:
        assert step.hold is not None
        return step.model_copy(update={"hold": step.hold.model_copy(update={"releases": releases})})

    return with_step_of(operator, wanted, change)


@breaks("V475", "step 1.1")
def review_released_alone_where_somebody_supervises() -> Job:
    return _released("trained", "check-person", "whoever accepts it; alone, you on reading it again")


@breaks("V475", "step 10.5")
def tailstock_released_by_nobody_in_particular() -> Job:
    return _released("trained", "verify-tailstock", "a second person")


@breaks("V475", "step 5.18")
def hold_that_a_learner_releases() -> Job:
    return _released("learner", "measure-bar", "the operator, after reading them again")


@breaks("V476", "step 5.21", also="V104 V562")
def boring_that_is_not_marked() -> Job:
    return with_step_of("learner", "bore-rough", lambda step: step.model_copy(update={"who": "any"}))


@breaks("V476", "step 2.1")
def saw_given_to_an_adult_and_left_to_the_learner() -> Job:
    def change(step: Step) -> Step:
        adult = {"value": ("an adult of the shop",)}
        rows = tuple(row.model_copy(update=adult if row.label == ("who saws",) else {}) for row in step.settings)
        return step.model_copy(update={"settings": rows})

    return with_step_of("learner", "saw-bar", change)


def _learns_with(depth: float, feed: float) -> Job:
    tree, shop = sheet_for("learner")
    return tree, replace(shop, learner_cut=(depth, feed))


@breaks("V563", "step 8.4")
def roughing_too_deep_for_a_learner() -> Job:
    return _learns_with(0.3, 1.0)


@breaks("V563", "step 8.4")
def feed_too_fast_for_a_learner() -> Job:
    return _learns_with(5.0, 0.05)


@breaks("V562", "step 5.25", also="V104")
def chamfer_that_a_learner_turns_alone() -> Job:
    return with_step_of("learner", "chamfer-bore", lambda step: step.model_copy(update={"who": "any"}))


@breaks("V477", "who may do this")
def sheet_for_trained_people_that_a_learner_has() -> Job:
    (tree, _), given = sheet_for("trained"), sheet_for("learner")[1]
    mine = sheet_for("learner")[0]
    return mine.model_copy(update={"who_may": tree.who_may}), given


@breaks("V478", "step 5.23", also="V480")
def bar_kept_away_from_a_bore_that_it_slides_through() -> Job:
    return with_step_of(
        "trained", "gauge-bore", lambda step: step.model_copy(update={"text": (("Keep the bar away from the bore.",),)})
    )


@breaks("V478", "step 5.23")
def line_that_asks_whether_the_bar_goes_in() -> Job:
    asks = "IF the table says that the bar must not go in, THEN stop."
    return with_step_of("trained", "gauge-bore", lambda step: step.model_copy(update={"text": (*step.text, (asks,))}))
