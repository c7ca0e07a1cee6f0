"""Bands that are looked up by a size touch: no size falls through the border between two rows."""

import ast
from collections import defaultdict
from functools import cache
from pathlib import Path

import pytest

import tailtrue
from tailtrue.places import knowledge_folder
from tailtrue.tables import Table, read_tables

_ENGINE = Path(tailtrue.__file__).parent
_TABLES = read_tables(knowledge_folder())


@cache
def lookups() -> set[tuple[str, str, str, tuple[str, ...]]]:
    """How the engine looks sizes up: the two columns, which end belongs to a row, and the columns that choose the rows."""
    found = set()
    for path in _ENGINE.rglob("*.py"):
        text = path.read_text(encoding="utf-8")
        for call in ast.walk(ast.parse(text)) if ".within(" in text else ():
            if isinstance(call, ast.Call) and isinstance(call.func, ast.Attribute) and call.func.attr == "within":
                said = {one.arg: one.value for one in call.keywords if one.arg}
                ends = ast.literal_eval(said.pop("ends")) if "ends" in said else "(]"
                low, high = (ast.literal_eval(one) for one in call.args[1:3])
                found.add((low, high, ends, tuple(sorted(said))))
    return found


def banded() -> list[tuple[str, str, str, str, tuple[str, ...]]]:
    """Each table that such a look-up fits."""
    return sorted(
        (name, *lookup)
        for name, table in _TABLES.items()
        for lookup in lookups()
        if table.rows and {lookup[0], lookup[1], *lookup[3]} <= table.rows[0].cells.keys()
    )


def groups(table: Table, low: str, high: str, keys: tuple[str, ...]) -> dict[tuple[str, ...], list[tuple[float, float]]]:
    bands = defaultdict(list)
    for row in table.rows:
        bands[tuple(row.cells[key] for key in keys)].append(
            (float(row.cells[low] or "-inf"), float(row.cells[high] or "inf"))
        )
    return bands


def test_the_engine_looks_sizes_up_in_more_than_one_table() -> None:
    assert len({name for name, *_ in banded()}) >= 6


@pytest.mark.parametrize(("name", "low", "high", "ends", "keys"), banded(), ids=lambda one: str(one))
def test_no_size_falls_through_a_border(name: str, low: str, high: str, ends: str, keys: tuple[str, ...]) -> None:
    table = _TABLES[name]
    for chosen, bands in groups(table, low, high, keys).items():
        reached = min(bands)[0]
        for bottom, top in sorted(bands):
            assert bottom <= reached, f"{name} {chosen}: nothing from {reached:g} to {bottom:g}"
            reached = max(reached, top)
        # A border itself is found: it belongs to one of the two rows that meet there.
        for border in {bottom for bottom, _ in bands if bottom > min(bands)[0]}:
            table.within(border, low, high, ends=ends, **dict(zip(keys, chosen, strict=True)))
