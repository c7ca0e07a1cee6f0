"""Sheets of a bar turned end for end that condemn a good bar, or let a bad one pass."""

from collections.abc import Callable
from typing import Any

from shops import EXAMPLES
from tailtrue.advise import advise, shop_for, tree_of
from tailtrue.procedure import Procedure

from .broken import breaks
from .changed import Job

_WHERE = "change end for end"


def _each(part: Any, change: Callable[[dict[str, Any]], None]) -> Any:
    if isinstance(part, dict):
        if part.get("fact") == "bar.swap_most" and "rounding" in part:
            change(part)
        for below in part.values():
            _each(below, change)
    elif isinstance(part, list):
        for below in part:
            _each(below, change)
    return part


def _with_most(**changes: Any) -> Job:
    path = EXAMPLES / "fernhill" / "re-certify.toml"
    tree = tree_of(advise(path)).model_dump(mode="json")
    return Procedure.model_validate(_each(tree, lambda figure: figure.update(changes))), shop_for(advise(path))


@breaks("V570", _WHERE)
def change_that_says_nothing_written_down() -> Job:
    return _with_most(bound="most")


@breaks("V570", _WHERE, also="V443")
def change_that_says_nothing_within_the_doubt() -> Job:
    return _with_most(value=0.001)


@breaks("V570", _WHERE, also="V443")
def change_that_says_nothing_far_beyond_the_doubts() -> Job:
    return _with_most(value=0.03)
