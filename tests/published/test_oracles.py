"""Formulas against other programs: at the arguments of every figure, and round about them."""

import importlib
import inspect
import json
import random
from typing import Any

import pytest

from oracles import ORACLES
from published import checks_table
from tailtrue.calc.validity import OutOfRange

_ROUND_ABOUT = 4  # trials beside each figure
_FIGURES = checks_table.figures()


def _formula(name: str) -> Any:
    module, function = name.split(".")
    return getattr(importlib.import_module(f"tailtrue.calc.{module}"), function)


def _moved(value: Any, draw: random.Random) -> Any:
    """The same a little larger or smaller; words and truths stay."""
    if isinstance(value, list):
        return [_moved(item, draw) for item in value]
    if isinstance(value, int | float) and not isinstance(value, bool):
        return value * draw.uniform(0.95, 1.05)
    return value


def _trials(name: str) -> list[dict[str, Any]]:
    kinds = inspect.signature(_formula(name)).parameters
    counts = {argument for argument, kind in kinds.items() if kind.annotation is int} | {"components"}
    draw = random.Random(name)
    found = []
    for row in _FIGURES[name]:
        given = json.loads(row["arguments"])
        found.append(given)
        found += [
            {key: value if key in counts else _moved(value, draw) for key, value in given.items()}
            for _ in range(_ROUND_ABOUT)
        ]
    return found


@pytest.mark.parametrize("name", ORACLES)
def test_another_program_comes_to_the_same(name: str) -> None:
    formula, oracle, compared = _formula(name), ORACLES[name], 0
    for given in _trials(name):
        try:
            found = oracle.part(formula(**given))
        except OutOfRange:
            continue
        expected = oracle.answer(**given)
        if isinstance(expected, list | tuple):
            found, expected = list(found), list(expected)
        near = expected if isinstance(expected, str) else pytest.approx(expected, rel=oracle.relative, abs=1e-12)
        assert found == near, given
        compared += 1
    assert compared >= len(_FIGURES[name])


def test_every_oracle_is_of_a_formula_and_names_its_program() -> None:
    for name, oracle in ORACLES.items():
        assert name in _FIGURES
        assert oracle.program.split(":")[0] in {"scipy", "numpy", "uncertainties", "mpmath", "decimal"}
        assert 0 < oracle.relative <= 0.05
