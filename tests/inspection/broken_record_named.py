"""Sheets whose readings go to the record of another sheet."""

from .broken import breaks
from .changed import Job
from .learner_sample import with_step_of


@breaks("V479", "step 9.8")
def readings_sent_to_the_record_of_another_sheet() -> Job:
    other = ("Write readings and decision into the record of sheet of lathe two.",)
    return with_step_of("trained", "decide", lambda step: step.model_copy(update={"text": (*step.text, other)}))
