"""Sheets on which a caution is missing, weak, misplaced, one of too many, or answered by nothing."""

from .broken import breaks
from .changed import (
    Job,
    job_caution,
    step,
    with_caution,
    with_phase,
    with_sheet,
    with_step,
    with_steps,
    without_caution,
)
from .sample import procedure
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


@breaks("V79", "step 2.7")
def caution_that_must_be_said_dropped_for_another() -> Job:
    return with_caution("2.7", id="another-word")


@breaks("V79", "step 4.3", also="V430")
def danger_replaced_by_another_one() -> Job:
    first, *rest = procedure().job_cautions
    return with_sheet(job_cautions=(first.model_copy(update={"id": "another-danger"}), *rest))


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
