"""Sheets on which a spindle that was stopped is started again and nobody looked first."""

from tailtrue.procedure import Step

from .broken import breaks
from .changed import Job, in_order, step, with_step

_WIND_BACK = ("Stop the spindle before you wind the saddle back.",)


@breaks("V500", "step 4.4")
def second_cut_behind_a_stop() -> Job:
    tree, givens = in_order("4", "4.1", "4.2", "4.3", "4.3", "4.4")

    def changed(one: Step) -> Step:
        stops = {"text": (*one.text, _WIND_BACK)} if one.number == "4.3" else {}
        said_before = {"cautions": ()} if one.number == "4.4" else {}
        return one.model_copy(update={**stops, **said_before})

    phases = tuple(phase.model_copy(update={"steps": tuple(changed(one) for one in phase.steps)}) for phase in tree.phases)
    return tree.model_copy(update={"phases": phases}), givens


@breaks("V501", "step 4.3")
def spring_pass_behind_a_stop() -> Job:
    return with_step("4.3", text=(*step("4.3").text, _WIND_BACK, ("Take the spring passes over both collars.",)))
