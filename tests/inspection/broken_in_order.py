"""Sheets whose lines stand in an order that nobody can work, or that leave out the last move of a line."""

from functools import cache

from shops import EXAMPLES

from .broken import breaks
from .broken_routes import _worded
from .changed import Job, sheet_of


@cache
def _bar() -> Job:
    return sheet_of(EXAMPLES / "fernhill" / "job.toml")


def _lines_turned(wanted: str) -> Job:
    """The sheet that makes a bar, the lines of one step from the last to the first."""
    tree, shop = _bar()
    phases = tuple(
        phase.model_copy(
            update={
                "steps": tuple(
                    step.model_copy(update={"text": step.text[::-1]}) if step.id == wanted else step for step in phase.steps
                )
            }
        )
        for phase in tree.phases
    )
    return tree.model_copy(update={"phases": phases}), shop


@breaks("V685", "step 5.17")
def next_drill_fetched_before_this_one_has_cut() -> Job:
    return _lines_turned("drill-blank")


@breaks("V684", "step 4.5")
def quill_set_again_and_left_slack() -> Job:
    return _worded("taper-and-return", "check-taper", " Lock it.", "")


@breaks("V683", "step 4.8")
def feed_that_runs_into_the_dog_at_the_last_cut() -> Job:
    return _worded("taper-and-return", "finish-taper", " Take the feed out at the mark, before the dog.", "")
