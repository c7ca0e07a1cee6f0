"""The page that shows how each formula is checked, and which figures of the knowledge nobody has confirmed.

.venv/bin/python tests/published/checks_table.py
"""

import ast
import csv
import importlib
import inspect
import pkgutil
import re
import sys
import tomllib
from collections import Counter
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import tailtrue.calc
from tailtrue.tables import Row, read_tables, source_keys

ROOT = Path(__file__).parents[2]
PAGE = ROOT / "docs" / "checks.md"
_DATA = Path(__file__).parent / "data"
_BASES = ("printed", "worked", "derived")
_MANY = 12  # names from one table, beyond which they are shortened

_HEAD = """# How the formulas are checked

Made from the figures in `tests/published/data` and the formulas themselves with
`.venv/bin/python tests/published/checks_table.py`; do not edit it by hand.

- **printed**: the answer stands in a source. **worked**: a formula or its constants stand in a source, the answer is
  worked from them. Both are checks from outside.
- **own**: the answer is our own working of the same formula. It shows that the code does what it says, not that the
  formula is right.
- **(m)**: so many of these were written from memory, in whole or in part: a recollection of a source, not a sight of
  it. They prove nothing from outside until somebody holds them against the source.

- **other program**: a general library comes to the same by another way, at the arguments of every figure and round
  about them (`tests/oracles`): an integral, a root, eigenvalues, least squares, propagation. It proves the mathematics,
  not that the model is that of the machine. pint proves the units only (`tests/calc/test_units.py`).

Tests of properties and of the ends of each range are not counted here.
"""
_UNCONFIRMED = """
## Figures nobody has confirmed

Rows and rules of the knowledge whose source is `memory`. Where a row names another source as well, only a part of it is
unconfirmed; "alone" counts those that name no other.
"""


def page() -> str:
    """The whole page."""
    found = figures()
    parts = [_HEAD, _totals(found)]
    for module, formulas in _formulas().items():
        parts.append(f"\n## {module}\n\n{_module_says(module)}\n")
        parts.append(
            "| quantity | formula | printed | worked | own | other program | sources |\n| --- | --- | --- | --- | --- | --- | --- |"
        )
        parts += [_line(module, name, formula, found.get(f"{module}.{name}", [])) for name, formula in formulas.items()]
    parts += [_other_tables(), _UNCONFIRMED, *_unconfirmed()]
    return "\n".join(parts) + "\n"


def figures() -> dict[str, list[dict[str, str]]]:
    """Rows of the figures, by the formula that they check."""
    found: dict[str, list[dict[str, str]]] = {}
    for path in sorted(_DATA.glob("*.csv")):
        for row in _rows(path):
            if {"function", "basis"} <= row.keys():
                found.setdefault(row["function"], []).append(row)
    return found


def _rows(path: Path) -> list[dict[str, str]]:
    with path.open(newline="", encoding="utf-8") as lines:
        return list(csv.DictReader(lines))


def _formulas() -> dict[str, dict[str, Any]]:
    """Public formulas by module, as they follow each other in the file."""
    found: dict[str, dict[str, Any]] = {}
    for module in sorted(module.name for module in pkgutil.iter_modules(tailtrue.calc.__path__)):
        members = vars(importlib.import_module(f"tailtrue.calc.{module}")).items()
        own = {
            name: member
            for name, member in members
            if inspect.isfunction(member) and not name.startswith("_") and member.__module__.endswith(f".{module}")
        }
        if own and module != "validity":
            found[module] = own
    return found


def _module_says(module: str) -> str:
    return (inspect.getdoc(importlib.import_module(f"tailtrue.calc.{module}")) or "").split("\n\n")[0].replace("\n", " ")


def _line(module: str, name: str, formula: Any, rows: list[dict[str, str]]) -> str:
    sentence, written = (inspect.getdoc(formula) or "").split("\n\n")[:2]
    sources = "; ".join(dict.fromkeys(row["source"] for row in rows))
    counts = [_count([row for row in rows if row["basis"] == basis]) for basis in _BASES]
    return _cells(f"`{name}`: {sentence}", f"`{' '.join(written.split())}`", *counts, _programs(f"{module}.{name}"), sources)


@cache
def _oracles() -> dict[str, str]:
    """Program of the oracle of each formula that has one; taken here, since run alone this file must find the tests first."""
    from oracles import ORACLES

    return {name: oracle.program for name, oracle in ORACLES.items()}


def _programs(formula: str) -> str:
    programs = [_oracles()[formula]] if formula in _oracles() else []
    if formula in with_units():
        programs.append("pint: units")
    return "; ".join(programs)


@cache
def with_units() -> frozenset[str]:
    """Formulas whose units pint proves: those called in the cases of its test."""
    tree = ast.parse((ROOT / "tests" / "calc" / "test_units.py").read_text(encoding="utf-8"))
    called = {ast.unparse(node.func) for node in ast.walk(tree) if isinstance(node, ast.Call)}
    return frozenset(called & {f"{module}.{name}" for module, names in _formulas().items() for name in names})


def _count(rows: list[dict[str, str]]) -> str:
    recalled = sum(_recalled(row) for row in rows)
    return f"{len(rows)} ({recalled} m)" if recalled else str(len(rows) or "")


def _recalled(row: dict[str, str]) -> bool:
    return "memory" in f"{row.get('source', '')} {row.get('note', '')}"


def _cells(*cells: str) -> str:
    return "| " + " | ".join(cell.replace("|", "\\|") for cell in cells) + " |"


def _totals(found: dict[str, list[dict[str, str]]]) -> str:
    names = [f"{module}.{name}" for module, formulas in _formulas().items() for name in formulas]
    rows = {name: found.get(name, []) for name in names}
    outside = {name: [row for row in rows[name] if row["basis"] != "derived"] for name in names}
    seen = [name for name in names if any(not _recalled(row) for row in outside[name])]
    recalled = [name for name in names if outside[name] and name not in seen]
    printed = [name for name in seen if any(row["basis"] == "printed" and not _recalled(row) for row in outside[name])]
    own = [name for name in names if rows[name] and not outside[name]]
    by_program = [name for name in names if name in _oracles()]
    by_units = [name for name in names if name in with_units() and name not in _oracles()]
    alone = [name for name in names if name not in {*seen, *by_program, *by_units}]
    without = [name for name in names if not rows[name]]
    every = [row for name in names for row in rows[name]]
    counts = [_count([row for row in every if row["basis"] == basis]) or "0" for basis in _BASES]
    lines = [
        f"{len(names)} formulas, {len(every)} figures: {counts[0]} printed, {counts[1]} worked, {counts[2]} own.\n",
        f"- {len(seen)} formulas have a check from outside that was seen, {len(printed)} of them a printed answer.",
        f"- {len(recalled)} have one only that was written from memory.",
        f"- {len(own)} have figures of our own working only.",
        f"- {len(by_program)} are held against another program by another way, {len(set(by_program) - set(seen))} of them"
        " without a check from outside that was seen.",
        f"- {len(by_units)} more have their units proved by pint.",
        f"- {len(alone)} rest on our own working and on properties alone.",
    ]
    if without:
        lines.append(f"- {len(without)} without any figure: {', '.join(without)}.")
    return "\n".join(lines)


def _other_tables() -> str:
    """Published tables of another shape, which have tests of their own."""
    lines = ["\n## Tables held as a whole\n", "| table | printed | worked | own | not said | sources |"]
    lines.append("| --- | --- | --- | --- | --- | --- |")
    for path in sorted(_DATA.glob("*.csv")):
        rows = _rows(path)
        if rows and "function" not in rows[0]:
            counts = [_count([row for row in rows if row.get("basis", "") == basis]) for basis in (*_BASES, "")]
            named = dict.fromkeys(row.get("source", "") for row in rows)
            sources = "; ".join(named) if len(named) <= _MANY else f"{len(named)}, named in the table"
            lines.append(_cells(path.stem.replace("_", " "), *counts, sources))
    return "\n".join(lines)


def _unconfirmed() -> Iterator[str]:
    tables = read_tables(ROOT / "knowledge")
    yield "| table | rows | from memory | alone | what |\n| --- | --- | --- | --- | --- |"
    for name, table in tables.items():
        recalled = [row for row in table if "memory" in row.sources]
        if recalled:
            alone = sum(set(row.sources) == {"memory"} for row in recalled)
            yield _cells(name, str(len(table.rows)), str(len(recalled)), str(alone), _what(recalled))
    yield "\n| rules in | from memory | alone | which |\n| --- | --- | --- | --- |"
    for path in sorted((ROOT / "knowledge").rglob("*.toml")):
        rules = list(_rules_from_memory(tomllib.loads(path.read_text(encoding="utf-8"))))
        if rules:
            alone = sum(only for _, only in rules)
            named = "; ".join(name or "the whole file" for name, _ in rules)
            yield _cells(path.relative_to(ROOT / "knowledge").as_posix(), str(len(rules)), str(alone), named)


def _what(rows: list[Row]) -> str:
    """The rows by name, the same name once; the first word alone where there are many, and the ends of a long row of them."""
    names = Counter(_named(row) for row in rows)
    if len(names) > _MANY:
        names = Counter(next(iter(row.cells.values())) for row in rows)
    if len(names) > 2 * _MANY:
        return f"{next(iter(names))} to {list(names)[-1]}"
    return "; ".join(f"{name} ({count})" if count > 1 else name for name, count in names.items())


def _named(row: Row) -> str:
    """The cells that stand before the first number, or the first number where none does."""
    words = []
    for column, cell in row.cells.items():
        if re.fullmatch(r"-?[\d.]*", cell) or column == "source":
            break
        words.append(cell)
    if words:
        return " ".join(words)
    column, cell = next((column, cell) for column, cell in row.cells.items() if cell)
    return f"{column} {cell}"


def _rules_from_memory(value: Any, name: str = "") -> Iterator[tuple[str, bool]]:
    """Name of each rule that rests on memory, and whether on nothing else."""
    if isinstance(value, list):
        for number, item in enumerate(value, start=1):
            yield from _rules_from_memory(item, f"{name} {number}")
    if isinstance(value, dict):
        name = next((str(value[key]) for key in ("id", "name", "field", "fact") if key in value), name)
        said = value.get("sources", value.get("source", []))
        keys = {key for part in ([said] if isinstance(said, str) else said if isinstance(said, list) else [])
                for key in source_keys(str(part))}  # fmt: skip
        if "memory" in keys:
            yield name, keys == {"memory"}
        for key, item in value.items():
            yield from _rules_from_memory(item, name if isinstance(item, list) else key)


if __name__ == "__main__":
    sys.path.insert(0, str(ROOT / "tests"))
    PAGE.write_text(page(), encoding="utf-8")
