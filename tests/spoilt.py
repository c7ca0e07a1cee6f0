"""Calls with one argument that is no number: each must be refused, whatever the formula."""

import math
from collections.abc import Callable
from typing import Any

import pytest

from tailtrue.calc.validity import OutOfRange


def spoilt(good: dict[Callable[..., Any], dict[str, Any]]) -> list[Any]:
    """Every formula of `good` with its calls that must be refused."""
    return [pytest.param(formula, spoilt_calls(given), id=formula.__name__) for formula, given in good.items()]


def spoilt_calls(given: dict[str, Any]) -> list[dict[str, Any]]:
    """A call with each argument in turn made nan or infinite, a row of them whole."""
    return [
        given | {name: [bad] * len(value) if isinstance(value, list) else bad}
        for name, value in given.items()
        for bad in (math.nan, math.inf, -math.inf)
        if value != []
    ]


def each_is_refused(formula: Callable[..., Any], calls: list[dict[str, Any]]) -> None:
    """Assert that a formula refuses each of its calls."""
    assert calls
    assert [given for given in calls if not refusal(formula, given)] == []


def refusal(formula: Callable[..., Any], given: dict[str, Any]) -> str:
    """How a formula refuses a call; nothing where it takes it."""
    try:
        formula(**given)
    except OutOfRange as refused:
        return str(refused)
    return ""
