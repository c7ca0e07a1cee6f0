"""Calls with one argument that is no number: each must be refused, whatever the formula."""

import math
from collections.abc import Callable
from typing import Any

import pytest


def spoilt(good: dict[Callable[..., Any], dict[str, Any]]) -> list[Any]:
    """Every formula of `good` with each argument in turn made nan or infinite, a row of them whole."""
    return [
        pytest.param(
            formula,
            given | {name: [bad] * len(value) if isinstance(value, list) else bad},
            id=f"{formula.__name__}-{name}-{bad}",
        )
        for formula, given in good.items()
        for name, value in given.items()
        for bad in (math.nan, math.inf, -math.inf)
        if value != []
    ]
