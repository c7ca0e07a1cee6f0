"""Sheets on which work goes on where somebody must look, sign, measure or wait."""

from tailtrue.procedure import Hold

from .broken import breaks
from .changed import Job, in_order, step, with_check, with_shop, with_step


@breaks("V77", "step 5.3")
def no_hold_after_clamping() -> Job:
    return with_step("5.4", hold=None)


@breaks("V42", "step 1.1")
def work_begins_without_the_safety_review() -> Job:
    return with_step("1.1", hold=None)


@breaks("V42", "step 1.1")
def hold_for_the_safety_review_of_another_sheet() -> Job:
    hold = step("1.1").hold
    assert hold is not None
    return with_step(
        "1.1", hold=hold.model_copy(update={"text": ("No work before the safety review, SW-L2-013, is signed.",)})
    )


@breaks("V42", "step 4.3", also="V475 V476 V477 V562")
def learner_starts_between_centres_without_the_instructor() -> Job:
    return with_shop(instructed=True)


@breaks("V42", "step 4.3")
def cut_that_proves_the_tailstock_seen_by_nobody() -> Job:
    return with_step("4.4", checks=step("4.4").checks[:1])


@breaks("V42", "step 2.4", also="V34")
def hold_that_nobody_releases() -> Job:
    return with_step("2.4", hold=Hold(text=("Wait.",), releases=" ", go_back_to="measure-bar"))


@breaks("V42", "step 2.4")
def hold_without_a_way_back() -> Job:
    return with_step("2.4", hold=Hold(text=("Wait.",), releases="the operator"))


@breaks("V42", "step 3.2")
def hold_on_time_that_goes_back_to_the_work() -> Job:
    hold = step("3.2").hold
    assert hold is not None
    return with_step("3.2", hold=hold.model_copy(update={"go_back_to": "bond"}))


@breaks("V42", "step 3.2")
def hold_on_time_that_does_not_say_to_wait_on() -> Job:
    return with_step(
        "3.2",
        hold=Hold(
            text=("No cut before this time. IF it was not written down, THEN begin the wait again.",), releases="them"
        ),
    )


@breaks("V42", "step 2.4")
def hold_that_goes_back_to_a_later_step() -> Job:
    return with_step("2.4", hold=Hold(text=("Wait.",), releases="the operator", go_back_to="gauge-bore"))


@breaks("V56", "step 3.2")
def wait_without_an_end_to_write() -> Job:
    blank = step("3.2").checks[0].blanks[0]
    return with_check("3.2", blanks=(blank,))


@breaks("V75", "step 4.3")
def no_wait_for_the_bond() -> Job:
    return in_order("3", "3.1")


@breaks("V75", "step 4.3", also="V183")
def wait_without_a_hold() -> Job:
    return with_step("3.2", hold=None)


@breaks("V75", "step 4.3", also="V480")
def bonded_again_after_the_wait() -> Job:
    return in_order("3", "3.2", "3.1")


@breaks("V76", "step 2.5", also="V340 V341")
def bored_without_measuring_the_bar() -> Job:
    return in_order("2", "2.1", "2.2", "2.3", "2.5", "2.6", "2.7")


@breaks("V76", "step 2.6")
def bored_with_no_hold_at_the_measuring() -> Job:
    return with_step("2.4", hold=None)
