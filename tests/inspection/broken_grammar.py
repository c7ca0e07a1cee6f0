"""Sheets whose sentences hide a command, or leave open what to do otherwise."""

from .broken import breaks
from .changed import Job, step, with_step


@breaks("V180", "step 4.1")
def command_hidden_in_a_reason() -> Job:
    return with_step("4.1", why=("The dog drives the bar. Keep the dog where it is.",))


@breaks("V181", "step 4.1")
def condition_of_and_and_or() -> Job:
    return with_step("4.1", text=(("IF the bar is bent and bruised or marked, THEN take another.",),))


@breaks("V182", "conventions")
def otherwise_left_open() -> Job:
    changed, givens = with_step("4.1", text=(("IF the bar is bent, THEN take another.",),))
    return changed.model_copy(update={"conventions": (("Depth is per side. This cross-slide dial reads radius.",),)}), givens


@breaks("V183", "step 3.2")
def wait_that_may_be_guessed() -> Job:
    hold = step("3.2").hold
    assert hold is not None
    return with_step("3.2", hold=hold.model_copy(update={"text": ("No cut before this time: wait on.",)}))
