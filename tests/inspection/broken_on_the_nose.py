"""Sheets that take off another chuck than the one on the spindle, or leave a heavy one to one person at a later change."""

from collections.abc import Callable

from shops import EXAMPLES
from tailtrue.procedure import Step

from .broken import breaks
from .changed import Job, sheet_of


def _cast() -> Job:
    return sheet_of(EXAMPLES / "fernhill" / "job-cast.toml")


def _changed(wanted: str, change: Callable[[Step], Step]) -> Job:
    tree, shop = _cast()
    phases = tuple(
        phase.model_copy(update={"steps": tuple(change(step) if step.id == wanted else step for step in phase.steps)})
        for phase in tree.phases
    )
    return tree.model_copy(update={"phases": phases}), shop


def _with_tools(*tools: str) -> Callable[[Step], Step]:
    return lambda step: step.model_copy(update={"tools": tools})


@breaks("V660", "step 8.1", also="V15")
def scroll_chuck_comes_off_where_the_independent_one_is_on() -> Job:
    return _changed("change-to-centres", _with_tools("drive-plate", "chuck", "board"))


@breaks("V660", "step 5.1", also="V15")
def two_chucks_go_on_at_once() -> Job:
    return _changed("change-to-four-jaw", _with_tools("chuck", "four-jaw-chuck", "drive-plate", "board"))


@breaks("V661", "step 5.1")
def nobody_helps_with_the_second_chuck() -> Job:
    return _changed(
        "change-to-four-jaw",
        lambda step: step.model_copy(update={"text": tuple(line for line in step.text if "hoist" not in str(line))}),
    )
