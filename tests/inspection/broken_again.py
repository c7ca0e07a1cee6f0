"""Sheets whose messages are shortened to a line where they were not read in full before."""

from tailtrue.parts import Caution

from .broken import breaks
from .changed import Job, step, with_caution, with_step


def _with_line(number: str, said: Caution, **changes: str) -> Job:
    line = said.model_copy(update=changes)
    return with_step(number, cautions=(*step(number).cautions, line))


@breaks("V164", "step 2.1, caution short-grip")
def shortened_at_its_first_place() -> Job:
    return with_caution("2.1", again="2.1")


@breaks("V164", "step 2.1, caution short-grip")
def shortened_before_its_full_text() -> Job:
    return with_caution("2.1", again="2.3")


@breaks("V164", "step 2.4, caution short-grip", also="V290")
def shortened_from_another_text() -> Job:
    return _with_line("2.4", step("2.1").cautions[0], again="2.1", hazard="Long grip")


@breaks("V164", "step 2.4, caution short-grip", also="V290")
def shortened_to_a_phase_where_a_step_has_it() -> Job:
    return _with_line("2.4", step("2.1").cautions[0], again="2")


@breaks("V164", "step 2.4, caution cloth-winds", also="V290")
def danger_shortened() -> Job:
    full = step("2.1").cautions[0].model_copy(update={"id": "cloth-winds", "signal": "danger", "severity": 5})
    return _with_line("2.4", full, again="2.1")
