"""Sheets on which a message stands away from its work, the switch of a guard is not tried, or bins contradict."""

from collections.abc import Callable
from dataclasses import replace

from shops import EXAMPLES
from tailtrue.procedure import Phase, Step

from .broken import breaks
from .changed import Job, sheet_of, step, with_phase, with_step
from .sample_pieces import caution


def _job() -> Job:
    return sheet_of(EXAMPLES / "fernhill" / "job.toml")


def _phases(change: Callable[[Phase], Phase]) -> Job:
    tree, givens = _job()
    return tree.model_copy(update={"phases": tuple(change(phase) for phase in tree.phases)}), givens


def _trial(change: Callable[[Step], Step]) -> Job:
    return _phases(
        lambda phase: phase.model_copy(
            update={"steps": tuple(change(one) if one.id == "test-guard" else one for one in phase.steps)}
        )
    )


@breaks("V290", "step 4.1", also="V90")
def message_at_a_step_that_is_about_something_else() -> Job:
    return with_step("4.1", cautions=(*step("4.1").cautions[:1], caution("pour", "warning", "pour-metal")))


@breaks("V290", "phase 4", also="V90")
def message_opens_a_phase_that_does_not_do_it() -> Job:
    return with_phase("4", cautions=(caution("pour", "warning", "pour-metal"),))


@breaks("V290", "step 2.6")
def message_at_the_second_step_that_does_it() -> Job:
    return with_step("2.6", cautions=(caution("late", "warning", *step("2.6").activities, *step("2.1").activities),))


@breaks("V291", "step 1.6", also="V104")
def switch_of_the_guard_not_tried() -> Job:
    return _phases(
        lambda phase: phase.model_copy(update={"steps": tuple(one for one in phase.steps if one.id != "test-guard")})
    )


@breaks("V291", "step 1.7")
def trial_that_does_not_say_what_must_not_happen() -> Job:
    return _trial(
        lambda one: one.model_copy(update={"text": tuple(line for line in one.text if "must not start" not in str(line))})
    )


@breaks("V291", "step 1.7")
def trial_with_nothing_to_tick() -> Job:
    return _trial(lambda one: one.model_copy(update={"checks": ()}))


@breaks("V291", "step 1.7")
def switch_tried_on_a_hinged_guard() -> Job:
    tree, givens = _job()
    return tree, replace(givens, guard_switch=False)


@breaks("V292", "step 3.1, caution bins", also="V290 V90")
def chips_sent_under_a_lid() -> Job:
    one = caution("bins", "warning", "clean-up")
    return with_step("3.1", cautions=(one.model_copy(update={"avoid": (("Let chips drain. Put them in a closed bin.",),)}),))


@breaks("V292", "step 3.1")
def rags_sent_into_the_open() -> Job:
    return with_step("3.1", text=(*step("3.1").text, ("Put the rags in an open bin.",)))
