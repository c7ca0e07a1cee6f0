"""Sheets on which somebody would hold the hose of a vacuum cleaner beside turning work."""

from tailtrue.parts import Setting

from .broken import breaks
from .changed import Job, step, with_line, with_step

_CHIPS = Setting(label=("chips",), value=("vacuum cleaner at the tool",))


@breaks("V564", "step 4.3")
def vacuum_cleaner_that_nothing_holds() -> Job:
    return with_line("4.3", _CHIPS)


@breaks("V564", "step 4.1")
def hose_held_by_hand() -> Job:
    return with_step("4.1", text=(*step("4.1").text, ("Hold the hose beside the tool.",)))
