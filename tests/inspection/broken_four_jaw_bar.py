"""Sheets that set a bar true in four independent jaws, with one thing wrong."""

from collections.abc import Callable
from dataclasses import replace

from shops import EXAMPLES
from tailtrue.parts import Check
from tailtrue.procedure import Step

from .broken import breaks
from .changed import Job, on_step, place_of, sheet_of

_HOLD, _KEEP = "hold-bar-four-jaw", "keep-four-jaw"


def _job() -> Job:
    return sheet_of(EXAMPLES / "weir-cottage" / "job.toml")


def _where(step: str) -> str:
    return place_of(_job(), step)


def _with(step: str, change: Callable[[Step], Step]) -> Job:
    return on_step(_job(), step, change)


def _checks(change: Callable[[Check], Check]) -> Job:
    return _with(_HOLD, lambda one: one.model_copy(update={"checks": tuple(map(change, one.checks))}))


def _looser(check: Check) -> Check:
    if check.limits is None or check.limits.high is None:
        return check
    high = check.limits.high.model_copy(update={"value": 0.5})
    return check.model_copy(update={"limits": check.limits.model_copy(update={"high": high})})


@breaks("V410", _where(_HOLD), also="V90 V290")
def bar_in_four_jaws_that_nobody_set_true() -> Job:
    return _with(_HOLD, lambda one: one.model_copy(update={"activities": tuple(
        done for done in one.activities if done != "set-bar-true")}))  # fmt: skip


@breaks("V410", _where(_HOLD))
def bar_set_true_to_no_limit() -> Job:
    return _checks(lambda check: check.model_copy(update={"limits": None}))


@breaks("V410", _where(_HOLD), also="V156")
def bar_set_true_to_a_loose_limit() -> Job:
    return _checks(_looser)


@breaks("V410", _where(_HOLD), also="V26 V656")
def bar_set_true_and_nothing_written_down() -> Job:
    return _checks(lambda check: check.model_copy(update={"blanks": ()}) if check.limits else check)


@breaks("V410", _where(_HOLD), also="V15 V656")
def bar_set_true_with_no_indicator_at_hand() -> Job:
    return _with(_HOLD, lambda one: one.model_copy(update={"tools": tuple(
        tool for tool in one.tools if tool != "indicator")}))  # fmt: skip


@breaks("V410", _where(_HOLD))
def bar_set_true_with_a_coarse_indicator() -> Job:
    tree, shop = _job()
    return tree, replace(shop, indicator_division_mm=0.05)


@breaks("V410", _where(_HOLD), also="V311")
def bar_set_true_in_a_scroll_chuck() -> Job:
    tree, shop = _job()
    return tree, replace(shop, independent_chucks={})


@breaks("V311", _where(_KEEP), also="V410 V660")
def blanks_in_a_chuck_that_is_not_the_one_on_the_spindle() -> Job:
    tree, shop = _job()
    needs = tuple(
        need.model_copy(update={"name": ("another chuck",)}) if need.id == "chuck" else need for need in tree.needs
    )
    return tree.model_copy(update={"needs": needs}), shop
