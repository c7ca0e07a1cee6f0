"""Formulas at the edges of their validity: on the edge they answer, past it they refuse and name the argument.

A test module keeps a table with one row for each formula: sound arguments, and for each argument its limit.
"""

import inspect
import math
from collections.abc import Callable, Mapping
from collections.abc import Set as AbstractSet
from types import ModuleType
from typing import Any, NamedTuple

import pytest

from spoilt import each_is_refused, refusal, spoilt_calls

Formula = Callable[..., Any]


class Limit(NamedTuple):
    """What one argument may be: how a refusal begins, values past the edge, values on or just inside it."""

    begins: str
    refused: tuple[Any, ...]
    accepted: tuple[Any, ...] = ()


Table = Mapping[Formula, tuple[dict[str, Any], dict[str, Limit]]]


def above_zero(name: str) -> Limit:
    return Limit(f"{name} is ", (0, -1))


def from_zero(name: str) -> Limit:
    return Limit(f"{name} is ", (-1e-9, -1), (0,))


def within(name: str, low: float, high: float) -> Limit:
    return Limit(f"{name} is ", (low - 0.004 * (abs(low) or 0.1), high * 1.004), (low, high))


def above_zero_to(name: str, high: float) -> Limit:
    return Limit(f"{name} is ", (0, -1, high * 1.004), (1e-3, high))


def rows(table: Table) -> list[Any]:
    """Each formula of a table, its sound arguments and its limits, as a test takes them."""
    return [pytest.param(formula, *row, id=formula.__name__) for formula, row in table.items()]


def is_whole(table: Table, *modules: ModuleType, without: AbstractSet[Formula] = frozenset()) -> None:
    """Assert that every formula of the modules and every argument has its row."""
    found = {
        member
        for module in modules
        for label, member in vars(module).items()
        if inspect.isfunction(member) and not label.startswith("_") and member.__module__ == module.__name__
    }
    assert found - without == set(table)
    for formula, (sound, limits) in table.items():
        assert set(sound) == set(limits) == set(inspect.signature(formula).parameters), formula.__name__


def holds_at_its_edges(formula: Formula, sound: dict[str, Any], limits: dict[str, Limit]) -> None:
    """Assert that a formula answers on each edge, and past it refuses by name; what is no number it refuses too."""
    _is_answered(formula, sound)
    for argument, limit in limits.items():
        for value in limit.accepted:
            _is_answered(formula, sound | {argument: value})
        for value in limit.refused:
            is_refused(formula, sound | {argument: value}, limit.begins)
    each_is_refused(formula, spoilt_calls(sound))


def is_refused(formula: Formula, given: dict[str, Any], begins: str) -> None:
    """Assert that a formula refuses, in words that begin so."""
    told = refusal(formula, given)
    assert told, f"{formula.__name__} takes {given}"
    assert told.startswith(begins), given
    assert not told.endswith("."), given


def _is_answered(formula: Formula, given: dict[str, Any]) -> None:
    found = formula(**given)
    assert all(math.isfinite(value) for value in (found if isinstance(found, tuple) else (found,))), given
