"""Sheets that start unchecked, or put hands and gloves where the spindle turns or the power is on."""

from dataclasses import replace

from .broken import breaks
from .changed import Job, allowed_anywhere, in_order, job_caution, step, with_caution, with_phase, with_sheet, with_step
from .sample import STATES
from .sample_pieces import caution


@breaks("V17", "step 4.2", also="V336")
def start_without_check() -> Job:
    return in_order("4", "4.1", "4.3", "4.4")


@breaks("V17", "step 2.6", also="V270")
def start_check_before_hands_went_in() -> Job:
    return in_order("2", "2.1", "2.2", "2.3", "2.5", "2.4", "2.6", "2.7")


@breaks("V17", "step 2.1", also="V84 V126 V340 V341 V561")
def start_check_missing_for_the_second_piece() -> Job:
    """The first piece is drilled on the check of the phase before; the second is gripped and drilled without one."""
    return in_order("2", "2.3", "2.1")


@breaks("V17", "step 4.3", also="V336")
def start_check_with_the_spindle_turning() -> Job:
    return with_step("4.2", machine="turning")


@breaks("V17", "step 4.2", also="V04 V336")
def start_check_of_a_spindle_that_turns() -> Job:
    started = step("4.2").model_copy(update={"activities": ("start-check",)})
    return with_step("4.2", machine="turning", activities=started.activities)


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


@breaks("V21", "step 4.3")
def polished_while_turning() -> Job:
    return with_step("4.3", text=(("Polish the collars to size.",),))


@breaks("V21", "step 4.3")
def emery_while_turning() -> Job:
    return with_step("4.3", text=(("Hold a strip of emery cloth to the rim.",),))


@breaks("V22", "step 1.1")
def rear_of_the_spindle_not_seen() -> Job:
    return with_step("1.1", checks=())


@breaks("V160", "step 1.1", also="V230")
def bar_gripped_with_the_power_on() -> Job:
    """The list of states allows it here; the rule knows by itself."""
    return allowed_anywhere(with_step("1.1", machine="stopped"))


@breaks("V160", "step 5.3", also="V20")
def tailstock_clamped_with_the_power_on() -> Job:
    return allowed_anywhere(with_step("5.3", machine="stopped"))


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
