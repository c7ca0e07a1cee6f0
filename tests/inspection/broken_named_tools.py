"""Sheets that name a tool which nobody has put on the list."""

from .broken import breaks
from .changed import Job, step, with_caution, with_step


@breaks("V474", "step 4.3")
def speed_because_of_a_steady_that_is_not_there() -> Job:
    first, *rest = step("4.3").settings
    line = first.model_copy(update={"reason": ("the greased pads of the steady",)})
    return with_step("4.3", settings=(line, *rest))


@breaks("V474", "step 4.1")
def grease_for_a_live_centre() -> Job:
    return with_step("4.1", text=(("Put the bar between the centres.",), ("Grease the hole of a dead centre again.",)))


@breaks("V474", "step 4.1")
def message_that_asks_for_grease() -> Job:
    return with_caution("4.1", avoid=(("Grease the hole of a dead centre again after each cut.",),))


@breaks("V682", "step 4.1")
def witness_line_with_nothing_to_draw_it() -> Job:
    return with_step("4.1", text=(("Put the bar between the centres.",), ("Draw a witness line across collar and bar.",)))
