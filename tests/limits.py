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

from spoilt import spoilt
from tailtrue.calc.validity import OutOfRange

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


def past_the_edge(table: Table) -> list[Any]:
    return [
        pytest.param(formula, sound | {argument: value}, limit.begins, id=f"{formula.__name__}-{argument}-{value}")
        for formula, (sound, limits) in table.items()
        for argument, limit in limits.items()
        for value in limit.refused
    ]


def on_the_edge(table: Table) -> list[Any]:
    """The sound arguments themselves, and each argument on the edge."""
    sound_ones = [pytest.param(formula, sound, id=formula.__name__) for formula, (sound, _) in table.items()]
    return sound_ones + [
        pytest.param(formula, sound | {argument: value}, id=f"{formula.__name__}-{argument}-{value}")
        for formula, (sound, limits) in table.items()
        for argument, limit in limits.items()
        for value in limit.accepted
    ]


def no_numbers(table: Table) -> list[Any]:
    """Each argument in turn made what is no number."""
    return spoilt({formula: sound for formula, (sound, _) in table.items()})


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


def is_refused(formula: Formula, given: dict[str, Any], begins: str = "") -> None:
    """Assert that a formula refuses, in words that begin so."""
    with pytest.raises(OutOfRange) as refused:
        formula(**given)
    assert str(refused.value).startswith(begins)
    assert not str(refused.value).endswith(".")


def is_answered(formula: Formula, given: dict[str, Any]) -> None:
    """Assert that a formula gives finite numbers."""
    found = formula(**given)
    assert all(math.isfinite(value) for value in (found if isinstance(found, tuple) else (found,)))
