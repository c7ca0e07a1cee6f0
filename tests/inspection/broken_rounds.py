"""Sheets whose stock does not last for the rounds they allow, or that have sums and slides beside a tool that cuts."""

from tailtrue.parts import Check, Figure, Setting

from .broken import breaks
from .broken_power import _changed, _job, _step
from .broken_ways_back import _reworded
from .changed import Job, with_card_figure


def _figure(shop: str, name: str, wanted: str, fact: str, value: float) -> Job:
    def other(line: Setting) -> Setting:
        pieces = tuple(
            piece.model_copy(update={"value": value}) if isinstance(piece, Figure) and piece.fact == fact else piece
            for piece in line.value
        )
        return line.model_copy(update={"value": pieces})

    job = _job(shop, name)
    return _changed(job, wanted, settings=tuple(map(other, _step(job[0], wanted).settings)))


@breaks("V483", "step 4.4")
def relief_that_is_gone_after_one_round() -> Job:
    return _figure("fernhill", "chucked-bar-test", "relieve-middle", "chucked.relief_passes", 1)


@breaks("V484", "step 4.4")
def taper_checked_at_its_finished_size() -> Job:
    tree, given = _figure("fernhill", "taper-and-return", "turn-taper", "setover.small_at_check", 28.2)
    return with_card_figure(tree, "setover.small_at_check", 28.2), given


@breaks("V485", "step 5.21")
def sizes_worked_out_at_a_running_lathe() -> Job:
    job = _job("quarry-road", "job")
    step = _step(job[0], "bore-finish-unmeasured")
    asked = Check(text=("Work out the two sizes from your own readings.",))
    return _changed(job, "bore-finish-unmeasured", checks=(*step.checks, asked))


@breaks("V486", f"step {_step(_job('fernhill', 'job')[0], 'set-boring-bar').number}")
def saddle_wound_in_with_the_tip_at_its_depth() -> Job:
    wound = "Wind the saddle up to where the cut ends. Set the carriage stop"
    return _reworded("fernhill", "job", "set-boring-bar", "Set the carriage stop", wound)


@breaks("V332", "step 5.8")
def both_ways_skimmed_again_on_collars_for_one() -> Job:
    job = _job("fernhill", "re-certify")
    (least,) = (check for check in _step(job[0], "compare-swap").checks if check.limits is not None)
    low = least.limits.low if least.limits else None
    assert least.limits is not None
    assert low is not None
    less = least.limits.model_copy(
        update={"low": low.model_copy(update={"fact": "collar.before_visit", "value": low.value - 0.3})}
    )
    checks = tuple(
        least.model_copy(update={"limits": less}) if check is least else check
        for check in _step(job[0], "compare-swap").checks
    )
    return _changed(job, "compare-swap", checks=checks)
