"""Sheets that leave to the reader what the files settle, or settle it otherwise than their own rows."""

from tailtrue.procedure import Step

from .broken import breaks
from .broken_bench import _said, _where, _with
from .changed import Job

_WHOLE, _COLLET = "fernhill/job", "tannery-lane/job"
_LAST = "Do this for the last drill alone."


@breaks("V613", _where(_COLLET, "hold-bar-collet"))
def bush_where_the_list_names_one() -> Job:
    return _said(_COLLET, "hold-bar-collet", "Fit the bush on the far end", "Fit the bush where the list names one")


@breaks("V613", _where(_WHOLE, "hold-bar-bore"))
def tape_wound_and_the_size_of_a_bush_given() -> Job:
    return _said(_WHOLE, "hold-bar-bore", "Fit the bush", "Wind the tape")


@breaks("V613", _where(_WHOLE, "drill-blank"))
def oil_on_the_row_and_none_in_the_line() -> Job:
    return _said(_WHOLE, "drill-blank", "Brush on fluid.", "Drill dry.")


@breaks("V614", _where(_WHOLE, "drill-taper-shank"))
def taper_shanks_left_to_the_reader() -> Job:
    return _said(_WHOLE, "drill-taper-shank", _LAST, "IF the next drill has a straight shank, THEN pass over this step.")


@breaks("V614", _where(_WHOLE, "drill-taper-shank"))
def one_taper_shank_told_of_as_several() -> Job:
    return _said(_WHOLE, "drill-taper-shank", _LAST, "Do this for the drills with a taper shank, the last of the list.")


@breaks("V614", _where(_WHOLE, "drill-taper-shank"), also="V86")
def last_drill_of_the_list_straight() -> Job:
    def drilled(one: Step) -> Step:
        first, *others = one.settings
        rest = [line for line in others if str(line.label[0]).startswith("drill, ")]
        return one.model_copy(update={"settings": (*rest, first, *others[len(rest) :])})

    return _with(_WHOLE, "drill-blank", drilled)
