"""Sheets on which nothing turns, and which speak of turning all the same."""

from tailtrue.procedure import Procedure

from .broken import breaks
from .broken_power import _job
from .broken_rework_end import SPOILED, _found
from .changed import Job


def _with(**changes: object) -> Job:
    tree, given = _found(SPOILED)
    return tree.model_copy(update=changes), given


def _turning() -> Procedure:
    return _job("fernhill", "use-bar")[0]


@breaks("V644", "drawings", also="V24 V126")
def speeds_drawn_where_nothing_turns() -> Job:
    plates = tuple(one for one in _turning().drawings if one.kind == "speed-plate")
    return _with(drawings=(*_found(SPOILED)[0].drawings, *plates))


@breaks("V184", "after a stop")
def power_back_where_the_lathe_stays_isolated() -> Job:
    return _with(after_a_stop=_turning().after_a_stop)


@breaks("V644", "limits", also="V190")
def limit_of_a_speed_that_nothing_runs_at() -> Job:
    return _with(limits=tuple(one for one in _turning().limits if one.label == "Speed with the chuck"))


@breaks("V644", "if it goes wrong")
def tool_digs_into_work_that_stands() -> Job:
    rows = tuple(one for one in _turning().if_it_goes_wrong if one[0].startswith("The tool digs in"))
    return _with(if_it_goes_wrong=(*_found(SPOILED)[0].if_it_goes_wrong, *rows))


@breaks("V645", "front")
def depth_told_where_none_is_set() -> Job:
    lines = tuple(one for one in _turning().conventions if "per side" in str(one[0]))
    return _with(conventions=(*_found(SPOILED)[0].conventions, *lines))


@breaks("V645", "time")
def waits_told_where_nothing_waits() -> Job:
    time = _found(SPOILED)[0].time
    return _with(time=time.model_copy(update={"notes": (*time.notes, ("The waits run without you.",))}))
