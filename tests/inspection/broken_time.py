"""Sheets whose times are wrong."""

from tailtrue.procedure import Span

from .broken import breaks
from .changed import Job, step, with_sheet, with_step_time
from .sample import procedure
from .sample_time import plan, seconds


@breaks("V45", "step 4.1")
def a_step_without_a_time() -> Job:
    phases = tuple(
        phase.model_copy(
            update={
                "steps": tuple(one.model_copy(update={"time": None}) if one.number == "4.1" else one for one in phase.steps)
            }
        )
        for phase in procedure().phases
    )
    return with_sheet(phases=phases)


@breaks("V45", "phase 2")
def a_phase_without_a_time() -> Job:
    phases = tuple(phase.model_copy(update={"time": None}) if phase.number == "2" else phase for phase in procedure().phases)
    return with_sheet(phases=phases, time=plan(phases))


@breaks("V45", "time of the job")
def a_job_without_a_time() -> Job:
    return with_sheet(time=None)


@breaks("V45", "time of the job", also="V46")
def a_least_time_longer_than_the_most() -> Job:
    made = procedure().time
    assert made is not None
    total = made.total.model_copy(update={"low": made.total.high, "high": made.total.low})
    return with_sheet(time=made.model_copy(update={"total": total}))


@breaks("V45", "step 4.3")
def a_cut_that_takes_longer_than_its_step() -> Job:
    return with_step_time("4.3", cutting=seconds("time.cutting", _step_low("4.3") + 1))


@breaks("V45", "step 3.2", also="V46")
def a_wait_left_out_of_the_plan() -> Job:
    return with_step_time("3.2", waiting=None)


@breaks("V46", "phase 3")
def a_wait_shorter_than_its_phase_says() -> Job:
    return with_step_time("3.2", waiting=seconds("time.waiting", 3600.0))


@breaks("V46", "phase 4")
def a_phase_that_is_not_the_sum_of_its_steps() -> Job:
    return with_step_time("4.1", high=seconds("time.high", 1200.0))


@breaks("V46", "phase 2")
def a_phase_that_forgets_its_second_piece() -> Job:
    first = procedure().phases[1]
    assert first.time is not None
    half = Span(
        low=seconds("time.low", first.time.low.value / 2),
        high=seconds("time.high", first.time.high.value / 2),
        waiting=first.time.waiting,
    )
    phases = tuple(
        phase.model_copy(update={"time": half}) if phase.number == first.number else phase for phase in procedure().phases
    )
    return with_sheet(phases=phases, time=plan(phases))


@breaks("V46", "time of the job")
def a_job_that_is_not_the_sum_of_its_phases() -> Job:
    made = procedure().time
    assert made is not None
    total = made.total.model_copy(update={"high": seconds("time.high", made.total.high.value + 900)})
    return with_sheet(time=made.model_copy(update={"total": total}))


@breaks("V47", "step 4.3")
def a_skim_faster_than_its_feed() -> Job:
    return with_step_time("4.3", cutting=seconds("time.cutting", 100.0))


@breaks("V47", "step 4.3")
def a_skim_with_no_time_to_cut() -> Job:
    return with_step_time("4.3", cutting=None)


@breaks("V47", "step 4.3", also="V46")
def a_skim_in_minutes_taken_for_seconds() -> Job:
    whole = {name: seconds(f"time.{name}", 60 * _step_low("4.3")) for name in ("low", "high", "cutting")}
    return with_step_time("4.3", **whole)


def _step_low(number: str) -> float:
    """The least time of a step of the sample."""
    time = step(number).time
    assert time is not None
    return time.low.value
