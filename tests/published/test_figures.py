"""Figures from outside: printed answers, and answers worked from printed formulas.

Each row of the tables in `data` names its source beside the value. `basis` says how much it proves:
printed (the answer stands in the source), worked (formula or constants stand there), derived (own working).
"""

import csv
import importlib
import inspect
import json
import pkgutil
from pathlib import Path
from typing import Any

import pytest

import tailtrue.calc

_DATA = Path(__file__).parent / "data"
_COLUMNS = ["case", "function", "arguments", "expected", "relative_tolerance", "basis", "source", "note"]


def _rows() -> list[dict[str, str]]:
    rows = []
    for path in sorted(_DATA.glob("*.csv")):
        with path.open(newline="", encoding="utf-8") as lines:
            table = csv.DictReader(lines)
            if table.fieldnames == _COLUMNS:
                rows += [{**row, "case": f"{path.stem}:{row['case']}"} for row in table]
    return rows


_ROWS = _rows()


def _call(row: dict[str, str]) -> Any:
    module, name = row["function"].split(".")
    return getattr(importlib.import_module(f"tailtrue.calc.{module}"), name)(**json.loads(row["arguments"]))


@pytest.mark.parametrize("row", _ROWS, ids=[row["case"] for row in _ROWS])
def test_figure_is_reproduced(row: dict[str, str]) -> None:
    found, expected = _call(row), json.loads(row["expected"])
    if isinstance(expected, str | bool):
        assert found == expected
    elif isinstance(expected, list):
        assert list(found) == pytest.approx(expected, rel=float(row["relative_tolerance"]))
    else:
        assert found == pytest.approx(expected, rel=float(row["relative_tolerance"]), abs=0)


def test_figures_name_source_and_basis() -> None:
    for row in _ROWS:
        assert row["source"].strip(), row["case"]
        assert row["basis"] in {"printed", "worked", "derived"}, row["case"]
        assert 0 <= float(row["relative_tolerance"]) <= 0.02, row["case"]


def test_cases_are_unique() -> None:
    cases = [row["case"] for row in _ROWS]
    assert len(cases) == len(set(cases)) > 100


def test_every_formula_is_checked_against_a_figure() -> None:
    formulas = {
        f"{module.name}.{name}"
        for module in pkgutil.iter_modules(tailtrue.calc.__path__)
        if module.name != "validity"
        for name, member in vars(importlib.import_module(f"tailtrue.calc.{module.name}")).items()
        if inspect.isfunction(member) and not name.startswith("_") and member.__module__ == f"tailtrue.calc.{module.name}"
    }
    assert formulas == {row["function"] for row in _ROWS}
