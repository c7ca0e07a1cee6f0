"""Sheets on which somebody is sent back, and finds the lathe otherwise than the line needs it."""

from .broken import breaks
from .broken_power import _changed, _job, _lines, _step
from .changed import Job


def _without(shop: str, name: str, wanted: str, sentence: str) -> Job:
    """A sheet without the line that begins with these words."""
    job = _job(shop, name)
    lines = _step(job[0], wanted).text
    kept = tuple(line for line in lines if not str(line[0]).startswith(sentence))
    assert len(kept) == len(lines) - 1
    return _changed(job, wanted, text=kept)


def _back_to(shop: str, name: str, wanted: str, target: str) -> Job:
    """A sheet whose hold, not released, sends elsewhere."""
    job = _job(shop, name)
    hold = _step(job[0], wanted).hold
    assert hold is not None
    return _changed(job, wanted, hold=hold.model_copy(update={"go_back_to": target}))


def _reworded(shop: str, name: str, wanted: str, old: str, new: str) -> Job:
    job = _job(shop, name)
    return _changed(job, wanted, text=_lines(job[0], wanted, old, new))


@breaks("V674", "step 9.8")
def line_that_points_to_a_step_that_is_not_there() -> Job:
    return _reworded("fernhill", "job", "decide", "go to step 11.1", "go to step 11.9")


@breaks("V480", "step 4.5")
def clamps_slackened_under_the_work() -> Job:
    return _without("fernhill", "taper-and-return", "check-taper", "IF it is wrong, THEN lift the work out")


@breaks("V480", "step 3.5")
def live_lathe_kept_isolated() -> Job:
    return _reworded("fernhill", "rework", "rework-gauge", "Isolate the lathe", "Keep the lathe isolated")


@breaks("V480", "step 5.8")
def turned_end_for_end_where_it_lies() -> Job:
    job = _without("fernhill", "re-certify", "compare-swap", "IF it is more, THEN lift the bar out")
    hold = _step(job[0], "compare-swap").hold
    assert hold is not None
    return _changed(job, "compare-swap", hold=hold.model_copy(update={"go_back_to": "turn-end-for-end"}))


@breaks("V480", "step 5.8")
def both_ways_skimmed_again_and_the_bar_still_in() -> Job:
    return _without("fernhill", "re-certify", "compare-swap", "IF it is more, THEN lift the bar out")


@breaks("V480", "step 2.1")
def feet_looked_at_on_a_live_lathe() -> Job:
    return _reworded("fernhill", "chucked-bar-test", "look-at-feet", "Isolate the lathe. Look", "Look")


@breaks("V480", "step 6.2")
def tag_still_on_the_lever_at_the_next_round() -> Job:
    return _without("fernhill", "chucked-bar-test", "repeat-bands", "Take the do-not-start tag off")


@breaks("V480", "step 5.21")
def bore_cut_by_the_tool_that_faced() -> Job:
    return _reworded("fernhill", "job", "set-boring-bar", "Fit the boring bar, its tip", "Set the tip")


@breaks("V487", "step 4.5")
def whole_set_over_set_twice() -> Job:
    job = _job("fernhill", "taper-and-return")
    lines = tuple(
        line.model_copy(update={"label": tuple(str(one).replace("first time ", "") for one in line.label)})
        for line in _step(job[0], "set-over").settings
    )
    return _changed(job, "set-over", settings=lines)


@breaks("V487", "step 4.5")
def state_before_the_set_over_written_over() -> Job:
    return _back_to("fernhill", "taper-and-return", "check-taper", "isolate-for-set-over")


@breaks("V482", "step 6.2")
def hold_printed_behind_the_way_back() -> Job:
    job = _job("fernhill", "chucked-bar-test")
    return _changed(job, "repeat-bands", hold=_step(job[0], "level-feet").hold)


@breaks("V482", "step 6.1", also="V480")
def tag_off_before_the_feet_bear() -> Job:
    job = _job("fernhill", "chucked-bar-test")
    lines = (*_step(job[0], "level-feet").text, ("Take the do-not-start tag off.",))
    return _changed(job, "level-feet", text=lines)
