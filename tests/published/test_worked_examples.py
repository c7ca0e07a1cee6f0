"""Worked examples, answer by answer, in the unit in which each was given.

Each row of `worked_examples.csv` is one answer: the example by its short name, the quantity, the answer with its unit and
tolerance, and the figure of another table (file:case) that holds formula, arguments and source. `part` is the place in an
answer of several, `over` a second figure that the first is divided by. What the formula gives is brought to the unit of
the answer by pint, not by our own table of units. The examples of limits and fits by class, of exact differences and of
the direction are in tests of their own, by the same names.
"""

import csv
import importlib
import json
from pathlib import Path
from typing import Any

import pint
import pytest

_DATA = Path(__file__).parent / "data"
_UNITS = pint.UnitRegistry()
Row = dict[str, str]


def _read(path: Path) -> list[Row]:
    with path.open(newline="", encoding="utf-8") as lines:
        return list(csv.DictReader(lines))


_EXAMPLES = _read(_DATA / "worked_examples.csv")
_FIGURES = {
    f"{path.stem}:{row['case']}": row
    for path in _DATA.glob("*.csv")
    for row in _read(path)
    if {"case", "function"} <= row.keys()
}


def _called(figure: str, part: str) -> Any:
    row = _FIGURES[figure]
    module, name = row["function"].split(".")
    found = getattr(importlib.import_module(f"tailtrue.calc.{module}"), name)(**json.loads(row["arguments"]))
    return found[int(part)] if part else found


@pytest.mark.parametrize("row", _EXAMPLES, ids=[f"{row['example']} {row['quantity']}" for row in _EXAMPLES])
def test_answer_is_reproduced(row: Row) -> None:
    found = _called(row["figure"], row["part"])
    if isinstance(found, str):
        assert found == row["answer"]
        return
    if row["over"]:
        found /= _called(row["over"], "")
    with_unit = _UNITS.Quantity(float(found), row["figure_unit"] if not row["over"] else row["unit"])
    answer = float(row["answer"])
    assert with_unit.m_as(row["unit"]) == pytest.approx(answer, rel=float(row["tolerance"]), abs=0)


def test_answers_name_the_source_of_their_figure() -> None:
    for row in _EXAMPLES:
        figure = _FIGURES[row["figure"]]
        assert (row["basis"], row["source"]) == (figure["basis"], figure["source"]), row
        assert row["source"].strip(), row


def test_no_answer_is_there_twice() -> None:
    answers = [(row["example"], row["quantity"]) for row in _EXAMPLES]
    assert len(set(answers)) == len(answers) > 250
