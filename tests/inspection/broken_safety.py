"""Sheets that would hurt somebody."""

from dataclasses import replace

from tailtrue.procedure import Hold

from .broken import breaks
from .changed import (
    Job,
    in_order,
    job_caution,
    step,
    with_caution,
    with_check,
    with_phase,
    with_sheet,
    with_shop,
    with_step,
    with_steps,
    without_caution,
)
from .sample import STATES, procedure
from .sample_pieces import caution


@breaks("V01", "step 2.7", also="V79")
def activity_without_caution() -> Job:
    return without_caution("2.7")


@breaks("V01", "step 3.1", also="V290")
def caution_after_its_step() -> Job:
    late = step("3.2").model_copy(update={"cautions": procedure().phases[2].cautions})
    changed, shop = with_step("3.2", cautions=late.cautions)
    phases = tuple(phase.model_copy(update={"cautions": ()}) if phase.number == "3" else phase for phase in changed.phases)
    return changed.model_copy(update={"phases": phases}), shop


@breaks("V01", "step 5.1")
def caution_in_another_phase() -> Job:
    return without_caution("5.1")


@breaks("V02", "step 2.1, caution short-grip", also="V34")
def caution_without_harm() -> Job:
    return with_caution("2.1", harm=" ", hazard="Short grip")


@breaks("V02", "step 2.1, caution short-grip")
def caution_without_way_out() -> Job:
    return with_caution("2.1", avoid=())


@breaks("V02", "step 2.1, caution short-grip")
def caution_without_source() -> Job:
    return with_caution("2.1", sources=())


@breaks("V02", "front, caution chips", also="V90")
def caution_that_answers_nothing() -> Job:
    return with_sheet(job_cautions=job_caution(answers=()))


@breaks("V03", "step 2.1, caution short-grip")
def grave_harm_called_caution() -> Job:
    return with_caution("2.1", severity=5, signal="caution")


@breaks("V03", "step 5.1, caution bar-falls")
def damage_called_warning() -> Job:
    return with_caution("5.1", severity=1, signal="warning")


@breaks("V03", "step 5.1, caution bar-falls")
def small_harm_called_danger() -> Job:
    return with_caution("5.1", severity=2, signal="danger")


@breaks("V03", "step 5.1, caution bar-falls", also="V92")
def severity_off_the_scale() -> Job:
    return with_caution("5.1", severity=6)


@breaks("V04", "step 1.3", also="V01 V79 V430")
def danger_left_out() -> Job:
    return with_sheet(job_cautions=procedure().job_cautions[1:])


@breaks("V04", "step 2.3", also="V430")
def danger_turned_into_warning() -> Job:
    first, *rest = procedure().job_cautions
    return with_sheet(job_cautions=(first.model_copy(update={"signal": "warning"}), *rest))


@breaks("V54", "step 4.1")
def four_cautions_at_a_step() -> Job:
    return with_step("4.1", cautions=tuple(caution(f"fear-{word}", "warning", "mount-between-centres") for word in "abcd"))


@breaks("V54", "step 4.1")
def two_cautions_at_a_step_and_two_lines_that_point_back() -> Job:
    """A line is a box too: what is counted is what the eye must read."""
    answers = ("mount-between-centres", *step("2.1").activities)
    told = tuple(caution(f"fear-{word}", "warning", *answers) for word in "ab")
    lines = tuple(one.model_copy(update={"again": "2.1"}) for one in told)
    here = (*lines, *(caution(f"fear-{word}", "warning", "mount-between-centres") for word in "cd"))
    stands = {"2.1": (*step("2.1").cautions, *told), "4.1": here}
    return with_steps(lambda one: one.model_copy(update={"cautions": stands.get(one.number, one.cautions)}))


@breaks("V54", "phase 4")
def four_cautions_open_a_phase() -> Job:
    return with_phase("4", cautions=tuple(caution(f"fear-{word}", "warning", "mount-between-centres") for word in "abcd"))


@breaks("V54", "step 1.1", also="V107 V430")
def danger_away_from_its_step_and_a_warning_there() -> Job:
    danger, lesser = step("1.1").cautions
    changed, givens = with_step("1.1", cautions=(lesser,))
    phases = tuple(
        phase.model_copy(update={"cautions": (*phase.cautions, danger)}) if phase.number == "1" else phase
        for phase in changed.phases
    )
    return changed.model_copy(update={"phases": phases}), givens


@breaks("V17", "step 4.2", also="V336")
def start_without_check() -> Job:
    return in_order("4", "4.1", "4.3", "4.4")


@breaks("V17", "step 2.6", also="V270")
def start_check_before_hands_went_in() -> Job:
    return in_order("2", "2.1", "2.2", "2.3", "2.5", "2.4", "2.6", "2.7")


@breaks("V17", "step 2.1", also="V84 V126 V340 V341")
def start_check_missing_for_the_second_piece() -> Job:
    """The first piece is drilled on the check of the phase before; the second is gripped and drilled without one."""
    return in_order("2", "2.3", "2.1")


@breaks("V17", "step 4.3", also="V336")
def start_check_with_the_spindle_turning() -> Job:
    return with_step("4.2", machine="turning")


@breaks("V18", "step 2.7", also="V04 V161 V162 V340")
def gauge_in_a_turning_bore() -> Job:
    return with_step("2.7", machine="turning")


@breaks("V18", "step 1.3", also="V161")
def chips_cleared_while_turning() -> Job:
    changed = step("1.3")
    return with_step(
        "1.3",
        activities=(*changed.activities, "clear-chips"),
        cautions=(*changed.cautions, caution("chips-by-hand", "caution", "clear-chips")),
    )


@breaks("V19", "step 2.7")
def gloves_at_a_live_step() -> Job:
    return with_caution("2.7", protective_equipment=("Cut-resistant gloves",))


@breaks("V19", "phase 2")
def gloves_for_a_live_phase() -> Job:
    return with_phase("2", cautions=(caution("edges", "caution", "drill", wear=("thin nitrile gloves",)),))


@breaks("V19", "front")
def gloves_for_the_whole_job() -> Job:
    return with_sheet(job_cautions=job_caution(protective_equipment=("gloves",)))


@breaks("V19", "step 4.2")
def gloves_on_the_list_of_a_live_step() -> Job:
    changed, shop = with_step("4.2", tools=("nitrile-gloves",))
    needs = tuple(
        need.model_copy(update={"used_at": ("3.1", "4.2")}) if need.id == "nitrile-gloves" else need
        for need in changed.needs
    )
    return changed.model_copy(update={"needs": needs}), shop


@breaks("V20", "step 5.1")
def moved_without_isolating() -> Job:
    return in_order("5", "5.2", "5.3", "5.4")


@breaks("V20", "step 5.2", also="V160 V161")
def moved_with_power_on() -> Job:
    return with_step("5.2", machine="stopped")


@breaks("V20", "step 5.2", also="V42 V336")
def moved_and_not_clamped() -> Job:
    return in_order("5", "5.1", "5.2", "5.4")


@breaks("V20", "step 5.2", also="V77")
def moved_and_not_verified() -> Job:
    return in_order("5", "5.1", "5.2", "5.3")


@breaks("V20", "step 5.3", also="V42 V77")
def verified_before_clamping() -> Job:
    return in_order("5", "5.1", "5.2", "5.4", "5.3")


@breaks("V20", "step 5.3", also="V160 V161")
def power_back_before_verifying() -> Job:
    return with_step("5.3", machine="stopped")


@breaks("V77", "step 5.3")
def no_hold_after_clamping() -> Job:
    return with_step("5.4", hold=None)


@breaks("V21", "step 4.3")
def polished_while_turning() -> Job:
    return with_step("4.3", text=(("Polish the collars to size.",),))


@breaks("V21", "step 4.3")
def emery_while_turning() -> Job:
    return with_step("4.3", text=(("Hold a strip of emery cloth to the rim.",),))


@breaks("V22", "step 1.1")
def rear_of_the_spindle_not_seen() -> Job:
    return with_step("1.1", checks=())


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


@breaks("V42", "step 4.3", also="V475 V476 V477")
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


@breaks("V130", "step 2.3", also="V01")
def drilled_while_gripped_on_a_draft() -> Job:
    return with_step("2.1", activities=(*step("2.1").activities, "grip-uneven"))


@breaks("V130", "step 2.5", also="V01 V160 V161 V203 V495")
def gripped_on_a_band_that_nobody_turned() -> Job:
    changed, shop = with_step("2.4", activities=(*step("2.4").activities, "grip-uneven"))
    banded = step("2.5").model_copy(update={"activities": (*step("2.5").activities, "grip-on-band")})
    phases = tuple(
        phase.model_copy(update={"steps": tuple(banded if one.number == "2.5" else one for one in phase.steps)})
        for phase in changed.phases
    )
    return changed.model_copy(update={"phases": phases}), shop


@breaks("V17", "step 4.2", also="V04 V336")
def start_check_of_a_spindle_that_turns() -> Job:
    started = step("4.2").model_copy(update={"activities": ("start-check",)})
    return with_step("4.2", machine="turning", activities=started.activities)


@breaks("V79", "step 2.7")
def caution_that_must_be_said_dropped_for_another() -> Job:
    return with_caution("2.7", id="another-word")


@breaks("V79", "step 4.3", also="V430")
def danger_replaced_by_another_one() -> Job:
    first, *rest = procedure().job_cautions
    return with_sheet(job_cautions=(first.model_copy(update={"id": "another-danger"}), *rest))


@breaks("V160", "step 1.1", also="V230")
def bar_gripped_with_the_power_on() -> Job:
    """The list of states allows it here; the rule knows by itself."""
    return _allowed_anywhere(with_step("1.1", machine="stopped"))


@breaks("V160", "step 5.3", also="V20")
def tailstock_clamped_with_the_power_on() -> Job:
    return _allowed_anywhere(with_step("5.3", machine="stopped"))


@breaks("V161", "step 2.3")
def drilled_with_the_spindle_still() -> Job:
    return with_step("2.3", machine="stopped")


@breaks("V161", "step 2.1")
def loaded_in_a_state_that_nobody_knows() -> Job:
    changed, givens = with_step("2.1")
    return changed, replace(givens, states={name: states for name, states in STATES.items() if name != "grip-in-chuck"})


@breaks("V162", "step 2.6")
def told_to_measure_while_it_turns() -> Job:
    return with_step("2.6", text=(*step("2.6").text, ("Bore on. Measure the bore with each pass.",)))


@breaks("V162", "step 1.3", also="V343")
def told_to_file_while_it_turns() -> Job:
    return with_step("1.3", text=(*step("1.3").text, ("File the edge.",)))


@breaks("V162", "step 4.3")
def told_to_wipe_while_it_turns() -> Job:
    return with_step("4.3", text=(*step("4.3").text, ("IF it is wet, THEN wipe the collar.",)))


@breaks("V162", "step 2.6")
def told_to_stop_nothing_by_name_and_measure() -> Job:
    return with_step("2.6", text=(*step("2.6").text, ("Share the rest over three cuts. Stop and measure after each.",)))


@breaks("V162", "step 2.6")
def told_to_gauge_before_the_spindle_is_stopped() -> Job:
    return with_step("2.6", text=(*step("2.6").text, ("Withdraw the tool and gauge, then stop the spindle.",)))


@breaks("V162", "step 2.7", also="V340")
def told_to_put_gloves_on_with_the_power_on() -> Job:
    return with_step("2.7", text=(("Put on thin gloves. Gauge the bore.",),))


def _allowed_anywhere(job: Job) -> Job:
    changed, givens = job
    every = frozenset({"isolated", "stopped", "turning"})
    return changed, replace(givens, states=dict.fromkeys(STATES, every))
