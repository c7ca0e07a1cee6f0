"""Sheets that set a tool by a centre in doubt, by what is not there, or by what cannot be seen."""

from dataclasses import replace

from .broken import breaks
from .broken_bench import _said, _where
from .changed import Job

_WHOLE = "fernhill/job"
_POINT, _PIP = "shown by the point of the headstock centre", "shown by a trial face without a pip"


@breaks("V610", _where(_WHOLE, "fit-tailstock-centre"))
def tool_set_by_the_tailstock_centre_that_is_tested() -> Job:
    return _said(_WHOLE, "fit-tailstock-centre", _POINT, _POINT.replace("headstock", "tailstock"))


@breaks("V610", _where(_WHOLE, "hold-blank-spacer"))
def facing_tool_set_by_a_gauge_that_is_not_there() -> Job:
    return _said(_WHOLE, "hold-blank-spacer", _PIP, "shown by a height gauge")


@breaks("V611", _where(_WHOLE, "set-tool"))
def tool_set_by_a_point_inside_the_bar() -> Job:
    return _said(_WHOLE, "set-tool", "It must be sharp.", f"Set it at centre height, {_POINT}.")


@breaks("V611", _where(_WHOLE, "fit-tailstock-centre"))
def tool_set_by_the_middle_of_a_face_between_centres() -> Job:
    return _said(_WHOLE, "fit-tailstock-centre", _POINT, _PIP)


@breaks("V612", _where(_WHOLE, "fit-tailstock-centre"))
def packing_for_a_post_whose_holders_have_a_screw() -> Job:
    tree, givens = _said(_WHOLE, "fit-tailstock-centre", "screw or packing", "packing along its shank")
    return tree, replace(givens, tool_post="quick-change")


@breaks("V612", _where(_WHOLE, "fit-tailstock-centre"))
def rocker_that_nobody_named() -> Job:
    return _said(_WHOLE, "fit-tailstock-centre", "screw or packing", "the rocker tilted little")
