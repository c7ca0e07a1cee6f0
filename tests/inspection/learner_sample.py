"""Sheets of a real shop for a trained operator and for a learner, one step of them changed."""

from collections.abc import Callable
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from shops import shop
from tailtrue.procedure import Step

from .changed import Job, on_step, sheet_of


@cache
def sheet_for(operator: str) -> Job:
    """The sheet of fernhill for an operator, and the shop it is held against."""
    with TemporaryDirectory() as folder:
        path = shop(Path(folder), "fernhill", ("job", '^operator = "trained"', f'operator = "{operator}"'))
        return sheet_of(path)


def with_step_of(operator: str, wanted: str, change: Callable[[Step], Step]) -> Job:
    """A sheet of fernhill for an operator, one step of it changed."""
    return on_step(sheet_for(operator), wanted, change)
