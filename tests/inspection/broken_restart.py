"""Sheets that begin again wrongly after a stop, are no help in an emergency, or shorten a step by what protects."""

from .broken import breaks
from .changed import Job, step, with_sheet, with_step
from .sample import procedure


@breaks("V184", "after a stop")
def power_back_before_the_tool_is_clear() -> Job:
    safe, clear, power, again = procedure().after_a_stop
    return with_sheet(after_a_stop=(safe, power, clear, again))


@breaks("V184", "after a stop")
def cut_taken_up_in_its_middle() -> Job:
    *before, _ = procedure().after_a_stop
    return with_sheet(after_a_stop=(*before, ("Begin again one line earlier. Carry on with the cut.",)))


@breaks("V185", "in an emergency")
def nobody_called() -> Job:
    return with_sheet(in_emergency=(("Press the stop and isolate. Give first aid. Leave a fire.",),))


@breaks("V186", "step 4.2")
def short_step_without_its_full_one() -> Job:
    return with_step("4.2", again="9.9")


@breaks("V186", "step 2.2")
def short_step_that_leaves_the_key_out() -> Job:
    checks = tuple(one.model_copy(update={"text": ("Speed read aloud.",)}) for one in step("2.2").checks)
    return with_step("2.2", again="1.2", checks=checks)
