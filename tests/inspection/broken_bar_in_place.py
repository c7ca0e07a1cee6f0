"""Sheets on which pads are set to no bar, chips are cleared at a live lathe, or a burr reads as a tight bore."""

from tailtrue.parts import Blank, Check

from .broken import breaks
from .changed import Job, step, with_step

_LINES = ("Put the bar into the chuck. Close the jaws.", "Bring its three pads to the bar.")


def _in_the_steady(*lines: str, **changes: object) -> Job:
    activities = (*step("1.1").activities, "steady-rest")
    return with_step("1.1", activities=activities, text=(*step("1.1").text, *((one,) for one in lines)), **changes)


@breaks("V565", "step 1.1", also="V01 V161")
def pads_set_to_a_bar_that_is_not_there() -> Job:
    return _in_the_steady("Bring its three pads to the bar.")


@breaks("V565", "step 1.1", also="V01 V161")
def run_out_that_nobody_can_judge() -> Job:
    read = Check(text=("Run-out at the steady.",), blanks=(Blank(label="run-out", unit="mm"),))
    return _in_the_steady(*_LINES, checks=(*step("1.1").checks, read))


@breaks("V566", "step 2.7", also="V01")
def tool_changed_on_a_live_lathe() -> Job:
    changed = (("Brush the chips away. Fit the tool again.",),)
    return with_step("2.7", activities=(*step("2.7").activities, "clear-chips"), text=(*step("2.7").text, *changed))


@breaks("V567", "step 2.7")
def burr_read_as_a_tight_bore() -> Job:
    return with_step("2.7", text=(*step("2.7").text, ("Isolate the lathe before you try the bar in the bore.",)))
